//! The tops that are compared: variants of the demonstration design.

use anyhow::{Result, ensure};
use bombatura_core::design::{Design, Rim, SoundHoleChoice};
use bombatura_core::fittings::Fittings;
use bombatura_core::mesh::{MeshSize, MidSurface, Sample};
use bombatura_core::modes::{Modes, ModesRequest};
use bombatura_core::shell::ShellGeometry;
use bombatura_core::top::{Carved, Held, Plan, Shape};
use bombatura_core::wood::Wood;

/// Modes solved beyond those compared, so that a swap of order at the end is seen.
const BEYOND: usize = 2;

/// How the wood's middle lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Lie {
    /// As carved.
    Arched,
    /// In one plane, with the design's thickness.
    Level,
}

/// A top to compare.
pub(super) struct Case {
    /// Part of the rows' names.
    pub(super) name: &'static str,
    design: Design,
    pub(super) shape: Shape,
    pub(super) wood: Wood,
    pub(super) held: Held,
    lie: Lie,
}

/// The modes of the shell of a case.
pub(super) struct ShellSolution {
    /// (node, xy), mm.
    pub(super) points_mm: Vec<[f64; 2]>,
    pub(super) geometry: ShellGeometry,
    pub(super) modes: Modes,
}

impl ShellSolution {
    /// As modes of two meshes are matched.
    pub(super) fn as_pair(&self) -> (&ShellGeometry, &Modes) {
        (&self.geometry, &self.modes)
    }
}

impl Case {
    /// Every top that is compared.
    pub(super) fn all() -> Result<Vec<Case>> {
        let demo = Design::demo();
        let mut hinged = demo.clone();
        hinged.rim = Rim::Hinged;
        let mut whole = demo.clone();
        whole.sound_holes.bass = SoundHoleChoice::None;
        whole.sound_holes.treble = SoundHoleChoice::None;
        Ok(vec![
            Case::new("arched-holes-free", &demo, Lie::Arched)?,
            Case::new("arched-holes-hinged", &hinged, Lie::Arched)?,
            Case::new("arched-whole-free", &whole, Lie::Arched)?,
            Case::new("flat-holes-free", &demo, Lie::Level)?,
        ])
    }

    fn new(name: &'static str, design: &Design, lie: Lie) -> Result<Case> {
        let (shape, wood, held) = (Shape::new(design)?, design.wood.wood()?, Held::by(&design.rim));
        Ok(Case { name, design: design.clone(), shape, wood, held, lie })
    }

    /// The plan mesh under the wedges. On the fine one, at five times the time, free tops are another 0.0 to 0.1 % lower; on a hinged rim
    /// modes that bend the few millimetres between holes and rim are 0.2 to 0.4 % lower, which the checks would feel.
    pub(super) fn wedges(&self) -> MeshSize {
        if self.held == Held::Nothing { MeshSize::Standard } else { MeshSize::Fine }
    }

    /// The same top before a handle or two moved: its arch lower, its middle thicker.
    pub(super) fn earlier(&self) -> Result<Case> {
        let mut design = self.design.clone();
        design.arching.apex_height_mm -= 1.0;
        design.graduation.centre_mm += 0.2;
        Case::new(self.name, &design, self.lie)
    }

    /// The wood over the point `p` in plan: of its outer surface when arched, of its middle when level.
    pub(super) fn sample(&self, p: [f64; 2]) -> Sample {
        let carved = Sample::carved(&self.shape.surface, &self.shape.graduation, p);
        match self.lie {
            Lie::Arched => carved,
            Lie::Level => Sample { middle_mm: [p[0], p[1], 0.0], normal: [0.0, 0.0, 1.0], ..carved },
        }
    }

    /// The shell on the preview, the standard and the fine mesh.
    pub(super) fn shells(&self, wanted: usize) -> Result<[ShellSolution; 3]> {
        let shell = |size| self.shell(size, wanted);
        Ok([shell(MeshSize::Preview)?, shell(MeshSize::Standard)?, shell(MeshSize::Fine)?])
    }

    /// The shell's lowest modes: `wanted` and a few beyond.
    fn shell(&self, size: MeshSize, wanted: usize) -> Result<ShellSolution> {
        let plan = Plan::new(&self.shape, self.held, size)?;
        let request = ModesRequest::lowest(wanted + BEYOND);
        let fittings = Fittings::default();
        let carved = match self.lie {
            Lie::Arched => Carved::new(&plan, &self.shape, &self.wood, &fittings)?,
            Lie::Level => {
                let middle = MidSurface::sampled(&plan.mesh, |p| self.sample(p));
                Carved::on(&plan, middle, &self.wood, &fittings)?
            }
        };
        let modes = carved.modes(&plan, &request)?;
        ensure!(modes.count() >= wanted, "{}: {} modes instead of {wanted}", self.name, modes.count());
        Ok(ShellSolution { points_mm: plan.mesh.points_mm, geometry: carved.geometry, modes })
    }
}
