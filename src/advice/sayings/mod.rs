//! What is said at counters, tested for one shooter.
//!
//! Every [`SayingKey`](super::report::SayingKey) is computed from the need alone; no ranking is
//! needed. One file holds one theme.

mod aim;
mod flight;
mod glass;
mod light;
mod parallax;
mod recoil_and_mount;
mod zoom;
