//! A symmetric sparse matrix, and its products with several vectors at once.

use std::borrow::Cow;

use pulp::Simd;

use super::Pattern;
use super::lanes::{
    LANES, LaneKernel, Lanes, add_multiple, append_separated, interleaved, on_lanes, registers, registers_mut,
};

/// A symmetric matrix held as its lower triangle by columns, each beginning with the diagonal.
pub(super) struct Symmetric<'a> {
    /// (column + 1)
    starts: Cow<'a, [usize]>,
    /// (entry), ascending in each column
    rows: Cow<'a, [u32]>,
    /// (entry)
    values: Cow<'a, [f64]>,
}

impl<'a> Symmetric<'a> {
    /// With `values` on a `pattern`.
    pub(super) fn new(pattern: &'a Pattern, values: impl Into<Cow<'a, [f64]>>) -> Symmetric<'a> {
        let Pattern { column_starts, row_indices, .. } = pattern;
        Symmetric { starts: column_starts.into(), rows: row_indices.as_slice().into(), values: values.into() }
    }

    /// The same without the entries off the diagonal that are zero. A lumped mass shrinks to its diagonal here.
    pub(super) fn without_zeros(pattern: &Pattern, values: &[f64]) -> Symmetric<'static> {
        let mut starts = Vec::with_capacity(pattern.column_starts.len());
        starts.push(0);
        let (mut rows, mut kept) = (Vec::new(), Vec::new());
        for bounds in pattern.column_starts.windows(2) {
            let entries = bounds[0]..bounds[1];
            for (at, (&row, &value)) in pattern.row_indices[entries.clone()].iter().zip(&values[entries]).enumerate() {
                if at == 0 || value != 0.0 {
                    rows.push(row);
                    kept.push(value);
                }
            }
            starts.push(rows.len());
        }
        Symmetric { starts: starts.into(), rows: rows.into(), values: kept.into() }
    }

    /// The same with zeros in the rows and columns of some equations.
    pub(super) fn without(&self, left_out: impl Fn(usize) -> bool) -> Symmetric<'static> {
        let (starts, rows, mut values) = (self.starts.to_vec(), self.rows.to_vec(), self.values.to_vec());
        for (column, bounds) in starts.windows(2).enumerate() {
            let all = left_out(column);
            for at in bounds[0]..bounds[1] {
                if all || left_out(rows[at] as usize) {
                    values[at] = 0.0;
                }
            }
        }
        Symmetric { starts: starts.into(), rows: rows.into(), values: values.into() }
    }

    /// The rows of a column, from the diagonal on, and what stands there.
    #[inline(always)]
    pub(super) fn column(&self, column: usize) -> impl Iterator<Item = (u32, f64)> {
        let entries = self.starts[column]..self.starts[column + 1];
        self.rows[entries.clone()].iter().copied().zip(self.values[entries].iter().copied())
    }

    /// (equation)
    pub(super) fn diagonal(&self) -> impl Iterator<Item = f64> {
        self.starts[..self.starts.len() - 1].iter().map(|&start| self.values[start])
    }

    /// The same matrix with the magnitude of each entry.
    pub(super) fn magnitudes(&self) -> Symmetric<'_> {
        let values = self.values.iter().map(|value| value.abs()).collect();
        Symmetric { starts: (&*self.starts).into(), rows: (&*self.rows).into(), values }
    }

    /// A x for every column of x, both (column, dof). Cost: four flops an entry and column.
    pub(super) fn multiply(&self, x: &[f64]) -> Vec<f64> {
        let dof = self.starts.len() - 1;
        if self.values.len() == dof {
            // A lumped mass.
            return x
                .chunks_exact(dof)
                .flat_map(|x| x.iter().zip(&*self.values))
                .map(|(x, diagonal)| diagonal * x)
                .collect();
        }
        let mut product = Vec::with_capacity(x.len());
        let mut y = vec![[0.0; LANES]; dof];
        for group in x.chunks(LANES * dof) {
            on_lanes(Kernel { matrix: self, x: &interleaved(group, dof), y: &mut y });
            append_separated(&mut product, &y, dof, group.len() / dof);
        }
        product
    }
}

/// y = A x on interleaved vectors: (dof, lane).
struct Kernel<'a> {
    matrix: &'a Symmetric<'a>,
    x: &'a [Lanes],
    y: &'a mut [Lanes],
}

impl LaneKernel for Kernel<'_> {
    #[inline(always)]
    fn run<S: Simd, const REGISTERS: usize>(self, simd: S) {
        let matrix = self.matrix;
        let (x, y) = (registers::<S, REGISTERS>(self.x), registers_mut::<S, REGISTERS>(self.y));
        y.fill([simd.splat_f64s(0.0); REGISTERS]);
        for (column, bounds) in matrix.starts.windows(2).enumerate() {
            let (diagonal, entries) = (bounds[0], bounds[0] + 1..bounds[1]);
            let own = x[column];
            let mut sum = y[column];
            add_multiple(simd, &mut sum, matrix.values[diagonal], &own);
            for (&row, &value) in matrix.rows[entries.clone()].iter().zip(&matrix.values[entries]) {
                add_multiple(simd, &mut sum, value, &x[row as usize]);
                add_multiple(simd, &mut y[row as usize], value, &own);
            }
            y[column] = sum;
        }
    }
}
