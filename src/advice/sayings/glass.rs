//! Sayings about the tube, the glass and the exit pupil.
