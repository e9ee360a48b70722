//! Forward and back substitution through one supernode, for several vectors side by side.
//!
//! A front holds the supernode's own rows and then those below it. Columns of the factor are read from top to bottom, a few at a
//! time, which is how memory likes to be read: going along its rows took three times as long.

use pulp::Simd;

use super::lanes::add_multiple;

/// Solves L y = y on the first rows of `front`, as many as the `panel` (column, row) has columns, and takes what they make of y off the rows
/// below. `WIDTH` columns share what is read of the front.
#[inline(always)]
pub(super) fn forth<S: Simd, const REGISTERS: usize, const WIDTH: usize>(
    simd: S,
    panel: &[f64],
    front: &mut [[S::f64s; REGISTERS]],
) {
    let (rows, columns) = (front.len(), panel.len() / front.len());
    let mut column = 0;
    while column < columns {
        let (panel, front) = (&panel[column * rows + column..], &mut front[column..]);
        column += if columns - column < WIDTH {
            forth_together::<S, REGISTERS, 1>(simd, panel, rows, front)
        } else {
            forth_together::<S, REGISTERS, WIDTH>(simd, panel, rows, front)
        };
    }
}

/// The first `WIDTH` columns; returns how many these are.
#[inline(always)]
fn forth_together<S: Simd, const REGISTERS: usize, const WIDTH: usize>(
    simd: S,
    panel: &[f64],
    rows: usize,
    front: &mut [[S::f64s; REGISTERS]],
) -> usize {
    let columns: [&[f64]; WIDTH] = std::array::from_fn(|at| &panel[at * rows..][..front.len()]);
    let (own, rest) = front.split_at_mut(WIDTH);
    // -y, which is added everywhere.
    let mut less = [[simd.splat_f64s(0.0); REGISTERS]; WIDTH];
    for at in 0..WIDTH {
        let mut value = own[at];
        for (column, less) in columns.iter().zip(&less).take(at) {
            add_multiple(simd, &mut value, column[at], less);
        }
        let inverse = simd.splat_f64s(1.0 / columns[at][at]);
        own[at] = value.map(|value| simd.mul_f64s(value, inverse));
        less[at] = own[at].map(|value| simd.neg_f64s(value));
    }
    let columns = columns.map(|column| &column[WIDTH..][..rest.len()]);
    for (row, value) in rest.iter_mut().enumerate() {
        for (column, less) in columns.iter().zip(&less) {
            add_multiple(simd, value, column[row], less);
        }
    }
    WIDTH
}

/// Solves Lᵀ x = y on the first rows of `front`, where the rows below hold x already.
#[inline(always)]
pub(super) fn back<S: Simd, const REGISTERS: usize, const WIDTH: usize>(
    simd: S,
    panel: &[f64],
    front: &mut [[S::f64s; REGISTERS]],
) {
    let (rows, mut columns) = (front.len(), panel.len() / front.len());
    while columns > 0 {
        let width = if columns < WIDTH { 1 } else { WIDTH };
        columns -= width;
        let (panel, front) = (&panel[columns * rows + columns..], &mut front[columns..]);
        if width == 1 {
            back_together::<S, REGISTERS, 1>(simd, panel, rows, front);
        } else {
            back_together::<S, REGISTERS, WIDTH>(simd, panel, rows, front);
        }
    }
}

/// The first `WIDTH` columns, where all others are done.
#[inline(always)]
fn back_together<S: Simd, const REGISTERS: usize, const WIDTH: usize>(
    simd: S,
    panel: &[f64],
    rows: usize,
    front: &mut [[S::f64s; REGISTERS]],
) {
    let columns: [&[f64]; WIDTH] = std::array::from_fn(|at| &panel[at * rows..][..front.len()]);
    let (own, rest) = front.split_at_mut(WIDTH);
    let below = columns.map(|column| &column[WIDTH..][..rest.len()]);
    let mut sums = [[simd.splat_f64s(0.0); REGISTERS]; WIDTH];
    for (row, known) in rest.iter().enumerate() {
        for (sums, column) in sums.iter_mut().zip(&below) {
            add_multiple(simd, sums, column[row], known);
        }
    }
    for at in (0..WIDTH).rev() {
        let mut value = sums[at];
        for later in at + 1..WIDTH {
            add_multiple(simd, &mut value, columns[at][later], &own[later]);
        }
        let inverse = simd.splat_f64s(1.0 / columns[at][at]);
        for (own, value) in own[at].iter_mut().zip(value) {
            *own = simd.mul_f64s(simd.sub_f64s(*own, value), inverse);
        }
    }
}

#[cfg(test)]
mod tests {
    use pulp::{Scalar, Scalar128b, Scalar256b};

    use super::super::tiles::tests::number;
    use super::*;

    /// Registers of one number, of wasm's two and of four, with every remainder of the columns taken together.
    #[test]
    fn both_ways_satisfy_their_equations() {
        for columns in 1..10 {
            for below in [0, 1, 5] {
                equations::<_, 8, 2>(Scalar, columns, below);
                equations::<_, 4, 2>(Scalar128b, columns, below);
                equations::<_, 2, 4>(Scalar256b, columns, below);
            }
        }
    }

    fn equations<S: Simd, const REGISTERS: usize, const WIDTH: usize>(simd: S, columns: usize, below: usize) {
        let rows = columns + below;
        // A strong diagonal keeps the solution near its right side.
        let l = |row: usize, column: usize| number(column * rows + row) + if row == column { 3.0 } else { 0.0 };
        let panel: Vec<f64> = (0..columns * rows).map(|at| l(at % rows, at / rows)).collect();
        let start: Vec<[S::f64s; REGISTERS]> =
            (0..rows).map(|row| std::array::from_fn(|at| simd.splat_f64s(number(row * REGISTERS + at + 50)))).collect();
        let value = |front: &[[S::f64s; REGISTERS]], row: usize, at: usize| {
            simd.reduce_sum_f64s(front[row][at]) / S::F64_LANES as f64
        };
        let (mut y, mut x) = (start.clone(), start.clone());
        forth::<S, REGISTERS, WIDTH>(simd, &panel, &mut y);
        back::<S, REGISTERS, WIDTH>(simd, &panel, &mut x);
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
