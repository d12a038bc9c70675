//! The same core on the command line: JSON lines in, JSON lines out.
fn main() {}
