//! What can go wrong on the way from a design to its modes.

use thiserror::Error;

use crate::design::DesignError;
use crate::eigen::EigenError;
use crate::fittings::FittingError;
use crate::mesh::MeshError;
use crate::modes::ModesError;
use crate::patience::GivenUp;
use crate::shell::ShellError;
use crate::wood::WoodError;

/// The stage that failed, with its own error.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum TopError {
    /// The design can't be drawn.
    #[error(transparent)]
    Design(#[from] DesignError),
    /// The top can't be meshed.
    #[error(transparent)]
    Mesh(#[from] MeshError),
    /// No shell can be built.
    #[error(transparent)]
    Shell(#[from] ShellError),
    /// A fitting can't be put on.
    #[error(transparent)]
    Fitting(#[from] FittingError),
    /// The wood cannot be.
    #[error(transparent)]
    Wood(#[from] WoodError),
    /// The equations can't be ordered.
    #[error(transparent)]
    Eigen(#[from] EigenError),
    /// The modes can't be had.
    #[error(transparent)]
    Modes(#[from] ModesError),
    /// Nobody waits for the result.
    #[error(transparent)]
    GivenUp(#[from] GivenUp),
}

impl TopError {
    /// A stable word for the kind of failure.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::GivenUp(_)
            | Self::Shell(ShellError::GivenUp(_))
            | Self::Eigen(EigenError::GivenUp(_))
            | Self::Modes(ModesError::Eigen(EigenError::GivenUp(_))) => "given_up",
            Self::Design(error) => error.kind(),
            Self::Mesh(_) => "mesh",
            Self::Shell(_) => "shell",
            Self::Fitting(_) => "fitting",
            Self::Wood(_) => "wood",
            Self::Eigen(_) => "equations",
            Self::Modes(_) => "modes",
        }
    }
}
