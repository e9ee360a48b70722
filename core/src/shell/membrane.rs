//! The in-plane part: the optimal triangle with drilling rotations.
//!
//! Felippa 2003, "A study of optimal membrane triangles with drilling freedoms", Comput. Methods Appl. Mech. Engrg. 192,
//! 2125-2168: template with basic stiffness (force lumping with α_b = 3/2) and higher-order stiffness (Figure 2 and the
//! OPT row of Table 1). Exact in-plane bending for any aspect ratio of isotropic rectangles cut into triangles.
//!
//! Degrees of freedom: (u, v, drilling) at corners 0, 1, 2.

use nalgebra::Matrix3;

use super::facet::Facet;
use super::form::{Form, PerDof};
use super::patch::next;

/// Share of the drilling rotations in the edge displacements.
const ALPHA: f64 = 1.5;

/// The factor of the higher-order stiffness must stay above zero, else drilling costs nothing; 0.01 is Felippa's floor.
const BETA_0_FLOOR: f64 = 0.01;

/// β₁…β₉ of the optimal element.
const BETA: [f64; 9] = [1.0, 2.0, 1.0, 0.0, 1.0, -1.0, -1.0, -1.0, -2.0];

/// (dof, strain 11 22 12): mean in-plane strain, L/(A h) of the paper.
pub(super) fn mean_strain(facet: &Facet) -> PerDof<3> {
    let p = &facet.corners;
    let mut strain = PerDof::zeros();
    for i in 0..3 {
        let (j, k) = (next(i), next(next(i)));
        let (x_kj, y_jk) = (p[k].x - p[j].x, p[j].y - p[k].y);
        let (x_ki, y_ik) = (p[k].x - p[i].x, p[i].y - p[k].y);
        let (x_ij, y_ji) = (p[i].x - p[j].x, p[j].y - p[i].y);
        let dof = 3 * i;
        strain[(dof, 0)] = y_jk;
        strain[(dof, 2)] = x_kj;
        strain[(dof + 1, 1)] = x_kj;
        strain[(dof + 1, 2)] = y_jk;
        strain[(dof + 2, 0)] = ALPHA / 6.0 * y_jk * (y_ik - y_ji);
        strain[(dof + 2, 1)] = ALPHA / 6.0 * x_kj * (x_ki - x_ij);
        strain[(dof + 2, 2)] = ALPHA / 3.0 * (x_ki * y_ik - x_ij * y_ji);
    }
    strain / (2.0 * facet.area)
}

/// Adds the higher-order stiffness for the in-plane stiffness `plane_stress` (N/m) to the membrane's.
pub(super) fn add_higher_order(membrane: &mut Form, facet: &Facet, plane_stress: &Matrix3<f64>) {
    let natural = natural_stiffness(facet, plane_stress);
    let deviator = [[0, 1], [1, 2], [2, 0]].map(|[a, b]| 0.5 * (corner_modes(facet, a) + corner_modes(facet, b)));
    let mut per_rotation = Matrix3::zeros();
    for q in &deviator {
        per_rotation += q.tr_mul(&(natural * q));
    }
    let rotation = hierarchical_rotations(facet);
    // nu_12 nu_21 stands for nu² where the sheet is orthotropic.
    let nu_squared = plane_stress[(0, 1)] * plane_stress[(1, 0)] / (plane_stress[(0, 0)] * plane_stress[(1, 1)]);
    let beta_0 = (0.5 * (1.0 - 4.0 * nu_squared)).max(BETA_0_FLOOR);
    membrane.add(&rotation, &(rotation * per_rotation), 2.25 * beta_0 * facet.area);
}

/// Stiffness per stretches along the three edges, in the paper's edge order 21, 32, 13.
fn natural_stiffness(facet: &Facet, plane_stress: &Matrix3<f64>) -> Matrix3<f64> {
    let from_edges = facet.strain_from_edges();
    from_edges.tr_mul(&(plane_stress * from_edges))
}

/// Natural strains (edge) per hierarchical drilling rotations (corner), at corner `at`: Q₁, Q₂, Q₃ of the paper.
fn corner_modes(facet: &Facet, at: usize) -> Matrix3<f64> {
    const ORDER: [[usize; 9]; 3] =
        [[1, 2, 3, 4, 5, 6, 7, 8, 9], [9, 7, 8, 3, 1, 2, 6, 4, 5], [5, 6, 4, 8, 9, 7, 2, 3, 1]];
    Matrix3::from_fn(|edge, corner| {
        let beta = BETA[ORDER[at][3 * edge + corner] - 1];
        2.0 / 3.0 * facet.area * beta / facet.lengths[edge].powi(2)
    })
}

/// (dof, corner): drilling rotations less the facet's own mean rotation.
fn hierarchical_rotations(facet: &Facet) -> PerDof<3> {
    let mut rotation = PerDof::zeros();
    for corner in 0..3 {
        rotation[(3 * corner + 2, corner)] = 1.0;
        for other in 0..3 {
            // Minus the mean rotation ½(∂v/∂x − ∂u/∂y).
            rotation[(3 * other, corner)] = 0.5 * facet.gradients[other].y;
            rotation[(3 * other + 1, corner)] = -0.5 * facet.gradients[other].x;
        }
    }
    rotation
}
