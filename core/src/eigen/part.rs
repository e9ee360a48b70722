//! A pencil as it is solved: whole, or apart by a reflection.

use super::dense::dot;
use super::halves::{Halves, Side};
use super::pencil::Checked;
use super::{EigenError, Pencil, Symbolic};

/// By squares, what a vector must have in a part to count there: most of it.
pub(super) const MOST: f64 = 0.5;

/// A pencil, or one of the two that it comes apart in.
pub(super) struct Part<'a> {
    pub(super) pencil: Checked<'a>,
    half: Option<(&'a Halves, Side)>,
}

/// Vectors of a part that are shares of whole ones.
pub(super) struct Shares {
    /// (vector): which of those given it is a share of.
    pub(super) of: Vec<usize>,
    /// (vector, equation)
    pub(super) vectors: Vec<f64>,
}

impl<'a> Part<'a> {
    /// The parts that `pencil` is solved in, one or two.
    pub(super) fn all(pencil: &Pencil<'a>, symbolic: &'a Symbolic) -> Result<Vec<Part<'a>>, EigenError> {
        match symbolic.halves().filter(|halves| halves.symbolic.check(pencil.pattern).is_ok()) {
            Some(halves) => {
                let parts = Side::BOTH.into_iter().zip(Checked::parts(pencil, halves)?);
                Ok(parts.map(|(side, pencil)| Part { pencil, half: Some((halves, side)) }).collect())
            }
            None => Ok(vec![Part { pencil: Checked::new(pencil, symbolic)?, half: None }]),
        }
    }

    /// Equations.
    pub(super) fn dof(&self) -> usize {
        self.pencil.symbolic.dof()
    }

    /// The shares of `vectors` (vector, equation of the whole) that are here and, by squares, at least so much of their vector.
    pub(super) fn shares(&self, vectors: &[f64], least: f64) -> Shares {
        let mut shares = Shares { of: Vec::new(), vectors: Vec::new() };
        let whole = self.half.map_or(self.dof(), |(halves, _)| halves.whole);
        for (at, vector) in vectors.chunks_exact(whole).enumerate() {
            match self.half {
                None => shares.vectors.extend_from_slice(vector),
                Some((halves, side)) => {
                    let share = halves.fold(vector, side);
                    // What is there twice counts twice, and in the mirror too much, which decides nothing.
                    if 2.0 * dot(&share, &share) < least * dot(vector, vector) {
                        continue;
                    }
                    shares.vectors.extend(share);
                }
            }
            shares.of.push(at);
        }
        shares
    }

    /// Appends to `whole` (vector, equation of the whole) a vector that was found here.
    pub(super) fn append_whole(&self, whole: &mut Vec<f64>, vector: &[f64]) {
        match self.half {
            Some((halves, side)) => halves.unfold(vector, side, whole),
            None => whole.extend_from_slice(vector),
        }
    }
}
