//! The lowest eigenpairs: from the request to the search in each part of the pencil, and back.

use super::basis::Basis;
use super::dense::dot;
use super::error::check_values;
use super::inertia::count_checked;
use super::part::{MOST, Part};
use super::proof::{Gap, LEAST_GAP};
use super::request::LIMIT_MOVES;
use super::rigid::{check_null, rigid_bases};
use super::search::{Found, Search, Task};
use super::shift::Scale;
use super::{EigenError, Eigenpairs, Extent, Pencil, Request, Symbolic};
use crate::ascending::ascending;

/// Largest block; wider ones only delay convergence.
const LARGEST_BLOCK: usize = 64;

/// Finds the lowest eigenpairs of a pencil.
///
/// Shift-invert block Lanczos; every vector is kept and reorthogonalised. Repeated eigenvalues come out with their full
/// multiplicity. With `prove` (and always for [`Extent::Below`]) the inertia count must agree with what was found; when it
/// doesn't, fresh directions are added and the search goes on. A pencil that is its own mirror image ([`Symbolic::mirrored`]) is searched in two parts, each
/// with a count of its own; residuals are then those of the part.
///
/// Cost: one factorisation, about (1.7 n + 35)/4 block solves for n modes in blocks of four, as many products with M, orthogonalisation growing with n²,
/// and one indefinite factorisation for the proof; of a pencil in two parts half of that.
///
/// # Errors
/// [`EigenError::Count`], [`EigenError::Block`], [`EigenError::Shift`] for a request that can't be met; [`EigenError::NotPositiveDefinite`] when K + sM
/// has no Cholesky factor; [`EigenError::MassNotPositive`], [`EigenError::NoStiffness`], [`EigenError::RigidNotNull`], [`EigenError::RigidDependent`],
/// [`EigenError::NotFinite`] for input that breaks a promise; [`EigenError::Exhausted`] when M is singular and there are not
/// as many finite eigenvalues; [`EigenError::NotConverged`], [`EigenError::Missed`], [`EigenError::CountUncertain`] when the search
/// ends without what it promises.
pub fn lowest(pencil: &Pencil, symbolic: &Symbolic, request: &Request) -> Result<Eigenpairs, EigenError> {
    let parts = Part::all(pencil, symbolic)?;
    if request.block == 0 || request.block > LARGEST_BLOCK {
        return Err(EigenError::Block { block: request.block, limit: LARGEST_BLOCK });
    }
    if let Some(shift) = request.shift.filter(|&shift| !(shift > 0.0 && shift.is_finite())) {
        return Err(EigenError::Shift { shift: -shift });
    }
    let dof = symbolic.dof();
    let start = request.start.unwrap_or_default();
    check_values("the start block", start, start.len().div_ceil(dof) * dof)?;
    let rigid = rigid_bases(&parts, request.rigid, dof, check_null)?;
    let (wanted, gaps) = match request.extent {
        Extent::Count(count) => (count, Vec::new()),
        Extent::Below { lambda, cap } => {
            check_values("the limit", &[lambda], 1)?;
            let gaps = count_at_or_above(&parts, lambda)?;
            let below = gaps.iter().zip(&rigid).map(|(gap, rigid)| elastic(gap, rigid)).sum::<usize>();
            (below.min(cap), if below > cap { Vec::new() } else { gaps })
        }
    };
    let available: Vec<usize> =
        (parts.iter().zip(&rigid)).map(|(part, rigid)| part.dof().saturating_sub(rigid.size())).collect();
    let most = available.iter().sum();
    if wanted > most || wanted == 0 && gaps.is_empty() {
        return Err(EigenError::Count { wanted, available: most });
    }
    // Both parts of a pencil have about as many modes.
    let share = if parts.len() == 1 { wanted } else { wanted / 2 + 1 };
    let mut sought: Vec<Sought> = Vec::new();
    for (at, (part, rigid)) in parts.iter().zip(&rigid).enumerate() {
        let scale = Scale::of(&part.pencil)?;
        // What suits one part suits the other.
        let guess = sought.last().map_or(scale.guess, |before| before.shift.max(scale.least));
        let (available, gap) = (available[at], gaps.get(at).cloned());
        let wanted = gap.as_ref().map_or(share, |gap| elastic(gap, rigid)).min(available);
        let mut own = Sought { part, rigid, shift: request.shift.unwrap_or(guess), gap, search: None };
        if wanted > 0 {
            let task = Task {
                pencil: &part.pencil,
                rigid,
                scale: Scale { guess, ..scale },
                shift: request.shift,
                wanted,
                available,
                width: request.block.min(available),
                proven: own.gap.take(),
            };
            let mut search = Search::new(task, &part.shares(start, MOST).vectors)?;
            let found = search.find()?;
            own.shift = search.shift;
            own.search = Some((search, found));
        }
        sought.push(own);
    }
    let prove = request.prove || !gaps.is_empty();
    loop {
        let lacking = if gaps.is_empty() { lacking(&sought, wanted) } else { None };
        if let Some((at, count)) = lacking {
            sought[at].find_more(count)?;
        } else if let Some(unproven) = sought.iter_mut().find(|own| prove && own.search.is_some() && own.gap.is_none())
        {
            unproven.complete()?;
        } else {
            return Ok(gathered(&mut sought, wanted));
        }
    }
}

/// What is known of one part.
struct Sought<'a> {
    part: &'a Part<'a>,
    rigid: &'a Basis,
    /// None where there is nothing to be found.
    search: Option<(Search<'a>, Found)>,
    /// Where it was proven complete.
    gap: Option<Gap>,
    shift: f64,
}

impl Sought<'_> {
    fn values(&self) -> &[f64] {
        self.search.as_ref().map_or(&[], |(_, found)| &found.report.values)
    }

    /// Adds the Rayleigh quotients of the rigid modes.
    fn add_rigid_values(&self, values: &mut Vec<f64>) {
        let (dof, vectors) = (self.part.dof(), &self.rigid.vectors);
        let forces = self.part.pencil.stiffness.multiply(vectors);
        for (vector, force) in vectors.chunks_exact(dof).zip(forces.chunks_exact(dof)) {
            values.push(dot(vector, force));
        }
    }

    fn find_more(&mut self, count: usize) -> Result<(), EigenError> {
        self.gap = None;
        if let Some((search, found)) = &mut self.search {
            *found = search.find_more(count)?;
            self.shift = search.shift;
        }
        Ok(())
    }

    fn complete(&mut self) -> Result<(), EigenError> {
        if let Some((search, found)) = &mut self.search {
            self.gap = Some(search.complete(found)?);
            self.shift = search.shift;
        }
        Ok(())
    }
}

/// Eigenvalues below a gap that aren't those of rigid modes.
fn elastic(gap: &Gap, rigid: &Basis) -> usize {
    gap.counted.saturating_sub(rigid.size())
}

/// The part that may hide some of the lowest `wanted` modes above those it has told, and how many.
fn lacking(sought: &[Sought], wanted: usize) -> Option<(usize, usize)> {
    // The least of what the parts have told up to.
    let (mut at, mut up_to, mut left) = (0, f64::INFINITY, 0);
    for (part, own) in sought.iter().enumerate() {
        if let (Some((search, _)), Some(&last)) = (&own.search, own.values().last()) {
            let more = search.task.available - search.task.wanted;
            if more > 0 && last < up_to {
                (at, up_to, left) = (part, last, more);
            }
        }
    }
    let sure = sought.iter().flat_map(Sought::values).filter(|&&value| value <= up_to).count();
    (sure < wanted && left > 0).then(|| (at, left.min(wanted - sure)))
}

/// The lowest `wanted` of all parts.
fn gathered(sought: &mut [Sought], wanted: usize) -> Eigenpairs {
    let mut pairs = Eigenpairs { shift: f64::INFINITY, ..Eigenpairs::default() };
    // Those of a pencil in one part are in order, and as many as were wanted.
    if let [Sought { search: Some((_, found)), .. }] = sought {
        pairs.vectors = std::mem::take(&mut found.report.vectors);
    }
    let (mut values, mut residuals, mut orthogonality) = (Vec::new(), Vec::new(), Vec::new());
    let mut vectors = Vec::new();
    for own in &*sought {
        pairs.shift = pairs.shift.min(own.shift);
        own.add_rigid_values(&mut pairs.rigid);
        if let Some((search, Found { report, .. })) = &own.search {
            pairs.passes += search.passes;
            values.extend_from_slice(&report.values);
            residuals.extend_from_slice(&report.residuals);
            orthogonality.extend_from_slice(&report.orthogonality);
            vectors.extend(report.vectors.chunks_exact(own.part.dof()).map(|vector| (own.part, vector)));
        }
    }
    let order = ascending(&values);
    let picked = |list: &[f64]| order[..wanted].iter().map(|&at| list[at]).collect();
    (pairs.values, pairs.residuals, pairs.orthogonality) =
        (picked(&values), picked(&residuals), picked(&orthogonality));
    // None are left of those that were taken.
    for &(part, vector) in order[..wanted].iter().filter_map(|&at| vectors.get(at)) {
        part.append_whole(&mut pairs.vectors, vector);
    }
    // Where all parts are proven complete, and no mode that isn't wanted is counted.
    if let Some(gaps) = sought.iter().map(|own| own.gap.as_ref()).collect::<Option<Vec<_>>>() {
        let mut at = gaps.iter().map(|gap| gap.lambda).fold(f64::INFINITY, f64::min);
        // The first gap above: one motion and its opposite may have one frequency.
        for ends in order[wanted.saturating_sub(1)..].windows(2) {
            let [last, next] = [values[ends[0]], values[ends[1]]];
            if next - last > LEAST_GAP * next {
                at = at.min(0.5 * (last + next));
                break;
            }
        }
        pairs.counted_at = Some(at);
        for (own, gap) in sought.iter().zip(gaps) {
            let below = own.values().iter().filter(|&&value| value < at).count();
            pairs.counted_below += if gap.lambda == at { gap.counted } else { own.rigid.size() + below };
        }
    }
    pairs
}

/// (part): the count at `lambda` or, where it loses digits there, at as little above as it can be had in all.
fn count_at_or_above(parts: &[Part], lambda: f64) -> Result<Vec<Gap>, EigenError> {
    /// An eigenvalue of a leading block spoils the places next to it only.
    const ABOVE: [f64; 4] = [0.0, 1e-4, 3e-4, LIMIT_MOVES];
    let mut gaps = Vec::new();
    for above in ABOVE {
        let lambda = lambda * (1.0 + above);
        gaps.clear();
        for part in parts {
            match count_checked(&part.pencil, lambda) {
                Ok(counted) => gaps.push(Gap { lambda, counted }),
                Err(EigenError::CountUncertain { .. }) if above < LIMIT_MOVES => break,
                Err(error) => return Err(error),
            }
        }
        if gaps.len() == parts.len() {
            break;
        }
    }
    Ok(gaps)
}
