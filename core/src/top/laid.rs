//! Wood laid on a mesh, and its picture.

use super::kept::Kept;
use super::stages::{CarvedFrom, DrawnFrom, MeshedFrom, carved_on, drawn_from};
use super::{Carved, MotionField, Picture, Plan, Shape, TopError};
use crate::design::Design;
use crate::modes::Modes;

/// The stages between a mesh and its modes.
#[derive(Debug, Default)]
pub(super) struct Laid {
    pub(super) carved: Kept<CarvedFrom, Carved>,
    pub(super) picture: Kept<(MeshedFrom, DrawnFrom), Picture>,
}

impl Laid {
    /// The wood of `design`, whose geometry is `shape`, on `plan`, whose mesh was made for `made_for`.
    pub(super) fn carved(
        &mut self,
        (made_for, plan): (&MeshedFrom, &Plan),
        design: &Design,
        shape: &Shape,
    ) -> Result<&Carved, TopError> {
        let carved_from = carved_on(made_for, design)?;
        let fittings = carved_from.3.clone();
        self.carved.get(carved_from, || Carved::new(plan, shape, &design.wood.wood()?, &fittings))
    }

    /// The picture of the same.
    pub(super) fn picture(
        &mut self,
        (made_for, plan): (&MeshedFrom, &Plan),
        design: &Design,
        shape: &Shape,
    ) -> Result<&Picture, TopError> {
        self.carved((made_for, plan), design, shape)?;
        let mid = &self.carved.last().expect("it was carved just before").mid_surface;
        self.picture.get((made_for.clone(), drawn_from(design)), || Ok(Picture::new(&plan.mesh, mid)))
    }

    /// The motion of elastic mode `mode` of `modes` on the last picture; none before there is one, or when there is no such mode.
    pub(super) fn motion(&self, modes: &Modes, mode: usize) -> Option<MotionField> {
        let (carved, picture) = (self.carved.last()?, self.picture.last()?);
        (mode < modes.count()).then(|| MotionField::new(picture, &carved.mid_surface, modes.shape(mode)))
    }
}
