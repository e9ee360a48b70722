//! The arching's part of a design and its JSON keys.
//!
//! Files of version 1 from before the curve families read as they were meant: what is left out is a curtate cycloid, the apex
//! at mid-length, five stations, both sides alike.

use serde::{Deserialize, Deserializer, Serialize};

use super::tagged::Tagged;

/// Long arch, channel and cross arches.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct ArchingMeasures {
    pub edge_height_mm: f64,
    pub apex_height_mm: f64,
    /// Left out: midway between the channel's ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub apex_station_mm: Option<f64>,
    pub channel_depth_mm: f64,
    pub channel_distance_mm: f64,
    /// Counts for the families that are drawn from it; a spline has its own.
    pub long_arch_fullness: f64,
    /// The long arch's family.
    #[serde(default, skip_serializing_if = "LongArchCurve::is_default")]
    pub long_arch: LongArchCurve,
    pub cross_arches: CrossArches,
    /// Cross arches at further stations.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub extra_arches: Vec<ExtraArch>,
}

/// The cross arches at the five named stations, from the neck end down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CrossArches {
    /// At the widest place of the upper bout.
    pub upper_bout: CrossArch,
    /// At the upper corners' tips.
    pub upper_corners: CrossArch,
    /// At the narrowest place.
    pub waist: CrossArch,
    /// At the lower corners' tips.
    pub lower_corners: CrossArch,
    /// At the widest place of the lower bout.
    pub lower_bout: CrossArch,
}

/// The shape of one cross arch; its height comes from the long arch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CrossArch {
    /// Mean height over the greatest, for the families that are drawn from it.
    pub fullness: f64,
    /// The family.
    #[serde(default, skip_serializing_if = "ArchCurve::is_default")]
    pub curve: ArchCurve,
    /// The bass side's own shape; left out, both sides are alike.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bass: Option<BassArch>,
}

/// The shape of the bass side alone.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BassArch {
    /// As [`CrossArch::fullness`].
    pub fullness: f64,
    /// The family.
    #[serde(default, skip_serializing_if = "ArchCurve::is_default")]
    pub curve: ArchCurve,
}

/// A cross arch at a station of its own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExtraArch {
    /// From the bottom edge.
    pub station_mm: f64,
    /// Its shape.
    pub arch: CrossArch,
}

/// What a half arch is drawn with.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "family", rename_all = "snake_case")]
pub enum ArchCurve {
    /// From its fullness.
    CurtateCycloid {},
    /// From its fullness: two compass arcs.
    ArcWithReverseArc {},
    /// Through points between centreline and channel, in this order.
    Spline {
        /// Places and heights as shares, so that the curve goes with its arch.
        points: Vec<ArchPoint>,
    },
}

/// What the long arch is drawn with.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "family", rename_all = "snake_case")]
pub enum LongArchCurve {
    /// From its fullness.
    CurtateCycloid {},
    /// From its fullness: two compass arcs to each end.
    ArcWithReverseArc {},
    /// Through points from the apex to either end of the channel, in this order.
    Spline {
        /// Towards the bottom edge.
        lower: Vec<ArchPoint>,
        /// Towards the neck end.
        upper: Vec<ArchPoint>,
    },
}

/// A point of an arch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ArchPoint {
    /// From the crest, over the half span: 0 at the crest, 1 at the channel line.
    pub place: f64,
    /// Above the channel line, over the crest's height above it: 1 at the crest, 0 at the channel line.
    pub height: f64,
}

/// The families by their names in a document.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum Family {
    CurtateCycloid,
    ArcWithReverseArc,
    Spline,
}

impl Family {
    /// The keys that hold a spline's points; the other families have none.
    fn keys<'a>(&self, of_spline: &'a [&'a str]) -> &'a [&'a str] {
        if matches!(self, Family::Spline) { of_spline } else { &[] }
    }
}

impl<'de> Deserialize<'de> for ArchCurve {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<ArchCurve, D::Error> {
        let mut curve = Tagged::read(deserializer, "family")?;
        curve.only(Family::keys(&curve.kind, &["points"]))?;
        Ok(match curve.kind {
            Family::CurtateCycloid => ArchCurve::CurtateCycloid {},
            Family::ArcWithReverseArc => ArchCurve::ArcWithReverseArc {},
            Family::Spline => ArchCurve::Spline { points: curve.need("points")? },
        })
    }
}

impl<'de> Deserialize<'de> for LongArchCurve {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<LongArchCurve, D::Error> {
        let mut curve = Tagged::read(deserializer, "family")?;
        curve.only(Family::keys(&curve.kind, &["lower", "upper"]))?;
        Ok(match curve.kind {
            Family::CurtateCycloid => LongArchCurve::CurtateCycloid {},
            Family::ArcWithReverseArc => LongArchCurve::ArcWithReverseArc {},
            Family::Spline => LongArchCurve::Spline { lower: curve.need("lower")?, upper: curve.need("upper")? },
        })
    }
}

impl ArchCurve {
    fn is_default(&self) -> bool {
        matches!(self, ArchCurve::CurtateCycloid {})
    }
}

impl LongArchCurve {
    fn is_default(&self) -> bool {
        matches!(self, LongArchCurve::CurtateCycloid {})
    }
}

impl Default for ArchCurve {
    fn default() -> ArchCurve {
        ArchCurve::CurtateCycloid {}
    }
}

impl Default for LongArchCurve {
    fn default() -> LongArchCurve {
        LongArchCurve::CurtateCycloid {}
    }
}
