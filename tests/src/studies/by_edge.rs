//! Sayings about how holes and wings are cut.

use anyhow::{Context, Result};
use bombatura_core::design::{Design, EndCut, SoundHoleChoice};
use bombatura_core::inside::RegionWood;
use bombatura_core::mesh::MeshSize;
use bombatura_core::regions::{RegionKind, Regions, Side};
use bombatura_core::sound_holes::Pattern;
use bombatura_core::statics::{PointLoad, edge_stresses, greatest_stress};
use bombatura_core::top::Stages;

use super::bench_top::{both_holes, demonstration, feet, loaded, nearest, on_foot};
use super::{Figure, Study};

/// About what strings press a bridge down with, N (common practice, no source): stresses are in proportion.
const PRESSED_N: f64 = 90.0;

pub(super) fn studies() -> Result<Vec<Study>> {
    Ok(vec![rounded_ends()?, hollowed_wings()?])
}

/// The greatest stress on the holes' edges while the bridge is pressed down: its mean over 2 mm or one side of an element
/// up to the next corner, and where that begins. Over no length at all a sharp corner's stress has no limit.
fn pressed_stress(design: Design, size: MeshSize) -> Result<(f64, [f64; 3])> {
    const OVER_MM: f64 = 2.0;
    let wood = design.wood.wood()?;
    let mut stages = Stages::new(design);
    let feet = feet(&mut stages, size)?;
    let loads: Vec<PointLoad> = feet.iter().flat_map(|foot| on_foot(foot, -0.5 * PRESSED_N)).collect();
    let moved = loaded(&mut stages, size, &loads)?;
    let (plan, carved) = stages.carved(size)?;
    let of = |line: &Vec<u32>| greatest_stress(&edge_stresses(&carved.geometry, &wood, line, true, &moved), OVER_MM);
    let greatest = plan.mesh.hole_loops.iter().filter_map(of).max_by(|a, b| a.0.total_cmp(&b.0));
    greatest.context("a hole has an edge")
}

fn rounded_ends() -> Result<Study> {
    let cut = |ends: EndCut| -> Result<Design> {
        let mut design = demonstration(|_| ());
        let shape = Stages::new(design.clone()).shape()?.clone();
        let mut slot = shape.holes[1].of_equal_area(Pattern::Slot).context("a slot as large as an f-hole")?;
        if let SoundHoleChoice::Slot(measures) = &mut slot {
            measures.ends = ends;
        }
        (design.sound_holes.bass, design.sound_holes.treble) = (slot.clone(), slot);
        Ok(design)
    };
    let mut figures = Vec::new();
    let mut on_fine = Vec::new();
    for (name, ends) in [("rounded", EndCut::Round), ("sharp", EndCut::Sharp)] {
        for (mesh, size) in [("standard", MeshSize::Standard), ("fine", MeshSize::Fine)] {
            let stress = pressed_stress(cut(ends)?, size)?.0;
            figures.push(Figure::new(format!("slots, ends {name}, {mesh} mesh, greatest over 2 mm, MPa"), stress));
            if size == MeshSize::Fine {
                on_fine.push(stress);
            }
        }
    }
    let (f_holes, at_mm) = pressed_stress(demonstration(|_| ()), MeshSize::Fine)?;
    figures.push(Figure::new("f-holes, fine mesh, greatest over 2 mm, MPa", f_holes));
    figures.push(Figure::new("where, from the centreline, mm", at_mm[0].abs()));
    figures.push(Figure::new("and from the bottom edge, mm", at_mm[1]));
    Ok(Study {
        id: "rounded-ends",
        saying: "rounded ends carry the force with a lower peak than sharp ones",
        figures,
        agrees: on_fine[0] < on_fine[1],
        remark: None,
    })
}

fn hollowed_wings() -> Result<Study> {
    let kind = RegionKind::LowerWing(Side::Treble);
    // How far a newton at its point bends the wing up from its root, and what it weighs.
    let wing = |hollow_mm: f64| -> Result<[f64; 2]> {
        let mut stages = Stages::new(demonstration(|design| {
            both_holes(design, |m| {
                (m.lower_wing_hollow_mm, m.lower_wing_hollow_reach) = (Some(hollow_mm), Some(1.0));
            });
        }));
        let shape = stages.shape()?.clone();
        let regions = Regions::new(&shape.outline, &shape.holes);
        let region = regions.get(kind).context("the demonstration has lower wings")?;
        let root = region.narrowest.context("a wing has a root")?.ends;
        let [_, eye] = shape.holes[1].eyes().context("the demonstration has f-holes")?;
        let mesh = &stages.carved(MeshSize::Fine)?.0.mesh;
        let [tip, a, b] = [eye.throat[0], root[0], root[1]].map(|p| nearest(mesh, p));
        let (tip, a, b) = (tip?, a?, b?);
        let moved = loaded(&mut stages, MeshSize::Fine, &[PointLoad { node: tip, force_n: [0.0, 0.0, 1.0] }])?;
        let density = stages.design().wood.wood()?.density_kg_m3;
        let wood = RegionWood::of(region, &shape.surface, &shape.graduation, density);
        Ok([1e6 * (moved[tip][2] - 0.5 * (moved[a][2] + moved[b][2])), wood.mass_g])
    };
    let ([flat_um, flat_g], [hollow_um, hollow_g]) = (wing(0.0)?, wing(1.0)?);
    Ok(Study {
        id: "hollowed-wings",
        saying: "hollowed wings are stiffer lengthwise",
        figures: vec![
            Figure::new("a newton at the lower wing's point bends it from its root, µm", flat_um),
            Figure::new("the same with the fluting 1 mm deep to the point, µm", hollow_um),
            Figure::new("the wing's mass, g", flat_g),
            Figure::new("the same with the fluting, g", hollow_g),
        ],
        agrees: hollow_um < flat_um,
        remark: Some(
            "lighter, as is said too, they are not: thickness is taken from the fluted outside, and the fluted wood is longer across",
        ),
    })
}
