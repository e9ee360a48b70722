//! The long arch: the height of the outer surface along the centreline.

use super::HalfArch;
use crate::design::{ArchingMeasures, DesignError, LongArchCurve};

/// Where along the long arch its apex may stand, 0 the channel's lower end to 1 its upper end: nearer to an end the short
/// half would be steeper than wood is cut (common practice, no source).
const APEX_STANDS: [f64; 2] = [0.3, 0.7];

/// Two halves that share a level apex. Rises are above the channel, mm.
#[derive(Clone, Debug)]
pub(super) struct LongArch {
    apex_mm: f64,
    rise_mm: f64,
    ends_mm: [f64; 2],
    /// Lower, upper.
    halves: [HalfArch; 2],
}

impl LongArch {
    /// Between the channel's two ends.
    pub(super) fn new(measures: &ArchingMeasures, ends_mm: [f64; 2]) -> Result<LongArch, DesignError> {
        let [low, high] = ends_mm;
        let apex_mm = measures.apex_station_mm.unwrap_or(0.5 * (low + high));
        let stands = (apex_mm - low) / (high - low);
        if !(APEX_STANDS[0]..=APEX_STANDS[1]).contains(&stands) {
            let [least, most] = APEX_STANDS.map(|share| low + share * (high - low));
            return Err(DesignError::Impossible {
                kind: "apex_out_of_place",
                path: "arching.apex_station_mm".into(),
                what: "the apex stands too near an end".into(),
                value: format!("{apex_mm} mm"),
                limits: format!("it may stand from {least:.1} to {most:.1} mm from the bottom edge"),
                remedy: "move the apex towards the middle of the length".into(),
            });
        }
        let rise_mm = measures.apex_height_mm - measures.edge_height_mm + measures.channel_depth_mm;
        let fullness = measures.long_arch_fullness;
        let path = "arching.long_arch_fullness";
        let halves = match &measures.long_arch {
            LongArchCurve::CurtateCycloid {} => {
                let half = HalfArch::Cycloid(super::CurtateCycloid::from_fullness(fullness));
                [half.clone(), half]
            }
            LongArchCurve::ArcWithReverseArc {} => [
                HalfArch::arcs(fullness, rise_mm / (apex_mm - low), path)?,
                HalfArch::arcs(fullness, rise_mm / (high - apex_mm), path)?,
            ],
            LongArchCurve::Spline { lower, upper } => [
                HalfArch::through(lower, "arching.long_arch.lower")?,
                HalfArch::through(upper, "arching.long_arch.upper")?,
            ],
        };
        Ok(LongArch { apex_mm, rise_mm, ends_mm, halves })
    }

    /// Station of the apex, mm.
    pub(super) fn apex_mm(&self) -> f64 {
        self.apex_mm
    }

    /// 0 at the apex, 1 at the channel, and which half: 0 lower, 1 upper.
    pub(super) fn place(&self, y_mm: f64) -> (f64, usize) {
        let half = usize::from(y_mm >= self.apex_mm);
        ((y_mm - self.apex_mm) / (self.ends_mm[half] - self.apex_mm), half)
    }

    /// Rise, slope and second derivative by y. Zero with zero slope at and beyond the ends.
    pub(super) fn rise_mm(&self, y_mm: f64) -> [f64; 3] {
        let (place, half) = self.place(y_mm);
        let [height, slope, bend] = self.halves[half].at(place);
        // Negative on the lower half, where the place falls with y.
        let length = self.ends_mm[half] - self.apex_mm;
        [self.rise_mm * height, self.rise_mm * slope / length, self.rise_mm * bend / (length * length)]
    }
}
