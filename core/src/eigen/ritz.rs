//! Ritz pairs of the projected operator, and how far each is from an eigenpair.

use super::EigenError;
use super::dense::{add_combination, append_combination};
use super::lanczos::Lanczos;
use super::rayleigh_ritz::eigenpairs;
use crate::patience::{self, GivenUp};

/// Vectors made before it is asked whether they are still wanted; fewer would go through the basis more often.
const BETWEEN_LOOKS: usize = 16;

/// Ritz pairs, largest θ = 1/(λ - σ) first, that is lowest λ first.
pub(super) struct Ritz {
    /// (pair)
    pub(super) theta: Vec<f64>,
    /// (pair): |A x - θ x| / θ in the M-norm. An eigenvalue of A lies within this relative distance of θ
    /// (Krylov and Weinstein; Parlett, section 4.5), and θ itself errs by its square over the gap.
    pub(super) error: Vec<f64>,
    /// (pair, expanded vector)
    coordinates: Vec<f64>,
}

impl Ritz {
    /// Solves the projected problem. Cost: about nine cubes of the number of expanded vectors, in flops.
    pub(super) fn of(lanczos: &Lanczos) -> Result<Ritz, EigenError> {
        patience::check()?;
        let size = lanczos.expanded();
        let pairs = eigenpairs(projected(lanczos)).ok_or(EigenError::Projection { size })?;
        // Rounding may leave values at or below zero at the far end, which stand for infinite λ.
        let below = pairs.values.partition_point(|value| *value <= 0.0);
        let theta: Vec<f64> = pairs.values[below..].iter().rev().copied().collect();
        let coordinates = pairs.vectors[below * size..].chunks_exact(size).rev().flatten().copied().collect::<Vec<_>>();
        let error = theta
            .iter()
            .zip(coordinates.chunks_exact(size))
            .map(|(theta, coordinates)| {
                remainder(lanczos, coordinates).iter().map(|part| part * part).sum::<f64>().sqrt() / theta
            })
            .collect();
        Ok(Ritz { theta, error, coordinates })
    }

    /// The purified vectors of the first `count` pairs, (pair, equation), in the M-norm close to one.
    ///
    /// x + (A x - θ x)/θ = A x / θ costs no solve, because A x - θ x lies along the pending block. Its residual in K x = λ M x
    /// is the mass times a smooth vector, while that of x itself carries the stiffness of the finest waves.
    ///
    /// # Errors
    /// [`GivenUp`] when nobody waits for them.
    pub(super) fn vectors(&self, lanczos: &Lanczos, count: usize) -> Result<Vec<f64>, GivenUp> {
        let (dof, size) = (lanczos.basis.dof, lanczos.expanded());
        let (first, last) = (lanczos.deflated * dof, (lanczos.deflated + size) * dof);
        let coordinates = &self.coordinates[..count * size];
        let mut vectors = Vec::with_capacity(count * dof);
        for some in coordinates.chunks(BETWEEN_LOOKS * size) {
            patience::check()?;
            append_combination(&mut vectors, &lanczos.basis.vectors[first..last], some, dof, some.len() / size);
        }
        let rank = lanczos.steps.last().map_or(0, |step| step.rank);
        let remainders: Vec<f64> = coordinates
            .chunks_exact(size)
            .zip(&self.theta)
            .flat_map(|(coordinates, theta)| remainder(lanczos, coordinates).into_iter().map(move |part| part / theta))
            .collect();
        add_combination(&mut vectors, 1.0, &lanczos.basis.vectors[last..last + rank * dof], &remainders, dof);
        Ok(vectors)
    }
}

/// A x - θ x in the vectors of the pending block that continue the last step.
fn remainder(lanczos: &Lanczos, coordinates: &[f64]) -> Vec<f64> {
    let Some(step) = lanczos.steps.last() else {
        return Vec::new();
    };
    let mut parts = vec![0.0; step.rank];
    for (column, coordinate) in coordinates[step.first..].iter().enumerate() {
        for (part, entry) in parts.iter_mut().zip(&step.coupling[column * step.rank..]) {
            *part += entry * coordinate;
        }
    }
    parts
}

/// Qᵀ M A Q of the expanded vectors, lower triangle of (column, row): block tridiagonal.
fn projected(lanczos: &Lanczos) -> Vec<f64> {
    let size = lanczos.expanded();
    let mut matrix = vec![0.0; size * size];
    for step in &lanczos.steps {
        let next = step.first + step.width;
        for column in 0..step.width {
            let start = (step.first + column) * size;
            for row in 0..step.width {
                let mean = 0.5 * (step.own[column * step.width + row] + step.own[row * step.width + column]);
                matrix[start + step.first + row] = mean;
            }
            for row in 0..step.rank.min(size - next) {
                matrix[start + next + row] = step.coupling[column * step.rank + row];
            }
        }
    }
    matrix
}
