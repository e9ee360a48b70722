//! Motions for the stage.

use bombatura_core::response::{ComplexField, PlayedNote, ResponseError, Sawtooth, radiation};
use bombatura_core::top::{self, SwingingField};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrivenTop;
use super::driven_top::{LISTENER_M, SIZE};
use crate::page_values::{to_page, with_arrays};
use crate::problem::Problem;

const UM_PER_M: f64 = 1e6;
/// Frames of one period of a note: as many as a second of film has.
const FRAMES: usize = 24;

#[derive(Serialize)]
struct RegionReply {
    key: &'static str,
    energy: f64,
    volume: f64,
    phase_deg: Option<f64>,
}

#[derive(Serialize)]
struct MotionReply {
    /// The largest displacement, µm for a newton.
    largest_um: f64,
    /// Estimated level at a metre for a newton, dB.
    level_db: f64,
    regions: Vec<RegionReply>,
}

#[derive(Serialize)]
struct Harmonic {
    hz: f64,
    /// Of the mean square velocity of both feet.
    share: f64,
}

#[derive(Serialize)]
struct NoteReply {
    harmonics: Vec<Harmonic>,
    largest_um: f64,
    frames: usize,
}

#[wasm_bindgen]
impl DrivenTop {
    /// The running motion at `hz` on the vertices of the picture, at most 1 mm anywhere, and what moves in it: `{ re, im, largest_um,
    /// level_db, regions: [{ key, energy, volume, phase_deg? }] }`, shares of the kinetic energy and of the volume velocity, phases
    /// against the island.
    ///
    /// # Errors
    /// A drive that there isn't, a tap off the wood, or a frequency that isn't above zero.
    pub fn motion(&self, drive: &str, x_mm: f64, y_mm: f64, hz: f64) -> Result<JsValue, Box<Problem>> {
        audible(hz)?;
        let motion = self.driven(&self.force(drive, [x_mm, y_mm])?, hz);
        let field = motion.field(&self.top.basis);
        let laid = self.laid(&field);
        let phases = self.top.regions.phases_deg(&motion);
        let (energies, volumes) = (self.top.regions.energy_shares(&motion), self.top.regions.volume_shares(&motion));
        let region = |(index, key)| RegionReply {
            key,
            energy: energies[index],
            volume: volumes[index],
            phase_deg: phases.as_ref().map(|phases| phases[index]),
        };
        let reply = MotionReply {
            largest_um: largest_um(&laid),
            level_db: radiation::level_db(&self.top.basis, &field, hz, LISTENER_M),
            regions: self.keys().into_iter().enumerate().map(region).collect(),
        };
        Ok(with_arrays(to_page(&reply), [("re", &laid.re), ("im", &laid.im)]))
    }

    /// A bowed note: what each harmonic moves, and one period of the sum of all in slow motion: `{ harmonics: [{ hz, share }], largest_um,
    /// frames, motion }`, the motion (frame, vertex, 6) like that of [`DrivenTop::motion`], all to one scale, for a force of a newton from
    /// peak to peak.
    ///
    /// # Errors
    /// A note below 20 Hz or above the modes.
    pub fn note(&self, hz: f64) -> Result<JsValue, Box<Problem>> {
        audible(hz)?;
        let resonators = self.top.basis.resonators();
        let to_hz = self.top.basis.complete_to_hz().min(top::DrivenTop::HIGHEST_HZ);
        let note = PlayedNote::new(resonators, &self.top.bridge, &self.top.feet, Sawtooth::of_note(hz)?, to_hz);
        let shares = note.shares(&self.top.feet.outward.each_ref());
        let harmonics = note.harmonics().iter().zip(shares).map(|(own, share)| Harmonic { hz: own.hz(), share });
        let frames: Vec<SwingingField> = (0..FRAMES)
            .map(|frame| {
                let re = note.field(&self.top.basis, std::f64::consts::TAU * frame as f64 / FRAMES as f64);
                let im = vec![0.0; re.len()];
                self.laid(&ComplexField { re, im })
            })
            .collect();
        let largest_um = frames.iter().map(largest_um).fold(0.0, f64::max);
        let motion: Vec<f32> = frames
            .iter()
            .flat_map(|frame| {
                let share = if largest_um > 0.0 { (self::largest_um(frame) / largest_um) as f32 } else { 0.0 };
                frame.re.iter().map(move |value| value * share)
            })
            .collect();
        let reply = NoteReply { harmonics: harmonics.collect(), largest_um, frames: FRAMES };
        Ok(with_arrays(to_page(&reply), [("motion", &motion)]))
    }
}

impl DrivenTop {
    fn laid(&self, field: &ComplexField) -> SwingingField {
        // The picture was made with this.
        self.stages.swinging(SIZE, field).unwrap_or(SwingingField {
            re: Vec::new(),
            im: Vec::new(),
            scale_mm_per_m: 0.0,
        })
    }
}

/// Of what was scaled to 1 mm.
fn largest_um(laid: &SwingingField) -> f64 {
    if laid.scale_mm_per_m > 0.0 { UM_PER_M / laid.scale_mm_per_m } else { 0.0 }
}

fn audible(hz: f64) -> Result<(), ResponseError> {
    ResponseError::limit("the frequency in Hz", hz, 20.0, 20_000.0)
}
