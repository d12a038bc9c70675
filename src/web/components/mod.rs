//! Parts that several pages use.

mod bar;
mod choice;
mod explained;
pub mod field;
pub mod figure;
mod fold;
mod forget;
mod forming;
mod mast;
mod notices;
pub mod own;
pub mod part;
mod share_link;
mod steps;

pub use bar::Bar;
pub use choice::{Choice, Segments};
pub use explained::{Explained, explained};
pub use fold::fold;
pub use forget::ForgetAll;
pub use forming::Forming;
pub use mast::{Foot, Mast};
pub use notices::Notices;
pub use share_link::ShareLink;
pub use steps::Steps;
