//! The arching boundary: the channel line with the corners bridged.
//!
//! The arching ignores the corners: beyond the boundary lie the channel's far slope and a level platform. Along bouts,
//! waist and ends the boundary is the outline moved in by the channel's distance; past a corner it is a cubic bridge
//! from where the bout's round ends to where the waist's long arc begins, with the slopes of both, nowhere nearer to the
//! outline than the channel.

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

/// Half width and its derivatives at a station.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HalfWidth {
    /// X, mm.
    pub x_mm: f64,
    /// dX/dy over X, 1/mm: stays usable where X goes to 0 with an upright tangent.
    pub relative_slope: f64,
    /// d2X/dy2 over X, 1/mm2.
    pub relative_bend: f64,
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
    /// Cubic with given ends and slopes, drawn in by `drawn_in` in the middle, by 16 t^2 (1 - t)^2 of it elsewhere.
    Bridge { values: [f64; 2], slopes: [f64; 2], drawn_in: f64 },
}

/// How finely a bridge is compared with the outline, and how often it is drawn in: each round leaves the error of taking
/// distance for width, which falls with the square of what was short.
const BRIDGE_SAMPLES: u32 = 128;
const BRIDGE_ROUNDS: u32 = 10;

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
        let [x, slope, bend] = stretches[index].at(y_mm);
        (x > 0.0).then(|| HalfWidth { x_mm: x, relative_slope: slope / x, relative_bend: bend / x })
    }
}

impl Stretch {
    /// X, dX/dy and d2X/dy2.
    fn at(&self, y: f64) -> [f64; 3] {
        match self.curve {
            Curve::Arc { centre, radius, bulge } => {
                let off = y - centre[1];
                let root = (radius * radius - off * off).max(1e-12).sqrt();
                [centre[0] + bulge * root, -bulge * off / root, -bulge * radius * radius / root.powi(3)]
            }
            Curve::Bridge { values, slopes, drawn_in } => {
                let [x, slope, bend] = hermite([self.low, self.high], values, slopes, y);
                let h = self.high - self.low;
                let t = (y - self.low) / h;
                let s = 1.0 - t;
                [
                    x - drawn_in * 16.0 * t * t * s * s,
                    slope - drawn_in * 32.0 * t * s * (s - t) / h,
                    bend - drawn_in * 32.0 * (1.0 - 6.0 * t * s) / (h * h),
                ]
            }
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
        let ends = [(last.high, from), (first.low, to)];
        // Both sides of a symmetric outline are measured on one, so that they come out alike to the last bit.
        let measured_on_treble = treble_side || outline.is_symmetric();
        let to_outline = |x: f64, y: f64| outline.signed_distance_mm(Outline::on_side([x, y], measured_on_treble));
        all.push(bridge(ends, to_outline, distance_mm));
        all.extend(part);
    }
    Ok(all)
}

/// The stretch past a corner. A corner that leans little leaves a cubic less than the channel's distance from its flanks:
/// then the bridge is drawn in until the distance is kept.
fn bridge(ends: [(f64, [f64; 3]); 2], to_outline: impl Fn(f64, f64) -> f64, distance_mm: f64) -> Stretch {
    let [(low, from), (high, to)] = ends;
    let drawn = |drawn_in: f64| Stretch {
        low,
        high,
        curve: Curve::Bridge { values: [from[0], to[0]], slopes: [from[1], to[1]], drawn_in },
    };
    let mut drawn_in = 0.0;
    for _ in 0..BRIDGE_ROUNDS {
        let stretch = drawn(drawn_in);
        let mut more: f64 = 0.0;
        for i in 1..BRIDGE_SAMPLES {
            // Crowded at the ends, where the bridge parts from the outline's arcs.
            let t = 0.5 - 0.5 * (std::f64::consts::PI * f64::from(i) / f64::from(BRIDGE_SAMPLES)).cos();
            let y = low + (high - low) * t;
            let [x, slope, _] = stretch.at(y);
            let short = distance_mm - to_outline(x, y);
            // Moving in by dx widens the distance by dx times the cosine of the lean.
            more = more.max(short * slope.hypot(1.0) / (16.0 * t * t * (1.0 - t) * (1.0 - t)));
        }
        // Below this, close to the ends, the outline's own rounding speaks.
        if more < 1e-7 {
            break;
        }
        drawn_in += more;
    }
    drawn(drawn_in)
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
            Curve::Bridge { values: [start[0], end[0]], slopes: [slope(0.0), slope(1.0)], drawn_in: 0.0 }
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
