//! Ordering and supernodes: what can be known of a factor from the pattern alone.

use faer::Side;
use faer::dyn_stack::{MemBuffer, MemStack};
use faer::sparse::linalg::SupernodalThreshold;
use faer::sparse::linalg::amd;
use faer::sparse::linalg::cholesky::{
    CholeskySymbolicParams, SymbolicCholesky, SymmetricOrdering, factorize_symbolic_cholesky,
};
use faer::sparse::{FaerError, SymbolicSparseColMat, SymbolicSparseColMatRef};

use super::{EigenError, Pattern};

/// Symbolic factorisation of a pattern: a fill-reducing ordering and the supernodes of the factor.
///
/// Made once per pattern and used for every set of values on it. The ordering is approximate minimum degree
/// (P. Amestoy, T. Davis and I. Duff, SIAM J. Matrix Anal. Appl. 17 (1996) 886-905) on the graph of nodes, expanded so that a node's equations
/// stay together: the graph is 36 times smaller for six equations a node, and supernodes come out whole.
/// Cost: near linear in the pattern; about a third of one numeric factorisation at 15 000 equations.
#[derive(Debug)]
pub struct Symbolic {
    pattern: Pattern,
    nodes: usize,
    /// (position): the equation eliminated there.
    pub(super) order: Vec<u32>,
    /// Lower triangle in elimination order.
    pub(super) lower: SymbolicSparseColMat<u32>,
    /// (entry of `lower`): where its value lies in the pattern's values.
    source: Vec<u32>,
    pub(super) cholesky: SymbolicCholesky<u32>,
}

impl Symbolic {
    /// Orders a pattern and finds its supernodes.
    ///
    /// # Errors
    /// [`EigenError::Empty`], [`EigenError::Malformed`], [`EigenError::Length`] for a broken pattern, [`EigenError::TooLarge`] when the factor
    /// can't be addressed.
    pub fn new(pattern: &Pattern) -> Result<Symbolic, EigenError> {
        pattern.check()?;
        let equations = equations_by_node(pattern);
        let order = order_by_nodes(pattern, &equations)?;
        let dof = pattern.dof();
        let mut position = vec![u32::MAX; dof];
        for (place, &equation) in order.iter().enumerate() {
            position[equation as usize] = place as u32;
        }
        assert!(
            order.len() == dof && position.iter().all(|&place| place != u32::MAX),
            "broken invariant: the fill-reducing ordering is no permutation"
        );
        let (lower, upper, source) = permute(pattern, &position);
        let params = CholeskySymbolicParams {
            supernodal_flop_ratio_threshold: SupernodalThreshold::FORCE_SUPERNODAL,
            ..CholeskySymbolicParams::default()
        };
        // Already in elimination order: the identity ordering makes numeric factorisation read the values in place.
        let cholesky = factorize_symbolic_cholesky(upper.as_ref(), Side::Upper, SymmetricOrdering::Identity, params)
            .map_err(|error| too_large(error, pattern))?;
        Ok(Symbolic { pattern: pattern.clone(), nodes: equations.len(), order, lower, source, cholesky })
    }

    /// Number of equations.
    #[must_use]
    pub fn dof(&self) -> usize {
        self.order.len()
    }

    /// Entries of the factor, explicit zeros in supernodes included.
    #[must_use]
    pub fn factor_entries(&self) -> usize {
        self.cholesky.len_val()
    }

    /// Number of nodes.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.nodes
    }

    pub(super) fn check(&self, pattern: &Pattern) -> Result<(), EigenError> {
        if self.pattern == *pattern { Ok(()) } else { Err(EigenError::ForeignSymbolic) }
    }

    /// A pattern's values in elimination order: (entry of `lower`).
    pub(super) fn gather(&self, values: &[f64]) -> Vec<f64> {
        self.source.iter().map(|&entry| values[entry as usize]).collect()
    }

    /// One vector from the pattern's order into elimination order: (position).
    pub(super) fn permute_into(&self, vector: &[f64], permuted: &mut [f64]) {
        for (value, &equation) in permuted.iter_mut().zip(&self.order) {
            *value = vector[equation as usize];
        }
    }

    /// One vector from elimination order back into the pattern's order: (equation).
    pub(super) fn permute_back(&self, permuted: &[f64], vector: &mut [f64]) {
        for (&value, &equation) in permuted.iter().zip(&self.order) {
            vector[equation as usize] = value;
        }
    }
}

fn too_large(error: FaerError, pattern: &Pattern) -> EigenError {
    let what = match error {
        FaerError::OutOfMemory => "the factor (out of memory)",
        _ => "the factor",
    };
    EigenError::TooLarge { what, got: pattern.entries(), limit: i32::MAX as usize }
}

/// (position): the equation, by minimum degree on the graph whose vertices are nodes.
fn order_by_nodes(pattern: &Pattern, equations: &[Vec<u32>]) -> Result<Vec<u32>, EigenError> {
    let nodes = equations.len();
    let mut vertex = vec![0_u32; pattern.dof()];
    for (index, members) in equations.iter().enumerate() {
        for &equation in members {
            vertex[equation as usize] = index as u32;
        }
    }
    let mut starts = vec![0_u32];
    let mut rows: Vec<u32> = Vec::new();
    let mut seen = vec![u32::MAX; nodes];
    for (index, members) in equations.iter().enumerate() {
        for &equation in members {
            let column = pattern.column_starts[equation as usize]..pattern.column_starts[equation as usize + 1];
            for &row in &pattern.row_indices[column] {
                let other = vertex[row] as usize;
                if other != index && seen[other] != index as u32 {
                    seen[other] = index as u32;
                    rows.push(other as u32);
                }
            }
        }
        rows[starts[index] as usize..].sort_unstable();
        starts.push(rows.len() as u32);
    }
    let graph = SymbolicSparseColMatRef::new_checked(nodes, nodes, &starts, None, &rows);
    let mut forward = vec![0_u32; nodes];
    let mut inverse = vec![0_u32; nodes];
    let memory = amd::order_maybe_unsorted_scratch::<u32>(nodes, rows.len());
    let mut memory = MemBuffer::try_new(memory).map_err(|_| too_large(FaerError::OutOfMemory, pattern))?;
    amd::order_maybe_unsorted(&mut forward, &mut inverse, graph, amd::Control::default(), MemStack::new(&mut memory))
        .map_err(|error| too_large(error, pattern))?;
    Ok(forward.iter().flat_map(|&node| equations[node as usize].iter().copied()).collect())
}

/// (node, its equations), nodes in the order in which they first occur.
fn equations_by_node(pattern: &Pattern) -> Vec<Vec<u32>> {
    let mut by_label: Vec<(u32, u32)> =
        pattern.node_of_equation.iter().enumerate().map(|(equation, &node)| (node, equation as u32)).collect();
    by_label.sort_unstable();
    let mut equations: Vec<Vec<u32>> = Vec::new();
    for group in by_label.chunk_by(|a, b| a.0 == b.0) {
        equations.push(group.iter().map(|&(_, equation)| equation).collect());
    }
    equations.sort_unstable_by_key(|members| members[0]);
    equations
}

/// The pattern in elimination order as lower and as upper triangle, and where each entry of the lower one comes from.
fn permute(pattern: &Pattern, position: &[u32]) -> (SymbolicSparseColMat<u32>, SymbolicSparseColMat<u32>, Vec<u32>) {
    let dof = pattern.dof();
    let mut entries: Vec<(u32, u32, u32)> = Vec::with_capacity(pattern.entries());
    for (column, &place) in position.iter().enumerate() {
        for entry in pattern.column_starts[column]..pattern.column_starts[column + 1] {
            let other = position[pattern.row_indices[entry]];
            entries.push((place.min(other), place.max(other), entry as u32));
        }
    }
    let upper = compress(dof, entries.iter().map(|&(low, high, _)| (high, low)));
    entries.sort_unstable();
    let lower = compress(dof, entries.iter().map(|&(low, high, _)| (low, high)));
    (lower, upper, entries.iter().map(|&(_, _, entry)| entry).collect())
}

/// A pattern from (column, row) pairs; rows of a column come out in ascending order.
fn compress(dof: usize, pairs: impl Iterator<Item = (u32, u32)>) -> SymbolicSparseColMat<u32> {
    let mut pairs: Vec<(u32, u32)> = pairs.collect();
    pairs.sort_unstable();
    let mut starts = vec![0_u32; dof + 1];
    for &(column, _) in &pairs {
        starts[column as usize + 1] += 1;
    }
    for column in 0..dof {
        starts[column + 1] += starts[column];
    }
    let rows = pairs.into_iter().map(|(_, row)| row).collect();
    SymbolicSparseColMat::new_checked(dof, dof, starts, None, rows)
}
