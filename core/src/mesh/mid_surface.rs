//! The carved wood's mid-surface on a plan mesh.

use super::{Across, Mirror, PlanMesh};
use crate::{graduation::Graduation, plan::Point, surface::Surface};

/// Where the middle of the wood is, which way it faces and how thick it is.
#[derive(Clone, Debug, PartialEq)]
pub struct MidSurface {
    /// (node, xyz), mm: the outer surface's point less half the thickness along its normal.
    pub nodes_mm: Vec<[f64; 3]>,
    /// (node, xyz), unit, outwards: the outer surface's normal.
    pub normals: Vec<[f64; 3]>,
    /// (node), mm, along the normal.
    pub thickness_mm: Vec<f64>,
    /// (edge, xyz), unit, outwards: the outer surface's normal over the edge's middle in plan.
    pub edge_normals: Vec<[f64; 3]>,
    /// (edge), mm, along that normal.
    pub edge_thickness_mm: Vec<f64>,
    /// The middle's own normals, and the thickness along these.
    pub across: Across,
}

/// The wood over a place in plan.
#[derive(Clone, Copy, Debug)]
pub struct Sample {
    /// Its middle, xyz, mm.
    pub middle_mm: [f64; 3],
    /// Unit, outwards.
    pub normal: [f64; 3],
    /// Along the normal, mm.
    pub thickness_mm: f64,
}

impl Sample {
    /// What it is on the other side of a top whose sides are alike.
    fn mirrored(self) -> Sample {
        let mirrored = |[x, y, z]: [f64; 3]| [-x, y, z];
        Sample { middle_mm: mirrored(self.middle_mm), normal: mirrored(self.normal), ..self }
    }

    /// Carved wood under the point `p` of the outer surface.
    pub fn carved(surface: &Surface, graduation: &Graduation, p: Point) -> Sample {
        let on = surface.at(p);
        let normal = on.normal();
        let thickness_mm = graduation.thickness_mm(p);
        let outside = [p[0], p[1], on.height_mm];
        let middle_mm = [0, 1, 2].map(|k| outside[k] - 0.5 * thickness_mm * normal[k]);
        Sample { middle_mm, normal, thickness_mm }
    }
}

impl MidSurface {
    /// Lays surface and graduation on a mesh. The plan point of a node is that of its point on the outer surface.
    pub fn new(mesh: &PlanMesh, surface: &Surface, graduation: &Graduation) -> MidSurface {
        let sides_are_alike = surface.sides_are_alike() && graduation.sides_are_alike();
        let mirror = if sides_are_alike { mesh.mirror() } else { None };
        let mut mid = MidSurface::laid(mesh, mirror, |p| Sample::carved(surface, graduation, p));
        mid.across = Across::carved(mesh, &mid);
        mid
    }

    /// Lays what `at` says of each place in plan on a mesh; the normals are to be the middle's own.
    pub fn sampled(mesh: &PlanMesh, at: impl Fn(Point) -> Sample) -> MidSurface {
        let mut mid = MidSurface::laid(mesh, None, at);
        mid.across = Across::even(&mid);
        mid
    }

    /// The same, but for `across`, which stays empty. What a `mirror` knows of the other side isn't asked for again.
    pub(super) fn laid(mesh: &PlanMesh, mirror: Option<Mirror>, at: impl Fn(Point) -> Sample) -> MidSurface {
        let Mirror { of_node, of_edge } = mirror.unwrap_or_default();
        let nodes = samples(mesh.points_mm.len(), &of_node, |node| at(mesh.points_mm[node]));
        let edges = samples(mesh.edges.ends.len(), &of_edge, |edge| {
            let [a, b] = mesh.edges.ends[edge].map(|node| mesh.points_mm[node as usize]);
            at([0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])])
        });
        MidSurface {
            nodes_mm: nodes.iter().map(|sample| sample.middle_mm).collect(),
            normals: nodes.iter().map(|sample| sample.normal).collect(),
            thickness_mm: nodes.iter().map(|sample| sample.thickness_mm).collect(),
            edge_normals: edges.iter().map(|sample| sample.normal).collect(),
            edge_thickness_mm: edges.iter().map(|sample| sample.thickness_mm).collect(),
            across: Across::default(),
        }
    }

    /// Volume of wood, mm3: each triangle's area times its mean thickness, exact for a quadratic one.
    pub fn volume_mm3(&self, mesh: &PlanMesh) -> f64 {
        mesh.triangles
            .iter()
            .zip(&mesh.edges.of_triangle)
            .map(|(triangle, edges)| {
                let [a, b, c] = triangle.map(|corner| self.nodes_mm[corner as usize]);
                let u = [0, 1, 2].map(|k| b[k] - a[k]);
                let v = [0, 1, 2].map(|k| c[k] - a[k]);
                let normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
                let area = 0.5 * normal.iter().map(|n| n * n).sum::<f64>().sqrt();
                let thickness: f64 = edges.iter().map(|&edge| self.edge_thickness_mm[edge as usize]).sum();
                area * thickness / 3.0
            })
            .sum()
    }
}

/// What `at` says of so many places, and of those that mirror an earlier one what that says.
fn samples(count: usize, mirrors: &[Option<u32>], at: impl Fn(usize) -> Sample) -> Vec<Sample> {
    let mut samples: Vec<Sample> = Vec::with_capacity(count);
    for place in 0..count {
        let earlier = mirrors.get(place).copied().flatten();
        samples.push(earlier.map_or_else(|| at(place), |earlier| samples[earlier as usize].mirrored()));
    }
    samples
}

#[cfg(test)]
mod tests {
    use super::super::MeshSize;
    use super::*;
    use crate::design::{BassArch, Design, MeasuredThickness, PaintedThickness, PlanPlace, SoundHoleChoice};
    use crate::top::Shape;

    type Change = fn(&mut Design);

    const ON_ONE_SIDE: PlanPlace = PlanPlace { across_mm: 40.0, station_mm: 150.0 };

    /// What is taken from the other side is what would be found at the place itself, whatever makes the sides differ.
    #[test]
    fn sides_are_taken_for_alike_only_where_they_are() {
        let changes: [(&str, bool, Change); 6] = [
            ("alike", true, |_| ()),
            ("painted", false, |design| {
                let place = ON_ONE_SIDE;
                design.graduation.painted.push(PaintedThickness { place, thickness_mm: 2.0, reach_mm: 30.0 });
            }),
            ("measured", false, |design| {
                let elsewhere = PlanPlace { across_mm: 0.0, station_mm: 200.0 };
                let measured = [(ON_ONE_SIDE, 2.0), (elsewhere, 3.0)];
                design.graduation.measured =
                    measured.map(|(place, thickness_mm)| MeasuredThickness { place, thickness_mm }).into();
            }),
            ("one side's arch", false, |design| {
                let arch = &mut design.arching.cross_arches.waist;
                arch.bass = Some(BassArch { fullness: 1.1 * arch.fullness, curve: arch.curve.clone() });
            }),
            ("wings", true, |design| design.graduation.wings_mm = Some(2.0)),
            ("fluting", false, |design| {
                let SoundHoleChoice::EyesAndStem(hole) = &mut design.sound_holes.bass else {
                    panic!("the demonstration has f-holes")
                };
                hole.lower_wing_hollow_mm = Some(1.2);
            }),
        ];
        for (name, alike, change) in changes {
            let mut design = Design::demo();
            change(&mut design);
            let Shape { outline, holes, surface, graduation } = Shape::new(&design).unwrap();
            let mesh = PlanMesh::new(&outline, &holes, MeshSize::Preview).unwrap();
            assert!(mesh.mirror().is_some());
            assert_eq!(surface.sides_are_alike() && graduation.sides_are_alike(), alike, "{name}");
            let mid = MidSurface::new(&mesh, &surface, &graduation);
            let everywhere = MidSurface::laid(&mesh, None, |p| Sample::carved(&surface, &graduation, p));
            let apart = |a: &[[f64; 3]], b: &[[f64; 3]]| {
                a.as_flattened().iter().zip(b.as_flattened()).fold(0.0, |most: f64, (a, b)| most.max((a - b).abs()))
            };
            let thickness = |a: &[f64], b: &[f64]| a.iter().zip(b).all(|(a, b)| (a - b).abs() < 1e-11);
            assert!(apart(&mid.nodes_mm, &everywhere.nodes_mm) < 1e-11, "{name}");
            assert!(apart(&mid.normals, &everywhere.normals) < 1e-11, "{name}");
            assert!(apart(&mid.edge_normals, &everywhere.edge_normals) < 1e-11, "{name}");
            assert!(thickness(&mid.thickness_mm, &everywhere.thickness_mm), "{name}");
            assert!(thickness(&mid.edge_thickness_mm, &everywhere.edge_thickness_mm), "{name}");
        }
    }
}
