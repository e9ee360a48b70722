//! What can be wrong with a fitting.

use thiserror::Error;

/// A fitting that can't be put on.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum FittingError {
    /// A value that isn't a finite number of the right sign.
    #[error("{what} is {value}; it must be a finite number, zero or above")]
    BadValue {
        /// What it is, with its unit.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// A place without wood.
    #[error(
        "{what} needs wood at x = {x_mm:.1} mm, y = {y_mm:.1} mm, but there is none: it lies in a sound hole or beyond the \
         edge; move it onto the wood"
    )]
    OffTheWood {
        /// Which fitting.
        what: &'static str,
        /// Across, from the centreline.
        x_mm: f64,
        /// Station.
        y_mm: f64,
    },
}

impl FittingError {
    pub(super) fn off_the_wood(what: &'static str, [x_m, y_m]: [f64; 2]) -> Self {
        const MM_PER_M: f64 = 1e3;
        Self::OffTheWood { what, x_mm: x_m * MM_PER_M, y_mm: y_m * MM_PER_M }
    }
}

/// Refuses the first of `values` that is negative, infinite or not a number.
pub(super) fn check_values(values: &[(&'static str, f64)]) -> Result<(), FittingError> {
    match values.iter().find(|(_, value)| !(value.is_finite() && *value >= 0.0)) {
        Some(&(what, value)) => Err(FittingError::BadValue { what, value }),
        None => Ok(()),
    }
}
