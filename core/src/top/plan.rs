//! The mesh in plan and what depends on its topology alone.

use super::{Shape, TopError};
use crate::design::Rim;
use crate::eigen::Symbolic;
use crate::mesh::{MeshSize, PlanMesh};
use crate::patience;
use crate::shell::{Equations, OneSide, Supports};

/// What a rim holds unmoved, which decides the equations; a rim on springs holds nothing so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// Nothing.
    Nothing,
    /// Displacements of the rim.
    Hinged,
    /// Displacements and rotations of the rim.
    Clamped,
}

impl Held {
    /// By `rim`.
    #[must_use]
    pub fn by(rim: &Rim) -> Self {
        match rim {
            Rim::Free | Rim::Elastic(_) => Self::Nothing,
            Rim::Hinged => Self::Hinged,
            Rim::Clamped => Self::Clamped,
        }
    }
}

/// A top's mesh in plan, its equations in the order of their elimination, and the pattern of their factor.
///
/// Survives every change of height, thickness, wood and fittings.
#[derive(Debug)]
pub struct Plan {
    /// The mesh.
    pub mesh: PlanMesh,
    /// What is held.
    pub supports: Supports,
    /// Equation numbers and sparsity.
    pub equations: Equations,
    /// The pattern of the factor.
    pub symbolic: Symbolic,
    /// Of a mesh whose sides mirror each other.
    pub one_side: Option<OneSide>,
}

impl Plan {
    /// Meshes `shape` and numbers its equations.
    ///
    /// # Errors
    /// [`TopError::Mesh`] when boundaries are too near each other to be meshed.
    pub fn new(shape: &Shape, held: Held, size: MeshSize) -> Result<Self, TopError> {
        let mesh = PlanMesh::new(&shape.outline, &shape.holes, size)?;
        patience::check()?;
        let nodes = mesh.points_mm.len();
        let supports = match held {
            Held::Nothing => Supports::free(nodes),
            Held::Hinged => Supports::hinged(nodes, &mesh.rim_nodes),
            Held::Clamped => Supports::clamped(nodes, &mesh.rim_nodes),
        };
        let equations = Equations::new(&mesh.triangles, &supports)?;
        patience::check()?;
        let symbolic = Symbolic::new(&equations.pattern)?;
        let symbolic = match mesh.mirror().and_then(|mirror| equations.reflection(&mirror.of_node)) {
            Some(reflection) => symbolic.mirrored(&reflection)?,
            None => symbolic,
        };
        let one_side = OneSide::new(&equations, &symbolic);
        Ok(Self { mesh, supports, equations, symbolic, one_side })
    }
}
