//! How strain and kinetic energy of given shapes change with the wood and the thickness.
//!
//! The matrices are not assembled again: an element's stiffness is made anew with one constant a little larger and a little
//! smaller, and the shapes' energies are summed element by element.

use nalgebra::SVector;

use super::element::{Element, ElementMatrix, ElementOptions, element};
use super::error::ShellError;
use super::geometry::ShellGeometry;
use super::mass::ElementMass;
use super::patch::Patch;
use super::supports::DOFS_PER_NODE;
use crate::patience;
use crate::wood::{Grain, Wood, WoodConstant};

/// Energies of shapes in the shell's own wood, and their derivatives by the logarithm of each parameter, at fixed
/// displacements.
///
/// Of a bare shell when made; [`Fittings::add_slopes`](crate::fittings::Fittings::add_slopes) adds what is fixed to it.
#[derive(Debug, Clone, PartialEq)]
pub struct EnergySlopes {
    /// (shape): φᵀKφ of the shell alone, twice the strain energy; J where displacements are in m.
    pub stiffness: Vec<f64>,
    /// (shape): φᵀMφ of the shell alone, twice the kinetic energy at one radian a second.
    pub mass: Vec<f64>,
    /// (shape): φᵀKφ of the shell and what is fixed to it.
    pub whole_stiffness: Vec<f64>,
    /// (shape): φᵀMφ of the shell and what is fixed to it.
    pub whole_mass: Vec<f64>,
    /// (constant, shape): d φᵀKφ / d ln p of the whole, constants as in [`WoodConstant::ALL`].
    pub by_constant: [Vec<f64>; WoodConstant::COUNT],
    /// (shape): d φᵀKφ / d ln t of the whole, thickness growing everywhere by the same ratio and the mid-surface staying.
    pub stiffness_by_thickness: Vec<f64>,
    /// (shape): d φᵀMφ / d ln t of the whole.
    pub mass_by_thickness: Vec<f64>,
}

impl EnergySlopes {
    /// Relative step of the central differences.
    ///
    /// Energies are smooth rational functions of the constants, so the step's square over six, 2e-7, is what the difference
    /// leaves out. A smaller one loses to rounding: an element's displacements are mostly rigid and cost up to 12 λ⁴/(t² A) = 5e5
    /// times the energy that is left when they cancel (λ 50 mm, t 3 mm, A 16 mm²), so energies are known to 5e-11
    /// and their slopes to 5e-11 over the step, here 5e-8.
    pub(crate) const STEP: f64 = 1e-3;

    /// Of `shapes` (shape, node, dof), on a bare shell.
    ///
    /// Cost: 21 elements' stiffnesses for each triangle, and ten products with an 18 × 18 matrix for each shape there.
    ///
    /// # Errors
    /// [`ShellError::Wood`] when the constants are not admissible, or so nearly that a thousandth more of one is not.
    pub fn new(
        geometry: &ShellGeometry,
        wood: &Wood,
        options: ElementOptions,
        shapes: &[f64],
    ) -> Result<Self, ShellError> {
        wood.constants.check()?;
        let stepped = Self::stepped(wood);
        stepped.iter().flatten().try_for_each(|wood| wood.constants.check())?;
        let count = shapes.len() / (geometry.node_count() * DOFS_PER_NODE);
        let zeros = || vec![0.0; count];
        let mut slopes = Self {
            stiffness: zeros(),
            mass: zeros(),
            whole_stiffness: Vec::new(),
            whole_mass: Vec::new(),
            by_constant: std::array::from_fn(|_| zeros()),
            stiffness_by_thickness: zeros(),
            mass_by_thickness: zeros(),
        };
        let mut own = Vec::with_capacity(count);
        let (grain, stepped) = (wood.grain(), stepped.map(|pair| pair.map(|wood| wood.grain())));
        for (triangle, nodes) in geometry.triangles.iter().enumerate() {
            patience::check()?;
            let patch = geometry.patch(triangle);
            own.clear();
            own.extend(shapes.chunks_exact(shapes.len() / count.max(1)).map(|shape| of_element(shape, nodes)));
            let part = |patch: &Patch, grain: &Grain| element(patch, grain, options);
            let mass = |part: &Element, patch: &Patch| {
                ElementMass::new(part.area, &patch.edge_thickness, &part.normal, wood.density_kg_m3)
            };

            let here = part(&patch, &grain);
            add(&mut slopes.stiffness, &own, |shape| quadratic(&here.stiffness, shape));
            let own_mass = mass(&here, &patch);
            add(&mut slopes.mass, &own, |shape| own_mass.quadratic(shape.as_slice()));
            for (into, [more, less]) in slopes.by_constant.iter_mut().zip(&stepped) {
                let slope = (part(&patch, more).stiffness - part(&patch, less).stiffness) / (2.0 * Self::STEP);
                add(into, &own, |shape| quadratic(&slope, shape));
            }
            let [thicker, thinner] = [1.0 + Self::STEP, 1.0 - Self::STEP].map(|by| patch.thickened(by));
            let [more, less] = [part(&thicker, &grain), part(&thinner, &grain)];
            let slope = (more.stiffness - less.stiffness) / (2.0 * Self::STEP);
            add(&mut slopes.stiffness_by_thickness, &own, |shape| quadratic(&slope, shape));
            let [more, less] = [mass(&more, &thicker), mass(&less, &thinner)];
            add(&mut slopes.mass_by_thickness, &own, |shape| {
                (more.quadratic(shape.as_slice()) - less.quadratic(shape.as_slice())) / (2.0 * Self::STEP)
            });
        }
        slopes.whole_stiffness.clone_from(&slopes.stiffness);
        slopes.whole_mass.clone_from(&slopes.mass);
        Ok(slopes)
    }

    /// (constant): `wood` with a little more of it and a little less; not checked.
    pub(crate) fn stepped(wood: &Wood) -> [[Wood; 2]; WoodConstant::COUNT] {
        WoodConstant::ALL.map(|constant| {
            [1.0 + Self::STEP, 1.0 - Self::STEP]
                .map(|by| Wood { constants: wood.constants.scaled(constant, by), ..*wood })
        })
    }

    /// Number of shapes.
    #[must_use]
    pub fn count(&self) -> usize {
        self.stiffness.len()
    }
}

pub(super) type Displacements = SVector<f64, 18>;

/// (corner, dof): what `shape` (node, dof) does at an element's `nodes`.
#[inline(never)] // Used in many places of `EnergySlopes::new`, of which each would get a copy.
pub(super) fn of_element(shape: &[f64], nodes: &[u32; 3]) -> Displacements {
    Displacements::from_fn(|at, _| shape[nodes[at / DOFS_PER_NODE] as usize * DOFS_PER_NODE + at % DOFS_PER_NODE])
}

#[inline(never)]
pub(super) fn quadratic(matrix: &ElementMatrix, shape: &Displacements) -> f64 {
    shape.dot(&(matrix * shape))
}

fn add(sums: &mut [f64], shapes: &[Displacements], energy: impl Fn(&Displacements) -> f64) {
    for (sum, shape) in sums.iter_mut().zip(shapes) {
        *sum += energy(shape);
    }
}

#[cfg(test)]
pub(super) mod tests;
