//! What the wood of a region weighs, and that under the bar.

use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

use super::Body;
use crate::{
    design::BarMeasures,
    graduation::Graduation,
    plan::{
        Point,
        vector::{along, bounds, distance, left_of, sub, unit},
    },
    regions::Region,
    surface::Surface,
};

/// Between the points of the lattice on which the wood is integrated, mm: the arch and the thickness are smooth over it.
const LATTICE_MM: f64 = 4.0;

/// The wood of one region.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RegionWood {
    /// Mass, g.
    pub mass_g: f64,
    /// Volume over the outside's area, mm.
    pub mean_thickness_mm: f64,
}

impl RegionWood {
    /// Weighs a region.
    ///
    /// It is triangulated on its polygons and a lattice, so that the integral's border is the polygons themselves. Cost: for
    /// the regions of a whole top some 6 000 triangles, below a tenth of a second.
    pub fn of(region: &Region, surface: &Surface, graduation: &Graduation, density_kg_m3: f64) -> RegionWood {
        let triangles = triangulated(region);
        let points: Vec<Point> = triangles.iter().flatten().copied().collect();
        let numbers: Vec<[u32; 3]> = (0..triangles.len() as u32).map(|i| [3 * i, 3 * i + 1, 3 * i + 2]).collect();
        RegionWood::over(&points, &numbers, surface, graduation, density_kg_m3)
    }

    fn over(
        points: &[Point],
        triangles: &[[u32; 3]],
        surface: &Surface,
        graduation: &Graduation,
        density_kg_m3: f64,
    ) -> RegionWood {
        let body = Body::over(points, triangles, |p| surface.at(p), |p| graduation.thickness_mm(p));
        RegionWood { mass_g: body.mass_g(density_kg_m3), mean_thickness_mm: body.volume_mm3 / body.outside_area_mm2 }
    }
}

/// The wood that the bar is glued to; it lies across other regions.
#[derive(Clone, Debug, PartialEq)]
pub struct BarLine {
    /// The foot's corners, mm, counter-clockwise.
    pub polygon: [Point; 4],
    /// Area in plan, mm2.
    pub area_mm2: f64,
    /// The top's wood under the bar, the bar itself not counted.
    pub wood: RegionWood,
}

impl BarLine {
    /// The strip under a bar, as wide as the bar.
    pub fn under(bar: &BarMeasures, surface: &Surface, graduation: &Graduation, density_kg_m3: f64) -> BarLine {
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
        let wood = RegionWood::over(&points, &triangles, surface, graduation, density_kg_m3);
        BarLine { polygon: bar.foot_mm(), area_mm2: bar.width_mm * length, wood }
    }
}

/// Triangles that cover a region once.
fn triangulated(region: &Region) -> Vec<[Point; 3]> {
    let (mut points, mut edges): (Vec<Point>, Vec<[usize; 2]>) = (Vec::new(), Vec::new());
    for polygon in &region.polygons {
        let first = points.len();
        points.extend(polygon);
        edges.extend((0..polygon.len()).map(|i| [first + i, first + (i + 1) % polygon.len()]));
    }
    let (low, high) = bounds(points.iter().copied());
    let cell = |value: f64| (value / LATTICE_MM).floor() as i32;
    for column in cell(low[0])..=cell(high[0]) {
        for row in cell(low[1])..=cell(high[1]) {
            let p = [f64::from(column) * LATTICE_MM, f64::from(row) * LATTICE_MM];
            if region.contains(p) {
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
    corners.filter(|triangle| region.contains(middle(triangle))).collect()
}
