//! A compass arc.

use std::f64::consts::{PI, TAU};

use super::{
    Point,
    vector::{along, cross, direction, dot, norm, sub},
};

/// A compass arc: centre, radius, and the angle swept from a start angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc {
    /// Where the compass point stands, mm.
    pub centre: Point,
    /// Radius, mm, positive.
    pub radius_mm: f64,
    /// Angle of the first point from +x, counter-clockwise, rad.
    pub start_rad: f64,
    /// Signed sweep, rad: positive is counter-clockwise.
    pub sweep_rad: f64,
}

impl Arc {
    /// The arc that leaves `start` along the unit vector `tangent` and ends in `end`. `None` when the two points and the
    /// tangent lie on one line to within a radius of 1e7 mm: the piece is then a line.
    pub fn leaving(start: Point, tangent: Point, end: Point) -> Option<Arc> {
        let chord = sub(end, start);
        let sideways = cross(tangent, chord);
        let length = norm(chord);
        // |radius| = length^2 / (2 |sideways|).
        if length * length > 2e7 * sideways.abs() {
            return None;
        }
        let radius = dot(chord, chord) / (2.0 * sideways);
        let centre = along(start, [-tangent[1], tangent[0]], radius);
        // The angle between tangent and chord is half the sweep.
        let half = sideways.atan2(dot(tangent, chord));
        let from_centre = sub(start, centre);
        Some(Arc {
            centre,
            radius_mm: radius.abs(),
            start_rad: from_centre[1].atan2(from_centre[0]),
            sweep_rad: 2.0 * half,
        })
    }

    /// Point at the parameter t in 0..=1.
    pub fn point(&self, t: f64) -> Point {
        along(self.centre, direction(self.start_rad + self.sweep_rad * t), self.radius_mm)
    }

    /// Unit tangent at t.
    pub fn tangent(&self, t: f64) -> Point {
        let d = direction(self.start_rad + self.sweep_rad * t);
        if self.sweep_rad >= 0.0 { [-d[1], d[0]] } else { [d[1], -d[0]] }
    }

    /// Parameter of the arc's point nearest to p.
    pub fn nearest(&self, p: Point) -> f64 {
        let d = sub(p, self.centre);
        if self.sweep_rad == 0.0 || (d[0] == 0.0 && d[1] == 0.0) {
            return 0.0;
        }
        // Angle from the middle of the arc, in -pi..=pi: beyond half the sweep the nearer end wins.
        let middle = self.start_rad + 0.5 * self.sweep_rad;
        let mut off = (d[1].atan2(d[0]) - middle) % TAU;
        if off > PI {
            off -= TAU;
        } else if off < -PI {
            off += TAU;
        }
        (0.5 + off / self.sweep_rad).clamp(0.0, 1.0)
    }
}
