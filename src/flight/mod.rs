//! The flight of the bullet: air, drag, trajectory, zero, point-blank range, typical loads.
