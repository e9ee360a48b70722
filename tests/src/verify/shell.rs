//! A shell of the literature, solved by the core.

use anyhow::Result;
use bombatura_core::eigen::Symbolic;
use bombatura_core::modes::{Modes, ModesRequest, solve_modes};
use bombatura_core::response::{CompleteModes, ModalArrays, ModalBasis, ShellSurface, complete_modes};
use bombatura_core::shell::{DOFS_PER_NODE, ElementOptions, Equations, ShellGeometry, ShellModel, Supports};
use bombatura_core::statics::{EdgeStress, PointLoad, displacements, edge_stresses};
use bombatura_core::wood::{OrthotropicConstants, Wood};

use super::mesh::Mesh;

/// Degrees of freedom by their letters: displacements x, y, z and rotations a, b, c about them.
pub(super) fn held(letters: &str) -> [bool; DOFS_PER_NODE] {
    std::array::from_fn(|dof| letters.contains(['x', 'y', 'z', 'a', 'b', 'c'][dof]))
}

/// An isotropic material.
pub(super) fn isotropic(e_gpa: f64, nu: f64, density_kg_m3: f64) -> Wood {
    Wood { constants: OrthotropicConstants::isotropic(e_gpa, nu), density_kg_m3, ring_angle_deg: 0.0 }
}

/// Transverse shear so stiff that a thin plate is Kirchhoff's, for references that hold in his theory.
pub(super) fn without_transverse_shear(wood: Wood) -> Wood {
    const STIFF_GPA: f64 = 1e4;
    Wood { constants: OrthotropicConstants { g_lt_gpa: STIFF_GPA, g_rt_gpa: STIFF_GPA, ..wood.constants }, ..wood }
}

/// A mesh with thickness, material and supports.
pub(super) struct Shell<'a> {
    pub(super) mesh: &'a Mesh,
    pub(super) thickness_mm: f64,
    pub(super) material: Wood,
    /// What is held at a node with these parameters, in letters.
    pub(super) supports: &'a dyn Fn(f64, f64) -> String,
}

struct Assembled {
    geometry: ShellGeometry,
    supports: Supports,
    equations: Equations,
    model: ShellModel,
    symbolic: Symbolic,
}

impl Shell<'_> {
    fn assemble(&self) -> Result<Assembled> {
        let Mesh { nodes_mm, triangles, parameters } = self.mesh;
        // The surfaces of the literature are given to the core as anyone's mesh is: without their normals.
        let geometry = ShellGeometry::new(nodes_mm, None, &vec![self.thickness_mm; nodes_mm.len()], triangles)?;
        let supports = Supports { held: parameters.iter().map(|&[a, b]| held(&(self.supports)(a, b))).collect() };
        let equations = Equations::new(triangles, &supports)?;
        let model = ShellModel::assemble(&geometry, &self.material, &equations, ElementOptions::default())?;
        let symbolic = Symbolic::new(&equations.pattern)?;
        Ok(Assembled { geometry, supports, equations, model, symbolic })
    }

    /// The lowest `count` elastic modes, proven complete.
    pub(super) fn modes(&self, count: usize) -> Result<Modes> {
        self.modes_with(count, |_, _, _, _| Ok::<(), std::convert::Infallible>(()))
    }

    /// The same of the shell with whatever `fit` adds to its model.
    pub(super) fn modes_with<E: std::error::Error + Send + Sync + 'static>(
        &self,
        count: usize,
        fit: impl FnOnce(&ShellGeometry, &Equations, ElementOptions, &mut ShellModel) -> Result<(), E>,
    ) -> Result<Modes> {
        let Assembled { geometry, supports, equations, mut model, symbolic } = self.assemble()?;
        fit(&geometry, &equations, ElementOptions::default(), &mut model)?;
        Ok(solve_modes(&geometry, &supports, &equations, &model, &symbolic, &ModesRequest::lowest(count))?)
    }

    /// `count` modes, all of one loss factor, for a response to any forces.
    pub(super) fn modal_basis(&self, count: usize, loss_factor: f64) -> Result<ModalBasis> {
        let Assembled { geometry, supports, equations, model, symbolic } = self.assemble()?;
        let request = ModesRequest { prove: false, ..ModesRequest::lowest(count) };
        let modes = solve_modes(&geometry, &supports, &equations, &model, &symbolic, &request)?;
        let complete = complete_modes(&geometry, &supports, &equations, &model, &symbolic, &modes, &[])?;
        let CompleteModes { rigid, residual, frequencies_hz, shapes } = complete;
        Ok(ModalBasis::new(ModalArrays {
            surface: ShellSurface::new(&geometry, model.node_masses_kg(&equations)),
            rigid,
            residual,
            loss_factors: vec![loss_factor; frequencies_hz.len()],
            frequencies_hz,
            shapes: shapes.into_iter().map(|value| value as f32).collect(),
        })?)
    }

    /// (node, dof) under forces (node, N): m and rad.
    pub(super) fn displacements(&self, forces: &[(usize, [f64; 3])]) -> Result<Vec<[f64; DOFS_PER_NODE]>> {
        let Assembled { geometry, supports, equations, model, symbolic } = self.assemble()?;
        let loads: Vec<_> = forces.iter().map(|&(node, force_n)| PointLoad { node, force_n }).collect();
        Ok(displacements(&geometry, &supports, &equations, &model, &symbolic, &loads)?)
    }

    /// Stresses along a line of nodes on a free edge under `forces`.
    pub(super) fn edge_stresses(&self, line: &[u32], forces: &[(usize, [f64; 3])]) -> Result<Vec<EdgeStress>> {
        let moved = self.displacements(forces)?;
        Ok(edge_stresses(&self.assemble()?.geometry, &self.material, line, false, &moved))
    }

    /// Number of nodes.
    pub(super) fn nodes(&self) -> usize {
        self.mesh.nodes_mm.len()
    }
}
