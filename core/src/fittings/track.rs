//! A straight line in plan, cut by the triangles it crosses.

use super::FittingError;
use super::place::{ON_EDGE, barycentric_in_plan};
use crate::ascending::ascending;
use crate::shell::ShellGeometry;

/// Pieces of the line shorter than this share of it are left out, gaps and overlaps alike: rounding where it passes a node.
const NOTHING: f64 = 1e-9;

/// A part of the line in one triangle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Segment {
    pub(super) triangle: usize,
    /// Where it begins and ends, as shares of the line.
    pub(super) span: [f64; 2],
    /// (end, corner): barycentric coordinates where it begins and ends.
    pub(super) barycentric: [[f64; 3]; 2],
    /// What part of it is this triangle's: a half where it runs along an edge between two.
    pub(super) share: f64,
}

/// Cuts the line between `ends_m`; `what` lies along it.
///
/// The segments cover the line once. Cost: one visit to every triangle.
pub(super) fn track(
    geometry: &ShellGeometry,
    ends_m: [[f64; 2]; 2],
    what: &'static str,
) -> Result<Vec<Segment>, FittingError> {
    let crossed: Vec<Crossing> =
        (0..geometry.triangles().len()).filter_map(|triangle| Crossing::new(geometry, triangle, ends_m)).collect();
    let cuts: Vec<f64> = crossed.iter().flat_map(|crossing| crossing.span).chain([0.0, 1.0]).collect();
    let cuts: Vec<f64> = ascending(&cuts).into_iter().map(|place| cuts[place]).collect();
    let mut segments = Vec::new();
    for pair in cuts.windows(2) {
        let span = [pair[0], pair[1]];
        if span[1] - span[0] < NOTHING {
            continue;
        }
        let middle = 0.5 * (span[0] + span[1]);
        let owners: Vec<_> = crossed.iter().filter(|c| c.span[0] <= middle && middle <= c.span[1]).collect();
        if owners.is_empty() {
            let at = [0, 1].map(|k| ends_m[0][k] + middle * (ends_m[1][k] - ends_m[0][k]));
            return Err(FittingError::off_the_wood(what, at));
        }
        let share = 1.0 / owners.len() as f64;
        segments.extend(owners.iter().map(|owner| Segment {
            triangle: owner.triangle,
            span,
            barycentric: span.map(|s| owner.at(s)),
            share,
        }));
    }
    Ok(segments)
}

/// A triangle that the line passes through or along.
struct Crossing {
    triangle: usize,
    span: [f64; 2],
    /// (end of the whole line, corner).
    barycentric: [[f64; 3]; 2],
}

impl Crossing {
    fn new(geometry: &ShellGeometry, triangle: usize, ends_m: [[f64; 2]; 2]) -> Option<Self> {
        let start = barycentric_in_plan(geometry, triangle, ends_m[0])?;
        let end = barycentric_in_plan(geometry, triangle, ends_m[1])?;
        let mut span = [0.0_f64, 1.0];
        for (from, to) in start.into_iter().zip(end) {
            let slope = to - from;
            if slope.abs() < ON_EDGE {
                if from < -ON_EDGE {
                    return None;
                }
            } else if slope > 0.0 {
                span[0] = span[0].max(-from / slope);
            } else {
                span[1] = span[1].min(-from / slope);
            }
        }
        (span[1] - span[0] > NOTHING).then_some(Self { triangle, span, barycentric: [start, end] })
    }

    fn at(&self, s: f64) -> [f64; 3] {
        [0, 1, 2].map(|k| self.barycentric[0][k] + s * (self.barycentric[1][k] - self.barycentric[0][k]))
    }
}
