//! What must hold of the advice, whoever asks.

mod random_answers;

use proptest::prelude::*;
use random_answers::answers_of;
use scopewright::advice::candidates::Candidate;
use scopewright::advice::coverage::{Coverage, Plan, account};
use scopewright::advice::difference::difference;
use scopewright::advice::occasions::COUNT;
use scopewright::advice::ranking::NEAR_TIE_POINTS;
use scopewright::advice::report::{Advice, Doubt, Element, LastLight, Quantity};
use scopewright::advice::surety::{WORLDS, Worlds};
use scopewright::advice::world::World;
use scopewright::advice::{Ranking, advise};
use scopewright::need::answers::{
    Annoyance, Answers, Distance, Light, Ranges, SightNow, StopTime, Weights,
};
use scopewright::need::{check, resolve};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};

fn assert_sane(advice: &Advice) {
    assert!(!advice.picks.is_empty());
    for pick in &advice.picks {
        let sum: f64 = pick.served.value + pick.losses.iter().map(|l| l.share).sum::<f64>();
        assert!((sum - 1.0).abs() < 1e-5, "served and losses make {sum}");
        assert!(pick.line.mass_g > 150.0 && pick.line.mass_g < 2000.0);
        assert!(pick.behind_points >= -1e-9 && pick.behind_points.is_finite());
        assert!(pick.ranges.mag_low.least <= pick.line.mag_low);
        assert!(pick.ranges.mag_low.most >= pick.line.mag_low);
    }
    for reason in &advice.reasons {
        assert!(reason.weight_points.is_finite());
    }
    for warning in &advice.warnings {
        for effect in warning.facts.iter().chain(&warning.effects) {
            assert!(effect.value.is_finite(), "{warning:?}");
        }
    }
    // JSON writes what is not finite as null.
    let text = serde_json::to_string(advice).unwrap();
    let read: Advice = serde_json::from_str(&text).unwrap();
    assert_eq!(&read, advice, "a round trip through JSON changes nothing");
}

/// Advises on so many answers from a seed on, on every core, and says after every `told` how
/// many are done; the seeds of all that failed are named at the end.
fn some(from: u64, rounds: u64, told: u64) {
    let threads = std::thread::available_parallelism().map_or(1, |n| n.get() as u64);
    let (done, failed) = (AtomicU64::new(0), Mutex::new(Vec::new()));
    std::thread::scope(|scope| {
        for thread in 0..threads {
            let (done, failed) = (&done, &failed);
            scope.spawn(move || {
                for seed in (from..from + rounds)
                    .skip(thread as usize)
                    .step_by(threads as usize)
                {
                    let sane = std::panic::catch_unwind(|| {
                        let answers = answers_of(seed);
                        assert_eq!(check(&answers), []);
                        assert_sane(&advise(&answers).unwrap());
                    });
                    if sane.is_err() {
                        failed.lock().unwrap().push(seed);
                    }
                    let done = done.fetch_add(1, Ordering::Relaxed) + 1;
                    if done.is_multiple_of(told) {
                        println!(
                            "{done} of {rounds}, {} failed",
                            failed.lock().unwrap().len()
                        );
                    }
                }
            });
        }
    });
    let failed = failed.into_inner().unwrap();
    assert!(failed.is_empty(), "the messages stand above: {failed:?}");
}

#[test]
fn random_answers_give_advice_in_finite_numbers() {
    some(0, 300, 300);
}

/// `cargo xtask soak` draws where to begin.
#[test]
#[ignore = "minutes: `cargo xtask soak` runs it"]
fn ten_thousand_random_answers_give_advice() {
    let drawn = std::env::var("SCOPEWRIGHT_SEED").unwrap_or_default();
    let from: u64 = drawn.parse().unwrap_or(1000);
    println!("answers {from} to {}", from + 9_999);
    some(from, 10_000, 250);
}

#[test]
fn the_same_answers_give_the_same_advice() {
    for seed in [3, 7, 11] {
        let answers = answers_of(seed);
        assert_eq!(advise(&answers), advise(&answers));
    }
}

#[test]
fn eight_times_the_occasions_change_no_pick_beyond_a_near_tie() {
    for seed in [1, 2, 5, 9, 14, 23] {
        let need = resolve(&answers_of(seed));
        let usual = Ranking::new(&need).finish();
        let many = Ranking::in_world(&need, World::MIDDLE, 8 * COUNT).finish();
        let behind = many.values[many.best] - many.values[usual.best];
        println!(
            "answers {seed}: {behind:.2} points behind among {} occasions",
            8 * COUNT
        );
        assert!(behind <= NEAR_TIE_POINTS, "answers {seed}: {behind}");
    }
}

#[test]
fn what_is_better_at_everything_ranks_no_lower() {
    // At equal all else more transmission and less glare never lose occasions.
    use scopewright::sight::GlassGrade;
    for seed in [1, 4, 8] {
        let ranked = Ranking::new(&resolve(&answers_of(seed))).finish();
        let mut sight = ranked.candidates[ranked.best].specification;
        let mut last = -1.0;
        for grade in [GlassGrade::Basic, GlassGrade::Good, GlassGrade::Best] {
            sight.grade = grade;
            let served = account(&ranked.ground, &sight).served;
            assert!(
                served >= last - 1e-6,
                "answers {seed}: {served} after {last}"
            );
            last = served;
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn more_weight_on_mass_never_makes_the_pick_heavier(seed in 0u64..10_000) {
        let mut answers = answers_of(seed);
        let mut last = f64::INFINITY;
        for percent in [0.0, 1.0, 4.0, 10.0] {
            answers.weights = Some(Weights {
                mass_percent_per_100_g: Some(percent),
                ..Weights::default()
            });
            let ranked = Ranking::new(&resolve(&answers)).finish();
            let mass_g = ranked.candidates[ranked.best].mass_g;
            prop_assert!(mass_g <= last + 1e-9, "{} g after {} g at {} %", mass_g, last, percent);
            last = mass_g;
        }
    }
}

#[test]
fn worlds_agree_with_full_rankings_and_are_counted() {
    let ranked = Ranking::new(&resolve(&answers_of(6))).finish();
    let mut worlds = Worlds::new(&ranked, &[]);
    while !worlds.step() {}
    let surety = worlds.surety();
    assert_eq!(surety.worlds, WORLDS);
    assert!(surety.first <= surety.first_or_tied && surety.first_or_tied <= WORLDS);
    let unseated: u32 = surety.unseated_by.iter().map(|u| u.worlds).sum();
    assert_eq!(unseated, WORLDS - surety.first_or_tied);
    // In slices, as the page without a worker goes on, it is the same.
    let mut slices = Worlds::new(&ranked, &[ranked.best]);
    while !slices.step_some(100) {}
    assert_eq!(slices.surety(), surety);
    let spreads = slices.served_spreads();
    assert!(spreads.len() == 1 && spreads[0] > 0.0 && spreads[0] < 0.5);
}

#[test]
fn what_unseats_a_pick_is_a_doubt_that_moves_it() {
    // By day and dead on at short range neither cloud nor the load can be what unseats.
    let mut answers = Answers {
        version: 1,
        ..Answers::default()
    };
    answers.light = Some(Light {
        until: Some(StopTime::Daylight),
        ..Light::default()
    });
    answers.ranges = Some(Ranges {
        nearest_m: 10.0,
        usual_m: 25.0,
        farthest_m: 45.0,
    });
    let ranked = Ranking::new(&resolve(&answers)).finish();
    let mut worlds = Worlds::new(&ranked, &[]);
    while !worlds.step() {}
    let surety = worlds.surety();
    println!("{surety:?}");
    assert!(surety.first_or_tied < WORLDS, "nothing to look at");
    for unseats in &surety.unseated_by {
        assert!(
            !matches!(
                unseats.doubt,
                Doubt::Cloud | Doubt::Velocity | Doubt::Ground
            ),
            "{unseats:?}"
        );
    }
}

#[test]
fn what_is_dominated_ranks_no_higher() {
    for seed in [2, 5, 12] {
        let ranked = Ranking::new(&resolve(&answers_of(seed))).finish();
        let all = ranked.candidates;
        let mut pairs = 0;
        for (i, a) in all.iter().enumerate().step_by(11) {
            for (j, b) in all.iter().enumerate().step_by(7) {
                let (s, o) = (&a.specification, &b.specification);
                let same_handling = (s.reticle, s.plane, s.illumination, s.elevation)
                    == (o.reticle, o.plane, o.illumination, o.elevation)
                    && s.parallax == o.parallax
                    && s.tube_mm == o.tube_mm;
                let dominates = ranked.served[i] >= ranked.served[j]
                    && a.mass_g <= b.mass_g
                    && a.price <= b.price
                    && s.objective_mm <= o.objective_mm
                    && s.magnification_low <= o.magnification_low
                    && s.magnification_high >= o.magnification_high;
                if same_handling && dominates && ranked.values[i].is_finite() {
                    pairs += 1;
                    assert!(
                        ranked.values[i] >= ranked.values[j] - 1e-9,
                        "answers {seed}: {a:?} under {b:?}"
                    );
                }
            }
        }
        assert!(pairs > 30, "{pairs} pairs are too few to tell");
    }
}

#[test]
fn stated_ranges_are_corrected_where_nobody_measured() {
    let mut answers = answers_of(1);
    answers.uses.clear();
    answers.ranges = Some(Ranges {
        nearest_m: 40.0,
        usual_m: 100.0,
        farthest_m: 220.0,
    });
    let taken = |rangefinder: Option<bool>| {
        let mut answers = answers.clone();
        answers.distance = rangefinder.map(|is| Distance {
            rangefinder: Some(is),
            ..Distance::default()
        });
        let advice = advise(&answers).unwrap();
        assert_eq!(advice.facts.typical.usual_m, 100.0, "told as stated");
        advice.facts.range_taken
    };
    assert_eq!(taken(Some(true)), None);
    let guessed = taken(Some(false)).unwrap();
    // 12.5 % long with a spread of 20 %.
    assert!((guessed.value - 100.0 / 1.125).abs() < 1e-9);
    assert!((guessed.spread - 0.2 * guessed.value).abs() < 1e-9);
    let unsaid = taken(None).unwrap();
    assert!(guessed.value < unsaid.value && unsaid.value < 100.0);
    let mean = |rangefinder| {
        let mut answers = answers.clone();
        answers.distance = Some(Distance {
            rangefinder: Some(rangefinder),
            ..Distance::default()
        });
        let ranked = Ranking::new(&resolve(&answers)).finish();
        let occasions = &ranked.ground.occasions;
        occasions.iter().map(|o| o.range_m).sum::<f64>() / occasions.len() as f64
    };
    assert!((mean(false) / mean(true) - 1.0 / 1.125).abs() < 1e-9);
}

#[test]
fn the_sight_owned_now_is_judged_and_kept_where_it_ties() {
    let mut kept = 0;
    for seed in 0..12 {
        let mut answers = answers_of(seed);
        answers.rulebook = None;
        let first = advise(&answers).unwrap().picks[0].line;
        answers.sight_now = Some(SightNow {
            line: Some(format!(
                "{}-{}x{}",
                first.mag_low, first.mag_high, first.objective_mm
            )),
            annoys: vec![Annoyance::TooHeavy, Annoyance::TooDark],
        });
        let owned = advise(&answers).unwrap().owned.unwrap();
        assert_eq!(owned.annoys.len(), 2);
        let judged = owned.judged.unwrap();
        assert_eq!(judged.keep, judged.behind_points <= NEAR_TIE_POINTS);
        kept += i32::from(judged.keep);
        answers.sight_now.as_mut().unwrap().line = Some("36x42".to_string());
        let judged = advise(&answers).unwrap().owned.unwrap().judged.unwrap();
        assert!(judged.behind_points.is_finite());
        // A fixed 36 power serves nobody who moves; where it serves, it may be kept.
        assert!(
            !judged.keep || judged.served.value > 0.3,
            "answers {seed}: {judged:?}"
        );
    }
    // The same box of usual make, with nothing to pay: what it lacks (a lit dot) may still tell.
    assert!(kept >= 2, "{kept} of 12 kept");
}

/// Who is annoyed is never told of a sight that is worse in that very thing, what it shifts is
/// said, and somebody's line is another for it.
#[test]
fn what_annoys_moves_the_line_its_own_way_and_never_the_other() {
    use Annoyance as A;
    let of = |annoys: &[Annoyance], line: Option<&str>, seed: u64| {
        let mut answers = answers_of(seed);
        answers.rulebook = None;
        answers.sight_now = Some(SightNow {
            line: line.map(str::to_string),
            annoys: annoys.to_vec(),
        });
        advise(&answers).unwrap()
    };
    let everything = [
        A::TooDark,
        A::TooNarrow,
        A::TooHeavy,
        A::HardToFindPicture,
        A::NotFarEnough,
    ];
    for what in everything {
        let mut moved = 0;
        // A wide sight is too narrow for few whose next one would be narrower still.
        let lines = match what {
            A::TooNarrow => [Some("1.5-6x42"), Some("2-7x32"), None],
            _ => [Some("4x32"), Some("6-18x42"), None],
        };
        for (seed, line) in (0..10).zip(lines.iter().cycle()) {
            let plain = of(&[], *line, seed);
            let advice = of(&[what], *line, seed);
            let [before, now] = [&plain, &advice].map(|a| a.picks[0].line);
            let row = advice.owned.as_ref().unwrap().annoys[0];
            assert_eq!(row.is_change, line.is_some());
            assert_eq!(row.otherwise.is_some(), now != before, "{what:?} {seed}");
            assert!(row.otherwise.is_none_or(|other| other == before));
            if row.shift.is_none_or(|shift| shift.to <= shift.from + 1e-6) {
                assert_eq!(now, before, "{what:?} {seed}");
            }
            moved += u32::from(now != before);
            let least = |now: f64, before: f64, wanted: f64| {
                assert!(
                    now >= before.min(wanted) - 1e-9,
                    "{what:?} {seed}: {now} after {before}"
                );
            };
            let wanted = row.shift.map_or(0.0, |shift| shift.to);
            match what {
                A::TooHeavy => assert!(now.mass_g <= before.mass_g + 1e-9, "{seed}"),
                A::TooNarrow => least(
                    now.field_low_m_per_100m,
                    before.field_low_m_per_100m,
                    wanted,
                ),
                A::NotFarEnough => least(now.mag_high, before.mag_high, wanted),
                A::HardToFindPicture => {
                    let exit_mm = |advice: &Advice| {
                        let pick = &advice.picks[0];
                        (pick.line.objective_mm / pick.mag_in_use.day).min(11.0)
                    };
                    least(exit_mm(&advice), exit_mm(&plain), f64::INFINITY);
                }
                A::TooDark => {
                    let until = |advice: &Advice| match advice.facts.tonight.this_sight {
                        LastLight::At { minutes, .. } => minutes,
                        _ => 0.0,
                    };
                    least(until(&advice), until(&plain) - 0.5, f64::INFINITY);
                }
            }
        }
        assert!(moved > 0, "{what:?} moves nobody's line");
    }
}

#[test]
fn a_difference_names_what_changed_and_nothing_else() {
    let one = advise(&answers_of(2)).unwrap();
    let none = difference(&one, &one).unwrap();
    assert!(none.elements.is_empty() && none.weights.is_empty() && none.losses.is_empty());
    for seed in [3, 7, 8] {
        let other = advise(&answers_of(seed)).unwrap();
        let found = difference(&one, &other).unwrap();
        let (a, b) = (&one.picks[0].line, &other.picks[0].line);
        let names = |element| found.elements.iter().any(|c| c.element == element);
        assert_eq!(names(Element::MagLow), a.mag_low != b.mag_low);
        assert_eq!(
            names(Element::ObjectiveMm),
            a.objective_mm != b.objective_mm
        );
        assert_eq!(names(Element::Reticle), a.reticle != b.reticle);
        assert_eq!(names(Element::Parallax), a.parallax != b.parallax);
        assert_eq!(found.served[1], other.picks[0].served.value);
        for loss in &found.losses {
            assert!((loss.to - loss.from).abs() >= 0.005);
        }
        // The other way round it is the same change back.
        let back = difference(&other, &one).unwrap();
        assert_eq!(back.elements.len(), found.elements.len());
    }
}

#[test]
fn full_rankings_of_four_worlds_give_the_same_first_pick() {
    for seed in [2, 6] {
        let need = resolve(&answers_of(seed));
        let ranked = Ranking::new(&need).finish();
        let worlds = Worlds::new(&ranked, &[]);
        for index in 0..4 {
            let world = worlds.world(index);
            let full = Ranking::in_world(&need, world, COUNT).finish();
            let again = worlds.first_in(&world);
            let place = full
                .candidates
                .iter()
                .position(|c| c.id == again)
                .expect("a candidate of the list");
            // The same, or one that is worth exactly as much.
            let behind = full.values[full.best] - full.values[place];
            println!("answers {seed}, world {index}: {behind:.3} points apart");
            assert!(behind < 1e-9, "answers {seed}, world {index}: {behind}");
        }
    }
}

#[test]
fn others_and_their_order_change_nothing() {
    let ranked = Ranking::new(&resolve(&answers_of(4))).finish();
    let share_of = |some: &[Candidate]| {
        let plan = Plan::of(some);
        let mut coverage = Coverage::new(Arc::clone(&ranked.ground));
        while !coverage.step(some, &plan, 500) {}
        coverage.into_served()
    };
    let mut some: Vec<Candidate> = ranked.candidates.iter().copied().step_by(7).collect();
    let forward = share_of(&some);
    for (served, full) in forward.iter().zip(ranked.served.iter().step_by(7)) {
        assert_eq!(served.to_bits(), full.to_bits(), "without the others");
    }
    some.reverse();
    let backward = share_of(&some);
    for (served, other) in forward.iter().zip(backward.iter().rev()) {
        assert_eq!(served.to_bits(), other.to_bits(), "in the other order");
    }
}

#[test]
fn a_later_minute_is_never_told_without_its_spread() {
    let advice = advise(&answers_of(2)).unwrap();
    let effects = advice
        .reasons
        .iter()
        .flat_map(|r| r.less.iter().chain(&r.more))
        .flat_map(|s| &s.effects)
        .filter(|e| e.quantity == Quantity::MinutesTonight);
    for effect in effects {
        assert!(effect.spread > 0.0);
    }
}

/// What the worker sends is what the page shows.
#[test]
fn an_advice_passes_whole() {
    use scopewright::plain;
    for seed in 0..6 {
        let advice = advise(&answers_of(seed)).unwrap();
        let passed: Advice = plain::read(plain::written(advice.clone())).unwrap();
        assert_eq!(
            serde_json::to_string(&passed).unwrap(),
            serde_json::to_string(&advice).unwrap()
        );
    }
}
