//! The shear-flexible orthotropic shell: triangles with six degrees of freedom a node, their stiffness and mass, and
//! the assembled model.
//!
//! The element is a facet made of five parts, each in a file of its own:
//!
//! - `membrane`: the optimal triangle with drilling rotations (Felippa 2003), so that the in-plane part neither locks in
//!   bending nor needs an artificial drilling spring;
//! - `bending`: the discrete Kirchhoff-Mindlin triangle (Katili 1993), made anisotropic, so that thin wood doesn't lock
//!   in shear and thick or rolling-shear-soft wood shears;
//! - `section`: the wood in the facet's axes, with the coupling of in-plane force and transverse shear that a slope
//!   brings;
//! - `curved_edge`: the stretch of the edges as the curves they are. A flat facet takes a bent arch's edges for chords
//!   and feels a false stretch of κh²/12R for a change of curvature κ; with h 5 mm, R 18 mm (the channel) and 2.5 mm of
//!   wood that is some 3 % of the bending energy. Nodal normals are all it takes to be rid of it;
//! - `bent_metric`: the coupling of stretch and curvature on a surface that is bent itself.
//!
//! On a curved surface the drilling is read about its own normal (`membrane::add_strain_of_lean`), so that bending without stretch
//! costs no stretch: no membrane locking.
//!
//! What is true of the assembled model: rigid motions cost no energy, constant strain and curvature are exact on any flat
//! mesh, the sparsity pattern depends on triangles and supports only.
//!
//! Units inside are SI (m, N, kg); millimetres become metres in [`ShellGeometry`] and nowhere else.

mod bending;
mod bent_metric;
mod curved_edge;
mod edge_fields;
mod edge_layer;
mod element;
mod energy;
mod equations;
mod error;
mod facet;
mod force_lean;
mod form;
mod geometry;
mod line_strain;
mod mass;
mod membrane;
mod mirror;
mod model;
mod normals;
mod one_side;
mod patch;
mod section;
mod strain_energy;
mod supports;

#[cfg(test)]
mod laws;

pub(crate) use element::ElementMatrix;
pub use element::ElementOptions;
pub use energy::EnergySlopes;
pub use equations::Equations;
pub use error::ShellError;
pub use geometry::ShellGeometry;
pub(crate) use line_strain::{LineStrain, Row18};
pub use model::{ShellModel, Tie};
pub use one_side::OneSide;
pub use strain_energy::StrainEnergy;
pub use supports::{DOFS_PER_NODE, Supports};
