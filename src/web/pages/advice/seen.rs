//! The typical evening, and the view through the pick.

use super::head::Props;
use crate::advice::Advice;
use crate::advice::evening::typical_sunset_s;
use crate::advice::needs::mark;
use crate::advice::report::{FieldWidth, Grade, LastLight, Line, Lit, Plane, Reticle};
use crate::drawing::colour::Hue;
use crate::drawing::dusk::{Evening, Until};
use crate::eye::Eye;
use crate::need::answers::{Answers, Cover};
use crate::need::quarry::{Coat, What};
use crate::need::resolve;
use crate::quantity::Estimate;
use crate::sight::reticle::{TYPICAL_HOLDS_MRAD, reticle_with};
use crate::sight::{FocalPlane, GlassGrade, ReticleFamily, fits};
use crate::sky::evening::Night;
use crate::sky::ground::{self, Cloud, Scene};
use crate::sky::place::Place;
use crate::t;
use crate::web::components::figure::figure_of;
use crate::web::pictures::{DuskStrip, Quarry, Sight, StripRow, Surroundings, ThroughSight};
use crate::web::platform;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
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

fn evening_at(place: &Place, at_s: f64, scene: &Scene) -> Option<Rc<Evening>> {
    let noon_s = noon_before(at_s, place.longitude_deg_east());
    let night = Night::from_noon(noon_s, place).ok()?;
    Some(Rc::new(Evening::of(
        &night,
        scene,
        platform::offset_min_at(at_s),
    )))
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
        rows.push(row(t!("strip-other-sight"), other, false));
    }
    rows
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

fn sight(line: &Line) -> Sight {
    let grade = grade(line.grade);
    let widest = fits::widest_apparent_field_deg(line.eye_relief_mm);
    Sight {
        magnification_low: line.mag_low,
        magnification_high: line.mag_high,
        reference_magnification: mark::reference_magnification(family(line.reticle), line.mag_high),
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
        reticle: reticle_with(
            family(line.reticle),
            mark::dot_size(line.mag_low),
            &TYPICAL_HOLDS_MRAD,
        ),
    }
}

/// Reflectance and hue of a coat.
fn coat(coat: Coat) -> (f64, Hue) {
    use ground::Coat as Ground;
    let (of, hue) = match coat {
        Coat::VeryDark | Coat::Black => (Ground::Black, Hue::NEUTRAL),
        Coat::DarkBrown => (Ground::DarkBrown, Hue::COAT),
        Coat::GreyBrown | Coat::Grey => (Ground::GreyBrown, Hue::NEUTRAL),
        Coat::RedBrownSummerGreyBrownWinter | Coat::PaleOrGreyBrown => {
            (Ground::GreyBrown, Hue::COAT)
        }
        Coat::PaleOrDarkBrown | Coat::RedBrown => (Ground::RedBrown, Hue::COAT),
        Coat::Pale => (Ground::Fawn, Hue::COAT),
    };
    (of.usual_reflectance(false), hue)
}

fn quarry(key: &str) -> Option<Quarry> {
    let row = What::from_key(key)?;
    let figure = Rc::new(figure_of(row)?);
    let name = AttrValue::from(what(key));
    let aiming_circle_cm = row.aiming_circle_mm() / 10.0;
    Some(match row {
        What::Animal(animal) => {
            let (dark_reflectance, hue) = coat(animal.coat);
            Quarry {
                figure,
                name,
                aiming_circle_cm,
                dark_reflectance,
                light_reflectance: 0.6,
                hue,
            }
        }
        What::Target(_) => Quarry {
            figure,
            name,
            aiming_circle_cm,
            dark_reflectance: 0.04,
            light_reflectance: 0.75,
            hue: Hue::NEUTRAL,
        },
    })
}

/// Everything the pictures are drawn from.
struct Drawn {
    evening: Rc<Evening>,
    rows: Vec<StripRow>,
    surroundings: Rc<Surroundings>,
}

fn use_drawn(advice: &Rc<Advice>) -> Rc<Option<Drawn>> {
    let app = use_app();
    let answers = app.map(|app| app.answers.clone()).unwrap_or_default();
    use_memo(
        (advice.clone(), answers.light.clone()),
        move |(advice, _)| {
            let (scene, surroundings) = scene(&answers);
            Some(Drawn {
                evening: evening(advice, &scene)?,
                rows: rows(advice),
                surroundings,
            })
        },
    )
}

/// The typical evening as a strip, without a handle.
#[component]
pub fn Tonight(props: &Props) -> Html {
    let drawn = use_drawn(&props.advice);
    let Some(drawn) = drawn.as_ref() else {
        return Html::default();
    };
    html! { <DuskStrip evening={drawn.evening.clone()} rows={drawn.rows.clone()} label={t!("advice-tonight")} /> }
}

/// The view through the pick, with its handles.
#[component]
pub fn View(props: &Props) -> Html {
    let drawn = use_drawn(&props.advice);
    let facts = &props.advice.facts;
    let (Some(drawn), Some(pick)) = (drawn.as_ref(), props.advice.picks.first()) else {
        return Html::default();
    };
    let (Some(quarry), Ok(eye)) = (
        quarry(&facts.typical.quarry),
        Eye::of_age(facts.typical.age_years),
    ) else {
        return Html::default();
    };
    let typical = &facts.typical;
    html! {
        <ThroughSight sight={Rc::new(sight(&pick.line))} quarry={Rc::new(quarry)} surroundings={drawn.surroundings.clone()}
            {eye} evening={drawn.evening.clone()} rows={drawn.rows.clone()}
            ranges_m={(typical.nearest_m, typical.usual_m, typical.farthest_m)}
            magnification={pick.mag_in_use.late}
            minute={typical.stop_minutes_after_sunset.unwrap_or(0.0)} units={props.units} />
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
