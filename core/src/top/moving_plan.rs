//! The mesh under a moving handle: the last that was made, moved while it stays good enough.

use super::stages::MeshedFrom;
use super::{Plan, Shape, TopError};
use crate::mesh::{MeshSize, MovableMesh};

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
    /// A plan for `shape`, and what its mesh was made for. A failure leaves the last one.
    pub(super) fn get(
        &mut self,
        meshed_from: MeshedFrom,
        shape: &Shape,
        size: MeshSize,
    ) -> Result<(&MeshedFrom, &Plan), TopError> {
        let moving = match self.last.take() {
            Some(last) if last.stands_for == meshed_from => last,
            last => {
                self.last = last;
                match self.moved_to(&meshed_from, shape) {
                    Some(moved) => moved,
                    None => self.made_for(meshed_from, shape, size)?,
                }
            }
        };
        let moving = self.last.insert(moving);
        Ok((&moving.made_for, &moving.plan))
    }

    fn moved_to(&mut self, meshed_from: &MeshedFrom, shape: &Shape) -> Option<Moving> {
        let mesh = self
            .last
            .as_ref()
            .filter(|last| last.made_for.2 == meshed_from.2)?
            .movable
            .moved(&shape.outline, &shape.holes)
            .ok()?;
        self.moved += 1;
        let mut moving = self.last.take()?;
        moving.plan.mesh = mesh;
        moving.stands_for = meshed_from.clone();
        Some(moving)
    }

    fn made_for(&mut self, meshed_from: MeshedFrom, shape: &Shape, size: MeshSize) -> Result<Moving, TopError> {
        self.made += 1;
        let plan = Plan::new(shape, meshed_from.2, size)?;
        let movable = MovableMesh::new(plan.mesh.clone(), &shape.outline, &shape.holes);
        Ok(Moving { made_for: meshed_from.clone(), movable, stands_for: meshed_from, plan })
    }

    /// How often a mesh was made, failures included, and how often one was moved.
    pub(super) fn runs(&self) -> [usize; 2] {
        [self.made, self.moved]
    }
}
