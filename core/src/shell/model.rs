//! The assembled model: stiffness and mass on the equations.

use std::borrow::Cow;

use nalgebra::{SMatrix, Vector3};

use super::element::{Element, ElementOptions, element};
use super::equations::{ELEMENT_ENTRIES, Equations, HELD, lower_entry};
use super::error::ShellError;
use super::geometry::ShellGeometry;
use super::mass::{ElementMass, MASSIVE};
use super::one_side::OneSide;
use super::patch::Patch;
use crate::eigen::{Pencil, Symbolic};
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
    /// Whether stiffness and mass are those of one side only, on the pattern's [half](Symbolic::half).
    is_half: bool,
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
        Self::assembled(geometry, wood, equations, None, options)
    }

    /// The same of a shell whose sides may mirror each other: then of one side only, which says all, for some half of the cost.
    ///
    /// # Errors
    /// As for [`ShellModel::assemble`].
    pub fn assemble_one_side(
        geometry: &ShellGeometry,
        wood: &Wood,
        equations: &Equations,
        one_side: &OneSide,
        options: ElementOptions,
    ) -> Result<Self, ShellError> {
        Self::assembled(geometry, wood, equations, Some(one_side), options)
    }

    fn assembled(
        geometry: &ShellGeometry,
        wood: &Wood,
        equations: &Equations,
        one_side: Option<&OneSide>,
        options: ElementOptions,
    ) -> Result<Self, ShellError> {
        wood.constants.check()?;
        let grain = wood.grain();
        let count = geometry.triangles.len();
        let (first, images) = if grain.is_symmetric() { (count - count / 2, count / 2) } else { (count, 0) };
        let image_of = |triangle: usize, patch: &Patch| {
            let image = geometry.patch(first + triangle);
            let is_mirrored = patch.mirrored().is_as_good_as(&image);
            (image, is_mirrored)
        };
        let is_mirrored = |triangle: usize| image_of(triangle, &geometry.patch(triangle)).1;
        let one_side = one_side.filter(|_| first == images && (0..images).all(is_mirrored));
        let mut model = one_side.map_or_else(|| Self::nothing(equations), |side| Self::half(side.entries));
        for triangle in 0..first {
            if triangle % BETWEEN_LOOKS == 0 {
                patience::check()?;
            }
            let patch = geometry.patch(triangle);
            let part = element(&patch, &grain, options);
            let places = one_side.map_or_else(|| equations.places(triangle), |side| &side.places[triangle]);
            model.place(places, &patch, &part, wood);
            if triangle < images && one_side.is_none() {
                let (image, is_mirrored) = image_of(triangle, &patch);
                let part = if is_mirrored { part.mirrored() } else { element(&image, &grain, options) };
                model.place(equations.places(first + triangle), &image, &part, wood);
            }
        }
        if one_side.is_some() {
            model.total_mass_kg *= 2.0;
        }
        Ok(model)
    }

    /// Its pencil on `equations`, for searches that know their `symbolic` factorisation.
    #[must_use]
    pub fn pencil<'a>(&'a self, equations: &'a Equations, symbolic: &'a Symbolic) -> Pencil<'a> {
        let pattern = symbolic.half().filter(|_| self.is_half).unwrap_or(&equations.pattern);
        Pencil { pattern, stiffness: &self.stiffness, mass: &self.mass }
    }

    /// The same with stiffness and mass of both sides, on all of the pattern.
    #[must_use]
    pub fn whole(&self, symbolic: &Symbolic) -> Cow<'_, Self> {
        if !self.is_half {
            return Cow::Borrowed(self);
        }
        let [stiffness, mass] = [&self.stiffness, &self.mass].map(|values| symbolic.whole_values(values));
        Cow::Owned(Self { stiffness, mass, is_half: false, ..self.clone() })
    }

    /// Adds an element's stiffness and mass at their places among the pattern's values.
    fn place(&mut self, places: &[u32; ELEMENT_ENTRIES], patch: &Patch, part: &Element, wood: &Wood) {
        let mass = ElementMass::new(part.area, &patch.edge_thickness, &part.normal, wood.density_kg_m3);
        self.total_mass_kg += mass.total_kg();
        let mut next = places.iter();
        for column in 0..18 {
            for (row, &place) in (column..18).zip(&mut next) {
                if place != HELD {
                    self.stiffness[place as usize] += part.stiffness[(row, column)];
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
        Self { is_half: false, ..Self::half(equations.pattern.entries()) }
    }

    fn half(entries: usize) -> Self {
        let values = || vec![0.0; entries];
        Self { stiffness: values(), mass: values(), total_mass_kg: 0.0, ties: Vec::new(), is_half: true }
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
