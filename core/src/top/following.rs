//! The top whose handle moves: its mesh goes along, and its modes go on from the last ones, through new meshes too.

use super::kept::Kept;
use super::laid::Laid;
use super::moving_plan::MovingPlan;
use super::stages::{Drawn, FollowedRuns, MeshedFrom};
use super::{Carved, Picture, Plan, TopError};
use crate::mesh::{Locator, MeshSize, PlanMesh, Shares, interpolated};
use crate::modes::{Followed, Modes, Trail, follow_modes};
use crate::shell::DOFS_PER_NODE;

/// What is followed on one mesh size.
#[derive(Debug, Default)]
pub(super) struct Following {
    plan: MovingPlan,
    wood: Laid,
    modes: Kept<(usize, usize), Followed>,
    /// The mesh on which the last modes are, and what it was made for: as long as that is the same, so are its triangles.
    on: Option<(MeshedFrom, PlanMesh)>,
}

impl Following {
    /// Mesh and wood of a design.
    pub(super) fn carved(&mut self, drawn: Drawn<'_>, size: MeshSize) -> Result<(&Plan, &Carved), TopError> {
        let (made_for, plan) = self.plan.get(drawn, size)?;
        Ok((plan, self.wood.carved((made_for, plan), drawn)?))
    }

    /// The picture of the same.
    pub(super) fn picture(&mut self, drawn: Drawn<'_>, size: MeshSize) -> Result<&Picture, TopError> {
        self.wood.picture(self.plan.get(drawn, size)?, drawn)
    }

    /// Its lowest `count` modes, from the last ones where there are any. A failure leaves those.
    pub(super) fn follow(&mut self, drawn: Drawn<'_>, size: MeshSize, count: usize) -> Result<&Followed, TopError> {
        let (made_for, plan) = self.plan.get(drawn, size)?;
        self.wood.carved((made_for, plan), drawn)?;
        let carved = &self.wood.carved;
        let Carved { geometry, model, .. } = carved.last().expect("it was carved just before");
        let same_nodes = self.on.as_ref().is_some_and(|(known, _)| *known == made_for);
        let left_mesh = self.on.as_ref().filter(|_| !same_nodes).map(|(_, mesh)| mesh);
        let followed = self.modes.revise((carved.number(), count), |last| {
            let Plan { supports, equations, symbolic, .. } = plan;
            let trail = last.map(|last| &last.trail);
            let carried = trail.zip(left_mesh).map(|(trail, mesh)| carried(trail, mesh, &plan.mesh));
            follow_modes(geometry, supports, equations, model, symbolic, count, carried.as_ref().or(trail))
        })?;
        match &mut self.on {
            Some((_, mesh)) if same_nodes => mesh.points_mm.clone_from(&plan.mesh.points_mm),
            on => *on = Some((made_for, plan.mesh.clone())),
        }
        Ok(followed)
    }

    /// The last modes, with the mesh that they are on and the wood on it.
    pub(super) fn last(&self) -> Option<(&PlanMesh, &Laid, &Modes)> {
        let (_, mesh) = self.on.as_ref()?;
        Some((mesh, &self.wood, &self.modes.last()?.modes))
    }

    /// `runs`, and those made here.
    pub(super) fn add_runs(&self, runs: FollowedRuns) -> FollowedRuns {
        let [made, moved] = self.plan.runs();
        FollowedRuns {
            plan: runs.plan + made,
            moved: runs.moved + moved,
            carved: runs.carved + self.wood.carved.runs(),
            picture: runs.picture + self.wood.picture.runs(),
            modes: runs.modes + self.modes.runs(),
        }
    }
}

/// Modes on the nodes of another mesh: what the old mesh, linear between its nodes, does at the same place in plan.
fn carried(trail: &Trail, from: &PlanMesh, to: &PlanMesh) -> Trail {
    let locator = Locator::new(from);
    let places: Vec<Shares> = to.points_mm.iter().map(|&p| locator.nearest(p)).collect();
    trail.carried(from.points_mm.len(), |shape| {
        let there = |place: &Shares| -> [f64; DOFS_PER_NODE] {
            std::array::from_fn(|dof| interpolated(place, |node| shape[node as usize * DOFS_PER_NODE + dof]))
        };
        places.iter().flat_map(there).collect()
    })
}

#[cfg(test)]
#[path = "following_tests.rs"]
mod tests;
