//! Figures of eye and light.

use super::{Fields, Figure, Refusal, Reply};
use serde_json::{Value, json};

use crate::eye::people::{self, PupilKnown};
use crate::eye::steps::Step;
use crate::eye::transmission::Light;
use crate::eye::{
    self, Eye, LastLuminance, Optics, Patch, acuity, equivalent, labels, pupil, threshold, veil,
};
use crate::sky::evening::{self, DuskGain, Sighting, SunCourse};
use crate::sky::ground::{self, Canopy, Cloud, Coat, Ground, Scene, Setting};
use crate::sky::{Night, Place, air, illuminance, moon, place, sun};

/// The figures of this family by name.
pub(super) const FIGURES: &[(&str, Figure)] = &[
    ("pupil_diameter", pupil_diameter),
    ("threshold_contrast", threshold_contrast),
    ("equivalent_luminance", equivalent_luminance),
    ("last_luminance", last_luminance),
    ("clear_sky_illuminance", clear_sky_illuminance),
    ("moon_illuminance", moon_illuminance),
    ("sun_altitude", sun_altitude),
    ("moon_altitude", moon_altitude),
    ("evening", evening),
    ("minutes_between", minutes_between),
    ("step_worth", step_worth),
    ("transmission", transmission),
    ("mesopic_luminance", mesopic_luminance),
    ("field_acuity", field_acuity),
    ("landolt_last_luminance", landolt_last_luminance),
    ("veil", veil_factor),
    ("contrast_through_air", contrast_through_air),
    ("coat_contrast", coat_contrast),
    ("ground_luminance", ground_luminance),
    ("box_labels", box_labels),
];

/// The brightest scene that any figure takes, cd/m².
const BRIGHTEST_CD_M2: f64 = 1e5;

fn eye_of(fields: &mut Fields) -> Result<Eye, Refusal> {
    let age = fields.any_number("age_years")?;
    Ok(Eye::of_age(age)?)
}

fn pupil_diameter(fields: &mut Fields) -> Result<Reply, Refusal> {
    let luminance = fields.number("luminance_cd_m2", 0.0, BRIGHTEST_CD_M2)?;
    let eye = eye_of(fields)?;
    Reply::value(pupil::pupil_diameter_mm(luminance, eye.age_years()))?
        .number("spread_mm", pupil::SPREAD_MM)
}

fn threshold_contrast(fields: &mut Fields) -> Result<Reply, Refusal> {
    let luminance = fields.number("luminance_cd_m2", 1e-9, BRIGHTEST_CD_M2)?;
    let solid_angle = fields.number("solid_angle_sr", 1e-12, 2.0 * core::f64::consts::PI)?;
    let limits = threshold::limits(luminance);
    Reply::value(threshold::threshold_contrast(luminance, solid_angle))?
        .number("ricco_sr", limits.ricco_sr)?
        .number("weber", limits.weber)?
        .number("exponent", limits.q)
}

fn equivalent_luminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let luminance = fields.number("luminance_cd_m2", 1e-6, 1e4)?;
    let eye = eye_of(fields)?;
    let magnification = fields.number("magnification", 1.0, 100.0)?;
    let optics = Optics {
        magnification,
        objective_mm: fields.number("objective_mm", 5.0, 150.0)?,
        transmission_day: fields.number("transmission_day", 0.01, 1.0)?,
        transmission_night: fields.number("transmission_night", 0.01, 1.0)?,
        one_eye: true,
    };
    let sp_ratio = fields.number("sp_ratio", 0.3, 10.0)?;
    let seen = eye::equivalent_luminance(luminance, &eye, &optics, sp_ratio);
    Reply::value(seen.luminance_cd_m2)?
        .number("adaptation", seen.adaptation)?
        .number("pupil_mm", seen.pupil_mm)?
        .number(
            "share_of_exit_pupil",
            seen.share_of_exit_pupil(optics.exit_pupil_mm()),
        )
}

fn sight_of(fields: &mut Fields) -> Result<Optics, Refusal> {
    Ok(Optics::sight(
        fields.number("magnification", 1.0, 100.0)?,
        fields.number("objective_mm", 5.0, 150.0)?,
        fields.number("transmission", 0.01, 1.0)?,
    ))
}

/// A target as a patch, and its signed contrast.
fn target_of(fields: &mut Fields) -> Result<(Patch, f64), Refusal> {
    let size = fields.number("size_m", 1e-3, 10.0)?;
    let range = fields.number("range_m", 1.0, 3000.0)?;
    let contrast = fields.number("contrast", -1.0, 100.0)?;
    Ok((Patch::new(size * size, range, contrast), contrast))
}

fn last_luminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let eye = eye_of(fields)?;
    let optics = sight_of(fields)?;
    let area = fields.number("target_area_m2", 1e-6, 100.0)?;
    let range = fields.number("range_m", 1.0, 3000.0)?;
    let contrast = fields.number("contrast", -1.0, 100.0)?;
    let patch = Patch::new(area, range, contrast);
    last_reply(eye::last_luminance(
        &eye,
        &optics,
        equivalent::TWILIGHT_SP_RATIO,
        &patch,
    ))
}

fn last_reply(last: LastLuminance) -> Result<Reply, Refusal> {
    match last {
        LastLuminance::At(luminance) => Reply::value(luminance),
        LastLuminance::Always => Err(Refusal::new(
            "there is no last luminance: told apart at 1e-6 cd/m2 and above, darker than any \
             night makes the ground",
        )
        .with("kind", "always")),
        LastLuminance::Never => Err(Refusal::new(
            "there is no last luminance: not told apart even at 316 cd/m2, where more light \
             no longer helps",
        )
        .with("kind", "never")),
    }
}

fn clear_sky_illuminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let altitude = fields.number("sun_altitude_deg", -90.0, 90.0)?;
    Reply::value(illuminance::clear_sky_illuminance_lx(altitude))
}

fn moon_illuminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let altitude = fields.number("moon_altitude_deg", -90.0, 90.0)?;
    let phase = fields.number("phase_angle_deg", 0.0, 180.0)?;
    let parallax = fields.number("parallax_deg", 0.85, 1.05)?;
    Reply::value(illuminance::moon_illuminance_lx(altitude, phase, parallax))
}

fn instant_and_place(fields: &mut Fields) -> Result<(f64, Place), Refusal> {
    let unix_s = fields.any_number("unix_s")?;
    let unix_s = place::instant(unix_s)?;
    let latitude = fields.any_number("latitude_deg")?;
    let longitude = fields.any_number("longitude_deg_east")?;
    Ok((unix_s, Place::new(latitude, longitude)?))
}

fn sun_altitude(fields: &mut Fields) -> Result<Reply, Refusal> {
    let (unix_s, place) = instant_and_place(fields)?;
    let sun = sun::sun_position(unix_s, &place);
    Reply::value(sun.altitude_deg)?.number("azimuth_deg", sun.azimuth_deg)
}

fn moon_altitude(fields: &mut Fields) -> Result<Reply, Refusal> {
    let (unix_s, place) = instant_and_place(fields)?;
    let moon = moon::moon_position(unix_s, &place);
    Reply::value(moon.altitude_deg)?
        .number("phase_angle_deg", moon.phase_angle_deg)?
        .number("illuminated_fraction", moon.illuminated_fraction)?
        .number("azimuth_deg", moon.azimuth_deg)?
        .number("parallax_deg", moon.parallax_deg)?
        .number("distance_km", moon.distance_km)
}

/// One of several names, or a clear refusal.
fn one_of<T: Copy>(field: &str, text: &str, choices: &[(&'static str, T)]) -> Result<T, Refusal> {
    choices
        .iter()
        .find(|(name, _)| *name == text)
        .map(|(_, choice)| *choice)
        .ok_or_else(|| {
            let names: Vec<&str> = choices.iter().map(|(name, _)| *name).collect();
            Refusal::new(format!(
                "field `{field}` is the text \"{text}\"; it must be one of {}",
                names.join(", ")
            ))
        })
}

const CLOUDS: [(&str, Cloud); 4] = [
    ("clear", Cloud::Clear),
    ("thin", Cloud::Thin),
    ("overcast", Cloud::Overcast),
    ("dark", Cloud::Dark),
];

const CANOPIES: [(&str, Canopy); 8] = [
    ("open", Canopy::Open),
    ("edge", Canopy::Edge),
    ("ride", Canopy::Ride),
    ("bare_wood", Canopy::BareWood),
    ("open_conifer", Canopy::OpenConifer),
    ("thinned_conifer", Canopy::ThinnedConifer),
    ("in_leaf", Canopy::InLeaf),
    ("dense_conifer", Canopy::DenseConifer),
];

/// A field that is either one of the names or a factor.
fn name_or_factor(
    fields: &mut Fields,
    name: &'static str,
    named: impl Fn(&str) -> Result<f64, Refusal>,
    least: f64,
    most: f64,
) -> Result<f64, Refusal> {
    match fields.raw(name)? {
        Value::String(text) => named(&text),
        Value::Number(number) => {
            let factor = number.as_f64().unwrap_or(f64::NAN);
            if (least..=most).contains(&factor) {
                Ok(factor)
            } else {
                Err(Refusal::new(format!(
                    "{name} is {factor}, which lies outside {least} to {most}"
                )))
            }
        }
        other => Err(Refusal::new(format!(
            "field `{name}` is {other}; it must be a name or a factor from {least} to {most}"
        ))),
    }
}

/// Cloud and canopy by name or factor, ground and town: the scene, and the spread of its
/// light in log₁₀.
fn scene_of(fields: &mut Fields) -> Result<(Scene, f64), Refusal> {
    let ground_reflectance = fields.number("ground_reflectance", 0.01, 1.0)?;
    let factor = name_or_factor(
        fields,
        "cloud",
        |text| Ok(one_of("cloud", text, &CLOUDS)?.factor().usual),
        0.01,
        1.5,
    )?;
    let canopy_share = name_or_factor(
        fields,
        "canopy",
        |text| Ok(one_of("canopy", text, &CANOPIES)?.share().usual),
        0.001,
        1.0,
    )?;
    let town_mag_arcsec2 = fields.optional_number("town_mag_arcsec2", 15.0, 23.0)?;
    // The named state whose factor lies nearest decides what the cloud throws back.
    let mut cloud = Cloud::Clear;
    let off = |c: Cloud| (libm::log10(c.factor().usual / factor)).abs();
    for state in Cloud::ALL {
        if off(state) < off(cloud) {
            cloud = state;
        }
    }
    let scene = Scene {
        cloud,
        canopy_share,
        ground_reflectance,
        town_mag_arcsec2,
    };
    let spread_dex = evening::light_spread_dex(&scene);
    // A factor beside the named ones scales the light of the whole scene.
    Ok((
        Scene {
            canopy_share: canopy_share * factor / cloud.factor().usual,
            ..scene
        },
        spread_dex,
    ))
}

fn pupil_known(fields: &mut Fields, eye: Eye) -> Result<(Eye, PupilKnown), Refusal> {
    Ok(
        match fields.optional_number("dark_pupil_mm", pupil::LEAST_MM, pupil::MOST_MM)? {
            Some(mm) => (
                Eye::with_dark_pupil(eye.age_years(), mm)?,
                PupilKnown::Measured,
            ),
            None => (eye, PupilKnown::ByAge),
        },
    )
}

fn veil_of(fields: &mut Fields, eye: &Eye) -> Result<f64, Refusal> {
    let glare = fields.optional_number("glare_index", 0.0, 0.5)?;
    let surround = fields.optional_number("surround_to_ground", 0.0, 100.0)?;
    Ok(match (glare, surround) {
        (None, None) => 1.0,
        (glare, surround) => veil::veil_factor(
            glare.unwrap_or(0.0) + veil::straylight_index(eye.age_years()),
            surround.unwrap_or(1.0),
        ),
    })
}

/// Who looks and at what, glare and straylight included; the last of a question's fields.
fn who_and_what(fields: &mut Fields) -> Result<(Eye, PupilKnown, Patch, f64), Refusal> {
    let eye = eye_of(fields)?;
    let (eye, known) = pupil_known(fields, eye)?;
    let (patch, contrast) = fields.object("target", target_of)?;
    let patch = patch.veiled(veil_of(fields, &eye)?);
    fields.all_read()?;
    Ok((eye, known, patch, contrast))
}

fn evening(fields: &mut Fields) -> Result<Reply, Refusal> {
    let (noon, place) = instant_and_place(fields)?;
    let (scene, light_dex) = scene_of(fields)?;
    let optics = fields.object("sight", sight_of)?;
    let (eye, known, patch, contrast) = who_and_what(fields)?;
    let night = Night::from_noon(noon, &place)?;
    let sp_ratio = equivalent::TWILIGHT_SP_RATIO;
    let last = eye::last_luminance(&eye, &optics, sp_ratio, &patch);
    let person_dex =
        people::last_luminance_spread_dex(&eye, known, &optics, sp_ratio, &patch).unwrap_or(0.0);
    let spread_dex = (person_dex * person_dex + light_dex * light_dex).sqrt();
    let mut events = night.sky_events();
    events.extend(night.sight_events(&scene, last.cd_m2(), spread_dex));
    events.sort_by(|a, b| a.unix_s.total_cmp(&b.unix_s));
    let events: Vec<Value> = events
        .iter()
        .map(|event| {
            json!({
                "kind": event.kind.name(),
                "unix_s": event.unix_s,
                "spread_min": event.spread_min,
            })
        })
        .collect();
    let ground = night.ground_cd_m2(&scene);
    let curve: Vec<Value> = night
        .minutes()
        .iter()
        .zip(&ground)
        .map(|(minute, luminance)| json!([minute.unix_s, luminance]))
        .collect();
    let (sighting, intervals) = match night.sighting(&scene, last.cd_m2()) {
        Sighting::AllNight => ("never_lost", Vec::new()),
        Sighting::Never => ("never_told_apart", Vec::new()),
        Sighting::Intervals(intervals) => ("lost_and_found", intervals),
    };
    let sun = match night.sun_course() {
        SunCourse::Sets => "sets",
        SunCourse::StaysUp => "stays_up",
        SunCourse::StaysDown => "stays_down",
    };
    let last = match last {
        LastLuminance::At(luminance) => json!(luminance),
        LastLuminance::Always | LastLuminance::Never => Value::Null,
    };
    Ok(Reply::default()
        .with("events", events)
        .with("sighting", sighting)
        .with("told_apart", json!(intervals))
        .with("sun", sun)
        .with("last_luminance_cd_m2", last)
        .with("target_to_ground", 1.0 + contrast)
        .with("curve", curve))
}

fn minutes_between(fields: &mut Fields) -> Result<Reply, Refusal> {
    let (noon, place) = instant_and_place(fields)?;
    let (scene, _) = scene_of(fields)?;
    let first = fields.object("first", sight_of)?;
    let second = fields.object("second", sight_of)?;
    let (eye, known, patch, _) = who_and_what(fields)?;
    let night = Night::from_noon(noon, &place)?;
    let gain = dusk_gain(
        &night,
        &scene,
        (&first, &eye),
        (&second, &eye),
        known,
        &patch,
    );
    gain_reply(gain)
}

fn gain_reply((gain, dex): (DuskGain, Option<f64>)) -> Result<Reply, Refusal> {
    match (gain, dex) {
        (
            DuskGain::Minutes {
                mean_person,
                people,
            },
            Some(dex),
        ) => Reply::value(mean_person.value)?
            .number("spread_min", mean_person.spread)?
            .number("people_min", people)?
            .number("dex", dex),
        _ => Err(Refusal::new(
            "one of the two sights does not lose the target on this evening, or never shows \
             it, so that there are no minutes between them",
        )
        .with("kind", "not_lost")),
    }
}

fn dusk_gain(
    night: &Night,
    scene: &Scene,
    (first, first_eye): (&Optics, &Eye),
    (second, second_eye): (&Optics, &Eye),
    known: PupilKnown,
    patch: &Patch,
) -> (DuskGain, Option<f64>) {
    let sp_ratio = equivalent::TWILIGHT_SP_RATIO;
    let a = eye::last_luminance(first_eye, first, sp_ratio, patch);
    let b = eye::last_luminance(second_eye, second, sp_ratio, patch);
    let of = |eye, optics| people::last_luminances(eye, known, optics, sp_ratio, patch);
    let people = of(first_eye, first)
        .into_iter()
        .zip(of(second_eye, second))
        .map(|(a, b)| (a.share, a.last_cd_m2, b.last_cd_m2));
    (
        night.dusk_gain(scene, (a.cd_m2(), b.cd_m2()), people),
        people::gain_dex(a, b),
    )
}

fn step_worth(fields: &mut Fields) -> Result<Reply, Refusal> {
    let (noon, place) = instant_and_place(fields)?;
    let (scene, _) = scene_of(fields)?;
    let sight = fields.object("sight", sight_of)?;
    let (eye, known, patch, _) = who_and_what(fields)?;
    let night = Night::from_noon(noon, &place)?;
    let steps: Vec<Value> = Step::ALL
        .into_iter()
        .filter_map(|step| {
            let (optics, older) = step.taken(&sight, &eye)?;
            let (gain, dex) = dusk_gain(
                &night,
                &scene,
                (&sight, &eye),
                (&optics, &older),
                known,
                &patch,
            );
            let (minutes, spread) = match gain {
                DuskGain::Minutes { mean_person, .. } => {
                    (json!(mean_person.value), json!(mean_person.spread))
                }
                DuskGain::NotLost => (Value::Null, Value::Null),
            };
            let name = match step {
                Step::Objective => "objective",
                Step::Magnification => "magnification",
                Step::Transmission => "transmission",
                Step::TenYears => "ten_years",
            };
            Some(json!({
                "step": name,
                "objective_mm": optics.objective_mm,
                "magnification": optics.magnification,
                "transmission": optics.transmission_day,
                "age_years": older.age_years(),
                "dex": dex,
                "min": minutes,
                "spread_min": spread,
            }))
        })
        .collect();
    Ok(Reply::default().with("value", steps))
}

fn transmission(fields: &mut Fields) -> Result<Reply, Refusal> {
    let wavelengths = fields.numbers("wavelength_nm")?;
    let shares = fields.numbers("transmission")?;
    let light = fields.text("light")?;
    let kelvin = fields.optional_number("temperature_k", 1000.0, 50_000.0)?;
    if wavelengths.len() != shares.len() {
        return Err(Refusal::new(format!(
            "field `wavelength_nm` has {} entries and field `transmission` {}; they must be as many",
            wavelengths.len(),
            shares.len()
        )));
    }
    let light = match one_of(
        "light",
        &light,
        &[("equal", 0), ("lamp", 1), ("daylight", 2)],
    )? {
        0 => Light::Equal,
        1 => Light::Planck(kelvin.unwrap_or(2856.0)),
        _ => Light::Daylight(kelvin.unwrap_or(eye::transmission::D65_K)),
    };
    let samples: Vec<(f64, f64)> = wavelengths.into_iter().zip(shares).collect();
    let weighed = eye::transmission::transmission(&samples, light)?;
    Reply::value(weighed.day)?
        .number("night", weighed.night)?
        .number("sp_ratio", weighed.sp_ratio)
}

fn mesopic_luminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let photopic = fields.number("luminance_cd_m2", 1e-6, BRIGHTEST_CD_M2)?;
    let sp_ratio = fields.number("sp_ratio", 0.3, 10.0)?;
    let seen = eye::mesopic::mesopic(photopic, sp_ratio * photopic);
    Reply::value(seen.luminance_cd_m2)?.number("adaptation", seen.adaptation)
}

fn field_acuity(fields: &mut Fields) -> Result<Reply, Refusal> {
    let luminance = fields.number("image_luminance_cd_m2", 1e-6, BRIGHTEST_CD_M2)?;
    Reply::value(acuity::field_acuity(luminance))?.number(
        "minimum_angle_arcmin",
        acuity::minimum_angle_arcmin(luminance),
    )
}

fn landolt_last_luminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let eye = eye_of(fields)?;
    let optics = sight_of(fields)?;
    let size = fields.number("size_m", 1e-3, 10.0)?;
    let range = fields.number("range_m", 1.0, 3000.0)?;
    let contrast = fields.number("contrast", -1.0, 1.0)?;
    last_reply(people::landolt_last_luminance(
        &eye,
        &optics,
        equivalent::TWILIGHT_SP_RATIO,
        size,
        range,
        contrast,
    ))
}

fn veil_factor(fields: &mut Fields) -> Result<Reply, Refusal> {
    let eye = eye_of(fields)?;
    let glare = fields.number("glare_index", 0.0, 0.5)?;
    let surround = fields.number("surround_to_ground", 0.0, 100.0)?;
    let own = veil::straylight_index(eye.age_years());
    Reply::value(veil::veil_factor(glare + own, surround))?.number("eye_index", own)
}

fn contrast_through_air(fields: &mut Fields) -> Result<Reply, Refusal> {
    let contrast = fields.number("contrast", -1.0, 100.0)?;
    let range = fields.number("range_m", 0.0, 20_000.0)?;
    let visibility = fields.number("visibility_m", 10.0, 300_000.0)?;
    let horizon = match fields.optional_number("ground_reflectance", 0.01, 1.0)? {
        Some(reflectance) => air::horizon_to_ground(reflectance),
        None => 1.0,
    };
    let extinction = air::extinction_per_m(visibility);
    let left = air::contrast_left(range, extinction, horizon);
    Reply::value(contrast * left)?
        .number("share_left", left)?
        .number(
            "background_factor",
            air::background_through_air_cd_m2(1.0, range, extinction, horizon),
        )
}

fn coat_contrast(fields: &mut Fields) -> Result<Reply, Refusal> {
    let coat = fields.text("coat")?;
    let ground = fields.text("ground")?;
    let wet = fields.optional_truth("wet")?.unwrap_or(false);
    let coat = one_of(
        "coat",
        &coat,
        &[
            ("black", Coat::Black),
            ("dark_brown", Coat::DarkBrown),
            ("grey_brown", Coat::GreyBrown),
            ("red_brown", Coat::RedBrown),
            ("fawn", Coat::Fawn),
            ("white", Coat::White),
        ],
    )?;
    let ground = one_of(
        "ground",
        &ground,
        &[
            ("fresh_snow", Ground::FreshSnow),
            ("old_snow", Ground::OldSnow),
            ("stubble", Ground::Stubble),
            ("grass", Ground::Grass),
            ("litter", Ground::Litter),
            ("foliage", Ground::Foliage),
            ("moist_soil", Ground::MoistSoil),
            ("dry_soil", Ground::DrySoil),
            ("bark", Ground::Bark),
            ("heather", Ground::Heather),
            ("tarmac", Ground::Tarmac),
        ],
    )?;
    let coat = coat.usual_reflectance(wet);
    let ground = ground.reflectance().usual;
    Reply::value(ground::contrast(coat, ground, Setting::StandingOnGround))?
        .number(
            "lying",
            ground::contrast(coat, ground, Setting::LyingOnGround),
        )?
        .number(
            "before_wall",
            ground::contrast(
                coat,
                Ground::Foliage.reflectance().usual,
                Setting::BeforeWall,
            ),
        )
}

fn ground_luminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let sun_altitude = fields.number("sun_altitude_deg", -90.0, 90.0)?;
    let moon_lx = fields.optional_number("moon_lx", 0.0, 1.0)?.unwrap_or(0.0);
    let (scene, spread_dex) = scene_of(fields)?;
    let sun_lx = illuminance::clear_sky_illuminance_lx(sun_altitude);
    Reply::value(scene.ground_luminance_cd_m2(sun_lx, moon_lx))?
        .number("illuminance_lx", scene.illuminance_lx(sun_lx, moon_lx))?
        .number(
            "snow_gain",
            ground::snow_gain(scene.ground_reflectance, scene.cloud),
        )?
        .number("spread_dex", spread_dex)
}

fn box_labels(fields: &mut Fields) -> Result<Reply, Refusal> {
    let magnification = fields.number("magnification", 1.0, 100.0)?;
    let objective = fields.number("objective_mm", 5.0, 150.0)?;
    Reply::value(labels::twilight_number(magnification, objective))?.number(
        "relative_brightness_mm2",
        labels::relative_brightness_mm2(magnification, objective),
    )
}
