//! The frequencies of a curve.

use super::ResponseError;

/// Frequencies above zero, ascending, Hz.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweep {
    frequencies_hz: Vec<f64>,
}

/// No curve on a screen has more points; a million would stop a worker for minutes.
const MOST_POINTS: usize = 20_000;
/// Beyond hearing, and beyond anything a shell's lowest modes say.
const HIGHEST_HZ: f64 = 100_000.0;

impl Sweep {
    /// `points` of equal ratio from `from_hz` to `to_hz`, both included, as a musical scale has it; two or more.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] naming what is out of its limits.
    pub fn by_ratio(from_hz: f64, to_hz: f64, points: usize) -> Result<Self, ResponseError> {
        Self::between(from_hz, to_hz, points, |share| from_hz * (to_hz / from_hz).powf(share))
    }

    /// `points` at equal distances from `from_hz` to `to_hz`, both included; two or more.
    ///
    /// # Errors
    /// As for [`Sweep::by_ratio`].
    pub fn even(from_hz: f64, to_hz: f64, points: usize) -> Result<Self, ResponseError> {
        Self::between(from_hz, to_hz, points, |share| from_hz + (to_hz - from_hz) * share)
    }

    fn between(from_hz: f64, to_hz: f64, points: usize, at: impl Fn(f64) -> f64) -> Result<Self, ResponseError> {
        ResponseError::limit("the lowest frequency in Hz", from_hz, 0.0, HIGHEST_HZ)?;
        ResponseError::limit("the highest frequency in Hz", to_hz, from_hz, HIGHEST_HZ)?;
        ResponseError::limit("the number of frequencies", points as f64, 1.0, MOST_POINTS as f64)?;
        let frequencies_hz = (0..points).map(|point| at(point as f64 / (points - 1) as f64)).collect();
        Ok(Self { frequencies_hz })
    }

    /// (frequency) Hz.
    #[must_use]
    pub fn frequencies_hz(&self) -> &[f64] {
        &self.frequencies_hz
    }

    /// The part of it at and above `from_hz` and below `to_hz`; (frequency) Hz.
    #[must_use]
    pub fn band(&self, from_hz: f64, to_hz: f64) -> &[f64] {
        let up_to = |limit: f64| self.frequencies_hz.partition_point(|hz| *hz < limit);
        let first = up_to(from_hz);
        &self.frequencies_hz[first..up_to(to_hz).max(first)]
    }
}

/// The level of an amplitude or a root mean square, dB over `reference`; minus infinity for nothing.
#[must_use]
pub fn decibels(amplitude: f64, reference: f64) -> f64 {
    20.0 * (amplitude / reference).log10()
}
