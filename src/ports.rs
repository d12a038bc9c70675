//! What the core asks of its surroundings, as small traits with in-memory twins.
