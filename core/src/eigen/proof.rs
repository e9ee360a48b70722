//! Where to count so that the count decides: in a gap of the spectrum above the last mode.

use super::EigenError;
use super::inertia::count_checked;
use super::pencil::Checked;
use super::ritz::Ritz;
use super::shift::ZERO;

/// A gap narrower than this share of λ + s is no place to count: rounding of K moves eigenvalues of fine meshes by 1e-7 or so.
pub(super) const LEAST_GAP: f64 = 1e-5;
/// Modes that only bound the gap need be no more accurate than this; their eigenvalues then err by its square.
const BOUNDING: f64 = 1e-2;
/// Places inside the gap that are tried in turn, should the factorisation lose digits at one.
const PLACES: [f64; 3] = [0.5, 0.3, 0.7];

/// A count and where it was taken.
#[derive(Debug, Clone)]
pub(super) struct Gap {
    pub(super) lambda: f64,
    pub(super) counted: usize,
}

/// An interval free of eigenvalues, so far as the iteration knows.
pub(super) struct Interval {
    low: f64,
    high: f64,
}

/// The first gap at or above mode `wanted` (counted from one), and how many modes lie below it.
///
/// An eigenvalue lies within its error of each Ritz value, so the gap is taken between these intervals.
pub(super) fn gap_above(ritz: &Ritz, shift: f64, wanted: usize, full: bool) -> Option<(usize, Interval)> {
    let pairs = ritz.theta.len();
    for last in wanted..=pairs {
        let low = 1.0 / (ritz.theta[last - 1] * (1.0 - ritz.error[last - 1])) - shift;
        if last == pairs {
            // Nothing is known above. When the basis spans everything, nothing is there.
            return full.then_some((last, Interval { low, high: low + (low + shift) }));
        }
        if ritz.error[last] > BOUNDING {
            return None;
        }
        let high = 1.0 / (ritz.theta[last] * (1.0 + ritz.error[last])) - shift;
        // Between the zeros of a free structure there is nothing but rounding.
        if high > ZERO * shift && high - low > LEAST_GAP * (high + shift) {
            return Some((last, Interval { low, high }));
        }
    }
    None
}

impl Interval {
    /// Counts inside the interval: (where, eigenvalues below).
    pub(super) fn count(&self, pencil: &Checked) -> Result<(f64, usize), EigenError> {
        let mut refusal = EigenError::CountUncertain { lambda: self.low, growth: f64::INFINITY, limit: 0.0 };
        for place in PLACES {
            let lambda = self.low + place * (self.high - self.low);
            match count_checked(pencil, lambda) {
                Ok(counted) => return Ok((lambda, counted)),
                Err(error @ EigenError::CountUncertain { .. }) => refusal = error,
                Err(error) => return Err(error),
            }
        }
        Err(refusal)
    }
}
