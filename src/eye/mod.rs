//! The eye behind the sight: pupil, mesopic light, threshold, acuity.
