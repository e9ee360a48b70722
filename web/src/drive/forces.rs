//! The forces that the page can drive a top with.

use bombatura_core::response::{Bridge, Complex, FeetForces, ModalMotion, Port, ResponseError};

use wasm_bindgen::prelude::*;

use super::DrivenTop;
use crate::problem::Problem;

const M_PER_MM: f64 = 1e-3;

/// A drive, ready for any frequency.
pub(super) enum Force {
    /// At the bridge's top, sideways and outwards, N.
    Bridge([f64; 2]),
    /// A newton outwards at a place of the wood.
    Place(Port),
}

#[wasm_bindgen]
impl DrivenTop {
    /// From now on the bridge rocks by itself, at `alone_hz` when its feet are held; without a number it is stiff, as it was at first.
    ///
    /// # Errors
    /// A frequency outside 500 to 10 000 Hz.
    pub fn stand_bridge(&mut self, alone_hz: Option<f64>) -> Result<(), Box<Problem>> {
        self.top.bridge = match alone_hz {
            Some(hz) => self.top.bridge.rocking(hz)?,
            None => Bridge { head: None, ..self.top.bridge },
        };
        Ok(())
    }
}

impl DrivenTop {
    /// The drive called `word`; the place, mm in plan, counts for a tap.
    ///
    /// # Errors
    /// A drive that there isn't, or a tap off the wood.
    pub(super) fn force(&self, word: &str, place_mm: [f64; 2]) -> Result<Force, Box<Problem>> {
        match word {
            "bow" => Ok(Force::Bridge([1.0, 0.0])),
            "press" => Ok(Force::Bridge([0.0, 1.0])),
            "tap" => Ok(Force::Place(self.place(place_mm)?)),
            _ => Err(Problem::said(
                "unknown_drive",
                format!("There is no drive called \"{word}\"; use bow, press or tap."),
            )),
        }
    }

    /// A newton outwards at a place in plan.
    pub(super) fn place(&self, place_mm: [f64; 2]) -> Result<Port, ResponseError> {
        Port::outward(&self.top.basis, place_mm.map(|at| at * M_PER_MM))
    }

    /// The top's motion under `force` at `hz`; the bridge's mass takes its part.
    pub(super) fn driven(&self, force: &Force, hz: f64) -> ModalMotion {
        let resonators = self.top.basis.resonators();
        match force {
            Force::Bridge(at_top_n) => {
                let forces: FeetForces =
                    self.top.bridge.forces(&self.top.feet, resonators, at_top_n.map(Complex::from), hz);
                resonators.motion(&self.top.feet.loaded(&forces), hz)
            }
            Force::Place(port) => resonators.motion(&[(Complex::from(1.0), port)], hz),
        }
    }
}
