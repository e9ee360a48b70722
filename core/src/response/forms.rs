//! Energies and mean squares of part of a shell, read from modal amplitudes without any field.

use super::{Complex, ModalBasis};

/// qᴴ A q of complex modal amplitudes q: a sum over nodes of weighted squares of what moves there.
///
/// Made once for a part of the shell; then a frequency costs a product with a matrix of modes by modes instead of a field.
#[derive(Debug, Clone, PartialEq)]
pub struct QuadraticForm {
    modes: usize,
    /// (row, column up to the row), symmetric.
    lower: Vec<f64>,
}

impl QuadraticForm {
    /// Σ w |u|² over the nodes, u the displacement, `weights` (node).
    ///
    /// With nodal masses as weights, ¼ of it of the velocities is the mean kinetic energy of those nodes. Cost: three multiplications
    /// for each pair of modes and each node whose weight isn't zero.
    #[must_use]
    pub fn of_displacements(basis: &ModalBasis, weights: &[f64]) -> Self {
        let root = |(node, weight): (usize, f64)| {
            move |mode: usize| basis.displacement(mode, node).map(|part| f64::from(part) * weight.sqrt())
        };
        let rows = of_modes(basis, weights, |node, weight, mode| root((node, weight))(mode).to_vec());
        Self::of_rows(&rows)
    }

    /// Σ w |u·n|² over the nodes, u·n the displacement along the outward normal, `weights` (node).
    #[must_use]
    pub fn of_outward(basis: &ModalBasis, weights: &[f64]) -> Self {
        let rows = of_modes(basis, weights, |node, weight, mode| {
            let normal = basis.surface().normals[node];
            let along: f64 =
                basis.displacement(mode, node).iter().zip(normal).map(|(own, n)| f64::from(*own) * n).sum();
            vec![along * weight.sqrt()]
        });
        Self::of_rows(&rows)
    }

    /// Its value for the modal `amplitudes`; never negative but for rounding.
    #[must_use]
    pub fn at(&self, amplitudes: &[Complex]) -> f64 {
        let mut sum = 0.0;
        let mut rows = self.lower.as_slice();
        for (mode, own) in amplitudes.iter().enumerate().take(self.modes) {
            let (row, rest) = rows.split_at(mode + 1);
            rows = rest;
            let (mut re, mut im) = (0.0, 0.0);
            for (entry, other) in row[..mode].iter().zip(amplitudes) {
                re += entry * other.re;
                im += entry * other.im;
            }
            sum += 2.0 * (own.re * re + own.im * im) + row[mode] * own.norm_sqr();
        }
        sum
    }

    fn of_rows(rows: &[Vec<f64>]) -> Self {
        let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let lower = rows.iter().enumerate().flat_map(|(at, a)| rows[..=at].iter().map(move |b| product(a, b)));
        Self { modes: rows.len(), lower: lower.collect() }
    }
}

/// (mode, weighted reading): what `read` gives of each node with a weight above zero.
fn of_modes(basis: &ModalBasis, weights: &[f64], read: impl Fn(usize, f64, usize) -> Vec<f64>) -> Vec<Vec<f64>> {
    let counted: Vec<(usize, f64)> = weights
        .iter()
        .copied()
        .enumerate()
        .filter(|(node, weight)| *weight > 0.0 && *node < basis.node_count())
        .collect();
    (0..basis.count())
        .map(|mode| counted.iter().flat_map(|&(node, weight)| read(node, weight, mode)).collect())
        .collect()
}
