//! A top on the bench: its rim held by hinges, a force where the bridge's feet stand.

use anyhow::{Context, Result};
use bombatura_core::{
    design::{Design, EyesAndStem, Rim, SoundHoleChoice},
    mesh::{MeshSize, PlanMesh},
    regions::{RegionKind, Regions},
    response::Patch,
    shell::DOFS_PER_NODE,
    statics::PointLoad,
    top::Stages,
};

/// A foot of the bridge: nodes with their shares in the force on it.
pub(super) type Foot = Patch;

/// How the nodes move out of the plan, mm for each newton.
pub(super) struct Motion {
    pub(super) bass_foot: f64,
    pub(super) treble_foot: f64,
    /// (node) region and displacement.
    nodes: Vec<(RegionKind, f64)>,
}

impl Motion {
    /// Root mean square over the nodes of a region; none without it.
    pub(super) fn rms(&self, kind: RegionKind) -> Option<f64> {
        let own: Vec<f64> = self.nodes.iter().filter(|node| node.0 == kind).map(|node| node.1 * node.1).collect();
        (!own.is_empty()).then(|| (own.iter().sum::<f64>() / own.len() as f64).sqrt())
    }

    /// The regions there are.
    pub(super) fn kinds(&self) -> Vec<RegionKind> {
        let mut kinds: Vec<RegionKind> = self.nodes.iter().map(|node| node.0).collect();
        kinds.sort();
        kinds.dedup();
        kinds
    }
}

/// The demonstration with a hinged rim and one thing changed.
pub(super) fn demonstration(change: impl FnOnce(&mut Design)) -> Design {
    let mut design = Design::demo();
    design.rim = Rim::Hinged;
    change(&mut design);
    design
}

/// Changes both f-holes alike.
pub(super) fn both_holes(design: &mut Design, change: impl Fn(&mut EyesAndStem)) {
    for hole in [&mut design.sound_holes.bass, &mut design.sound_holes.treble] {
        if let SoundHoleChoice::EyesAndStem(measures) = hole {
            change(measures);
        }
    }
}

/// The region of each node of the standard mesh.
pub(super) fn regions_of_nodes(stages: &mut Stages) -> Result<Vec<RegionKind>> {
    let points = stages.carved(MeshSize::Standard)?.0.mesh.points_mm.clone();
    let shape = stages.shape()?;
    let regions = Regions::new(&shape.outline, &shape.holes);
    points.iter().map(|&p| Ok(regions.at(p).context("a top has regions")?.kind)).collect()
}

/// The node nearest to a place in plan.
pub(super) fn nearest(mesh: &PlanMesh, [x, y]: [f64; 2]) -> Result<usize> {
    let off = |p: &[f64; 2]| (p[0] - x).hypot(p[1] - y);
    let places = mesh.points_mm.iter().enumerate();
    places.min_by(|a, b| off(a.1).total_cmp(&off(b.1))).map(|(node, _)| node).context("a mesh has nodes")
}

/// The bridge's feet: bass, treble.
pub(super) fn feet(stages: &mut Stages, size: MeshSize) -> Result<[Foot; 2]> {
    let (bridge, stands_at_m) = (stages.bridge(), stages.bridge_stands_at_m());
    let (plan, carved) = stages.carved(size)?;
    bridge.patches(&carved.surface(plan), stands_at_m).context("the bridge stands on wood")
}

/// A force in newtons outwards on a foot.
pub(super) fn on_foot(foot: &Foot, force_n: f64) -> impl Iterator<Item = PointLoad> {
    foot.iter().map(move |&(node, share)| PointLoad { node: node as usize, force_n: [0.0, 0.0, force_n * share] })
}

/// (node, dof) displacements under `loads`, m and rad.
pub(super) fn loaded(stages: &mut Stages, size: MeshSize, loads: &[PointLoad]) -> Result<Vec<[f64; DOFS_PER_NODE]>> {
    let (plan, carved) = stages.carved(size)?;
    Ok(carved.displacements(plan, loads)?)
}

/// Pushes with `bass_n` and `treble_n` under the bridge's feet.
pub(super) fn push(design: Design, bass_n: f64, treble_n: f64) -> Result<Motion> {
    let mut stages = Stages::new(design);
    let kinds = regions_of_nodes(&mut stages)?;
    let [bass, treble] = feet(&mut stages, MeshSize::Standard)?;
    let loads: Vec<PointLoad> = on_foot(&bass, bass_n).chain(on_foot(&treble, treble_n)).collect();
    let moved = loaded(&mut stages, MeshSize::Standard, &loads)?;
    let up = |node: usize| 1e3 * moved[node][2];
    let foot_up = |foot: Foot| foot.into_iter().map(|(node, share)| share * up(node as usize)).sum();
    let nodes = kinds.into_iter().enumerate().map(|(node, kind)| (kind, up(node))).collect();
    Ok(Motion { bass_foot: foot_up(bass), treble_foot: foot_up(treble), nodes })
}

/// A newton up under the treble foot and one down under the bass foot: how a bow rocks the bridge, slowly.
pub(super) fn rock(design: Design) -> Result<Motion> {
    push(design, -1.0, 1.0)
}
