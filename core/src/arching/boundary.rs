//! The arching boundary: the channel line with the corners bridged.
//!
//! The arching ignores the corners: beyond the boundary lie the channel's far slope and a level platform. Along bouts,
//! waist and ends the boundary is the outline moved in by the channel's distance; past a corner it is a cubic bridge
//! from where the bout's round ends to where the waist's long arc begins, with the slopes of both.

use super::monotone_cubic::hermite;
use crate::{
    design::DesignError,
    outline::Outline,
    plan::{
        Arc, Piece,
        vector::{along, left_of},
    },
};

/// Half width X(y) of the arching on each side.
#[derive(Clone, Debug, PartialEq)]
pub struct ArchingBoundary {
    ends: [f64; 2],
    treble: Vec<Stretch>,
    bass: Vec<Stretch>,
}

/// Half width and its derivative at a station.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HalfWidth {
    /// X, mm.
    pub x_mm: f64,
    /// dX/dy over X, 1/mm: stays usable where X goes to 0 with an upright tangent.
    pub relative_slope: f64,
}

/// X over one interval of y.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Stretch {
    low: f64,
    high: f64,
    curve: Curve,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Curve {
    /// x = centre x + bulge sqrt(r^2 - (y - centre y)^2), bulge 1 outwards and -1 inwards.
    Arc { centre: [f64; 2], radius: f64, bulge: f64 },
    /// Cubic with given ends and slopes.
    Bridge { values: [f64; 2], slopes: [f64; 2] },
}

impl ArchingBoundary {
    pub(super) fn new(outline: &Outline, distance_mm: f64) -> Result<ArchingBoundary, DesignError> {
        Ok(ArchingBoundary {
            ends: [distance_mm, outline.length_mm() - distance_mm],
            treble: side(outline, true, distance_mm)?,
            bass: side(outline, false, distance_mm)?,
        })
    }

    /// Stations where the channel crosses the centreline: lower, upper.
    pub fn ends_mm(&self) -> [f64; 2] {
        self.ends
    }

    /// Half width at station y; `None` at and beyond the ends.
    pub fn half_width(&self, y_mm: f64, treble_side: bool) -> Option<HalfWidth> {
        if y_mm <= self.ends[0] || y_mm >= self.ends[1] {
            return None;
        }
        let stretches = if treble_side { &self.treble } else { &self.bass };
        let index = stretches.partition_point(|stretch| stretch.high < y_mm).min(stretches.len() - 1);
        let (x, slope) = stretches[index].at(y_mm);
        (x > 0.0).then(|| HalfWidth { x_mm: x, relative_slope: slope / x })
    }
}

impl Stretch {
    fn at(&self, y: f64) -> (f64, f64) {
        match self.curve {
            Curve::Arc { centre, radius, bulge } => {
                let off = y - centre[1];
                let root = (radius * radius - off * off).max(1e-12).sqrt();
                (centre[0] + bulge * root, -bulge * off / root)
            }
            Curve::Bridge { values, slopes } => hermite([self.low, self.high], values, slopes, y),
        }
    }
}

/// The stretches of one side from the bottom to the neck end.
fn side(outline: &Outline, treble_side: bool, distance_mm: f64) -> Result<Vec<Stretch>, DesignError> {
    let half = outline.half(treble_side);
    let moved_in = |pieces: &[Piece]| -> Result<Vec<Stretch>, DesignError> {
        pieces.iter().map(|piece| moved_in(piece, distance_mm)).collect()
    };
    // The curls into the corners are left out: the last piece of the lower bout, first and last of the waist, first
    // of the upper bout.
    let lower = moved_in(&half.lower_bout[..3])?;
    let waist = moved_in(&half.waist[1..3])?;
    let upper = moved_in(&half.upper_bout[1..])?;
    let mut all = lower;
    for part in [waist, upper] {
        let (Some(last), Some(first)) = (all.last(), part.first()) else {
            return Err(too_far_in(distance_mm));
        };
        if first.low <= last.high {
            return Err(too_far_in(distance_mm));
        }
        let (from, to) = (last.at(last.high), first.at(first.low));
        let bridge = Stretch {
            low: last.high,
            high: first.low,
            curve: Curve::Bridge { values: [from.0, to.0], slopes: [from.1, to.1] },
        };
        all.push(bridge);
        all.extend(part);
    }
    Ok(all)
}

fn moved_in(piece: &Piece, distance_mm: f64) -> Result<Stretch, DesignError> {
    let shifted = |t: f64| along(piece.point(t), left_of(piece.tangent(t)), distance_mm);
    let (start, end) = (shifted(0.0), shifted(1.0));
    if end[1] <= start[1] {
        return Err(too_far_in(distance_mm));
    }
    let curve = match piece {
        Piece::Arc(Arc { centre, radius_mm, sweep_rad, .. }) => {
            let bulge = sweep_rad.signum();
            let radius = radius_mm - bulge * distance_mm;
            if radius <= 0.0 {
                return Err(too_far_in(distance_mm));
            }
            Curve::Arc { centre: *centre, radius, bulge }
        }
        other => {
            let slope = |t: f64| {
                let tangent = other.tangent(t);
                tangent[0] / tangent[1]
            };
            Curve::Bridge { values: [start[0], end[0]], slopes: [slope(0.0), slope(1.0)] }
        }
    };
    Ok(Stretch { low: start[1], high: end[1], curve })
}

fn too_far_in(distance_mm: f64) -> DesignError {
    DesignError::Impossible {
        kind: "channel_too_far_in",
        path: "arching.channel_distance_mm".into(),
        what: "the channel line can't follow this outline".into(),
        value: format!("{distance_mm} mm"),
        limits: "it must be less than the radius of every convex arc and leave room between the corners".into(),
        remedy: "move the channel nearer to the edge or make the outline's curves wider".into(),
    }
}
