//! What two sights are told apart by, as it is passed on: schema version 1.
