//! Power, field, mark, parallax, elevation and the eye behind the sight.

use super::{Sheet, exact, with};
use crate::advice::candidates::Candidate;
use crate::advice::coverage::muzzle_device;
use crate::advice::limits::FORWARD_FROM_MM;
use crate::advice::needs::{drop, mark};
use crate::advice::occasions;
use crate::advice::reasons::day_pupil_mm;
use crate::advice::report::{NoteKey, Quantity};
use crate::eye::acuity;
use crate::flight::lead::lead;
use crate::flight::{Conditions, Zeroed};
use crate::need::answers::RifleKind;
use crate::rifle::recoil::{self, MuzzleDevice};
use crate::rifle::{mounting, steadiness};
use crate::sight::reticle::MarkUnit;
use crate::sight::turret::{self, ClickUnit, Mounted};
use crate::sight::{
    FocalPlane, Illumination, eye_box, field, fits, parallax, pupil, resolution, subtension,
};

/// Turbulence of a sunny day, m^(−2/3), as for the span's worth.
const SUNNY_CN2: f64 = 1e-13;
/// A usual inclined base, mrad: 20 minutes.
const USUAL_INCLINE_MRAD: f64 = 5.818;
/// Windage that is met after zeroing, mrad (common practice, no source).
const WINDAGE_MRAD: f64 = 2.0;
/// Below this recoil there is nothing to tell, J.
const LEAST_RECOIL_J: f64 = 0.5;
/// Luminance of a day's ground for the mark, cd/m².
const DAY_CD_M2: f64 = 300.0;

pub(super) fn notes(sheet: &mut Sheet) {
    moving(sheet);
    steady(sheet);
    marks(sheet);
    parallax_at_ranges(sheet);
    elevation(sheet);
    recoil_and_eye(sheet);
}

fn moving(sheet: &mut Sheet) {
    let need = sheet.need;
    let own = Candidate::of(sheet.own);
    // What runs most often, at its usual range.
    let runs = need
        .situations
        .iter()
        .filter(|s| s.what.run_m_s() > 0.0)
        .max_by(|a, b| (a.share * a.moving_share).total_cmp(&(b.share * b.moving_share)));
    if let Some(s) = runs.filter(|s| s.moving_share > 0.1)
        && let Ok(load) = drop::load_of(need)
        && let Ok(zeroed) = Zeroed::new(load, drop::air(need), drop::SIGHT_HEIGHT_MM, 50.0)
        && let Ok(path) = zeroed.sighted(&Conditions::still(zeroed.air), s.range.usual_m)
    {
        let lead = lead(
            &path,
            s.range.usual_m,
            s.what.run_m_s(),
            90.0,
            1e-3 * s.what.length_mm(),
        );
        sheet.put(
            NoteKey::Lead,
            vec![
                exact(Quantity::RangeM, s.range.usual_m),
                exact(Quantity::SpeedMS, s.what.run_m_s()),
                exact(Quantity::AngleDeg, lead.swing_deg_s),
                exact(Quantity::WidthM, lead.lead_m),
                exact(Quantity::AngleMrad, lead.lead_mrad),
                exact(Quantity::Ratio, (100.0 * lead.body_lengths).round() / 100.0),
                exact(Quantity::FlightSeconds, path.at(s.range.usual_m).time_s),
            ],
        );
    }
    let nearest_m = sheet.ground.nearest_m();
    let s = runs.unwrap_or(sheet.situation);
    let lengths = if s.moving_share > 0.1 { 3.0 } else { 2.2 };
    let needed_m = if s.what.is_target() { 1.0 } else { lengths } * 1e-3 * s.what.length_mm();
    let low = sheet.own.magnification_low;
    let shown_m = field::field_at_range_m(own.apparent_deg, low, nearest_m);
    let most = field::highest_magnification_for_field(own.apparent_deg, nearest_m, needed_m);
    let mut effects = vec![
        exact(Quantity::RangeM, nearest_m),
        exact(Quantity::WidthM, needed_m),
        exact(Quantity::WidthM, shown_m),
        exact(Quantity::Magnification, low),
    ];
    if most >= low {
        effects.push(exact(Quantity::Magnification, most));
        sheet.put(NoteKey::FieldNeeded, effects);
    } else {
        sheet.put(NoteKey::FieldShort, effects);
    }
    let speed = s.what.run_m_s();
    if speed > 0.0 {
        sheet.put(
            NoteKey::Crossing,
            vec![
                exact(Quantity::RangeM, nearest_m),
                exact(Quantity::WidthM, shown_m),
                exact(Quantity::SpeedMS, speed),
                exact(
                    Quantity::FlightSeconds,
                    field::crossing_time_s(own.apparent_deg, low, nearest_m, speed),
                ),
            ],
        );
    }
}

fn steady(sheet: &mut Sheet) {
    let s = sheet.situation;
    let wobble = occasions::hold(s.what, s.manner, 0.25).wobble_mrad;
    let ceiling = steadiness::magnification_ceiling(0.5 * wobble);
    let (least, most) =
        resolution::mirage_ceiling(SUNNY_CN2, s.range.usual_m.max(10.0), sheet.own.objective_mm);
    sheet.put(
        NoteKey::Steady,
        vec![
            with(Quantity::WobbleMrad, wobble, 0.35 * wobble),
            with(Quantity::Magnification, ceiling, 0.35 * ceiling),
            exact(Quantity::RangeM, s.range.usual_m),
            exact(Quantity::Magnification, least.min(99.0)),
            exact(Quantity::Magnification, most.min(99.0)),
        ],
    );
}

fn marks(sheet: &mut Sheet) {
    let own = sheet.own;
    let mark = mark::Mark::of(&own);
    let farthest_m = sheet.ground.farthest_m();
    let circle_mm = sheet.situation.what.aiming_circle_mm();
    let just_seen = |luminance: f64, power: f64, pupil_mm: f64| {
        mark::JUST_SEEN
            * acuity::minimum_angle_arcmin(acuity::image_luminance_cd_m2(
                luminance,
                fits::transmission_day(own.grade).value,
                pupil::exit_pupil_mm(own.objective_mm, power),
                pupil_mm,
            ))
    };
    let looked_at = |power: f64, luminance: f64, pupil_mm: f64| {
        let (line, bars) = mark.log_seen(power);
        let covered_mm = libm::pow(10.0, f64::from(mark.log_true(power))) * farthest_m;
        let mut effects = vec![
            exact(Quantity::Magnification, power),
            exact(Quantity::MarkArcmin, libm::pow(10.0, f64::from(line))),
            exact(
                Quantity::LineNeededArcmin,
                just_seen(luminance, power, pupil_mm),
            ),
            exact(Quantity::CoveredCm, 0.1 * covered_mm),
            exact(Quantity::CircleCm, 0.1 * circle_mm),
            exact(Quantity::RangeM, farthest_m),
        ];
        effects.push(exact(
            Quantity::MarkArcmin,
            if bars > -8.0 {
                libm::pow(10.0, f64::from(bars))
            } else {
                0.0
            },
        ));
        effects
    };
    let day = looked_at(sheet.day(), DAY_CD_M2, day_pupil_mm(sheet.ranked));
    sheet.put(NoteKey::MarkDay, day);
    if sheet.ground.slate.late > 0 {
        let luminance = sheet.typical.stop_cd_m2;
        let pupil_mm = sheet.typical.eye.map_or(5.0, |eye| eye.pupil_mm(luminance));
        let late = looked_at(sheet.late(), luminance, pupil_mm);
        let (seen, needed) = (late[1].value, late[2].value);
        sheet.put(NoteKey::MarkLate, late);
        if own.illumination != Illumination::Unlit {
            sheet.put(
                NoteKey::LitLate,
                vec![
                    exact(Quantity::LuminanceCdM2, luminance),
                    exact(Quantity::MarkArcmin, seen),
                    exact(Quantity::LineNeededArcmin, needed),
                    exact(Quantity::LuminanceCdM2, mark::NIGHT_FINE_BELOW_CD_M2),
                    exact(Quantity::LuminanceCdM2, mark::DAY_BRIGHT_ABOVE_CD_M2),
                ],
            );
        }
    }
    let needed_mrad = sheet.ground.farthest_needed_mrad().unwrap_or(0.0);
    let reference = own.magnification_high;
    let half = (0.5 * reference).max(own.magnification_low);
    if half < reference - 0.05 && needed_mrad > 0.05 {
        let miss_mm =
            subtension::hold_error_mm(FocalPlane::Second, needed_mrad, reference, half, farthest_m);
        sheet.put(
            NoteKey::PlaneError,
            vec![
                exact(Quantity::AngleMrad, needed_mrad),
                exact(Quantity::RangeM, farthest_m),
                exact(Quantity::Magnification, reference),
                exact(Quantity::Magnification, half),
                exact(Quantity::ErrorCm, 0.1 * miss_mm),
                exact(Quantity::CircleCm, 0.1 * circle_mm),
            ],
        );
    }
}

fn parallax_at_ranges(sheet: &mut Sheet) {
    let own = sheet.own;
    let power = sheet.day();
    let effective = pupil::effective_objective_mm(own.objective_mm, power);
    let pupil_mm = day_pupil_mm(sheet.ranked);
    let circle_mm = sheet.situation.what.aiming_circle_mm();
    let mut ranges = vec![
        sheet.ground.nearest_m(),
        sheet.situation.range.usual_m,
        sheet.ground.farthest_m(),
    ];
    ranges.dedup_by(|a, b| (*a - *b).abs() < 1.0);
    for range_m in ranges {
        let free_m = parallax::free_distance_m(own.parallax, range_m);
        let usual = parallax::usual_cheek_mm(effective, power, pupil_mm, free_m, range_m);
        let clean = parallax::without_shadow_mm(effective, power, pupil_mm, free_m, range_m);
        let extreme = parallax::extreme_mm(effective, free_m, range_m);
        sheet.put(
            NoteKey::ParallaxAt,
            vec![
                exact(Quantity::RangeM, range_m),
                with(Quantity::ParallaxCm, 0.1 * usual, 0.04 * usual),
                exact(Quantity::ParallaxCm, 0.1 * clean),
                exact(Quantity::ParallaxCm, 0.1 * extreme),
                exact(
                    Quantity::Percent,
                    100.0 * parallax::share_of_circle(usual, circle_mm),
                ),
                exact(Quantity::RangeM, free_m),
            ],
        );
    }
}

fn elevation(sheet: &mut Sheet) {
    let Some(flight) = sheet.ground.flight.as_ref() else {
        return;
    };
    let farthest_m = sheet.ground.farthest_m();
    let needed = sheet.ground.farthest_needed_mrad().unwrap_or(0.0);
    let total = fits::travel_mrad(&sheet.own);
    let mounted = Mounted {
        total_mrad: total.value,
        incline_mrad: sheet.need.mount.incline_mrad,
        zero_angle_mrad: flight.zero_angle_mrad,
        misalignment_mrad: drop::MISALIGNED_MRAD,
        windage_used_mrad: 0.0,
    };
    if let Ok(travel) = mounted.check() {
        sheet.put(
            NoteKey::Travel,
            vec![
                with(Quantity::AngleMrad, total.value, total.spread),
                with(Quantity::TravelMrad, travel.up_mrad, 1.5),
                with(Quantity::TravelMrad, travel.down_mrad, 1.5),
                with(Quantity::NeededMrad, needed, 0.05 * needed),
                exact(Quantity::RangeM, farthest_m),
                exact(Quantity::AngleMrad, mounted.incline_mrad),
            ],
        );
    }
    let inclined = Mounted {
        incline_mrad: USUAL_INCLINE_MRAD,
        ..mounted
    };
    match inclined.check() {
        Ok(travel) => sheet.put(
            NoteKey::Incline,
            vec![
                exact(Quantity::AngleMrad, USUAL_INCLINE_MRAD),
                exact(Quantity::TravelMrad, travel.up_mrad),
                exact(Quantity::TravelMrad, travel.down_mrad),
            ],
        ),
        Err(turret::TravelError::CannotBeZeroed {
            short_by_mrad,
            largest_incline_mrad,
        }) => sheet.put(
            NoteKey::InclineTooMuch,
            vec![
                exact(Quantity::AngleMrad, USUAL_INCLINE_MRAD),
                exact(Quantity::AngleMrad, short_by_mrad),
                exact(Quantity::AngleMrad, largest_incline_mrad.max(0.0)),
            ],
        ),
        Err(_) => {}
    }
    let windy = Mounted {
        windage_used_mrad: WINDAGE_MRAD,
        ..mounted
    };
    if let Ok(travel) = windy.travel() {
        sheet.put(
            NoteKey::Windage,
            vec![
                exact(Quantity::AngleMrad, WINDAGE_MRAD),
                exact(Quantity::AngleMrad, travel.lost_to_windage_mrad),
            ],
        );
    }
    let mut clicks = vec![
        exact(Quantity::AngleMrad, needed),
        exact(Quantity::RangeM, farthest_m),
    ];
    clicks.extend(
        ClickUnit::ALL
            .into_iter()
            .map(|unit| exact(Quantity::Clicks, unit.clicks(needed))),
    );
    sheet.put(NoteKey::Clicks, clicks);
    if let Some(mismatch) =
        turret::mismatch(MarkUnit::Mrad, ClickUnit::QuarterMoa, needed, farthest_m)
    {
        sheet.put(
            NoteKey::Mismatch,
            vec![
                exact(Quantity::Ratio, mismatch.clicks_per_mark),
                exact(Quantity::ErrorCm, 0.1 * mismatch.unconverted_error_mm),
                exact(Quantity::RangeM, farthest_m),
                exact(Quantity::AngleMrad, needed),
            ],
        );
    }
}

fn recoil_and_eye(sheet: &mut Sheet) {
    let felt = sheet.ground.recoil;
    if felt.energy_j > LEAST_RECOIL_J {
        recoil_itself(sheet);
    }
    eye_and_mass(sheet);
}

fn recoil_itself(sheet: &mut Sheet) {
    let need = sheet.need;
    let felt = sheet.ground.recoil;
    sheet.put(
        NoteKey::Recoil,
        vec![
            with(
                Quantity::RecoilMS,
                felt.velocity_m_s,
                0.06 * felt.velocity_m_s,
            ),
            with(Quantity::RecoilJ, felt.energy_j, 0.12 * felt.energy_j),
            exact(Quantity::BulletG, need.load.powder_g.value),
        ],
    );
    let device = muzzle_device(need);
    let left = device.energy_left().value;
    let of = |device: MuzzleDevice, bare_j: f64| {
        let left = device.energy_left();
        with(Quantity::RecoilJ, bare_j * left.value, bare_j * left.spread)
    };
    if device == MuzzleDevice::Bare {
        sheet.put(
            NoteKey::MuzzleBare,
            vec![
                of(MuzzleDevice::Moderator, felt.energy_j),
                of(MuzzleDevice::Brake, felt.energy_j),
            ],
        );
    } else {
        sheet.put(
            NoteKey::MuzzleDevice,
            vec![
                exact(Quantity::RecoilJ, felt.energy_j / left),
                of(device, felt.energy_j / left),
            ],
        );
    }
    if need.load.kind.barrel_matters() {
        let v = need.load.muzzle_velocity_m_s.value.value;
        let shorter = recoil::velocity_for_barrel_m_s(v, 600.0, 550.0);
        let change = shorter / v;
        sheet.put(
            NoteKey::Barrel,
            vec![
                exact(Quantity::LengthMm, 50.0),
                with(Quantity::SpeedMS, v - shorter, 0.3 * (v - shorter)),
                exact(Quantity::Percent, 100.0 * (1.0 - change * change)),
            ],
        );
    }
}

fn eye_and_mass(sheet: &mut Sheet) {
    let need = sheet.need;
    let felt = sheet.ground.recoil;
    if sheet.own.eye_relief_mm < FORWARD_FROM_MM {
        let parts = recoil::eye_relief_need(
            felt.velocity_m_s,
            recoil::EyeReliefCircumstances {
                glasses: true,
                thick_frame: false,
                prone: true,
                uphill: true,
            },
        );
        let (least, most) = recoil::eye_relief_by_energy_mm(felt.energy_j);
        sheet.put(
            NoteKey::ReliefParts,
            vec![
                exact(Quantity::EyeReliefMm, parts.by_recoil_mm),
                exact(Quantity::EyeReliefMm, parts.for_glasses_mm),
                exact(Quantity::EyeReliefMm, parts.for_position_mm),
                exact(Quantity::EyeReliefMm, least),
                exact(Quantity::EyeReliefMm, most),
                exact(Quantity::EyeReliefMm, sheet.ground.eye_relief_asked_mm),
            ],
        );
    }
    let power = sheet.own.magnification_high;
    let exit = pupil::exit_pupil_mm(sheet.own.objective_mm, power);
    let eye = day_pupil_mm(sheet.ranked);
    let freedom = eye_box::eye_box(exit, eye, Candidate::of(sheet.own).apparent_deg);
    sheet.put(
        NoteKey::EyeBoxTop,
        vec![
            exact(Quantity::Magnification, power),
            exact(Quantity::ExitPupilMm, freedom.full_sideways_mm),
            exact(Quantity::ExitPupilMm, freedom.gone_sideways_mm),
            exact(Quantity::ExitPupilMm, freedom.full_along_mm),
            exact(Quantity::ExitPupilMm, freedom.half_along_mm),
        ],
    );
    let mass_g = Candidate::of(sheet.own).mass_g;
    // A spring strikes both ways: not covered.
    if felt.energy_j > LEAST_RECOIL_J && need.rifle.kind.value != RifleKind::SpringAir {
        let load = recoil::mount_load(mass_g, felt);
        sheet.put(
            if load.recoil_stop {
                NoteKey::MountLoadStop
            } else {
                NoteKey::MountLoad
            },
            vec![
                with(Quantity::ForceKn, load.mean_kn, 0.4 * load.mean_kn),
                with(Quantity::ForceKn, load.peak_kn, 0.4 * load.peak_kn),
                exact(Quantity::MassG, mass_g),
            ],
        );
    }
    let bare_kg = need.rifle.mass_kg.value.value;
    sheet.put(
        NoteKey::Balance,
        vec![
            with(Quantity::MassG, mass_g, fits::mass_g(&sheet.own).spread),
            exact(
                Quantity::Percent,
                100.0 * mounting::mass_share(mass_g, bare_kg),
            ),
        ],
    );
}
