//! How loud it is: an estimate of the sound pressure that a shell's motion makes.
//!
//! An estimate, for three reasons: only this shell radiates here (a body's back, ribs and openings do too), the air's load on it is left out,
//! and the body is a still, even baffle. Two limits are known in closed form and are what is computed:
//!
//! - [`simple_source_pa`]: a body small against the wavelength sounds alike all round, by its net volume velocity U alone: p = iωρU
//!   e^{−ikr}/(4πr) in free air (Fahy & Gardonio 2007, Sound and Structural Vibration, 2nd ed., ch. 3; from memory).
//! - [`rayleigh_pa`]: a flat surface moving in a wide stiff baffle, p = iωρ/(2π) ∫ v e^{−ikR}/R dS (Rayleigh, The Theory of Sound,
//!   vol. 2, §278; from memory). It says twice as much at low frequency, where a body is no wide baffle.
//!
//! [`level_db`] goes from one to the other.

use std::f64::consts::{PI, TAU};

use super::{Complex, ComplexField, ModalBasis, decibels};

/// Density of air at 20 °C and 101 325 Pa, kg/m³ (from memory).
pub const AIR_KG_M3: f64 = 1.204;
/// Speed of sound in it, m/s: row A-HELM of `tests/reference/air.csv` takes the same.
pub const SOUND_M_S: f64 = 343.0;
/// The level that 0 dB stands for, Pa, root mean square.
pub const REFERENCE_PA: f64 = 20e-6;

/// Complex peak pressure of a simple source in free air, Pa, `distance_m` away, for a volume velocity of complex peak `volume_m3_s`.
#[must_use]
pub fn simple_source_pa(volume_m3_s: Complex, hz: f64, distance_m: f64) -> Complex {
    let omega = TAU * hz;
    volume_m3_s
        * Complex::new(0.0, omega * AIR_KG_M3 / (4.0 * PI * distance_m))
        * Complex::from_polar(1.0, -omega / SOUND_M_S * distance_m)
}

/// Complex peak pressure in Pa at `listener_m` (xyz, in the frame of the nodes) by Rayleigh's integral over all nodes of `basis`, moving
/// as `field` at `hz`.
///
/// Each node counts with its area as one source: good where nodes stand closer than a sixth of a wavelength and the listener
/// is further than that from all of them. Cost: a sine and a cosine for each node.
#[must_use]
pub fn rayleigh_pa(basis: &ModalBasis, field: &ComplexField, hz: f64, listener_m: [f64; 3]) -> Complex {
    let omega = TAU * hz;
    let wave_number = omega / SOUND_M_S;
    let nodes = basis.surface();
    let sources = nodes.places_m.iter().zip(&nodes.areas_m2).zip(field.outward(basis));
    let sum: Complex = sources
        .map(|((place, area), outward)| {
            let away = [0, 1, 2].map(|axis| listener_m[axis] - place[axis]);
            let distance = away.iter().map(|part| part * part).sum::<f64>().sqrt();
            outward * Complex::from_polar(area / distance, -wave_number * distance)
        })
        .sum();
    // v = iω u, so iω v = −ω² u.
    sum * (-omega * omega * AIR_KG_M3 / TAU)
}

/// Estimated level at `distance_m` over the middle of the nodes, dB re 20 µPa (root mean square), for peak amplitudes in `field`.
///
/// Straight outwards (z). From the simple source at low frequency to Rayleigh's integral, which assumes a wide baffle, at high: the factor of
/// two between them comes in as (ka)²/(1 + (ka)²), k the wave number and a the radius of a disc as large as the surface. That
/// is the shape of a stiff sphere's step, halved at ka = 1: common practice for sources in a cabinet, no source.
#[must_use]
pub fn level_db(basis: &ModalBasis, field: &ComplexField, hz: f64, distance_m: f64) -> f64 {
    let nodes = basis.surface();
    let area: f64 = nodes.areas_m2.iter().sum();
    let mut listener_m = [0.0; 3];
    for (place, own) in nodes.places_m.iter().zip(&nodes.areas_m2) {
        (0..3).for_each(|axis| listener_m[axis] += place[axis] * own / area);
    }
    listener_m[2] += distance_m;
    let size = (TAU * hz / SOUND_M_S).powi(2) * area / PI;
    let baffled = 0.5 * (1.0 + size / (1.0 + size));
    let peak_pa = baffled * rayleigh_pa(basis, field, hz, listener_m).norm();
    decibels(peak_pa / std::f64::consts::SQRT_2, REFERENCE_PA)
}
