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
    /// Σ w |u|² over the nodes, u the displacement, `weights` (node), none below zero.
    ///
    /// With nodal masses as weights, ¼ of it of the velocities is the mean kinetic energy of those nodes. Cost: three multiplications
    /// for each pair of modes and each node whose weight isn't zero.
    #[must_use]
    pub fn of_displacements(basis: &ModalBasis, weights: &[f64]) -> Self {
        Self::of(basis, weights, |mode, node| basis.displacement(mode, node).map(f64::from))
    }

    /// Σ w |u·n|² over the nodes, u·n the displacement along the outward normal, `weights` (node), none below zero.
    #[must_use]
    pub fn of_outward(basis: &ModalBasis, weights: &[f64]) -> Self {
        Self::of(basis, weights, |mode, node| [basis.outward(mode, node)])
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

    /// Of what `read` gives of a mode at a node.
    fn of<const N: usize>(basis: &ModalBasis, weights: &[f64], read: impl Fn(usize, usize) -> [f64; N]) -> Self {
        let nodes = weights.iter().take(basis.node_count()).enumerate().filter(|(_, weight)| **weight > 0.0);
        let counted: Vec<(usize, f64)> = nodes.map(|(node, weight)| (node, weight.sqrt())).collect();
        // (mode, reading times the root of its weight)
        let rows: Vec<Vec<f64>> = (0..basis.count())
            .map(|mode| counted.iter().flat_map(|&(node, root)| read(mode, node).map(|own| own * root)).collect())
            .collect();
        let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let lower = rows.iter().enumerate().flat_map(|(at, a)| rows[..=at].iter().map(move |b| product(a, b)));
        Self { modes: rows.len(), lower: lower.collect() }
    }
}
