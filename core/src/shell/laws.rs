//! Laws of the assembled model, on distorted meshes.

use nalgebra::Vector3;
use proptest::prelude::*;

use super::*;
use crate::wood::{OrthotropicConstants, Species, Wood};

const SIDE: usize = 4;
const CELL_MM: f64 = 8.0;

prop_compose! {
    /// A flat square sheet of 5 × 5 nodes, the inner ones moved about, one diagonal or the other at random.
    fn distorted_sheet()(
        moves in prop::collection::vec(prop::array::uniform2(-0.25_f64..0.25), (SIDE + 1) * (SIDE + 1)),
        diagonals in prop::collection::vec(any::<bool>(), SIDE * SIDE),
    ) -> (Vec<[f64; 3]>, Vec<[u32; 3]>) {
        let nodes = (0..=SIDE).flat_map(|j| (0..=SIDE).map(move |i| (i, j))).zip(&moves).map(|((i, j), shift)| {
            let inner = |k: usize| if k == 0 || k == SIDE { 0.0 } else { 1.0 };
            let both = inner(i) * inner(j);
            [CELL_MM * (i as f64 + both * shift[0]), CELL_MM * (j as f64 + both * shift[1]), 0.0]
        }).collect();
        let triangles = (0..SIDE * SIDE).flat_map(|cell| {
            let corner = |i: usize, j: usize| ((cell / SIDE + j) * (SIDE + 1) + cell % SIDE + i) as u32;
            let (a, b, c, d) = (corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1));
            if diagonals[cell] { [[a, b, c], [a, c, d]] } else { [[a, b, d], [b, c, d]] }
        }).collect();
        (nodes, triangles)
    }
}

fn spruce() -> Wood {
    let record = Species::SitkaSpruce.record();
    Wood { constants: record.constants, density_kg_m3: record.density_kg_m3, ring_angle_deg: 0.0 }
}

/// What must be in balance at an inner node.
#[derive(Clone, Copy)]
enum Balance {
    Forces,
    ForcesAndMoments,
}

/// Largest force on an inner node over the largest anywhere, for the displacements `field` gives at each node.
fn unbalanced(
    (nodes, triangles): &(Vec<[f64; 3]>, Vec<[u32; 3]>),
    thickness_mm: f64,
    wood: &Wood,
    balance: Balance,
    field: impl Fn(&Vector3<f64>) -> [f64; 6],
) -> f64 {
    let geometry = ShellGeometry::new(nodes, None, &vec![thickness_mm; nodes.len()], triangles).unwrap();
    let equations = Equations::new(triangles, &Supports::free(nodes.len())).unwrap();
    let model = ShellModel::assemble(&geometry, wood, &equations, ElementOptions::default()).unwrap();
    let shape: Vec<f64> = geometry.nodes_m().iter().flat_map(&field).collect();
    let moved = equations.gather(&shape);
    let mut forces = vec![0.0; moved.len()];
    let pattern = &equations.pattern;
    for column in 0..moved.len() {
        for at in pattern.column_starts[column]..pattern.column_starts[column + 1] {
            let row = pattern.row_indices[at] as usize;
            forces[row] += model.stiffness[at] * moved[column];
            if row != column {
                forces[column] += model.stiffness[at] * moved[row];
            }
        }
    }
    let largest_of = |values: &[f64]| values.iter().fold(0.0_f64, |most, value| most.max(value.abs()));
    let per_node: Vec<f64> = equations
        .spread(&forces)
        .chunks_exact(6)
        .map(|f| match balance {
            Balance::Forces => largest_of(&f[..3]),
            // Moments become forces over the cell's size, so that both can be compared.
            Balance::ForcesAndMoments => largest_of(&f[..3]).max(largest_of(&f[3..]) / (CELL_MM * 1e-3)),
        })
        .collect();
    let on_edge = |node: usize| [node % (SIDE + 1), node / (SIDE + 1)].iter().any(|k| *k == 0 || *k == SIDE);
    let largest =
        |edge: bool| (0..per_node.len()).filter(|&n| on_edge(n) == edge).map(|n| per_node[n]).fold(0.0, f64::max);
    largest(false) / largest(true)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// The patch test of constant in-plane strain, bending and twist: an exact field leaves every inner node in balance
    /// (Irons & Razzaque 1972; any finite-element textbook).
    #[test]
    fn inner_nodes_balance_under_constant_strain_and_curvature(
        sheet in distorted_sheet(),
        which in 0_usize..6,
    ) {
        let mut strength = [0.0; 6];
        strength[which] = 1.0;
        let [exx, eyy, exy, kxx, kyy, kxy] = strength;
        let field = |p: &Vector3<f64>| {
            let (x, y) = (p.x, p.y);
            let (lean_x, lean_y) = (kxx * x + 0.5 * kxy * y, kyy * y + 0.5 * kxy * x);
            let w = -0.5 * (kxx * x * x + kyy * y * y + kxy * x * y);
            [exx * x + 0.5 * exy * y, eyy * y + 0.5 * exy * x, w, -lean_y, lean_x, 0.0]
        };
        let rest = unbalanced(&sheet, 2.7, &spruce(), Balance::ForcesAndMoments, field);
        prop_assert!(rest < 1e-9, "{rest:e}");
    }

    /// The patch test of constant transverse shear: normals held upright (by couples at
    /// every node, so only forces balance), w linear. The element shares an edge's mean
    /// shear between shearing and bending as 1 : 1/φ, φ being twelve times bending over shear stiffness and length squared,
    /// so the state is exact in the shear-flexible limit it belongs to (Katili 1993): here φ is above 1e10.
    #[test]
    fn inner_nodes_balance_under_constant_transverse_shear(sheet in distorted_sheet(), along in 0.0_f64..6.3) {
        let soft = OrthotropicConstants { g_lt_gpa: 1e-10, g_rt_gpa: 1e-10, ..OrthotropicConstants::isotropic(10.0, 0.3) };
        let wood = Wood { constants: soft, ..spruce() };
        let (s, c) = along.sin_cos();
        let field = |p: &Vector3<f64>| [0.0, 0.0, c * p.x + s * p.y, 0.0, 0.0, 0.0];
        let rest = unbalanced(&sheet, 8.0, &wood, Balance::Forces, field);
        prop_assert!(rest < 1e-9, "{rest:e}");
    }
}
