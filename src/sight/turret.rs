//! Turrets: clicks, their mismatch with a reticle in another unit, and travel.

use super::reticle::MarkUnit;
use super::subtension::ARCMIN_PER_MRAD;

/// Milliradians in one minute of angle, π/10.8.
pub const MRAD_PER_MOA: f64 = core::f64::consts::PI / 10.8;

/// Minutes of angle in one inch at 100 yards, which is often taken for one minute: 0.95493.
pub const MOA_PER_INCH_100YD: f64 = ARCMIN_PER_MRAD / 3.6;

/// Milliradians in one mil of 6400 to the circle, 0.98175.
pub const MRAD_PER_MIL_6400: f64 = 2000.0 * core::f64::consts::PI / 6400.0;

/// What one click moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ClickUnit {
    /// 0.1 mrad: 10 mm at 100 m.
    TenthMrad,
    /// 0.05 mrad: 5 mm at 100 m.
    TwentiethMrad,
    /// ¼ minute: 7.27 mm at 100 m.
    QuarterMoa,
    /// ⅓ minute: 9.70 mm at 100 m.
    ThirdMoa,
    /// ⅛ minute: 3.64 mm at 100 m.
    EighthMoa,
}

impl ClickUnit {
    /// All of them.
    pub const ALL: [ClickUnit; 5] = [
        ClickUnit::TenthMrad,
        ClickUnit::TwentiethMrad,
        ClickUnit::QuarterMoa,
        ClickUnit::ThirdMoa,
        ClickUnit::EighthMoa,
    ];

    /// One click in mrad.
    #[must_use]
    pub fn mrad(self) -> f64 {
        match self {
            ClickUnit::TenthMrad => 0.1,
            ClickUnit::TwentiethMrad => 0.05,
            ClickUnit::QuarterMoa => MRAD_PER_MOA / 4.0,
            ClickUnit::ThirdMoa => MRAD_PER_MOA / 3.0,
            ClickUnit::EighthMoa => MRAD_PER_MOA / 8.0,
        }
    }

    /// One click in mm at 100 m.
    #[must_use]
    pub fn mm_per_100m(self) -> f64 {
        100.0 * self.mrad()
    }

    /// The unit that it counts in.
    #[must_use]
    pub fn unit(self) -> MarkUnit {
        match self {
            ClickUnit::TenthMrad | ClickUnit::TwentiethMrad => MarkUnit::Mrad,
            ClickUnit::QuarterMoa | ClickUnit::ThirdMoa | ClickUnit::EighthMoa => MarkUnit::Moa,
        }
    }

    /// How many clicks an angle is, with its fraction.
    #[must_use]
    pub fn clicks(self, hold_mrad: f64) -> f64 {
        hold_mrad / self.mrad()
    }

    /// What is left in mm at `range_m` after the nearest whole number of clicks.
    #[must_use]
    pub fn rounding_error_mm(self, hold_mrad: f64, range_m: f64) -> f64 {
        let clicks = self.clicks(hold_mrad);
        (clicks - clicks.round()) * self.mrad() * range_m
    }
}

/// A reticle that counts in another unit than the clicks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mismatch {
    /// Clicks for one unit of the reticle (1 mrad or 1 minute).
    pub clicks_per_mark: f64,
    /// The miss in mm at the range asked for when the reticle's figure is dialled in the
    /// clicks' unit without converting.
    pub unconverted_error_mm: f64,
}

/// What it costs to read `reading` units in the reticle and to dial them; none if both count
/// in one unit.
///
/// # Example
/// ```
/// use scopewright::sight::{reticle::MarkUnit, turret::{ClickUnit, mismatch}};
/// let m = mismatch(MarkUnit::Mrad, ClickUnit::QuarterMoa, 1.0, 100.0).unwrap();
/// assert!((m.clicks_per_mark - 13.75).abs() < 0.01);
/// assert!((m.unconverted_error_mm - 70.9).abs() < 0.1);
/// assert!(mismatch(MarkUnit::Mrad, ClickUnit::TenthMrad, 1.0, 100.0).is_none());
/// ```
#[must_use]
pub fn mismatch(
    marks: MarkUnit,
    clicks: ClickUnit,
    reading: f64,
    range_m: f64,
) -> Option<Mismatch> {
    if marks == clicks.unit() {
        return None;
    }
    let of = |unit: MarkUnit| match unit {
        MarkUnit::Mrad => 1.0,
        MarkUnit::Moa => MRAD_PER_MOA,
    };
    Some(Mismatch {
        clicks_per_mark: of(marks) / clicks.mrad(),
        unconverted_error_mm: reading * (of(marks) - of(clicks.unit())) * range_m,
    })
}

/// The miss in mm from taking an inch at 100 yards for a minute of angle: 4.7 %.
#[must_use]
pub fn inch_for_minute_error_mm(hold_mrad: f64, range_m: f64) -> f64 {
    hold_mrad * (1.0 / MOA_PER_INCH_100YD - 1.0) * range_m
}

/// How a sight with its elevation travel sits on the rifle, all in mrad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mounted {
    /// Total elevation travel from stop to stop.
    pub total_mrad: f64,
    /// Forward incline of the base.
    pub incline_mrad: f64,
    /// Angle between bore and line of sight at the zero, about 1.2.
    pub zero_angle_mrad: f64,
    /// How far bore and base disagree, to the wrong side; 1 to 2 is usual.
    pub misalignment_mrad: f64,
    /// Windage in use.
    pub windage_used_mrad: f64,
}

/// What travel is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Travel {
    /// Half of the range at the windage in use.
    pub half_range_mrad: f64,
    /// Up from the zero.
    pub up_mrad: f64,
    /// Down from the zero; negative: it cannot be zeroed.
    pub down_mrad: f64,
    /// Half of what the erector's circle loses to the windage in use.
    pub lost_to_windage_mrad: f64,
}

/// Why a mounted sight cannot be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TravelError {
    /// The windage in use is as large as half the travel: nothing is left.
    WindageTakesAll {
        /// The windage in use.
        windage_used_mrad: f64,
        /// Half the travel.
        half_travel_mrad: f64,
    },
    /// The zero lies below the lower stop.
    CannotBeZeroed {
        /// By how much.
        short_by_mrad: f64,
        /// The largest incline with which it can.
        largest_incline_mrad: f64,
    },
    /// The zero lies above the upper stop.
    ZeroTooHigh {
        /// By how much.
        short_by_mrad: f64,
        /// The smallest incline with which it can.
        smallest_incline_mrad: f64,
    },
}

impl core::fmt::Display for TravelError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            TravelError::WindageTakesAll {
                windage_used_mrad,
                half_travel_mrad,
            } => write!(
                f,
                "windage of {windage_used_mrad} mrad leaves no elevation in a travel of {half_travel_mrad} mrad to each side"
            ),
            TravelError::CannotBeZeroed {
                short_by_mrad,
                largest_incline_mrad,
            } => write!(
                f,
                "the zero lies {short_by_mrad:.1} mrad below the lower stop; an incline up to {largest_incline_mrad:.1} mrad would do"
            ),
            TravelError::ZeroTooHigh {
                short_by_mrad,
                smallest_incline_mrad,
            } => write!(
                f,
                "the zero lies {short_by_mrad:.1} mrad above the upper stop; an incline from {smallest_incline_mrad:.1} mrad would do"
            ),
        }
    }
}

impl std::error::Error for TravelError {}

impl Mounted {
    /// The travel left: `H = √((T/2)² − w²)`, `U = H + i − θ − m`, `D = H − i + θ − m`.
    ///
    /// # Errors
    /// [`TravelError::WindageTakesAll`]. A negative `down_mrad` is returned as it is; see
    /// [`Mounted::check`].
    ///
    /// # Source
    /// Geometry of a round erector field; the misalignment is common practice, no source.
    pub fn travel(&self) -> Result<Travel, TravelError> {
        let half = 0.5 * self.total_mrad;
        let square = half * half - self.windage_used_mrad * self.windage_used_mrad;
        if !(square > 0.0) {
            return Err(TravelError::WindageTakesAll {
                windage_used_mrad: self.windage_used_mrad,
                half_travel_mrad: half,
            });
        }
        let half_range = square.sqrt();
        Ok(Travel {
            half_range_mrad: half_range,
            up_mrad: half_range + self.incline_mrad - self.zero_angle_mrad - self.misalignment_mrad,
            down_mrad: half_range - self.incline_mrad + self.zero_angle_mrad
                - self.misalignment_mrad,
            lost_to_windage_mrad: half - half_range,
        })
    }

    /// The travel left, refused when the rifle cannot be zeroed.
    ///
    /// # Errors
    /// [`TravelError`] saying by how much and which incline would fit.
    pub fn check(&self) -> Result<Travel, TravelError> {
        let travel = self.travel()?;
        if travel.down_mrad < 0.0 {
            return Err(TravelError::CannotBeZeroed {
                short_by_mrad: -travel.down_mrad,
                largest_incline_mrad: self.incline_mrad + travel.down_mrad,
            });
        }
        if travel.up_mrad < 0.0 {
            return Err(TravelError::ZeroTooHigh {
                short_by_mrad: -travel.up_mrad,
                smallest_incline_mrad: self.incline_mrad - travel.up_mrad,
            });
        }
        Ok(travel)
    }

    /// The inclines in mrad (least, most) that give `up_mrad` from the zero and keep
    /// `spare_down_mrad` below it; none if the travel is too short for both.
    #[must_use]
    pub fn inclines_for(&self, up_mrad: f64, spare_down_mrad: f64) -> Option<(f64, f64)> {
        let travel = self.travel().ok()?;
        let least = self.incline_mrad + up_mrad - travel.up_mrad;
        let most = self.incline_mrad + travel.down_mrad - spare_down_mrad;
        (least <= most)
            .then_some((least.max(0.0), most.max(0.0)))
            .filter(|(least, most)| least <= most)
    }
}
