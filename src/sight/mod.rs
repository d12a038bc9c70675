//! The sight: its specification, exit pupil, glare, field, parallax, reticle, turrets, generic fits.
