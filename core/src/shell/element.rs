//! One element: the parts put together and turned into the top's frame.

use nalgebra::{Matrix3, SMatrix, Vector3};

use super::bending::EdgeLean;
use super::bent_metric::bent_by_stretch;
use super::curved_edge::CurvedEdges;
use super::edge_fields::EdgeFields;
use super::edge_layer;
use super::facet::Facet;
use super::force_lean::force_lean;
use super::form::{Form, PerDof};
use super::membrane;
use super::patch::Patch;
use super::section::Section;
use crate::wood::{FacetCompliance, Grain};

/// Stiffness of one element, (corner and dof, corner and dof), six degrees of freedom a corner in the top's frame.
pub(crate) type ElementMatrix = SMatrix<f64, 18, 18>;

/// Choices that were measured against each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ElementOptions {
    /// Take the edges for curves on the smooth surface (see the module's docs); off, the element is a flat facet.
    pub curved_edges: bool,
    /// Turn the wood with the smooth surface within the element, not with the facet.
    pub leaning_wood: bool,
}

impl Default for ElementOptions {
    fn default() -> Self {
        Self { curved_edges: true, leaning_wood: true }
    }
}

/// What an element gives to the model.
#[derive(Debug, Clone, Copy)]
pub(super) struct Element {
    /// Stiffness in the top's frame: N/m, N, N·m.
    pub(super) stiffness: ElementMatrix,
    /// The facet's unit normal.
    pub(super) normal: Vector3<f64>,
    /// Area of the surface it stands for, m².
    pub(super) area: f64,
}

/// How the motion of an element's nodes strains it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fields {
    pub(super) facet: Facet,
    pub(super) section: Section,
    pub(super) lean: EdgeLean,
    /// What forces in the plane add to the lean, per mean in-plane strain.
    pub(super) by_force: EdgeFields<3>,
    /// (membrane dof, strain 11 22 12): mean in-plane strain.
    pub(super) strain: PerDof<3>,
    /// (bending dof, strain 11 22 12): mean in-plane strain caused by bending the curved surface, where displacements are linear between the
    /// corners.
    pub(super) from_bending: PerDof<3>,
    /// The same where the drilling has its share in them, as it has in `strain`.
    beside_drilling: PerDof<3>,
    /// Area of the smooth surface over the facet's.
    pub(super) area_ratio: f64,
}

impl Fields {
    pub(super) fn new(patch: &Patch, grain: &Grain, options: ElementOptions) -> Self {
        let facet = Facet::new(&patch.nodes);
        let mean_thickness = patch.mean_thickness();
        let compliance = mean_compliance(&facet, patch, grain, options);
        let section = Section::new(&compliance, mean_thickness);
        let bending = section.plane_stress_pa * (mean_thickness.powi(3) / 12.0);
        let lean = EdgeLean::new(&facet, &bending, &section.shear_flexibility);
        let (from_bending, beside_drilling, area_ratio) = if options.curved_edges {
            let CurvedEdges { strain, area_ratio } = CurvedEdges::new(&facet, &patch.normals, &lean);
            let mut beside_drilling = strain;
            membrane::add_strain_of_lean(&mut beside_drilling, &facet, &patch.edge_normals);
            (strain, beside_drilling, area_ratio)
        } else {
            (PerDof::zeros(), PerDof::zeros(), 1.0)
        };
        let by_force = force_lean(&facet, &lean, &section.shear_by_stretch);
        let strain = membrane::mean_strain(&facet);
        Self { facet, section, lean, by_force, strain, from_bending, beside_drilling, area_ratio }
    }
}

/// Mid-edge points, edge by edge: exact for the quadratic energy of linear curvatures at constant thickness.
const POINTS: [[f64; 3]; 3] = [[0.5, 0.5, 0.0], [0.0, 0.5, 0.5], [0.5, 0.0, 0.5]];

/// The element of wood with `grain` on `patch`.
pub(super) fn element(patch: &Patch, grain: &Grain, options: ElementOptions) -> Element {
    let fields = Fields::new(patch, grain, options);
    let Fields { facet, section, lean, strain, beside_drilling: from_bending, area_ratio, .. } = &fields;
    let mut energy = fields.energy(patch);
    edge_layer::relieve(&mut energy.bending, facet, patch, section, lean);

    let mut membrane = Form::zero();
    membrane.add(strain, &(strain * energy.stretch), 1.0);
    membrane::add_higher_order(&mut membrane, facet, section, patch.mean_thickness());
    // Bending stretches a curved surface too.
    let stretched = from_bending * energy.stretch + energy.mixed;
    energy.bending.add(from_bending, &stretched, 1.0);
    energy.bending.add(&energy.mixed, from_bending, 1.0);
    let mixed = strain * stretched.transpose();

    let stiffness = turn(&facet.facet_from_top, &membrane, &mixed, &energy.bending);
    let normal = facet.facet_from_top.row(2).transpose();
    Element { stiffness, normal, area: facet.area * area_ratio }
}

/// Energy of an element as a quadratic form in its mean in-plane strain (11, 22, 12) and its bending degrees of freedom.
struct Energy {
    /// (strain, strain), N·m.
    stretch: Matrix3<f64>,
    /// (bending dof, strain).
    mixed: PerDof<3>,
    /// (bending dof, bending dof).
    bending: Form,
}

impl Fields {
    /// Bending, transverse shear and stretch of the mid-surface, with what its own bending couples of them.
    ///
    /// Shear: the strains along the three edges fix the mean strain and the curl. A linear field with them may vary as the softer
    /// shear stiffness H asks: of all gradients G with G₂₁ − G₁₂ the curl c, the cheapest costs c² det H / tr(H J⁻¹) per area, J
    /// the triangle's second moment (Lagrange's multiplier on tr GᵀHGJ). Varying it as the edges' own interpolation does would load
    /// the stiff direction along the grain, 20 times the rolling shear, with every change of shear across it.
    fn energy(&self, patch: &Patch) -> Energy {
        let Self { facet, section, lean, by_force, .. } = self;
        let (mean, mean_by_force) = (lean.edges.mean_shear(facet), by_force.mean_shear(facet));
        let (curl, curl_by_force) = (lean.edges.shear_curl(facet), by_force.shear_curl(facet));
        let spread = facet.second_moment().try_inverse().expect("a checked triangle has an area");
        let per_curl = section.shear.determinant() / (section.shear * spread).trace();
        // Transverse forces and, times the strains they go with, all that shear costs.
        let forces = mean * section.shear;
        let forces_by_force = mean_by_force * section.shear + section.coupling;
        let coupled = section.coupling * mean_by_force.transpose();
        let area = facet.area;
        let mut energy = Energy {
            stretch: section.membrane
                + coupled
                + mean_by_force * forces_by_force.transpose()
                + curl_by_force * curl_by_force.transpose() * per_curl,
            mixed: mean * forces_by_force.transpose() + curl * (curl_by_force * per_curl).transpose(),
            bending: Form::zero(),
        };
        energy.bending.add(&mean, &forces, area);
        energy.bending.add(&curl, &curl, area * per_curl);
        let by_stretch = bent_by_stretch(facet, patch, section);
        for (point, t) in POINTS.iter().zip(patch.edge_thickness) {
            let bending = section.plane_stress_pa * (t.powi(3) / 36.0);
            let curvature = lean.curvature(facet, point);
            // (strain, curvature)
            let bent = by_force.curvature(facet, point) + by_stretch;
            let moments = curvature * bending;
            energy.bending.add(&curvature, &moments, area);
            energy.mixed += moments * bent.transpose();
            energy.stretch += bent * bending * bent.transpose();
        }
        energy.stretch *= area;
        energy.mixed *= area;
        energy
    }
}

/// The wood's compliance, averaged over the element.
///
/// The smooth surface leans from the facet by a different angle everywhere, and spruce softens with the square of that angle
/// (27-fold at one radian across the grain, by its rolling shear): taking the facet's own lean for all of it leaves an
/// arched top 1-2 % too stiff at 2 500 nodes. Averaging compliance, not stiffness, is right for forces that pass through
/// hard and soft places in turn, as they do across a channel.
fn mean_compliance(facet: &Facet, patch: &Patch, grain: &Grain, options: ElementOptions) -> FacetCompliance {
    if !options.leaning_wood {
        return grain.seen_from(&facet.facet_from_top);
    }
    let own = facet.facet_from_top.row(2).transpose();
    let turned = |normal: Vector3<f64>| facet.facet_from_top * least_turn(&own, &normal).transpose();
    FacetCompliance::mean(&patch.edge_normals.map(|normal| grain.seen_from(&turned(normal))))
}

/// The rotation that turns unit vector `from` into `to`, less than a half turn away, about their common normal (Rodrigues'
/// formula without the angle: its arc cosine is not a number where rounding makes the vectors' product exceed one).
fn least_turn(from: &Vector3<f64>, to: &Vector3<f64>) -> Matrix3<f64> {
    let cross = from.cross(to).cross_matrix();
    Matrix3::identity() + cross + cross * cross / (1.0 + from.dot(to))
}

/// Where (u, v, drilling) and (w, rotation 1, rotation 2) stand among a corner's six.
pub(super) const MEMBRANE_DOFS: [usize; 3] = [0, 1, 5];
pub(super) const BENDING_DOFS: [usize; 3] = [2, 3, 4];

/// Puts the blocks together and turns them into the top's frame. `mixed` is (membrane dof, bending dof).
fn turn(facet_from_top: &Matrix3<f64>, membrane: &Form, mixed: &SMatrix<f64, 9, 9>, bending: &Form) -> ElementMatrix {
    let mut turned = ElementMatrix::zeros();
    for p in 0..3 {
        for q in 0..=p {
            let m = |i: usize, j: usize| membrane.entry(3 * p + i, 3 * q + j);
            let b = |i: usize, j: usize| bending.entry(3 * p + i, 3 * q + j);
            let mb = |i: usize, j: usize| mixed[(3 * p + i, 3 * q + j)];
            let bm = |i: usize, j: usize| mixed[(3 * q + j, 3 * p + i)];
            // Of a corner's displacements (u, v, w) and rotations (1, 2, drilling) u, v and drilling are the membrane's 0, 1, 2.
            let blocks = [
                Matrix3::new(m(0, 0), m(0, 1), mb(0, 0), m(1, 0), m(1, 1), mb(1, 0), bm(0, 0), bm(0, 1), b(0, 0)),
                Matrix3::new(bm(1, 0), bm(1, 1), b(1, 0), bm(2, 0), bm(2, 1), b(2, 0), m(2, 0), m(2, 1), mb(2, 0)),
                Matrix3::new(mb(0, 1), mb(0, 2), m(0, 2), mb(1, 1), mb(1, 2), m(1, 2), b(0, 1), b(0, 2), bm(0, 2)),
                Matrix3::new(b(1, 1), b(1, 2), bm(1, 2), b(2, 1), b(2, 2), bm(2, 2), mb(2, 1), mb(2, 2), m(2, 2)),
            ];
            // A corner's block with itself is symmetric: its upper part comes with the lower one.
            let places = [(0, 0), (3, 0), (0, 3), (3, 3)];
            for (block, (row, column)) in blocks.iter().zip(places).filter(|(_, place)| p > q || *place != (0, 3)) {
                let (row, column) = (6 * p + row, 6 * q + column);
                let block = facet_from_top.tr_mul(&(block * facet_from_top));
                turned.fixed_view_mut::<3, 3>(row, column).copy_from(&block);
                turned.fixed_view_mut::<3, 3>(column, row).copy_from(&block.transpose());
            }
        }
    }
    turned
}

#[cfg(test)]
mod inextensional;
#[cfg(test)]
mod tests;
