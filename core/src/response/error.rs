//! What can be wrong with what a response is asked of.

use thiserror::Error;

use crate::patience::GivenUp;

/// A response that can't be had.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ResponseError {
    /// An array does not have the length that the others ask for.
    #[error("{what} hold {got} numbers where {wanted} are needed; send all arrays of one basis together")]
    Length {
        /// Which array.
        what: &'static str,
        /// Numbers given.
        got: usize,
        /// Numbers needed.
        wanted: usize,
    },
    /// A number that isn't finite, or has the wrong sign.
    #[error("{what} hold {value} at index {index}; every one must be a finite number{and}")]
    BadNumber {
        /// Which array.
        what: &'static str,
        /// Place in it.
        index: usize,
        /// The value found.
        value: f64,
        /// What else it must be, beginning with a comma; empty when nothing.
        and: &'static str,
    },
    /// A value outside its limits.
    #[error("{what} is {value}; it must be above {above} and at most {most}")]
    Outside {
        /// Which value, with its unit.
        what: &'static str,
        /// What was given.
        value: f64,
        /// Lower limit, not included.
        above: f64,
        /// Upper limit.
        most: f64,
    },
    /// A place off the surface.
    #[error(
        "there is no wood at x = {:.1} mm, y = {:.1} mm: it lies in a hole or beyond the edge; take a place on the wood",
        1e3 * .place_m[0], 1e3 * .place_m[1]
    )]
    OffTheSurface {
        /// In plan, m.
        place_m: [f64; 2],
    },
    /// A node that isn't there.
    #[error("node {node} is named, but the nodes are 0 to {last}; take one of these")]
    NoSuchNode {
        /// The node named.
        node: usize,
        /// The last node there is.
        last: usize,
    },
    /// Nobody waits for the result.
    #[error(transparent)]
    GivenUp(#[from] GivenUp),
}

impl ResponseError {
    /// Refuses a value that isn't above `above` and at most `most`.
    ///
    /// # Errors
    /// [`ResponseError::Outside`].
    pub fn limit(what: &'static str, value: f64, above: f64, most: f64) -> Result<(), Self> {
        // A comparison with NaN is false.
        if value > above && value <= most { Ok(()) } else { Err(Self::Outside { what, value, above, most }) }
    }

    /// A stable word for the kind of failure.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Length { .. } | Self::NoSuchNode { .. } => "foreign_modes",
            Self::BadNumber { .. } => "bad_modes",
            Self::Outside { .. } => "outside_limits",
            Self::OffTheSurface { .. } => "off_the_wood",
            Self::GivenUp(_) => "given_up",
        }
    }
}

/// Refuses an array of the wrong length, or with a number that isn't finite and at least `least`.
pub(super) fn check(what: &'static str, values: &[f64], wanted: usize, least: f64) -> Result<(), ResponseError> {
    if values.len() != wanted {
        return Err(ResponseError::Length { what, got: values.len(), wanted });
    }
    match values.iter().enumerate().find(|(_, value)| !(value.is_finite() && **value >= least)) {
        Some((index, &value)) => {
            let and = if least == 0.0 { ", zero or above" } else { "" };
            Err(ResponseError::BadNumber { what, index, value, and })
        }
        None => Ok(()),
    }
}
