//! Where on its curve each boundary node stands, so that it finds its place again when the curve moves.

use std::mem::discriminant;

use super::PlanMesh;
use crate::{
    outline::Outline,
    plan::{
        Loop, Piece, Point,
        vector::{cross, sub, unit},
    },
    sound_holes::SoundHole,
};

/// A loop's nodes on its pieces.
#[derive(Clone, Debug)]
struct Anchored {
    /// The pieces as they were, of which only number and kinds count.
    pieces: Vec<Piece>,
    nodes: Vec<u32>,
    /// (node): number of the piece plus the parameter on it.
    places: Vec<f64>,
}

/// Boundary nodes by piece and parameter. The parameter, not the length of arc: a piece that is shifted, turned or stretched takes its
/// nodes exactly along, and nothing has to be sought on a cubic.
#[derive(Clone, Debug)]
pub(super) struct Anchors {
    loops: Vec<Anchored>,
}

/// Outline first, then the holes, as a mesh has its loops.
pub(super) fn curves<'a>(outline: &'a Outline, holes: &'a [SoundHole]) -> Vec<&'a Loop> {
    std::iter::once(outline.boundary()).chain(holes.iter().map(SoundHole::boundary)).collect()
}

impl Anchors {
    /// Of a mesh on the boundaries that it was made for.
    pub(super) fn of(mesh: &PlanMesh, curves: &[&Loop]) -> Anchors {
        let anchored = |(nodes, curve): (&Vec<u32>, &&Loop)| {
            let place = |&node: &u32| {
                let nearest = curve.nearest(mesh.points_mm[node as usize]);
                nearest.piece as f64 + nearest.t
            };
            Anchored {
                pieces: curve.pieces().to_vec(),
                nodes: nodes.clone(),
                places: nodes.iter().map(place).collect(),
            }
        };
        Anchors { loops: mesh.loops().zip(curves).map(anchored).collect() }
    }

    /// True for curves made of the same kinds of pieces in the same order.
    pub(super) fn hold_on(&self, curves: &[&Loop]) -> bool {
        let alike = |(a, b): (&Piece, &Piece)| discriminant(a) == discriminant(b);
        self.loops.len() == curves.len()
            && self.loops.iter().zip(curves).all(|(own, curve)| {
                own.pieces.len() == curve.pieces().len() && own.pieces.iter().zip(curve.pieces()).all(alike)
            })
    }

    /// Every boundary node with its place on such curves.
    pub(super) fn laid<'a>(&'a self, curves: &'a [&Loop]) -> impl Iterator<Item = (u32, Point)> {
        self.loops
            .iter()
            .zip(curves)
            .flat_map(|(own, curve)| own.nodes.iter().zip(&own.places).map(|(&node, &place)| (node, at(curve, place))))
    }

    /// The farthest that a chord between neighbours strays from such curves, mm, looked at in three places each.
    pub(super) fn stray_mm(&self, curves: &[&Loop]) -> f64 {
        let mut worst = 0.0;
        for (own, curve) in self.loops.iter().zip(curves) {
            let count = curve.pieces().len() as f64;
            for (i, &from) in own.places.iter().enumerate() {
                let next = own.places[(i + 1) % own.places.len()];
                let to = if next > from { next } else { next + count };
                let start = at(curve, from);
                let along = unit(sub(at(curve, to), start));
                for quarter in 1..4 {
                    let between = at(curve, from + 0.25 * f64::from(quarter) * (to - from));
                    let off = cross(along, sub(between, start)).abs();
                    if off > worst {
                        worst = off;
                    }
                }
            }
        }
        worst
    }
}

/// The point of a loop at a piece's number plus the parameter on it. Kept from being copied to each of its callers: every
/// kind of piece is in it.
#[inline(never)]
fn at(curve: &Loop, place: f64) -> Point {
    let pieces = curve.pieces();
    let piece = place as usize;
    pieces[piece % pieces.len()].point(place - piece as f64)
}
