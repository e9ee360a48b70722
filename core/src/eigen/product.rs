//! Products of a symmetric sparse matrix with several vectors at once.

use faer::sparse::SymbolicSparseColMatRef;
use pulp::Simd;

use super::lanes::{LANES, LaneKernel, Lanes, add_multiple, interleave, on_lanes, registers, registers_mut, separate};

/// A symmetric matrix held as diagonal and strict lower triangle, entries that are zero left out.
pub(super) struct SymmetricProduct {
    diagonal: Vec<f64>,
    /// (column + 1)
    starts: Vec<u32>,
    /// (entry)
    rows: Vec<u32>,
    /// (entry)
    values: Vec<f64>,
}

impl SymmetricProduct {
    /// From a lower triangle whose columns begin with the diagonal. A lumped mass shrinks to its diagonal here.
    pub(super) fn new(lower: SymbolicSparseColMatRef<'_, u32>, entries: &[f64]) -> SymmetricProduct {
        let dof = lower.ncols();
        let (column_starts, row_indices) = (lower.col_ptr(), lower.row_idx());
        let mut diagonal = Vec::with_capacity(dof);
        let mut starts = Vec::with_capacity(dof + 1);
        starts.push(0);
        let (mut rows, mut values) = (Vec::new(), Vec::new());
        for column in 0..dof {
            let (first, end) = (column_starts[column] as usize, column_starts[column + 1] as usize);
            diagonal.push(entries[first]);
            for entry in first + 1..end {
                if entries[entry] != 0.0 {
                    rows.push(row_indices[entry]);
                    values.push(entries[entry]);
                }
            }
            starts.push(rows.len() as u32);
        }
        SymmetricProduct { diagonal, starts, rows, values }
    }

    /// The same matrix with the magnitude of each entry.
    pub(super) fn magnitudes(&self) -> SymmetricProduct {
        let magnitudes = |values: &[f64]| values.iter().map(|value| value.abs()).collect();
        SymmetricProduct {
            diagonal: magnitudes(&self.diagonal),
            starts: self.starts.clone(),
            rows: self.rows.clone(),
            values: magnitudes(&self.values),
        }
    }

    /// A x for every column of x, both (column, dof). Cost: four flops an entry and column.
    pub(super) fn multiply(&self, x: &[f64]) -> Vec<f64> {
        let dof = self.diagonal.len();
        let mut product = vec![0.0; x.len()];
        if self.rows.is_empty() {
            // A lumped mass.
            for (x, y) in x.chunks_exact(dof).zip(product.chunks_exact_mut(dof)) {
                for ((y, x), diagonal) in y.iter_mut().zip(x).zip(&self.diagonal) {
                    *y = diagonal * x;
                }
            }
            return product;
        }
        let mut interleaved_x = vec![[0.0; LANES]; dof];
        let mut interleaved_y = vec![[0.0; LANES]; dof];
        for (x, y) in x.chunks(LANES * dof).zip(product.chunks_mut(LANES * dof)) {
            interleave(x, &mut interleaved_x);
            on_lanes(Kernel { matrix: self, x: &interleaved_x, y: &mut interleaved_y });
            separate(&interleaved_y, y);
        }
        product
    }
}

/// y = A x on interleaved vectors: (dof, lane).
struct Kernel<'a> {
    matrix: &'a SymmetricProduct,
    x: &'a [Lanes],
    y: &'a mut [Lanes],
}

impl LaneKernel for Kernel<'_> {
    #[inline(always)]
    fn run<S: Simd, const REGISTERS: usize>(self, simd: S) {
        let matrix = self.matrix;
        let (x, y) = (registers::<S, REGISTERS>(self.x), registers_mut::<S, REGISTERS>(self.y));
        for ((y, x), &diagonal) in y.iter_mut().zip(x).zip(&matrix.diagonal) {
            *y = [simd.splat_f64s(0.0); REGISTERS];
            add_multiple(simd, y, diagonal, x);
        }
        for (column, bounds) in matrix.starts.windows(2).enumerate() {
            let entries = bounds[0] as usize..bounds[1] as usize;
            let own = x[column];
            let mut sum = y[column];
            for (&row, &value) in matrix.rows[entries.clone()].iter().zip(&matrix.values[entries]) {
                add_multiple(simd, &mut sum, value, &x[row as usize]);
                add_multiple(simd, &mut y[row as usize], value, &own);
            }
            y[column] = sum;
        }
    }
}
