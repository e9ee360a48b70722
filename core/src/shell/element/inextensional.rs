//! Bending that stretches nothing.

use nalgebra::{SVector, Vector3};
use proptest::prelude::*;

use super::tests::spruce;
use super::*;

/// A place in plan; the unit of length is the size of the element.
type Plan = [f64; 2];

/// Second derivatives 11, 22, 12 of a height.
type Bend = [f64; 3];

fn slope([k11, k22, k12]: Bend, tilt: Plan, [x, y]: Plan) -> Plan {
    [k11 * x + k12 * y + tilt[0], k12 * x + k22 * y + tilt[1]]
}

fn height([k11, k22, k12]: Bend, tilt: Plan, [x, y]: Plan) -> f64 {
    0.5 * (k11 * x * x + k22 * y * y) + k12 * x * y + tilt[0] * x + tilt[1] * y
}

/// Displacements (u, v, w) and rotations of a shallow surface bent by `bent` in which no length changes, from
/// u,x = −w₀,x w,x, v,y = −w₀,y w,y, u,y + v,x = −(w₀,x w,y + w₀,y w,x) (Marguerre's strains, any book on shallow shells).
///
/// There are such for κ₁₁k₂₂ + κ₂₂k₁₁ = 2κ₁₂k₁₂ only: bending keeps Gauss's curvature.
fn bent_without_stretch(surface: Bend, bent: Bend, tilt: Plan, place: Plan) -> [Vector3<f64>; 2] {
    let ([c11, c22, c12], [k11, k22, k12], [a, b], [x, y]) = (surface, bent, tilt, place);
    let (mixed_1, mixed_2, both) = (c11 * k12 + c12 * k11, c22 * k12 + c12 * k22, c12 * k12);
    let u = -(c11 * k11 * x.powi(3) / 3.0 + 0.5 * mixed_1 * x * x * y + both * x * y * y)
        - a * (0.5 * c11 * x * x + c12 * x * y)
        - mixed_2 * y.powi(3) / 6.0
        - 0.5 * a * c22 * y * y;
    let v = -(c22 * k22 * y.powi(3) / 3.0 + 0.5 * mixed_2 * y * y * x + both * y * x * x)
        - b * (0.5 * c22 * y * y + c12 * x * y)
        - mixed_1 * x.powi(3) / 6.0
        - 0.5 * b * c11 * x * x;
    let u_y = -(0.5 * mixed_1 * x * x + 2.0 * both * x * y + a * c12 * x) - 0.5 * mixed_2 * y * y - a * c22 * y;
    let v_x = -(0.5 * mixed_2 * y * y + 2.0 * both * x * y + b * c12 * y) - 0.5 * mixed_1 * x * x - b * c11 * x;
    let ([p, q], [r, s]) = (slope(surface, [0.0; 2], place), slope(bent, tilt, place));
    // v,x = Ω₃ − Ω₁ p and u,y = Ω₂ q − Ω₃ of a surface whose tangents are (1, 0, p) and (0, 1, q), with Ω₁ = s and Ω₂ = −r.
    let turn = Vector3::new(s, -r, 0.5 * (v_x - u_y) + 0.5 * (p * s - q * r));
    [Vector3::new(u, v, height(bent, tilt, place)), turn]
}

proptest! {
    /// An element on a quadratic surface doesn't stretch when this is bent, evenly, as it can be without stretch (so that it doesn't lock):
    /// Gauss's theorem, by the closed form above. To first order in the surface's rise, of which the second is left.
    #[test]
    fn bending_without_stretch_costs_no_stretch(
        corners in prop::array::uniform3(prop::array::uniform2(-1.0_f64..1.0)),
        surface in prop::array::uniform3(-1.0_f64..1.0),
        bent in prop::array::uniform2(-1.0_f64..1.0),
        tilt in prop::array::uniform2(-1.0_f64..1.0),
    ) {
        let [a, b, c] = corners;
        let area = 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
        prop_assume!(area > 0.1 && surface[0].abs() > 0.2);
        let surface = surface.map(|c| 1e-4 * c);
        let [k11, k12] = bent;
        let bent = [k11, (2.0 * surface[2] * k12 - surface[1] * k11) / surface[0], k12];
        // A drilling about the facet's normal stretches by up to a third of this.
        let scale = 1e-4 * bent.iter().fold(0.0_f64, |most, k| most.max(k.abs()));
        prop_assume!(scale > 1e-6);
        let normal = |place: Plan| {
            let [p, q] = slope(surface, [0.0; 2], place);
            Vector3::new(-p, -q, 1.0).normalize()
        };
        let middle = |edge: usize| [0, 1].map(|k| 0.5 * (corners[edge][k] + corners[(edge + 1) % 3][k]));
        let nodes = corners.map(|p| Vector3::new(p[0], p[1], height(surface, [0.0; 2], p)));
        let flat = Patch::between(nodes, corners.map(normal), [0.05; 3]);
        let patch = Patch { edge_normals: [0, 1, 2].map(|edge| normal(middle(edge))), ..flat };
        let fields = Fields::new(&patch, &spruce(0.0).grain(), ElementOptions::default());
        let (mut in_plane, mut bending) = (SVector::<f64, 9>::zeros(), SVector::<f64, 9>::zeros());
        for (corner, place) in corners.iter().enumerate() {
            let [moved, turned] =
                bent_without_stretch(surface, bent, tilt, *place).map(|v| fields.facet.facet_from_top * v);
            in_plane.fixed_rows_mut::<3>(3 * corner).copy_from_slice(&[moved.x, moved.y, turned.z]);
            bending.fixed_rows_mut::<3>(3 * corner).copy_from_slice(&[moved.z, turned.x, turned.y]);
        }
        let strain = fields.strain.tr_mul(&in_plane) + fields.beside_drilling.tr_mul(&bending);
        prop_assert!(strain.amax() <= 2e-3 * scale, "{:e} of {scale:e}", strain.amax() / scale);
    }
}
