//! Monotone cubic interpolation between stations.

/// A C1 curve through given points that never overshoots them: between two points it stays between their values.
///
/// Source: Fritsch & Carlson 1980, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17(2), 238-246: slopes
/// are limited so that alpha^2 + beta^2 <= 9. Slopes at both ends are zero and the curve goes on level beyond them.
#[derive(Clone, Debug, PartialEq)]
pub struct MonotoneCubic {
    points: Vec<[f64; 2]>,
    slopes: Vec<f64>,
}

impl MonotoneCubic {
    /// Through (place, value) points with rising places, at least one.
    pub fn new(points: Vec<[f64; 2]>) -> MonotoneCubic {
        let n = points.len();
        let secants: Vec<f64> = points.windows(2).map(|w| (w[1][1] - w[0][1]) / (w[1][0] - w[0][0])).collect();
        let mut slopes = vec![0.0; n];
        for i in 1..n.saturating_sub(1) {
            if secants[i - 1] * secants[i] > 0.0 {
                slopes[i] = 0.5 * (secants[i - 1] + secants[i]);
            }
        }
        for (i, &secant) in secants.iter().enumerate() {
            if secant == 0.0 {
                slopes[i] = 0.0;
                slopes[i + 1] = 0.0;
                continue;
            }
            let (alpha, beta) = (slopes[i] / secant, slopes[i + 1] / secant);
            let length = alpha.hypot(beta);
            if length > 3.0 {
                slopes[i] = 3.0 * alpha / length * secant;
                slopes[i + 1] = 3.0 * beta / length * secant;
            }
        }
        MonotoneCubic { points, slopes }
    }

    /// Value, slope and second derivative at a place.
    pub fn at(&self, place: f64) -> [f64; 3] {
        let after = self.points.partition_point(|p| p[0] <= place);
        if after == 0 {
            return [self.points[0][1], 0.0, 0.0];
        }
        if after == self.points.len() {
            return [self.points[after - 1][1], 0.0, 0.0];
        }
        let ([x0, y0], [x1, y1]) = (self.points[after - 1], self.points[after]);
        hermite([x0, x1], [y0, y1], [self.slopes[after - 1], self.slopes[after]], place)
    }
}

/// Value, slope and second derivative of the cubic with given values and slopes at both ends of an interval.
pub(super) fn hermite(ends: [f64; 2], values: [f64; 2], slopes: [f64; 2], place: f64) -> [f64; 3] {
    let h = ends[1] - ends[0];
    let t = (place - ends[0]) / h;
    let secant = (values[1] - values[0]) / h;
    let c = 3.0 * secant - 2.0 * slopes[0] - slopes[1];
    let d = slopes[0] + slopes[1] - 2.0 * secant;
    [
        values[0] + h * t * (slopes[0] + t * (c + t * d)),
        slopes[0] + t * (2.0 * c + 3.0 * t * d),
        (2.0 * c + 6.0 * t * d) / h,
    ]
}
