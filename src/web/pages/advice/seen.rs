//! The typical evening, and the view through the pick.

use super::head::Props;
use crate::advice::Advice;
use crate::advice::costs::Seat;
use crate::advice::evening::typical_sunset_s;
use crate::advice::needs::{drop, mark};
use crate::advice::report::{
    ALL_NIGHT_MIN, Because, Effect, FieldWidth, Grade, LastLight, LightKind, Line, Lit, NoteKey,
    Parallax, Pick, Plane, Quantity, Reticle,
};
use crate::drawing::colour::Hue;
use crate::drawing::dusk::{Evening, Until};
use crate::eye::Eye;
use crate::need::answers::{Answers, Cover, Units};
use crate::need::quarry::What;
use crate::need::{Need, resolve};
use crate::plain::Gathered;
use crate::quantity::Estimate;
use crate::rifle::mounting::Clearances;
use crate::sight::reticle::{MarkUnit, reticle_with};
use crate::sight::{FocalPlane, GlassGrade, ParallaxSetting, ReticleFamily, fits};
use crate::sky::evening::Night;
use crate::sky::ground::{Cloud, Scene};
use crate::sky::place::Place;
use crate::t;
use crate::web::pictures::{
    DuskStrip, Flown, Quarry, Shown, Sight, StripRow, Surroundings, ThroughSight,
};
use crate::web::platform;
use crate::web::shared::Shared;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::advice::{capitalised, glass, quantity_name, quantity_value};
use crate::wording::counts_in;
use crate::wording::questions::what;
use std::rc::Rc;

const DAY_S: f64 = 86_400.0;
/// Seconds of solar time a degree of longitude.
const S_PER_DEG: f64 = 240.0;

/// The noon before an instant, by the Sun at that longitude.
fn noon_before(unix_s: f64, longitude_deg_east: f64) -> f64 {
    let shift = longitude_deg_east * S_PER_DEG - 0.5 * DAY_S;
    ((unix_s + shift) / DAY_S).floor() * DAY_S - shift
}

/// Cover over the place, ground there, and how much brighter the other half of the view is.
fn cover_scene(cover: Cover, on_snow: bool) -> (f64, f64, f64, Hue) {
    let (canopy, ground, surround, hue) = match cover {
        Cover::Open => (1.0, 0.08, 6.0, Hue::GRASS),
        Cover::Edge => (0.5, 0.08, 6.0, Hue::GRASS),
        Cover::Ride => (0.3, 0.08, 4.0, Hue::GRASS),
        Cover::BareWood => (0.4, 0.09, 4.0, Hue::STRAW),
        Cover::InLeaf => (0.05, 0.09, 2.0, Hue::STRAW),
        Cover::DenseConifer => (0.02, 0.09, 2.0, Hue::STRAW),
    };
    if on_snow {
        (canopy, 0.75, 1.2, Hue::SNOW)
    } else {
        (canopy, ground, surround, hue)
    }
}

/// The scene in which the strip and the view stand.
fn scene(answers: &Answers) -> (Scene, Rc<Surroundings>) {
    let light = resolve(answers).light;
    let cover = light
        .covers
        .value
        .iter()
        .max_by(|one, other| one.share.total_cmp(&other.share))
        .map_or(Cover::Edge, |share| share.of);
    let (canopy_share, ground_reflectance, surround_to_ground, ground_hue) =
        cover_scene(cover, light.snow_share > 0.5);
    (
        Scene {
            cloud: Cloud::Clear,
            canopy_share,
            ground_reflectance,
            town_mag_arcsec2: light.town_glow_mag,
        },
        Rc::new(Surroundings {
            ground_reflectance,
            ground_hue,
            wood_reflectance: 0.05,
            sp_ratio: 2.5,
            surround_to_ground,
            eye_height_m: 3.5,
            wood_behind_m: 40.0,
        }),
    )
}

fn evening(advice: &Advice, scene: &Scene) -> Option<Rc<Evening>> {
    let tonight = &advice.facts.tonight;
    let place = Place::new(tonight.latitude_deg, tonight.longitude_deg_east).ok()?;
    // Where the Sun does not set, the afternoon of that date will do: no clock is asked.
    let at_s = tonight.sunset_s.unwrap_or(tonight.noon_s + 3600.0);
    evening_at(&place, at_s, scene)
}

fn night_of(place: &Place, at_s: f64) -> Option<Night> {
    Night::from_noon(noon_before(at_s, place.longitude_deg_east()), place).ok()
}

fn evening_at(place: &Place, at_s: f64, scene: &Scene) -> Option<Rc<Evening>> {
    Some(Rc::new(Evening::of(
        &night_of(place, at_s)?,
        scene,
        platform::offset_min_at(at_s),
    )))
}

/// The morning after the typical evening, with the bare eye and with this sight.
fn morning(advice: &Advice, scene: &Scene) -> Option<Drawn> {
    let tonight = &advice.facts.tonight;
    let place = Place::new(tonight.latitude_deg, tonight.longitude_deg_east).ok()?;
    let (sunset_s, sunrise_s) = (tonight.sunset_s?, tonight.sunrise_s?);
    let offset_min = platform::offset_min_at(sunrise_s);
    let morning = Evening::morning(&night_of(&place, sunset_s)?, scene, offset_min)?;
    let note = advice.notes.iter().find(|note| note.key == NoteKey::Dawn)?;
    let row = |name: String, from: Option<&Effect>, pick| {
        let from = from?;
        Some(StripRow {
            name: name.into(),
            until: match from.value {
                before if before >= ALL_NIGHT_MIN => Until::Throughout,
                before if before <= -ALL_NIGHT_MIN => Until::Never,
                before => Until::Minute(Estimate::new(-before, from.spread)),
            },
            pick,
        })
    };
    Some(Drawn {
        evening: Rc::new(morning),
        rows: [
            row(t!("strip-bare-eye"), note.effects.get(1), false),
            row(t!("strip-this-sight"), note.effects.first(), true),
        ]
        .into_iter()
        .flatten()
        .gathered(),
    })
}

/// The evening in the middle of the season, as these answers have it; none where the Sun does
/// not set then.
#[must_use]
pub fn typical_evening(answers: &Answers) -> Option<Rc<Evening>> {
    let need = resolve(answers);
    let place = Place::new(
        need.place.latitude_deg.value,
        need.place.longitude_deg_east.value,
    )
    .ok()?;
    evening_at(&place, typical_sunset_s(&need)?, &scene(answers).0)
}

fn until(light: LastLight) -> Until {
    match light {
        LastLight::At { minutes, spread } => Until::Minute(Estimate::new(minutes, spread)),
        LastLight::Always => Until::Throughout,
        LastLight::Never => Until::Never,
    }
}

fn rows(advice: &Advice) -> Vec<StripRow> {
    let tonight = &advice.facts.tonight;
    let row = |name: String, light, pick| StripRow {
        name: name.into(),
        until: until(light),
        pick,
    };
    let mut rows = vec![
        row(t!("strip-bare-eye"), tonight.bare_eye, false),
        row(t!("strip-this-sight"), tonight.this_sight, true),
    ];
    if let Some(other) = tonight.other_sight {
        rows.push(row(beside(advice), other, false));
    }
    rows
}

/// The name of the sight that stands beside the first pick, as [`Tonight`] chooses it.
///
/// [`Tonight`]: crate::advice::report::Tonight
fn beside(advice: &Advice) -> String {
    if advice
        .owned
        .as_ref()
        .is_some_and(|own| own.judged.is_some())
    {
        return t!("strip-own-sight");
    }
    let latest = |pick: &&Pick| pick.because == Because::Latest;
    let other = advice.picks.iter().find(latest).or(advice.picks.get(1));
    other.map_or_else(String::new, |pick| glass(&pick.line))
}

fn family(reticle: Reticle) -> ReticleFamily {
    match reticle {
        Reticle::FineCrosshair => ReticleFamily::FineCrosshair,
        Reticle::ThickThin => ReticleFamily::ThickThin,
        Reticle::ThreePost => ReticleFamily::ThreePost,
        Reticle::HeavyNight => ReticleFamily::HeavyNight,
        Reticle::Post => ReticleFamily::Post,
        Reticle::CentreDot => ReticleFamily::CentreDot,
        Reticle::CircleDot => ReticleFamily::CircleDot,
        Reticle::MradMarks => ReticleFamily::MradMarks,
        Reticle::MoaMarks => ReticleFamily::MoaMarks,
        Reticle::HoldMarks => ReticleFamily::HoldMarks,
        Reticle::MarkGrid => ReticleFamily::MarkGrid,
    }
}

fn grade(grade: Grade) -> GlassGrade {
    match grade {
        Grade::Basic => GlassGrade::Basic,
        Grade::Good => GlassGrade::Good,
        Grade::Best => GlassGrade::Best,
    }
}

/// The sight of a line; `holds_mrad` are the person's own, for marks that are cut for a load.
fn sight(line: &Line, holds_mrad: Vec<f64>, counts_in: MarkUnit) -> Sight {
    let grade = grade(line.grade);
    let family = family(line.reticle);
    let widest = fits::widest_apparent_field_deg(line.eye_relief_mm);
    Sight {
        name: glass(line),
        magnification_low: line.mag_low,
        magnification_high: line.mag_high,
        reference_magnification: mark::reference_magnification(family, line.mag_high),
        objective_mm: line.objective_mm,
        transmission_day: fits::transmission_day(grade).value,
        transmission_night: fits::transmission_night(grade).value,
        glare_index: fits::veiling_glare(grade).value,
        apparent_field_deg: match line.field {
            FieldWidth::Narrow => 19.0_f64,
            FieldWidth::Usual => 21.0,
            FieldWidth::Wide => 23.0,
        }
        .min(widest),
        lit: line.illumination != Lit::None,
        pick: Some(match line.plane {
            Plane::First => FocalPlane::First,
            Plane::Second => FocalPlane::Second,
        }),
        reticle: reticle_with(family, mark::dot_size(line.mag_low), &holds_mrad),
        holds_mrad,
        counts_in,
    }
}

/// What the strip is drawn from.
struct Drawn {
    evening: Rc<Evening>,
    rows: Vec<StripRow>,
}

fn use_drawn(advice: &Shared<Advice>, is_morning: bool) -> Rc<Option<Drawn>> {
    let app = use_app();
    let answers = app.map(|app| app.answers.clone()).unwrap_or_default();
    use_memo(
        (advice.clone(), answers.light.clone()),
        move |(advice, _)| {
            let (scene, _) = scene(&answers);
            if is_morning {
                return morning(advice, &scene);
            }
            Some(Drawn {
                evening: evening(advice, &scene)?,
                rows: rows(advice),
            })
        },
    )
}

/// The typical evening as a strip, without a handle.
#[component]
pub fn Tonight(props: &Props) -> Html {
    let drawn = use_drawn(&props.advice, false);
    let Some(drawn) = drawn.as_ref() else {
        return Html::default();
    };
    html! { <DuskStrip evening={drawn.evening.clone()} rows={drawn.rows.clone()} label={t!("advice-tonight")} /> }
}

/// The morning after as a strip, for who is out then too.
#[component]
pub fn Dawn(props: &Props) -> Html {
    let drawn = use_drawn(&props.advice, true);
    let is_out = use_app().is_some_and(|app| {
        app.answers
            .light
            .as_ref()
            .is_some_and(|light| light.morning)
    });
    let Some(drawn) = (*drawn).as_ref().filter(|_| is_out) else {
        return Html::default();
    };
    html! {
        <section class="advice__dawn">
            <h2 class="advice__strip-title">{ t!("advice-dawn") }</h2>
            <DuskStrip evening={drawn.evening.clone()} rows={drawn.rows.clone()} label={t!("advice-dawn")} />
        </section>
    }
}

/// Whether this person stops while it is light: then the dusk decides nothing.
#[must_use]
pub fn is_by_day(advice: &Advice) -> bool {
    matches!(
        advice.facts.typical.light,
        LightKind::Day | LightKind::LitRange
    )
}

/// What decides by day, in lengths beside the aiming circle.
pub fn by_day(advice: &Advice, units: Units) -> Html {
    let circle = Effect {
        quantity: Quantity::CircleCm,
        value: 0.1 * advice.facts.typical.circle_mm,
        spread: 0.0,
    };
    let reached = |quantity| {
        advice
            .reasons
            .iter()
            .flat_map(|reason| &reason.here.effects)
            .find(|effect| effect.quantity == quantity)
    };
    let rows = [
        Quantity::DetailAtFarthestMm,
        Quantity::CoveredCm,
        Quantity::ParallaxCm,
        Quantity::FieldAtNearestM,
    ]
    .into_iter()
    .filter_map(reached);
    html! {
        <section class="advice__day">
            <h2 class="advice__strip-title">{ t!("advice-day") }</h2>
            <table class="figures">
                <tbody>
                    { for core::iter::once(&circle).chain(rows).map(|effect| html! {
                        <tr>
                            <th scope="row">{ capitalised(&quantity_name(effect.quantity)) }</th>
                            <td class="num">{ quantity_value(effect.quantity, effect.value, 0.0, units) }</td>
                        </tr>
                    }) }
                </tbody>
            </table>
            <p class="small soft">{ t!("advice-day-why") }</p>
        </section>
    }
}

/// The person's load as it flies.
fn flown(advice: &Advice, need: &Need) -> Option<Flown> {
    let velocity = need.load.muzzle_velocity_m_s.value;
    Some(Flown {
        load: drop::load_of(need).ok()?,
        air: drop::air(need),
        zero_m: advice.facts.zero_m,
        height_mm: advice.picks.first()?.height_over_bore_mm.value,
        velocity_spread_m_s: velocity.spread,
        guess_share: if need.distance.rangefinder.value {
            0.01
        } else {
            need.distance.guess_spread_share.max(0.0)
        },
    })
}

/// Whether an evening lies in the colder half of the year, when coats are grey.
fn in_winter(at_s: f64, latitude_deg: f64) -> bool {
    let years = at_s / (365.25 * DAY_S);
    let day = 365.25 * (years - years.floor());
    (105.0..288.0).contains(&day) != (latitude_deg >= 0.0)
}

/// Everything that the pictures show of this person; none while anything is missing.
#[must_use]
pub fn shown(advice: &Advice, answers: &Answers) -> Option<Shown> {
    let (scene, surroundings) = scene(answers);
    let need = resolve(answers);
    let facts = &advice.facts;
    let typical = &facts.typical;
    let pick = advice.picks.first()?;
    let what_shot = What::from_key(&typical.quarry)?;
    let winter = facts
        .tonight
        .sunset_s
        .is_some_and(|at_s| in_winter(at_s, facts.tonight.latitude_deg));
    let flown = flown(advice, &need);
    let ranges_m = (typical.nearest_m, typical.usual_m, typical.farthest_m);
    let holds_mrad: Vec<f64> = flown
        .map(|flown| flown.holds(flown.holds_to_m(ranges_m), answers.units))
        .unwrap_or_default()
        .iter()
        .map(|(_, hold)| *hold)
        .gathered();
    let unit = counts_in(answers);
    let line = &pick.line;
    let rail_over_bore_mm = pick.height_over_bore_mm.value - pick.centre_height_mm.value;
    Some(Shown {
        sight: Rc::new(sight(line, holds_mrad.clone(), unit)),
        other: advice
            .picks
            .iter()
            .skip(1)
            .find(|other| glass(&other.line) != glass(line))
            .map(|other| Rc::new(sight(&other.line, holds_mrad, unit))),
        quarry: Rc::new(Quarry::of(what_shot, what(&typical.quarry).into(), winter)?),
        length_m: 0.001 * what_shot.length_mm(),
        run_m_s: what_shot.run_m_s(),
        surroundings,
        eye: match need.eye.dark_pupil_mm {
            Some(mm) => Eye::with_dark_pupil(typical.age_years, mm).ok()?,
            None => Eye::of_nearest_age(typical.age_years),
        },
        evening: evening(advice, &scene)?,
        rows: rows(advice),
        ranges_m,
        magnification: pick.mag_in_use.late,
        minute: typical.stop_minutes_after_sunset.unwrap_or(0.0),
        flown,
        flight_to_m: (1.4 * typical.farthest_m).clamp(100.0, 1400.0),
        luminance_cd_m2: typical.luminance_at_stop_cd_m2,
        parallax: match line.parallax {
            Parallax::Fixed { free_at_m } => ParallaxSetting::Fixed { free_at_m },
            Parallax::Adjustable { nearest_m } => ParallaxSetting::Adjustable { nearest_m },
        },
        length_mm: line.length_mm,
        tube_mm: line.tube_mm,
        eye_relief_mm: line.eye_relief_mm,
        clearances: Clearances {
            rail_over_bore_mm,
            ..Seat::of(&need).clearances(line.objective_mm, line.tube_mm)
        },
        saddle_mm: pick.centre_height_mm.value - 0.5 * line.tube_mm,
        units: answers.units,
    })
}

/// The view through the pick, with its handles.
#[component]
pub fn View(props: &Props) -> Html {
    let app = use_app();
    let answers = app.map(|app| app.answers.clone()).unwrap_or_default();
    let told = use_memo((props.advice.clone(), answers), |(advice, answers)| {
        shown(advice, answers)
    });
    let Some(told) = told.as_ref() else {
        return Html::default();
    };
    view(told)
}

/// The view through the sight of what is shown.
#[must_use]
pub fn view(told: &Shown) -> Html {
    html! {
        <ThroughSight sight={told.sight.clone()} other={told.other.clone()} quarry={told.quarry.clone()}
            surroundings={told.surroundings.clone()} eye={told.eye} evening={told.evening.clone()}
            rows={told.rows.clone()} ranges_m={told.ranges_m} magnification={told.magnification}
            minute={told.minute} holds={told.holds()} units={told.units} />
    }
}

#[cfg(test)]
mod tests {
    use super::noon_before;

    #[test]
    fn noon_is_the_last_one_by_the_sun() {
        // Greenwich: 2026-10-01T18:00Z follows the noon of that day.
        assert_eq!(noon_before(1_790_877_600.0, 0.0), 1_790_856_000.0);
        // A quarter turn to the east noon comes six hours earlier.
        assert_eq!(noon_before(1_790_877_600.0, 90.0), 1_790_834_400.0);
        assert_eq!(noon_before(1_790_877_600.0, -90.0), 1_790_877_600.0);
    }
}
