//! Supernodes: what can be known of a factor from the pattern alone.

use super::fill::columns;
use super::halves::Halves;
use super::supernodes::Supernodes;
use super::{EigenError, Pattern, Reflection};

/// Symbolic factorisation of a pattern: the supernodes of the factor.
///
/// Made once per pattern and used for every set of values on it. Equations are eliminated in the order in which the pattern numbers them;
/// [`elimination_order`](super::elimination_order) finds one that fills little.
#[derive(Debug)]
pub struct Symbolic {
    pattern: Pattern,
    nodes: usize,
    pub(super) supernodes: Supernodes,
    halves: Option<Box<Halves>>,
}

impl Symbolic {
    /// Finds a pattern's supernodes.
    ///
    /// Cost: near linear in the factor's pattern.
    ///
    /// # Errors
    /// [`EigenError::Empty`], [`EigenError::Malformed`], [`EigenError::Length`] for a broken pattern, [`EigenError::TooLarge`] when the factor
    /// can't be addressed.
    pub fn new(pattern: &Pattern) -> Result<Symbolic, EigenError> {
        pattern.check()?;
        let sizes: Vec<usize> = pattern.node_of_equation.chunk_by(|a, b| a == b).map(<[u32]>::len).collect();
        let supernodes = Supernodes::new(&columns(later_nodes(pattern, &sizes)), &sizes);
        // Offsets are pointers' size, which in wasm is 32 bits.
        let (got, limit) = (supernodes.entries(), i32::MAX as usize);
        if got > limit {
            return Err(EigenError::TooLarge { what: "the factor", got, limit });
        }
        Ok(Symbolic { pattern: pattern.clone(), nodes: sizes.len(), supernodes, halves: None })
    }

    /// The same, ready for pencils that are their own image under `reflection`, given by their [half](Symbolic::half). A reflection that takes the
    /// pattern onto another one, or joins both sides past the mirror, is left aside.
    ///
    /// # Errors
    /// As for [`Symbolic::new`].
    pub fn mirrored(self, reflection: &Reflection) -> Result<Symbolic, EigenError> {
        let halves = Halves::new(&self.pattern, reflection)?.map(Box::new);
        Ok(Symbolic { halves, ..self })
    }

    /// The pattern of the half that says all of a mirrored pencil: what its own side adds to the entries of its own equations and of those in the
    /// mirror. [`lowest`](super::lowest()) and [`refine`](super::refine()) take a pencil on it for the whole one.
    #[must_use]
    pub fn half(&self) -> Option<&Pattern> {
        self.halves().map(|halves| halves.symbolic.pattern())
    }

    /// (entry of the half): the entries of the whole that it stands for, the second its image.
    #[must_use]
    pub fn half_entries(&self) -> &[[u32; 2]] {
        self.halves().map_or(&[], |halves| &halves.entries)
    }

    /// (entry): values of a mirrored pencil from those of its half.
    #[must_use]
    pub fn whole_values(&self, half: &[f64]) -> Vec<f64> {
        self.halves().map_or_else(Vec::new, |halves| halves.whole_values(half, self.pattern.entries()))
    }

    /// Number of equations.
    #[must_use]
    pub fn dof(&self) -> usize {
        self.pattern.dof()
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

    pub(super) fn pattern(&self) -> &Pattern {
        &self.pattern
    }

    pub(super) fn halves(&self) -> Option<&Halves> {
        self.halves.as_deref()
    }

    pub(super) fn check(&self, pattern: &Pattern) -> Result<(), EigenError> {
        if self.pattern == *pattern { Ok(()) } else { Err(EigenError::ForeignSymbolic) }
    }
}

/// (node): those after it that it shares an entry with. Nodes have `sizes` equations, one node's after the other's.
fn later_nodes(pattern: &Pattern, sizes: &[usize]) -> Vec<Vec<u32>> {
    let node: Vec<u32> =
        sizes.iter().enumerate().flat_map(|(node, &size)| std::iter::repeat_n(node as u32, size)).collect();
    let mut later = vec![Vec::new(); sizes.len()];
    for (bounds, &own) in pattern.column_starts.windows(2).zip(&node) {
        let list: &mut Vec<u32> = &mut later[own as usize];
        for other in pattern.row_indices[bounds[0]..bounds[1]].iter().map(|&row| node[row as usize]) {
            // Equations of a node come one after the other and mostly say the same.
            if other != own && list.last() != Some(&other) {
                list.push(other);
            }
        }
    }
    later
}
