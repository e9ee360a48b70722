//! The project's chores.
fn main() {}
