//! The force of a bowed string on its bridge.

use std::f64::consts::{PI, TAU};

use super::{Complex, ResponseError};

/// A force that rises evenly and falls back once a period: what a string in Helmholtz's motion does to a rigid bridge.
///
/// f(t) = F (½ − t/T) within a period, whose Fourier series is Σ F/(πn) sin(2πnt/T): the n-th harmonic is an n-th of the first
/// (Cremer 1984, The Physics of the Violin, ch. 3; from memory). A real string's corner is rounded, so that its high harmonics are
/// weaker, and the bow's place silences some; neither is in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sawtooth {
    /// The played note, Hz.
    pub note_hz: f64,
    /// From the lowest to the highest force, N.
    pub peak_to_peak_n: f64,
}

/// As far as 20 kHz for the lowest note that is heard, 20 Hz; and an end where no end was given.
const MOST_HARMONICS: u32 = 1000;

impl Sawtooth {
    /// Of a note with one newton from peak to peak.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] for a note that isn't above zero, or above what can be heard.
    pub fn of_note(note_hz: f64) -> Result<Self, ResponseError> {
        ResponseError::limit("the note in Hz", note_hz, 0.0, 20_000.0)?;
        Ok(Self { note_hz, peak_to_peak_n: 1.0 })
    }

    /// The harmonics up to and with `to_hz`, at most a thousand: (harmonic) frequency in Hz and complex amplitude in N of e^{iωt}.
    ///
    /// A sine is −i in that way of writing, so all amplitudes are negative imaginary.
    #[must_use]
    pub fn harmonics(&self, to_hz: f64) -> Vec<(f64, Complex)> {
        let amplitude = |n: f64| Complex::new(0.0, -self.peak_to_peak_n / (PI * n));
        let numbers = (1..=MOST_HARMONICS).map(f64::from).take_while(|n| n * self.note_hz <= to_hz);
        numbers.map(|n| (n * self.note_hz, amplitude(n))).collect()
    }

    /// The force at time `t_s`, N, of all harmonics together: the sawtooth itself.
    #[must_use]
    pub fn force_n(&self, t_s: f64) -> f64 {
        self.peak_to_peak_n * (0.5 - (t_s * self.note_hz).rem_euclid(1.0))
    }

    /// e^{iωt} of the harmonic of `hz` when the note's own phase is `phase`: in slow motion all harmonics keep step.
    #[must_use]
    pub fn turned(&self, hz: f64, phase: f64) -> Complex {
        Complex::from_polar(1.0, (hz / self.note_hz * phase).rem_euclid(TAU))
    }
}
