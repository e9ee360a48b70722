//! The faces that the cuts leave of the wood.

use super::{cuts::Cut, kind::RegionKind};
use crate::ascending::ascending;
use crate::plan::{Point, polygon_contains, vector::cross};

/// A corner of a face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Corner {
    pub(super) point: Point,
    /// The boundary it lies on.
    pub(super) boundary: usize,
    /// The side from here to the next corner is a cut, of this number.
    pub(super) cut: Option<usize>,
}

/// A connected piece of wood.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Face {
    pub(super) kind: RegionKind,
    /// Closed rings with the wood on their left; the first encloses the face.
    pub(super) rings: Vec<Vec<Corner>>,
}

impl Face {
    pub(super) fn polygons(&self) -> Vec<Vec<Point>> {
        self.rings.iter().map(|ring| ring.iter().map(|corner| corner.point).collect()).collect()
    }

    pub(super) fn area_mm2(&self) -> f64 {
        self.rings.iter().map(|ring| area_mm2(ring)).sum()
    }

    pub(super) fn contains(&self, p: Point) -> bool {
        self.polygons().iter().filter(|polygon| polygon_contains(polygon, p)).count() % 2 == 1
    }
}

/// Walks round every face, the wood on the left: along a boundary up to a cut, over the cut, along the boundary that it
/// ends on, and so on back to the start.
pub(super) fn all(boundaries: &[Vec<Point>], cuts: &[Cut]) -> Vec<Face> {
    let stops: Vec<Vec<Stop>> = boundaries.iter().enumerate().map(|(index, line)| stops(index, line, cuts)).collect();
    let mut walked: Vec<Vec<bool>> = stops.iter().map(|stops| vec![false; stops.len()]).collect();
    let (mut faces, mut openings): (Vec<Face>, Vec<Vec<Corner>>) = (Vec::new(), Vec::new());
    for boundary in 0..stops.len() {
        for first in 0..stops[boundary].len() {
            if walked[boundary][first] {
                continue;
            }
            let (ring, kind) = walk(&stops, cuts, &mut walked, (boundary, first));
            match kind {
                _ if area_mm2(&ring) < 0.0 => openings.push(ring),
                kind => faces.push(Face { kind: kind.unwrap_or(RegionKind::MiddleBout), rings: vec![ring] }),
            }
        }
    }
    for opening in openings {
        if let Some(face) = faces.iter_mut().find(|face| face.contains(opening[0].point)) {
            face.rings.push(opening);
        }
    }
    faces
}

/// A corner of a boundary, or the end of a cut on it.
struct Stop {
    point: Point,
    /// The cut that ends here, and which of its ends this is.
    cut: Option<(usize, usize)>,
}

/// The boundary's corners with the ends of cuts between them, in order.
fn stops(boundary: usize, line: &[Point], cuts: &[Cut]) -> Vec<Stop> {
    let mut ends: Vec<(usize, usize, usize)> = Vec::new();
    let mut along: Vec<f64> = Vec::new();
    for (number, cut) in cuts.iter().enumerate() {
        for (which, end) in cut.ends.iter().enumerate().filter(|(_, end)| end.boundary == boundary) {
            ends.push((end.crossing.side, number, which));
            along.push(end.crossing.side as f64 + end.crossing.on_side);
        }
    }
    let mut ends = ascending(&along).into_iter().map(|place| ends[place]).peekable();
    let mut stops = Vec::with_capacity(line.len());
    for (side, &point) in line.iter().enumerate() {
        stops.push(Stop { point, cut: None });
        while let Some(&(_, number, which)) = ends.peek().filter(|end| end.0 == side) {
            stops.push(Stop { point: cuts[number].points()[which], cut: Some((number, which)) });
            ends.next();
        }
    }
    stops
}

/// One ring from a stop, and what the first cut along it says the wood beside it is.
fn walk(
    stops: &[Vec<Stop>],
    cuts: &[Cut],
    walked: &mut [Vec<bool>],
    first: (usize, usize),
) -> (Vec<Corner>, Option<RegionKind>) {
    let (mut ring, mut kind) = (Vec::new(), None);
    let (mut boundary, mut at) = first;
    // A boundary's side is walked once in all, so that the walk ends.
    while !walked[boundary][at] {
        walked[boundary][at] = true;
        ring.push(Corner { point: stops[boundary][at].point, boundary, cut: None });
        at = (at + 1) % stops[boundary].len();
        let Stop { point, cut: Some((number, which)) } = stops[boundary][at] else { continue };
        ring.push(Corner { point, boundary, cut: Some(number) });
        kind = kind.or(Some(cuts[number].beside[which]));
        let other = 1 - which;
        boundary = cuts[number].ends[other].boundary;
        let lands = |stop: &Stop| stop.cut == Some((number, other));
        at = stops[boundary].iter().position(lands).unwrap_or(at);
    }
    (ring, kind)
}

fn area_mm2(ring: &[Corner]) -> f64 {
    (0..ring.len()).map(|i| 0.5 * cross(ring[i].point, ring[(i + 1) % ring.len()].point)).sum()
}
