//! How wide the wood is, seen from a boundary.

use super::domain::{Domain, RIM, Station};
use crate::plan::{
    Point,
    vector::{along, cross, left_of, sub},
};

/// Chords of all boundaries with their boxes, for casting rays through the wood.
pub(super) struct Walls {
    chords: Vec<Wall>,
}

/// Wood between a station and what lies across.
pub(super) struct Width {
    pub(super) width_mm: f64,
    /// Across lies the same hole: the wood is a wing.
    pub(super) within_hole: bool,
}

struct Wall {
    start: Point,
    end: Point,
    is_centreline: bool,
    ring: usize,
}

impl Walls {
    /// Chords within 0.1 mm of the curves: widths are wanted to a few per cent.
    pub(super) fn new(domain: &Domain) -> Walls {
        let mut chords = Vec::new();
        for (ring, chain) in domain.chains() {
            for piece in &chain.pieces {
                let steps = piece.steps_within(0.1);
                let mut start = piece.start();
                for i in 1..=steps {
                    let end = piece.point(i as f64 / steps as f64);
                    chords.push(Wall { start, end, is_centreline: chain.is_centreline, ring });
                    start = end;
                }
            }
        }
        Walls { chords }
    }

    /// Width of the wood from a station of ring `ring` straight across, up to `reach_mm`. From the rim only holes count:
    /// a corner's tip is narrow too, but neither wing nor narrows. The centreline stands for the mirrored
    /// half, so that wood up to it counts twice.
    pub(super) fn width_mm(&self, station: &Station, ring: usize, reach_mm: f64) -> Width {
        // The ray starts a little inside, clear of the chords beside its own curve.
        const CLEAR_MM: f64 = 0.3;
        let inward = left_of(station.tangent);
        let from = along(station.point, inward, CLEAR_MM);
        let to = along(station.point, inward, reach_mm);
        let ray = sub(to, from);
        let mut width = Width { width_mm: reach_mm, within_hole: false };
        for wall in self.chords.iter().filter(|wall| ring != RIM || wall.ring != RIM) {
            let (a, b) = (wall.start, wall.end);
            if a[0].min(b[0]) > from[0].max(to[0])
                || a[0].max(b[0]) < from[0].min(to[0])
                || a[1].min(b[1]) > from[1].max(to[1])
                || a[1].max(b[1]) < from[1].min(to[1])
            {
                continue;
            }
            let chord = sub(b, a);
            let denominator = cross(ray, chord);
            if denominator == 0.0 {
                continue;
            }
            let offset = sub(a, from);
            let on_ray = cross(offset, chord) / denominator;
            let on_chord = cross(offset, ray) / denominator;
            if (0.0..=1.0).contains(&on_ray) && (0.0..=1.0).contains(&on_chord) {
                let straight = CLEAR_MM + on_ray * (reach_mm - CLEAR_MM);
                let across = if wall.is_centreline { 2.0 * straight } else { straight };
                if across < width.width_mm {
                    width = Width { width_mm: across, within_hole: wall.ring == ring };
                }
            }
        }
        width
    }
}
