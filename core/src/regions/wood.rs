//! What the wood of a region weighs.

use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

use super::{BarLine, faces::Face};
use crate::{
    design::BarMeasures,
    graduation::Graduation,
    inside::Body,
    plan::{
        Point,
        vector::{along, distance, left_of, sub, unit},
    },
    surface::Surface,
};

/// Between the points of the lattice on which the wood is integrated, mm: the arch and the thickness are smooth over it.
const LATTICE_MM: f64 = 4.0;

/// The wood of a top.
pub(super) struct Wood<'a> {
    pub(super) surface: &'a Surface,
    pub(super) graduation: &'a Graduation,
    pub(super) density_kg_m3: f64,
}

impl Wood<'_> {
    /// The wood of each face.
    ///
    /// Each face is triangulated on its polygon and a lattice, so that the integral's border is the polygon itself.
    pub(super) fn of_faces(&self, faces: &[Face]) -> Vec<Body> {
        faces
            .iter()
            .map(|face| {
                let triangles = triangulated(face);
                let points: Vec<Point> = triangles.iter().flatten().copied().collect();
                let numbers: Vec<[u32; 3]> =
                    (0..triangles.len() as u32).map(|i| [3 * i, 3 * i + 1, 3 * i + 2]).collect();
                self.over(&points, &numbers)
            })
            .collect()
    }

    /// The wood under the bar's foot, a strip as wide as the bar.
    pub(super) fn under(&self, bar: &BarMeasures) -> BarLine {
        let [lower, upper] = [&bar.lower_end, &bar.upper_end].map(|end| [end.across_mm, end.station_mm]);
        let length = distance(lower, upper);
        let to_left = left_of(unit(sub(upper, lower)));
        let half = 0.5 * bar.width_mm;
        let steps = (length / LATTICE_MM).ceil().max(1.0) as u32;
        let mut points = Vec::new();
        for i in 0..=steps {
            let middle = along(lower, sub(upper, lower), f64::from(i) / f64::from(steps));
            points.extend([along(middle, to_left, -half), along(middle, to_left, half)]);
        }
        let triangles: Vec<[u32; 3]> = (0..steps)
            .flat_map(|i| {
                let a = 2 * i;
                [[a, a + 2, a + 1], [a + 1, a + 2, a + 3]]
            })
            .collect();
        let body = self.over(&points, &triangles);
        let last = points.len() - 1;
        BarLine {
            polygon: [points[0], points[last - 1], points[last], points[1]],
            area_mm2: bar.width_mm * length,
            mass_g: body.mass_g(self.density_kg_m3),
            mean_thickness_mm: body.volume_mm3 / body.outside_area_mm2,
        }
    }

    fn over(&self, points: &[Point], triangles: &[[u32; 3]]) -> Body {
        Body::over(points, triangles, |p| self.surface.at(p), |p| self.graduation.thickness_mm(p))
    }
}

/// Triangles that cover a face once.
fn triangulated(face: &Face) -> Vec<[Point; 3]> {
    let polygons = face.polygons();
    let (mut points, mut edges): (Vec<Point>, Vec<[usize; 2]>) = (Vec::new(), Vec::new());
    for polygon in &polygons {
        let first = points.len();
        points.extend(polygon);
        edges.extend((0..polygon.len()).map(|i| [first + i, first + (i + 1) % polygon.len()]));
    }
    let bound = |axis: usize, pick: fn(f64, f64) -> f64, from: f64| points.iter().map(|p| p[axis]).fold(from, pick);
    let cell = |value: f64| (value / LATTICE_MM).floor() as i32;
    let [left, right, low, high] = [
        bound(0, f64::min, f64::INFINITY),
        bound(0, f64::max, f64::NEG_INFINITY),
        bound(1, f64::min, f64::INFINITY),
        bound(1, f64::max, f64::NEG_INFINITY),
    ];
    for column in cell(left)..=cell(right) {
        for row in cell(low)..=cell(high) {
            let p = [f64::from(column) * LATTICE_MM, f64::from(row) * LATTICE_MM];
            if face.contains(p) {
                points.push(p);
            }
        }
    }
    let vertices = points.iter().map(|p| Point2::new(p[0], p[1])).collect();
    // The polygon's sides don't cross, so that none is refused.
    let Ok(triangulation) = ConstrainedDelaunayTriangulation::<Point2<f64>>::try_bulk_load_cdt(vertices, edges, |_| ())
    else {
        return Vec::new();
    };
    let corners = triangulation.inner_faces().map(|triangle| triangle.positions().map(|p| [p.x, p.y]));
    let middle = |t: &[Point; 3]| [0, 1].map(|axis| (t[0][axis] + t[1][axis] + t[2][axis]) / 3.0);
    corners.filter(|triangle| face.contains(middle(triangle))).collect()
}
