//! An M-orthonormal basis that grows by blocks.

use super::EigenError;
use super::dense::{add_combination, combination, inner_products};
use super::product::SymmetricProduct;

/// A direction is dropped from a block when orthogonalisation leaves less than this share of the operator's largest value.
/// What is left then is the rounding noise of the solve (about 1e-15 of that value), not a direction; a larger share would throw away
/// modes that couple weakly to the start block, a smaller one would take noise for signal.
const DEPENDENT: f64 = 1e-13;

/// A round of orthogonalisation is repeated when it shrank a vector below this share. The Cholesky factor of a Gram matrix squares the
/// condition of the block: at 1e-2 orthogonality is kept within 1e4 rounding units, 1e-12. Two rounds are enough unless
/// noise is all that is left (Parlett, section 6.9, "twice is enough"); the third serves that case.
const SHRINKS: f64 = 1e-2;
const MOST_ROUNDS: usize = 3;

/// xᵀMx below minus this share of the largest is a negative mass; between is rounding of a massless direction.
const NEGATIVE: f64 = 1e-8;

/// Vectors q with qᵢᵀ M qⱼ = δᵢⱼ, and M q beside them so that no product is made twice.
pub(super) struct Basis {
    pub(super) dof: usize,
    /// (vector, position)
    pub(super) vectors: Vec<f64>,
    /// (vector, position): M times each.
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
        Basis {
            dof,
            vectors: Vec::new(),
            images: Vec::new(),
        }
    }

    /// Number of vectors.
    pub(super) fn size(&self) -> usize {
        self.vectors.len() / self.dof
    }

    /// Subtracts from each column of `block` its part along the vectors from `first` on; returns those parts, (column, vector).
    pub(super) fn remove(&self, block: &mut [f64], first: usize) -> Vec<f64> {
        let parts = inner_products(&self.images[first * self.dof..], block, self.dof);
        add_combination(
            block,
            -1.0,
            &self.vectors[first * self.dof..],
            &parts,
            self.dof,
        );
        parts
    }

    /// Makes a block M-orthonormal to everything and to itself, and appends it; dependent directions are dropped.
    ///
    /// A column shorter than [`DEPENDENT`] times `scale` is nothing. One round is enough for columns that [`Basis::remove`] has already been over.
    /// Cost of a round: four flops per row, basis vector and column.
    pub(super) fn append(
        &mut self,
        block: Vec<f64>,
        mass: &SymmetricProduct,
        scale: f64,
    ) -> Result<Added, EigenError> {
        let columns = block.len() / self.dof;
        let mut block = block;
        let mut image = Vec::new();
        // (column given, column now)
        let mut coupling: Vec<f64> = (0..columns * columns)
            .map(|entry| f64::from(u8::from(entry / columns == entry % columns)))
            .collect();
        let mut rank = columns;
        let mut scale = scale;
        for _ in 0..MOST_ROUNDS {
            if rank == 0 {
                break;
            }
            self.remove(&mut block, 0);
            image = mass.multiply(&block);
            let triangle = Triangle::of(&inner_products(&block, &image, self.dof), rank, scale)?;
            block = combination(&block, &triangle.inverse, self.dof, triangle.rank);
            image = combination(&image, &triangle.inverse, self.dof, triangle.rank);
            coupling = combination(&triangle.factor, &coupling, triangle.rank, columns);
            rank = triangle.rank;
            // From now on the columns are unit vectors.
            scale = 1.0;
            if triangle.shrank >= SHRINKS {
                break;
            }
        }
        self.vectors.extend_from_slice(&block);
        self.images.extend_from_slice(&image);
        Ok(Added { rank, coupling })
    }
}

/// Pivoted Cholesky factor of a Gram matrix, G = RᵀR, as far as its columns are independent.
struct Triangle {
    rank: usize,
    /// R: (column, row), `rank` rows.
    factor: Vec<f64>,
    /// The matrix that turns the columns into orthonormal ones: (new column, old column).
    inverse: Vec<f64>,
    /// Smallest share of a column's length that the others left of it.
    shrank: f64,
}

impl Triangle {
    fn of(gram: &[f64], columns: usize, scale: f64) -> Result<Triangle, EigenError> {
        let squares: Vec<f64> = (0..columns)
            .map(|column| gram[column * columns + column])
            .collect();
        let most = squares.iter().copied().fold(scale * scale, f64::max);
        if let Some(&value) = squares
            .iter()
            .find(|&&value| value.is_nan() || value < -NEGATIVE * most)
        {
            return Err(EigenError::MassNotPositive { value });
        }
        let least = DEPENDENT * DEPENDENT * most;
        let mut left = squares.clone();
        // (chosen, column): rows of R as they are found.
        let mut rows: Vec<Vec<f64>> = Vec::new();
        let mut chosen: Vec<usize> = Vec::new();
        let mut shrank = f64::INFINITY;
        while chosen.len() < columns {
            let (pivot, length) = largest(&left, &chosen);
            if length <= least {
                break;
            }
            let length = length.sqrt();
            shrank = shrank.min(length / squares[pivot].sqrt());
            let row = (0..columns)
                .map(|column| {
                    let explained: f64 = rows.iter().map(|row| row[pivot] * row[column]).sum();
                    (0.5 * (gram[pivot * columns + column] + gram[column * columns + pivot])
                        - explained)
                        / length
                })
                .collect::<Vec<f64>>();
            for (left, entry) in left.iter_mut().zip(&row) {
                *left -= entry * entry;
            }
            chosen.push(pivot);
            rows.push(row);
        }
        Ok(Triangle::from_rows(&rows, &chosen, columns, shrank))
    }

    fn from_rows(rows: &[Vec<f64>], chosen: &[usize], columns: usize, shrank: f64) -> Triangle {
        let rank = rows.len();
        let mut factor = vec![0.0; columns * rank];
        for (index, row) in rows.iter().enumerate() {
            for (column, &entry) in row.iter().enumerate() {
                factor[column * rank + index] = entry;
            }
        }
        for (place, &column) in chosen.iter().enumerate() {
            // Below the diagonal of the chosen columns R is zero exactly.
            factor[column * rank + place + 1..(column + 1) * rank].fill(0.0);
        }
        // Back substitution for each column of the inverse of the chosen triangle.
        let mut inverse = vec![0.0; rank * columns];
        for new in 0..rank {
            let mut solution = vec![0.0; rank];
            for place in (0..=new).rev() {
                let unit = if place == new { 1.0 } else { 0.0 };
                let known: f64 = (place + 1..=new)
                    .map(|other| rows[place][chosen[other]] * solution[other])
                    .sum();
                solution[place] = (unit - known) / rows[place][chosen[place]];
            }
            for (place, &column) in chosen.iter().enumerate() {
                inverse[new * columns + column] = solution[place];
            }
        }
        Triangle {
            rank,
            factor,
            inverse,
            shrank,
        }
    }
}

/// The column with most length left, the first of equals.
fn largest(left: &[f64], chosen: &[usize]) -> (usize, f64) {
    let mut best = (usize::MAX, f64::NEG_INFINITY);
    for (column, &length) in left.iter().enumerate() {
        if length > best.1 && !chosen.contains(&column) {
            best = (column, length);
        }
    }
    best
}
