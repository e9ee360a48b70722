//! Bombatura's computing core: from a design in workshop measures to the modes of the carved top.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod eigen;
pub mod wood;
