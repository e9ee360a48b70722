//! What can keep a top from being meshed.

use thiserror::Error;

use super::MeshSize;

/// Why no mesh was made.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MeshError {
    /// Boundary chords cross: two boundaries are nearer than the chords follow them.
    #[error(
        "{count} chords of the mesh's boundary cross near x = {:.1} mm, y = {:.1} mm: move the sound hole away from what is nearest there",
        at[0], at[1]
    )]
    BoundariesCross {
        /// How many chords.
        count: usize,
        /// Where the first of them starts, mm.
        at: [f64; 2],
    },
    /// The node count could not be brought into the size's range.
    #[error(
        "the {size:?} mesh came out with {nodes} nodes, its range is {least} to {most}: simplify the sound holes' small radii or choose another size"
    )]
    Count {
        /// The size asked for.
        size: MeshSize,
        /// Nodes at the nearest attempt.
        nodes: usize,
        /// Smallest count.
        least: usize,
        /// Largest count.
        most: usize,
    },
    /// The triangulation refused a point.
    #[error("the triangulation refused a point ({0}): change the outline or the sound hole a little")]
    Triangulation(String),
}
