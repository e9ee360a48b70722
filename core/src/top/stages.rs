//! The stages of one design, each kept until an input of its own changes.

use super::following::Following;
use super::kept::Kept;
use super::laid::Laid;
use super::shape::Boundaries;
use super::{Carved, Held, MotionField, Picture, Plan, Shape, SwingingField, TopError, signatures};
use crate::design::{ArchingMeasures, Design, DesignError, GraduationMeasures, OutlineMeasures, SoundHoles};
use crate::fittings::Fittings;
use crate::mesh::{MeshSize, PlanMesh};
use crate::modes::{Followed, Modes, ModesRequest};
use crate::response::ComplexField;
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
    /// The slopes of the modes' energies.
    pub slopes: usize,
    /// What stands on the mesh under a moving handle.
    pub followed: FollowedRuns,
}

/// How often each stage under a moving handle was made, over all mesh sizes.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct FollowedRuns {
    /// Mesh, equations, factorisation order.
    pub plan: usize,
    /// Only the mesh's nodes, moved.
    pub moved: usize,
    /// Mid-surface and assembled shell with its fittings.
    pub carved: usize,
    /// The picture.
    pub picture: usize,
    /// The modes.
    pub modes: usize,
}

/// What each stage is made from: measures and choices, and the numbers of the values before it.
type BoundedFrom = (OutlineMeasures, SoundHoles);
type ShapedFrom = (usize, ArchingMeasures, GraduationMeasures);
pub(super) type MeshedFrom = (usize, Held);
/// First, what the mesh was made for: under a moving handle, other boundaries than those of the shape.
pub(super) type CarvedFrom = (MeshedFrom, usize, WoodChoice, Fittings);

/// One design and the last value of every stage, for each mesh size.
#[derive(Debug)]
pub struct Stages {
    pub(super) design: Design,
    /// What is wrong with the numbers of the design that this began with.
    fault: Option<DesignError>,
    boundaries: Kept<BoundedFrom, Boundaries>,
    shape: Kept<ShapedFrom, Shape>,
    pub(super) sizes: [OnMesh; 3],
}

/// A design as it is drawn.
#[derive(Clone, Copy)]
pub(super) struct Drawn<'a> {
    pub(super) design: &'a Design,
    pub(super) shape: &'a Shape,
    /// The numbers of its boundaries and of its shape.
    boundaries: usize,
    pub(super) number: usize,
}

impl Drawn<'_> {
    pub(super) fn meshed_from(&self) -> MeshedFrom {
        (self.boundaries, Held::by(&self.design.rim))
    }
}

/// The stages that stand on one mesh.
#[derive(Debug, Default)]
pub(super) struct OnMesh {
    pub(super) plan: Kept<MeshedFrom, Plan>,
    pub(super) wood: Laid,
    pub(super) modes: Kept<(usize, ModesRequest), Modes>,
    following: Following,
    pub(super) slopes: Kept<(usize, ModesRequest), EnergySlopes>,
}

impl Stages {
    /// Starts with `design`; nothing is computed yet.
    #[must_use]
    pub fn new(design: Design) -> Self {
        let fault = design.check_numbers().err();
        Self { fault, design, ..Self::demo() }
    }

    /// Starts with the demonstration design.
    #[must_use]
    pub fn demo() -> Self {
        Self {
            design: Design::demo(),
            fault: None,
            boundaries: Kept::default(),
            shape: Kept::default(),
            sizes: Default::default(),
        }
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
        self.set_within_limits(design)
    }

    /// The same from a JSON document.
    ///
    /// # Errors
    /// As there, and what is wrong with the document.
    pub fn open(&mut self, json: &str) -> Result<(), TopError> {
        self.set_within_limits(Design::parse(json)?)
    }

    /// The same for a design whose numbers are known to be within their limits: they were read so.
    fn set_within_limits(&mut self, design: Design) -> Result<(), TopError> {
        Fittings::of_design(&design)?;
        draw(&mut self.boundaries, &mut self.shape, &design)?;
        let Boundaries { outline, holes, .. } = self.boundaries.last().expect(MADE);
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
            if let Some(fault) = &self.fault {
                return Err(fault.clone().into());
            }
            self.set_within_limits(self.design.clone())?;
        }
        draw(&mut self.boundaries, &mut self.shape, &self.design)
    }

    /// Mesh and carved wood.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn carved(&mut self, size: MeshSize) -> Result<(&Plan, &Carved), TopError> {
        let (drawn, OnMesh { plan, wood, .. }) = self.drawn_on(size)?;
        let made_for = drawn.meshed_from();
        let plan = plan.get(made_for, || Plan::new(drawn.shape, made_for.1, size))?;
        Ok((plan, wood.carved((made_for, plan), drawn)?))
    }

    /// The picture of the top.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn picture(&mut self, size: MeshSize) -> Result<&Picture, TopError> {
        self.carved(size)?;
        let (drawn, OnMesh { plan, wood, .. }) = self.drawn_on(size)?;
        wood.picture((drawn.meshed_from(), plan.last().expect(MADE)), drawn)
    }

    /// The modes of the top.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn modes(&mut self, size: MeshSize, request: &ModesRequest) -> Result<&Modes, TopError> {
        self.carved(size)?;
        let OnMesh { plan, wood, modes, .. } = &mut self.sizes[size as usize];
        let (plan, carved) = (plan.last().expect(MADE), wood.carved.last().expect(MADE));
        modes.get((wood.carved.number(), *request), || carved.modes(plan, request))
    }

    /// The lowest `count` modes of the top, from the last ones that were followed on this mesh size: in a fraction of a search's time
    /// while the design changes little by little, but not proven complete. The mesh is the last one that was made for this, moved
    /// with outline and holes as long as it stays good enough, so that the figures depend a little on where the handle started.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn follow(&mut self, size: MeshSize, count: usize) -> Result<&Followed, TopError> {
        let (drawn, OnMesh { following, .. }) = self.drawn_on(size)?;
        following.follow(drawn, size, count)
    }

    /// Mesh and carved wood as [`Stages::follow`] has them.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn followed_carved(&mut self, size: MeshSize) -> Result<(&Plan, &Carved), TopError> {
        let (drawn, OnMesh { following, .. }) = self.drawn_on(size)?;
        following.carved(drawn, size)
    }

    /// The picture of the same.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn followed_picture(&mut self, size: MeshSize) -> Result<&Picture, TopError> {
        let (drawn, OnMesh { following, .. }) = self.drawn_on(size)?;
        following.picture(drawn, size)
    }

    fn drawn_on(&mut self, size: MeshSize) -> Result<(Drawn<'_>, &mut OnMesh), TopError> {
        self.shape()?;
        let Self { design, boundaries, shape, sizes, .. } = self;
        let (boundaries, number) = (boundaries.number(), shape.number());
        let drawn = Drawn { design, shape: shape.last().expect(MADE), boundaries, number };
        Ok((drawn, &mut sizes[size as usize]))
    }

    /// The motion of elastic mode `mode`, counted from zero, of the last modes of `size`, those followed or else those solved, on
    /// the picture that goes with them; none before both were made, or when there is no such mode.
    #[must_use]
    pub fn motion(&self, size: MeshSize, mode: usize, followed: bool) -> Option<MotionField> {
        let (_, wood, modes) = self.last_modes(size, followed)?;
        wood.motion(modes, mode)
    }

    /// A field of the nodes of `size` on the last picture of the same mesh; none before there is one.
    #[must_use]
    pub fn swinging(&self, size: MeshSize, field: &ComplexField) -> Option<SwingingField> {
        self.sizes[size as usize].wood.swinging(field)
    }

    /// (mode, place): what tells the last modes of `size` from each other on any mesh, see [`signatures`]; those followed, or else
    /// those solved. Empty before there are any.
    #[must_use]
    pub fn signatures(&self, size: MeshSize, followed: bool) -> Vec<f32> {
        self.last_modes(size, followed).map_or_else(Vec::new, |(mesh, _, modes)| signatures(mesh, modes))
    }

    /// The last modes of `size`, those followed or else those solved, with mesh and wood under them.
    pub(super) fn last_modes(&self, size: MeshSize, followed: bool) -> Option<(&PlanMesh, &Laid, &Modes)> {
        let OnMesh { plan, wood, modes, following, .. } = &self.sizes[size as usize];
        if followed { following.last() } else { Some((&plan.last()?.mesh, wood, modes.last()?)) }
    }

    /// How often each stage was made so far.
    #[must_use]
    pub fn runs(&self) -> StageRuns {
        let sum = |runs: fn(&OnMesh) -> usize| self.sizes.iter().map(runs).sum();
        StageRuns {
            boundaries: self.boundaries.runs(),
            shape: self.shape.runs(),
            plan: sum(|on| on.plan.runs()),
            carved: sum(|on| on.wood.carved.runs()),
            picture: sum(|on| on.wood.picture.runs()),
            modes: sum(|on| on.modes.runs()),
            slopes: sum(|on| on.slopes.runs()),
            followed: self.sizes.iter().fold(FollowedRuns::default(), |runs, on| on.following.add_runs(runs)),
        }
    }
}

/// Draws a design whose numbers are within their limits; what it has in common with the last one drawn is not drawn again.
fn draw<'a>(
    boundaries: &mut Kept<BoundedFrom, Boundaries>,
    shape: &'a mut Kept<ShapedFrom, Shape>,
    design: &Design,
) -> Result<&'a Shape, TopError> {
    boundaries.get((design.outline.clone(), design.sound_holes.clone()), || Boundaries::new(design))?;
    let shaped_from = (boundaries.number(), design.arching.clone(), design.graduation.clone());
    let boundaries = boundaries.last().expect(MADE);
    Ok(shape.revise(shaped_from, |last| Shape::within(boundaries, design, last))?)
}

const MADE: &str = "the stage was made just before";

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

    /// How often each stage was made: outline and holes, surface; mesh, wood, picture, modes of the settled design; mesh made and
    /// moved, wood, picture, modes under a moving handle.
    fn counts(runs: StageRuns) -> ([usize; 2], [usize; 4], [usize; 5]) {
        let FollowedRuns { plan, moved, carved, picture, modes } = runs.followed;
        (
            [runs.boundaries, runs.shape],
            [runs.plan, runs.carved, runs.picture, runs.modes],
            [plan, moved, carved, picture, modes],
        )
    }

    /// Which stages each control makes again: the mesh and its factorisation's order survive all but outline, holes
    /// and what the rim holds unmoved. Under a moving handle they survive outlines and holes that move a little.
    #[test]
    fn a_change_makes_again_only_what_follows_from_it() {
        let mut stages = Stages::new(Design::demo());
        let request = ModesRequest { most: 2, below_hz: None, prove: false };
        let mut after = |change: fn(&mut Design)| {
            let before = counts(stages.runs());
            let mut design = stages.design().clone();
            change(&mut design);
            stages.set_design(design).unwrap();
            stages.picture(MeshSize::Preview).unwrap();
            stages.modes(MeshSize::Preview, &request).unwrap();
            stages.follow(MeshSize::Preview, 2).unwrap();
            stages.followed_picture(MeshSize::Preview).unwrap();
            let now = counts(stages.runs());
            (
                std::array::from_fn(|i| now.0[i] - before.0[i]),
                std::array::from_fn(|i| now.1[i] - before.1[i]),
                std::array::from_fn(|i| now.2[i] - before.2[i]),
            )
        };
        let nothing = ([0; 2], [0; 4], [0; 5]);
        let all = ([1; 2], [1; 4], [1, 0, 1, 1, 1]);
        let surface = ([0, 1], [0, 1, 1, 1], [0, 0, 1, 1, 1]);
        let wood = ([0, 0], [0, 1, 0, 1], [0, 0, 1, 0, 1]);
        let held = ([0, 0], [1; 4], [1, 0, 1, 1, 1]);
        let moved = ([1; 2], [1; 4], [0, 1, 1, 1, 1]);
        assert_eq!(after(|_| ()), all, "first");
        assert_eq!(after(|_| ()), nothing, "nothing changed");
        assert_eq!(after(|design| design.name.push('x')), nothing, "name");
        assert_eq!(after(|design| design.arching.apex_height_mm += 0.5), surface, "arch");
        assert_eq!(after(|design| design.graduation.centre_mm += 0.1), surface, "thickness");
        assert_eq!(after(|design| design.wood.ring_angle_deg = 3.0), wood, "wood");
        assert_eq!(after(|design| design.rim = Rim::Hinged), held, "rim");
        assert_eq!(after(|design| design.rim = Rim::Clamped), held, "clamped rim");
        assert_eq!(after(|design| design.rim = Rim::Free), held, "free again");
        assert_eq!(after(|design| design.bar = fitted_out().bar), wood, "bar");
        assert_eq!(after(|design| design.bar.as_mut().unwrap().height_mm = 10.0), wood, "bar's height");
        assert_eq!(after(|design| design.post = fitted_out().post), wood, "post");
        assert_eq!(after(|design| design.masses = fitted_out().masses), wood, "mass");
        assert_eq!(after(|design| design.rim = fitted_out().rim), wood, "ribs that give way");
        assert_eq!(after(|design| design.outline.waist_width_mm += 0.2), moved, "waist, a little");
        assert_eq!(after(|design| design.sound_holes.stop_mm += 0.2), moved, "stop, a little");
        assert_eq!(after(|design| design.sound_holes.stop_mm += 0.2), moved, "stop, a little more");
        assert_eq!(after(|design| design.sound_holes.stop_mm -= 8.0), all, "stop, by much");
        assert_eq!(after(|design| design.sound_holes.stop_mm += 0.2), moved, "stop, from there");
        assert_eq!(after(|design| design.sound_holes.bass = SoundHoleChoice::None), all, "hole");
    }

    /// What a change takes over of the last shape is what it would be if drawn from nothing.
    #[test]
    fn a_shape_after_another_is_the_one_drawn_from_nothing() {
        let changes: [fn(&mut Design); 4] = [
            |design| design.arching.apex_height_mm += 1.0,
            |design| design.arching.channel_distance_mm += 2.0,
            |design| design.outline.waist_width_mm -= 4.0,
            |design| design.graduation.flank_mm += 0.2,
        ];
        let mut stages = Stages::new(Design::demo());
        for change in changes {
            let mut design = stages.design().clone();
            change(&mut design);
            stages.set_design(design.clone()).unwrap();
            let (after, fresh) = (stages.shape().unwrap(), Shape::new(&design).unwrap());
            for p in
                (1..35).flat_map(|row| (-9..10).map(move |column| [10.0 * f64::from(column), 10.0 * f64::from(row)]))
            {
                assert_eq!(after.surface.at(p), fresh.surface.at(p));
                assert_eq!(after.graduation.thickness_mm(p), fresh.graduation.thickness_mm(p));
            }
        }
    }

    /// By whichever way it came.
    #[test]
    fn a_number_outside_its_limits_is_refused() {
        let mut high = Design::demo();
        high.arching.apex_height_mm = 400.0;
        let is_refused = |result: Result<(), TopError>| {
            let told = result.unwrap_err();
            let TopError::Design(DesignError::OutOfRange { path, value, .. }) = &told else { panic!("{told}") };
            assert_eq!((path.as_str(), *value), ("arching.apex_height_mm", 400.0));
        };
        let mut stages = Stages::demo();
        is_refused(stages.open(&high.to_json()));
        is_refused(stages.set_design(high.clone()));
        assert_eq!(stages.design(), &Design::demo());
        is_refused(Stages::new(high).shape().map(|_| ()));
        high = Design::demo();
        high.arching.apex_height_mm = 15.0;
        stages.open(&high.to_json()).unwrap();
        assert_eq!(stages.design(), &high);
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
