//! Sayings about how far the top gives way to a slow force.

use anyhow::{Context, Result};
use bombatura_core::design::{BarMeasures, PlanPlace, SoundHoleChoice, StickWood};
use bombatura_core::regions::RegionKind;
use bombatura_core::wood::Species;

use super::bench_top::{both_holes, demonstration, push, rock};
use super::{Figure, Study};

pub(super) fn studies() -> Result<Vec<Study>> {
    Ok(vec![holes()?, island()?, lower_eyes()?, upper_eyes()?, bar()?])
}

/// Micrometres by which the feet move against each other.
fn rocking_um(motion: &super::bench_top::Motion) -> f64 {
    1e3 * (motion.treble_foot - motion.bass_foot)
}

fn holes() -> Result<Study> {
    let with = rocking_um(&rock(demonstration(|_| ()))?);
    let without = rocking_um(&rock(demonstration(|design| {
        design.sound_holes.bass = SoundHoleChoice::None;
        design.sound_holes.treble = SoundHoleChoice::None;
    }))?);
    Ok(Study {
        id: "holes-free-the-island",
        saying: "cutting the holes lets the island move more",
        figures: vec![Figure::new("rocking with holes, µm/N", with), Figure::new("rocking without, µm/N", without)],
        agrees: with > without,
        remark: None,
    })
}

fn island() -> Result<Study> {
    let motion = rock(demonstration(|_| ()))?;
    let island = motion.rms(RegionKind::Island).context("the demonstration has an island")?;
    // The upper narrows are part of what makers call the island.
    let others =
        motion.kinds().into_iter().filter(|kind| !matches!(kind, RegionKind::Island | RegionKind::UpperNarrows));
    let mut others: Vec<(RegionKind, f64)> = others.filter_map(|kind| Some((kind, motion.rms(kind)?))).collect();
    others.sort_by(|a, b| b.1.total_cmp(&a.1));
    let named =
        |&(kind, rms): &(RegionKind, f64)| Figure::new(format!("{} when rocked, rms µm/N", kind.key()), 1e3 * rms);
    let most = others.first().map_or(0.0, |most| most.1);
    let mut figures = vec![Figure::new("island when rocked, rms µm/N", 1e3 * island)];
    figures.extend(others.iter().map(named));
    Ok(Study {
        id: "island-moves-most",
        saying: "at low frequency the island moves more than any other part of the top",
        figures,
        agrees: island > most,
        remark: Some(
            "what moves more are the island's own upper wings, which stand further from the axis it rocks about",
        ),
    })
}

fn lower_eyes() -> Result<Study> {
    let at = |edge_mm: f64| -> Result<[f64; 2]> {
        let design = || demonstration(|design| both_holes(design, |m| m.lower_eye_to_edge_mm = edge_mm));
        let pressed = push(design(), 0.5, 0.5)?;
        Ok([rocking_um(&rock(design())?), 500.0 * (pressed.bass_foot + pressed.treble_foot)])
    };
    let ([rocked_near, pressed_near], [rocked_far, pressed_far]) = (at(10.0)?, at(15.0)?);
    Ok(Study {
        id: "lower-eyes-inwards",
        saying: "moving the lower eyes away from the edge stiffens the island",
        figures: vec![
            Figure::new("rocking, eyes 10 mm from the edge, µm/N", rocked_near),
            Figure::new("rocking, eyes 15 mm from the edge, µm/N", rocked_far),
            Figure::new("both feet pressed, eyes 10 mm from the edge, µm/N", pressed_near),
            Figure::new("both feet pressed, eyes 15 mm from the edge, µm/N", pressed_far),
        ],
        agrees: rocked_far < rocked_near && pressed_far < pressed_near,
        remark: Some(
            "pressed on both feet it is a little stiffer; rocked it gives way 0.9 % more. Eyes alone, as round holes, change nothing \
             (0.03 %); what counts is the stem that goes with them. A straight slot from eye to eye, turned upright about its middle, stiffens \
             by 3.8 %; its middle's going inwards, which narrows the island at the bridge by 5 mm, softens by 3.5 %. With the f-hole's hooks \
             the second is the larger; upper eyes set 2 mm wider apart more than make up for it (-1.1 %). Fine mesh, all of it",
        ),
    })
}

fn upper_eyes() -> Result<Study> {
    let at = |half_mm: f64| -> Result<f64> {
        Ok(rocking_um(&rock(demonstration(|d| both_holes(d, |m| m.upper_eye_to_centreline_mm = half_mm)))?))
    };
    let (close, wide) = (at(18.0)?, at(23.0)?);
    Ok(Study {
        id: "upper-eyes-closer",
        saying: "upper eyes set closer together let the island move more",
        figures: vec![
            Figure::new("rocking, eyes 36 mm apart, µm/N", close),
            Figure::new("rocking, eyes 46 mm apart, µm/N", wide),
        ],
        agrees: close > wide,
        remark: None,
    })
}

fn bar() -> Result<Study> {
    let wood = StickWood { species: Species::SitkaSpruce, measured: None };
    let bar = BarMeasures {
        lower_end: PlanPlace { across_mm: -16.0, station_mm: 40.0 },
        upper_end: PlanPlace { across_mm: -12.0, station_mm: 310.0 },
        width_mm: 5.5,
        height_mm: 12.0,
        highest_station_mm: 160.0,
        end_height_mm: 3.0,
        wood,
    };
    let without = rock(demonstration(|_| ()))?;
    let with = rock(demonstration(|design| design.bar = Some(bar.clone())))?;
    let pressed = push(demonstration(|_| ()), 1.0, 0.0)?;
    let pressed_with = push(demonstration(|design| design.bar = Some(bar)), 1.0, 0.0)?;
    let lowered = with.bass_foot.abs() / without.bass_foot.abs();
    let other = with.treble_foot.abs() / without.treble_foot.abs();
    Ok(Study {
        id: "bar",
        saying: "the bar adds stiffness along the grain and lowers the island's motion on its side",
        figures: vec![
            Figure::new("force on the bass foot alone, µm/N without", 1e3 * pressed.bass_foot),
            Figure::new("the same with a bar, µm/N", 1e3 * pressed_with.bass_foot),
            Figure::new("bass foot when rocked, with over without", lowered),
            Figure::new("treble foot when rocked, with over without", other),
        ],
        agrees: pressed_with.bass_foot < pressed.bass_foot && lowered < other,
        remark: None,
    })
}
