//! The way through the house: from a design to the modes of its top, stage by stage.
//!
//! [`Shape`] is the geometry of a design; [`Plan`] the mesh in plan with its equations and their factorisation order, which
//! depend on outline, holes, what the rim holds and mesh size only; [`Carved`] the mid-surface and the assembled shell with
//! its fittings; then come the modes, what damps them and how sure they are. [`Stages`] keeps the last value of each and
//! makes again only what a change touches.
//! [`Picture`] and [`MotionField`] are what the view draws.

mod carved;
mod driven;
mod error;
mod figures;
mod following;
mod kept;
mod kinship;
mod laid;
mod modal_basis;
mod motion;
mod moving_plan;
mod picture;
mod plan;
mod quantity;
mod region_motion;
mod region_response;
mod response_figures;
#[cfg(test)]
mod response_tests;
mod shape;
mod stages;

pub use carved::Carved;
pub use driven::DrivenTop;
pub use error::TopError;
pub(crate) use figures::energy_slopes;
pub use kinship::{kin, likeness, signatures};
pub use modal_basis::{DrivableModes, bridge_of, bridge_stands_at_m, drivable_modes};
pub use motion::{MotionField, SwingingField};
pub use picture::{Picture, VertexKind};
pub use plan::{Held, Plan};
pub use quantity::Quantity;
pub use region_motion::{Amplitude, NodeMotion, RegionMotion};
pub use region_response::RegionResponse;
pub(crate) use response_figures::LOSSES_SCATTER;
pub use response_figures::{BandFigures, Figure, ResponseFigures};
pub use shape::Shape;
pub use stages::{FollowedRuns, StageRuns, Stages};
