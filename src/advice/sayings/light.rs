//! Sayings about dusk, snow, cloud and the Moon.
