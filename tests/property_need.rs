//! What people type and tap: limits, round trips, and nothing that panics.

use proptest::prelude::*;
use scopewright::need::answers::{Answers, Units};
use scopewright::need::input::{InputProblem, Quantity, Unit, read};
use scopewright::need::questions::{Control, Part, QUESTIONS};
use scopewright::need::{Reply, Value, apply, resolve, value};

const QUANTITIES: [Quantity; 25] = [
    Quantity::Age,
    Quantity::Pupil,
    Quantity::Range,
    Quantity::Minutes,
    Quantity::BulletMass,
    Quantity::PowderMass,
    Quantity::Velocity,
    Quantity::Coefficient,
    Quantity::RifleMass,
    Quantity::BarrelLength,
    Quantity::BarrelRadius,
    Quantity::RingsHeight,
    Quantity::Bell,
    Quantity::RingSpacing,
    Quantity::RailHeight,
    Quantity::Incline,
    Quantity::SmallAngle,
    Quantity::OnPaper,
    Quantity::HeightAboveSea,
    Quantity::Latitude,
    Quantity::Longitude,
    Quantity::Temperature,
    Quantity::Magnification,
    Quantity::SightMass,
    Quantity::Money,
];

fn metric(quantity: Quantity, typed: &str) -> f64 {
    match read(quantity, Units::Metric, typed) {
        Ok(read) => read.metric,
        Err(problem) => panic!("{typed}: {problem:?}"),
    }
}

/// Conversions by the international yard and pound agreement of 1959 (exact); 1 MOA =
/// π/10.8 mrad by definition.
#[test]
fn numbers_are_read_as_people_type_them() {
    let close = |a: f64, b: f64| (a - b).abs() <= 1e-9 * b.abs().max(1.0);
    for (quantity, typed, wanted) in [
        (Quantity::Pupil, "6,5", 6.5),
        (Quantity::Pupil, "6.5 mm", 6.5),
        (Quantity::Range, "150", 150.0),
        (Quantity::Range, "150 yd", 137.16),
        (Quantity::Range, "150yds.", 137.16),
        (Quantity::Range, "about 80 m", 80.0),
        (Quantity::Range, "1 200", 1200.0),
        (Quantity::Range, "1\u{202F}200\u{A0}m", 1200.0),
        (Quantity::Range, "0.3 km", 300.0),
        (Quantity::RifleMass, "3.1kg", 3.1),
        (Quantity::RifleMass, "3,1 KG", 3.1),
        (
            Quantity::RifleMass,
            "7 lb 2 oz",
            7.0 * 0.453_592_37 + 2.0 * 0.028_349_523_125,
        ),
        (
            Quantity::RifleMass,
            "7 lb 2",
            7.0 * 0.453_592_37 + 2.0 * 0.028_349_523_125,
        ),
        (Quantity::RifleMass, "3 kg 200", 3.2),
        (Quantity::RifleMass, "3100 g", 3.1),
        (Quantity::BarrelLength, "22 1/2 in", 57.15),
        (Quantity::BarrelLength, "22½\"", 57.15),
        (Quantity::BarrelLength, "1 ft 10 in", 55.88),
        (Quantity::RingsHeight, "3/4 in", 19.05),
        (Quantity::RingsHeight, "1 1/4 in", 31.75),
        (Quantity::RingsHeight, "1¼ in", 31.75),
        (Quantity::BulletMass, "165 gr", 10.691_820_15),
        (Quantity::Velocity, "2700 fps", 822.96),
        (Quantity::Velocity, "2,700 ft/s", 822.96),
        (Quantity::Velocity, "810 m/s", 810.0),
        (Quantity::Temperature, "−5 °C", -5.0),
        (Quantity::Temperature, "23 °F", -5.0),
        (Quantity::Incline, "20 MOA", 5.817_764_173_314_432),
        (Quantity::Latitude, "-33.9", -33.9),
        (Quantity::Latitude, "51,5°", 51.5),
        (Quantity::Money, "1.250,50", 1250.5),
        (Quantity::Minutes, "1 h 10", 70.0),
        (Quantity::Minutes, "1.5 h", 90.0),
        (Quantity::Coefficient, "0,475", 0.475),
        (Quantity::Coefficient, ".475", 0.475),
        (Quantity::Coefficient, "0.285 G7", 0.285),
        (Quantity::Magnification, "12x", 12.0),
        (Quantity::Age, "46 years", 46.0),
    ] {
        let got = metric(quantity, typed);
        assert!(
            close(got, wanted),
            "{quantity:?} {typed}: {got}, not {wanted}"
        );
    }
}

/// One mark before three digits groups thousands in one country and is the decimal sign in
/// another: where only one reading makes sense it is taken, else it is asked.
#[test]
fn a_mark_before_three_digits_is_decided_by_sense_or_asked() {
    assert_eq!(metric(Quantity::Velocity, "1,050"), 1050.0);
    assert_eq!(metric(Quantity::Coefficient, "1.050"), 1.05);
    for (quantity, typed) in [
        (Quantity::Money, "€ 1.250"),
        (Quantity::HeightAboveSea, "2,000 m"),
    ] {
        assert!(matches!(
            read(quantity, Units::Metric, typed),
            Err(InputProblem::Ambiguous { .. })
        ));
    }
}

#[test]
fn what_cannot_be_says_why() {
    fn problem(quantity: Quantity, typed: &str) -> InputProblem {
        read(quantity, Units::Metric, typed).unwrap_err()
    }
    assert_eq!(problem(Quantity::Range, "  "), InputProblem::Empty);
    for words in [
        "eighty", "far", "?", "NaN", "inf", "1/0", "..", "1.2.3.4", "--5", "1,2,3",
    ] {
        assert!(
            matches!(
                problem(Quantity::Range, words),
                InputProblem::NoNumber { .. }
            ),
            "{words}: {:?}",
            problem(Quantity::Range, words)
        );
    }
    assert!(matches!(
        problem(Quantity::Range, "80 paces"),
        InputProblem::UnknownUnit { unit, .. } if unit == "paces"
    ));
    assert_eq!(
        problem(Quantity::Range, "150 kg"),
        InputProblem::OtherUnit {
            unit: Unit::Kg,
            wanted: Unit::M
        }
    );
    assert_eq!(
        problem(Quantity::Age, "3"),
        InputProblem::OutOfRange {
            value: 3.0,
            unit: Unit::Years,
            least: 8.0,
            most: 95.0
        }
    );
    assert!(matches!(
        problem(Quantity::Age, "300"),
        InputProblem::OutOfRange { .. }
    ));
    assert!(matches!(
        problem(Quantity::Age, &"9".repeat(400)),
        InputProblem::OutOfRange { .. } | InputProblem::NoNumber { .. }
    ));
    // 2700 without a unit is no velocity in m/s, but a usual one in ft/s: ask.
    assert!(matches!(
        problem(Quantity::Velocity, "2700"),
        InputProblem::OtherUnitMeant { meant: Unit::FtPerS, metric, .. } if (metric - 822.96).abs() < 1e-9
    ));
    assert!(matches!(
        problem(Quantity::BulletMass, "165"),
        InputProblem::OtherUnitMeant {
            meant: Unit::Grain,
            ..
        }
    ));
    assert!(matches!(
        read(Quantity::RifleMass, Units::Imperial, "2.2"),
        Err(InputProblem::OtherUnitMeant {
            meant: Unit::Kg,
            ..
        })
    ));
    // With the unit typed there is nothing to ask.
    assert!(matches!(
        problem(Quantity::Velocity, "2700 m/s"),
        InputProblem::OutOfRange { .. }
    ));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is typed: an answer, never a panic, and nothing that is not finite.
    #[test]
    fn nothing_typed_panics(text in "\\PC{0,40}", which in 0..QUANTITIES.len(), imperial: bool) {
        let units = if imperial { Units::Imperial } else { Units::Metric };
        if let Ok(read) = read(QUANTITIES[which], units, &text) {
            let (least, most) = QUANTITIES[which].limits();
            prop_assert!(read.metric >= least && read.metric <= most);
        }
    }

    /// The same for what is nearly a number.
    #[test]
    fn nothing_nearly_a_number_panics(text in "[-+0-9 .,'/½¼a-z°\"]{0,16}", which in 0..QUANTITIES.len()) {
        if let Ok(read) = read(QUANTITIES[which], Units::Metric, &text) {
            prop_assert!(read.metric.is_finite());
        }
    }

    /// Shown in either system and read back, a value is itself to the digits shown.
    #[test]
    fn units_go_there_and_back(which in 0..QUANTITIES.len(), at in 0.0..=1.0_f64, imperial: bool) {
        let quantity = QUANTITIES[which];
        let units = if imperial { Units::Imperial } else { Units::Metric };
        let (least, most) = quantity.limits();
        let metric = least + at * (most - least);
        let exact = quantity.metric(units, quantity.shown(units, metric));
        prop_assert!((exact - metric).abs() <= 1e-9 * metric.abs().max(1.0));
        let typed = quantity.typed(units, metric);
        match read(quantity, units, &typed) {
            Ok(read) => {
                let again = quantity.typed(units, read.metric);
                prop_assert_eq!(typed, again);
            }
            // The last digit shown may lie beyond the limit by rounding; 1.234 has two readings.
            Err(InputProblem::OutOfRange { .. } | InputProblem::OtherUnitMeant { .. }) => {
                prop_assert!(!(0.01..=0.99).contains(&at), "{typed}");
            }
            Err(InputProblem::Ambiguous { .. }) => {}
            Err(problem) => prop_assert!(false, "{typed}: {problem:?}"),
        }
    }
}

fn parts() -> Vec<Part> {
    QUESTIONS
        .iter()
        .flat_map(|question| question.all_parts())
        .collect()
}

/// Some value that a part can hold, chosen by two numbers.
fn some_value(part: Part, which: usize, at: f64) -> Option<Value> {
    Some(match part.control() {
        Control::One(options) => Value::One(options[which % options.len()].to_owned()),
        Control::Many { options, shares } => {
            let often = if shares { (4.0, 2.0) } else { (1.0, 1.0) };
            let first = which % options.len();
            let second = (which + 1) % options.len();
            Value::Many(vec![
                (options[first].to_owned(), often.0),
                (options[second].to_owned(), often.1),
            ])
        }
        Control::Quarry => {
            let keys: Vec<_> = scopewright::need::quarry::What::all()
                .map(|what| what.key())
                .collect();
            Value::Many(vec![(keys[which % keys.len()].to_owned(), 4.0)])
        }
        Control::Number(quantity, _) => {
            let (least, most) = quantity.limits();
            Value::Number(least + at * (most - least))
        }
        Control::Decade(_) => Value::Number(8.0 + at * 87.0),
        Control::Tick | Control::YesNo => Value::Flag(true),
        Control::Month => Value::Number((which % 12 + 1) as f64),
        Control::Text { .. } => Value::Text(format!("3-{}x50", which + 1)),
        Control::Cartridge | Control::Ranges => return None,
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// What was set is what is read, for every part, and clearing a question leaves nothing.
    #[test]
    fn what_is_set_is_held(which in 0..200_usize, at in 0.0..=1.0_f64) {
        for part in parts() {
            let Some(new) = some_value(part, which, at) else { continue };
            let set = apply(&Answers::default(), &Reply::Set(part, new.clone()));
            let held = value(&set, part);
            // These two say the same as never asked.
            let silent = matches!((part, &new), (Part::Snow, Value::One(key)) if key == "never")
                || matches!((part, &new), (Part::TownGlow, Value::One(key)) if key == "dark")
                || matches!((part, &new), (Part::Lens, Value::One(key)) if key == "natural");
            if silent {
                prop_assert_eq!(held, Value::Nothing);
            } else {
                prop_assert_eq!(&held, &new, "{:?}", part);
            }
            let question = scopewright::need::questions::Question::of_part(part).unwrap();
            let cleared = apply(&set, &Reply::Clear(question.key));
            prop_assert_eq!(cleared, Answers { version: 1, ..Answers::default() });
            let unsure = apply(&set, &Reply::NotSure(question.key));
            prop_assert_eq!(unsure.not_sure, vec![question.key.to_owned()]);
        }
    }

    /// Any heap of replies gives answers that resolve: shares sum to 1, ranges are in order.
    #[test]
    fn any_replies_resolve(replies in prop::collection::vec((0..200_usize, 0.0..=1.0_f64), 0..40)) {
        let parts = parts();
        let mut answers = Answers::default();
        for (which, at) in replies {
            let part = parts[which % parts.len()];
            if let Some(new) = some_value(part, which / 3, at) {
                answers = apply(&answers, &Reply::Set(part, new));
            }
            if which % 7 == 0 {
                answers = apply(&answers, &Reply::RangesFit);
            }
            if which % 11 == 0 {
                answers = apply(&answers, &Reply::NotSure(QUESTIONS[which % QUESTIONS.len()].key));
            }
        }
        let need = resolve(&answers);
        let sum: f64 = need.situations.iter().map(|each| each.share).sum();
        prop_assert!((sum - 1.0).abs() < 1e-9);
        for each in &need.situations {
            prop_assert!(0.0 < each.range.nearest_m);
            prop_assert!(each.range.nearest_m <= each.range.usual_m);
            prop_assert!(each.range.usual_m <= each.range.farthest_m);
        }
        let covers: f64 = need.light.covers.value.iter().map(|each| each.share).sum();
        prop_assert!((covers - 1.0).abs() < 1e-9);
    }
}

/// The two-piece log-normal passes through the three ranges that were said.
#[test]
fn ranges_pass_through_what_was_said() {
    let need = resolve(&Answers::default());
    let range = need.situations[0].range;
    assert!((range.range_m(-2.05) - range.nearest_m).abs() < 1e-9);
    assert!((range.range_m(0.0) - range.usual_m).abs() < 1e-9);
    assert!((range.range_m(2.05) - range.farthest_m).abs() < 1e-9);
    assert!((range.range_m(9.0) - range.farthest_m).abs() < 1e-9);
}

mod saved_and_shared {
    use super::*;
    use scopewright::need::answers::VERSION;
    use scopewright::need::kinds::KINDS;
    use scopewright::need::link::{LinkProblem, decode, encode};
    use scopewright::need::{ParseProblem, Wrong, check, parse, rescue, to_json};

    fn heap(replies: &[(usize, f64)]) -> Answers {
        let parts = parts();
        let mut answers = Answers {
            version: VERSION,
            ..Answers::default()
        };
        for (which, at) in replies {
            let part = parts[which % parts.len()];
            if let Some(new) = some_value(part, which / 3, *at) {
                answers = apply(&answers, &Reply::Set(part, new));
            }
        }
        answers
    }

    /// A customer who answered everything usual by tapping.
    fn usual() -> Answers {
        let mut answers = KINDS[0].fill(&Answers::default());
        for (part, option) in [
            (Part::Glasses, "distance"),
            (Part::Cartridge, "308_win_10_7_g"),
            (Part::RifleKind, "bolt"),
            (Part::Rings, "30"),
            (Part::Base, "slotted_rail"),
            (Part::Band, "C"),
            (Part::Attitude, "what_it_is_worth"),
            (Part::Annoys, "too_dark"),
            (Part::Zoom, "before_sitting"),
            (Part::Detail, "antler"),
            (Part::Carry, "few_km"),
            (Part::DistanceHabit, "dead_on"),
            (Part::LitMark, "wanted"),
        ] {
            answers = apply(&answers, &Reply::Tap(part, option.to_owned()));
        }
        answers = apply(&answers, &Reply::Decade(45.0));
        answers = apply(&answers, &Reply::Set(Part::RifleMass, Value::Number(3.3)));
        answers = apply(
            &answers,
            &Reply::Set(Part::SightLine, Value::Text("3-12x50".to_owned())),
        );
        apply(&answers, &Reply::NotSure("place"))
    }

    /// A code of more than 400 characters does not scan off a tablet.
    #[test]
    fn usual_answers_fit_into_a_code() {
        let link = encode(&usual());
        assert!(link.len() <= 400, "{}: {link}", link.len());
        assert!(
            link.bytes()
                .all(|byte| byte.is_ascii_alphanumeric() || b"-_.~".contains(&byte))
        );
        let opened = decode(&format!("https://example.org/advice/#/open/{link}\n")).unwrap();
        assert!(opened.is_whole());
        assert_eq!(opened.answers, usual());
    }

    #[test]
    fn a_spoilt_link_says_how() {
        let link = encode(&usual());
        assert_eq!(decode(" "), Err(LinkProblem::Empty));
        assert_eq!(decode("hello"), Err(LinkProblem::Foreign));
        assert_eq!(decode("https://example.org/"), Err(LinkProblem::Empty));
        assert_eq!(decode("sähr schön"), Err(LinkProblem::Foreign));
        assert_eq!(
            decode(&link.replacen("s1", "s7", 1)),
            Err(LinkProblem::Later)
        );
        for cut in 3..link.len() {
            assert!(
                matches!(decode(&link[..cut]), Err(LinkProblem::Truncated)),
                "{cut}: {:?}",
                decode(&link[..cut])
            );
        }
        let mut altered = link.clone().into_bytes();
        for at in 6..altered.len() {
            let before = altered[at];
            altered[at] = if before == b'A' { b'B' } else { b'A' };
            let text = String::from_utf8(altered.clone()).unwrap();
            assert_eq!(decode(&text), Err(LinkProblem::Altered), "at {at}");
            altered[at] = before;
        }
    }

    /// One letter changed, doubled, dropped or changed with its neighbour, anywhere: never other
    /// answers than those that were sent.
    #[test]
    fn no_slip_in_a_link_opens_other_answers() {
        let link = encode(&usual());
        let letters: Vec<char> = link.chars().collect();
        let mut slips = Vec::new();
        for (at, letter) in letters.iter().enumerate() {
            for other in ('0'..='9')
                .chain('A'..='Z')
                .chain('a'..='z')
                .chain("-_.~ %é/#?=".chars())
            {
                let mut slip = letters.clone();
                slip[at] = other;
                slips.push(slip);
            }
            let mut slip = letters.clone();
            slip.insert(at, *letter);
            slips.push(slip);
            let mut slip = letters.clone();
            slip.remove(at);
            slips.push(slip);
            let mut slip = letters.clone();
            slip.swap(at, (at + 1) % letters.len());
            slips.push(slip);
        }
        for slip in slips {
            let slip: String = slip.into_iter().collect();
            if slip != link
                && let Ok(opened) = decode(&slip)
            {
                panic!("{slip} opens {:?}", opened.answers);
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// Stored and read again, shared and opened again: the same answers, and sensible ones.
        #[test]
        fn answers_come_back(replies in prop::collection::vec((0..400_usize, 0.0..=1.0_f64), 0..30)) {
            let answers = heap(&replies);
            prop_assert_eq!(&parse(&to_json(&answers)).unwrap(), &answers);
            let rescued = rescue(&to_json(&answers)).unwrap();
            let contradiction = |wrong: &Wrong| matches!(wrong, Wrong::Contradicts { .. });
            prop_assert!(check(&answers).iter().all(|problem| contradiction(&problem.wrong)));
            if check(&answers).is_empty() {
                prop_assert!(rescued.is_whole());
                prop_assert_eq!(&rescued.answers, &answers);
                let opened = decode(&encode(&answers)).unwrap();
                let mut rounded = answers.clone();
                if let Some(place) = &mut rounded.place {
                    for angle in [&mut place.latitude_deg, &mut place.longitude_deg_east] {
                        *angle = angle.map(|degrees| (degrees * 10.0).round() / 10.0);
                    }
                }
                prop_assert_eq!(&opened.answers, &rounded);
            }
        }

        /// Whatever text there is: an answer, never a panic.
        #[test]
        fn no_text_panics(text in "\\PC{0,80}", tail in "[A-Za-z0-9._~-]{0,60}") {
            let _ = parse(&text);
            let _ = rescue(&text);
            let _ = decode(&text);
            let _ = decode(&format!("s1{tail}"));
        }
    }

    #[test]
    fn a_strict_reader_says_which_field() {
        assert!(matches!(
            parse("{\"version\": 1,\n oops}"),
            Err(ParseProblem::NotJson { line: 2, .. })
        ));
        assert_eq!(parse("[1]"), Err(ParseProblem::NotAnObject));
        assert_eq!(parse("{}"), Err(ParseProblem::NoVersion));
        assert_eq!(parse("{\"version\": \"1\"}"), Err(ParseProblem::NoVersion));
        assert_eq!(
            parse("{\"version\": 9, \"zoom\": \"new\"}"),
            Err(ParseProblem::Later { read: 9 })
        );
        for (text, wanted) in [
            ("{\"version\": 1, \"age\": 4}", "age"),
            ("{\"version\": 1, \"eye\": {\"age_years\": \"old\"}}", "eye"),
            ("{\"version\": 1, \"zoom\": \"sometimes\"}", "zoom"),
        ] {
            match parse(text) {
                Err(ParseProblem::Unreadable { field, why }) => {
                    assert_eq!(field, wanted);
                    assert!(!why.is_empty());
                }
                other => panic!("{text}: {other:?}"),
            }
        }
        assert!(matches!(
            parse(&" ".repeat(200_000)),
            Err(ParseProblem::TooLong { .. })
        ));
    }

    #[test]
    fn a_kind_reader_keeps_what_can_be_kept() {
        let damaged = r#"{"version": 1, "zoom": "never", "eye": {"age_years": 300},
            "carry": 7, "uses": [{"what": "roe_deer", "share": 1}]}"#;
        let rescued = rescue(damaged).unwrap();
        assert!(!rescued.is_whole());
        assert_eq!(rescued.lost, ["carry"]);
        assert_eq!(rescued.problems[0].field, "eye.age_years");
        assert_eq!(rescued.answers.uses.len(), 1);
        assert!(rescued.answers.zoom.is_some() && rescued.answers.eye.is_none());
        assert!(check(&rescued.answers).is_empty());

        // A club presets only some ranges: what is missing is what is usual, in order.
        for (said, wanted) in [
            (r#"{"farthest_m": 300}"#, (30.0, 80.0, 300.0)),
            (r#"{"farthest_m": 50}"#, (30.0, 50.0, 50.0)),
            (r#"{"nearest_m": 100}"#, (100.0, 100.0, 150.0)),
            (r#"{"nearest_m": 200}"#, (200.0, 200.0, 200.0)),
            (r#"{"usual_m": 10}"#, (10.0, 10.0, 150.0)),
            (r#"{"farthest_m": 20, "usual_m": 12}"#, (12.0, 12.0, 20.0)),
        ] {
            let rescued = rescue(&format!(r#"{{"version": 1, "ranges": {said}}}"#)).unwrap();
            assert!(rescued.is_whole(), "{said}: {rescued:?}");
            let got = rescued.answers.ranges.unwrap();
            assert_eq!(
                (got.nearest_m, got.usual_m, got.farthest_m),
                wanted,
                "{said}"
            );
        }
        let wrong = rescue(r#"{"version": 1, "ranges": {"farthest_m": 9000}}"#).unwrap();
        assert_eq!(wrong.problems[0].field, "ranges.farthest_m");

        let later = r#"{"version": 3, "zoom": "never", "mood": "good"}"#;
        let rescued = rescue(later).unwrap();
        assert_eq!(rescued.later_version, Some(3));
        assert_eq!(rescued.lost, ["mood"]);
        assert!(rescued.answers.zoom.is_some());
        assert!(rescue("half a te").is_err());
    }

    #[test]
    fn everything_wrong_is_listed() {
        let json = r#"{"version": 1, "not_sure": ["eyes"],
            "uses": [{"what": "roe deer", "share": -1}, {"what": "red_fox", "share": 1,
                "ranges": {"nearest_m": 80, "usual_m": 60, "farthest_m": 40}}],
            "manners": [{"manner": "bench", "share": 0}],
            "ranges": {"nearest_m": 30, "usual_m": 20, "farthest_m": 40},
            "light": {"snow": 2},
            "eye": {"age_years": 3, "dark_pupil_mm": 12},
            "load": {"cartridge": "308_win"},
            "rifle": {"mass_kg": 0.1},
            "mount": {"rings_kept_mm": 30.5},
            "place": {"latitude_deg": 91, "first_month": 13},
            "rulebook": {"refocusing_forbidden": true, "focus_finds_range": true}}"#;
        let problems = check(&parse(json).unwrap());
        let of = |field: &str| {
            problems
                .iter()
                .find(|problem| problem.field == field)
                .unwrap_or_else(|| panic!("{field} in {problems:#?}"))
                .wrong
                .clone()
        };
        assert!(matches!(
            of("not_sure[0]"),
            Wrong::UnknownKey {
                nearest: Some("eye"),
                ..
            }
        ));
        assert!(matches!(
            of("uses[0].what"),
            Wrong::UnknownKey {
                nearest: Some("roe_deer"),
                ..
            }
        ));
        assert!(matches!(of("uses[0].share"), Wrong::NegativeShare { .. }));
        assert!(matches!(of("uses[1].ranges"), Wrong::FarthestNearer { .. }));
        assert_eq!(of("manners"), Wrong::AllZero);
        assert!(matches!(of("ranges"), Wrong::UsualOutside { .. }));
        assert!(matches!(
            of("load.cartridge"),
            Wrong::UnknownKey {
                nearest: Some("308_win_9_7_g" | "308_win_10_7_g" | "308_win_11_7_g"),
                ..
            }
        ));
        assert!(matches!(
            of("mount.rings_kept_mm"),
            Wrong::NotOffered { .. }
        ));
        assert!(matches!(
            of("rulebook.focus_finds_range"),
            Wrong::Contradicts { .. }
        ));
        for field in [
            "light.snow",
            "eye.age_years",
            "eye.dark_pupil_mm",
            "rifle.mass_kg",
            "place.latitude_deg",
            "place.first_month",
        ] {
            assert!(matches!(of(field), Wrong::OutOfRange { .. }), "{field}");
        }
        assert_eq!(problems.len(), 15, "{problems:#?}");
        // Each says what was read and what would be right, and resolving goes on regardless.
        for problem in &problems {
            let said = scopewright::wording::problems::problem(problem);
            assert!(said.contains(&problem.field), "{said}");
        }
        let need = resolve(&parse(json).unwrap());
        assert!(!need.situations.is_empty());
    }
}

mod doubted {
    use scopewright::need::questions::Part;
    use scopewright::need::{doubts, parse};
    use scopewright::wording::problems;

    /// Possible figures that were likely meant in another unit are asked about; usual ones are
    /// not. 1 ft/s = 0.3048 m/s, 1 gr = 0.06479891 g (international yard and pound, exact).
    #[test]
    fn figures_in_another_unit_are_asked_about() {
        for (load, part, meant, words) in [
            (
                r#""cartridge": "22_lr_2_6_g_standard", "muzzle_velocity_m_s": 1080"#,
                Part::Velocity,
                Some(329.184),
                "1080\u{202F}ft/s",
            ),
            (
                r#""cartridge": "223_rem_3_56_g", "bullet_g": 55"#,
                Part::BulletMass,
                Some(3.563_940_05),
                "55\u{202F}gr",
            ),
            (
                r#""cartridge": "308_win_10_7_g", "powder_g": 18"#,
                Part::PowderMass,
                Some(1.166),
                "18\u{202F}gr",
            ),
            (
                r#""cartridge": "308_win_10_7_g", "bc_g7_lb_in2": 0.447"#,
                Part::CoefficientG7,
                None,
                "G1",
            ),
        ] {
            let answers = parse(&format!(r#"{{"version": 1, "load": {{{load}}}}}"#)).unwrap();
            let found = doubts(&answers);
            assert_eq!(found.len(), 1, "{load}: {found:?}");
            assert_eq!(found[0].part, part);
            match (found[0].meant, meant) {
                (Some(found), Some(meant)) => assert!((found - meant).abs() < 0.001, "{found}"),
                (found, meant) => assert_eq!(found, meant),
            }
            let said = problems::doubt(&found[0]);
            assert!(said.contains(words), "{said}");
            assert_eq!(
                problems::doubt_choice(answers.units, &found[0]).is_some(),
                meant.is_some()
            );
        }
        for load in scopewright::flight::cartridges::typical_loads() {
            let text = format!(
                r#"{{"version": 1, "load": {{"cartridge": "{}", "bullet_g": {}, "muzzle_velocity_m_s": {}}}}}"#,
                load.key, load.bullet_g, load.muzzle_velocity_m_s
            );
            assert!(doubts(&parse(&text).unwrap()).is_empty(), "{text}");
        }
    }
}
