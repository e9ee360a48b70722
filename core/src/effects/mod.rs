//! What one step on the bench would do, and which steps would lead to a target.
//!
//! - [`Step`] is a change of one control as a maker makes it: half a millimetre of arch, a tenth of thickness, a millimetre of a hole's place.
//! - [`NearTop`] holds a solved top on a mesh that goes along with small changes. What a step does to a frequency follows from
//!   how stiffness and mass change on that mesh, without another solve; mass and widths are read from the changed design; what the
//!   bridge makes of the top is worked out again for each.
//! - [`propose`] asks for the smallest change that reaches a target, from those effects.
//!
//! Effects are first-order: they add up for small steps, and the further one goes the less they hold. Whoever shows a proposal
//! solves it anew.

mod effect;
mod error;
mod least_change;
mod near_top;
mod step;
mod target;
#[cfg(test)]
mod tests;

pub use effect::{Effect, Narrow};
pub use error::EffectError;
pub use least_change::{LeastChange, least_change};
pub use near_top::NearTop;
pub use step::{Step, StepGroup, steps_of};
pub use target::{KnownStep, Proposal, Target, Wanted, propose};
