//! One piece of a boundary, whatever its kind.

use super::{
    Arc, Cubic, Line, Point,
    vector::{add, cross, distance, mirrored, norm, sub, turned, unit},
};

/// A smooth piece of a boundary, walked from its start (t = 0) to its end (t = 1).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Piece {
    /// Straight.
    Line(Line),
    /// Compass arc.
    Arc(Arc),
    /// Cubic curve.
    Cubic(Cubic),
}

/// The nearest point of a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// The point, mm.
    pub point: Point,
    /// Its distance, mm, not negative.
    pub distance_mm: f64,
    /// Which piece of the chain or loop it lies on.
    pub piece: usize,
    /// Parameter on that piece, 0..=1.
    pub t: f64,
}

impl Piece {
    /// Point at t.
    pub fn point(&self, t: f64) -> Point {
        match self {
            Piece::Line(line) => line.point(t),
            Piece::Arc(arc) => arc.point(t),
            Piece::Cubic(cubic) => cubic.point(t),
        }
    }

    /// First point.
    pub fn start(&self) -> Point {
        self.point(0.0)
    }

    /// Last point.
    pub fn end(&self) -> Point {
        self.point(1.0)
    }

    /// Unit tangent at t, in walking direction.
    pub fn tangent(&self, t: f64) -> Point {
        match self {
            Piece::Line(line) => unit(sub(line.end, line.start)),
            Piece::Arc(arc) => arc.tangent(t),
            Piece::Cubic(cubic) => unit(cubic.derivative(t)),
        }
    }

    /// Signed curvature at t, 1/mm: positive turns left.
    pub fn curvature_per_mm(&self, t: f64) -> f64 {
        match self {
            Piece::Line(_) => 0.0,
            Piece::Arc(arc) => arc.sweep_rad.signum() / arc.radius_mm,
            Piece::Cubic(cubic) => {
                let d = cubic.derivative(t);
                cross(d, cubic.second_derivative(t)) / norm(d).powi(3)
            }
        }
    }

    /// Length of the whole piece, mm.
    pub fn length_mm(&self) -> f64 {
        self.length_until_mm(1.0)
    }

    /// Length from the start to t, mm.
    pub fn length_until_mm(&self, t: f64) -> f64 {
        match self {
            Piece::Line(line) => distance(line.start, line.end) * t,
            Piece::Arc(arc) => (arc.radius_mm * arc.sweep_rad * t).abs(),
            Piece::Cubic(cubic) => cubic.length_mm(t),
        }
    }

    /// Parameter at a length from the start.
    pub fn parameter_at_mm(&self, length_mm: f64) -> f64 {
        let whole = self.length_mm();
        if whole <= 0.0 {
            return 0.0;
        }
        let linear = (length_mm / whole).clamp(0.0, 1.0);
        let Piece::Cubic(cubic) = self else {
            return linear;
        };
        let mut t = linear;
        for _ in 0..6 {
            let speed = norm(cubic.derivative(t));
            if speed <= 0.0 {
                break;
            }
            t = (t - (cubic.length_mm(t) - length_mm) / speed).clamp(0.0, 1.0);
        }
        t
    }

    /// Parameter of the point nearest to p.
    pub fn nearest_parameter(&self, p: Point) -> f64 {
        match self {
            Piece::Line(line) => line.nearest(p),
            Piece::Arc(arc) => arc.nearest(p),
            Piece::Cubic(cubic) => cubic.nearest(p),
        }
    }

    /// How many equal steps of t keep a polyline within `tolerance_mm` of the piece.
    pub fn steps_within(&self, tolerance_mm: f64) -> usize {
        let steps = match self {
            Piece::Line(_) => 1.0,
            // Sagitta r (1 - cos(step / 2)) <= r step^2 / 8.
            Piece::Arc(arc) => {
                let step = (8.0 * tolerance_mm / arc.radius_mm).sqrt();
                (arc.sweep_rad.abs() / step).ceil()
            }
            // The stray of a chord falls with the square of the step.
            Piece::Cubic(cubic) => (cubic.bulge_mm() / tolerance_mm).sqrt().ceil(),
        };
        steps.max(1.0) as usize
    }

    /// The same piece walked the other way.
    pub fn reversed(&self) -> Piece {
        match self {
            Piece::Line(line) => Piece::Line(Line { start: line.end, end: line.start }),
            Piece::Arc(arc) => {
                Piece::Arc(Arc { start_rad: arc.start_rad + arc.sweep_rad, sweep_rad: -arc.sweep_rad, ..*arc })
            }
            Piece::Cubic(cubic) => Piece::Cubic(cubic.reversed()),
        }
    }

    /// The mirror image across the centreline, walked so that start mirrors start.
    pub fn mirrored(&self) -> Piece {
        match self {
            Piece::Line(line) => Piece::Line(Line { start: mirrored(line.start), end: mirrored(line.end) }),
            Piece::Arc(arc) => Piece::Arc(Arc {
                centre: mirrored(arc.centre),
                start_rad: std::f64::consts::PI - arc.start_rad,
                sweep_rad: -arc.sweep_rad,
                ..*arc
            }),
            Piece::Cubic(cubic) => Piece::Cubic(Cubic { control: cubic.control.map(mirrored) }),
        }
    }

    /// The piece turned counter-clockwise about the origin and then moved by `shift`.
    pub fn placed(&self, turn_rad: f64, shift: Point) -> Piece {
        let lay = |p: Point| add(turned(p, turn_rad), shift);
        match self {
            Piece::Line(line) => Piece::Line(Line { start: lay(line.start), end: lay(line.end) }),
            Piece::Arc(arc) => Piece::Arc(Arc { centre: lay(arc.centre), start_rad: arc.start_rad + turn_rad, ..*arc }),
            Piece::Cubic(cubic) => Piece::Cubic(Cubic { control: cubic.control.map(lay) }),
        }
    }

    /// Exact contribution to the enclosed area, 1/2 of the integral of x dy - y dx, mm2.
    pub fn area_share_mm2(&self) -> f64 {
        match self {
            Piece::Line(line) => 0.5 * cross(line.start, line.end),
            Piece::Arc(arc) => {
                let turn = sub(self.end(), self.start());
                0.5 * (arc.radius_mm * arc.radius_mm * arc.sweep_rad + cross(arc.centre, turn))
            }
            Piece::Cubic(cubic) => {
                // Closed form of the integral of a cubic Bezier, from its control points.
                let [a, b, c, d] = cubic.control;
                0.05 * (6.0 * cross(a, b)
                    + 3.0 * cross(a, c)
                    + cross(a, d)
                    + 3.0 * cross(b, c)
                    + 3.0 * cross(b, d)
                    + 6.0 * cross(c, d))
            }
        }
    }

    /// Nearest point, labelled as piece `index`.
    pub fn nearest(&self, p: Point, index: usize) -> Nearest {
        let t = self.nearest_parameter(p);
        let point = self.point(t);
        Nearest { point, distance_mm: distance(point, p), piece: index, t }
    }

    /// True when every number of the piece is finite.
    pub fn is_finite(&self) -> bool {
        let middle = self.point(0.5);
        self.start().iter().chain(&middle).all(|c| c.is_finite())
    }
}
