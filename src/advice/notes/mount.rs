//! The mounting sheet: height, rings along the tube, rail, screws, comb, bolt, eye.

use super::{Sheet, exact, with};
use crate::advice::reasons::OBJECTIVES;
use crate::advice::report::{Effect, NoteKey, Quantity};
use crate::need::answers::{Base, Comb};
use crate::plain::Gathered;
use crate::rifle::mounting::{
    self, Clearances, HeightLimit, RING_SPACING_MM, TubeLayout, comb_short_by_mm,
};
use crate::rifle::rail::{
    self, NARROW_SLOT_WIDTH_MM, NM_PER_INCH_POUND, SLOT_PITCH_MM, SLOT_WIDTH_MM,
    SLOTTED_RAIL_WIDTH_MM, Screw,
};
use crate::sight::fits;

/// Half of a usual ring's width, mm (common practice, no source).
pub(super) const HALF_RING_MM: f64 = 10.0;
/// Half of the narrowest ring that is usual, mm (common practice, no source).
const LEAST_HALF_RING_MM: f64 = 5.0;
/// How far a usual comb lies below the axis of the bore, mm (assumption), and a low one.
const COMB_BELOW_BORE_MM: (f64, f64) = (15.0, 25.0);

/// What the pick has to clear on this rifle.
pub(super) fn clearances(sheet: &Sheet) -> Clearances {
    let seat = sheet.ranked.costs.seat();
    seat.clearances(sheet.own.objective_mm, sheet.own.tube_mm)
}

/// The tube of the pick.
pub(super) fn tube(sheet: &Sheet) -> TubeLayout {
    TubeLayout::typical(
        fits::length_mm(&sheet.own).value,
        sheet.own.objective_mm,
        sheet.own.tube_mm,
    )
}

pub(super) fn notes(sheet: &mut Sheet) {
    height(sheet);
    along(sheet);
    rails(sheet);
    torques(sheet);
}

fn mm(value: f64) -> Effect {
    exact(Quantity::LengthMm, value)
}

fn height(sheet: &mut Sheet) {
    let clearances = clearances(sheet);
    let height = clearances.least_height();
    let key = match height.limit {
        HeightLimit::Bell => NoteKey::HeightBell,
        HeightLimit::IronSights => NoteKey::HeightIron,
        HeightLimit::Bolt => NoteKey::HeightBolt,
        HeightLimit::Ring => NoteKey::HeightRing,
        HeightLimit::StraightStock => NoteKey::HeightStock,
    };
    sheet.put(
        key,
        vec![
            with(Quantity::LengthMm, height.saddle_mm, 1.5),
            mm(height.centre_over_rail_mm),
            mm(height.over_bore_mm),
            mm(clearances.clearance_mm),
            mm(clearances.bell_outer_mm),
            mm(2.0 * clearances.barrel_radius_mm),
        ],
    );
    if let Some(&larger) = OBJECTIVES
        .iter()
        .find(|&&step| step > sheet.own.objective_mm + 1.0)
    {
        let more = sheet
            .ranked
            .costs
            .seat()
            .height(larger, sheet.own.tube_mm)
            .centre_over_rail_mm
            - height.centre_over_rail_mm;
        if more > 0.05 {
            sheet.put(NoteKey::LargerBell, vec![mm(larger), mm(more)]);
        }
    }
    if let Some(bore) = sheet.need.mount.rings_kept_mm.value
        && let Some(centre) = sheet.need.mount.rings_centre_height_mm
        && let Ok(kept) = mounting::rings_kept(&clearances, bore, centre)
    {
        sheet.put(
            NoteKey::KeptFits,
            vec![
                mm(bore),
                mm(centre),
                mm(kept.saddle_mm),
                mm(centre - height.centre_over_rail_mm),
            ],
        );
    }
    let under_ocular = height.over_bore_mm - 0.5 * clearances.ocular_outer_mm;
    sheet.put(
        NoteKey::BoltRoom,
        vec![
            mm(under_ocular),
            mm(under_ocular - clearances.clearance_mm),
            mm(clearances.ocular_outer_mm),
        ],
    );
    let below = if sheet.need.rifle.comb.value == Comb::Low {
        COMB_BELOW_BORE_MM.1
    } else {
        COMB_BELOW_BORE_MM.0
    };
    let over_comb = height.over_bore_mm + below;
    let short = comb_short_by_mm(over_comb);
    let (least, most) = mounting::EYE_OVER_CHEEK_MM;
    sheet.put(
        if short > 0.0 {
            NoteKey::CombLow
        } else {
            NoteKey::Comb
        },
        vec![mm(over_comb), mm(least), mm(most), mm(short.max(0.0))],
    );
}

fn along(sheet: &mut Sheet) {
    let tube = tube(sheet);
    let room = (tube.front_mm.1 - tube.front_mm.0).min(tube.rear_mm.1 - tube.rear_mm.0);
    let w = HALF_RING_MM.min(0.5 * room);
    if w < LEAST_HALF_RING_MM {
        return;
    }
    let front = (tube.front_mm.0 + w, tube.front_mm.1 - w);
    let rear = (tube.rear_mm.0 + w, tube.rear_mm.1 - w);
    let apart = (
        (front.0 + rear.0).max(RING_SPACING_MM.0),
        (front.1 + rear.1).min(RING_SPACING_MM.1),
    );
    sheet.put(
        NoteKey::RingsPlace,
        vec![
            mm(front.0),
            mm(front.1),
            mm(rear.0),
            mm(rear.1),
            mm(apart.0),
            mm(apart.1),
            mm(2.0 * w),
        ],
    );
    let slots = (
        libm::ceil(apart.0 / SLOT_PITCH_MM),
        libm::floor(apart.1 / SLOT_PITCH_MM),
    );
    let slotted = sheet
        .need
        .mount
        .base
        .value
        .iter()
        .any(|base| matches!(base.of, Base::SlottedRail | Base::Bare));
    if slotted && slots.0 <= slots.1 {
        sheet.put(
            NoteKey::RingsSlots,
            vec![
                exact(Quantity::Clicks, slots.0),
                exact(Quantity::Clicks, slots.1),
                exact(Quantity::ExactMm, SLOT_PITCH_MM),
            ],
        );
    }
    sheet.put(
        NoteKey::EyePlace,
        vec![
            mm(sheet.own.eye_relief_mm),
            mm(tube.ocular_end_mm + sheet.own.eye_relief_mm),
            mm(fits::length_mm(&sheet.own).value),
        ],
    );
}

fn rails(sheet: &mut Sheet) {
    let bases: Vec<Base> = sheet
        .need
        .mount
        .base
        .value
        .iter()
        .map(|base| base.of)
        .gathered();
    for base in bases {
        let (key, effects) = match base {
            Base::SlottedRail => (
                NoteKey::RailSlotted,
                vec![
                    exact(Quantity::ExactMm, SLOT_WIDTH_MM),
                    exact(Quantity::ExactMm, SLOT_PITCH_MM),
                    exact(Quantity::ExactMm, SLOTTED_RAIL_WIDTH_MM),
                ],
            ),
            Base::NarrowSlots => (
                NoteKey::RailNarrow,
                vec![
                    exact(Quantity::ExactMm, NARROW_SLOT_WIDTH_MM),
                    exact(Quantity::ExactMm, SLOT_WIDTH_MM),
                ],
            ),
            Base::SmallDovetail => (NoteKey::RailSmallDovetail, vec![mm(9.5), mm(13.5)]),
            Base::WideDovetail => (NoteKey::RailWideDovetail, vec![mm(13.0), mm(22.0)]),
            Base::TwoPiece => (
                NoteKey::RailTwoPiece,
                vec![mm(RING_SPACING_MM.0), mm(RING_SPACING_MM.1)],
            ),
            Base::Bare => (
                NoteKey::RailBare,
                vec![exact(Quantity::ExactMm, SLOTTED_RAIL_WIDTH_MM)],
            ),
        };
        sheet.put(key, effects);
    }
}

fn torques(sheet: &mut Sheet) {
    for (key, screw) in [
        (NoteKey::TorqueCaps, Screw::RingCap),
        (NoteKey::TorqueBase, Screw::Base),
        (NoteKey::TorqueCrossAluminium, Screw::CrossBoltAluminium),
        (NoteKey::TorqueCrossSteel, Screw::CrossBoltSteel),
    ] {
        let (least, most) = rail::usual_torque_nm(screw);
        sheet.put(
            key,
            vec![
                exact(Quantity::TorqueNm, least),
                exact(Quantity::TorqueNm, most),
                exact(Quantity::TorqueInLb, least / NM_PER_INCH_POUND),
                exact(Quantity::TorqueInLb, most / NM_PER_INCH_POUND),
            ],
        );
    }
}
