//! Frequencies and losses of modes: how each answers a force of its own.

use std::f64::consts::TAU;

use super::{Complex, ModalMotion, Port};

/// Oscillators of unit mass, one for each mode; without shapes, so that a thousand frequencies cost little.
#[derive(Debug, Clone, PartialEq)]
pub struct Resonators {
    /// (mode) ωᵣ², rad²/s².
    squares: Vec<f64>,
    /// (mode) ηᵣ.
    losses: Vec<f64>,
}

impl Resonators {
    /// Of modes with `frequencies_hz` (mode), zero for rigid motions, and structural `loss_factors` (mode), one for each.
    #[must_use]
    pub fn new(frequencies_hz: &[f64], loss_factors: &[f64]) -> Self {
        let squares = frequencies_hz.iter().map(|hz| (TAU * hz).powi(2)).collect();
        Self { squares, losses: loss_factors.to_vec() }
    }

    /// Number of modes.
    #[must_use]
    pub fn count(&self) -> usize {
        self.squares.len()
    }

    /// (mode): 1/(ωᵣ²(1 + iηᵣ) − ω²), m/N for unit modal mass. `hz` above zero; at 0 Hz the answer of a rigid motion is infinite.
    pub fn receptances(&self, hz: f64) -> impl Iterator<Item = Complex> + '_ {
        let square = (TAU * hz).powi(2);
        self.squares.iter().zip(&self.losses).map(move |(own, loss)| {
            let (re, im) = (own - square, own * loss);
            let size = re * re + im * im;
            Complex::new(re / size, -im / size)
        })
    }

    /// Displacement at `to` for each newton at `from`, m/N. Exactly the same with both exchanged.
    #[must_use]
    pub fn receptance(&self, to: &Port, from: &Port, hz: f64) -> Complex {
        let weights = to.by_mode().iter().zip(from.by_mode()).map(|(to, from)| to * from);
        self.receptances(hz).zip(weights).map(|(own, weight)| own * weight).sum()
    }

    /// Velocity at `to` for each newton at `from`, (m/s)/N: iω times the receptance.
    #[must_use]
    pub fn mobility(&self, to: &Port, from: &Port, hz: f64) -> Complex {
        Complex::new(0.0, TAU * hz) * self.receptance(to, from, hz)
    }

    /// (frequency): the mobility at each of `frequencies_hz`. Cost: some ten flops for each mode and frequency.
    #[must_use]
    pub fn mobilities(&self, to: &Port, from: &Port, frequencies_hz: &[f64]) -> Vec<Complex> {
        frequencies_hz.iter().map(|&hz| self.mobility(to, from, hz)).collect()
    }

    /// The motion under forces of complex amplitude (N) at ports, all of one frequency.
    #[must_use]
    pub fn motion(&self, forces: &[(Complex, &Port)], hz: f64) -> ModalMotion {
        let mut amplitudes: Vec<Complex> = vec![Complex::default(); self.count()];
        for (force, port) in forces {
            amplitudes.iter_mut().zip(port.by_mode()).for_each(|(sum, own)| *sum += force * *own);
        }
        amplitudes.iter_mut().zip(self.receptances(hz)).for_each(|(sum, own)| *sum *= own);
        ModalMotion::new(hz, amplitudes)
    }

    /// The same modes with all frequencies and all loss factors multiplied: wood that is stiffer, or loses more, by the same ratio
    /// everywhere.
    #[must_use]
    pub fn rescaled(&self, frequencies_by: f64, losses_by: f64) -> Self {
        Self {
            squares: self.squares.iter().map(|square| square * frequencies_by * frequencies_by).collect(),
            losses: self.losses.iter().map(|loss| loss * losses_by).collect(),
        }
    }

    /// (mode) ωᵣ, rad/s, and ηᵣ.
    pub fn each(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.squares.iter().map(|square| square.sqrt()).zip(self.losses.iter().copied())
    }
}
