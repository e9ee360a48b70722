//! Bombatura's computing core: from a design in workshop measures to the modes of the carved top.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod arching;
pub mod design;
pub mod eigen;
pub mod graduation;
pub mod mesh;
pub mod outline;
pub mod plan;
pub mod sound_holes;
pub mod surface;
pub mod wood;
