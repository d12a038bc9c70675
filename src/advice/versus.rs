//! This one or that one: two typed sights judged for one shooter.
