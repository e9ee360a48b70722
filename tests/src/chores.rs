//! The steps of `cargo xtask test` beside the checks themselves.

pub mod licences;
pub mod page_sources;
pub mod programs;
pub mod run;
pub mod test;
