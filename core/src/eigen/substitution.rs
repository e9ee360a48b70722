//! Forward and back substitution through one supernode, for several vectors side by side.
//!
//! A front holds the supernode's own rows and then those below it. What is kept of the factor is read as it lies ([`strips`]).

use pulp::Simd;

use super::lanes::add_multiple;
use super::strips::{WIDE, strips};

/// Solves L y = y on the first rows of `front`, one for each of the `columns` that the panel `values` has in strips, and takes what they make
/// of y off the rows below.
#[inline(always)]
pub(super) fn forth<S: Simd, const REGISTERS: usize>(
    simd: S,
    values: &[f64],
    columns: usize,
    front: &mut [[S::f64s; REGISTERS]],
) {
    let mut values = values;
    for (first, width) in strips(columns) {
        let (strip, later) = values.split_at(width * (front.len() - first));
        values = later;
        if width == WIDE {
            forth_together::<S, REGISTERS, WIDE>(simd, strip, &mut front[first..]);
        } else {
            forth_together::<S, REGISTERS, 1>(simd, strip, &mut front[first..]);
        }
    }
}

/// One strip, from its diagonal down.
#[inline(always)]
fn forth_together<S: Simd, const REGISTERS: usize, const WIDTH: usize>(
    simd: S,
    strip: &[f64],
    front: &mut [[S::f64s; REGISTERS]],
) {
    let (diagonal, below) = strip.as_chunks::<WIDTH>().0.split_at(WIDTH);
    let (own, rest) = front.split_at_mut(WIDTH);
    // -y, which is added everywhere.
    let mut less = [[simd.splat_f64s(0.0); REGISTERS]; WIDTH];
    for (at, row) in diagonal.iter().enumerate() {
        let mut value = own[at];
        for (&entry, less) in row.iter().zip(&less).take(at) {
            add_multiple(simd, &mut value, entry, less);
        }
        let inverse = simd.splat_f64s(1.0 / row[at]);
        own[at] = value.map(|value| simd.mul_f64s(value, inverse));
        less[at] = own[at].map(|value| simd.neg_f64s(value));
    }
    for (row, value) in below.iter().zip(rest) {
        for (&entry, less) in row.iter().zip(&less) {
            add_multiple(simd, value, entry, less);
        }
    }
}

/// Solves Lᵀ x = y on the first rows of `front`, where the rows below hold x already.
#[inline(always)]
pub(super) fn back<S: Simd, const REGISTERS: usize>(
    simd: S,
    values: &[f64],
    columns: usize,
    front: &mut [[S::f64s; REGISTERS]],
) {
    let mut values = values;
    for (first, width) in strips(columns).rev() {
        let (earlier, strip) = values.split_at(values.len() - width * (front.len() - first));
        values = earlier;
        if width == WIDE {
            back_together::<S, REGISTERS, WIDE>(simd, strip, &mut front[first..]);
        } else {
            back_together::<S, REGISTERS, 1>(simd, strip, &mut front[first..]);
        }
    }
}

/// One strip, where all rows but its own are done.
#[inline(always)]
fn back_together<S: Simd, const REGISTERS: usize, const WIDTH: usize>(
    simd: S,
    strip: &[f64],
    front: &mut [[S::f64s; REGISTERS]],
) {
    let (diagonal, below) = strip.as_chunks::<WIDTH>().0.split_at(WIDTH);
    let (own, rest) = front.split_at_mut(WIDTH);
    let mut sums = [[simd.splat_f64s(0.0); REGISTERS]; WIDTH];
    for (row, known) in below.iter().zip(&*rest) {
        for (&entry, sums) in row.iter().zip(&mut sums) {
            add_multiple(simd, sums, entry, known);
        }
    }
    for at in (0..WIDTH).rev() {
        let mut value = sums[at];
        for later in at + 1..WIDTH {
            add_multiple(simd, &mut value, diagonal[later][at], &own[later]);
        }
        let inverse = simd.splat_f64s(1.0 / diagonal[at][at]);
        for (own, value) in own[at].iter_mut().zip(value) {
            *own = simd.mul_f64s(simd.sub_f64s(*own, value), inverse);
        }
    }
}

#[cfg(test)]
mod tests {
    use pulp::{Scalar, Scalar128b, Scalar256b};

    use super::super::strips::append;
    use super::super::tiles::tests::number;
    use super::*;

    /// Registers of one number, of wasm's two and of four, with every remainder of the columns taken together.
    #[test]
    fn both_ways_satisfy_their_equations() {
        for columns in 1..10 {
            for below in [0, 1, 5] {
                equations::<_, 4>(Scalar, columns, below);
                equations::<_, 2>(Scalar128b, columns, below);
                equations::<_, 1>(Scalar256b, columns, below);
            }
        }
    }

    fn equations<S: Simd, const REGISTERS: usize>(simd: S, columns: usize, below: usize) {
        let rows = columns + below;
        // A strong diagonal keeps the solution near its right side.
        let l = |row: usize, column: usize| number(column * rows + row) + if row == column { 3.0 } else { 0.0 };
        let panel: Vec<f64> = (0..columns * rows).map(|at| l(at % rows, at / rows)).collect();
        let mut values = Vec::new();
        append(&mut values, &panel, rows);
        let start: Vec<[S::f64s; REGISTERS]> =
            (0..rows).map(|row| std::array::from_fn(|at| simd.splat_f64s(number(row * REGISTERS + at + 50)))).collect();
        let value = |front: &[[S::f64s; REGISTERS]], row: usize, at: usize| {
            simd.reduce_sum_f64s(front[row][at]) / S::F64_LANES as f64
        };
        let (mut y, mut x) = (start.clone(), start.clone());
        forth(simd, &values, columns, &mut y);
        back(simd, &values, columns, &mut x);
        for at in 0..REGISTERS {
            for row in 0..rows {
                let made: f64 = (0..columns.min(row + 1)).map(|column| l(row, column) * value(&y, column, at)).sum();
                let kept = if row < columns { 0.0 } else { value(&y, row, at) };
                assert!((made + kept - value(&start, row, at)).abs() < 1e-13, "forth, {columns} columns, row {row}");
            }
            for column in 0..columns {
                let made: f64 = (column..rows).map(|row| l(row, column) * value(&x, row, at)).sum();
                assert!((made - value(&start, column, at)).abs() < 1e-13, "back, {columns} columns, column {column}");
            }
        }
    }
}
