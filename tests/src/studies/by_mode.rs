//! Sayings about how the wings move by themselves.

use std::collections::BTreeSet;

use anyhow::Result;
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::regions::{RegionKind, Side};
use bombatura_core::top::Stages;

use super::bench_top::{demonstration, regions_of_nodes};
use super::{Figure, Study};

const MODES: usize = 60;
/// A wing moves on its own when its root mean square is this many times that of the rest of the top.
const ON_ITS_OWN: f64 = 3.0;
const DOFS: usize = 6;

pub(super) fn studies() -> Result<Vec<Study>> {
    let mut stages = Stages::new(demonstration(|_| ()));
    let kinds = regions_of_nodes(&mut stages)?;
    let modes = stages.modes(MeshSize::Standard, &ModesRequest::lowest(MODES))?;
    let wings = [
        RegionKind::UpperWing(Side::Bass),
        RegionKind::UpperWing(Side::Treble),
        RegionKind::LowerWing(Side::Bass),
        RegionKind::LowerWing(Side::Treble),
    ];
    let (mut first_hz, mut patterns, mut opposed) = (f64::NAN, BTreeSet::new(), 0);
    for mode in 0..modes.count() {
        let shape = modes.shape(mode);
        let up = |node: usize| shape[node * DOFS + 2];
        let over = |belongs: &dyn Fn(RegionKind) -> bool| {
            let own: Vec<f64> = (0..kinds.len()).filter(|&node| belongs(kinds[node])).map(up).collect();
            let count = own.len() as f64;
            (own.iter().sum::<f64>() / count, (own.iter().map(|w| w * w).sum::<f64>() / count).sqrt())
        };
        let (_, rest) = over(&|kind| !wings.contains(&kind));
        let of_wings = wings.map(|wing| over(&|kind| kind == wing));
        // Which wings move on their own, and which way: -1, 0, 1.
        let pattern = of_wings.map(|(mean, rms)| if rms > ON_ITS_OWN * rest { mean.signum() as i8 } else { 0 });
        if pattern == [0; 4] {
            continue;
        }
        if first_hz.is_nan() {
            first_hz = modes.frequencies_hz[mode];
        }
        opposed += usize::from(pattern.contains(&1) && pattern.contains(&-1));
        // A mode turned over is the same mode.
        let turned_over = pattern.map(|way| -way);
        patterns.insert(pattern.max(turned_over));
    }
    let highest_hz = modes.frequencies_hz.get(modes.count().saturating_sub(1)).copied().unwrap_or(f64::NAN);
    let found = patterns.len();
    let mut figures = vec![
        Figure::new("highest mode looked at, Hz", highest_hz),
        Figure::new("combinations of wings that move 3 times as far as the rest", found as f64),
        Figure::new("modes in which some of them are opposed", opposed as f64),
    ];
    if found > 0 {
        figures.push(Figure::new("first such mode, Hz", first_hz));
    }
    Ok(vec![Study {
        id: "wings-on-their-own",
        saying: "wings move on their own at high frequency, in different combinations, some opposed",
        figures,
        agrees: found > 1 && opposed > 0,
        remark: None,
    }])
}
