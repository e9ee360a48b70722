//! Bombatura's computing core: from a design in workshop measures to the modes of the carved top.
#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod arching;
pub mod arching_figures;
mod ascending;
pub mod design;
pub mod drawings;
pub mod effects;
pub mod eigen;
pub mod fittings;
pub mod graduation;
pub mod inside;
pub mod lessons;
pub mod measured;
pub mod mesh;
pub mod modes;
pub mod outline;
pub mod patience;
pub mod plan;
pub mod regions;
pub mod response;
pub mod shell;
pub mod sound_holes;
pub mod statics;
pub mod surface;
pub mod top;
pub mod wood;
