//! Figures of eye and light.

use super::{Fields, Figure, Refusal, Reply};
use crate::eye::{self, Eye, LastLuminance, Optics, Patch, pupil, threshold};
use crate::sky::{Place, illuminance, moon, place, sun};

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

fn last_luminance(fields: &mut Fields) -> Result<Reply, Refusal> {
    let eye = eye_of(fields)?;
    let optics = sight_of(fields)?;
    let area = fields.number("target_area_m2", 1e-6, 100.0)?;
    let range = fields.number("range_m", 1.0, 3000.0)?;
    let contrast = fields.number("contrast", -1.0, 100.0)?;
    let patch = Patch::new(area, range, contrast);
    match eye::last_luminance(&eye, &optics, eye::equivalent::TWILIGHT_SP_RATIO, &patch) {
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
