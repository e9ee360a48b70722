//! Volume, mass and centre of mass.

use crate::{
    graduation::Graduation,
    mesh::PlanMesh,
    plan::Point,
    surface::{OnSurface, Surface},
};

/// Strang & Fix 1973, An analysis of the finite element method, table 4.1, six points, exact to degree 4: corner weight of
/// the triangle's coordinates, weight of the point.
const POINTS: [(f64, f64); 2] =
    [(0.108_103_018_168_070, 0.223_381_589_678_011), (0.816_847_572_980_459, 0.109_951_743_655_322)];

/// The wood of a top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Area of the outside, mm2.
    pub outside_area_mm2: f64,
    /// Volume of the wood, mm3.
    pub volume_mm3: f64,
    /// Centre of mass, (x, y, z), mm.
    pub centre_mm: [f64; 3],
}

impl Body {
    /// The wood between a surface and its inside. The walls of edge and holes stand along the normal.
    pub fn new(mesh: &PlanMesh, surface: &Surface, graduation: &Graduation) -> Body {
        let thickness = |p: Point| graduation.thickness_mm(p);
        Body::over(&mesh.points_mm, &mesh.triangles, |p| surface.at(p), thickness)
    }

    /// Integrates over triangles in plan. The only errors are the triangles' boundary and the six-point rule, which falls
    /// with the fifth power of their size.
    ///
    /// Source: the layer of depth s below a surface with principal curvatures a and b (hollow positive) has the area
    /// element (1 + a s)(1 + b s) dA (do Carmo 1976, section 3-5, exercise 11, parallel surfaces).
    pub fn over(
        points: &[Point],
        triangles: &[[u32; 3]],
        outside: impl Fn(Point) -> OnSurface,
        thickness: impl Fn(Point) -> f64,
    ) -> Body {
        let (mut area, mut volume, mut moment) = (0.0, 0.0, [0.0; 3]);
        for triangle in triangles {
            let corners = triangle.map(|corner| points[corner as usize]);
            let [[ax, ay], [bx, by], [cx, cy]] = corners;
            let plan = 0.5 * ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)).abs();
            for (own, weight) in POINTS {
                let other = 0.5 * (1.0 - own);
                for corner in 0..3 {
                    let share = |k: usize| if k == corner { own } else { other };
                    let p = [0, 1].map(|axis| (0..3).map(|k| share(k) * corners[k][axis]).sum::<f64>());
                    let on = outside(p);
                    let (t, normal, bent) = (thickness(p), on.normal(), on.curvatures());
                    let (sum, product) = (2.0 * bent.mean_per_mm(), bent.gaussian_per_mm2());
                    let piece = weight * plan / normal[2];
                    let below = t + t * t * (sum / 2.0 + t * product / 3.0);
                    let depth = t * t * (0.5 + t * (sum / 3.0 + t * product / 4.0));
                    area += piece;
                    volume += piece * below;
                    for (axis, place) in [p[0], p[1], on.height_mm].into_iter().enumerate() {
                        moment[axis] += piece * (place * below - normal[axis] * depth);
                    }
                }
            }
        }
        Body { outside_area_mm2: area, volume_mm3: volume, centre_mm: moment.map(|m| m / volume) }
    }

    /// Mass, g, of wood of an even density in kg/m3, which is a millionth of a gram a cubic millimetre.
    pub fn mass_g(&self, density_kg_m3: f64) -> f64 {
        self.volume_mm3 * density_kg_m3 * 1e-6
    }
}
