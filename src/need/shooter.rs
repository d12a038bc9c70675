//! The answers, resolved to what the ranking computes with: every gap filled by a stated,
//! spread-out assumption.
//!
//! # Source
//! What is assumed for a question that was not answered: common practice, no source, unless
//! said otherwise at the field. `assumed` is carried along so that the advice can say so.

use super::answers::{
    AngleUnit, Annoyance, Attitude, Base, Carry, Comb, Cover, DistanceHabit, Glasses, Habits, Lens,
    LitMark, Manner, Muzzle, PriceBand, RifleKind, Rulebook,
};
use super::quarry::What;
use crate::flight::cartridges::LoadKind;
use crate::quantity::Estimate;

/// A value, and whether it was said or is assumed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Said<T> {
    /// The value to compute with.
    pub value: T,
    /// Nobody said so: it is what is usual.
    pub assumed: bool,
}

impl<T> Said<T> {
    /// What was said, or else this assumption.
    pub fn or(said: Option<T>, assumption: T) -> Self {
        match said {
            Some(value) => Self {
                value,
                assumed: false,
            },
            None => Self {
                value: assumption,
                assumed: true,
            },
        }
    }
}

/// A thing and how large a share of occasions it has; the shares of a list sum to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share<T> {
    /// The thing.
    pub of: T,
    /// Its share, 0 to 1.
    pub share: f64,
}

/// Everything the ranking needs to know of one shooter.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// What is shot at, how, how far and until when; shares sum to 1, none is empty.
    pub situations: Vec<Situation>,
    /// What is around.
    pub light: LightNeed,
    /// The eye.
    pub eye: EyeNeed,
    /// The load.
    pub load: LoadNeed,
    /// The rifle.
    pub rifle: RifleNeed,
    /// What holds the sight.
    pub mount: MountNeed,
    /// Money.
    pub money: MoneyNeed,
    /// Share of the shots met at a magnification that was set before, not for this shot.
    pub zoom_left_share: Said<f64>,
    /// How far the rifle is carried.
    pub carry: Said<Carry>,
    /// How distance is met.
    pub distance: DistanceNeed,
    /// Whether a lit mark is lawful and wanted.
    pub lit_mark: Said<LitMark>,
    /// Where and when.
    pub place: PlaceNeed,
    /// Limits of a rulebook.
    pub rulebook: Rulebook,
    /// The sight owned now, as typed.
    pub sight_now: Option<String>,
    /// What annoys about it.
    pub annoys: Vec<Annoyance>,
    /// Exchange rates the person has moved; none: the usual ones.
    pub weights: WeightsNeed,
    /// Habits that change what to ask of a sight and its mount.
    pub habits: Habits,
}

/// One thing shot at in one manner.
#[derive(Clone, Debug, PartialEq)]
pub struct Situation {
    /// The animal or target.
    pub what: What,
    /// The manner of shooting.
    pub manner: Manner,
    /// Share of all occasions.
    pub share: f64,
    /// How far.
    pub range: RangeSpread,
    /// Until when.
    pub stop: Stop,
    /// Share of the shots on a moving animal or target.
    pub moving_share: f64,
    /// Details that must be told before a shot, in mm, each with the share of the occasions;
    /// what is missing to 1 needs none but the shape.
    pub details_mm: Vec<Share<f64>>,
    /// What of this situation nobody said.
    pub assumed: SituationAssumed,
}

/// Which parts of a situation are assumed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SituationAssumed {
    /// What is shot at.
    pub what: bool,
    /// The manner.
    pub manner: bool,
    /// The ranges.
    pub range: bool,
    /// The stopping time.
    pub stop: bool,
    /// The details.
    pub detail: bool,
}

/// Ranges as a two-piece log-normal: `usual_m` is the median, the nearest and the farthest lie
/// 2.05 standard deviations below and above, each side with its own.
///
/// # Source
/// 2.05 (2 % of the shots beyond): assumption that made the picks agree with practice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RangeSpread {
    /// Nearest in m.
    pub nearest_m: f64,
    /// Usual in m.
    pub usual_m: f64,
    /// Farthest in m.
    pub farthest_m: f64,
}

impl RangeSpread {
    /// The range in m at a standard normal score: −2.05 the nearest, 0 the usual, 2.05 the
    /// farthest; held at the nearest and farthest beyond.
    #[must_use]
    pub fn range_m(self, score: f64) -> f64 {
        let share = (score / 2.05).clamp(-1.0, 1.0);
        let end_m = if share < 0.0 {
            self.nearest_m
        } else {
            self.farthest_m
        };
        self.usual_m * libm::exp(share.abs() * libm::log(end_m / self.usual_m))
    }
}

/// When shooting stops.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stop {
    /// In full daylight.
    Daylight,
    /// So many minutes after sunset (0: at sunset; negative: before).
    MinutesAfterSunset(f64),
    /// When nothing more is seen.
    EndOfSeeing,
    /// By the Moon.
    Moon,
    /// On a lit range, 300 to 1000 lx.
    LitRange,
}

/// What is around when the light goes.
#[derive(Clone, Debug, PartialEq)]
pub struct LightNeed {
    /// Kinds of cover; shares sum to 1.
    pub covers: Said<Vec<Share<Cover>>>,
    /// Share of the occasions on snow.
    pub snow_share: f64,
    /// Zenith brightness of the town's glow in mag/arcsec², if it matters.
    pub town_glow_mag: Option<f64>,
    /// Visibility in m: the distance at which 2 % of a contrast is left.
    pub visibility_m: Said<f64>,
    /// Share of the occasions under a closed cloud cover (a third of the light).
    pub cloud_share: f64,
}

/// The eye.
#[derive(Clone, Debug, PartialEq)]
pub struct EyeNeed {
    /// Age in years.
    pub age_years: Said<Estimate>,
    /// Measured diameter of the dark pupil in mm.
    pub dark_pupil_mm: Option<f64>,
    /// Glasses worn while shooting; shares sum to 1.
    pub glasses: Said<Vec<Share<Glasses>>>,
    /// A lit dot looks like a star.
    pub astigmatism: bool,
    /// State of the lens.
    pub lens: Lens,
}

/// The load: the person's own figures where given, else those of the typical load named, else
/// those of the load that is usual for what is shot at.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadNeed {
    /// What kind of load it is.
    pub kind: LoadKind,
    /// Key of the typical load behind the figures that are not the person's own.
    pub cartridge: Said<&'static str>,
    /// Diameter of the bullet in mm.
    pub bullet_diameter_mm: f64,
    /// Bullet mass in g.
    pub bullet_g: Said<f64>,
    /// Muzzle velocity in m/s: 1 % of spread if measured by the person, 3 % if typical.
    pub muzzle_velocity_m_s: Said<Estimate>,
    /// Ballistic coefficient G1 in lb/in².
    pub bc_g1_lb_in2: Option<f64>,
    /// Ballistic coefficient G7 in lb/in²; decides over G1 where both are given.
    pub bc_g7_lb_in2: Option<f64>,
    /// Powder mass in g; 0 for air.
    pub powder_g: Said<f64>,
}

/// The rifle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RifleNeed {
    /// Bare mass in kg, without sight and moderator.
    pub mass_kg: Said<Estimate>,
    /// Kind of action and stock.
    pub kind: Said<RifleKind>,
    /// What is on the muzzle.
    pub muzzle: Said<Muzzle>,
    /// Barrel length in cm.
    pub barrel_cm: Option<f64>,
    /// Radius of the barrel under the bell in mm.
    pub barrel_radius_at_bell_mm: Said<Estimate>,
    /// Where the comb lets the cheek lie.
    pub comb: Said<Comb>,
    /// Shot from the left shoulder.
    pub left_handed: bool,
    /// Iron sights under the bell, or that must stay usable.
    pub iron_sights: bool,
}

/// What holds the sight.
#[derive(Clone, Debug, PartialEq)]
pub struct MountNeed {
    /// Bore of the rings to keep in mm; none: nothing to keep.
    pub rings_kept_mm: Said<Option<f64>>,
    /// Height of their centre over the rail in mm.
    pub rings_centre_height_mm: Option<f64>,
    /// The base; shares sum to 1.
    pub base: Said<Vec<Share<Base>>>,
    /// Forward incline of the base in mrad.
    pub incline_mrad: f64,
    /// A rail runs on under the bell.
    pub rail_under_bell: bool,
}

/// Money.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MoneyNeed {
    /// Highest price band of the sight alone; none: no budget was named.
    pub band_most: Option<PriceBand>,
    /// How money is weighed.
    pub attitude: Said<Attitude>,
    /// Used is fine.
    pub used: bool,
}

/// How distance is met.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DistanceNeed {
    /// Dead on, marks or dial.
    pub habit: Said<DistanceHabit>,
    /// Measured, rather than guessed.
    pub rangefinder: Said<bool>,
    /// How far a guess is off, one standard deviation as a share of the range (0.18 guessed,
    /// 0 with a rangefinder, which is off by about 1 m whatever the range).
    pub guess_spread_share: f64,
    /// What a range that the person stated is in truth, as a share of it, one standard
    /// deviation beside it.
    pub stated_range_share: Estimate,
    /// The angle unit the person knows.
    pub unit: Said<AngleUnit>,
}

/// Where and when.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaceNeed {
    /// Latitude in degrees, north positive.
    pub latitude_deg: Said<f64>,
    /// Longitude in degrees, east positive.
    pub longitude_deg_east: Said<f64>,
    /// Height above the sea in m.
    pub height_m: Said<f64>,
    /// First month of the season, 1 to 12.
    pub first_month: Said<u8>,
    /// Last month of the season; smaller than the first: over the turn of the year.
    pub last_month: Said<u8>,
    /// Coldest day in °C.
    pub coldest_c: Said<f64>,
}

/// Exchange rates the person has moved.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WeightsNeed {
    /// What 100 g weigh, in per cent of occasions.
    pub mass_percent_per_100_g: Option<f64>,
    /// What 10 mm of height over the rifle weigh, in per cent of occasions.
    pub height_percent_per_10_mm: Option<f64>,
    /// What one price band weighs, in per cent of occasions.
    pub money_percent_per_band: Option<f64>,
}
