//! Laws every element must obey, over random triangles in random wood.

use nalgebra::{Rotation3, SVector, Vector3};
use proptest::prelude::*;

use super::*;
use crate::wood::{OrthotropicConstants, Species, Wood};

type Displacements = SVector<f64, 18>;

pub(super) fn spruce(ring_angle_deg: f64) -> Wood {
    let record = Species::SitkaSpruce.record();
    Wood { constants: record.constants, density_kg_m3: record.density_kg_m3, ring_angle_deg }
}

/// Twice the area over the square of the longest edge, below which a random triangle is a sliver: its stiffnesses then span more
/// decades than double precision holds. A triangle of 20° has 0.36.
const SLIVER: f64 = 0.1;

fn slenderness(nodes: &[Vector3<f64>; 3]) -> f64 {
    let [a, b, c] = [0, 1, 2].map(|k| nodes[(k + 1) % 3] - nodes[k]);
    a.cross(&b).norm() / a.norm_squared().max(b.norm_squared()).max(c.norm_squared())
}

fn triangle() -> impl Strategy<Value = ([Vector3<f64>; 3], [Vector3<f64>; 3], [f64; 3])> {
    any_triangle().prop_filter("no sliver", |(nodes, _, _)| slenderness(nodes) > SLIVER)
}

prop_compose! {
    /// A triangle some millimetres in size, anywhere and at any slope, with the normals of a curved surface.
    fn any_triangle()(
        corners in prop::array::uniform3(prop::array::uniform2(-3e-3_f64..3e-3)),
        tilt in prop::array::uniform3(-1.0_f64..1.0),
        bends in prop::array::uniform3(prop::array::uniform2(-0.2_f64..0.2)),
        thickness in prop::array::uniform3(2e-3_f64..4e-3),
    ) -> ([Vector3<f64>; 3], [Vector3<f64>; 3], [f64; 3]) {
        // Spread the corners so that few triangles are slivers.
        let spread = [[0.0, 0.0], [9e-3, 1e-3], [2e-3, 8e-3]];
        let turn = Rotation3::from_euler_angles(tilt[0], tilt[1], tilt[2]);
        let nodes = [0, 1, 2].map(|k| {
            turn * Vector3::new(corners[k][0] + spread[k][0], corners[k][1] + spread[k][1], 0.1)
        });
        let normals = bends.map(|[a, b]| turn * Vector3::new(a, b, 1.0).normalize());
        (nodes, normals, thickness)
    }
}

/// Displacements and rotations of a rigid motion.
fn rigid_motion(nodes: &[Vector3<f64>; 3], shift: Vector3<f64>, turn: Vector3<f64>) -> Displacements {
    let mut motion = Displacements::zeros();
    for (corner, node) in nodes.iter().enumerate() {
        motion.fixed_rows_mut::<3>(6 * corner).copy_from(&(shift + turn.cross(node)));
        motion.fixed_rows_mut::<3>(6 * corner + 3).copy_from(&turn);
    }
    motion
}

proptest! {
    /// Physics knows no sides.
    #[test]
    fn the_mirror_image_of_an_element_is_that_of_the_mirror_image(
        (nodes, normals, thickness) in triangle(),
        free_edges in any::<[bool; 3]>(),
    ) {
        let patch = Patch { free_edges, ..Patch::between(nodes, normals, thickness) };
        let grain = spruce(0.0).grain();
        prop_assert!(grain.is_symmetric() && !spruce(7.0).grain().is_symmetric());
        let element = |patch: &Patch| element(patch, &grain, ElementOptions::default());
        let (own, image) = (element(&patch), element(&patch.mirrored()));
        let turned = own.mirrored();
        prop_assert!((turned.stiffness - image.stiffness).amax() <= 1e-10 * own.stiffness.amax());
        prop_assert!((turned.normal - image.normal).amax() < 1e-12);
        prop_assert!((turned.area / image.area - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_rigid_motion_costs_nothing(
        (nodes, normals, thickness) in triangle(),
        shift in prop::array::uniform3(-1.0_f64..1.0),
        turn in prop::array::uniform3(-1.0_f64..1.0),
        curved_edges: bool,
    ) {
        let part = element(&Patch::between(nodes, normals, thickness), &spruce(0.0).grain(), ElementOptions { curved_edges, ..ElementOptions::default() });
        let motion = rigid_motion(&nodes, shift.into(), turn.into());
        let forces = part.stiffness * motion;
        let scale = part.stiffness.amax() * motion.amax();
        prop_assert!(forces.amax() < 1e-11 * scale, "{:e}", forces.amax() / scale);
    }

    #[test]
    fn only_rigid_motions_cost_nothing((nodes, normals, thickness) in triangle(), ring_angle in -90.0_f64..90.0) {
        let part = element(&Patch::between(nodes, normals, thickness), &spruce(ring_angle).grain(), ElementOptions::default());
        // Rotations in units of a millimetre's turn, so that all degrees of freedom weigh alike.
        let mut scaled = part.stiffness;
        for corner in 0..3 {
            for dof in 3..6 {
                let at = 6 * corner + dof;
                scaled.row_mut(at).scale_mut(1e3);
                scaled.column_mut(at).scale_mut(1e3);
            }
        }
        let whole = faer::Mat::from_fn(18, 18, |row, column| scaled[(row, column)]);
        let values = whole.self_adjoint_eigenvalues(faer::Side::Lower).unwrap();
        prop_assert!(values[5] < 1e-10 * values[17]);
        prop_assert!(values[6] > 1e-7 * values[17], "{values:?}");
    }

    /// Energy of constant in-plane strain, curvature and twist of a flat element of even thickness, against ½ε·D·ε A: the
    /// single-element form of the patch test (Irons; any finite-element textbook). With the displacements of an exact
    /// constant-strain field, no element of the mesh can do better or worse. With the rings at an angle the forces lean the normal
    /// too, by the compliance's coupling, and no transverse force acts.
    #[test]
    fn constant_strain_and_curvature_have_their_exact_energy(
        (nodes, _, _) in triangle(),
        strain in prop::array::uniform3(-1.0_f64..1.0),
        curvature in prop::array::uniform3(-1.0_f64..1.0),
        ring_angle in -90.0_f64..90.0,
    ) {
        let nodes = nodes.map(|p| Vector3::new(p.x, p.y, 0.0));
        prop_assume!((nodes[1] - nodes[0]).cross(&(nodes[2] - nodes[0])).z > 1e-6);
        let t = 3e-3;
        let wood = spruce(ring_angle);
        let part = element(&Patch::between(nodes, [Vector3::z(); 3], [t; 3]), &wood.grain(), ElementOptions::default());
        let compliance = wood.grain().seen_from(&nalgebra::Matrix3::identity());
        let stiffness = compliance.in_plane.try_inverse().unwrap();
        let e = Vector3::from(strain);
        let by_force = compliance.coupling.transpose() * stiffness * e;
        let mut motion = Displacements::zeros();
        for (corner, p) in nodes.iter().enumerate() {
            // From the first corner: from afar the field is nearly all rigid motion, whose rounding hides the strain's energy.
            let (x, y) = (p.x - nodes[0].x, p.y - nodes[0].y);
            let [exx, eyy, exy] = strain;
            let [kxx, kyy, kxy] = curvature.map(|k| 1e3 * k);
            // Lean β with curvatures β_x,x = kxx …; w with Kirchhoff's w,x = −β_x.
            let (lean_x, lean_y) =
                (kxx * x + 0.5 * kxy * y + by_force.x, kyy * y + 0.5 * kxy * x + by_force.y);
            let w = -0.5 * (kxx * x * x + kyy * y * y + kxy * x * y);
            let own = [exx * x + 0.5 * exy * y, eyy * y + 0.5 * exy * x, w, -lean_y, lean_x, 0.0];
            motion.fixed_rows_mut::<6>(6 * corner).copy_from_slice(&own);
        }
        let k = Vector3::from(curvature) * 1e3;
        let area = 0.5 * (nodes[1] - nodes[0]).cross(&(nodes[2] - nodes[0])).z;
        let exact = area * (t * e.dot(&(stiffness * e)) + t.powi(3) / 12.0 * k.dot(&(stiffness * k)));
        let got = motion.dot(&(part.stiffness * motion));
        prop_assert!((got / exact - 1.0).abs() < 1e-9, "{got} against {exact}");
    }

    #[test]
    fn the_stiffness_does_not_depend_on_where_the_element_is_seen_from(
        (nodes, normals, thickness) in triangle(),
        tilt in prop::array::uniform3(-3.0_f64..3.0),
    ) {
        let material = Wood { constants: OrthotropicConstants::isotropic(10.0, 0.3), ..spruce(0.0) };
        let turn = Rotation3::from_euler_angles(tilt[0], tilt[1], tilt[2]);
        let here = element(&Patch::between(nodes, normals, thickness), &material.grain(), ElementOptions::default());
        let there = element(
            &Patch::between(nodes.map(|p| turn * p), normals.map(|n| turn * n), thickness),
            &material.grain(),
            ElementOptions::default(),
        );
        let mut turn_all = ElementMatrix::zeros();
        for block in 0..6 {
            turn_all.fixed_view_mut::<3, 3>(3 * block, 3 * block).copy_from(turn.matrix());
        }
        let back = turn_all.transpose() * there.stiffness * turn_all;
        prop_assert!((back - here.stiffness).amax() < 1e-9 * here.stiffness.amax());
    }
}

/// Found on a vaulted roof 25 m in radius: normals equal but for rounding must not turn the wood by an undefined angle.
#[test]
fn the_least_turn_of_almost_equal_directions_is_a_rotation() {
    let from = Vector3::new(0.6, 0.0, 0.8).normalize();
    for tilt in [0.0, 1e-16, 1e-12, 1e-8, 1e-3, 1.0] {
        let to = (from + Vector3::new(0.0, tilt, -tilt)).normalize();
        let turn = least_turn(&from, &to);
        assert!((turn * from - to).norm() < 1e-15);
        assert!((turn.transpose() * turn - nalgebra::Matrix3::identity()).norm() < 1e-15);
    }
}
