//! Mark: seen when it matters, and not hiding the aiming point.
//!
//! Second-plane reticles are drawn for the eye: the same etched width looks the same in every
//! sight. Their table widths hold at [`DRAWN_AT`], except where marks must be true, at the
//! top magnification. First-plane reticles hold their table widths at every power.

use crate::advice::chance::Tables;
use crate::sight::reticle::{self, DotSize, MarkUnit};
use crate::sight::subtension::ARCMIN_PER_MRAD;
use crate::sight::{FocalPlane, Illumination, ReticleFamily, Specification};

/// Spread of both margins, natural logarithm.
pub const SPREAD: f64 = 0.4;
/// A line is just seen at this share of the smallest angle told apart.
pub const JUST_SEEN: f64 = 0.6;
/// On moving game it must be seen at a glance: so many times as wide (assumption).
pub const GLANCE: f64 = 2.0;
/// With only the heavy bars seen, the open centre between them serves this share.
pub const BARS_SERVE: f64 = 0.85;
/// A line up to a tenth of the circle is no concern. It hides a strip, not the circle: one
/// still halves what stands out on both sides, so that half is lost only at a third.
pub const LINE_COVERS: f64 = 0.33;
/// A dot up to a quarter is no concern; at twice that half is lost.
pub const DOT_COVERS: f64 = 0.5;
/// On moving game either up to one half; at twice that half is lost.
pub const MOVING_COVERS: f64 = 1.0;
/// Above this luminance a dim lit mark is drowned, cd/m².
pub const NIGHT_FINE_BELOW_CD_M2: f64 = 10.0;
/// Below this one a day-bright mark dazzles, cd/m².
pub const DAY_BRIGHT_ABOVE_CD_M2: f64 = 0.3;
/// The power at which the widths of a second-plane reticle without marks hold.
pub const DRAWN_AT: f64 = 6.0;
/// The power at which the widths of a fine crosshair hold: 4 mm on 100 m are the target
/// shooter's line at a target's power, 1.7 arcminutes wide to the eye there (common practice, no
/// source).
pub const FINE_DRAWN_AT: f64 = 12.0;

/// A reticle as far as this need knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Width of the line or dot one aims with, mrad (first plane) or arcminutes as seen
    /// (second plane).
    pub width: f64,
    /// It is a dot.
    pub dot: bool,
    /// Width of the bars, in the unit of `width`; 0 for none.
    pub bars: f64,
    /// The plane.
    pub plane: FocalPlane,
    /// Light.
    pub lit: Illumination,
}

/// The dot that a sight carries: universal in sights for moving game, that turn down below
/// 1.75, fine in the others.
#[must_use]
pub fn dot_size(magnification_low: f64) -> DotSize {
    if magnification_low < 1.75 {
        DotSize::Universal
    } else {
        DotSize::Fine
    }
}

/// The magnification at which the widths of a second-plane reticle hold.
#[must_use]
pub fn reference_magnification(family: ReticleFamily, magnification_high: f64) -> f64 {
    let marks = matches!(family, ReticleFamily::HoldMarks)
        || matches!(
            reticle::mark_unit(family),
            Some(MarkUnit::Mrad | MarkUnit::Moa)
        );
    if marks {
        magnification_high
    } else if family == ReticleFamily::FineCrosshair {
        FINE_DRAWN_AT
    } else {
        DRAWN_AT
    }
}

/// Line, dot and bars of a reticle in mrad: the table's widths.
#[must_use]
pub fn widths_mrad(family: ReticleFamily, magnification_low: f64) -> (f64, Option<f64>, f64) {
    let drawn = reticle::reticle_with(
        family,
        dot_size(magnification_low),
        &reticle::TYPICAL_HOLDS_MRAD,
    );
    (
        drawn.centre_line_mrad,
        drawn.centre_dot_mrad,
        drawn.bar_mrad.unwrap_or(0.0),
    )
}

impl Mark {
    /// The mark of a sight.
    #[must_use]
    pub fn of(sight: &Specification) -> Self {
        let Specification {
            reticle: family,
            plane,
            illumination: lit,
            magnification_low,
            magnification_high,
            ..
        } = *sight;
        let (line, dot, bars) = widths_mrad(family, magnification_low);
        let scale = match plane {
            FocalPlane::First => 1.0,
            FocalPlane::Second => {
                ARCMIN_PER_MRAD * reference_magnification(family, magnification_high)
            }
        };
        Self {
            width: dot.unwrap_or(line) * scale,
            dot: dot.is_some(),
            bars: bars * scale,
            plane,
            lit,
        }
    }

    /// log10 of the width and of the bars as seen at a magnification, arcminutes.
    #[must_use]
    pub fn log_seen(&self, magnification: f64) -> (f32, f32) {
        let scale = match self.plane {
            FocalPlane::First => ARCMIN_PER_MRAD * magnification,
            FocalPlane::Second => 1.0,
        };
        let log = |width: f64| {
            if width > 0.0 {
                libm::log10(width * scale) as f32
            } else {
                -9.0
            }
        };
        (log(self.width), log(self.bars))
    }

    /// log10 of the true width in mrad at a magnification.
    #[must_use]
    pub fn log_true(&self, magnification: f64) -> f32 {
        let true_mrad = match self.plane {
            FocalPlane::First => self.width,
            FocalPlane::Second => self.width / (ARCMIN_PER_MRAD * magnification),
        };
        libm::log10(true_mrad) as f32
    }

    /// The share that the lit mark is seen by itself in a light.
    #[must_use]
    pub fn lit_share(&self, luminance_cd_m2: f64, astigmatism: bool) -> f64 {
        let dim = luminance_cd_m2 < NIGHT_FINE_BELOW_CD_M2;
        let bright = luminance_cd_m2 > DAY_BRIGHT_ABOVE_CD_M2;
        let works = match self.lit {
            Illumination::Unlit => false,
            Illumination::NightFine => dim,
            Illumination::DayBright => bright,
            Illumination::Both => true,
        };
        match (works, astigmatism) {
            (false, _) => 0.0,
            (true, false) => 1.0,
            // A star instead of a dot: still seen, less well aimed with (assumption).
            (true, true) => 0.8,
        }
    }
}

/// log10 of 0.6.
const LOG_JUST_SEEN: f32 = -0.221_848_75;

/// log10 of the width in arcminutes that is needed to be seen, `0.6·MAR·harder`: a glance,
/// and a dark coat under a veil, make it harder.
#[inline(always)]
#[must_use]
pub fn needed(log_mar: f32, log_harder: f32) -> f32 {
    log_mar + LOG_JUST_SEEN + log_harder
}

/// The chance: seen by line, bars or light, times not hiding the point.
///
/// `log_needed` is that of [`needed`], `log_room` log10 of the angle of the circle that may be
/// covered, in mrad, `log_seen` and `log_true` those of the mark.
#[inline(always)]
#[must_use]
pub fn chance(
    tables: &Tables,
    log_needed: f32,
    log_room: f32,
    log_seen: (f32, f32),
    log_true: f32,
    lit_share: f32,
) -> f32 {
    let per = (core::f64::consts::LN_10 / SPREAD) as f32;
    let line = tables.phi((log_seen.0 - log_needed) * per);
    let bars = BARS_SERVE as f32 * tables.phi((log_seen.1 - log_needed) * per);
    let seen = 1.0 - (1.0 - line) * (1.0 - bars) * (1.0 - lit_share);
    seen * tables.phi((log_room - log_true) * per)
}
