//! Sets up, builds, serves and checks the project.
fn main() {}
