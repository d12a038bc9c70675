//! Whole questionnaires to advice: what a person says moves the line the way it should.

use scopewright::advice::report::{Advice, Because, Element, LastLight, Quantity, VERSION};
use scopewright::advice::{Ranking, advise, tell};
use scopewright::need::answers::Answers;
use scopewright::need::{parse, resolve};

/// A hunter on a seat at the edge of a wood, half an hour into the dusk.
const SEAT: &str = r#"{
  "version": 1,
  "uses": [{"what": "roe_deer", "share": 1, "manner": "seat_rail",
            "ranges": {"nearest_m": 30, "usual_m": 80, "farthest_m": 150}}],
  "light": {"until": "half_hour_after_sunset", "cover": [{"cover": "edge", "share": 1}]},
  "eye": {"age_years": 46, "glasses": "no_glasses"},
  "load": {"bullet_g": 10.7, "muzzle_velocity_m_s": 810, "bc_g1_lb_in2": 0.43, "powder_g": 2.9},
  "rifle": {"mass_kg": 3.2, "kind": "bolt"},
  "money": {"band": "C", "attitude": "what_it_is_worth"},
  "lit_mark": "indifferent"
}"#;

fn read(json: &str) -> Answers {
    parse(json).unwrap()
}

fn advice(json: &str) -> Advice {
    advise(&read(json)).unwrap()
}

/// The seat with one fragment replaced, so that a journey differs by a single answer.
fn seat_but(from: &str, to: &str) -> Advice {
    assert!(SEAT.contains(from), "{from}");
    advice(&SEAT.replace(from, to))
}

#[test]
fn a_seat_at_dusk_gets_a_line_with_reasons_and_an_evening() {
    let told = advice(SEAT);
    assert_eq!(told.version, VERSION);
    let first = &told.picks[0];
    assert_eq!(first.because, Because::Best);
    assert!(first.tied_with_first && first.behind_points == 0.0);
    assert!(first.against_first.is_empty());
    assert!((2..=5).contains(&told.picks.len()), "{}", told.picks.len());
    assert!(told.reasons.len() >= 8, "{}", told.reasons.len());
    // Most consequential first.
    for pair in told.reasons.windows(2) {
        assert!(pair[0].weight_points >= pair[1].weight_points);
    }
    // The sight reaches later into the evening than the bare eye.
    let LastLight::At { minutes: with, .. } = told.facts.tonight.this_sight else {
        panic!("{:?}", told.facts.tonight);
    };
    let LastLight::At { minutes: bare, .. } = told.facts.tonight.bare_eye else {
        panic!("{:?}", told.facts.tonight);
    };
    assert!(with > bare + 2.0, "{with} against {bare}");
    // A roe deer at dusk on a seat: a zoom of the middle, a bell of the middle or more.
    let line = &first.line;
    assert!(line.mag_low <= 4.0 && line.mag_high >= 6.0, "{line:?}");
    assert!((36.0..=56.0).contains(&line.objective_mm), "{line:?}");
}

#[test]
fn causes_and_the_share_served_add_up_to_one() {
    for pick in advice(SEAT).picks {
        let lost: f64 = pick.losses.iter().map(|loss| loss.share).sum();
        assert!((pick.served.value + lost - 1.0).abs() < 1e-4, "{pick:?}");
    }
}

#[test]
fn every_pick_lies_inside_its_own_ranges() {
    for pick in advice(SEAT).picks {
        let r = &pick.ranges;
        for (value, span) in [
            (pick.line.mag_low, r.mag_low),
            (pick.line.mag_high, r.mag_high),
            (pick.line.objective_mm, r.objective_mm),
            (pick.line.eye_relief_mm, r.eye_relief_mm),
        ] {
            assert!(
                span.least <= value && value <= span.most,
                "{value} {span:?}"
            );
        }
        assert_eq!(r.tube_mm.any_of[0], pick.line.tube_mm);
        assert_eq!(r.price_band.any_of[0], pick.line.price_band);
    }
}

#[test]
fn driven_boar_asks_for_a_wide_field_at_low_power() {
    let told = seat_but(
        r#""what": "roe_deer", "share": 1, "manner": "seat_rail",
            "ranges": {"nearest_m": 30, "usual_m": 80, "farthest_m": 150}"#,
        r#""what": "wild_boar", "share": 1, "manner": "driven",
            "ranges": {"nearest_m": 5, "usual_m": 25, "farthest_m": 70}"#,
    );
    let first = &told.picks[0];
    assert!(first.line.mag_low <= 1.5, "{:?}", first.line);
    assert!(first.line.field_low_m_per_100m >= 25.0);
}

#[test]
fn kept_rings_keep_the_tube() {
    let told = seat_but(
        r#""money": {"#,
        r#""mount": {"rings_kept_mm": 25.4}, "money": {"#,
    );
    assert_eq!(told.picks[0].line.tube_mm, 25.4);
}

#[test]
fn a_lit_mark_that_is_not_allowed_is_in_no_pick() {
    use scopewright::advice::report::Lit;
    let told = seat_but(
        r#""lit_mark": "indifferent""#,
        r#""lit_mark": "not_allowed""#,
    );
    for pick in &told.picks {
        assert_eq!(pick.line.illumination, Lit::None);
        assert_eq!(pick.ranges.illumination.any_of, vec![Lit::None]);
    }
}

#[test]
fn an_older_eye_gains_less_from_a_larger_bell() {
    let minutes_gained = |told: &Advice| {
        told.reasons
            .iter()
            .find(|reason| reason.element == Element::ObjectiveMm)
            .and_then(|reason| reason.more.as_ref())
            .and_then(|more| {
                more.effects
                    .iter()
                    .find(|effect| effect.quantity == Quantity::MinutesTonight)
            })
            .map_or(0.0, |effect| effect.value)
    };
    let young = seat_but(r#""age_years": 46"#, r#""age_years": 25"#);
    let old = seat_but(r#""age_years": 46"#, r#""age_years": 75"#);
    assert!(minutes_gained(&young) >= minutes_gained(&old));
}

#[test]
fn haze_ends_the_evening_earlier_and_serves_less() {
    let clear = advice(SEAT);
    let misty = seat_but(
        r#""until": "half_hour_after_sunset""#,
        r#""until": "half_hour_after_sunset", "visibility_km": 2"#,
    );
    let minutes = |told: &Advice| match told.facts.tonight.this_sight {
        LastLight::At { minutes, .. } => minutes,
        other => panic!("{other:?}"),
    };
    assert!(minutes(&misty) < minutes(&clear) - 1.0);
    assert!(misty.facts.best_possible_share < clear.facts.best_possible_share);
}

#[test]
fn nothing_answered_is_advised_on_and_says_what_is_assumed() {
    let told = advise(&Answers {
        version: 1,
        ..Answers::default()
    })
    .unwrap();
    assert!(!told.picks.is_empty());
    for key in ["uses", "eye", "rifle", "money"] {
        assert!(told.assumed.iter().any(|known| known == key), "{key}");
    }
}

#[test]
fn the_report_survives_its_own_json() {
    let told = advice(SEAT);
    let text = serde_json::to_string(&told).unwrap();
    let back: Advice = serde_json::from_str(&text).unwrap();
    assert_eq!(told, back);
    // What an outsider reads stands flat in a pick.
    let value: serde_json::Value = serde_json::from_str(&text).unwrap();
    let pick = &value["picks"][0];
    for field in [
        "mag_low",
        "mag_high",
        "objective_mm",
        "tube_mm",
        "eye_relief_mm",
        "field_low_m_per_100m",
        "mass_g",
    ] {
        assert!(pick[field].is_number(), "{field}");
    }
    for field in ["plane", "reticle", "illumination", "price_band"] {
        assert!(pick[field].is_string(), "{field}");
    }
    assert!(pick["parallax"]["kind"].is_string());
}

#[test]
fn slices_rank_as_one_go_does() {
    let need = resolve(&read(SEAT));
    let mut slices = Ranking::new(&need);
    let mut steps = 0;
    while !slices.step(500) {
        let (done, all) = slices.progress();
        assert!(done < all);
        steps += 1;
    }
    assert!(steps > 5, "{steps}");
    assert_eq!(tell(&slices.finish()), tell(&Ranking::new(&need).finish()));
}

#[test]
fn what_cannot_be_is_refused_with_its_field() {
    let mut answers = read(SEAT);
    if let Some(eye) = answers.eye.as_mut() {
        eye.age_years = Some(300.0);
    }
    let problems = advise(&answers).unwrap_err();
    assert!(
        problems
            .iter()
            .any(|problem| problem.field.contains("age_years"))
    );
}
