//! From a candidate to the line of the report.

use super::candidates::Candidate;
use super::coverage::Ground;
use super::needs::mark;
use super::report::{Band, FieldWidth, Figure, Grade, Line, Lit, Parallax, Plane, Reticle, Turret};
use crate::sight::{
    Elevation, FieldClass, FocalPlane, GlassGrade, Illumination, ParallaxSetting, ReticleFamily,
    field, fits,
};

impl From<FocalPlane> for Plane {
    fn from(plane: FocalPlane) -> Self {
        match plane {
            FocalPlane::First => Self::First,
            FocalPlane::Second => Self::Second,
        }
    }
}

impl From<ReticleFamily> for Reticle {
    fn from(family: ReticleFamily) -> Self {
        match family {
            ReticleFamily::FineCrosshair => Self::FineCrosshair,
            ReticleFamily::ThickThin => Self::ThickThin,
            ReticleFamily::ThreePost => Self::ThreePost,
            ReticleFamily::HeavyNight => Self::HeavyNight,
            ReticleFamily::Post => Self::Post,
            ReticleFamily::CentreDot => Self::CentreDot,
            ReticleFamily::CircleDot => Self::CircleDot,
            ReticleFamily::MradMarks => Self::MradMarks,
            ReticleFamily::MoaMarks => Self::MoaMarks,
            ReticleFamily::HoldMarks => Self::HoldMarks,
            ReticleFamily::MarkGrid => Self::MarkGrid,
        }
    }
}

impl From<Illumination> for Lit {
    fn from(illumination: Illumination) -> Self {
        match illumination {
            Illumination::Unlit => Self::None,
            Illumination::NightFine => Self::NightFine,
            Illumination::DayBright => Self::DayBright,
            Illumination::Both => Self::Both,
        }
    }
}

impl From<ParallaxSetting> for Parallax {
    fn from(setting: ParallaxSetting) -> Self {
        match setting {
            ParallaxSetting::Fixed { free_at_m } => Self::Fixed { free_at_m },
            ParallaxSetting::Adjustable { nearest_m } => Self::Adjustable { nearest_m },
        }
    }
}

impl From<Elevation> for Turret {
    fn from(elevation: Elevation) -> Self {
        match elevation {
            Elevation::Capped => Self::Capped,
            Elevation::RingForLoad => Self::RingForLoad,
            Elevation::DialZeroStop => Self::DialZeroStop,
        }
    }
}

impl From<GlassGrade> for Grade {
    fn from(grade: GlassGrade) -> Self {
        match grade {
            GlassGrade::Basic => Self::Basic,
            GlassGrade::Good => Self::Good,
            GlassGrade::Best => Self::Best,
        }
    }
}

impl From<FieldClass> for FieldWidth {
    fn from(class: FieldClass) -> Self {
        match class {
            FieldClass::Narrow => Self::Narrow,
            FieldClass::Usual => Self::Usual,
            FieldClass::Wide => Self::Wide,
        }
    }
}

/// The band of a price, A = 0 to E = 4.
#[must_use]
pub fn band(price: f64) -> Band {
    match price {
        p if p < 0.5 => Band::A,
        p if p < 1.5 => Band::B,
        p if p < 2.5 => Band::C,
        p if p < 3.5 => Band::D,
        _ => Band::E,
    }
}

/// Elevation upwards from the zero on this rifle, mrad; half the travel without a flight.
#[must_use]
pub fn up_from_zero_mrad(ground: &Ground, candidate: &Candidate) -> f64 {
    let s = &candidate.specification;
    ground
        .travel(s)
        .map_or(0.5 * fits::travel_mrad(s).value, |travel| travel.up_mrad)
        .max(0.0)
}

/// The line of a candidate on this person's rifle.
#[must_use]
pub fn line(ground: &Ground, candidate: &Candidate) -> Line {
    let s = &candidate.specification;
    let top = s.magnification_high;
    let (centre, dot, bars) = mark::widths_mrad(s.reticle, s.magnification_low);
    let at_top = match s.plane {
        FocalPlane::First => 1.0,
        FocalPlane::Second => mark::reference_magnification(s.reticle, top) / top,
    };
    let price = fits::price_band_index(s);
    Line {
        mag_low: s.magnification_low,
        mag_high: top,
        objective_mm: s.objective_mm,
        tube_mm: s.tube_mm,
        plane: s.plane.into(),
        reticle: s.reticle.into(),
        illumination: s.illumination.into(),
        parallax: s.parallax.into(),
        elevation: s.elevation.into(),
        up_from_zero_mrad: up_from_zero_mrad(ground, candidate),
        eye_relief_mm: s.eye_relief_mm,
        field_low_m_per_100m: field::field_m_per_100m(candidate.apparent_deg, s.magnification_low),
        field_high_m_per_100m: field::field_m_per_100m(candidate.apparent_deg, top),
        grade: s.grade.into(),
        field: s.field.into(),
        mass_g: candidate.mass_g,
        mass_spread_g: fits::mass_g(s).spread,
        length_mm: fits::length_mm(s).value,
        price_band: band(candidate.price),
        price: Figure {
            value: candidate.price.clamp(0.0, 4.0),
            spread: price.spread,
        },
        centre_line_mm_per_100m: 100.0 * centre * at_top,
        bars_mm_per_100m: 100.0 * bars * at_top,
        dot_mm_per_100m: 100.0 * dot.unwrap_or(0.0) * at_top,
    }
}
