//! Where a region is narrowest.

use super::{cuts::Cut, faces::Face, kind::RegionKind};
use crate::plan::{
    Point,
    vector::{along, distance, dot, sub},
};

/// A width and where it is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Narrowest {
    /// Distance between the ends, mm.
    pub width_mm: f64,
    /// Where it is taken, mm.
    pub ends: [Point; 2],
}

impl Narrowest {
    pub(super) fn between(ends: [Point; 2]) -> Narrowest {
        Narrowest { width_mm: distance(ends[0], ends[1]), ends }
    }
}

/// The narrowest place of a face, if its kind of region has one.
pub(super) fn of_face(face: &Face, cuts: &[Cut]) -> Option<Narrowest> {
    match face.kind {
        RegionKind::UpperWing(_) | RegionKind::LowerWing(_) => {
            let root = face.rings.iter().flatten().find_map(|corner| corner.cut)?;
            Some(Narrowest::between(cuts[root].points()))
        }
        RegionKind::Island | RegionKind::UpperNarrows | RegionKind::LowerNarrows(_) | RegionKind::Flank(_) => {
            between_boundaries(face)
        }
        RegionKind::UpperBout | RegionKind::MiddleBout | RegionKind::LowerBout => None,
    }
}

/// The least distance between two boundaries that the face lies between, to the tolerance of its polygon.
fn between_boundaries(face: &Face) -> Option<Narrowest> {
    let mut sides: Vec<(usize, [Point; 2])> = Vec::new();
    for ring in &face.rings {
        for (i, corner) in ring.iter().enumerate().filter(|(_, corner)| corner.cut.is_none()) {
            sides.push((corner.boundary, [corner.point, ring[(i + 1) % ring.len()].point]));
        }
    }
    let first = sides.first()?.0;
    let (near, far): (Vec<_>, Vec<_>) = sides.into_iter().partition(|side| side.0 == first);
    let mut best: Option<Narrowest> = None;
    for (from, to) in [(&near, &far), (&far, &near)] {
        for p in from.iter().flat_map(|(_, ends)| ends) {
            for (_, side) in to {
                let candidate = Narrowest::between([*p, nearest_on_side(*side, *p)]);
                if best.is_none_or(|best| candidate.width_mm < best.width_mm) {
                    best = Some(candidate);
                }
            }
        }
    }
    best
}

/// The point of a closed polyline nearest to p.
pub(super) fn nearest_on(polyline: &[Point], p: Point) -> Point {
    (0..polyline.len())
        .map(|i| nearest_on_side([polyline[i], polyline[(i + 1) % polyline.len()]], p))
        .min_by(|a, b| distance(*a, p).total_cmp(&distance(*b, p)))
        .unwrap_or(p)
}

/// Distance of p from the nearest side of some polygons, mm.
pub(super) fn to_polygons(p: Point, polygons: &[Vec<Point>]) -> f64 {
    polygons.iter().map(|polygon| distance(nearest_on(polygon, p), p)).fold(f64::INFINITY, f64::min)
}

fn nearest_on_side([a, b]: [Point; 2], p: Point) -> Point {
    let side = sub(b, a);
    let square = dot(side, side);
    let t = if square > 0.0 { (dot(sub(p, a), side) / square).clamp(0.0, 1.0) } else { 0.0 };
    along(a, side, t)
}
