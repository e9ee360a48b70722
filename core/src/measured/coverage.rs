//! What a scan holds: how much of the top is missing, and whether there is more than its outside.

use super::{MeasuredError, Reading};
use crate::{outline::Outline, plan::Point};

/// Cells for the check of gaps, and how much of a top may lack points: sound holes are some 2 % of it.
const GAP_MM: f64 = 10.0;
const MOST_GAPS: f64 = 0.15;
/// Cells in which heights are compared. One surface spans 0.8 mm in such a cell at a slope of 15 degrees; outside and inside are
/// as far apart as the wood is thick, 2 mm and more.
const FACE_MM: f64 = 3.0;
const MOST_SPAN_MM: f64 = 1.5;
/// Heights are compared this far inside the edge, where channel, edge and ribs don't count.
const INSIDE_EDGE_MM: f64 = 15.0;

/// What of a top has no reading near.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gaps {
    /// Area without a point within a centimetre, mm2; sound holes count where they are wide enough.
    pub area_mm2: f64,
    /// Its share of the top.
    pub share: f64,
}

/// How much of a top readings in its frame leave out.
///
/// # Errors
/// [`MeasuredError::Gaps`] when that is too much to be filled by a smooth surface.
pub fn gaps(readings: &[Reading], outline: &Outline) -> Result<Gaps, MeasuredError> {
    let cells = Cells::new(outline, GAP_MM);
    let mut covered = vec![false; cells.len()];
    for &[x, y, _] in readings {
        covered[cells.of([x, y])] = true;
    }
    let inside = |cell: &usize| outline.signed_distance_mm(cells.middle(*cell)) > 0.5 * GAP_MM;
    let within: Vec<usize> = (0..cells.len()).filter(inside).collect();
    let missing = within.iter().filter(|&&cell| !covered[cell]).count() as f64;
    let (share, area_mm2) = (missing / within.len().max(1) as f64, missing * GAP_MM * GAP_MM);
    if share > MOST_GAPS {
        return Err(MeasuredError::Gaps { share, area_mm2, most: MOST_GAPS, reach_mm: GAP_MM });
    }
    Ok(Gaps { area_mm2, share })
}

/// Refuses a scan with two faces, one above the other: a top's inside, or a closed body.
///
/// # Errors
/// [`MeasuredError::TwoFaces`] with how far apart they are.
pub(super) fn check_one_face(readings: &[Reading], outline: &Outline) -> Result<(), MeasuredError> {
    let cells = Cells::new(outline, FACE_MM);
    let mut spans = vec![[f64::INFINITY, f64::NEG_INFINITY]; cells.len()];
    for &[x, y, z] in readings {
        let span = &mut spans[cells.of([x, y])];
        *span = [span[0].min(z), span[1].max(z)];
    }
    let held = spans.iter().enumerate().filter(|(_, span)| span[1] > span[0]);
    let inside = held.filter(|(cell, _)| outline.signed_distance_mm(cells.middle(*cell)) > INSIDE_EDGE_MM);
    let mut apart: Vec<f64> = inside.map(|(_, span)| span[1] - span[0]).collect();
    let middle = apart.len() / 2;
    if apart.is_empty() {
        return Ok(());
    }
    let apart_mm = *apart.select_nth_unstable_by(middle, f64::total_cmp).1;
    if apart_mm > MOST_SPAN_MM { Err(MeasuredError::TwoFaces { apart_mm, most_mm: MOST_SPAN_MM }) } else { Ok(()) }
}

/// Share of a scan's triangles, by area in plan, that are turned inwards: (triangle, corner) one after the other in the
/// frame. Nothing depends on it, since the shape tells which side is outside; a maker may want to know.
#[must_use]
pub fn turned_inwards(corners: &[Reading]) -> f64 {
    let (mut inwards, mut all) = (0.0, 0.0);
    for triangle in corners.chunks_exact(3) {
        let [a, b, c] = [triangle[0], triangle[1], triangle[2]];
        let area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
        all += area.abs();
        inwards += (-area).max(0.0);
    }
    if all > 0.0 { inwards / all } else { 0.0 }
}

/// A lattice of square cells over a top; what lies beyond counts for its border.
struct Cells {
    low: Point,
    count: [usize; 2],
    size_mm: f64,
}

impl Cells {
    fn new(outline: &Outline, size_mm: f64) -> Cells {
        let (low, high) = outline.boundary().bounds_mm();
        let low = low.map(|value| value - size_mm);
        let count = [0, 1].map(|k| ((high[k] - low[k]) / size_mm).ceil() as usize + 2);
        Cells { low, count, size_mm }
    }

    fn len(&self) -> usize {
        self.count[0] * self.count[1]
    }

    fn of(&self, p: Point) -> usize {
        let at = [0, 1].map(|k| (((p[k] - self.low[k]) / self.size_mm).max(0.0) as usize).min(self.count[k] - 1));
        at[1] * self.count[0] + at[0]
    }

    fn middle(&self, cell: usize) -> Point {
        let at = [cell % self.count[0], cell / self.count[0]];
        [0, 1].map(|k| self.low[k] + (at[k] as f64 + 0.5) * self.size_mm)
    }
}
