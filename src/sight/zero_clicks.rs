//! Zero clicks: from the centre of a group on paper to clicks of the turrets.

use super::turret::ClickUnit;
use crate::quantity::{OutOfRange, within};

/// Where the centre of a group lies on paper, seen by the shooter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Group {
    /// Right of the mark, cm; negative: left.
    pub right_cm: f64,
    /// Above the mark, cm; negative: below.
    pub high_cm: f64,
    /// Distance of the target, m.
    pub distance_m: f64,
}

/// Which way the point of impact has to go; turrets are marked so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Direction {
    /// Up.
    Up,
    /// Down.
    Down,
    /// Left.
    Left,
    /// Right.
    Right,
    /// Nothing to turn.
    None,
}

/// A turn of one turret.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// Which way.
    pub direction: Direction,
    /// Whole clicks.
    pub clicks: u32,
    /// Before rounding.
    pub exact_clicks: f64,
    /// What is left on paper after whole clicks, cm, as the group lies (right and high
    /// positive).
    pub left_over_cm: f64,
}

/// The correction of a group.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// Elevation.
    pub elevation: Turn,
    /// Windage.
    pub windage: Turn,
    /// One click on this target, cm.
    pub click_cm: f64,
}

/// The clicks that bring a group to the mark: the offset over the distance in mrad, over one
/// click.
///
/// # Validity
/// Small angles. Turrets marked by the way the point of impact moves, as is usual; of a few
/// shots the centre itself is only known to about a third of the group.
///
/// # Errors
/// [`OutOfRange`] for distances outside 5 to 1000 m or offsets beyond 3 m.
///
/// # Source
/// Definition of the units: 0.1 mrad is 1 cm at 100 m, a quarter minute 0.727 cm.
///
/// # Example
/// ```
/// use scopewright::sight::{turret::ClickUnit, zero_clicks::{Direction, Group, correction}};
/// let group = Group { right_cm: 4.0, high_cm: -6.0, distance_m: 100.0 };
/// let turn = correction(&group, ClickUnit::TenthMrad)?;
/// assert_eq!((turn.elevation.direction, turn.elevation.clicks), (Direction::Up, 6));
/// assert_eq!((turn.windage.direction, turn.windage.clicks), (Direction::Left, 4));
/// # Ok::<(), scopewright::quantity::OutOfRange>(())
/// ```
pub fn correction(group: &Group, click: ClickUnit) -> Result<Correction, OutOfRange> {
    let distance_m = within("distance_m", group.distance_m, 5.0, 1000.0)?;
    let right = within("right_cm", group.right_cm, -300.0, 300.0)?;
    let high = within("high_cm", group.high_cm, -300.0, 300.0)?;
    let click_cm = 0.1 * click.mrad() * distance_m;
    Ok(Correction {
        elevation: turn(high, click_cm, Direction::Down, Direction::Up),
        windage: turn(right, click_cm, Direction::Left, Direction::Right),
        click_cm,
    })
}

fn turn(offset_cm: f64, click_cm: f64, against: Direction, along: Direction) -> Turn {
    let exact_clicks = offset_cm.abs() / click_cm;
    let clicks = exact_clicks.round();
    Turn {
        direction: if clicks < 0.5 {
            Direction::None
        } else if offset_cm > 0.0 {
            against
        } else {
            along
        },
        clicks: clicks.min(1e6) as u32,
        exact_clicks,
        left_over_cm: (exact_clicks - clicks) * click_cm * offset_cm.signum(),
    }
}
