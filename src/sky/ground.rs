//! Cloud, cover, ground and coats: what becomes of the light of a clear sky.

use super::illuminance::town_illuminance_lx;
use core::f64::consts::PI;

/// A factor with the range in which it usually lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The usual value.
    pub usual: f64,
    /// The least that is commonly met.
    pub least: f64,
    /// The most that is commonly met.
    pub most: f64,
}

const fn range(usual: f64, least: f64, most: f64) -> Range {
    Range { usual, least, most }
}

/// The state of the sky.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cloud {
    /// Clear, or less than 70 % cloud.
    Clear,
    /// A thin veil.
    Thin,
    /// Overcast.
    Overcast,
    /// A dark rain or snow cloud.
    Dark,
}

impl Cloud {
    /// Every state, from bright to dark.
    pub const ALL: [Self; 4] = [Self::Clear, Self::Thin, Self::Overcast, Self::Dark];

    /// Factor on the light of Sun, Moon and night sky.
    ///
    /// # Accuracy
    /// In twilight overcast is uncertain by a factor of 2 to 3 either way (Lee and
    /// Hernández-Andrés 2005).
    ///
    /// # Source
    /// Janiczek and DeYoung, Circular 171 (1987): 1, 2, 3 and 10 as divisors.
    #[must_use]
    pub const fn factor(self) -> Range {
        match self {
            Self::Clear => range(1.0, 0.8, 1.1),
            Self::Thin => range(0.5, 0.4, 0.9),
            Self::Overcast => range(1.0 / 3.0, 0.2, 0.6),
            Self::Dark => range(0.1, 0.05, 0.2),
        }
    }

    /// Factor on the light of a town away from its centre.
    ///
    /// # Source
    /// C. C. M. Kyba et al., PLoS ONE 6:e17307 (2011): 2.8 at 32 km, 10 in the city.
    #[must_use]
    pub const fn town_amplification(self) -> f64 {
        match self {
            Self::Clear => 1.0,
            Self::Thin => 1.5,
            Self::Overcast | Self::Dark => 2.8,
        }
    }

    /// The share of ground light that this sky throws back (assumption).
    #[must_use]
    pub const fn sky_reflectance(self) -> f64 {
        match self {
            Self::Clear | Self::Thin => 0.08,
            Self::Overcast | Self::Dark => 0.6,
        }
    }
}

/// The cover under which the ground lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Canopy {
    /// Open ground.
    Open,
    /// A straight edge of a wood, one side open.
    Edge,
    /// A ride between walls of trees.
    Ride,
    /// Broadleaves without leaves.
    BareWood,
    /// Open pine, larch or birch.
    OpenConifer,
    /// A thinned conifer or mixed stand.
    ThinnedConifer,
    /// Broadleaves in leaf.
    InLeaf,
    /// Dense, unthinned conifer.
    DenseConifer,
}

impl Canopy {
    /// Every kind of cover, from open to dense.
    pub const ALL: [Self; 8] = [
        Self::Open,
        Self::Edge,
        Self::Ride,
        Self::BareWood,
        Self::OpenConifer,
        Self::ThinnedConifer,
        Self::InLeaf,
        Self::DenseConifer,
    ];

    /// Share of the open sky's light that reaches the ground.
    ///
    /// # Accuracy
    /// A factor of 2 to 3 within each kind; measured by day in the photosynthetic band.
    ///
    /// # Source
    /// Edge and ride by geometry; Constabel and Lieffers (1996), Johansson (1987); dense
    /// conifer is an assumption.
    #[must_use]
    pub const fn share(self) -> Range {
        match self {
            Self::Open => range(1.0, 1.0, 1.0),
            Self::Edge => range(0.5, 0.3, 0.7),
            Self::Ride => range(0.3, 0.2, 0.5),
            Self::BareWood => range(0.4, 0.22, 0.6),
            Self::OpenConifer => range(0.2, 0.12, 0.3),
            Self::ThinnedConifer => range(0.08, 0.03, 0.14),
            Self::InLeaf => range(0.05, 0.02, 0.10),
            Self::DenseConifer => range(0.02, 0.005, 0.03),
        }
    }
}

/// Share of a uniform sky that lights a ride of a width between walls of a height.
///
/// (w/2)/√((w/2)² + H²), exact for a uniform sky.
#[must_use]
pub fn ride_share(width_m: f64, wall_height_m: f64) -> f64 {
    let half = 0.5 * width_m;
    half / (half * half + wall_height_m * wall_height_m).sqrt()
}

/// Share of a uniform sky that lights the middle of a round clearing.
///
/// r²/(r² + H²), exact for a uniform sky.
#[must_use]
pub fn clearing_share(radius_m: f64, wall_height_m: f64) -> f64 {
    let r2 = radius_m * radius_m;
    r2 / (r2 + wall_height_m * wall_height_m)
}

/// What the ground or the wall behind the target is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ground {
    /// Fresh snow.
    FreshSnow,
    /// Old or dirty snow.
    OldSnow,
    /// Stubble or dry, pale grass.
    Stubble,
    /// Green grass.
    Grass,
    /// Leaf or needle litter.
    Litter,
    /// A wall of foliage.
    Foliage,
    /// Dark, moist soil.
    MoistSoil,
    /// Dry soil.
    DrySoil,
    /// Bark.
    Bark,
    /// Heather.
    Heather,
    /// Tarmac.
    Tarmac,
}

impl Ground {
    /// Every surface.
    pub const ALL: [Self; 11] = [
        Self::FreshSnow,
        Self::OldSnow,
        Self::Stubble,
        Self::Grass,
        Self::Litter,
        Self::Foliage,
        Self::MoistSoil,
        Self::DrySoil,
        Self::Bark,
        Self::Heather,
        Self::Tarmac,
    ];

    /// Photopic reflectance.
    ///
    /// # Source
    /// Spectral libraries ECOSTRESS/ASTER and USGS weighed with V(λ) in daylight for
    /// grass, litter, soil, bark, snow; old snow, foliage's self-shadow and heather are
    /// assumptions.
    #[must_use]
    pub const fn reflectance(self) -> Range {
        match self {
            Self::FreshSnow => range(0.90, 0.80, 0.98),
            Self::OldSnow => range(0.65, 0.5, 0.75),
            Self::Stubble => range(0.22, 0.09, 0.31),
            Self::Grass => range(0.08, 0.04, 0.11),
            Self::Litter => range(0.09, 0.05, 0.16),
            Self::Foliage => range(0.05, 0.03, 0.08),
            Self::MoistSoil => range(0.05, 0.03, 0.09),
            Self::DrySoil => range(0.18, 0.09, 0.32),
            Self::Bark => range(0.14, 0.065, 0.18),
            Self::Heather => range(0.06, 0.04, 0.08),
            Self::Tarmac => range(0.07, 0.05, 0.10),
        }
    }
}

/// The coat or paint of what is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Coat {
    /// Black or very dark, as a boar.
    Black,
    /// Dark brown.
    DarkBrown,
    /// Grey-brown, a deer's winter coat.
    GreyBrown,
    /// Red-brown, a deer's summer coat or a fox.
    RedBrown,
    /// Pale or fawn.
    Fawn,
    /// White patch or white winter coat.
    White,
}

impl Coat {
    /// Every coat, from dark to pale.
    pub const ALL: [Self; 6] = [
        Self::Black,
        Self::DarkBrown,
        Self::GreyBrown,
        Self::RedBrown,
        Self::Fawn,
        Self::White,
    ];

    /// Factor on the reflectance of a wet coat (assumption).
    pub const WET: f64 = 0.6;

    /// Photopic reflectance of the dry coat.
    ///
    /// # Accuracy
    /// Assumptions, set beside published figures of black, brown, red and white cattle
    /// (Chervinsky 2022, Scasta 2021); no measured deer or boar was found.
    #[must_use]
    pub const fn reflectance(self) -> Range {
        match self {
            Self::Black => range(0.04, 0.03, 0.07),
            Self::DarkBrown => range(0.07, 0.05, 0.10),
            Self::GreyBrown => range(0.11, 0.08, 0.15),
            Self::RedBrown => range(0.14, 0.10, 0.20),
            Self::Fawn => range(0.25, 0.18, 0.35),
            Self::White => range(0.60, 0.5, 0.7),
        }
    }

    /// Usual reflectance, dry or wet.
    #[must_use]
    pub fn usual_reflectance(self, wet: bool) -> f64 {
        self.reflectance().usual * if wet { Self::WET } else { 1.0 }
    }
}

/// How the target stands to the light and to what is behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// An upright flank before level ground.
    StandingOnGround,
    /// Lying flat on level ground: both face the sky.
    LyingOnGround,
    /// An upright flank before an upright wall of foliage.
    BeforeWall,
}

/// Signed contrast (L_target − L_background)/L_background of a coat before a background.
///
/// Standing on ground: ρ_t (0.5 + 0.5 ρ_g)/ρ_g − 1, because an upright flank sees half
/// the sky and half the ground; lying, or both upright: ρ_t/ρ_b − 1.
///
/// # Validity
/// A uniform sky. A low Moon or the twilight arch can change one side several times.
#[must_use]
pub fn contrast(coat_reflectance: f64, background_reflectance: f64, setting: Setting) -> f64 {
    let facing = match setting {
        Setting::StandingOnGround => 0.5 + 0.5 * background_reflectance,
        Setting::LyingOnGround | Setting::BeforeWall => 1.0,
    };
    coat_reflectance * facing / background_reflectance - 1.0
}

/// The light of a scene and what it falls on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scene {
    /// The state of the sky.
    pub cloud: Cloud,
    /// Share of the open sky's light that reaches the ground, 0 to 1.
    pub canopy_share: f64,
    /// Reflectance of the ground, 0 to 1.
    pub ground_reflectance: f64,
    /// Zenith brightness of a town's glow, mag/arcsec²; `None` away from towns.
    pub town_mag_arcsec2: Option<f64>,
}

impl Scene {
    /// Illuminance on the ground, in lux, from the clear-sky light of Sun and Moon.
    ///
    /// E = ((E_sun + E_moon) cloud + E_town amplification) · canopy · gain, the gain of
    /// [`snow_gain`].
    #[must_use]
    pub fn illuminance_lx(&self, sun_lx: f64, moon_lx: f64) -> f64 {
        let town = self.town_mag_arcsec2.map_or(0.0, town_illuminance_lx);
        ((sun_lx + moon_lx) * self.cloud.factor().usual + town * self.cloud.town_amplification())
            * self.canopy_share
            * snow_gain(self.ground_reflectance, self.cloud)
    }

    /// Luminance of the ground, cd/m²: ρ E/π.
    #[must_use]
    pub fn ground_luminance_cd_m2(&self, sun_lx: f64, moon_lx: f64) -> f64 {
        ground_luminance_cd_m2(
            self.illuminance_lx(sun_lx, moon_lx),
            self.ground_reflectance,
        )
    }
}

/// Luminance of a matt, level surface, cd/m²: ρ E/π.
#[must_use]
pub fn ground_luminance_cd_m2(illuminance_lx: f64, reflectance: f64) -> f64 {
    reflectance * illuminance_lx / PI
}

/// How much brighter bright ground makes itself by way of the sky.
///
/// max(1, (1 − 0.1 s)/(1 − ρ s)), s the reflectance of the sky seen from below.
///
/// # Accuracy
/// A textbook form with assumed s; fresh snow doubles the light under an overcast sky and
/// adds 6 % under a clear one.
#[must_use]
pub fn snow_gain(ground_reflectance: f64, cloud: Cloud) -> f64 {
    let s = cloud.sky_reflectance();
    ((1.0 - 0.1 * s) / (1.0 - ground_reflectance * s)).max(1.0)
}
