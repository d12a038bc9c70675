//! At most one painting a frame, however many events there are.

use crate::web::platform::{AnimationFrame, request_animation_frame};
use std::cell::{Cell, RefCell};
use std::rc::Rc;

/// Lets the first call of a frame through at once and keeps the last of the others for the
/// frame's end.
#[derive(Default)]
pub struct Pace {
    busy: Cell<bool>,
    waiting: RefCell<Option<Box<dyn FnOnce()>>>,
    frame: RefCell<Option<AnimationFrame>>,
}

impl Pace {
    /// Runs `work` now, or at the end of this frame if there was work in it already.
    pub fn run(self: &Rc<Self>, work: impl FnOnce() + 'static) {
        if self.busy.replace(true) {
            *self.waiting.borrow_mut() = Some(Box::new(work));
            return;
        }
        work();
        let pace = self.clone();
        let frame = request_animation_frame(move |_| {
            pace.busy.set(false);
            let waiting = pace.waiting.borrow_mut().take();
            if let Some(work) = waiting {
                work();
            }
        });
        *self.frame.borrow_mut() = Some(frame);
    }
}
