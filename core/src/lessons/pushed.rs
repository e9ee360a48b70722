//! Figures of a top under a slow push.

use super::figure::Push;
use super::{LessonError, Reading};
use crate::design::{Design, Rim};
use crate::fittings::Fittings;
use crate::mesh::{MeshSize, PlanMesh};
use crate::plan::{Point, vector::distance};
use crate::regions::{RegionKind, Regions, Side};
use crate::response::unit_loads;
use crate::shell::DOFS_PER_NODE;
use crate::sound_holes::SoundHole;
use crate::statics::{PointLoad, edge_stresses, greatest_stress};
use crate::top::{Carved, Plan, Stages, TopError, energy_slopes};
use crate::wood::{Wood, WoodConstant};

/// About what strings press a bridge down with, N (common practice, no source): stresses are in proportion.
const PRESSED_N: f64 = 90.0;
/// A length over which wood that cracks has to bear its stress: some element's sides on a standard mesh; assumed, no source.
const OVER_MM: f64 = 2.0;
const UM_PER_M: f64 = 1e6;
const SHARE: f64 = 0.01;
/// Of a constant, to see how the stress follows it: small beside 1, large beside rounding.
const STEP: f64 = 0.02;

/// (node, dof) displacements, m and rad.
type Moved = Vec<[f64; DOFS_PER_NODE]>;

/// How far the wood gives way along `push`, for a newton.
pub(super) fn give(top: &mut Stages, push: Push) -> Result<Reading, LessonError> {
    let standard = give_on(top, push, MeshSize::Standard)?.0;
    let (fine, moved) = give_on(top, push, MeshSize::Fine)?;
    let design = top.design().clone();
    let (plan, carved) = top.carved(MeshSize::Fine)?;
    // What gives way by u under f stores u·f/2, so that its slopes are the give's, turned round.
    let slopes = energy_slopes(&design, plan, carved, moved.as_flattened())?;
    let scatter = design.wood.scatter();
    let by_constant = slopes.by_constant.iter().zip(scatter.by_constant_pct);
    let wood = by_constant.map(|(slope, pct)| -SHARE * pct * slope[0] / slopes.whole_stiffness[0] * fine);
    Ok(Reading::new(fine, wood.collect(), [standard - fine, (standard - fine).abs()]))
}

fn give_on(top: &mut Stages, push: Push, size: MeshSize) -> Result<(f64, Moved), LessonError> {
    let loads = loads(top, push, size)?;
    let (plan, carved) = held(top, size)?;
    let moved = carved.displacements(plan, &loads)?;
    let along = |load: &PointLoad| (0..3).map(|axis| load.force_n[axis] * moved[load.node][axis]).sum::<f64>();
    let give_um = UM_PER_M * loads.iter().map(along).sum::<f64>();
    Ok((give_um, moved))
}

/// The greatest stress along the holes' edges while the strings press the bridge down.
pub(super) fn edge_stress(top: &mut Stages) -> Result<Reading, LessonError> {
    let on_fine = on_feet(top, MeshSize::Fine, [-0.5 * PRESSED_N; 2])?;
    let on_standard = on_feet(top, MeshSize::Standard, [-0.5 * PRESSED_N; 2])?;
    let design = top.design().clone();
    let wood = design.wood.wood().map_err(TopError::from)?;
    let stress = |(plan, carved): (&Plan, &Carved), wood: &Wood, loads: &[PointLoad]| {
        let moved = carved.displacements(plan, loads)?;
        let of = |line: &Vec<u32>| greatest_stress(&edge_stresses(&carved.geometry, wood, line, true, &moved), OVER_MM);
        let greatest = plan.mesh.hole_loops.iter().filter_map(of).map(|(stress, _)| stress).reduce(f64::max);
        greatest.ok_or_else(|| LessonError::NoRegion { region: "sound_holes".into(), there: String::new() })
    };
    let fine = stress(held(top, MeshSize::Fine)?, &wood, &on_fine)?;
    let (plan, carved) = held(top, MeshSize::Standard)?;
    let standard = stress((plan, carved), &wood, &on_standard)?;
    // No short cut: the place of the greatest stress may move with the wood.
    let fittings = Fittings::of_design(&design).map_err(TopError::from)?;
    let scatter = design.wood.scatter();
    let by_wood = WoodConstant::ALL.into_iter().zip(scatter.by_constant_pct).map(|(constant, pct)| {
        let other = Wood { constants: wood.constants.scaled(constant, 1.0 + STEP), ..wood };
        let other_top = Carved::on(plan, carved.mid_surface.clone(), &other, &fittings)?;
        Ok((stress((plan, &other_top), &other, &on_standard)? - standard) * SHARE * pct / STEP)
    });
    let by_wood = by_wood.collect::<Result<Vec<f64>, LessonError>>()?;
    Ok(Reading::new(fine, by_wood, [standard - fine, (standard - fine).abs()]))
}

/// Mesh and wood of a top that something holds.
fn held(top: &mut Stages, size: MeshSize) -> Result<(&Plan, &Carved), LessonError> {
    if matches!(top.design(), Design { rim: Rim::Free, .. }) {
        return Err(LessonError::Floats);
    }
    Ok(top.carved(size)?)
}

fn loads(top: &mut Stages, push: Push, size: MeshSize) -> Result<Vec<PointLoad>, LessonError> {
    let feet_n = match push {
        Push::Rocking => [-1.0, 1.0],
        Push::BothFeet => [0.5, 0.5],
        Push::BassFoot => [1.0, 0.0],
        Push::TrebleFoot => [0.0, 1.0],
        Push::LowerWing => return on_wing(top, size),
    };
    on_feet(top, size, feet_n)
}

/// Forces outwards on the bridge's feet, bass and treble.
fn on_feet(top: &mut Stages, size: MeshSize, feet_n: [f64; 2]) -> Result<Vec<PointLoad>, LessonError> {
    let (bridge, stands_at_m) = (top.bridge(), top.bridge_stands_at_m());
    let (plan, carved) = top.carved(size)?;
    let [bass, treble, _] =
        unit_loads(&bridge.patches(&carved.surface(plan), stands_at_m).ok_or(LessonError::NoBridge)?);
    let times = |loads: Vec<PointLoad>, by: f64| {
        loads.into_iter().map(move |load| PointLoad { force_n: load.force_n.map(|part| part * by), ..load })
    };
    Ok(times(bass, feet_n[0]).chain(times(treble, feet_n[1])).collect())
}

/// Up at the lower wing's point on the treble side, down at both ends of its root.
fn on_wing(top: &mut Stages, size: MeshSize) -> Result<Vec<PointLoad>, LessonError> {
    let kind = RegionKind::LowerWing(Side::Treble);
    let shape = top.shape()?;
    let regions = Regions::new(&shape.outline, &shape.holes);
    let root = regions.get(kind).and_then(|wing| wing.narrowest);
    let treble = shape.holes.iter().find(|hole| Side::of(hole) == Side::Treble);
    let point = treble.and_then(SoundHole::eyes).map(|[_, lower]| lower.throat[0]);
    let (Some(root), Some(point)) = (root, point) else {
        let there = regions.regions.iter().map(|region| region.kind.key()).collect::<Vec<_>>().join(", ");
        return Err(LessonError::NoRegion { region: kind.key().into(), there });
    };
    let mesh = &top.carved(size)?.0.mesh;
    let load = |place: Point, up_n: f64| PointLoad { node: nearest(mesh, place), force_n: [0.0, 0.0, up_n] };
    Ok(vec![load(point, 1.0), load(root.ends[0], -0.5), load(root.ends[1], -0.5)])
}

fn nearest(mesh: &PlanMesh, place: Point) -> usize {
    let off = |p: &Point| distance(*p, place);
    let places = mesh.points_mm.iter().enumerate();
    places.min_by(|a, b| off(a.1).total_cmp(&off(b.1))).map_or(0, |(node, _)| node)
}
