//! Curves over frequency, and the figures that sum them up.

use bombatura_core::response::{Sweep, decibels, radiation};
use js_sys::Object;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrivenTop;
use super::driven_top::LISTENER_M;
use crate::page_values::{to_page, with_arrays};
use crate::problem::Problem;

/// The level costs a whole field a frequency, far more than a mobility; its points are fewer by this.
const LEVEL_STEP: usize = 3;

#[derive(Serialize)]
struct Keys {
    keys: Vec<&'static str>,
}

#[wasm_bindgen]
impl DrivenTop {
    /// Levels over frequency, `points` of equal ratio: `{ hz, bass, treble, transfer, volume, level_hz, level }`. Mobilities of the two feet,
    /// each driven and watched outwards at itself, and from the drive to the place `to`, dB re 1 (m/s)/N; volume velocity dB re
    /// 1 (m³/s)/N; estimated level at a metre for a newton, dB re 20 µPa, at fewer frequencies.
    ///
    /// # Errors
    /// A drive that there isn't, a place off the wood, frequencies that make no curve.
    #[expect(clippy::too_many_arguments, reason = "wasm-bindgen takes no struct from plain JavaScript")]
    pub fn curves(
        &self,
        drive: &str,
        x_mm: f64,
        y_mm: f64,
        to_x_mm: f64,
        to_y_mm: f64,
        from_hz: f64,
        to_hz: f64,
        points: usize,
    ) -> Result<JsValue, Box<Problem>> {
        let sweep = Sweep::by_ratio(from_hz, to_hz, points)?;
        let force = self.force(drive, [x_mm, y_mm])?;
        let to = self.place([to_x_mm, to_y_mm])?;
        let resonators = self.top.basis.resonators();
        let hz = sweep.frequencies_hz();
        let of_foot = |side: usize| -> Vec<f32> {
            let foot = &self.top.feet.outward[side];
            resonators.mobilities(foot, foot, hz).iter().map(|own| decibels(own.norm(), 1.0) as f32).collect()
        };
        let (mut transfer, mut volume, mut level, mut level_hz) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        for (index, &at_hz) in hz.iter().enumerate() {
            let motion = self.driven(&force, at_hz);
            transfer.push(decibels(motion.velocity(&to).norm(), 1.0) as f32);
            volume.push(decibels(motion.velocity(&self.volume).norm(), 1.0) as f32);
            if index % LEVEL_STEP == 0 {
                level_hz.push(at_hz as f32);
                level.push(
                    radiation::level_db(&self.top.basis, &motion.field(&self.top.basis), at_hz, LISTENER_M) as f32
                );
            }
        }
        let hz: Vec<f32> = hz.iter().map(|hz| *hz as f32).collect();
        Ok(with_arrays(
            Object::new().into(),
            [
                ("hz", &hz),
                ("bass", &of_foot(0)),
                ("treble", &of_foot(1)),
                ("transfer", &transfer),
                ("volume", &volume),
                ("level_hz", &level_hz),
                ("level", &level),
            ],
        ))
    }

    /// Who moves at which frequency: `{ keys, hz, energy, volume }`, (frequency, region) shares of the kinetic energy and of the volume
    /// velocity, the latter by their size: regions that pump against the rest count too.
    ///
    /// # Errors
    /// As for [`DrivenTop::curves`].
    pub fn who_moves(
        &self,
        drive: &str,
        x_mm: f64,
        y_mm: f64,
        from_hz: f64,
        to_hz: f64,
        points: usize,
    ) -> Result<JsValue, Box<Problem>> {
        let sweep = Sweep::by_ratio(from_hz, to_hz, points)?;
        let force = self.force(drive, [x_mm, y_mm])?;
        let (mut energy, mut volume) = (Vec::new(), Vec::new());
        for &hz in sweep.frequencies_hz() {
            let motion = self.driven(&force, hz);
            energy.extend(self.top.regions.energy_shares(&motion).iter().map(|share| *share as f32));
            let pumped: Vec<f64> = self.top.regions.volume_m3_s(&motion).iter().map(|own| own.norm()).collect();
            let whole: f64 = pumped.iter().sum();
            volume.extend(pumped.iter().map(|own| (own / whole.max(f64::MIN_POSITIVE)) as f32));
        }
        let hz: Vec<f32> = sweep.frequencies_hz().iter().map(|hz| *hz as f32).collect();
        Ok(with_arrays(to_page(&Keys { keys: self.keys() }), [("hz", &hz), ("energy", &energy), ("volume", &volume)]))
    }

    /// The figures that sum it up, each with how sure it is: `{ island_mobility_db?, wing_activity?, bass_over_treble_db }`, each
    /// `{ value, sure_within }`.
    ///
    /// # Errors
    /// Wood whose scatter is outside the limits of [`BandFigures::new`](bombatura_core::top::BandFigures::new).
    pub fn figures(&self) -> Result<JsValue, Box<Problem>> {
        Ok(to_page(&self.top.figures()?.figures()))
    }
}
