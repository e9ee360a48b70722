//! Symmetric positive definite equations with a narrow band.

/// Lower band of a symmetric matrix: row i holds the columns i - width to i.
#[derive(Clone, Debug)]
pub(super) struct BandMatrix {
    size: usize,
    width: usize,
    values: Vec<f64>,
}

impl BandMatrix {
    pub(super) fn zero(size: usize, width: usize) -> BandMatrix {
        BandMatrix { size, width, values: vec![0.0; size * (width + 1)] }
    }

    /// Adds to the entry of row i and column j; the upper half is the lower one's mirror image, so only j <= i counts.
    pub(super) fn add(&mut self, i: usize, j: usize, value: f64) {
        if j <= i {
            self.values[i * (self.width + 1) + self.width + j - i] += value;
        }
    }

    /// Cholesky's factorisation within the band, size times width squared steps. `None` if a pivot isn't positive.
    pub(super) fn factor(mut self) -> Option<BandFactor> {
        let (n, w) = (self.size, self.width);
        let at = |i: usize, j: usize| i * (w + 1) + w + j - i;
        for i in 0..n {
            let first = i.saturating_sub(w);
            for j in first..=i {
                let from = first.max(j.saturating_sub(w));
                let row_i = &self.values[at(i, from)..at(i, from) + (j - from)];
                let row_j = &self.values[at(j, from)..at(j, from) + (j - from)];
                let sum: f64 = row_i.iter().zip(row_j).map(|(a, b)| a * b).sum();
                let rest = self.values[at(i, j)] - sum;
                self.values[at(i, j)] = if j < i {
                    rest / self.values[at(j, j)]
                } else if rest > 0.0 {
                    rest.sqrt()
                } else {
                    return None;
                };
            }
        }
        Some(BandFactor { lower: self })
    }
}

/// The factor L of a matrix L L^T.
#[derive(Clone, Debug)]
pub(super) struct BandFactor {
    lower: BandMatrix,
}

impl BandFactor {
    /// Solves in place, size times width steps.
    pub(super) fn solve(&self, right: &mut [f64]) {
        self.forward(right, 0);
        for i in (0..self.lower.size).rev() {
            right[i] /= self.at(i, i);
            let solved = right[i];
            for (j, value) in right.iter_mut().enumerate().take(i).skip(i.saturating_sub(self.lower.width)) {
                *value -= self.at(i, j) * solved;
            }
        }
    }

    /// b^T (L L^T)^-1 b for a b whose entries before `first` are zero; b is used up.
    pub(super) fn inverse_form(&self, b: &mut [f64], first: usize) -> f64 {
        self.forward(b, first);
        b[first..].iter().map(|value| value * value).sum()
    }

    fn forward(&self, right: &mut [f64], from: usize) {
        for i in from..self.lower.size {
            let first = i.saturating_sub(self.lower.width).max(from);
            let sum: f64 = (first..i).map(|j| self.at(i, j) * right[j]).sum();
            right[i] = (right[i] - sum) / self.at(i, i);
        }
    }

    fn at(&self, i: usize, j: usize) -> f64 {
        let w = self.lower.width;
        self.lower.values[i * (w + 1) + w + j - i]
    }
}
