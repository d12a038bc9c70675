//! Figures of flight, aim and fit.

use super::{Fields, Figure, Refusal, Reply};
use crate::flight::{Conditions, DragFunction, FlightError, Load, SEA_LEVEL, Zeroed, atmosphere};
use crate::rifle::recoil::{GasFactor, free_recoil as recoil};
use crate::sight::turret::{Mounted, TravelError};
use crate::sight::{FocalPlane, field, parallax, subtension as reticle_subtension};

/// The figures of this family by name.
pub(super) const FIGURES: &[(&str, Figure)] = &[
    ("trajectory", trajectory),
    ("atmosphere", standard_atmosphere),
    ("parallax_error", parallax_error),
    ("field_of_view", field_of_view),
    ("subtension", subtension),
    ("elevation_travel", elevation_travel),
    ("free_recoil", free_recoil),
];

impl From<FlightError> for Refusal {
    fn from(error: FlightError) -> Self {
        match error {
            FlightError::OutOfRange(out) => out.into(),
            FlightError::FallsShort { reach_m, .. } => {
                Refusal::new(error.to_string()).with("reach_m", reach_m)
            }
            FlightError::ZeroOutOfReach { farthest_m, .. } => {
                Refusal::new(error.to_string()).with("farthest_zero_m", farthest_m)
            }
        }
    }
}

impl From<TravelError> for Refusal {
    fn from(error: TravelError) -> Self {
        Refusal::new(error.to_string())
    }
}

fn trajectory(fields: &mut Fields) -> Result<Reply, Refusal> {
    let drag = match fields.text("drag")?.as_str() {
        "G1" => DragFunction::G1,
        "G7" => DragFunction::G7,
        other => {
            return Err(Refusal::new(format!(
                "drag is \"{other}\"; it must be \"G1\" or \"G7\""
            )));
        }
    };
    let bc = fields.any_number("bc_lb_in2")?;
    let velocity = fields.any_number("muzzle_velocity_m_s")?;
    if (1800.0..6000.0).contains(&velocity) {
        return Err(Refusal::new(format!(
            "muzzle_velocity_m_s is {velocity}, which lies outside 30 to 1800; {velocity} feet per second would be {:.0}",
            0.3048 * velocity
        )));
    }
    let height = fields.any_number("sight_height_mm")?;
    let zero = fields.any_number("zero_m")?;
    let range = fields.number("range_m", 0.0, crate::flight::trajectory::FARTHEST_M)?;
    let load = Load::new(drag, bc, velocity)?;
    let zeroed = Zeroed::new(load, SEA_LEVEL, height, zero)?;
    let path = zeroed.sighted(&Conditions::standard(), range)?;
    let point = path.at(range);
    let reply = Reply::value(path.path_mm(range))?
        .number("path_mm", path.path_mm(range))?
        .number("velocity_m_s", point.velocity_m_s)?
        .number("time_s", point.time_s)?
        .number("elevation_mrad", zeroed.elevation_mrad)?;
    if range >= 1.0 {
        reply.number("hold_mrad", path.hold_mrad(range))
    } else {
        Ok(reply)
    }
}

fn standard_atmosphere(fields: &mut Fields) -> Result<Reply, Refusal> {
    let altitude = fields.any_number("altitude_m")?;
    // What a map shows is geometric height.
    let geometric = fields.optional_truth("geometric")?.unwrap_or(true);
    let air = if geometric {
        atmosphere::standard(altitude)?
    } else {
        atmosphere::standard_at_geopotential(altitude)?
    };
    Reply::value(air.density_kg_m3)?
        .number("speed_of_sound_m_s", air.speed_of_sound_m_s)?
        .number("pressure_hpa", air.pressure_hpa)?
        .number("temperature_k", air.temperature_k)
}

fn parallax_error(fields: &mut Fields) -> Result<Reply, Refusal> {
    let objective = fields.number("objective_mm", 5.0, 150.0)?;
    let free = fields.number("parallax_free_m", 1.0, 10_000.0)?;
    let range = fields.number("range_m", 0.0, 10_000.0)?;
    Reply::value(parallax::extreme_mm(objective, free, range))
}

fn field_of_view(fields: &mut Fields) -> Result<Reply, Refusal> {
    let apparent = fields.number("apparent_deg", 0.1, 120.0)?;
    let magnification = fields.number("magnification", 0.5, 100.0)?;
    Reply::value(field::field_m_per_100m(apparent, magnification))?.number(
        "true_field_deg",
        field::true_field_deg(apparent, magnification),
    )
}

fn subtension(fields: &mut Fields) -> Result<Reply, Refusal> {
    let plane = match fields.text("plane")?.as_str() {
        "first" => FocalPlane::First,
        "second" => FocalPlane::Second,
        other => {
            return Err(Refusal::new(format!(
                "plane is \"{other}\"; it must be \"first\" or \"second\""
            )));
        }
    };
    let label = fields.number("subtension_mrad", 0.0, 1000.0)?;
    let reference = fields.number("reference_magnification", 0.5, 100.0)?;
    let magnification = fields.number("magnification", 0.5, 100.0)?;
    let value = reticle_subtension::true_subtension_mrad(plane, label, reference, magnification);
    Reply::value(value)?
        .number(
            "apparent_arcmin",
            reticle_subtension::apparent_arcmin(value, magnification),
        )?
        .number("mm_per_100m", reticle_subtension::mm_per_100m(value))
}

fn elevation_travel(fields: &mut Fields) -> Result<Reply, Refusal> {
    let mounted = Mounted {
        total_mrad: fields.number("total_mrad", 0.1, 200.0)?,
        incline_mrad: fields.number("incline_mrad", -50.0, 100.0)?,
        zero_angle_mrad: fields.number("zero_angle_mrad", -20.0, 100.0)?,
        misalignment_mrad: fields.number("misalignment_mrad", 0.0, 50.0)?,
        windage_used_mrad: fields.number("windage_used_mrad", -100.0, 100.0)?,
    };
    let travel = mounted.travel()?;
    Ok(Reply::value(travel.up_mrad)?
        .number("down_mrad", travel.down_mrad)?
        .number("half_range_mrad", travel.half_range_mrad)?
        .with("can_be_zeroed", mounted.check().is_ok()))
}

fn free_recoil(fields: &mut Fields) -> Result<Reply, Refusal> {
    let bullet = fields.number("bullet_g", 0.05, 200.0)?;
    let velocity = fields.number("muzzle_velocity_m_s", 1.0, 1800.0)?;
    let powder = fields.number("powder_g", 0.0, 60.0)?;
    let rifle = fields.number("rifle_kg", 0.5, 50.0)?;
    let free = recoil(bullet, velocity, powder, rifle, GasFactor::Rifle);
    Reply::value(free.energy_j)?.number("m_s", free.velocity_m_s)
}
