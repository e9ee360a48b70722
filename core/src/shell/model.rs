//! The assembled model: stiffness and mass on the equations.

use nalgebra::{SMatrix, Vector3};

use super::element::{Element, ElementMatrix, ElementOptions, element};
use super::equations::{ELEMENT_ENTRIES, Equations, HELD, lower_entry};
use super::error::ShellError;
use super::geometry::ShellGeometry;
use super::mass::{ElementMass, MASSIVE};
use super::patch::Patch;
use crate::patience;
use crate::wood::Wood;

/// Elements assembled before it is asked whether that is still wanted: some milliseconds, and no cost to a handle's step.
const BETWEEN_LOOKS: usize = 1000;

/// Stiffness and mass of a shell on its equations, SI units.
#[derive(Debug, Clone, PartialEq)]
pub struct ShellModel {
    /// Values of the stiffness in the pattern's order: N/m, N, N·m.
    pub stiffness: Vec<f64>,
    /// Values of the mass in the pattern's order: kg, kg·m².
    pub mass: Vec<f64>,
    /// Mass of the wood, kg, held nodes included.
    pub total_mass_kg: f64,
    /// Where springs tie it to the ground.
    pub ties: Vec<Tie>,
}

/// A motion that a spring to the ground resists; a motion that no tie and no support resists is rigid and free.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tie {
    /// Where, m.
    pub place_m: Vector3<f64>,
    /// (xyz) unit: along which it resists displacement, or about which it resists turning.
    pub axis: Vector3<f64>,
    /// Whether it resists turning.
    pub turning: bool,
}

impl ShellModel {
    /// Assembles `geometry` of `wood` on `equations`, which must have been made from the same triangles.
    ///
    /// Cost: linear in the number of triangles, a few microseconds each. A triangle of the second half that mirrors the one as far on in the first
    /// (so are plans of tops with equal sides numbered) takes half of that.
    ///
    /// # Errors
    /// [`ShellError::Wood`] when the constants are not admissible.
    pub fn assemble(
        geometry: &ShellGeometry,
        wood: &Wood,
        equations: &Equations,
        options: ElementOptions,
    ) -> Result<Self, ShellError> {
        wood.constants.check()?;
        let grain = wood.grain();
        let mut model = Self::nothing(equations);
        let mut place = |triangle: usize, patch: &Patch, part: &Element| {
            let mass = ElementMass::new(part.area, &patch.edge_thickness, &part.normal, wood.density_kg_m3);
            model.total_mass_kg += mass.total_kg();
            model.place(equations.places(triangle), &part.stiffness, &mass);
        };
        let count = geometry.triangles.len();
        let (first, images) = if grain.is_symmetric() { (count - count / 2, count / 2) } else { (count, 0) };
        for triangle in 0..first {
            if triangle % BETWEEN_LOOKS == 0 {
                patience::check()?;
            }
            let patch = geometry.patch(triangle);
            let part = element(&patch, &grain, options);
            place(triangle, &patch, &part);
            if triangle < images {
                let image = geometry.patch(first + triangle);
                let is_mirrored = patch.mirrored().is_as_good_as(&image);
                let part = if is_mirrored { part.mirrored() } else { element(&image, &grain, options) };
                place(first + triangle, &image, &part);
            }
        }
        Ok(model)
    }

    /// Adds an element's stiffness and mass at their places among the pattern's values.
    fn place(&mut self, places: &[u32; ELEMENT_ENTRIES], stiffness: &ElementMatrix, mass: &ElementMass) {
        let mut next = places.iter();
        for column in 0..18 {
            for (row, &place) in (column..18).zip(&mut next) {
                if place != HELD {
                    self.stiffness[place as usize] += stiffness[(row, column)];
                }
            }
        }
        for &[row, column] in &MASSIVE {
            let place = places[lower_entry(row, column)];
            if place != HELD {
                self.mass[place as usize] += mass.entry(row, column);
            }
        }
    }

    /// (node): the mass that moves there, kg: each row of the mass matrix summed up. What is fixed to the shell counts; what
    /// supports hold doesn't.
    #[must_use]
    pub fn node_masses_kg(&self, equations: &Equations) -> Vec<f64> {
        let Equations { equation_of, pattern, .. } = equations;
        // Any direction would do; a support that holds one holds all.
        const DIRECTION: usize = 2;
        let outward: Vec<bool> = {
            let mut outward = vec![false; equations.count()];
            equation_of.iter().filter_map(|dofs| dofs[DIRECTION]).for_each(|at| outward[at as usize] = true);
            outward
        };
        let mut masses = vec![0.0; equation_of.len()];
        for column in (0..equations.count()).filter(|&column| outward[column]) {
            let stored = pattern.column_starts[column]..pattern.column_starts[column + 1];
            for (&row, mass) in pattern.row_indices[stored.clone()].iter().zip(&self.mass[stored]) {
                if outward[row as usize] {
                    masses[pattern.node_of_equation[row as usize] as usize] += mass;
                    if row as usize != column {
                        masses[pattern.node_of_equation[column] as usize] += mass;
                    }
                }
            }
        }
        masses
    }

    /// No shell at all.
    pub(crate) fn nothing(equations: &Equations) -> Self {
        let values = equations.pattern.row_indices.len();
        Self { stiffness: vec![0.0; values], mass: vec![0.0; values], total_mass_kg: 0.0, ties: Vec::new() }
    }

    /// Adds stiffness and mass (corner and dof, corner and dof; symmetric) that join `nodes`: one node, or the three of a
    /// triangle.
    pub(crate) fn add<const N: usize, const D: usize>(
        &mut self,
        equations: &Equations,
        nodes: &[u32; N],
        stiffness: &SMatrix<f64, D, D>,
        mass: &SMatrix<f64, D, D>,
    ) {
        equations.for_each_entry(nodes, |at, row, column| {
            self.stiffness[at] += stiffness[(row, column)];
            self.mass[at] += mass[(row, column)];
        });
    }
}
