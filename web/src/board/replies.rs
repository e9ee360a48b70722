//! What the page is told about the arching.

use bombatura_core::arching_figures::{ArchingFigures, FigureAt, HoleMeeting, Passing};
use serde::Serialize;

/// What the arching does.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct ArchingReply {
    /// Above the plane of the ribs, mm.
    apex_mm: f64,
    /// Of the apex above the edge's top, mm.
    rise_mm: f64,
    channel_depth_mm: f64,
    steepest: Figure,
    /// Smallest radii of what is hollow and of what stands out, mm.
    hollow_radius: Option<Figure>,
    round_radius: Option<Figure>,
    /// Bass first; a side without a hole gives none.
    holes: Vec<HoleReply>,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
struct Figure {
    value: f64,
    /// x and y in plan, mm.
    at: [f64; 2],
}

/// How the inflection line meets a sound hole.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct HoleReply {
    treble_side: bool,
    /// From the bottom edge up.
    crossings: Vec<Crossing>,
    /// Without a crossing: true when the line runs between hole and centreline, and the wood between, mm.
    misses: Option<Miss>,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
struct Crossing {
    /// Along the stem, above zero towards the upper eye; none where the hole has no stem.
    from_nicks_mm: Option<f64>,
    on_stem: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
struct Miss {
    inside: bool,
    by_mm: f64,
}

impl From<&ArchingFigures> for ArchingReply {
    fn from(figures: &ArchingFigures) -> ArchingReply {
        ArchingReply {
            apex_mm: figures.apex_mm.value,
            rise_mm: figures.rise_above_edge_mm,
            channel_depth_mm: figures.channel_depth_mm,
            steepest: figures.steepest_deg.into(),
            hollow_radius: figures.smallest_hollow_radius_mm.map(Into::into),
            round_radius: figures.smallest_round_radius_mm.map(Into::into),
            holes: figures.holes.iter().map(Into::into).collect(),
        }
    }
}

impl From<FigureAt> for Figure {
    fn from(figure: FigureAt) -> Figure {
        Figure { value: figure.value, at: figure.at }
    }
}

impl From<&HoleMeeting> for HoleReply {
    fn from(meeting: &HoleMeeting) -> HoleReply {
        HoleReply {
            treble_side: meeting.treble_side,
            crossings: meeting
                .crossings
                .iter()
                .map(|crossing| Crossing { from_nicks_mm: crossing.from_nicks_mm, on_stem: crossing.on_stem })
                .collect(),
            misses: meeting.misses.map(|(side, by_mm)| Miss { inside: side == Passing::Inside, by_mm }),
        }
    }
}
