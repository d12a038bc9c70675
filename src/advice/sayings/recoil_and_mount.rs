//! Sayings about recoil, eye relief, rings and height.

use super::case::{Case, exact, graded_down, saying};
use crate::advice::report::{Quantity as Q, Saying, SayingKey as K, Verdict};
use crate::flight::Zeroed;
use crate::need::answers::{Comb, RifleKind};
use crate::rifle::recoil::{MuzzleDevice, eye_relief_need, mount_load, with_muzzle_device};

/// The eye relief that a box usually states, at the lowest power, mm. Common practice.
const ON_THE_BOX_MM: f64 = 90.0;
/// How much of it the top power may take. Common practice: 0 to 10 mm.
const LOST_OVER_ZOOM_MM: f64 = 10.0;
/// How much higher a tall mount sits than a low one, mm.
const TALLER_MM: f64 = 20.0;

pub(super) fn all(case: &Case) -> Vec<Saying> {
    let mut list = vec![
        low_mount_is_always_better(case),
        eye_relief_is_on_the_box(case),
        only_a_small_cartridge(case),
        magnums_kill_sights(case),
        rings_are_just_rings(case),
        moderator_changes_only_noise(case),
    ];
    list.extend(height_does_not_matter(case));
    list
}

/// "The low mount is always better."
///
/// The least height that bell, ring, bolt and stock allow, over the rail and over the bore.
///
/// Effects: mm over the rail · mm over the bore. False on a straight stock (the cheek cannot
/// go lower), half with an adjustable comb (the cheek follows), else true.
fn low_mount_is_always_better(case: &Case) -> Saying {
    let verdict = if case.clearances.straight_stock {
        Verdict::False
    } else if case.need.rifle.comb.value == Comb::Adjustable {
        Verdict::Half
    } else {
        Verdict::True
    };
    saying(
        K::LowMountIsAlwaysBetter,
        verdict,
        &[
            exact(Q::CentreHeightMm, case.height.centre_over_rail_mm),
            exact(Q::LengthMm, case.height.over_bore_mm),
        ],
    )
}

/// "Height over the bore does not matter."
///
/// The path at the nearest shot with the usual zero, and what 20 mm more of height change
/// there and at the farthest shot, zeroed again.
///
/// Effects: cm at the nearest · cm change there · cm change at the farthest · cm circle ·
/// m nearest. By the larger change: true within a twentieth of the smallest circle, half
/// within a quarter, else false.
fn height_does_not_matter(case: &Case) -> Option<Saying> {
    let flight = case.flight.as_ref()?;
    let zeroed = &flight.zeroed;
    let taller = Zeroed::new(
        zeroed.load,
        zeroed.air,
        zeroed.sight_height_mm + TALLER_MM,
        zeroed.zero_m,
    )
    .ok()?
    .sighted_within(flight.farthest_m);
    let nearest_m = case.nearest_m.min(flight.farthest_m);
    let change = |range_m: f64| taller.path_mm(range_m) - flight.path.path_mm(range_m);
    let near = change(nearest_m);
    let far = change(flight.farthest_m);
    let worst = near.abs().max(far.abs()) / case.smallest_circle_mm;
    Some(saying(
        K::HeightDoesNotMatter,
        graded_down(worst, 0.05, 0.25),
        &[
            exact(Q::ErrorCm, 0.1 * flight.path.path_mm(nearest_m)),
            exact(Q::ErrorCm, 0.1 * near),
            exact(Q::ErrorCm, 0.1 * far),
            exact(Q::CircleCm, 0.1 * case.smallest_circle_mm),
            exact(Q::RangeM, nearest_m),
        ],
    ))
}

/// "The eye relief is on the box."
///
/// What recoil, glasses and position ask for against a box that says 90 mm and a top power
/// that may take 10 of it.
///
/// Effects: mm needed · mm on the box · mm at the top power. True where the least will do,
/// half where only the box's figure will, else false.
fn eye_relief_is_on_the_box(case: &Case) -> Saying {
    let needed = case.eye_relief.total_mm();
    let least = ON_THE_BOX_MM - LOST_OVER_ZOOM_MM;
    saying(
        K::EyeReliefIsOnTheBox,
        graded_down(needed, least, ON_THE_BOX_MM),
        &[
            exact(Q::EyeReliefMm, needed),
            exact(Q::EyeReliefMm, ON_THE_BOX_MM),
            exact(Q::EyeReliefMm, least),
        ],
    )
}

/// "It is only a small cartridge."
///
/// Recoil velocity in this rifle with the sight on, and the eye relief that it alone asks for.
///
/// Effects: m/s · J · mm. True up to 80 mm, half up to 88, else false.
fn only_a_small_cartridge(case: &Case) -> Saying {
    let needed = case.eye_relief.by_recoil_mm;
    saying(
        K::OnlyASmallCartridge,
        graded_down(needed, 80.0, 88.0),
        &[
            exact(Q::RecoilMS, case.recoil.velocity_m_s),
            exact(Q::RecoilJ, case.recoil.energy_j),
            exact(Q::EyeReliefMm, needed),
        ],
    )
}

/// "Magnums kill sights, air rifles do not."
///
/// The peak of the inertial force on the sight. A spring-piston rifle jerks it both ways,
/// which this does not cover and which many sights are not built for.
///
/// Effects: kN peak · m/s. False for a spring rifle and below 4 kN, else half.
fn magnums_kill_sights(case: &Case) -> Saying {
    let load = mount_load(case.sight_g, case.recoil);
    let spring = case.need.rifle.kind.value == RifleKind::SpringAir;
    let verdict = if !spring && load.peak_kn >= 4.0 {
        Verdict::Half
    } else {
        Verdict::False
    };
    saying(
        K::MagnumsKillSights,
        verdict,
        &[
            exact(Q::ForceKn, load.peak_kn),
            exact(Q::RecoilMS, case.recoil.velocity_m_s),
        ],
    )
}

/// "Rings are just rings."
///
/// The inertial force of the sight on its mount, mean and peak.
///
/// Effects: kN peak · kN mean · J. True below 0.5 kN, half below 2, else false; false also
/// where a recoil stop is asked for (more than 25 J).
fn rings_are_just_rings(case: &Case) -> Saying {
    let load = mount_load(case.sight_g, case.recoil);
    let verdict = if case.recoil.energy_j > 25.0 {
        Verdict::False
    } else {
        graded_down(load.peak_kn, 0.5, 2.0)
    };
    saying(
        K::RingsAreJustRings,
        verdict,
        &[
            exact(Q::ForceKn, load.peak_kn),
            exact(Q::ForceKn, load.mean_kn),
            exact(Q::RecoilJ, case.recoil.energy_j),
        ],
    )
}

/// "A moderator changes only the noise."
///
/// Recoil with a moderator against the bare muzzle, and the eye relief that it asks for.
///
/// Effects: J change · m/s change · mm change · g more. Half below 3 J (nothing to change but
/// mass and balance), else false.
fn moderator_changes_only_noise(case: &Case) -> Saying {
    let bare = case.bare_recoil;
    let with = with_muzzle_device(bare, case.rifle_kg, MuzzleDevice::Moderator);
    let relief = |velocity: f64| eye_relief_need(velocity, case.circumstances).total_mm();
    let verdict = if bare.energy_j < 3.0 {
        Verdict::Half
    } else {
        Verdict::False
    };
    saying(
        K::ModeratorChangesOnlyNoise,
        verdict,
        &[
            exact(Q::RecoilJ, with.energy_j - bare.energy_j),
            exact(Q::RecoilMS, with.velocity_m_s - bare.velocity_m_s),
            exact(
                Q::EyeReliefMm,
                relief(with.velocity_m_s) - relief(bare.velocity_m_s),
            ),
            exact(Q::MassG, 1e3 * MuzzleDevice::Moderator.mass_kg()),
        ],
    )
}
