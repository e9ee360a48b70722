//! Tap tones.

use bombatura_core::response::TapTone;
use bombatura_core::top;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrivenTop;
use crate::page_values::{to_page, with_arrays};
use crate::problem::Problem;

/// A knuckle's contact with the wood, s (common practice, no source).
const CONTACT_S: f64 = 4e-4;
const LENGTH_S: f64 = 1.2;
/// The largest sample: loud enough beside other sounds, far from what hurts at the same setting.
const LOUDEST: f32 = 0.4;
/// Peaks weaker than this beside the strongest aren't heard.
const WEAKEST_DB: f64 = -50.0;

#[derive(Serialize)]
struct PeakReply {
    hz: f64,
    /// Over the strongest.
    level_db: f64,
    /// Until it has fallen by 60 dB.
    ring_s: f64,
}

#[derive(Serialize)]
struct ToneReply {
    peaks: Vec<PeakReply>,
}

#[wasm_bindgen]
impl DrivenTop {
    /// What a knuckle's tap at a place sounds like, by the top's volume velocity: `{ samples, peaks: [{ hz, level_db, ring_s }] }`, samples at
    /// `rate_hz`, level-limited, peaks by frequency, the weakest left out.
    ///
    /// # Errors
    /// A place off the wood, or a rate that no sound card has.
    pub fn tap_tone(&self, x_mm: f64, y_mm: f64, rate_hz: f64) -> Result<JsValue, Box<Problem>> {
        let tapped = self.place([x_mm, y_mm])?;
        let tone = TapTone::new(&self.top.basis, &tapped, &self.volume, CONTACT_S)?.below(top::DrivenTop::HIGHEST_HZ);
        // What is heard goes with the acceleration of the air that is pushed: with the frequency times the velocity.
        let loudness = |peak: &bombatura_core::response::TapPeak| peak.amplitude_m_s.abs() * peak.frequency_hz;
        let strongest = tone.peaks().iter().map(loudness).fold(0.0, f64::max);
        let peaks = tone.peaks().iter().map(|peak| PeakReply {
            hz: peak.frequency_hz,
            level_db: 20.0 * (loudness(peak) / strongest).log10(),
            ring_s: 3.0 * std::f64::consts::LN_10 / peak.decay_per_s,
        });
        let peaks = peaks.filter(|peak| peak.level_db > WEAKEST_DB).collect();
        let samples = tone.samples(rate_hz, LENGTH_S, LOUDEST)?;
        Ok(with_arrays(to_page(&ToneReply { peaks }), [("samples", &samples)]))
    }
}
