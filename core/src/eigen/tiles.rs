//! Dense products in tiles that fit the registers.
//!
//! All matrices are (column, row) with a stride between columns. A tile is two registers high and four columns wide: with what feeds it,
//! that takes eleven of the sixteen registers that wasm's usual hosts and AVX2 have; higher and wider ones were slower.
//!
//! The registers are written out, by way of pulp: of plain loops the compiler made scalar code whenever they were put into a larger
//! function.

use pulp::{Scalar, Simd, bytemuck};

/// Registers in a tile's height.
const HIGH: usize = 2;

/// Columns of a tile.
const WIDE: usize = 4;

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

/// Rows of A that stay in the nearest cache while all columns use them.
const STAY: usize = 32;

/// C -= A Bᵀ, with C of `rows` x `columns` and `stride`, A of `rows` x `depth` and B of `columns` x `depth`.
#[inline(always)]
pub(super) fn subtract_product<S: Simd>(
    simd: S,
    c: &mut [f64],
    stride: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    [rows, columns, depth]: [usize; 3],
) {
    for row in (0..rows).step_by(STAY) {
        let height = STAY.min(rows - row);
        for column in (0..columns).step_by(WIDE) {
            let sizes = [height, WIDE.min(columns - column), depth];
            tile_column(simd, &mut c[column * stride + row..], stride, a.lower(row), b.lower(column), sizes);
        }
    }
}

/// The lower triangle of C -= A Bᵀ, with C of `size` x `size` and symmetric, A and B of `size` x `depth`; a little of what lies
/// above the diagonal is changed too.
#[inline(always)]
pub(super) fn subtract_below<S: Simd>(
    simd: S,
    c: &mut [f64],
    size: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    depth: usize,
) {
    for row in (0..size).step_by(STAY) {
        let end = size.min(row + STAY);
        for column in (0..end).step_by(WIDE) {
            let first = row.max(column);
            let sizes = [end - first, WIDE.min(size - column), depth];
            tile_column(simd, &mut c[column * size + first..], size, a.lower(first), b.lower(column), sizes);
        }
    }
}

/// [`subtract_product`] of at most [`WIDE`] columns.
///
/// Natively it must be part of what [`widest`](super::widest) compiles for the machine; in wasm, once for all that use it, it
/// keeps the module small.
#[cfg_attr(not(target_arch = "wasm32"), inline(always))]
#[cfg_attr(target_arch = "wasm32", inline(never))]
fn tile_column<S: Simd>(
    simd: S,
    c: &mut [f64],
    stride: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    [rows, width, depth]: [usize; 3],
) {
    if width == WIDE {
        return tiles::<S, WIDE>(simd, c, stride, a, b, [rows, depth]);
    }
    for column in 0..width {
        tiles::<S, 1>(simd, &mut c[column * stride..], stride, a, b.lower(column), [rows, depth]);
    }
}

/// One column of tiles. The last one overlaps the one before it and leaves alone what that has done; where there are fewer rows than
/// a tile's, they go one by one.
#[inline(always)]
fn tiles<S: Simd, const WIDTH: usize>(
    simd: S,
    c: &mut [f64],
    stride: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    [rows, depth]: [usize; 2],
) {
    let height = HIGH * S::F64_LANES;
    let mut row = 0;
    while row < rows {
        if rows < height {
            tile::<Scalar, 1, WIDTH>(Scalar, &mut c[row..], stride, a.lower(row), b, [depth, 0]);
            row += 1;
        } else {
            let first = row.min(rows - height);
            tile::<S, HIGH, WIDTH>(simd, &mut c[first..], stride, a.lower(first), b, [depth, row - first]);
            row = first + height;
        }
    }
}

/// One tile, whose first `done` rows are left as they are.
#[inline(always)]
fn tile<S: Simd, const HEIGHT: usize, const WIDTH: usize>(
    simd: S,
    c: &mut [f64],
    stride: usize,
    a: Columns<'_>,
    b: Columns<'_>,
    [depth, done]: [usize; 2],
) {
    let mut sums = [[simd.splat_f64s(0.0); HEIGHT]; WIDTH];
    for (a, b) in a.entries.chunks(a.stride).zip(b.entries.chunks(b.stride)).take(depth) {
        // A tile lies within its matrices.
        let (Some(a), Some(b)) = (S::as_simd_f64s(a).0.first_chunk::<HEIGHT>(), b.first_chunk::<WIDTH>()) else {
            break;
        };
        for (sums, &b) in sums.iter_mut().zip(b) {
            let b = simd.splat_f64s(b);
            for (sum, &a) in sums.iter_mut().zip(a) {
                *sum = simd.mul_add_e_f64s(a, b, *sum);
            }
        }
    }
    for (c, sums) in c.chunks_mut(stride).zip(&sums) {
        if done == 0 {
            for (c, &sum) in S::as_mut_simd_f64s(c).0.iter_mut().zip(sums) {
                *c = simd.sub_f64s(*c, sum);
            }
        } else {
            for (c, sum) in c.iter_mut().zip(bytemuck::cast_slice::<_, f64>(sums)).skip(done) {
                *c -= sum;
            }
        }
    }
}

/// Rows whose columns stay in the nearest cache while they are multiplied with each other.
const STAY_BY_FEW: usize = 256;

/// G += Aᵀ B, with A of `rows` x a, B of `rows` x b, both without gaps between columns, and G (b, a); of a `symmetric` G little more than
/// the part with a at least b.
#[inline(always)]
pub(super) fn add_inner_products<S: Simd>(
    simd: S,
    gram: &mut [f64],
    a: &[f64],
    b: &[f64],
    rows: usize,
    symmetric: bool,
) {
    let (a_columns, b_columns) = (a.len() / rows, b.len() / rows);
    for first in (0..rows).step_by(STAY_BY_FEW) {
        let these = first..rows.min(first + STAY_BY_FEW);
        let part = |column: usize| column * rows + these.start..column * rows + these.end;
        for row in (0..a_columns).step_by(4) {
            let height = 4.min(a_columns - row);
            let a = four(row, height).map(|row| &a[part(row)]);
            let end = if symmetric { b_columns.min(row + height) } else { b_columns };
            for column in (0..end).step_by(2) {
                let width = 2.min(b_columns - column);
                let b = [0, width - 1].map(|at| &b[part(column + at)]);
                let sums = dots(simd, a, b);
                for at in 0..width {
                    for (gram, sum) in gram[(column + at) * a_columns + row..][..height].iter_mut().zip(sums[at]) {
                        *gram += sum;
                    }
                }
            }
        }
    }
}

/// The four places from `first` on, of which there are only so many; the last stands for those that aren't there.
#[inline(always)]
fn four(first: usize, count: usize) -> [usize; 4] {
    [0, 1, 2, 3].map(|at: usize| first + at.min(count - 1))
}

/// B += A C, with A of `rows` x a, B of `rows` x b, both without gaps between columns, and C (b, a).
#[inline(always)]
pub(super) fn add_multiples<S: Simd>(simd: S, b: &mut [f64], a: &[f64], c: &[f64], rows: usize) {
    let (a_columns, b_columns) = (a.len() / rows, b.len() / rows);
    for first in (0..rows).step_by(STAY_BY_FEW) {
        let these = first..rows.min(first + STAY_BY_FEW);
        let part = |column: usize| column * rows + these.start..column * rows + these.end;
        for row in (0..a_columns).step_by(4) {
            let height = 4.min(a_columns - row);
            let a = four(row, height).map(|row| &a[part(row)]);
            let factors = |column: usize| -> [f64; 4] {
                let own = &c[column * a_columns + row..][..height];
                [0, 1, 2, 3].map(|at| own.get(at).copied().unwrap_or(0.0))
            };
            for column in (0..b_columns).step_by(2) {
                let (one, other) = b[column * rows..].split_at_mut(rows);
                let one = &mut one[these.clone()];
                if other.is_empty() {
                    add_four(simd, [one], a, [factors(column)]);
                } else {
                    add_four(simd, [one, &mut other[these.clone()]], a, [factors(column), factors(column + 1)]);
                }
            }
        }
    }
}

/// Adds to each column of `b` four columns by its factors.
#[inline(always)]
fn add_four<S: Simd, const WIDTH: usize>(simd: S, b: [&mut [f64]; WIDTH], a: [&[f64]; 4], factors: [[f64; 4]; WIDTH]) {
    let a = a.map(S::as_simd_f64s);
    let mut b = b.map(S::as_mut_simd_f64s);
    let wide = factors.map(|own| own.map(|factor| simd.splat_f64s(factor)));
    for at in 0..a[0].0.len() {
        let a = a.map(|(wide, _)| wide[at]);
        for ((b, _), factors) in b.iter_mut().zip(&wide) {
            for (a, &factor) in a.into_iter().zip(factors) {
                b[at] = simd.mul_add_e_f64s(a, factor, b[at]);
            }
        }
    }
    for at in 0..a[0].1.len() {
        for ((_, b), factors) in b.iter_mut().zip(&factors) {
            b[at] += a.iter().zip(factors).map(|((_, a), factor)| a[at] * factor).sum::<f64>();
        }
    }
}

/// (b, a): the inner products of four columns with two.
#[inline(always)]
fn dots<S: Simd>(simd: S, a: [&[f64]; 4], b: [&[f64]; 2]) -> [[f64; 4]; 2] {
    let mut sums = [[simd.splat_f64s(0.0); 4]; 2];
    let (a_wide, b_wide) = (a.map(S::as_simd_f64s), b.map(S::as_simd_f64s));
    for at in 0..b_wide[0].0.len() {
        let (a, b) = (a_wide.map(|(wide, _)| wide[at]), b_wide.map(|(wide, _)| wide[at]));
        for (sums, b) in sums.iter_mut().zip(b) {
            for (sum, a) in sums.iter_mut().zip(a) {
                *sum = simd.mul_add_e_f64s(a, b, *sum);
            }
        }
    }
    [0, 1].map(|column| {
        [0, 1, 2, 3].map(|row| {
            let rest = a_wide[row].1.iter().zip(b_wide[column].1).map(|(a, b)| a * b);
            simd.reduce_sum_f64s(sums[column][row]) + rest.sum::<f64>()
        })
    })
}

#[cfg(test)]
pub(super) mod tests {
    use pulp::{Scalar, Scalar128b, Scalar256b, Simd, WithSimd};

    use super::super::widest::widest;
    use super::*;

    /// Numbers without a pattern that a product could hide behind.
    pub(in super::super) fn number(at: usize) -> f64 {
        (at as f64 * 0.618_034).fract() - 0.5
    }

    /// Registers of one number, of wasm's two, of four, and whatever this machine has.
    #[test]
    fn products_are_those_of_the_definition() {
        Scalar.vectorize(Definition);
        Scalar128b.vectorize(Definition);
        Scalar256b.vectorize(Definition);
        widest(Definition);
    }

    /// The definition, written out, over sizes with every remainder of a tile.
    struct Definition;

    impl WithSimd for Definition {
        type Output = ();

        fn with_simd<S: Simd>(self, simd: S) {
            for rows in 1..20 {
                for columns in 1..=rows.min(7) {
                    for depth in 0..6 {
                        against_definition(simd, rows, columns, depth);
                    }
                }
            }
        }
    }

    fn against_definition<S: Simd>(simd: S, rows: usize, columns: usize, depth: usize) {
        let (stride, stride_ab) = (rows + 2, rows + 3);
        let a: Vec<f64> = (0..stride_ab * depth.max(1)).map(number).collect();
        let before: Vec<f64> = (0..stride * columns).map(|at| number(at + 77)).collect();
        let mut c = before.clone();
        let of = |entries| Columns { entries, stride: stride_ab };
        let product = |row: usize, column: usize| -> f64 {
            (0..depth).map(|k| a[k * stride_ab + row] * a[k * stride_ab + column]).sum()
        };
        subtract_product(simd, &mut c, stride, of(&a), of(&a[1..]), [rows, columns, depth]);
        for column in 0..columns {
            for row in 0..stride {
                let at = column * stride + row;
                let expected = if row < rows { before[at] - product(row, column + 1) } else { before[at] };
                assert!((c[at] - expected).abs() < 1e-14, "{rows} {columns} {depth}");
            }
        }
        let mut lower = vec![0.0; rows * rows];
        subtract_below(simd, &mut lower, rows, of(&a), of(&a), depth);
        for column in 0..rows {
            for row in column..rows {
                assert!((lower[column * rows + row] + product(row, column)).abs() < 1e-14, "{rows} {depth}");
            }
        }
    }
}
