//! The inflection line: where the cross arches turn from convex to concave.

use super::Surface;
use crate::plan::Point;

impl Surface {
    /// Distance from the centreline at which the cross arch at station y turns, mm; `None` beyond the channel's ends.
    pub fn inflection_mm(&self, y_mm: f64, treble_side: bool) -> Option<f64> {
        let half = self.arching.boundary().half_width(y_mm, treble_side)?;
        Some(half.x_mm * self.arching.inflection(y_mm, treble_side))
    }

    /// Where the cross arch at station y turns, as a point of the plan.
    pub fn inflection_point(&self, y_mm: f64, treble_side: bool) -> Option<Point> {
        let x = self.inflection_mm(y_mm, treble_side)?;
        Some([if treble_side { x } else { -x }, y_mm])
    }

    /// The inflection line of one side, from the channel's lower end to its upper end, both on the centreline: a polyline
    /// with a point every `step_mm` or closer. The points lie on the line; between them it strays by its sagitta.
    pub fn inflection_line(&self, treble_side: bool, step_mm: f64) -> Vec<Point> {
        let [low, high] = self.arching.boundary().ends_mm();
        let steps = ((high - low) / step_mm).ceil().max(2.0) as u32;
        let mut line = vec![[0.0, low]];
        line.extend((1..steps).filter_map(|i| {
            let t = f64::from(i) / f64::from(steps);
            // Steps crowd at the ends, where the line runs level into the centreline.
            let y = low + (high - low) * t * t * (3.0 - 2.0 * t);
            self.inflection_point(y, treble_side)
        }));
        line.push([0.0, high]);
        line
    }
}
