//! An M-orthonormal basis that grows by blocks.

use super::EigenError;
use super::dense::{add_combination, append_combination, combination, dot, inner_products};
use super::symmetric::Symmetric;
use crate::patience;

/// A direction is dropped from a block when orthogonalisation leaves less than this share of the operator's largest value.
/// What is left then is the rounding noise of the solve (about 1e-15 of that value), not a direction; a larger share would throw away
/// modes that couple weakly to the start block, a smaller one would take noise for signal.
const DEPENDENT: f64 = 1e-13;

/// A round of orthogonalisation is repeated when it shrank a vector below this share. The Cholesky factor of a Gram matrix squares the
/// condition of the block: at 1e-2 orthogonality is kept within 1e4 rounding units, 1e-12. Two rounds are enough unless
/// a direction is near noise (Parlett, section 6.9, "twice is enough"); the others serve that case.
const SHRINKS: f64 = 1e-2;
const MOST_ROUNDS: usize = 4;

/// So is one in which taking off the parts along the basis shrank a column below this share: what is left of those parts is as large
/// beside it as the basis is from orthogonal, times what the column has lost (Parlett, section 6.9).
const PROJECTION_SHRINKS: f64 = 0.5;

/// A Gram matrix knows squares of lengths to a few rounding units of the whole column, so what is left of a column below this share (squared, 1e-12)
/// is not resolved. Such a column is only projected, and the next round measures it afresh.
const RESOLVED: f64 = 1e-6;

/// xᵀMx below minus this share of the largest is a negative mass; between is rounding of a massless direction.
const NEGATIVE: f64 = 1e-8;

/// Vectors q with qᵢᵀ M qⱼ = δᵢⱼ, and M q beside them so that no product is made twice.
#[derive(Clone)]
pub(super) struct Basis {
    pub(super) dof: usize,
    /// (vector, equation)
    pub(super) vectors: Vec<f64>,
    /// (vector, equation): M times each.
    pub(super) images: Vec<f64>,
}

/// What became of a block: how many directions it added, and how it reads in them.
pub(super) struct Added {
    pub(super) rank: usize,
    /// (column of the block, added vector)
    pub(super) coupling: Vec<f64>,
}

impl Basis {
    pub(super) fn new(dof: usize) -> Basis {
        Basis { dof, vectors: Vec::new(), images: Vec::new() }
    }

    /// Number of vectors.
    pub(super) fn size(&self) -> usize {
        self.vectors.len() / self.dof
    }

    /// Subtracts from each column of `block` its part along the vectors from `first` on; returns those parts, (column, vector).
    pub(super) fn remove(&self, block: &mut [f64], first: usize) -> Vec<f64> {
        let parts = inner_products(&self.images[first * self.dof..], block, self.dof);
        add_combination(block, -1.0, &self.vectors[first * self.dof..], &parts, self.dof);
        parts
    }

    /// Makes a block M-orthonormal to everything and to itself, and appends it; dependent directions are dropped.
    ///
    /// A column shorter than [`DEPENDENT`] times `scale` or its longest companion is nothing. One round is enough for columns that [`Basis::remove`] has already been over.
    /// Cost of a round: four flops per row, basis vector and column.
    pub(super) fn append(&mut self, block: Vec<f64>, mass: &Symmetric, scale: f64) -> Result<Added, EigenError> {
        let columns = block.len() / self.dof;
        let mut block = block;
        // (column given, column now)
        let mut coupling: Vec<f64> =
            (0..columns * columns).map(|entry| f64::from(u8::from(entry / columns == entry % columns))).collect();
        // Length of the part of the block given that each present column stands for.
        let mut lengths = vec![1.0; columns];
        let mut scale = scale;
        for round in 0..MOST_ROUNDS {
            patience::check()?;
            let before = squares(&block, self.dof);
            self.remove(&mut block, 0);
            let after = squares(&block, self.dof);
            let shrank = |(before, after): (&f64, &f64)| *after < PROJECTION_SHRINKS * PROJECTION_SHRINKS * before;
            let projected = !before.iter().zip(&after).any(shrank);
            patience::check()?;
            let image = mass.multiply(&block);
            let gram = inner_products(&block, &image, self.dof);
            if round == 0 {
                scale = scale.max(longest(&gram, scale)?);
            }
            let split = Split::of(&gram, &lengths, DEPENDENT * scale, round + 1 == MOST_ROUNDS);
            let left = split.lengths.len();
            coupling = combination(&split.factor, &coupling, left, columns);
            lengths = split.lengths;
            if left == 0 || split.finished && projected || round + 1 == MOST_ROUNDS {
                append_combination(&mut self.vectors, &block, &split.columns, self.dof, left);
                append_combination(&mut self.images, &image, &split.columns, self.dof, left);
                break;
            }
            block = combination(&block, &split.columns, self.dof, left);
        }
        Ok(Added { rank: lengths.len(), coupling })
    }
}

/// (column): the sum of its squares.
fn squares(block: &[f64], dof: usize) -> Vec<f64> {
    block.chunks_exact(dof).map(|column| dot(column, column)).collect()
}

/// Length of the longest column of a Gram matrix.
fn longest(gram: &[f64], scale: f64) -> Result<f64, EigenError> {
    let columns = gram.len().isqrt();
    let squares = || (0..columns).map(|column| gram[column * (columns + 1)]);
    let most = squares().fold(0.0, f64::max);
    match squares().find(|&value| value.is_nan() || value < -NEGATIVE * most.max(scale * scale)) {
        Some(value) => Err(EigenError::MassNotPositive { value }),
        None => Ok(most.sqrt()),
    }
}

/// One round's outcome for a block W: W = W' R, where W' has the columns resolved by the Gram matrix made orthonormal (pivoted
/// Cholesky, G = RᵀR) and the unresolved ones made orthogonal to those.
struct Split {
    /// (new column): the length that the new column stands for.
    lengths: Vec<f64>,
    /// R: (column, new column).
    factor: Vec<f64>,
    /// W' = W C: (new column, column).
    columns: Vec<f64>,
    /// Whether nothing is unresolved and no column shrank much.
    finished: bool,
}

impl Split {
    /// `lengths` is what each column stands for, `least` the length below which it is nothing; in the last round what is unresolved is dropped.
    fn of(gram: &[f64], lengths: &[f64], least: f64, last: bool) -> Split {
        let columns = lengths.len();
        let squares: Vec<f64> = (0..columns).map(|column| gram[column * (columns + 1)]).collect();
        let is_something = |column: usize, square: f64| square > 0.0 && square.sqrt() * lengths[column] > least;
        let mut left = squares.clone();
        // (chosen column, its row of R)
        let mut chosen: Vec<(usize, Vec<f64>)> = Vec::new();
        let mut finished = true;
        loop {
            let is_free = |column: &usize| chosen.iter().all(|(before, _)| before != column);
            let resolved = (0..columns).filter(is_free).filter(|&column| {
                is_something(column, left[column]) && left[column] > RESOLVED * RESOLVED * squares[column]
            });
            // The longest, the first of equals.
            let Some(pivot) = resolved.reduce(|best, column| if left[column] > left[best] { column } else { best })
            else {
                break;
            };
            let length = left[pivot].sqrt();
            finished &= left[pivot] >= SHRINKS * SHRINKS * squares[pivot];
            let row: Vec<f64> = (0..columns)
                .map(|column| {
                    if !is_free(&column) {
                        return 0.0;
                    }
                    let explained: f64 = chosen.iter().map(|(_, row)| row[pivot] * row[column]).sum();
                    let mean = 0.5 * (gram[pivot * columns + column] + gram[column * columns + pivot]);
                    (mean - explained) / length
                })
                .collect();
            for (left, entry) in left.iter_mut().zip(&row) {
                *left -= entry * entry;
            }
            chosen.push((pivot, row));
        }
        let unresolved: Vec<usize> = (0..columns)
            .filter(|column| chosen.iter().all(|(before, _)| before != column))
            .filter(|&column| !last && is_something(column, squares[column]))
            .collect();
        finished &= unresolved.is_empty();
        Split::assemble(&chosen, &unresolved, lengths, finished)
    }

    fn assemble(chosen: &[(usize, Vec<f64>)], unresolved: &[usize], lengths: &[f64], finished: bool) -> Split {
        let columns = lengths.len();
        let rank = chosen.len();
        let new_columns = rank + unresolved.len();
        let mut split =
            Split { lengths: Vec::new(), factor: vec![0.0; columns * new_columns], columns: Vec::new(), finished };
        for (new, (pivot, row)) in chosen.iter().enumerate() {
            split.lengths.push(lengths[*pivot] * row[*pivot]);
            for (column, entry) in row.iter().enumerate() {
                split.factor[column * new_columns + new] = *entry;
            }
            let mut unit = vec![0.0; rank];
            unit[new] = 1.0;
            split.columns.extend(back_substitute(chosen, &unit, columns));
        }
        for (extra, &column) in unresolved.iter().enumerate() {
            split.lengths.push(lengths[column]);
            split.factor[column * new_columns + rank + extra] = 1.0;
            let explained: Vec<f64> = chosen.iter().map(|(_, row)| -row[column]).collect();
            let mut combination = back_substitute(chosen, &explained, columns);
            combination[column] += 1.0;
            split.columns.extend(combination);
        }
        split
    }
}

/// The combination of the chosen columns that R turns into `target` (chosen): (column).
fn back_substitute(chosen: &[(usize, Vec<f64>)], target: &[f64], columns: usize) -> Vec<f64> {
    let mut combination = vec![0.0; columns];
    for (place, (pivot, row)) in chosen.iter().enumerate().rev() {
        let known: f64 = chosen[place + 1..].iter().map(|&(later, _)| row[later] * combination[later]).sum();
        combination[*pivot] = (target[place] - known) / row[*pivot];
    }
    combination
}
