//! Forced response: what a force that swings does to a shell, from the modes of the shell.
//!
//! Everything is a sum over modes of unit modal mass. A force of complex amplitude f e^{iωt} whose parts over the nodes do the work
//! φᵣᵀd in mode r moves what is read by φᵣᵀe by H(ω) = Σᵣ φᵣᵀe φᵣᵀd / (ωᵣ²(1 + iηᵣ) − ω²), with the structural (hysteretic)
//! loss factor ηᵣ of each mode (Ewins 2000, Modal Testing, 2nd ed., ch. 2; Cremer, Heckl & Petersson 2005, Structure-Borne Sound, 3rd ed.;
//! both from memory). Time goes as e^{iωt} everywhere; amplitudes are peaks, not root mean squares.
//!
//! - [`ModalBasis`] is what is needed of the modes: [`Resonators`] (frequencies and losses), shapes, and the
//!   [`ShellSurface`] they move. [`ModalArrays`] is the same as flat arrays, which go from one worker to another. Rigid motions of a
//!   floating shell are modes of 0 Hz.
//! - [`complete_modes`] adds to the lowest modes what all the others answer to a few given loads: residual vectors, which are modes
//!   like the rest (modal truncation augmentation: Dickens, Nakagawa & Wittbrodt 1997, Computers & Structures 62, 985; from
//!   memory). Subtracting the kept modes' part from a static solution at each frequency, the obvious way, says the same at low
//!   frequency, but isn't a passive system: energy and reciprocity are then no longer exact.
//! - A [`Port`] is where and in which direction the shell is driven or watched: by one point, by a foot's patch, or by all of its
//!   surface at once, when it reads the volume velocity. Driving and watching are the same numbers, which is reciprocity.
//! - [`ModalMotion`] is the motion at one frequency under any loads: amplitudes at ports, the whole [`ComplexField`], energies.
//! - [`QuadraticForm`] reads an energy or a mean square of part of the shell straight from the modal amplitudes.
//! - [`Bridge`] turns a force at its top into forces on its two feet, with its own mass or without, stiff or with a [`RockingHead`].
//! - [`radiation`] estimates the sound pressure, [`Sawtooth`] gives a bowed string's force and [`PlayedNote`] what it moves, [`TapTone`] what a
//!   tap sounds like.
//!
//! Nothing here knows what the shell is; [`crate::top`] says where a bridge stands and which nodes make an island.

mod basis;
mod bridge;
mod completion;
mod error;
mod field;
mod forms;
mod motion;
mod played;
mod port;
pub mod radiation;
mod resonators;
mod rocking_head;
mod sawtooth;
mod surface;
mod sweep;
mod tap;
#[cfg(test)]
mod tests;

pub use basis::{ModalArrays, ModalBasis};
pub use bridge::{Bridge, BridgeFeet, FeetForces, unit_loads};
pub use completion::{CompleteModes, complete_modes};
pub use error::ResponseError;
pub use field::ComplexField;
pub use forms::QuadraticForm;
pub use motion::ModalMotion;
pub use played::PlayedNote;
pub use port::Port;
pub use resonators::Resonators;
pub use rocking_head::RockingHead;
pub use sawtooth::Sawtooth;
pub use surface::{Patch, ShellSurface};
pub use sweep::{Sweep, decibels};
pub use tap::{TapPeak, TapTone};

/// A complex amplitude.
pub type Complex = nalgebra::Complex<f64>;
