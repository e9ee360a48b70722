//! Ordering and supernodes: what can be known of a factor from the pattern alone.

use std::collections::BTreeMap;

use faer::sparse::SymbolicSparseColMat;

use super::local_fill::eliminate;
use super::supernodes::Supernodes;
use super::{EigenError, Pattern};

/// Symbolic factorisation of a pattern: a fill-reducing ordering and the supernodes of the factor.
///
/// Made once per pattern and used for every set of values on it. The ordering is by least fill over degree (`local_fill`) on the graph
/// of nodes, expanded so that a node's equations stay together: the graph is 36 times smaller for six equations a node, and supernodes
/// come out whole.
/// Cost: near linear in the pattern; about half of one numeric factorisation at 15 000 equations.
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
    pub(super) supernodes: Supernodes,
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
        let elimination = eliminate(graph_of_nodes(pattern, &equations))?;
        let of_node = |&node: &u32| &equations[node as usize];
        let order: Vec<u32> = elimination.order.iter().flat_map(of_node).copied().collect();
        let dof = pattern.dof();
        let mut position = vec![u32::MAX; dof];
        for (place, &equation) in order.iter().enumerate() {
            position[equation as usize] = place as u32;
        }
        assert!(
            order.len() == dof && position.iter().all(|&place| place != u32::MAX),
            "broken invariant: the fill-reducing ordering is no permutation"
        );
        let (lower, source) = permute(pattern, &position);
        let sizes: Vec<usize> = elimination.order.iter().map(|node| of_node(node).len()).collect();
        let supernodes = Supernodes::new(&elimination, &sizes);
        // Offsets are pointers' size, which in wasm is 32 bits.
        let (got, limit) = (supernodes.entries(), i32::MAX as usize);
        if got > limit {
            return Err(EigenError::TooLarge { what: "the factor", got, limit });
        }
        Ok(Symbolic { pattern: pattern.clone(), nodes: equations.len(), order, lower, source, supernodes })
    }

    /// Number of equations.
    #[must_use]
    pub fn dof(&self) -> usize {
        self.order.len()
    }

    /// Entries of the factor, explicit zeros in supernodes included.
    #[must_use]
    pub fn factor_entries(&self) -> usize {
        self.supernodes.entries()
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
    pub(super) fn gathered(&self, values: &[f64]) -> impl Iterator<Item = f64> {
        self.source.iter().map(|&entry| values[entry as usize])
    }

    /// One vector from the pattern's order into elimination order: (position).
    pub(super) fn permute_into(&self, vector: &[f64], permuted: &mut [f64]) {
        for (value, &equation) in permuted.iter_mut().zip(&self.order) {
            *value = vector[equation as usize];
        }
    }

    /// (vector, position): vectors (vector, equation) in elimination order.
    pub(super) fn permuted(&self, vectors: &[f64]) -> Vec<f64> {
        let mut permuted = vec![0.0; vectors.len()];
        for (from, to) in vectors.chunks_exact(self.dof()).zip(permuted.chunks_exact_mut(self.dof())) {
            self.permute_into(from, to);
        }
        permuted
    }

    /// (vector, equation): vectors (vector, position) back in the pattern's order.
    pub(super) fn permuted_back(&self, permuted: &[f64]) -> Vec<f64> {
        let mut vectors = vec![0.0; permuted.len()];
        for (from, to) in permuted.chunks_exact(self.dof()).zip(vectors.chunks_exact_mut(self.dof())) {
            self.permute_back(from, to);
        }
        vectors
    }

    /// One vector from elimination order back into the pattern's order: (equation).
    pub(super) fn permute_back(&self, permuted: &[f64], vector: &mut [f64]) {
        for (&value, &equation) in permuted.iter().zip(&self.order) {
            vector[equation as usize] = value;
        }
    }
}

/// (node): the others that it shares an entry with, ascending.
fn graph_of_nodes(pattern: &Pattern, equations: &[Vec<u32>]) -> Vec<Vec<u32>> {
    let mut node = vec![0_u32; pattern.dof()];
    for (index, members) in equations.iter().enumerate() {
        for &equation in members {
            node[equation as usize] = index as u32;
        }
    }
    let mut neighbours = vec![Vec::new(); equations.len()];
    for (column, &own) in node.iter().enumerate() {
        for &row in &pattern.row_indices[pattern.column_starts[column]..pattern.column_starts[column + 1]] {
            let other = node[row];
            // Equations of a node come one after the other and mostly say the same.
            if other != own && neighbours[own as usize].last() != Some(&other) {
                neighbours[own as usize].push(other);
                neighbours[other as usize].push(own);
            }
        }
    }
    for list in &mut neighbours {
        list.sort_unstable();
        list.dedup();
    }
    neighbours
}

/// (node, its equations), nodes in the order in which they first occur.
fn equations_by_node(pattern: &Pattern) -> Vec<Vec<u32>> {
    let mut vertices: BTreeMap<u32, usize> = BTreeMap::new();
    let mut equations: Vec<Vec<u32>> = Vec::new();
    for (equation, &label) in pattern.node_of_equation.iter().enumerate() {
        let vertex = *vertices.entry(label).or_insert(equations.len());
        if vertex == equations.len() {
            equations.push(Vec::new());
        }
        equations[vertex].push(equation as u32);
    }
    equations
}

/// The lower triangle of the pattern in elimination order, and where each of its entries comes from.
fn permute(pattern: &Pattern, position: &[u32]) -> (SymbolicSparseColMat<u32>, Vec<u32>) {
    let dof = pattern.dof();
    // (entry): the earlier and the later of its two equations.
    let (mut low, mut high) = (Vec::with_capacity(pattern.entries()), Vec::with_capacity(pattern.entries()));
    for (column, &place) in position.iter().enumerate() {
        for &row in &pattern.row_indices[pattern.column_starts[column]..pattern.column_starts[column + 1]] {
            let other = position[row];
            low.push(place.min(other));
            high.push(place.max(other));
        }
    }
    let (_, by_high) = in_columns(dof, &high, 0..high.len() as u32);
    let (starts, source) = in_columns(dof, &low, by_high);
    let rows = source.iter().map(|&entry| high[entry as usize]).collect();
    (SymbolicSparseColMat::new_checked(dof, dof, starts, None, rows), source)
}

/// (column + 1) where each column starts, and the entries column by column; within one they stay in the order given.
/// `columns` (entry) is each entry's column. Counting them takes one pass, where sorting would take twenty.
fn in_columns(dof: usize, columns: &[u32], entries: impl IntoIterator<Item = u32>) -> (Vec<u32>, Vec<u32>) {
    let mut starts = vec![0_u32; dof + 1];
    for &column in columns {
        starts[column as usize + 1] += 1;
    }
    for column in 0..dof {
        starts[column + 1] += starts[column];
    }
    let mut next = starts.clone();
    let mut placed = vec![0; columns.len()];
    for entry in entries {
        let next = &mut next[columns[entry as usize] as usize];
        placed[*next as usize] = entry;
        *next += 1;
    }
    (starts, placed)
}
