//! What the page is told about a solve and about the arching.

use bombatura_core::arching_figures::{ArchingFigures, FigureAt, HoleMeeting, Passing};
use bombatura_core::modes::{ModeName, Modes};
use serde::Serialize;

/// The modes of the last solve, lowest first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct ModeList {
    modes: Vec<ModeEntry>,
    /// (rigid motion): frequency that the matrices give the motions the supports leave free, Hz; zeros but for rounding.
    rigid_hz: Vec<f64>,
}

#[derive(Clone, Debug, PartialEq, Serialize)]
struct ModeEntry {
    /// 1 for the lowest elastic mode.
    number: usize,
    /// Assigned from the shape; empty where it has no name of the trade.
    name: String,
    frequency_hz: f64,
    residual: f64,
}

impl From<&Modes> for ModeList {
    fn from(modes: &Modes) -> ModeList {
        let entries = modes.frequencies_hz.iter().zip(&modes.residuals).zip(&modes.names).zip(1..);
        ModeList {
            modes: entries
                .map(|(((&frequency_hz, &residual), name), number)| ModeEntry {
                    number,
                    name: name.map_or("", ModeName::word).to_owned(),
                    frequency_hz,
                    residual,
                })
                .collect(),
            rigid_hz: modes.rigid_hz.clone(),
        }
    }
}

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
