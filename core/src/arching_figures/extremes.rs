//! Where the arch is highest, steepest and tightest.

use super::FigureAt;
use crate::{plan::Point, surface::Surface};

/// First look: stations, and places from centreline to boundary. The finest feature is a corner's bridge, some 30 mm
/// long: thirteen steps.
const STATIONS: u32 = 160;
const PLACES: u32 = 24;
/// The polishing search halves its step until it is this share of the first.
const FINEST: f64 = 1e-4;

pub(super) struct Extremes {
    pub(super) highest: FigureAt,
    pub(super) steepest_deg: FigureAt,
    pub(super) hollow: Option<FigureAt>,
    pub(super) round: Option<FigureAt>,
}

/// Looks between centreline and arching boundary; on the treble side alone when both sides are alike.
pub(super) fn search(surface: &Surface, alike: bool) -> Extremes {
    let sides: &[f64] = if alike { &[1.0] } else { &[1.0, -1.0] };
    let find = |figure: &dyn Fn(Point) -> f64| {
        let best = sides.iter().map(|&side| greatest(surface, side, figure));
        best.fold(FigureAt { value: f64::NEG_INFINITY, at: [0.0; 2] }, |a, b| if b.value > a.value { b } else { a })
    };
    let curvature = |found: FigureAt| (found.value > 0.0).then(|| FigureAt { value: 1.0 / found.value, at: found.at });
    Extremes {
        highest: find(&|p| surface.height_mm(p)),
        steepest_deg: find(&|p| surface.at(p).steepness_rad().to_degrees()),
        hollow: curvature(find(&|p| surface.at(p).curvatures().greatest_per_mm)),
        round: curvature(find(&|p| -surface.at(p).curvatures().least_per_mm)),
    }
}

/// The greatest value of a figure over one side: the best of a first look, then a search in ever smaller steps.
fn greatest(surface: &Surface, side: f64, figure: &dyn Fn(Point) -> f64) -> FigureAt {
    let boundary = surface.arching().boundary();
    let [low, high] = boundary.ends_mm();
    // (station, place), both 0..1; the very ends and the boundary itself belong to the channel.
    let at = |[s, u]: [f64; 2]| {
        let y = low + (high - low) * s.clamp(0.001, 0.999);
        let half = boundary.half_width(y, side > 0.0).map_or(0.0, |half| half.x_mm);
        [side * half * u.clamp(0.0, 0.9999), y]
    };
    let (mut best, mut value) = ([0.5, 0.0], f64::NEG_INFINITY);
    for i in 0..=STATIONS {
        for j in 0..=PLACES {
            let place = [f64::from(i) / f64::from(STATIONS), f64::from(j) / f64::from(PLACES)];
            let here = figure(at(place));
            if here > value {
                (best, value) = (place, here);
            }
        }
    }
    let mut step = [1.0 / f64::from(STATIONS), 1.0 / f64::from(PLACES)];
    let finest = FINEST * step[0];
    while step[0] > finest {
        let around = [[step[0], 0.0], [-step[0], 0.0], [0.0, step[1]], [0.0, -step[1]]];
        let better = around.map(|d| [(best[0] + d[0]).clamp(0.0, 1.0), (best[1] + d[1]).clamp(0.0, 1.0)]);
        let before = value;
        for place in better {
            let here = figure(at(place));
            if here > value {
                (best, value) = (place, here);
            }
        }
        if value <= before {
            step = step.map(|s| 0.5 * s);
        }
    }
    FigureAt { value, at: at(best) }
}
