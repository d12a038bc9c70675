//! What stands behind the line holds for whoever asks: complete, finite, spoken, and moving
//! the way the models say.

mod random_answers;

use random_answers::answers_of;
use scopewright::advice::advise;
use scopewright::advice::report::{Advice, Effect, Element, NoteKey, Quantity};
use scopewright::need::answers::Units;
use scopewright::need::parse;
use scopewright::wording::notes::{Place, at, known, sources, spoken};

fn advice(json: &str) -> Advice {
    advise(&parse(json).unwrap()).unwrap()
}

fn effects(told: &Advice, key: NoteKey) -> Option<&[Effect]> {
    told.notes
        .iter()
        .find(|note| note.key == key)
        .map(|note| note.effects.as_slice())
}

/// The first figure of a note that must be there.
fn figure(told: &Advice, key: NoteKey, at: usize) -> f64 {
    effects(told, key).unwrap_or_else(|| panic!("no {key:?}"))[at].value
}

/// A seat at dusk with a part of the answers as given.
fn seat(parts: &str) -> Advice {
    advice(&format!(
        r#"{{"version": 1,
        "uses": [{{"what": "roe_deer", "share": 1, "manner": "seat_rail",
                  "ranges": {{"nearest_m": 30, "usual_m": 100, "farthest_m": 300}}}}],
        "eye": {{"age_years": 46}}{parts}}}"#
    ))
}

#[test]
fn whoever_asks_gets_sound_notes_in_words() {
    for seed in 1..=60 {
        let answers = answers_of(seed);
        let Ok(told) = advise(&answers) else { continue };
        for note in &told.notes {
            assert_eq!(known(note.key).names.len(), note.effects.len(), "{seed}");
            for units in [Units::Metric, Units::Imperial] {
                let words = spoken(note, units);
                assert!(
                    words.ends_with('.')
                        && !words.contains("NaN")
                        && !words.contains("inf\u{202F}"),
                    "{seed}: {words}"
                );
            }
        }
        for source in sources(told.notes.iter()) {
            assert!(source.ends_with('.'), "{source}");
        }
        for rows in told.flight.windows(2) {
            assert!(rows[1].range_m > rows[0].range_m, "{seed}");
            assert!(rows[1].speed_m_s < rows[0].speed_m_s, "{seed}");
            assert!(rows[1].time_s > rows[0].time_s, "{seed}");
        }
    }
}

#[test]
fn every_element_of_the_line_has_a_reason_and_notes() {
    let told = seat(r#", "distance": {"habit": "dial"}"#);
    let shown = [
        Element::MagLow,
        Element::MagHigh,
        Element::ObjectiveMm,
        Element::TubeMm,
        Element::Plane,
        Element::Reticle,
        Element::Illumination,
        Element::Parallax,
        Element::Elevation,
        Element::EyeReliefMm,
        Element::FieldLowMPer100m,
        Element::Grade,
        Element::MassG,
    ];
    for element in shown {
        assert!(
            told.reasons.iter().any(|reason| reason.element == element),
            "{element:?}"
        );
    }
    for element in [
        Element::MagHigh,
        Element::ObjectiveMm,
        Element::TubeMm,
        Element::Plane,
        Element::Reticle,
        Element::Parallax,
        Element::Elevation,
        Element::EyeReliefMm,
        Element::FieldLowMPer100m,
        Element::Grade,
        Element::MassG,
    ] {
        assert!(
            at(&told.notes, Place::Reason(element)).next().is_some(),
            "{element:?}"
        );
    }
}

#[test]
fn a_body_is_seen_longest_and_one_known_from_another_shortest() {
    let told = seat("");
    let [body, kind, which] = [
        NoteKey::Detection,
        NoteKey::Recognition,
        NoteKey::Identification,
    ]
    .map(|key| figure(&told, key, 0));
    assert!(body > kind && kind > which, "{body} {kind} {which}");
    // The second opinion shares no data and still lies within half a class of light.
    assert!(figure(&told, NoteKey::SecondOpinion, 2).abs() < 8.0);
}

#[test]
fn the_morning_mirrors_the_evening() {
    // At the equinox dusk and dawn are alike to a minute.
    let told = seat(
        r#", "place": {"latitude_deg": 50, "longitude_deg_east": 10, "first_month": 3, "last_month": 3}"#,
    );
    let dusk = figure(&told, NoteKey::Recognition, 0);
    let dawn = figure(&told, NoteKey::Dawn, 0);
    assert!((dusk - dawn).abs() < 1.5, "{dusk} {dawn}");
}

#[test]
fn haze_costs_most_where_it_is_thick() {
    let lost = |parts: &str| {
        let told = seat(parts);
        let left = figure(&told, NoteKey::Haze, 2);
        (left, figure(&told, NoteKey::Haze, 3))
    };
    let clear = lost("");
    let hazy = lost(r#", "light": {"visibility_km": 8}"#);
    assert!(hazy.0 < clear.0, "{hazy:?} {clear:?}");
    assert!(hazy.1 < clear.1 && clear.1 <= 0.0, "{hazy:?} {clear:?}");
    // Through mist no sight tells it apart there: no minutes are promised.
    let misty = seat(r#", "light": {"visibility_km": 1}"#);
    assert!(effects(&misty, NoteKey::Haze).is_none_or(|haze| haze[3].value < hazy.1));
}

#[test]
fn what_does_not_fit_says_by_how_much_and_what_would() {
    // Rings with the axis 20 mm over the rail under a bell of 56 mm and a rail under it.
    let low = seat(
        r#", "mount": {"rings_kept_mm": 30, "rings_centre_height_mm": 12, "rail_under_bell": true}"#,
    );
    let kept = effects(&low, NoteKey::KeptBell).expect("too low");
    let [centre, short, needed, bell, largest] = [0, 1, 2, 3, 4].map(|at| kept[at].value);
    assert!((centre + short - needed).abs() < 1e-9);
    assert!((bell - 2.0 * short - largest).abs() < 1e-9);
    // A base inclined by 20 mrad leaves most sights no zero.
    let steep = seat(r#", "mount": {"incline_mrad": 20}"#);
    let steep = effects(&steep, NoteKey::CannotBeZeroed).expect("no zero");
    assert!((steep[0].value - steep[1].value - steep[2].value).abs() < 1e-9);
    // A subsonic rimfire load at a kilometre and a half lies in the grass.
    let short = advice(
        r#"{"version": 1, "load": {"cartridge": "4_5_mm_air_0_51_g_7_5_j"},
        "ranges": {"nearest_m": 10, "usual_m": 100, "farthest_m": 1500}}"#,
    );
    let short = effects(&short, NoteKey::FallsShort).expect("falls short");
    assert!(short[3].value < short[2].value);
    // Where the Sun does not set there is no dusk, and that is said.
    let polar = |month: u8| {
        seat(&format!(
            r#", "place": {{"latitude_deg": 71, "first_month": {month}, "last_month": {month}}}"#
        ))
    };
    assert!(effects(&polar(6), NoteKey::PolarDay).is_some());
    assert!(effects(&polar(12), NoteKey::PolarNight).is_some());
    assert!(effects(&seat(""), NoteKey::PolarDay).is_none());
    // Rings of another tube.
    let other = seat(r#", "mount": {"rings_kept_mm": 35}"#);
    let tube = other.picks[0].line.tube_mm;
    if (tube - 35.0).abs() > 0.1 {
        assert!(effects(&other, NoteKey::KeptTube).is_some());
    }
}

#[test]
fn the_sheet_holds_what_a_bench_needs() {
    let told = seat(r#", "mount": {"base": "slotted_rail"}"#);
    for key in [
        NoteKey::BoltRoom,
        NoteKey::RingsPlace,
        NoteKey::RingsSlots,
        NoteKey::EyePlace,
        NoteKey::RailSlotted,
        NoteKey::TorqueCaps,
        NoteKey::TorqueBase,
        NoteKey::TorqueCrossSteel,
    ] {
        assert!(effects(&told, key).is_some(), "{key:?}");
    }
    // MIL-STD-1913: slot 5.23 mm, pitch 10.01 mm, 21.21 mm over the edges.
    let rail: Vec<f64> = effects(&told, NoteKey::RailSlotted)
        .expect("a rail")
        .iter()
        .map(|effect| effect.value)
        .collect();
    assert_eq!(rail, [5.23, 10.01, 21.21]);
    let straight = seat(r#", "rifle": {"kind": "straight_stock"}"#);
    assert!(effects(&straight, NoteKey::HeightStock).is_some());
    let narrow = seat(r#", "mount": {"base": "narrow_slots"}"#);
    assert!(effects(&narrow, NoteKey::RailNarrow).is_some());
}

#[test]
fn clicks_of_all_kinds_are_one_angle() {
    let told = seat(r#", "distance": {"habit": "dial"}"#);
    let clicks = effects(&told, NoteKey::Clicks).expect("clicks");
    let angle = clicks[0].value;
    // 0.1 and 0.05 mrad, a quarter, a third and an eighth of a minute (π/10.8 mrad).
    let moa = core::f64::consts::PI / 10.8;
    for (at, click) in [
        (2, 0.1),
        (3, 0.05),
        (4, moa / 4.0),
        (5, moa / 3.0),
        (6, moa / 8.0),
    ] {
        assert!((clicks[at].value * click - angle).abs() < 1e-9);
    }
}

#[test]
fn own_figures_of_the_load_replace_the_typical_ones() {
    let typical = seat("");
    assert!(effects(&typical, NoteKey::LoadTypical).is_some());
    let own =
        seat(r#", "load": {"muzzle_velocity_m_s": 840, "bullet_g": 9.7, "bc_g1_lb_in2": 0.4}"#);
    let own = effects(&own, NoteKey::LoadOwn).expect("own figures");
    assert_eq!(own[1].quantity, Quantity::SpeedMS);
    assert_eq!(
        (own[0].value, own[1].value, own[2].value),
        (9.7, 840.0, 0.4)
    );
}

#[test]
fn ten_years_more_are_told_where_the_models_know_them() {
    // Watson and Yellott (2012) hold for 20 to 83 years; beyond, ten years would change nothing.
    let told = |age: u32| {
        let told = advice(&format!(
            r#"{{"version": 1, "eye": {{"age_years": {age}}}}}"#
        ));
        effects(&told, NoteKey::StepAge).map(|step| (step[0].value, step[1].value))
    };
    assert_eq!(told(19), None);
    assert_eq!(told(95), None);
    let (later_min, years) = told(60).expect("a step of ten years");
    assert!(later_min < 0.0 && years == 70.0, "{later_min} {years}");
}
