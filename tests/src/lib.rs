//! Checks of the whole of Bombatura: published values, the page in a browser on both drawing backends, its speed.
//!
//! The program `xtask` runs them; nothing here is skipped silently. What is missing on the machine is installed where
//! that is simple (Debian) and named otherwise.

pub mod bench;
pub mod browser;
pub mod chores;
pub mod lessons;
pub mod outcome;
pub mod reference;
pub mod shots;
pub mod studies;
pub mod verify;
