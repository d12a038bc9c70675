//! The needs: one margin a file.
//!
//! Serving an occasion means that the sight is not what stops the shot. Each need is a
//! margin with its own spread, so that there are no cliffs: the chance is Φ(margin/spread),
//! and an occasion is served with the product of the chances. A loss is shared out among
//! the needs in proportion to −ln of each chance.
//!
//! Every chance is monotone in what it depends on: the tables it is read from are
//! interpolated linearly, which keeps their order.

pub mod aim;
pub mod detail;
pub mod drop;
pub mod eye_placed;
pub mod eye_relief;
pub mod field;
pub mod mark;
pub mod parallax;
pub mod steady;
pub mod told_apart;
