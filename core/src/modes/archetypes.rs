//! Twist and bends of a plate as an orthonormal set over its mass.

use nalgebra::Vector3;

/// Functions of place: rigid motions 1, x, y, then xy, x², y²; x and y from the middle, in standard deviations.
const FUNCTIONS: usize = 6;

/// A function that keeps less than this of its length beside those before it says nothing new about the nodes: they lie on
/// a line or are too few. Rounding leaves 1e-16, plates leave above 0.1.
const DEPENDENT: f64 = 1e-6;

/// The six functions, made orthonormal one after the other over the nodes' weights (Gram and Schmidt).
pub(super) struct Archetypes {
    /// (node): shares of the whole.
    weights: Vec<f64>,
    /// (function, node).
    orthonormal: [Vec<f64>; FUNCTIONS],
    /// Length of x² beside those before it, of y² beside those before x², and of y² along x².
    bend_lengths: [f64; 3],
}

/// What a motion is made of, rigid parts left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Parts {
    /// Share of xy in the mean square.
    pub(super) twist_share: f64,
    /// Share of x² and y² in the mean square.
    pub(super) bend_share: f64,
    /// Coefficient of x² in standard deviations of x.
    pub(super) across: f64,
    /// Coefficient of y² in standard deviations of y.
    pub(super) along: f64,
}

impl Archetypes {
    /// On `nodes` (node, xyz) weighted by `weights` (node); none where these cannot tell the functions apart.
    pub(super) fn new(nodes: &[Vector3<f64>], weights: &[f64]) -> Option<Self> {
        let whole: f64 = weights.iter().sum();
        let weights: Vec<f64> = weights.iter().map(|weight| weight / whole).collect();
        let [x, y] =
            [0, 1].map(|axis| standardised(&nodes.iter().map(|node| node[axis]).collect::<Vec<_>>(), &weights));
        let mut archetypes = Self { weights, orthonormal: std::array::from_fn(|_| Vec::new()), bend_lengths: [0.0; 3] };
        for function in 0..FUNCTIONS {
            let raw = x.iter().zip(&y).map(|(x, y)| [1.0, *x, *y, x * y, x * x, y * y][function]);
            archetypes.add(function, raw.collect())?;
        }
        Some(archetypes)
    }

    fn add(&mut self, function: usize, mut values: Vec<f64>) -> Option<()> {
        let before = self.product(&values, &values).sqrt();
        for earlier in 0..function {
            let along = self.product(&self.orthonormal[earlier], &values);
            if (earlier, function) == (4, 5) {
                self.bend_lengths[2] = along;
            }
            values.iter_mut().zip(&self.orthonormal[earlier]).for_each(|(value, unit)| *value -= along * unit);
        }
        let length = self.product(&values, &values).sqrt();
        // Also when not a number: nodes in a line have no spread to be measured in.
        if length.is_nan() || length <= DEPENDENT * before {
            return None;
        }
        if function >= 4 {
            self.bend_lengths[function - 4] = length;
        }
        self.orthonormal[function] = values.iter().map(|value| value / length).collect();
        Some(())
    }

    /// Takes a motion (node) apart.
    pub(super) fn parts(&self, motion: &[f64]) -> Parts {
        let along: [f64; FUNCTIONS] = std::array::from_fn(|k| self.product(&self.orthonormal[k], motion));
        let square = |k: usize| along[k] * along[k];
        let elastic = self.product(motion, motion) - (0..3).map(square).sum::<f64>();
        let coefficient_along = along[5] / self.bend_lengths[1];
        Parts {
            twist_share: square(3) / elastic,
            bend_share: (square(4) + square(5)) / elastic,
            across: (along[4] - coefficient_along * self.bend_lengths[2]) / self.bend_lengths[0],
            along: coefficient_along,
        }
    }

    fn product(&self, a: &[f64], b: &[f64]) -> f64 {
        self.weights.iter().zip(a.iter().zip(b)).map(|(weight, (a, b))| weight * a * b).sum()
    }
}

/// Values less their mean, over their standard deviation.
fn standardised(values: &[f64], weights: &[f64]) -> Vec<f64> {
    let mean_of =
        |f: &dyn Fn(f64) -> f64| values.iter().zip(weights).map(|(value, weight)| weight * f(*value)).sum::<f64>();
    let mean = mean_of(&|value| value);
    let deviation = mean_of(&|value| (value - mean).powi(2)).sqrt();
    values.iter().map(|value| (value - mean) / deviation).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(columns: i32, rows: i32) -> Vec<Vector3<f64>> {
        (0..rows)
            .flat_map(|j| (0..columns).map(move |i| Vector3::new(f64::from(i) * 3.0, f64::from(j) * 7.0 + 50.0, 0.0)))
            .collect()
    }

    /// A motion put together from known parts comes apart into them.
    #[test]
    fn parts_are_found_again_beside_any_rigid_motion() {
        let nodes = grid(7, 9);
        let weights: Vec<f64> = (0..63).map(|k| 1.0 + 0.1 * f64::from(k / 7)).collect();
        let archetypes = Archetypes::new(&nodes, &weights).unwrap();
        let x = standardised(&nodes.iter().map(|p| p.x).collect::<Vec<_>>(), &archetypes.weights);
        let y = standardised(&nodes.iter().map(|p| p.y).collect::<Vec<_>>(), &archetypes.weights);
        let bend: Vec<f64> =
            x.iter().zip(&y).map(|(x, y)| 9.0 - 4.0 * x + 2.5 * y + 0.5 * x * x - 0.8 * y * y).collect();
        let parts = archetypes.parts(&bend);
        assert!((parts.across - 0.5).abs() < 1e-12 && (parts.along + 0.8).abs() < 1e-12, "{parts:?}");
        assert!((parts.bend_share - 1.0).abs() < 1e-12 && parts.twist_share < 1e-12, "{parts:?}");
        let twist: Vec<f64> = x.iter().zip(&y).map(|(x, y)| x * y - y + 3.0).collect();
        assert!((archetypes.parts(&twist).twist_share - 1.0).abs() < 1e-12);
    }

    #[test]
    fn too_few_nodes_or_nodes_in_a_line_tell_nothing() {
        assert!(Archetypes::new(&grid(2, 2), &[1.0; 4]).is_none());
        assert!(Archetypes::new(&grid(1, 9), &[1.0; 9]).is_none());
    }
}
