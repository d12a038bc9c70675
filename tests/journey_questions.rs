//! Whole ways through the questions: at home by thumb, at the counter, back and forth.

use scopewright::need::answers::{Answers, Manner, Units};
use scopewright::need::counter::{self, Act, Counter};
use scopewright::need::flow::{self, State};
use scopewright::need::link;
use scopewright::need::questions::{Control, Part, QUESTIONS, Question, Stage};
use scopewright::need::shooter::Stop;
use scopewright::need::{Reply, Value, apply, check, parse, range_rows, resolve};

/// A thumb on the pages: every touch of the screen is counted.
struct Thumb {
    answers: Answers,
    at: &'static Question,
    taps: usize,
    seen: Vec<&'static str>,
}

impl Thumb {
    fn at_the_start() -> Self {
        let answers = Answers::default();
        let at = flow::asked(&answers, Stage::First)
            .next()
            .expect("there is a first question");
        // One tap on the opening page.
        Self {
            answers,
            at,
            taps: 1,
            seen: vec![at.key],
        }
    }

    fn does(&mut self, reply: Reply) {
        let before = self.answers.clone();
        self.answers = apply(&self.answers, &reply);
        assert_ne!(before, self.answers, "{reply:?} did nothing");
        self.taps += 1;
    }

    fn taps(&mut self, part: Part, option: &str) {
        assert!(
            self.at.all_parts().any(|each| each == part),
            "{part:?} is not on {}",
            self.at.key
        );
        self.does(Reply::Tap(part, option.to_owned()));
    }

    fn next(&mut self) -> bool {
        self.taps += 1;
        match flow::next(&self.answers, self.at) {
            Some(next) => {
                self.at = next;
                self.seen.push(next.key);
                true
            }
            None => false,
        }
    }
}

/// At most 30 taps from the opening to the advice, nothing typed.
#[test]
fn the_first_eight_are_answered_by_thumb() {
    let mut thumb = Thumb::at_the_start();
    thumb.taps(Part::Uses, "roe_deer");
    thumb.taps(Part::Uses, "wild_boar");
    assert!(thumb.next());
    thumb.taps(Part::Manners, "seat_rail");
    thumb.taps(Part::Manners, "two_point_sticks");
    assert!(thumb.next());
    thumb.taps(Part::Until, "half_hour_after_sunset");
    thumb.taps(Part::Covers, "edge");
    assert!(thumb.next());
    thumb.does(Reply::RangesFit);
    assert!(thumb.next());
    thumb.taps(Part::Band, "C");
    thumb.taps(Part::Attitude, "what_it_is_worth");
    assert!(thumb.next());
    thumb.taps(Part::Cartridge, "308_win_10_7_g");
    thumb.does(Reply::Set(Part::RifleMass, Value::Number(3.3)));
    assert!(thumb.next());
    thumb.does(Reply::Decade(45.0));
    thumb.taps(Part::Glasses, "no_glasses");
    assert!(thumb.next());
    thumb.taps(Part::Rings, "none");
    thumb.taps(Part::Base, "slotted_rail");
    assert!(!thumb.next(), "the eighth is the last");
    // And one on "show the advice" below all answers.
    let taps = thumb.taps + 1;
    assert!(taps <= 30, "{taps} taps");
    assert_eq!(
        thumb.seen,
        [
            "quarry", "manner", "light", "ranges", "money", "rifle", "eye", "mount"
        ]
    );
    assert!(flow::first_open(&thumb.answers, Stage::First).is_none());
    assert!(check(&thumb.answers).is_empty());

    let need = resolve(&thumb.answers);
    assert_eq!(need.situations.len(), 4, "two animals in two manners");
    assert!(
        need.situations
            .iter()
            .all(|each| !each.assumed.what && !each.assumed.manner && !each.assumed.range)
    );
    let seat = need
        .situations
        .iter()
        .find(|each| each.manner == Manner::SeatRail)
        .expect("a seat");
    assert!((seat.share - 4.0 / 6.0 * 4.0 / 6.0).abs() < 1e-12);
    assert_eq!(
        (
            seat.range.nearest_m,
            seat.range.usual_m,
            seat.range.farthest_m
        ),
        (30.0, 80.0, 150.0)
    );
    assert_eq!(seat.stop, Stop::MinutesAfterSunset(30.0));
    assert_eq!(need.eye.age_years.value.value, 45.0);
    assert_eq!(need.load.cartridge.value, "308_win_10_7_g");
    assert!(!need.mount.rings_kept_mm.assumed && need.mount.rings_kept_mm.value.is_none());
}

/// "Not sure" to everything: two taps a page, and a need that says that all is assumed.
#[test]
fn not_sure_is_an_answer_to_everything() {
    let mut thumb = Thumb::at_the_start();
    loop {
        thumb.does(Reply::NotSure(thumb.at.key));
        assert_eq!(flow::state(&thumb.answers, thumb.at), State::NotSure);
        if !thumb.next() {
            break;
        }
    }
    assert!(thumb.taps <= 30);
    let need = resolve(&thumb.answers);
    assert_eq!(
        need,
        resolve(&Answers::default()),
        "the same as nothing said"
    );
    assert!(
        need.situations
            .iter()
            .all(|each| each.assumed.what && each.assumed.stop)
    );
    assert!(
        need.eye.age_years.assumed && need.load.cartridge.assumed && need.rifle.mass_kg.assumed
    );
    assert_eq!(
        (
            need.eye.age_years.value.value,
            need.eye.age_years.value.spread
        ),
        (48.0, 15.0)
    );
    // Roe, boar and fox equally; half from a seat, four in ten over sticks, one in ten driven.
    let share = |key: &str| -> f64 {
        need.situations
            .iter()
            .filter(|each| each.what.key() == key)
            .map(|each| each.share)
            .sum()
    };
    for key in ["roe_deer", "wild_boar", "red_fox"] {
        assert!((share(key) - 1.0 / 3.0).abs() < 1e-12, "{key}");
    }
    let manner = |manner: Manner| -> f64 {
        need.situations
            .iter()
            .filter(|each| each.manner == manner)
            .map(|each| each.share)
            .sum()
    };
    assert!((manner(Manner::SeatRail) - 0.5).abs() < 1e-12);
    assert!((manner(Manner::TwoPointSticks) - 0.4).abs() < 1e-12);
    assert!((manner(Manner::Driven) - 0.1).abs() < 1e-12);
    assert_eq!(need.load.bullet_g.value, 10.7);
    assert_eq!(need.load.muzzle_velocity_m_s.value.value, 810.0);
}

#[test]
fn back_and_forth_loses_nothing() {
    let mut thumb = Thumb::at_the_start();
    thumb.taps(Part::Uses, "red_fox");
    thumb.next();
    thumb.taps(Part::Manners, "driven");
    let before = thumb.answers.clone();
    let back = flow::previous(&thumb.answers, thumb.at).expect("there is one before");
    assert_eq!(back.key, "quarry");
    assert_eq!(
        flow::next(&thumb.answers, back).expect("and one after").key,
        "manner"
    );
    assert_eq!(
        flow::previous(&thumb.answers, back).map(|question| question.key),
        None
    );
    assert_eq!(thumb.answers, before);
    // A second animal keeps what was said of the first, a changed manner keeps the ranges.
    thumb.answers = apply(&thumb.answers, &Reply::RangesFit);
    thumb.answers = apply(&thumb.answers, &Reply::Tap(Part::Uses, "wild_boar".into()));
    thumb.answers = apply(
        &thumb.answers,
        &Reply::Tap(Part::Manners, "seat_rail".into()),
    );
    let rows = range_rows(&thumb.answers);
    assert_eq!(rows.len(), 2);
    assert!(!rows[0].assumed && rows[1].assumed, "{rows:?}");
}

#[test]
fn progress_counts_what_is_asked() {
    let answers = Answers::default();
    let first: Vec<_> = flow::asked(&answers, Stage::First).collect();
    for (at, question) in first.iter().enumerate() {
        let progress = flow::progress(&answers, question).expect("it is asked");
        assert_eq!((progress.position, progress.of), (at + 1, 8));
        assert_eq!(progress.seconds_left, 12 * (8 - at));
    }
    // Two minutes at most for the first eight.
    assert!(
        flow::progress(&answers, first[0])
            .expect("asked")
            .seconds_left
            <= 120
    );
}

/// Questions that cannot matter are not asked.
#[test]
fn conditions_follow_the_answers() {
    let asks = |answers: &Answers, key: &str| {
        flow::asked(answers, Stage::Sharpen).any(|question| question.key == key)
    };
    let only = |what: &str| apply(&Answers::default(), &Reply::Tap(Part::Uses, what.into()));
    assert!(asks(&Answers::default(), "detail") && !asks(&Answers::default(), "rulebook"));
    assert!(asks(&only("roe_deer"), "detail"));
    assert!(!asks(&only("red_fox"), "detail"));
    assert!(!asks(&only("paper_100_m"), "detail"));
    assert!(asks(&only("paper_100_m"), "rulebook") && !asks(&only("paper_100_m"), "carry"));
}

/// What is assumed follows from what is known: a rabbit is shot with a rimfire at rimfire
/// ranges, a field target with an air rifle from its own distances.
#[test]
fn assumptions_follow_from_what_is_known() {
    let only = |what: &str| {
        resolve(&apply(
            &Answers::default(),
            &Reply::Tap(Part::Uses, what.into()),
        ))
    };
    let rabbit = only("rabbit");
    assert_eq!(rabbit.load.cartridge.value, "22_lr_2_6_g_standard");
    assert_eq!(rabbit.situations[0].range.farthest_m, 80.0);
    let field_target = only("field_target_40_mm");
    assert_eq!(field_target.load.cartridge.value, "4_5_mm_air_0_547_g_16_j");
    assert_eq!(field_target.situations[0].range.farthest_m, 42.0);
    let paper = only("paper_100_m");
    assert_eq!(paper.situations[0].manner, Manner::Bench);
    assert_eq!(paper.situations[0].moving_share, 0.0);
    let america =
        parse(r#"{"version": 1, "place": {"latitude_deg": 42, "longitude_deg_east": -76}}"#)
            .expect("valid");
    assert_eq!(
        resolve(&america).situations[0].what.key(),
        "white_tailed_deer"
    );
    let south = parse(r#"{"version": 1, "place": {"latitude_deg": -30}}"#).expect("valid");
    let place = resolve(&south).place;
    assert_eq!((place.first_month.value, place.last_month.value), (2, 7));
}

fn play(acts: &[Act]) -> Counter {
    acts.iter()
        .fold(Counter::new(Units::Metric), |counter, act| {
            counter.after(act)
        })
}

fn tap(part: Part, option: &str) -> Act {
    let question = Question::of_part(part).expect("every part has a question");
    assert!(question.counter, "{part:?} is not on the counter's screen");
    assert!(!matches!(part.control(), Control::Text { .. }));
    Act::Reply(Reply::Tap(part, option.to_owned()))
}

/// Three invented customers, each in within 15 taps.
#[test]
fn three_customers_are_in_within_fifteen_taps() {
    let seat = [
        tap(Part::Cartridge, "308_win_10_7_g"),
        Act::Kind("seat_evening"),
        Act::Reply(Reply::Decade(55.0)),
        tap(Part::Glasses, "varifocal"),
        tap(Part::Annoys, "too_dark"),
        tap(Part::Rings, "25.4"),
        tap(Part::Base, "two_piece"),
        tap(Part::Band, "C"),
        tap(Part::Zoom, "never"),
    ];
    let driven = [
        tap(Part::Cartridge, "9_3x62_18_5_g"),
        Act::Kind("driven"),
        // Also the odd evening from a seat.
        tap(Part::Manners, "seat_rail"),
        tap(Part::Until, "sunset"),
        Act::Reply(Reply::Decade(35.0)),
        tap(Part::Glasses, "no_glasses"),
        tap(Part::Annoys, "too_narrow"),
        tap(Part::Annoys, "hard_to_find_picture"),
        tap(Part::Rings, "none"),
        tap(Part::Base, "slotted_rail"),
        tap(Part::Band, "D"),
        tap(Part::Attitude, "no_limit"),
        tap(Part::Zoom, "before_sitting"),
    ];
    let rimfire = [
        Act::Kind("rabbits"),
        Act::Reply(Reply::Decade(65.0)),
        tap(Part::Glasses, "distance"),
        Act::Reply(Reply::NotSure("sight_now")),
        tap(Part::Rings, "none"),
        tap(Part::Base, "small_dovetail"),
        tap(Part::Band, "A"),
        tap(Part::Attitude, "little_as_sensible"),
        tap(Part::Zoom, "each_shot"),
    ];
    for acts in [&seat[..], &driven[..], &rimfire[..]] {
        let counter = play(acts);
        assert!(counter.taps() <= 15, "{} taps", counter.taps());
        assert_eq!(counter.taps(), acts.len());
        assert!(check(counter.answers()).is_empty());
        for question in counter::questions() {
            assert_ne!(
                flow::state(counter.answers(), question),
                State::Open,
                "{}",
                question.key
            );
        }
        let need = resolve(counter.answers());
        assert!(
            need.situations
                .iter()
                .all(|each| !each.assumed.what && !each.assumed.manner)
        );
    }
}

#[test]
fn the_next_customer_finds_nothing_of_the_last() {
    let counter = play(&[
        Act::Units(Units::Imperial),
        Act::Kind("hill"),
        tap(Part::Cartridge, "270_win_8_4_g"),
        Act::NextCustomer,
    ]);
    assert_eq!(
        counter,
        Counter::new(Units::Imperial),
        "only the shop's units stay"
    );
    assert!(!counter.can_undo());
}

#[test]
fn undo_takes_every_step_back() {
    let acts = [
        Act::Kind("hill"),
        tap(Part::Cartridge, "270_win_8_4_g"),
        Act::Reply(Reply::Decade(45.0)),
        Act::Reply(Reply::NotSure("money")),
    ];
    let mut states = vec![Counter::new(Units::Metric)];
    for act in &acts {
        states.push(states[states.len() - 1].after(act));
    }
    let mut counter = states[states.len() - 1].clone();
    for before in states.iter().rev().skip(1) {
        counter = counter.after(&Act::Undo);
        assert_eq!(counter.answers(), before.answers());
    }
    assert!(!counter.can_undo());
    assert_eq!(counter.after(&Act::Undo).answers(), counter.answers());
}

#[test]
fn the_counter_shows_each_marked_question_once() {
    let marked: Vec<_> = QUESTIONS
        .iter()
        .filter(|question| question.counter && question.key != "ranges")
        .collect();
    assert_eq!(counter::questions().count(), counter::ORDER.len());
    for question in marked {
        assert!(counter::ORDER.contains(&question.key), "{}", question.key);
    }
}

/// Every example in docs/answers.md is read, makes sense, and names every field there is.
#[test]
fn the_examples_of_the_schema_are_valid() {
    let page = include_str!("../docs/answers.md");
    let mut examples: Vec<&str> = Vec::new();
    for (at, piece) in page.split("```json\n").enumerate() {
        if at > 0 {
            examples.push(piece.split("```").next().unwrap_or_default());
        }
    }
    examples.extend(
        page.split('`')
            .filter(|piece| piece.starts_with("{\"version\"")),
    );
    assert!(examples.len() > 60, "{} examples", examples.len());
    for example in &examples {
        let answers = parse(example).unwrap_or_else(|problem| panic!("{example}: {problem:?}"));
        let problems = check(&answers);
        assert!(problems.is_empty(), "{example}: {problems:?}");
        assert!(!resolve(&answers).situations.is_empty());
        // A link carries it back, every known word in two characters.
        let shared = link::encode(&answers);
        assert_eq!(
            link::decode(&shared).map(|opened| opened.answers),
            Ok(answers.clone())
        );
        let own_words = usize::from(answers.sight_now.is_some_and(|now| now.line.is_some()));
        assert_eq!(
            shared.matches(".s").count(),
            own_words,
            "{example}: {shared}"
        );
    }
    for key in scopewright::flight::cartridges::typical_loads()
        .iter()
        .map(|load| load.key)
    {
        let answers = apply(
            &Answers::default(),
            &Reply::Tap(Part::Cartridge, key.to_owned()),
        );
        assert!(
            !link::encode(&answers).contains(".s"),
            "{key} is not in link_words.rs"
        );
    }
    let source = include_str!("../src/need/answers.rs");
    let mut count = 0;
    for line in source.lines() {
        let Some(field) = line
            .trim()
            .strip_prefix("pub ")
            .and_then(|rest| rest.split_once(": "))
        else {
            continue;
        };
        if field.0.contains(' ') {
            continue;
        }
        count += 1;
        assert!(
            page.contains(&format!("| `{}` |", field.0)),
            "docs/answers.md lacks {}",
            field.0
        );
        assert!(
            examples
                .iter()
                .any(|example| example.contains(&format!("\"{}\"", field.0))),
            "no example of {}",
            field.0
        );
    }
    assert!(count > 60, "{count} fields");
    for what in scopewright::need::quarry::What::all() {
        assert!(
            page.contains(&format!("`{}`", what.key())),
            "{}",
            what.key()
        );
    }
    for question in &QUESTIONS {
        assert!(
            page.contains(&format!("`{}`", question.key)),
            "{}",
            question.key
        );
    }
}
