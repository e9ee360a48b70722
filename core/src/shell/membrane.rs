//! The in-plane part: the optimal triangle with drilling rotations.
//!
//! Felippa 2003, "A study of optimal membrane triangles with drilling freedoms", Comput. Methods Appl. Mech. Engrg. 192,
//! 2125-2168: template with basic stiffness (force lumping with α_b = 3/2) and higher-order stiffness (Figure 2 and the
//! OPT row of Table 1). Exact in-plane bending for any aspect ratio of isotropic rectangles cut into triangles.
//!
//! Degrees of freedom: (u, v, drilling) at corners 0, 1, 2.

use nalgebra::{Matrix3, Vector3};

use super::facet::Facet;
use super::form::{Form, PerDof};
use super::patch::next;
use super::section::Section;

/// Share of the drilling rotations in the edge displacements.
const ALPHA: f64 = 1.5;

/// The factor of the higher-order stiffness must stay above zero, else drilling costs nothing: the paper's floor.
const LEAST_BETA_0: f64 = 0.01;

/// β₁…β₉ of the optimal element.
const BETA: [f64; 9] = [1.0, 2.0, 1.0, 0.0, 1.0, -1.0, -1.0, -1.0, -2.0];

/// (dof, strain 11 22 12): mean in-plane strain, L/(A h) of the paper.
pub(super) fn mean_strain(facet: &Facet) -> PerDof<3> {
    strain_with(ALPHA, facet)
}

/// (dof, strain 11 22 12): in-plane strain of displacements that are linear between the corners, whatever the drilling.
pub(super) fn linear_strain(facet: &Facet) -> PerDof<3> {
    strain_with(0.0, facet)
}

/// Adds to `strain` (bending dof, strain 11 22 12) what the mean strain lacks because the surface leans from the facet over the edges' middles, where its
/// normals are `edge_normals` (edge, xyz; unit, in the top's frame).
///
/// The drilling rotations stand for how the edges bend in the plane. On a curved surface an edge bends within it by ∫Ω′·n ds, its change of geodesic
/// curvature, Ω being the nodes' rotation and n the surface's own normal; the facet's normal in its place counts a part of plain bending too.
/// Geodesic curvature is intrinsic (Gauss's theorema egregium; do Carmo 1976, Differential geometry of curves and surfaces, section 4-4), so
/// that bending without stretch leaves it alone: with n over the edge's middle it costs exactly nothing where both curvatures are even.
#[inline(never)] // Laid into the element it would be 0.4 kB more of the page's first visit.
pub(super) fn add_strain_of_lean(strain: &mut PerDof<3>, facet: &Facet, edge_normals: &[Vector3<f64>; 3]) {
    for (edge, normal) in edge_normals.iter().enumerate() {
        let normal = facet.facet_from_top * normal;
        let (t, by) = (facet.tangents[edge], ALPHA * facet.lengths[edge].powi(2) / (12.0 * facet.area * normal.z));
        let across = Vector3::new(t.y * t.y, t.x * t.x, -2.0 * t.x * t.y) * by;
        for (corner, across) in [(next(edge), across), (edge, -across)] {
            for strained in 0..3 {
                strain[(3 * corner + 1, strained)] += normal.x * across[strained];
                strain[(3 * corner + 2, strained)] += normal.y * across[strained];
            }
        }
    }
}

fn strain_with(drilling: f64, facet: &Facet) -> PerDof<3> {
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
        strain[(dof + 2, 0)] = drilling / 6.0 * y_jk * (y_ik - y_ji);
        strain[(dof + 2, 1)] = drilling / 6.0 * x_kj * (x_ki - x_ij);
        strain[(dof + 2, 2)] = drilling / 3.0 * (x_ki * y_ik - x_ij * y_ji);
    }
    strain / (2.0 * facet.area)
}

/// Adds the higher-order stiffness of wood so `thick` (m) to the membrane's.
pub(super) fn add_higher_order(membrane: &mut Form, facet: &Facet, section: &Section, thick: f64) {
    let natural = natural_stiffness(facet, &section.plane_stress_pa);
    let deviator = [[0, 1], [1, 2], [2, 0]].map(|[a, b]| 0.5 * (corner_modes(facet, a) + corner_modes(facet, b)));
    let mut per_rotation = Matrix3::zeros();
    for q in &deviator {
        per_rotation += q.tr_mul(&(natural * q));
    }
    let rotation = hierarchical_rotations(facet);
    let factor = 2.25 * beta_0(section) * thick * facet.area;
    membrane.add(&rotation, &(rotation * per_rotation), factor);
}

/// β₀ = 2/W − 3/2 above a floor, W the mean of stiffness times compliance in one direction, over all directions (the paper's rule for sheets that
/// aren't isotropic; from memory). For isotropic ones it is ½(1 − 4ν²); spruce is at the floor, in any axes.
///
/// With ν₁₂ν₂₁ along the facet's own axes for ν² an element depended on the corner that was counted first, and the demonstration's bare
/// frequencies were off by 0.93 % (rms of twelve at 2 500 nodes; hinged 2.02) where they now are by 0.74 (1.91).
fn beta_0(section: &Section) -> f64 {
    let stiffness = along_turned_axis(&section.plane_stress_pa, 2.0);
    let compliance = along_turned_axis(&section.in_plane_per_pa, 1.0);
    let waves: f64 = stiffness.waves.iter().zip(&compliance.waves).map(|(k, c)| k * c).sum();
    (2.0 / (stiffness.mean * compliance.mean + 0.5 * waves) - 1.5).max(LEAST_BETA_0)
}

/// What a matrix on (11, 22, 12) has along axis 1 as that turns.
struct Turning {
    mean: f64,
    /// Amplitudes of the cosines and sines of two and four times the angle.
    waves: [f64; 4],
}

/// What is one along a turned axis has `shear` sin cos for its third entry: an engineering shear strain twice that product, a shear stress once.
fn along_turned_axis(matrix: &Matrix3<f64>, shear: f64) -> Turning {
    let [one, other] = [matrix[(0, 0)], matrix[(1, 1)]];
    let both = 2.0 * matrix[(0, 1)] + shear * shear * matrix[(2, 2)];
    let [leaning_one, leaning_other] = [0, 1].map(|k| 2.0 * shear * matrix[(k, 2)]);
    Turning {
        mean: (3.0 * (one + other) + both) / 8.0,
        waves: [
            (one - other) / 2.0,
            (leaning_one + leaning_other) / 4.0,
            (one + other - both) / 8.0,
            (leaning_one - leaning_other) / 8.0,
        ],
    }
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

#[cfg(test)]
mod tests {
    use std::f64::consts::TAU;

    use super::*;
    use crate::wood::{FacetCompliance, OrthotropicConstants, Species, Wood};

    fn sections(constants: OrthotropicConstants) -> impl Iterator<Item = (f64, Section)> {
        let wood = Wood { constants, density_kg_m3: 400.0, ring_angle_deg: 0.0 };
        (0..24).map(move |step| {
            let turn = TAU * f64::from(step) / 24.0;
            let (s, c) = turn.sin_cos();
            let seen = wood.grain().seen_from(&Matrix3::new(c, s, 0.0, -s, c, 0.0, 0.0, 0.0, 1.0));
            (turn, Section::new(&FacetCompliance::mean(&[seen; 3]), 3e-3))
        })
    }

    /// Felippa's value for isotropic sheets, optimal for rectangles cut into triangles.
    #[test]
    fn beta_of_isotropic_sheets_is_the_optimal_one() {
        for nu in [0.0, 0.2, 0.3, 0.45] {
            for (_, section) in sections(OrthotropicConstants::isotropic(10.0, nu)) {
                assert!((beta_0(&section) - 0.5 * (1.0 - 4.0 * nu * nu)).abs() < 1e-12);
            }
        }
    }

    /// Against entries of the matrices in 24 axes, turned by the wood's own code: exact for waves of up to four times the angle.
    #[test]
    fn beta_is_that_of_the_mean_over_directions_in_any_axes() {
        let mut nearly_isotropic = OrthotropicConstants::isotropic(10.0, 0.2);
        nearly_isotropic.e_l_gpa *= 1.2;
        for (constants, floor) in [(nearly_isotropic, false), (Species::SitkaSpruce.record().constants, true)] {
            let products = sections(constants).map(|(_, s)| s.plane_stress_pa[(0, 0)] * s.in_plane_per_pa[(0, 0)]);
            let exact = (2.0 / (products.sum::<f64>() / 24.0) - 1.5).max(LEAST_BETA_0);
            assert_eq!(exact == LEAST_BETA_0, floor, "{exact}");
            for (turn, section) in sections(constants) {
                assert!((beta_0(&section) - exact).abs() < 1e-12, "at {turn}");
            }
        }
    }
}
