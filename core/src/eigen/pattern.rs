//! The sparsity that K and M share.

use std::sync::Arc;

use super::EigenError;

/// Lower triangle, diagonal included, of a symmetric sparsity pattern, compressed by columns.
///
/// The order of the equations is that of their elimination ([`elimination_order`](super::elimination_order)).
///
/// Promises, checked by [`Symbolic::new`](super::Symbolic::new): `column_starts` has one entry more than there are equations, starts
/// at zero and never falls; in each column the rows ascend strictly and the first is the diagonal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pattern {
    /// (column + 1): where each column starts in `row_indices`.
    pub column_starts: Vec<usize>,
    /// (entry): the row of each entry, at or below the diagonal. Shared, so that a copy is known to be the same without a look
    /// (an `Arc` of what is sized and `Eq` compares places first; of a slice it does not).
    pub row_indices: Arc<Vec<u32>>,
    /// (equation): which node it belongs to; those of a node come one after the other. Any numbers do; number the nodes by equation if
    /// nothing is known.
    pub node_of_equation: Vec<u32>,
}

impl Pattern {
    /// Number of equations.
    #[must_use]
    pub fn dof(&self) -> usize {
        self.column_starts.len().saturating_sub(1)
    }

    /// Number of stored entries.
    #[must_use]
    pub fn entries(&self) -> usize {
        self.row_indices.len()
    }

    /// xᵀAx for the matrix with `values` (entry) here and the same above the diagonal; `x` (equation).
    #[must_use]
    pub fn quadratic(&self, values: &[f64], x: &[f64]) -> f64 {
        let mut sum = 0.0;
        for (column, own) in x.iter().enumerate() {
            let stored = self.column_starts[column]..self.column_starts[column + 1];
            for (&row, value) in self.row_indices[stored.clone()].iter().zip(&values[stored]) {
                let both = if row as usize == column { 1.0 } else { 2.0 };
                sum += both * value * x[row as usize] * own;
            }
        }
        sum
    }

    /// Checks every promise of the type.
    pub(super) fn check(&self) -> Result<(), EigenError> {
        let dof = self.dof();
        if dof == 0 {
            return Err(EigenError::Empty);
        }
        if self.node_of_equation.len() != dof {
            let got = self.node_of_equation.len();
            return Err(EigenError::Length { what: "node_of_equation", got, wanted: dof });
        }
        if self.column_starts[0] != 0 || self.column_starts[dof] != self.row_indices.len() {
            return Err(EigenError::Malformed {
                equation: 0,
                what: "column_starts must run from 0 to the number of entries",
            });
        }
        for equation in 0..dof {
            let broken = |what| Err(EigenError::Malformed { equation, what });
            let (start, end) = (self.column_starts[equation], self.column_starts[equation + 1]);
            if start > end || end > self.row_indices.len() {
                return broken("column_starts must not fall");
            }
            let rows = &self.row_indices[start..end];
            if rows.first().is_none_or(|&row| row as usize != equation) {
                return broken("each column must begin with its diagonal");
            }
            if rows.windows(2).any(|pair| pair[0] >= pair[1]) {
                return broken("rows must ascend and occur once");
            }
            if rows.last().is_some_and(|&row| row as usize >= dof) {
                return broken("a row lies outside the matrix");
            }
        }
        // Factor and product index with 32 bits, half the memory traffic of 64.
        let limit = i32::MAX as usize / 2;
        if self.row_indices.len() > limit {
            return Err(EigenError::TooLarge { what: "the pattern", got: self.row_indices.len(), limit });
        }
        Ok(())
    }
}
