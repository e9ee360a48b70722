//! What a straight line through an element feels as the element's nodes move.

use nalgebra::{SMatrix, Vector2, Vector3};

use super::bending::Row;
use super::element::{BENDING_DOFS, ElementOptions, Fields, MEMBRANE_DOFS};
use super::geometry::ShellGeometry;
use super::membrane;
use crate::wood::Wood;

/// One quantity per degree of freedom of an element, (corner and dof) in the top's frame.
pub(crate) type Row18 = SMatrix<f64, 1, 18>;

/// The element's own strain field along a line in its plane, per degree of freedom.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LineStrain {
    /// Stretch of the mid-surface along the line, mean over the element.
    pub(crate) stretch: Row18,
    /// Curvature, 1/m: at distance z along the facet's normal the line stretches by `stretch + z curvature`.
    pub(crate) curvature: Row18,
    /// How the lean across the line grows along it, rad/m.
    ///
    /// What is left out of the plate's twist is how the lean along the line grows across it: the plate can have that, in as narrow a
    /// band about the line as the mesh has, at no cost. A stick that resisted it turned ever more freely the finer the mesh.
    pub(crate) twist: Row18,
    /// Transverse shear strain along the line.
    pub(crate) shear: Row18,
}

impl LineStrain {
    /// Along `direction` (unit, in the facet's plane) at the point with `barycentric` coordinates in `triangle`.
    pub(crate) fn new(
        geometry: &ShellGeometry,
        triangle: usize,
        wood: &Wood,
        options: ElementOptions,
        barycentric: &[f64; 3],
        direction: &Vector3<f64>,
    ) -> Self {
        let fields = Fields::new(&geometry.patch(triangle), &wood.grain(), options);
        let facet = &fields.facet;
        let t = (facet.facet_from_top * direction).xy();
        let along = Vector3::new(t.x * t.x, t.y * t.y, t.x * t.y);
        let strain = membrane::linear_strain(facet);
        let n = Vector2::new(-t.y, t.x);
        let growth = |towards: &Vector2<f64>| fields.lean.growth(facet, barycentric, towards, &t);
        let growth_by_force = |towards: &Vector2<f64>| fields.by_force.growth(facet, barycentric, towards, &t);
        let shear = at(barycentric, &fields.lean.edges.corner_shear(facet));
        let shear_by_force = at(barycentric, &fields.by_force.corner_shear(facet));
        // Per in-plane strain and per bending degree of freedom.
        let in_top = |by_strain: Vector3<f64>, own: Row| {
            let membrane = strain * by_strain;
            let bending = own + fields.from_bending * by_strain;
            let mut local = Row18::zeros();
            for column in 0..9 {
                local[6 * (column / 3) + MEMBRANE_DOFS[column % 3]] = membrane[column];
                local[6 * (column / 3) + BENDING_DOFS[column % 3]] = bending[column];
            }
            let mut turned = Row18::zeros();
            for block in 0..6 {
                let row = local.fixed_view::<1, 3>(0, 3 * block) * facet.facet_from_top;
                turned.fixed_view_mut::<1, 3>(0, 3 * block).copy_from(&row);
            }
            turned
        };
        Self {
            stretch: in_top(along, Row::zeros()),
            curvature: in_top(growth_by_force(&t), growth(&t)),
            twist: in_top(growth_by_force(&n), growth(&n)),
            shear: in_top(shear_by_force * t, shear * t),
        }
    }
}

/// A linear field at the point with `barycentric` coordinates, from its values at the corners.
fn at<const N: usize>(barycentric: &[f64; 3], corners: &[SMatrix<f64, N, 2>; 3]) -> SMatrix<f64, N, 2> {
    corners[0] * barycentric[0] + corners[1] * barycentric[1] + corners[2] * barycentric[2]
}
