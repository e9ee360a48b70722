//! From the assembled model to its modes.

use std::f64::consts::TAU;

use thiserror::Error;

use super::{Modes, name_modes, rigid_motions};
use crate::eigen::{EigenError, Extent, Request, Symbolic, lowest};
use crate::shell::{DOFS_PER_NODE, Equations, ShellGeometry, ShellModel, Supports};

/// What is wanted of the modes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModesRequest {
    /// Most modes to return.
    pub most: usize,
    /// Only those below this frequency, Hz; none for no limit.
    pub below_hz: Option<f64>,
    /// Whether to prove by inertia that none was missed; costs about one more factorisation.
    pub prove: bool,
}

/// Modes that cannot be had.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ModesError {
    /// More modes than anyone can use, or none.
    #[error("{most} modes were asked for; ask for 1 to {limit}")]
    Count {
        /// What was asked.
        most: usize,
        /// The most there can be.
        limit: usize,
    },
    /// A frequency limit that isn't one.
    #[error("modes below {below_hz} Hz were asked for; give a finite frequency above zero")]
    Frequency {
        /// What was asked.
        below_hz: f64,
    },
    /// The equations could not be solved.
    #[error(transparent)]
    Eigen(#[from] EigenError),
}

/// Vectors iterated together. Fewer converge on fewer in all (26 modes on 88 where blocks of eight take 112), and four are what the kernels take at
/// once.
pub(super) const BLOCK: usize = 4;

impl ModesRequest {
    /// The most modes to ask for at once.
    pub const LIMIT: usize = 150;

    /// The lowest `most` elastic modes, proven complete.
    #[must_use]
    pub fn lowest(most: usize) -> Self {
        Self { most, below_hz: None, prove: true }
    }

    /// Whether so many can be had.
    pub(super) fn check(&self) -> Result<(), ModesError> {
        self.extent().map(|_| ())
    }

    fn extent(&self) -> Result<Extent, ModesError> {
        if self.most == 0 || self.most > Self::LIMIT {
            return Err(ModesError::Count { most: self.most, limit: Self::LIMIT });
        }
        match self.below_hz {
            None => Ok(Extent::Count(self.most)),
            Some(below_hz) if below_hz.is_finite() && below_hz > 0.0 => {
                Ok(Extent::Below { lambda: (TAU * below_hz).powi(2), cap: self.most })
            }
            Some(below_hz) => Err(ModesError::Frequency { below_hz }),
        }
    }
}

/// Solves `model` for its elastic modes.
///
/// `symbolic` belongs to the pattern of `equations`. Cost: see [`lowest`].
///
/// # Errors
/// [`ModesError`] for a request that can't be met or equations that can't be solved.
pub fn solve_modes(
    geometry: &ShellGeometry,
    supports: &Supports,
    equations: &Equations,
    model: &ShellModel,
    symbolic: &Symbolic,
    request: &ModesRequest,
) -> Result<Modes, ModesError> {
    let extent = request.extent()?;
    let pencil = model.pencil(equations, symbolic);
    let rigid = rigid_motions(geometry, supports, &model.ties, equations).concat();
    let found = lowest(
        &pencil,
        symbolic,
        &Request {
            extent,
            rigid: (!rigid.is_empty()).then_some(rigid.as_slice()),
            block: BLOCK,
            prove: request.prove,
            shift: None,
            start: None,
        },
    )?;
    let mut modes = Modes {
        nodes: geometry.node_count(),
        frequencies_hz: found.values.iter().map(|lambda| frequency_hz(*lambda)).collect(),
        shapes: equations.spread(&found.vectors),
        names: Vec::new(),
        residuals: found.residuals,
        orthogonality: found.orthogonality,
        rigid_hz: found.rigid.iter().map(|lambda| frequency_hz(lambda.abs())).collect(),
        counted: found.counted_at.map(|_| found.counted_below),
    };
    modes.shapes.chunks_exact_mut(modes.nodes * DOFS_PER_NODE).for_each(fix_sign);
    // A top on springs is no more in the hand than one on supports.
    modes.names =
        if model.ties.is_empty() { name_modes(geometry, supports, &modes) } else { vec![None; modes.count()] };
    Ok(modes)
}

/// Turns a shape so that the first of its largest entries, node by node, is positive.
fn fix_sign(shape: &mut [f64]) {
    /// Of the largest magnitude: the largest entries of symmetric shapes differ by rounding only.
    const NEARLY: f64 = 0.999;
    let largest = shape.iter().fold(0.0, |largest: f64, value| largest.max(value.abs()));
    let first = shape.iter().find(|value| value.abs() >= NEARLY * largest);
    if first.is_some_and(|&value| value < 0.0) {
        shape.iter_mut().for_each(|value| *value = -*value);
    }
}

/// Hz of λ in rad²/s².
pub(crate) fn frequency_hz(lambda: f64) -> f64 {
    lambda.max(0.0).sqrt() / TAU
}
