//! A plausible world: where the doubtful quantities lie, in their own spreads.

use super::report::Doubt;

/// How far each doubtful quantity lies from its middle.
///
/// # Source
/// The spreads are those of the models: pupil 0.8 mm; field factor −0.15 to +0.08 dex about
/// 2; contrast 0.2 dex; ground and cloud in log quadrature 0.2 dex; velocity 3 %; steadiness
/// 35 %; ranges that were stated by eye a fifth; the fits of mass (a tenth of what
/// exceeds the lightest) and price (a quarter); glare a quarter; exchange rates a factor of 1.4.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct World {
    /// Added to the pupil, mm.
    pub pupil_mm: f64,
    /// Added to log10 of the threshold (field factor).
    pub threshold_dex: f64,
    /// Added to log10 of the contrast.
    pub contrast_dex: f64,
    /// Added to log10 of the light: ground.
    pub ground_dex: f64,
    /// Added to log10 of the light: cloud.
    pub cloud_dex: f64,
    /// Factor on the drop.
    pub drop: f64,
    /// Factor on the wobble.
    pub wobble: f64,
    /// Factor on what mass follows from the objective and tube (about 1).
    pub mass: f64,
    /// Factor on the apparent field.
    pub field: f64,
    /// Factor on the price's rise over the least.
    pub price: f64,
    /// Factor on the veiling glare index.
    pub glare: f64,
    /// Factor on the rate of mass.
    pub rate_mass: f64,
    /// Factor on the rate of money.
    pub rate_money: f64,
    /// Factor on the rate of height.
    pub rate_height: f64,
    /// Score of how far the person's stated ranges are off, in their own spread.
    pub range_score: f64,
}

impl World {
    /// Everything in its middle.
    pub const MIDDLE: Self = Self {
        pupil_mm: 0.0,
        threshold_dex: 0.0,
        contrast_dex: 0.0,
        ground_dex: 0.0,
        cloud_dex: 0.0,
        drop: 1.0,
        wobble: 1.0,
        mass: 1.0,
        field: 1.0,
        price: 1.0,
        glare: 1.0,
        rate_mass: 1.0,
        rate_money: 1.0,
        rate_height: 1.0,
        range_score: 0.0,
    };

    /// The doubtful quantities, in the order of the scores of [`World::at`].
    pub const DOUBTS: [Doubt; 14] = [
        Doubt::Pupil,
        Doubt::FieldFactor,
        Doubt::Contrast,
        Doubt::Ground,
        Doubt::Cloud,
        Doubt::Velocity,
        Doubt::Steadiness,
        Doubt::Fits,
        Doubt::Price,
        Doubt::Glare,
        Doubt::WeightOfMass,
        Doubt::WeightOfMoney,
        Doubt::WeightOfHeight,
        Doubt::Ranges,
    ];

    /// The world at these standard normal scores, one for each of [`World::DOUBTS`].
    ///
    /// `pupil_spread_mm` is 0.8, or 0.3 for a measured pupil.
    #[must_use]
    pub fn at(scores: &[f64; 14], pupil_spread_mm: f64) -> Self {
        let [
            pupil,
            field_factor,
            contrast,
            ground,
            cloud,
            velocity,
            steady,
            fits,
            price,
            glare,
            mass,
            money,
            height,
            range_score,
        ] = *scores;
        let factor = |spread: f64, score: f64| libm::exp(spread * score);
        Self {
            pupil_mm: pupil_spread_mm * pupil,
            threshold_dex: 0.1 * field_factor,
            contrast_dex: 0.2 * contrast,
            ground_dex: 0.2 * ground,
            cloud_dex: 0.2 * cloud,
            drop: factor(0.06, velocity),
            wobble: factor(0.35, steady),
            mass: factor(0.10, fits),
            field: factor(0.03, fits),
            price: factor(0.25, price),
            glare: factor(0.25, glare),
            rate_mass: factor(0.34, mass),
            rate_money: factor(0.34, money),
            rate_height: factor(0.34, height),
            range_score,
        }
    }
}
