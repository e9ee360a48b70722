//! Wood laid on a mesh, and its picture.

use super::kept::Kept;
use super::stages::{CarvedFrom, Drawn, MeshedFrom};
use super::{Carved, MotionField, Picture, Plan, SwingingField, TopError};
use crate::fittings::Fittings;
use crate::modes::Modes;
use crate::response::ComplexField;

/// The stages between a mesh and its modes.
#[derive(Debug, Default)]
pub(super) struct Laid {
    pub(super) carved: Kept<CarvedFrom, Carved>,
    pub(super) picture: Kept<(MeshedFrom, usize), Picture>,
}

impl Laid {
    /// The wood of a design on `plan`, whose mesh was made for `made_for`.
    pub(super) fn carved(
        &mut self,
        (made_for, plan): (MeshedFrom, &Plan),
        drawn: Drawn<'_>,
    ) -> Result<&Carved, TopError> {
        let Drawn { design, shape, number, .. } = drawn;
        let fittings = Fittings::of_design(design)?;
        let carved_from = (made_for, number, design.wood, fittings.clone());
        self.carved.get(carved_from, || Carved::new(plan, shape, &design.wood.wood()?, &fittings))
    }

    /// The picture of the same.
    pub(super) fn picture(&mut self, on: (MeshedFrom, &Plan), drawn: Drawn<'_>) -> Result<&Picture, TopError> {
        self.carved(on, drawn)?;
        let mid = &self.carved.last().expect("it was carved just before").mid_surface;
        self.picture.get((on.0, drawn.number), || Ok(Picture::new(&on.1.mesh, mid)))
    }

    /// The motion of elastic mode `mode` of `modes` on the last picture; none before there is one, or when there is no such mode.
    pub(super) fn motion(&self, modes: &Modes, mode: usize) -> Option<MotionField> {
        let (carved, picture) = (self.carved.last()?, self.picture.last()?);
        (mode < modes.count()).then(|| MotionField::new(picture, &carved.mid_surface, modes.shape(mode)))
    }

    /// A field of the nodes on the last picture; none before there is one.
    pub(super) fn swinging(&self, field: &ComplexField) -> Option<SwingingField> {
        let (carved, picture) = (self.carved.last()?, self.picture.last()?);
        Some(SwingingField::new(picture, &carved.mid_surface, field))
    }
}
