//! The stages of one design, each kept until an input of its own changes.

use super::following::Following;
use super::kept::Kept;
use super::shape::Boundaries;
use super::{Carved, Held, MotionField, Picture, Plan, Shape, TopError, signatures};
use crate::design::{ArchingMeasures, Design, GraduationMeasures, OutlineMeasures, SoundHoles};
use crate::fittings::Fittings;
use crate::mesh::MeshSize;
use crate::modes::{Followed, Modes, ModesRequest};
use crate::shell::EnergySlopes;
use crate::wood::WoodChoice;

/// How often each stage was made, over all mesh sizes.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct StageRuns {
    /// Outline and holes.
    pub boundaries: usize,
    /// Surface and thickness within them.
    pub shape: usize,
    /// Mesh, equations, factorisation order.
    pub plan: usize,
    /// Mid-surface and assembled shell with its fittings.
    pub carved: usize,
    /// The picture.
    pub picture: usize,
    /// The modes.
    pub modes: usize,
    /// The modes followed while a handle moves.
    pub followed: usize,
    /// The slopes of the modes' energies.
    pub slopes: usize,
}

/// What of a design each stage is made from.
pub(super) type DrawnFrom = (OutlineMeasures, ArchingMeasures, SoundHoles, GraduationMeasures);
pub(super) type MeshedFrom = (OutlineMeasures, SoundHoles, Held);
pub(super) type CarvedFrom = (DrawnFrom, Held, WoodChoice, Fittings);

/// One design and the last value of every stage, for each mesh size.
#[derive(Debug)]
pub struct Stages {
    design: Design,
    boundaries: Kept<(OutlineMeasures, SoundHoles), Boundaries>,
    shape: Kept<DrawnFrom, Shape>,
    pub(super) sizes: [OnMesh; 3],
}

/// The stages that stand on one mesh.
#[derive(Debug, Default)]
pub(super) struct OnMesh {
    pub(super) plan: Kept<MeshedFrom, Plan>,
    pub(super) carved: Kept<CarvedFrom, Carved>,
    picture: Kept<(DrawnFrom, Held), Picture>,
    pub(super) modes: Kept<(CarvedFrom, ModesRequest), Modes>,
    following: Following,
    pub(super) slopes: Kept<(CarvedFrom, ModesRequest), EnergySlopes>,
}

impl Stages {
    /// Starts with `design`; nothing is computed yet.
    #[must_use]
    pub fn new(design: Design) -> Self {
        Self { design, boundaries: Kept::default(), shape: Kept::default(), sizes: Default::default() }
    }

    /// The design.
    #[must_use]
    pub fn design(&self) -> &Design {
        &self.design
    }

    /// Changes to `design`, once it is known that it can be drawn; otherwise the present one stays.
    ///
    /// # Errors
    /// [`TopError::Design`] or [`TopError::Wood`] naming the measure at fault.
    pub fn set_design(&mut self, design: Design) -> Result<(), TopError> {
        design.check_numbers()?;
        Fittings::of_design(&design)?;
        draw(&mut self.boundaries, &mut self.shape, &design)?;
        let Boundaries { outline, holes } = self.boundaries.last().expect(MADE);
        design.check_within(outline, holes)?;
        self.design = design;
        Ok(())
    }

    /// The geometry.
    ///
    /// # Errors
    /// [`TopError::Design`] naming the measure at fault.
    pub fn shape(&mut self) -> Result<&Shape, TopError> {
        if self.shape.last().is_none() {
            // Nobody has checked the design that this began with.
            self.set_design(self.design.clone())?;
        }
        draw(&mut self.boundaries, &mut self.shape, &self.design)
    }

    /// Mesh and carved wood.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn carved(&mut self, size: MeshSize) -> Result<(&Plan, &Carved), TopError> {
        self.shape()?;
        let (design, shape) = (&self.design, self.shape.last().expect(MADE));
        let OnMesh { plan, carved, .. } = &mut self.sizes[size as usize];
        let held = Held::by(&design.rim);
        let plan = plan.get(meshed_from(design), || Plan::new(shape, held, size))?;
        let carved_from = carved_from(design)?;
        let fittings = carved_from.3.clone();
        let carved = carved.get(carved_from, || Carved::new(plan, shape, &design.wood.wood()?, &fittings))?;
        Ok((plan, carved))
    }

    /// The picture of the top.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn picture(&mut self, size: MeshSize) -> Result<&Picture, TopError> {
        self.carved(size)?;
        let OnMesh { plan, carved, picture, .. } = &mut self.sizes[size as usize];
        let (plan, carved) = both(plan, carved);
        let drawn = (drawn_from(&self.design), Held::by(&self.design.rim));
        picture.get(drawn, || Ok(Picture::new(&plan.mesh, &carved.mid_surface)))
    }

    /// The modes of the top.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn modes(&mut self, size: MeshSize, request: &ModesRequest) -> Result<&Modes, TopError> {
        self.carved(size)?;
        let OnMesh { plan, carved, modes, .. } = &mut self.sizes[size as usize];
        let (plan, carved) = both(plan, carved);
        modes.get((carved_from(&self.design)?, *request), || carved.modes(plan, request))
    }

    /// The lowest `count` modes of the top, from the last ones that were followed on this mesh size: in a fraction of a search's time
    /// while the design changes little by little, but not proven complete.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn follow(&mut self, size: MeshSize, count: usize) -> Result<&Followed, TopError> {
        self.carved(size)?;
        let OnMesh { plan, carved, following, .. } = &mut self.sizes[size as usize];
        let (plan, carved) = both(plan, carved);
        following.follow((meshed_from(&self.design), plan), (carved_from(&self.design)?, carved), count)
    }

    /// The motion of elastic mode `mode`, counted from zero, of the last modes of `size`, those followed or else those solved, on
    /// the last picture; none before both were made, or when there is no such mode.
    #[must_use]
    pub fn motion(&self, size: MeshSize, mode: usize, followed: bool) -> Option<MotionField> {
        let OnMesh { carved, picture, .. } = &self.sizes[size as usize];
        let (carved, picture, modes) = (carved.last()?, picture.last()?, self.last_modes(size, followed)?);
        (mode < modes.count()).then(|| MotionField::new(picture, &carved.mid_surface, modes.shape(mode)))
    }

    /// (mode, place): what tells the last modes of `size` from each other on any mesh, see [`signatures`]; those followed, or else
    /// those solved. Empty before there are any.
    #[must_use]
    pub fn signatures(&self, size: MeshSize, followed: bool) -> Vec<f32> {
        let plan = self.sizes[size as usize].plan.last();
        plan.zip(self.last_modes(size, followed)).map_or_else(Vec::new, |(plan, modes)| signatures(&plan.mesh, modes))
    }

    /// The last modes of `size`: those followed, or else those solved.
    pub(super) fn last_modes(&self, size: MeshSize, followed: bool) -> Option<&Modes> {
        let OnMesh { modes, following, .. } = &self.sizes[size as usize];
        if followed { following.last().map(|followed| &followed.modes) } else { modes.last() }
    }

    /// How often each stage was made so far.
    #[must_use]
    pub fn runs(&self) -> StageRuns {
        let sum = |runs: fn(&OnMesh) -> usize| self.sizes.iter().map(runs).sum();
        StageRuns {
            boundaries: self.boundaries.runs(),
            shape: self.shape.runs(),
            plan: sum(|on| on.plan.runs()),
            carved: sum(|on| on.carved.runs()),
            picture: sum(|on| on.picture.runs()),
            modes: sum(|on| on.modes.runs()),
            followed: sum(|on| on.following.runs()),
            slopes: sum(|on| on.slopes.runs()),
        }
    }
}

/// Draws a design whose numbers are within their limits; what it has in common with the last one drawn is not drawn again.
fn draw<'a>(
    boundaries: &mut Kept<(OutlineMeasures, SoundHoles), Boundaries>,
    shape: &'a mut Kept<DrawnFrom, Shape>,
    design: &Design,
) -> Result<&'a Shape, TopError> {
    let bounded_by = (design.outline.clone(), design.sound_holes.clone());
    let boundaries = boundaries.get(bounded_by, || Boundaries::new(design))?;
    Ok(shape.get(drawn_from(design), || Shape::within(boundaries, design))?)
}

fn both<'a>(plan: &'a Kept<MeshedFrom, Plan>, carved: &'a Kept<CarvedFrom, Carved>) -> (&'a Plan, &'a Carved) {
    (plan.last().expect(MADE), carved.last().expect(MADE))
}

const MADE: &str = "the stage was made just before";

fn meshed_from(design: &Design) -> MeshedFrom {
    (design.outline.clone(), design.sound_holes.clone(), Held::by(&design.rim))
}

fn drawn_from(design: &Design) -> DrawnFrom {
    (design.outline.clone(), design.arching.clone(), design.sound_holes.clone(), design.graduation.clone())
}

pub(super) fn carved_from(design: &Design) -> Result<CarvedFrom, TopError> {
    Ok((drawn_from(design), Held::by(&design.rim), design.wood, Fittings::of_design(design)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::fittings_tests::fit_out;
    use crate::design::{Rim, SoundHoleChoice};

    fn fitted_out() -> Design {
        let mut design = Design::demo();
        fit_out(&mut design);
        design
    }

    /// Which stages each control makes again: the mesh and its factorisation's order survive all but outline, holes
    /// and what the rim holds unmoved.
    #[test]
    fn a_change_makes_again_only_what_follows_from_it() {
        let mut stages = Stages::new(Design::demo());
        let request = ModesRequest { most: 2, below_hz: None, prove: false };
        let mut after = |change: fn(&mut Design)| {
            let before = stages.runs();
            let mut design = stages.design().clone();
            change(&mut design);
            stages.set_design(design).unwrap();
            stages.picture(MeshSize::Preview).unwrap();
            stages.modes(MeshSize::Preview, &request).unwrap();
            stages.follow(MeshSize::Preview, 2).unwrap();
            let now = stages.runs();
            [
                now.boundaries - before.boundaries,
                now.shape - before.shape,
                now.plan - before.plan,
                now.carved - before.carved,
                now.picture - before.picture,
                now.modes - before.modes,
                now.followed - before.followed,
            ]
        };
        assert_eq!(after(|_| ()), [1, 1, 1, 1, 1, 1, 1], "first");
        assert_eq!(after(|_| ()), [0; 7], "nothing changed");
        assert_eq!(after(|design| design.name.push('x')), [0; 7], "name");
        assert_eq!(after(|design| design.arching.apex_height_mm += 0.5), [0, 1, 0, 1, 1, 1, 1], "arch");
        assert_eq!(after(|design| design.graduation.centre_mm += 0.1), [0, 1, 0, 1, 1, 1, 1], "thickness");
        assert_eq!(after(|design| design.wood.ring_angle_deg = 3.0), [0, 0, 0, 1, 0, 1, 1], "wood");
        assert_eq!(after(|design| design.rim = Rim::Hinged), [0, 0, 1, 1, 1, 1, 1], "rim");
        assert_eq!(after(|design| design.rim = Rim::Clamped), [0, 0, 1, 1, 1, 1, 1], "clamped rim");
        assert_eq!(after(|design| design.rim = Rim::Free), [0, 0, 1, 1, 1, 1, 1], "free again");
        assert_eq!(after(|design| design.bar = fitted_out().bar), [0, 0, 0, 1, 0, 1, 1], "bar");
        assert_eq!(
            after(|design| design.bar.as_mut().unwrap().height_mm = 10.0),
            [0, 0, 0, 1, 0, 1, 1],
            "bar's height"
        );
        assert_eq!(after(|design| design.post = fitted_out().post), [0, 0, 0, 1, 0, 1, 1], "post");
        assert_eq!(after(|design| design.masses = fitted_out().masses), [0, 0, 0, 1, 0, 1, 1], "mass");
        assert_eq!(after(|design| design.rim = fitted_out().rim), [0, 0, 0, 1, 0, 1, 1], "ribs that give way");
        assert_eq!(after(|design| design.sound_holes.bass = SoundHoleChoice::None), [1, 1, 1, 1, 1, 1, 1], "hole");
    }

    #[test]
    fn a_design_that_cannot_be_drawn_leaves_the_last() {
        let mut stages = Stages::new(Design::demo());
        stages.carved(MeshSize::Preview).unwrap();
        let mut flat = Design::demo();
        flat.arching.apex_height_mm = 0.5;
        assert!(stages.set_design(flat).is_err());
        assert_eq!(stages.design(), &Design::demo());
        let runs = stages.runs();
        stages.carved(MeshSize::Preview).unwrap();
        assert_eq!(stages.runs().carved, runs.carved);
    }
}
