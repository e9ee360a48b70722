//! Symmetric quadratic forms of nine degrees of freedom, summed up row by row.
//!
//! Energies are sums of strains times what they cost, both linear in the degrees of freedom: as products of matrices nearly half would be
//! said twice. Here it is written out over pairs of numbers, of which the compiler makes SIMD: a fifth fewer instructions for
//! an element.

use nalgebra::SMatrix;

/// (degree of freedom, quantity): quantities linear in nine degrees of freedom, each in one piece of memory.
pub(super) type PerDof<const R: usize> = SMatrix<f64, 9, R>;

/// Degrees of freedom, and one place more to make pairs of them.
const PLACES: usize = 10;

/// A form (column, row): the lower triangle, and a little above it that means nothing.
#[derive(Debug, Clone, Copy)]
pub(super) struct Form([[f64; PLACES]; 9]);

impl Form {
    pub(super) fn zero() -> Self {
        Self([[0.0; PLACES]; 9])
    }

    /// Adds `factor` abᵀ, which must be symmetric.
    #[inline(always)]
    pub(super) fn add<const R: usize>(&mut self, a: &PerDof<R>, b: &PerDof<R>, factor: f64) {
        let mut padded = [[0.0; PLACES]; R];
        for (padded, own) in padded.iter_mut().zip(&a.data.0) {
            for (to, from) in padded.iter_mut().zip(own) {
                *to = factor * from;
            }
        }
        self.add_columns::<0, 4, 0, R>(&padded, b);
        self.add_columns::<4, 9, 4, R>(&padded, b);
    }

    /// The columns from `FIRST` to `END`, from row `TOP` on.
    #[inline(always)]
    fn add_columns<const FIRST: usize, const END: usize, const TOP: usize, const R: usize>(
        &mut self,
        a: &[[f64; PLACES]; R],
        b: &PerDof<R>,
    ) {
        for column in FIRST..END {
            let sums = &mut self.0[column];
            for (a, b) in a.iter().zip(&b.data.0) {
                let by = b[column];
                for at in TOP..PLACES {
                    sums[at] += a[at] * by;
                }
            }
        }
    }

    /// One entry of the whole form.
    #[inline(always)]
    pub(super) fn entry(&self, row: usize, column: usize) -> f64 {
        if row < column { self.0[row][column] } else { self.0[column][row] }
    }

    /// All of it.
    pub(super) fn whole(&self) -> SMatrix<f64, 9, 9> {
        SMatrix::from_fn(|row, column| self.entry(row, column))
    }
}
