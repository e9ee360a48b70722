//! Cutting the top by an upright plane, across at a station or along at a distance from the centreline.

use super::path::Path;
use crate::{inside::InsideSurface, plan::Point, sound_holes::SoundHole, top::Shape};

/// Step between points of a section: the tightest curve, the edge's, is then within 0.02 mm.
const STEP_MM: f64 = 2.0;
/// How near a polyline that finds the ends of the wood follows outline and holes.
const TOLERANCE_MM: f64 = 0.02;

/// An upright plane.
#[derive(Clone, Copy)]
pub(super) enum Cut {
    /// Across, at this y.
    Across(f64),
    /// Along, at this x.
    Along(f64),
}

impl Cut {
    /// The plan point at `u` along the cut.
    fn place(self, u: f64) -> Point {
        match self {
            Cut::Across(y) => [u, y],
            Cut::Along(x) => [x, u],
        }
    }

    /// Coordinate along the cut, and how far beyond it.
    fn split(self, p: Point) -> (f64, f64) {
        match self {
            Cut::Across(y) => (p[0], p[1] - y),
            Cut::Along(x) => (p[1], p[0] - x),
        }
    }

    /// Where the cut passes through wood: from, to, lowest first. Outline and holes are crossed an even number of times.
    pub(super) fn wood(self, shape: &Shape) -> Vec<[f64; 2]> {
        let loops = std::iter::once(shape.outline.boundary()).chain(shape.holes.iter().map(SoundHole::boundary));
        let mut crossings: Vec<f64> = Vec::new();
        for boundary in loops {
            let points = boundary.polyline(TOLERANCE_MM);
            let closing = points.iter().skip(1).chain(points.first());
            for (&p, &q) in points.iter().zip(closing) {
                let ((u, off), (next_u, next_off)) = (self.split(p), self.split(q));
                if (off > 0.0) != (next_off > 0.0) {
                    crossings.push(u + (next_u - u) * off / (off - next_off));
                }
            }
        }
        crossings.sort_by(f64::total_cmp);
        crossings.chunks_exact(2).map(|pair| [pair[0], pair[1]]).collect()
    }

    /// What [`Cut::wood`] found as closed paths: outer surface there, inner surface back. `base` is the v of the plane
    /// of the ribs.
    pub(super) fn draw(self, shape: &Shape, wood: &[[f64; 2]], base: f64) -> Vec<String> {
        let sheet = |u: f64, z: f64| [u, base - z];
        wood.iter()
            .map(|&[from, to]| {
                let steps = ((to - from) / STEP_MM).ceil().max(2.0) as u32;
                let places = (0..=steps).map(|i| from + (to - from) * f64::from(i) / f64::from(steps));
                let outer = places.clone().map(|u| sheet(u, shape.surface.height_mm(self.place(u))));
                let inner = places.rev().map(|u| sheet(u, inside_height_mm(shape, self.place(u))));
                Path::default().polyline(&outer.chain(inner).collect::<Vec<_>>(), true).text()
            })
            .collect()
    }
}

/// Height of the inside over a point in plan. [`InsideSurface::height_mm`] looks until rounding; four steps of the same end
/// within 0.01 mm, and a section has hundreds of points.
pub(super) fn inside_height_mm(shape: &Shape, target: Point) -> f64 {
    const STEPS: usize = 4;
    let inside = InsideSurface::new(&shape.surface, &shape.graduation);
    let mut above = target;
    let mut height = 0.0;
    for _ in 0..STEPS {
        let [x, y, z] = inside.opposite(above);
        above = [above[0] + target[0] - x, above[1] + target[1] - y];
        height = z;
    }
    height
}
