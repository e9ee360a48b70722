//! The lowest modes of a shell made complete for the loads it will be driven by.

use std::f64::consts::TAU;

use crate::eigen::{Complement, EigenError, Known, Pencil, Symbolic, complement};
use crate::modes::{Modes, frequency_hz, gather, rigid_motions, spread};
use crate::shell::{Equations, ShellGeometry, ShellModel, Supports};

/// Rigid motions, elastic modes and residual vectors of one shell, in this order.
#[derive(Debug, Clone, PartialEq)]
pub struct CompleteModes {
    /// How many of the first are rigid motions.
    pub rigid: usize,
    /// How many of the last are residual vectors.
    pub residual: usize,
    /// (mode) Hz: zero for rigid motions, Rayleigh's quotient for residual vectors.
    pub frequencies_hz: Vec<f64>,
    /// (mode, node, dof), m and rad for unit modal mass (1 kg).
    pub shapes: Vec<f64>,
}

/// Completes `modes`, all the lowest elastic ones of `model`, for `loads` (load, equation; N): with the rigid motions, and with what the
/// modes left out answer to the loads.
///
/// The residual vectors make the answer to each load right at low frequency, wherever it is watched; at the frequency of the last mode
/// they still take most of what is missing. What they are solved with is a shift as low as the first elastic mode, so that a floating
/// shell needs no other way (inertia relief) and a held one loses no accuracy: it counts as its square over that of the modes left out.
///
/// # Errors
/// [`EigenError`] for equations that can't be solved.
pub fn complete_modes(
    geometry: &ShellGeometry,
    supports: &Supports,
    equations: &Equations,
    model: &ShellModel,
    symbolic: &Symbolic,
    modes: &Modes,
    loads: &[f64],
) -> Result<CompleteModes, EigenError> {
    let pencil = Pencil { pattern: &equations.pattern, stiffness: &model.stiffness, mass: &model.mass };
    let known = Known {
        rigid: &rigid_motions(geometry, supports, &model.ties, equations).concat(),
        modes: &gather(&modes.shapes, equations),
        loads,
        shift: modes.frequencies_hz.first().map_or(1.0, |hz| (TAU * hz).powi(2)),
    };
    let Complement { rigid, values, vectors } = complement(&pencil, symbolic, &known)?;
    let rigid_count = rigid.len() / equations.count();
    let mut frequencies_hz = vec![0.0; rigid_count];
    frequencies_hz.extend(&modes.frequencies_hz);
    frequencies_hz.extend(values.iter().map(|value| frequency_hz(*value)));
    let mut shapes = spread(&rigid, equations);
    shapes.extend(&modes.shapes);
    shapes.extend(spread(&vectors, equations));
    Ok(CompleteModes { rigid: rigid_count, residual: values.len(), frequencies_hz, shapes })
}
