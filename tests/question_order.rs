//! Whether the questions stand in the order of what changes the line most.
//!
//! Shooters are drawn by a seed: a usual kind of shooting, with a rifle, an eye, a budget and
//! habits that go with it (common practice, no source). For each, the line for everything they
//! could say is compared with the line for everything but one question, which is left at "not
//! sure"; and the line for that one question alone with the line for nothing said at all. What is
//! lost is told in percentage points of value on the shooter's own ground: the best line there,
//! less the line chosen without that answer.
//!
//! `SCOPEWRIGHT_SHOOTERS=240 cargo test --release --test question_order -- --nocapture` prints
//! the table of `docs/question-order.md`.

use scopewright::advice::Ranking;
use scopewright::advice::occasions;
use scopewright::advice::ranking::Ranked;
use scopewright::advice::world::World;
use scopewright::need::answers::Answers;
use scopewright::need::kinds::KINDS;
use scopewright::need::questions::{Part, QUESTIONS, Question};
use scopewright::need::{Reply, Value, apply, resolve, value};

/// Most points that one answer counts for: a line that the rules of a match forbid is no line.
const MOST_POINTS: f64 = 20.0;

/// Xorshift (Marsaglia 2003).
struct Draw(u64);

impl Draw {
    fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % n as u64) as usize
    }

    fn of<'a>(&mut self, list: &[&'a str]) -> &'a str {
        list[self.below(list.len())]
    }
}

/// Cartridges met with a kind of shooting; none: the kind names its own.
fn cartridges(kind: &str) -> &'static [&'static str] {
    match kind {
        "seat_evening" | "woodland_on_foot" | "deer_stand" => &[
            "308_win_10_7_g",
            "30_06_spring_11_7_g",
            "6_5x55_se_9_1_g",
            "223_rem_3_56_g",
        ],
        "boar_by_night" | "driven" => &["308_win_10_7_g", "30_06_spring_11_7_g", "9_3x62_18_5_g"],
        "hill" | "plains" => &["308_win_10_7_g", "6_5x55_se_9_1_g", "30_06_spring_11_7_g"],
        "fox_by_moon" => &["223_rem_3_56_g", "6_5x55_se_9_1_g", "308_win_10_7_g"],
        "paper_100" => &["308_win_10_7_g", "223_rem_3_56_g", "22_lr_2_6_g_standard"],
        _ => &[],
    }
}

/// Everything that a shooter could say on the pages.
fn shooter(seed: u64) -> Answers {
    let draw = &mut Draw(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
    for _ in 0..8 {
        draw.below(2);
    }
    let kind = &KINDS[seed as usize % KINDS.len()];
    let is_target = matches!(kind.key, "paper_100" | "steel" | "field_target");
    let mut told = kind.fill(&Answers::default());
    let mut say = |part: Part, new: Value| told = apply(&told, &Reply::Set(part, new));
    let one = |key: &str| Value::One(key.to_owned());

    say(
        Part::Age,
        Value::Number([25.0, 35.0, 45.0, 55.0, 65.0, 75.0][draw.below(6)]),
    );
    say(
        Part::Glasses,
        one(draw.of(&[
            "no_glasses",
            "no_glasses",
            "distance",
            "varifocal",
            "thick_frame",
        ])),
    );
    let loads = cartridges(kind.key);
    if !loads.is_empty() {
        say(Part::Cartridge, one(draw.of(loads)));
    }
    say(
        Part::RifleMass,
        Value::Number([2.5, 2.9, 3.3, 3.8, 4.5][draw.below(5)]),
    );
    say(
        Part::Muzzle,
        one(draw.of(&["bare", "bare", "moderator", "brake"])),
    );
    say(
        Part::Rings,
        one(draw.of(&["none", "none", "25.4", "30", "34"])),
    );
    say(
        Part::Base,
        one(draw.of(&[
            "slotted_rail",
            "narrow_slots",
            "small_dovetail",
            "wide_dovetail",
            "two_piece",
            "bare",
        ])),
    );
    say(Part::Band, one(draw.of(&["A", "B", "C", "C", "D", "E"])));
    say(
        Part::Attitude,
        one(draw.of(&[
            "little_as_sensible",
            "what_it_is_worth",
            "what_it_is_worth",
            "no_limit",
        ])),
    );
    let annoys = draw.of(&[
        "too_dark",
        "too_narrow",
        "too_heavy",
        "hard_to_find_picture",
        "not_far_enough",
    ]);
    say(Part::Annoys, Value::Many(vec![(annoys.to_owned(), 1.0)]));
    say(
        Part::SightLine,
        Value::Text(
            draw.of(&["3-9x40", "4x32", "8x56", "3-12x56", "6x42"])
                .to_owned(),
        ),
    );
    say(
        Part::Zoom,
        one(draw.of(&["never", "before_sitting", "each_shot"])),
    );
    say(
        Part::Detail,
        one(draw.of(&["body_shape", "body_shape", "young", "antler"])),
    );
    say(
        Part::Carry,
        one(draw.of(&["short", "few_km", "all_day_hill"])),
    );
    let far = matches!(kind.key, "steel" | "prairie" | "hill" | "field_target");
    say(
        Part::DistanceHabit,
        one(if far {
            draw.of(&["marks", "dial", "dial_and_marks"])
        } else {
            draw.of(&["dead_on", "dead_on", "marks", "dial"])
        }),
    );
    say(Part::Rangefinder, Value::Flag(draw.below(2) == 0));
    say(Part::AngleUnit, one(draw.of(&["mrad", "moa", "neither"])));
    say(
        Part::LitMark,
        one(draw.of(&[
            "wanted",
            "wanted",
            "wanted",
            "indifferent",
            "indifferent",
            "indifferent",
            "not_wanted",
            "not_wanted",
            "not_allowed",
        ])),
    );
    if is_target && draw.below(2) == 0 {
        say(
            Part::PowerMost,
            Value::Number([4.5, 12.0, 16.0][draw.below(3)]),
        );
        say(Part::LitForbidden, Value::Flag(draw.below(2) == 0));
    }
    say(Part::Comb, one(draw.of(&["low", "right", "adjustable"])));
    say(Part::LeftHanded, Value::Flag(draw.below(8) == 0));
    say(
        Part::BarrelRadius,
        Value::Number([7.5, 9.5, 11.5][draw.below(3)]),
    );
    say(Part::IronSights, Value::Flag(draw.below(4) == 0));
    let (latitude, longitude) = [
        (48.0, 12.0),
        (52.0, 10.0),
        (60.0, 15.0),
        (40.0, -90.0),
        (-30.0, 25.0),
    ][draw.below(5)];
    say(Part::Latitude, Value::Number(latitude));
    say(Part::Longitude, Value::Number(longitude));
    let month = draw.below(12);
    say(Part::FirstMonth, Value::Number((month + 1) as f64));
    say(
        Part::LastMonth,
        Value::Number(((month + 4) % 12 + 1) as f64),
    );
    say(
        Part::HeightAboveSea,
        Value::Number([0.0, 300.0, 1000.0][draw.below(3)]),
    );
    say(Part::ComesOff, Value::Flag(draw.below(3) == 0));
    say(Part::OthersUseIt, Value::Flag(draw.below(3) == 0));
    say(Part::BothEyesOpen, Value::Flag(draw.below(2) == 0));
    told
}

/// As if everything but this question had been left at "not sure".
fn alone(told: &Answers, question: &Question) -> Answers {
    let mut left = told.clone();
    for other in QUESTIONS.iter().filter(|other| other.key != question.key) {
        // Ranges stand with the manner they were told for; alone they hold for any.
        if question.key == "ranges" && other.key == "manner" {
            left.ranges = left.manners.first().and_then(|each| each.ranges);
        }
        left = apply(&left, &Reply::NotSure(other.key));
    }
    left
}

fn ranked(answers: &Answers, occasions: usize) -> Ranked {
    Ranking::in_world(&resolve(answers), World::MIDDLE, occasions).finish()
}

/// The glass of a line: powers and objective.
fn glass(ranked: &Ranked, at: usize) -> [f64; 3] {
    let sight = &ranked.candidates[at].specification;
    [
        sight.magnification_low,
        sight.magnification_high,
        sight.objective_mm,
    ]
}

/// What a question does over all shooters.
#[derive(Clone, Copy, Default)]
struct Weight {
    asked: f64,
    /// Left out of everything: points lost, lines and glasses that are others.
    last_points: f64,
    last_lines: f64,
    last_glasses: f64,
    /// Told alone: points won over nothing told, lines that are others.
    first_points: f64,
    first_lines: f64,
    /// Shooters of each kind, and the points they lose when it is left out.
    kinds: [(f64, f64); KINDS.len()],
}

impl Weight {
    /// Points lost when it is left out, for those who are asked.
    fn points(&self) -> f64 {
        self.last_points / self.asked.max(1.0)
    }

    /// The kind of shooting that loses most, and how much.
    fn most(&self) -> (&'static str, f64) {
        let mean = |(asked, points): (f64, f64)| points / asked.max(1.0);
        let pairs = KINDS.iter().zip(self.kinds);
        let most = pairs.max_by(|(_, one), (_, other)| mean(*one).total_cmp(&mean(*other)));
        most.map_or(("", 0.0), |(kind, each)| (kind.key, mean(each)))
    }
}

fn measured(shooters: u64, occasions: usize, with_alone: bool) -> Vec<Weight> {
    let threads = std::thread::available_parallelism().map_or(1, |n| n.get() as u64);
    let mut all = vec![Weight::default(); QUESTIONS.len()];
    std::thread::scope(|scope| {
        let parts: Vec<_> = (0..threads)
            .map(|thread| {
                scope.spawn(move || {
                    weighed(
                        (thread..shooters).step_by(threads as usize),
                        occasions,
                        with_alone,
                    )
                })
            })
            .collect();
        for part in parts {
            for (sum, one) in all.iter_mut().zip(part.join().unwrap()) {
                sum.asked += one.asked;
                sum.last_points += one.last_points;
                sum.last_lines += one.last_lines;
                sum.last_glasses += one.last_glasses;
                sum.first_points += one.first_points;
                sum.first_lines += one.first_lines;
                for (sum, one) in sum.kinds.iter_mut().zip(one.kinds) {
                    *sum = (sum.0 + one.0, sum.1 + one.1);
                }
            }
        }
    });
    all
}

fn weighed(seeds: impl Iterator<Item = u64>, occasions: usize, with_alone: bool) -> Vec<Weight> {
    let ranked = |answers: &Answers| ranked(answers, occasions);
    let mut weights = vec![Weight::default(); QUESTIONS.len()];
    let nothing = ranked(&Answers::default()).best;
    for seed in seeds {
        let told = shooter(seed);
        let own = ranked(&told);
        let lost = |at: usize| (own.values[own.best] - own.values[at]).min(MOST_POINTS);
        for (weight, question) in weights.iter_mut().zip(&QUESTIONS) {
            if !question.is_asked(&told) {
                continue;
            }
            weight.asked += 1.0;
            let without = ranked(&apply(&told, &Reply::NotSure(question.key))).best;
            weight.last_points += lost(without);
            let kind = &mut weight.kinds[seed as usize % KINDS.len()];
            *kind = (kind.0 + 1.0, kind.1 + lost(without));
            weight.last_lines += f64::from(u8::from(without != own.best));
            weight.last_glasses +=
                f64::from(u8::from(glass(&own, without) != glass(&own, own.best)));
            if with_alone {
                let with = ranked(&alone(&told, question)).best;
                weight.first_points += lost(nothing) - lost(with);
                weight.first_lines += f64::from(u8::from(with != nothing));
            }
        }
    }
    weights
}

fn all_told(answers: &Answers, question: &Question) -> bool {
    question
        .parts
        .iter()
        .any(|part| value(answers, *part) != Value::Nothing)
}

#[test]
fn drawn_shooters_answer_every_question_they_are_asked() {
    for seed in 0..60 {
        let told = shooter(seed);
        for question in QUESTIONS.iter().filter(|question| question.is_asked(&told)) {
            assert!(
                question.key == "rulebook" || all_told(&told, question),
                "{seed} {}",
                question.key
            );
            assert!(
                all_told(&alone(&told, question), question) || question.key == "rulebook",
                "alone: {seed} {}",
                question.key
            );
        }
    }
}

/// Questions that stand earlier than they weigh, and why.
const FOR_SENSE: [(&str, &str); 3] = [
    (
        "light",
        "told alone it changes every line; cover and dusk belong to the place just told",
    ),
    (
        "ranges",
        "asked for each manner, while it is fresh; told alone it changes nine lines of ten",
    ),
    (
        "rulebook",
        "asked of those who shoot at targets: few have such a rule, but it is not theirs to weigh",
    ),
];

/// How many points a question may weigh more than one before it: about what fifteen shooters
/// with few occasions scatter.
const TOLERANCE_POINTS: f64 = 1.0;

#[test]
fn what_changes_the_line_most_comes_first() {
    let asked = std::env::var("SCOPEWRIGHT_SHOOTERS")
        .ok()
        .and_then(|text| text.parse().ok());
    // A few with fewer occasions hold the order; the table of the document has many with all.
    let (shooters, occasions) = asked.map_or((15, 64), |many| (many, occasions::COUNT));
    let weights = measured(shooters, occasions, asked.is_some());
    println!("{shooters} shooters, {occasions} occasions each\n");
    println!(
        "| question | left out: points lost | left out: another line | another glass | most points, for whom | alone: another line | alone: points won |"
    );
    println!("|---|---|---|---|---|---|---|");
    for (question, w) in QUESTIONS.iter().zip(&weights) {
        let share = |sum: f64| 100.0 * sum / w.asked.max(1.0);
        let (kind, most) = w.most();
        println!(
            "| {} | {:.2} | {:.0} % | {:.0} % | {most:.1}, `{kind}` | {:.0} % | {:.2} |",
            question.key,
            w.points(),
            share(w.last_lines),
            share(w.last_glasses),
            share(w.first_lines),
            w.first_points / w.asked.max(1.0),
        );
    }
    for (at, before) in QUESTIONS.iter().enumerate() {
        if FOR_SENSE.iter().any(|(key, _)| *key == before.key) {
            continue;
        }
        for (behind, weight) in QUESTIONS.iter().zip(&weights).skip(at + 1) {
            assert!(
                behind.stage != before.stage
                    || weight.points() <= weights[at].points() + TOLERANCE_POINTS,
                "{} weighs {:.2} points, {} before it {:.2}",
                behind.key,
                weight.points(),
                before.key,
                weights[at].points(),
            );
        }
    }
}
