//! The modes of a top whose handle moves, each time from the last ones, through new meshes too.

use super::kept::Kept;
use super::stages::{CarvedFrom, MeshedFrom};
use super::{Carved, Plan, TopError};
use crate::mesh::{Locator, PlanMesh, Shares, interpolated};
use crate::modes::{Followed, Trail, follow_modes};
use crate::shell::DOFS_PER_NODE;

/// The modes followed on one mesh size.
#[derive(Debug, Default)]
pub(super) struct Following {
    kept: Kept<(CarvedFrom, usize), Followed>,
    /// The mesh on which the last ones are, and what it was made from.
    on: Option<(MeshedFrom, PlanMesh)>,
}

impl Following {
    /// The lowest `count` modes of `carved` on `plan`, from the last ones where there are any. A failure leaves those.
    pub(super) fn follow(
        &mut self,
        (meshed_from, plan): (MeshedFrom, &Plan),
        (carved_from, carved): (CarvedFrom, &Carved),
        count: usize,
    ) -> Result<&Followed, TopError> {
        let same_mesh = self.on.as_ref().is_some_and(|(made_from, _)| *made_from == meshed_from);
        let left_mesh = self.on.as_ref().filter(|_| !same_mesh).map(|(_, mesh)| mesh);
        let Carved { geometry, model, .. } = carved;
        let followed = self.kept.revise((carved_from, count), |last| {
            let Plan { supports, equations, symbolic, .. } = plan;
            let trail = last.map(|last| &last.trail);
            let carried = trail.zip(left_mesh).map(|(trail, mesh)| carried(trail, mesh, &plan.mesh));
            follow_modes(geometry, supports, equations, model, symbolic, count, carried.as_ref().or(trail))
        })?;
        if !same_mesh {
            self.on = Some((meshed_from, plan.mesh.clone()));
        }
        Ok(followed)
    }

    pub(super) fn last(&self) -> Option<&Followed> {
        self.kept.last()
    }

    pub(super) fn runs(&self) -> usize {
        self.kept.runs()
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
