//! Curves drawn in plan: the lines, compass arcs and cubic curves that outline and sound holes are made of.
//!
//! The frame is the top's: x across (treble side x > 0), y along the grain from the bottom edge, millimetres.
//! A closed boundary is a [`Loop`] of [`Piece`]s laid end to end. Everything keeps the exact curves; straight-line
//! approximations are made only on request and say how far they may stray.

mod arc;
mod biarc;
mod cubic;
mod line;
mod loops;
mod piece;
#[cfg(test)]
mod tests;
pub mod vector;

pub use arc::Arc;
pub use biarc::biarc;
pub use cubic::Cubic;
pub use line::Line;
pub use loops::{Loop, PolylineCrossing, polygon_contains, polyline_crossings, polylines_cross, segments_cross};
pub use piece::{Nearest, Piece};

/// A point or vector in plan, (x, y) in mm.
pub type Point = [f64; 2];
