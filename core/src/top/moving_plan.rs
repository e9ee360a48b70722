//! The mesh under a moving handle: the last that was made, moved while it stays good enough.

use super::stages::{Drawn, MeshedFrom};
use super::{Plan, Shape, TopError};
use crate::mesh::{MeshSize, MovableMesh, PlanMesh};

/// A plan whose mesh goes along with outline and holes.
#[derive(Debug, Default)]
pub(super) struct MovingPlan {
    last: Option<Moving>,
    made: usize,
    moved: usize,
}

#[derive(Debug)]
struct Moving {
    made_for: MeshedFrom,
    movable: MovableMesh,
    /// What the plan's mesh was moved to.
    stands_for: MeshedFrom,
    plan: Plan,
}

impl MovingPlan {
    /// A plan for a design, and what its mesh was made for. A failure leaves the last one.
    pub(super) fn get(&mut self, drawn: Drawn<'_>, size: MeshSize) -> Result<(MeshedFrom, &Plan), TopError> {
        let (meshed_from, shape) = (drawn.meshed_from(), drawn.shape);
        if self.last.as_ref().is_none_or(|last| last.stands_for != meshed_from) {
            let mesh = self.last.as_ref().and_then(|last| last.moved(meshed_from, shape));
            match (&mut self.last, mesh) {
                (Some(last), Some(mesh)) => {
                    self.moved += 1;
                    (last.plan.mesh, last.stands_for) = (mesh, meshed_from);
                }
                _ => {
                    self.made += 1;
                    self.last = Some(Moving::new(meshed_from, shape, size)?);
                }
            }
        }
        let last = self.last.as_ref().expect("it was made or moved just before");
        Ok((last.made_for, &last.plan))
    }

    /// How often a mesh was made, failures included, and how often one was moved.
    pub(super) fn runs(&self) -> [usize; 2] {
        [self.made, self.moved]
    }
}

impl Moving {
    fn new(meshed_from: MeshedFrom, shape: &Shape, size: MeshSize) -> Result<Self, TopError> {
        let plan = Plan::new(shape, meshed_from.1, size)?;
        let movable = MovableMesh::new(plan.mesh.clone(), &shape.outline, &shape.holes);
        Ok(Self { made_for: meshed_from, movable, stands_for: meshed_from, plan })
    }

    /// The mesh for other boundaries; none where equations would be others, or the mesh no longer good enough.
    fn moved(&self, (_, held): MeshedFrom, shape: &Shape) -> Option<PlanMesh> {
        let same_equations = self.made_for.1 == held;
        same_equations.then(|| self.movable.moved(&shape.outline, &shape.holes).ok())?
    }
}
