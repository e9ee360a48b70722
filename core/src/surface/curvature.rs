//! How a surface bends at a point.

use super::OnSurface;

/// The two principal curvatures, 1/mm. Positive where the outside is hollow, as along the channel; negative where it
/// stands out, as on the crest. Their inverses are the radii of the two gauges that fit the surface there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PrincipalCurvatures {
    /// The more convex one.
    pub least_per_mm: f64,
    /// The more hollow one.
    pub greatest_per_mm: f64,
}

impl PrincipalCurvatures {
    /// Half the sum of both, 1/mm.
    pub fn mean_per_mm(&self) -> f64 {
        0.5 * (self.least_per_mm + self.greatest_per_mm)
    }

    /// The product of both, 1/mm2.
    pub fn gaussian_per_mm2(&self) -> f64 {
        self.least_per_mm * self.greatest_per_mm
    }
}

impl OnSurface {
    /// Principal curvatures.
    ///
    /// Source: do Carmo 1976, Differential geometry of curves and surfaces, section 3-3, the graph z = h(x, y), with the
    /// upward normal.
    pub fn curvatures(&self) -> PrincipalCurvatures {
        let [sx, sy] = self.slope;
        let [xx, xy, yy] = self.bend;
        let w2 = 1.0 + sx * sx + sy * sy;
        let mean = ((1.0 + sy * sy) * xx - 2.0 * sx * sy * xy + (1.0 + sx * sx) * yy) / (2.0 * w2 * w2.sqrt());
        let gaussian = (xx * yy - xy * xy) / (w2 * w2);
        // Not negative but for rounding: it is a quarter of the squared difference of the two.
        let apart = (mean * mean - gaussian).max(0.0).sqrt();
        PrincipalCurvatures { least_per_mm: mean - apart, greatest_per_mm: mean + apart }
    }

    /// Angle of the steepest rise from level, rad.
    pub fn steepness_rad(&self) -> f64 {
        self.slope[0].hypot(self.slope[1]).atan()
    }
}
