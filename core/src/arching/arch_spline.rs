//! The spline through measured points, a family of arch curves.

/// A cubic spline from the crest (place 0, height 1) to the channel (place 1, height 0), level at both, through the points
/// between. Twice continuously differentiable.
///
/// It follows whatever was measured: it turns once from convex to concave only if the points do.
/// Source: de Boor 1978, A practical guide to splines, chapter IV, complete cubic spline interpolation.
#[derive(Clone, Debug, PartialEq)]
pub struct ArchSpline {
    places: Vec<f64>,
    heights: Vec<f64>,
    /// Second derivatives at the places.
    bends: Vec<f64>,
}

impl ArchSpline {
    /// Through (place, height) points with places rising strictly between 0 and 1.
    pub fn new(points: &[[f64; 2]]) -> ArchSpline {
        let places: Vec<f64> = [0.0].into_iter().chain(points.iter().map(|p| p[0])).chain([1.0]).collect();
        let heights: Vec<f64> = [1.0].into_iter().chain(points.iter().map(|p| p[1])).chain([0.0]).collect();
        let n = places.len();
        let span = |i: usize| places[i + 1] - places[i];
        let secant = |i: usize| (heights[i + 1] - heights[i]) / span(i);
        // Row i: before m[i-1] + 2 (before + after) m[i] + after m[i+1] = 6 (change of secant), ends level.
        let row = |i: usize| {
            let (before, after) = (if i > 0 { span(i - 1) } else { 0.0 }, if i + 1 < n { span(i) } else { 0.0 });
            let change = (if i + 1 < n { secant(i) } else { 0.0 }) - (if i > 0 { secant(i - 1) } else { 0.0 });
            (before, 2.0 * (before + after), after, 6.0 * change)
        };
        // Elimination without exchanges: the rows are dominated by their diagonal.
        let (mut above, mut right) = (vec![0.0; n], vec![0.0; n]);
        for i in 0..n {
            let (before, middle, after, wanted) = row(i);
            let (last_above, last_right) = if i > 0 { (above[i - 1], right[i - 1]) } else { (0.0, 0.0) };
            let pivot = middle - before * last_above;
            above[i] = after / pivot;
            right[i] = (wanted - before * last_right) / pivot;
        }
        for i in (0..n - 1).rev() {
            right[i] -= above[i] * right[i + 1];
        }
        ArchSpline { places, heights, bends: right }
    }

    /// Height and its first and second derivative by place, at a place 0 to 1.
    pub fn at(&self, place: f64) -> [f64; 3] {
        let i = self.places.partition_point(|&p| p <= place).clamp(1, self.places.len() - 1) - 1;
        let h = self.places[i + 1] - self.places[i];
        let (a, b) = ((self.places[i + 1] - place) / h, (place - self.places[i]) / h);
        let (m, n) = (self.bends[i], self.bends[i + 1]);
        let (y, z) = (self.heights[i], self.heights[i + 1]);
        [
            a * y + b * z + ((a * a * a - a) * m + (b * b * b - b) * n) * h * h / 6.0,
            (z - y) / h + ((3.0 * b * b - 1.0) * n - (3.0 * a * a - 1.0) * m) * h / 6.0,
            a * m + b * n,
        ]
    }

    /// Where it last turns from convex to concave on the way to the channel; 1 if it never does.
    pub fn inflection(&self) -> f64 {
        for i in (0..self.places.len() - 1).rev() {
            let (m, n) = (self.bends[i], self.bends[i + 1]);
            if m < 0.0 && n >= 0.0 {
                return self.places[i] + (self.places[i + 1] - self.places[i]) * m / (m - n);
            }
        }
        1.0
    }

    /// Mean height over the rise: trapezoids less h^3 (m + n) / 24 a stretch, exact for cubics.
    pub fn fullness(&self) -> f64 {
        (0..self.places.len() - 1)
            .map(|i| {
                let h = self.places[i + 1] - self.places[i];
                0.5 * h * (self.heights[i] + self.heights[i + 1])
                    - h.powi(3) * (self.bends[i] + self.bends[i + 1]) / 24.0
            })
            .sum()
    }
}
