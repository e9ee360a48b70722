//! The places of a hole that makers name.

use crate::plan::{Loop, Point, polyline_crossings};

/// The line along the middle of an f-hole's stem where its nicks are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StemAxis {
    /// Midway between the nicks' mouths, mm.
    pub nicks: Point,
    /// Unit vector along the stem, towards the upper eye.
    pub upwards: Point,
}

/// A round end of an f-hole, with the wing beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eye {
    /// Its middle, mm.
    pub centre: Point,
    /// Its radius, mm.
    pub radius_mm: f64,
    /// The wing's point and the place of the stem nearest to it: the ends of the throat, mm.
    pub throat: [Point; 2],
}

/// What an f-hole has and other holes haven't.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EyesAndAxis {
    /// The stem.
    pub stem: StemAxis,
    /// Upper, lower.
    pub eyes: [Eye; 2],
}

/// How far below its topmost and above its lowest place a hole without eyes is taken to end, over its height: a level
/// line there still crosses the hole's sides.
const END: f64 = 0.05;

impl EyesAndAxis {
    /// Every point laid by `lay`, a rotation or reflection about the origin.
    pub(super) fn laid(self, lay: impl Fn(Point) -> Point) -> EyesAndAxis {
        let StemAxis { nicks, upwards } = self.stem;
        EyesAndAxis {
            stem: StemAxis { nicks: lay(nicks), upwards: lay(upwards) },
            eyes: self.eyes.map(|eye| Eye { centre: lay(eye.centre), throat: eye.throat.map(&lay), ..eye }),
        }
    }
}

/// A point in the opening near its topmost and one near its lowest place.
pub(super) fn ends(boundary: &Loop) -> [Point; 2] {
    let (low, high) = boundary.bounds_mm();
    let line = boundary.polyline(0.05);
    [1.0 - END, END].map(|share| {
        let y = low[1] + share * (high[1] - low[1]);
        let across = polyline_crossings(&line, [low[0] - 1.0, y], [high[0] + 1.0, y]);
        // The widest stretch of opening on this level: a level line starts outside, so that crossings come in pairs.
        let stretches = across.chunks_exact(2).map(|pair| [pair[0].point[0], pair[1].point[0]]);
        let widest = stretches.max_by(|a, b| (a[1] - a[0]).total_cmp(&(b[1] - b[0])));
        let [left, right] = widest.unwrap_or([low[0], high[0]]);
        [0.5 * (left + right), y]
    })
}
