//! Sayings about recoil, eye relief, rings and height.
