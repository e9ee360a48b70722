//! The mesh: the top between outline and sound holes as graded triangles.
//!
//! After this stage nodes lie exactly on outline and hole boundaries, every boundary chord strays at most
//! [`boundary_tolerance_mm`] from its curve, and a design whose sides mirror each other has a mesh whose sides mirror
//! each other exactly: one half is meshed and mirrored. A [`PlanMesh`] knows no heights, so that arching, graduation
//! and wood can change without a new mesh; [`MidSurface`] lays heights and thickness on it.
//!
//! Nodes are placed by a size field, layer by layer inwards from the boundaries, triangulated (constrained Delaunay)
//! and smoothed. Refinement of a coarse triangulation by circumcentres was not taken: it guarantees 20 to 30 degrees at
//! best, and gives no even layers along the narrow wood beside the eyes.

mod across;
mod anchors;
mod count;
mod domain;
mod edges;
mod error;
mod fill;
mod harmonic;
mod improve;
mod locate;
mod mid_surface;
mod moved;
#[cfg(test)]
mod moved_tests;
mod narrow;
mod near;
mod plan_mesh;
#[cfg(test)]
mod quality;
mod sample;
mod size_field;
mod smooth;
#[cfg(test)]
mod tests;
mod triangulate;

pub use across::Across;
pub use edges::Edges;
pub use error::MeshError;
pub use locate::{Locator, Shares, interpolated};
pub use mid_surface::{MidSurface, Sample};
pub use moved::{MovableMesh, Unmoved};
pub use plan_mesh::{MeshSize, Mirror, PlanMesh};

/// How far a chord of the mesh's boundary may stray from the curve on bodies up to a violin's length, mm. A rounding of 1 mm
/// radius then still has chords of 0.6 mm; smaller costs nodes in proportion to its inverse square root.
pub const BOUNDARY_TOLERANCE_MM: f64 = 0.05;

/// The same on a body of this length, mm: larger instruments are as the violin's in proportion, where every sound hole of a
/// cello would otherwise take half of a preview's nodes.
#[must_use]
pub fn boundary_tolerance_mm(body_length_mm: f64) -> f64 {
    BOUNDARY_TOLERANCE_MM * (body_length_mm / VIOLIN_LENGTH_MM).max(1.0)
}

/// Common practice, no source.
const VIOLIN_LENGTH_MM: f64 = 355.0;
