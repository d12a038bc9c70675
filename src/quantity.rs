//! The few quantities that cross the borders of rooms.

/// A value together with how far it may be off.
///
/// `spread` is one standard deviation in the unit of `value`; a figure that is uncertain
/// is passed on in this type, so that it cannot be shown without its spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The median, in the unit that the name of the variable states.
    pub value: f64,
    /// One standard deviation, same unit, never negative.
    pub spread: f64,
}

impl Estimate {
    /// An estimate from its median and one standard deviation.
    #[must_use]
    pub fn new(value: f64, spread: f64) -> Self {
        Self { value, spread }
    }
}

/// A quantity outside the range in which a model holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// The name of the quantity with its unit, as in `age_years`.
    pub quantity: &'static str,
    /// What was given.
    pub value: f64,
    /// The smallest value that makes sense.
    pub least: f64,
    /// The largest value that makes sense.
    pub most: f64,
}

impl core::fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(
            f,
            "{} is {}, which lies outside {} to {}",
            self.quantity, self.value, self.least, self.most
        )
    }
}

impl std::error::Error for OutOfRange {}

/// `value` if it is a number from `least` to `most`.
///
/// # Errors
/// [`OutOfRange`] naming the quantity, the value and the range; also for NaN.
pub fn within(
    quantity: &'static str,
    value: f64,
    least: f64,
    most: f64,
) -> Result<f64, OutOfRange> {
    if value >= least && value <= most {
        Ok(value)
    } else {
        Err(OutOfRange {
            quantity,
            value,
            least,
            most,
        })
    }
}
