//! What can be asked of a top at any place in plan, one number each.

use super::Shape;
use crate::plan::Point;

/// A number that varies over the top.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Height of the outer surface above the plane of the ribs, mm.
    Height,
    /// Thickness of the wood along the outer surface's normal, mm.
    Thickness,
    /// Angle of the outer surface's steepest rise from level, degrees.
    Slope,
    /// Mean curvature of the outer surface, 1/m: positive where it is hollow, negative where it stands out.
    Curvature,
}

impl Quantity {
    /// Every quantity.
    pub const ALL: [Quantity; 4] = [Quantity::Height, Quantity::Thickness, Quantity::Slope, Quantity::Curvature];

    /// A stable snake_case word for programs.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Quantity::Height => "height",
            Quantity::Thickness => "thickness",
            Quantity::Slope => "slope",
            Quantity::Curvature => "curvature",
        }
    }

    /// Its value at a point inside the outline, in its own unit. Off the wood, in a sound hole, it is that of the wood before the
    /// hole was cut.
    #[must_use]
    pub fn at(self, shape: &Shape, p: Point) -> f64 {
        const PER_M: f64 = 1e3;
        match self {
            Quantity::Height => shape.surface.height_mm(p),
            Quantity::Thickness => shape.graduation.thickness_mm(p),
            Quantity::Slope => shape.surface.at(p).steepness_rad().to_degrees(),
            Quantity::Curvature => shape.surface.at(p).curvatures().mean_per_mm() * PER_M,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    /// Away from the lines where curvature jumps: between them the differences converge.
    const PLACES: [Point; 4] = [[5.0, 100.0], [-30.0, 70.0], [20.0, 255.0], [-12.0, 300.0]];
    const STEP_MM: f64 = 0.01;

    fn slope(shape: &Shape, [x, y]: Point) -> [f64; 2] {
        let height = |p| Quantity::Height.at(shape, p);
        let across = height([x + STEP_MM, y]) - height([x - STEP_MM, y]);
        let along = height([x, y + STEP_MM]) - height([x, y - STEP_MM]);
        [across, along].map(|rise| rise / (2.0 * STEP_MM))
    }

    #[test]
    fn slope_is_that_of_the_heights() {
        let shape = Shape::new(&Design::demo()).unwrap();
        for p in PLACES {
            let [x, y] = slope(&shape, p);
            let expected = x.hypot(y).atan().to_degrees();
            assert!((Quantity::Slope.at(&shape, p) - expected).abs() < 1e-3, "{p:?}");
        }
    }

    /// Twice the mean curvature of z = h(x, y) is the divergence of grad h / sqrt(1 + |grad h|^2): do Carmo 1976, section 3-3.
    #[test]
    fn curvature_is_that_of_the_heights() {
        let shape = Shape::new(&Design::demo()).unwrap();
        let unit = |p| {
            let [x, y] = slope(&shape, p);
            let length = (1.0 + x * x + y * y).sqrt();
            [x / length, y / length]
        };
        for [x, y] in PLACES {
            let step = 0.05;
            let across = unit([x + step, y])[0] - unit([x - step, y])[0];
            let along = unit([x, y + step])[1] - unit([x, y - step])[1];
            let expected = 1e3 * 0.5 * (across + along) / (2.0 * step);
            let got = Quantity::Curvature.at(&shape, [x, y]);
            assert!((got - expected).abs() < 0.02 + 1e-3 * expected.abs(), "{x} {y}: {got} against {expected}");
        }
    }

    #[test]
    fn words_differ() {
        for (at, quantity) in Quantity::ALL.iter().enumerate() {
            assert!(Quantity::ALL[..at].iter().all(|other| other.key() != quantity.key()));
        }
    }
}
