//! What can keep an effect from being told.

use thiserror::Error;

use crate::design::DesignError;
use crate::mesh::Unmoved;
use crate::response::ResponseError;
use crate::top::TopError;

/// An effect or a proposal that can't be had.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum EffectError {
    /// A stage of the top failed.
    #[error(transparent)]
    Top(#[from] TopError),
    /// The response can't be had.
    #[error(transparent)]
    Response(#[from] ResponseError),
    /// The mesh can't go along with the change.
    #[error(
        "the mesh can't go along with this step ({why:?}); change the measure itself and let the top be worked out anew"
    )]
    Unmoved {
        /// Why not.
        why: Unmoved,
    },
    /// A mode that isn't there.
    #[error("mode {mode} is asked for, but {count} were worked out; take one of 1 to {count}")]
    NoSuchMode {
        /// Its number, from 1.
        mode: usize,
        /// How many there are.
        count: usize,
    },
    /// A target that is no number.
    #[error("{what} is {value}; it must be a finite number")]
    NotFinite {
        /// What.
        what: &'static str,
        /// What was given.
        value: f64,
    },
}

impl EffectError {
    /// A stable word for the kind of failure.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Top(error) => error.kind(),
            Self::Response(error) => error.kind(),
            Self::Unmoved { .. } => "mesh_left_behind",
            Self::NoSuchMode { .. } => "no_such_mode",
            Self::NotFinite { .. } => "target_no_number",
        }
    }
}

impl From<DesignError> for EffectError {
    fn from(error: DesignError) -> Self {
        Self::Top(error.into())
    }
}
