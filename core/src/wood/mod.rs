//! Wood: orthotropic elasticity from nine constants, seen from any facet of the carved top.
//!
//! After this stage a facet anywhere on the arching knows its stiffness: the full 3D compliance is turned into the
//! facet's axes and only then reduced to plane stress. Reducing first and turning the plane-stress matrix within the
//! facet is the obvious way not taken: on a steep flank the tangential modulus enters, and leaving it out puts the
//! frequencies of an arched top 3-11 % too high (measured against 3D solids).
//!
//! Axes: L along the grain, R across the rings, T tangential to them. On a quarter-cut top L is the top's y, R its x
//! and T its z; a ring angle turns R and T about the grain.

mod choice;
mod compliance;
mod constant;
mod constants;
mod losses;
mod rotation;
mod scatter;
mod species;

pub use choice::{MeasuredWood, Wood, WoodChoice};
pub use compliance::{FacetCompliance, Grain};
pub use constant::WoodConstant;
pub use constants::{OrthotropicConstants, WoodError};
pub use losses::LossFactors;
pub use rotation::{stress_in, wood_axes};
pub use scatter::Scatter;
pub use species::{Species, SpeciesRecord};
