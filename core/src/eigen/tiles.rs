//! Dense products in tiles that fit the registers, in plain loops that the compiler turns into SIMD.
//!
//! All matrices are (column, row) with a stride between columns. A tile of 4 x 4 takes eight of the sixteen 128-bit registers of wasm's
//! usual hosts, so that none is spilled; wider tiles were slower there.

use super::lanes::{LANES, Lanes};

/// Side of a tile.
const TILE: usize = 4;

/// The columns of a matrix from one of its rows on, and the stride between them.
#[derive(Clone, Copy)]
pub(super) struct Columns<'a> {
    pub(super) entries: &'a [f64],
    pub(super) stride: usize,
}

impl<'a> Columns<'a> {
    /// The same from `row` rows further down.
    fn lower(self, row: usize) -> Columns<'a> {
        Columns { entries: &self.entries[row..], ..self }
    }
}

/// C -= A Bᵀ, with C of `rows` x `columns` and `stride`, A of `rows` x `depth` and B of `columns` x `depth`.
#[inline(always)]
pub(super) fn subtract_product(
    c: &mut [f64],
    stride: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    [rows, columns, depth]: [usize; 3],
) {
    let mut column = 0;
    while column < columns {
        let width = TILE.min(columns - column);
        tile_column(&mut c[column * stride..], stride, a, b.lower(column), [rows, width, depth]);
        column += width;
    }
}

/// The lower triangle of C -= A Bᵀ, with C of `size` x `size` and symmetric, A and B of `size` x `depth`; a little of what lies
/// above the diagonal is changed too.
#[inline(always)]
pub(super) fn subtract_below(c: &mut [f64], size: usize, a: Columns<'_>, b: Columns<'_>, depth: usize) {
    let mut column = 0;
    while column < size {
        let width = TILE.min(size - column);
        let (a, b) = (a.lower(column), b.lower(column));
        tile_column(&mut c[column * size + column..], size, a, b, [size - column, width, depth]);
        column += width;
    }
}

/// [`subtract_product`] of at most [`TILE`] columns.
///
/// Natively it must be part of what [`widest`](super::widest) compiles for the machine; in wasm, once for all that use it, it
/// keeps the module small.
#[cfg_attr(not(target_arch = "wasm32"), inline(always))]
#[cfg_attr(target_arch = "wasm32", inline(never))]
fn tile_column(c: &mut [f64], stride: usize, a: Columns<'_>, b: Columns<'_>, [rows, width, depth]: [usize; 3]) {
    let mut row = 0;
    while row < rows {
        let height = rows - row;
        let (c, a) = (&mut c[row..], a.lower(row));
        row += match (height, width) {
            (TILE.., TILE) => tile::<TILE, TILE>(c, stride, a, b, depth),
            (2.., TILE) => tile::<2, TILE>(c, stride, a, b, depth),
            (_, TILE) => tile::<1, TILE>(c, stride, a, b, depth),
            (TILE.., 2) => tile::<TILE, 2>(c, stride, a, b, depth),
            (2.., 2) => tile::<2, 2>(c, stride, a, b, depth),
            _ => {
                for column in 0..width {
                    tile::<1, 1>(&mut c[column * stride..], stride, a, b.lower(column), depth);
                }
                1
            }
        };
    }
}

/// One tile; returns its height.
#[inline(always)]
fn tile<const HEIGHT: usize, const WIDTH: usize>(
    c: &mut [f64],
    stride: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    depth: usize,
) -> usize {
    let mut sums = [[0.0; HEIGHT]; WIDTH];
    for (a, b) in a.entries.chunks(a.stride).zip(b.entries.chunks(b.stride)).take(depth) {
        // A tile lies within its matrices.
        let (Some(a), Some(b)) = (a.first_chunk::<HEIGHT>(), b.first_chunk::<WIDTH>()) else { break };
        for (sums, b) in sums.iter_mut().zip(b) {
            for (sum, a) in sums.iter_mut().zip(a) {
                *sum += a * b;
            }
        }
    }
    for (c, sums) in c.chunks_mut(stride).zip(&sums) {
        for (c, sum) in c.iter_mut().zip(sums) {
            *c -= sum;
        }
    }
    HEIGHT
}

/// Rows multiplied in one register: what wasm's 128 bits hold, and what most other machines do.
const WIDE: usize = if cfg!(target_arch = "wasm32") { 2 } else { 4 };

/// Rows whose columns stay in the nearest cache while they are multiplied with each other.
const STAY: usize = 256;

/// G += Aᵀ B, with A of `rows` x a, B of `rows` x b, both without gaps between columns, and G (b, a).
#[inline(always)]
pub(super) fn add_inner_products(gram: &mut [f64], a: &[f64], b: &[f64], rows: usize) {
    let a_columns = a.len() / rows;
    for first in (0..rows).step_by(STAY) {
        let these = first..rows.min(first + STAY);
        let part = |column: usize| column * rows + these.start..column * rows + these.end;
        let mut column = 0;
        while column < b.len() / rows {
            let width = 2.min(b.len() / rows - column);
            let b = [0, width - 1].map(|at| &b[part(column + at)]);
            let mut row = 0;
            while row < a_columns {
                let height = 4.min(a_columns - row);
                let a = [0, 1, 2, 3].map(|at: usize| &a[part(row + at.min(height - 1))]);
                let sums = dots(a, b);
                for at in 0..width {
                    for (gram, sum) in gram[(column + at) * a_columns + row..][..height].iter_mut().zip(sums[at]) {
                        *gram += sum;
                    }
                }
                row += height;
            }
            column += width;
        }
    }
}

/// (b, a): the inner products of four columns with two.
#[inline(always)]
fn dots(a: [&[f64]; 4], b: [&[f64]; 2]) -> [[f64; 4]; 2] {
    let mut sums = [[[0.0; WIDE]; 4]; 2];
    let (a_wide, b_wide) = (a.map(|column| column.as_chunks::<WIDE>()), b.map(|column| column.as_chunks::<WIDE>()));
    for at in 0..b_wide[0].0.len() {
        let (a, b) = (a_wide.map(|(wide, _)| wide[at]), b_wide.map(|(wide, _)| wide[at]));
        for (sums, b) in sums.iter_mut().zip(b) {
            for (sums, a) in sums.iter_mut().zip(a) {
                for ((sum, a), b) in sums.iter_mut().zip(a).zip(b) {
                    *sum += a * b;
                }
            }
        }
    }
    [0, 1].map(|column| {
        [0, 1, 2, 3].map(|row| {
            let rest = a_wide[row].1.iter().zip(b_wide[column].1).map(|(a, b)| a * b);
            sums[column][row].iter().sum::<f64>() + rest.sum::<f64>()
        })
    })
}

/// Solves L y = y on a supernode's own rows, where `panel` (column, row of `rows`) holds L and the rows below it, and sets `below` to what
/// those make of y.
#[inline(always)]
pub(super) fn substitute_forth(panel: &[f64], rows: usize, own: &mut [Lanes], below: &mut [Lanes]) {
    let columns = own.len();
    for (column, panel) in panel.chunks_exact(rows).enumerate() {
        let (done, rest) = own.split_at_mut(column + 1);
        let known = &mut done[column];
        let inverse = 1.0 / panel[column];
        known.iter_mut().for_each(|value| *value *= inverse);
        for (value, factor) in rest.iter_mut().zip(&panel[column + 1..columns]) {
            for (value, known) in value.iter_mut().zip(&*known) {
                *value -= factor * known;
            }
        }
    }
    let (pairs, last) = below.as_chunks_mut::<2>();
    for (pair, sums) in pairs.iter_mut().enumerate() {
        for (known, panel) in own.iter().zip(panel.chunks_exact(rows)) {
            let factors = [panel[columns + 2 * pair], panel[columns + 2 * pair + 1]];
            for (sums, factor) in sums.iter_mut().zip(factors) {
                for (sum, known) in sums.iter_mut().zip(known) {
                    *sum += factor * known;
                }
            }
        }
    }
    if let [sums] = last {
        for (known, panel) in own.iter().zip(panel.chunks_exact(rows)) {
            for (sum, known) in sums.iter_mut().zip(known) {
                *sum += panel[rows - 1] * known;
            }
        }
    }
}

/// Solves Lᵀ x = y on a supernode's own rows, where `below` is x at the rows below.
#[inline(always)]
pub(super) fn substitute_back(panel: &[f64], rows: usize, own: &mut [Lanes], below: &[Lanes]) {
    let columns = own.len();
    let mut column = columns;
    while column > 0 {
        // Two columns share what they read of the rows below.
        let width = 2.min(column);
        column -= width;
        let mut sums = [[0.0; LANES]; 2];
        let factors = |at: usize| &panel[(column + at) * rows + columns..(column + at + 1) * rows];
        for ((known, first), second) in below.iter().zip(factors(0)).zip(factors(width - 1)) {
            for (sums, factor) in sums.iter_mut().zip([first, second]) {
                for (sum, known) in sums.iter_mut().zip(known) {
                    *sum += factor * known;
                }
            }
        }
        for at in (0..width).rev() {
            let panel = &panel[(column + at) * rows..][..columns];
            let (rest, done) = own.split_at_mut(column + at + 1);
            let mut sums = sums[at];
            for (known, factor) in done.iter().zip(&panel[column + at + 1..]) {
                for (sum, known) in sums.iter_mut().zip(known) {
                    *sum += factor * known;
                }
            }
            let inverse = 1.0 / panel[column + at];
            for (value, sum) in rest[column + at].iter_mut().zip(sums) {
                *value = (*value - sum) * inverse;
            }
        }
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// Numbers without a pattern that a product could hide behind.
    pub(in super::super) fn number(at: usize) -> f64 {
        (at as f64 * 0.618_034).fract() - 0.5
    }

    /// The definition, written out, over sizes with every remainder of a tile.
    #[test]
    fn products_are_those_of_the_definition() {
        for rows in 1..11 {
            for columns in 1..=rows {
                for depth in 0..6 {
                    let (stride, stride_ab) = (rows + 2, rows + 3);
                    let a: Vec<f64> = (0..stride_ab * depth.max(1)).map(number).collect();
                    let before: Vec<f64> = (0..stride * columns).map(|at| number(at + 77)).collect();
                    let mut c = before.clone();
                    let of = |entries| Columns { entries, stride: stride_ab };
                    subtract_product(&mut c, stride, of(&a), of(&a[1..]), [rows, columns, depth]);
                    for column in 0..columns {
                        for row in 0..stride {
                            let sum: f64 =
                                (0..depth).map(|k| a[k * stride_ab + row] * a[k * stride_ab + 1 + column]).sum();
                            let at = column * stride + row;
                            let expected = if row < rows { before[at] - sum } else { before[at] };
                            assert!((c[at] - expected).abs() < 1e-14, "{rows} {columns} {depth}");
                        }
                    }
                    let mut lower = vec![0.0; rows * rows];
                    subtract_below(&mut lower, rows, of(&a), of(&a), depth);
                    for column in 0..rows {
                        for row in column..rows {
                            let sum: f64 = (0..depth).map(|k| a[k * stride_ab + row] * a[k * stride_ab + column]).sum();
                            assert!((lower[column * rows + row] + sum).abs() < 1e-14, "{rows} {depth}");
                        }
                    }
                }
            }
        }
    }
}
