//! The lowest eigenpairs: from the request to the search.

use super::error::check_values;
use super::inertia::count_checked;
use super::pencil::Checked;
use super::proof::Gap;
use super::request::LIMIT_MOVES;
use super::rigid::rigid_basis;
use super::search::{Search, Task};
use super::shift::Scale;
use super::{EigenError, Eigenpairs, Extent, Pencil, Request, Symbolic};

/// Largest block; wider ones only delay convergence.
const LARGEST_BLOCK: usize = 64;

/// Finds the lowest eigenpairs of a pencil.
///
/// Shift-invert block Lanczos; every vector is kept and reorthogonalised. Repeated eigenvalues come out with their full
/// multiplicity. With `prove` (and always for [`Extent::Below`]) the inertia count must agree with what was found; when it
/// doesn't, fresh directions are added and the search goes on.
///
/// Cost: one factorisation, about (1.7 n + 35)/4 block solves for n modes in blocks of four, as many products with M, orthogonalisation growing with n²,
/// and one indefinite factorisation for the proof.
///
/// # Errors
/// [`EigenError::Count`], [`EigenError::Block`], [`EigenError::Shift`] for a request that can't be met; [`EigenError::NotPositiveDefinite`] when K + sM
/// has no Cholesky factor; [`EigenError::MassNotPositive`], [`EigenError::NoStiffness`], [`EigenError::RigidNotNull`], [`EigenError::RigidDependent`],
/// [`EigenError::NotFinite`] for input that breaks a promise; [`EigenError::Exhausted`] when M is singular and there are not
/// as many finite eigenvalues; [`EigenError::NotConverged`], [`EigenError::Missed`], [`EigenError::CountUncertain`] when the search
/// ends without what it promises.
pub fn lowest(pencil: &Pencil, symbolic: &Symbolic, request: &Request) -> Result<Eigenpairs, EigenError> {
    let checked = Checked::new(pencil, symbolic)?;
    if request.block == 0 || request.block > LARGEST_BLOCK {
        return Err(EigenError::Block { block: request.block, limit: LARGEST_BLOCK });
    }
    if let Some(shift) = request.shift.filter(|&shift| !(shift > 0.0 && shift.is_finite())) {
        return Err(EigenError::Shift { shift: -shift });
    }
    let start = request.start.unwrap_or_default();
    check_values("the start block", start, start.len().div_ceil(symbolic.dof()) * symbolic.dof())?;
    let scale = Scale::of(&checked)?;
    let rigid = rigid_basis(&checked, request.rigid)?;
    let available = symbolic.dof().saturating_sub(rigid.size());
    let (wanted, proven) = match request.extent {
        Extent::Count(count) => (count, None),
        Extent::Below { lambda, cap } => {
            check_values("the limit", &[lambda], 1)?;
            let (lambda, counted) = count_at_or_above(&checked, lambda)?;
            let below = counted.saturating_sub(rigid.size());
            if below == 0 {
                return Ok(nothing_below(lambda, counted, request.shift.unwrap_or(scale.guess)));
            }
            (below.min(cap), (below <= cap).then_some(Gap { lambda, counted }))
        }
    };
    if wanted == 0 || wanted > available {
        return Err(EigenError::Count { wanted, available });
    }
    let task = Task {
        pencil: &checked,
        rigid: &rigid,
        scale,
        shift: request.shift,
        wanted,
        width: request.block.min(available),
        prove: request.prove,
        proven,
    };
    Search::new(task, start)?.run()
}

/// The count at `lambda` or, where it loses digits there, as little above as it can be had: (where, eigenvalues below).
fn count_at_or_above(pencil: &Checked, lambda: f64) -> Result<(f64, usize), EigenError> {
    /// An eigenvalue of a leading block spoils the places next to it only.
    const ABOVE: [f64; 3] = [1e-4, 3e-4, LIMIT_MOVES];
    let mut counted = count_checked(pencil, lambda).map(|counted| (lambda, counted));
    for above in ABOVE {
        if !matches!(counted, Err(EigenError::CountUncertain { .. })) {
            break;
        }
        let place = lambda * (1.0 + above);
        counted = count_checked(pencil, place).map(|counted| (place, counted));
    }
    counted
}

fn nothing_below(lambda: f64, counted: usize, shift: f64) -> Eigenpairs {
    Eigenpairs {
        values: Vec::new(),
        vectors: Vec::new(),
        residuals: Vec::new(),
        orthogonality: Vec::new(),
        counted_below: counted,
        counted_at: Some(lambda),
        shift,
        passes: 0,
    }
}
