//! The wood on the mesh: mid-surface, shell, fittings and mass.

use super::{Plan, Shape, TopError};
use crate::fittings::{Bare, Fittings};
use crate::mesh::{Across, MidSurface};
use crate::modes::{Modes, ModesRequest, solve_modes};
use crate::shell::{ElementOptions, ShellGeometry, ShellModel};
use crate::wood::Wood;

const G_PER_KG: f64 = 1e3;

/// A carved top, ready to be solved.
#[derive(Debug, Clone)]
pub struct Carved {
    /// Nodes, normals and thickness in millimetres.
    pub mid_surface: MidSurface,
    /// The same as the elements see it.
    pub geometry: ShellGeometry,
    /// Stiffness and mass.
    pub model: ShellModel,
}

impl Carved {
    /// Lays `shape` of `wood` on `plan` and puts `fittings` on.
    ///
    /// # Errors
    /// [`TopError::Shell`] when the surface gives no shell, [`TopError::Fitting`] when a fitting finds no wood.
    pub fn new(plan: &Plan, shape: &Shape, wood: &Wood, fittings: &Fittings) -> Result<Self, TopError> {
        Self::on(plan, MidSurface::new(&plan.mesh, &shape.surface, &shape.graduation), wood, fittings)
    }

    /// Makes a shell of `wood` of `mid_surface`, which was laid on the mesh of `plan`, and puts `fittings` on.
    ///
    /// # Errors
    /// As for [`Carved::new`].
    pub fn on(plan: &Plan, mid_surface: MidSurface, wood: &Wood, fittings: &Fittings) -> Result<Self, TopError> {
        let Across { normals, thickness_mm, edge_normals, edge_thickness_mm } = &mid_surface.across;
        let geometry = ShellGeometry::new(&mid_surface.nodes_mm, Some(normals), thickness_mm, &plan.mesh.triangles)?
            .with_mid_edges(edge_normals, edge_thickness_mm, &plan.mesh.edges.of_triangle)
            .with_free_edges(free_edges(plan, fittings.rim.is_some()));
        let options = ElementOptions::default();
        let mut model = ShellModel::assemble(&geometry, wood, &plan.equations, options)?;
        let bare = Bare { geometry: &geometry, wood, equations: &plan.equations, options };
        fittings.fit(&bare, &plan.mesh.rim_nodes, &mut model)?;
        Ok(Self { mid_surface, geometry, model })
    }

    /// Mass of the wood, the bar included, g.
    #[must_use]
    pub fn mass_g(&self) -> f64 {
        self.model.total_mass_kg * G_PER_KG
    }

    /// The modes of the top on `plan`.
    ///
    /// # Errors
    /// [`TopError::Modes`] when they can't be had.
    pub fn modes(&self, plan: &Plan, request: &ModesRequest) -> Result<Modes, TopError> {
        let modes = solve_modes(&self.geometry, &plan.supports, &plan.equations, &self.model, &plan.symbolic, request)?;
        Ok(modes)
    }
}

/// (triangle, side): whether the wood ends there and nothing holds it against turning.
fn free_edges(plan: &Plan, on_ribs: bool) -> Vec<[bool; 3]> {
    let mesh = &plan.mesh;
    let mut held = vec![false; mesh.points_mm.len()];
    if on_ribs {
        // Ribs and linings hold the rim against turning.
        mesh.rim_nodes.iter().for_each(|&node| held[node as usize] = true);
    }
    let turns = |node: u32| !(held[node as usize] || plan.supports.turning_is_held(node));
    let mut free = mesh.edges.at_the_end();
    for (free, corners) in free.iter_mut().zip(&mesh.triangles) {
        for side in 0..3 {
            free[side] &= turns(corners[side]) || turns(corners[(side + 1) % 3]);
        }
    }
    free
}
