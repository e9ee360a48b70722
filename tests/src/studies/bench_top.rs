//! A top on the bench: its rim held by hinges, a force where the bridge's feet stand.

use anyhow::{Context, Result};
use bombatura_core::{
    design::{Design, EyesAndStem, Rim, SoundHoleChoice},
    mesh::{MeshSize, PlanMesh},
    regions::{RegionKind, Regions},
    shell::DOFS_PER_NODE,
    statics::{PointLoad, displacements},
    top::Stages,
};

/// Half the distance between the feet, mm, and where the treble one stands (common practice, no source).
const HALF_BRIDGE_MM: f64 = 16.0;

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

/// The nodes under the bridge's feet: bass, treble.
pub(super) fn feet(stages: &mut Stages, size: MeshSize) -> Result<[usize; 2]> {
    let station = stages.design().outline.length_mm - stages.design().sound_holes.stop_mm;
    let mesh = &stages.carved(size)?.0.mesh;
    Ok([nearest(mesh, [-HALF_BRIDGE_MM, station])?, nearest(mesh, [HALF_BRIDGE_MM, station])?])
}

/// (node, dof) displacements under `loads`, m and rad.
pub(super) fn loaded(stages: &mut Stages, size: MeshSize, loads: &[PointLoad]) -> Result<Vec<[f64; DOFS_PER_NODE]>> {
    let (plan, carved) = stages.carved(size)?;
    Ok(displacements(&carved.geometry, &plan.supports, &plan.equations, &carved.model, &plan.symbolic, loads)?)
}

/// Pushes with `bass_n` and `treble_n` under the bridge's feet.
pub(super) fn push(design: Design, bass_n: f64, treble_n: f64) -> Result<Motion> {
    let mut stages = Stages::new(design);
    let kinds = regions_of_nodes(&mut stages)?;
    let [bass, treble] = feet(&mut stages, MeshSize::Standard)?;
    let load = |node, force: f64| PointLoad { node, force_n: [0.0, 0.0, force] };
    let moved = loaded(&mut stages, MeshSize::Standard, &[load(bass, bass_n), load(treble, treble_n)])?;
    let up = |node: usize| 1e3 * moved[node][2];
    let nodes = kinds.into_iter().enumerate().map(|(node, kind)| (kind, up(node))).collect();
    Ok(Motion { bass_foot: up(bass), treble_foot: up(treble), nodes })
}

/// A newton up under the treble foot and one down under the bass foot: how a bow rocks the bridge, slowly.
pub(super) fn rock(design: Design) -> Result<Motion> {
    push(design, -1.0, 1.0)
}
