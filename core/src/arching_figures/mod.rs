//! What the arching does, in figures: for the panel beside the drawings.
//!
//! After this stage a maker knows where the arch is steepest, which gauges fit its tightest hollow and its tightest
//! round, how each cross arch stands, and where the turn from convex to concave falls in the sound holes. All of it is read
//! off the surface itself, not off the measures, so that it holds for every curve family.

mod extremes;
mod hole_meeting;
#[cfg(test)]
mod tests;

pub use hole_meeting::{HoleCrossing, HoleMeeting, Passing};

use crate::{outline::Outline, plan::Point, sound_holes::SoundHole, surface::Surface};

/// A figure and where on the top it is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FigureAt {
    /// The figure, in the unit that the field's name says.
    pub value: f64,
    /// Place in plan, mm.
    pub at: Point,
}

/// One cross arch.
#[derive(Clone, Debug, PartialEq)]
pub struct CrossArchFigures {
    /// "upper_bout", "upper_corners", "waist", "lower_corners" or "lower_bout".
    pub name: &'static str,
    /// Station y, mm.
    pub station_mm: f64,
    /// Height on the centreline above the plane of the ribs, mm.
    pub height_mm: f64,
    /// (bass, treble): half width to the arching boundary, mm.
    pub half_width_mm: [f64; 2],
    /// (bass, treble): where it turns from convex to concave, from the centreline, mm.
    pub inflection_mm: [f64; 2],
    /// (bass, treble): mean height over the greatest, both above the channel.
    pub fullness: [f64; 2],
    /// (bass, treble): how often it turns between centreline and boundary. More than once is a ripple.
    pub turns: [usize; 2],
}

/// The figures of one arching.
#[derive(Clone, Debug, PartialEq)]
pub struct ArchingFigures {
    /// Highest place; its height above the plane of the ribs, mm.
    pub apex_mm: FigureAt,
    /// How far the apex stands above the edge's top, mm.
    pub rise_above_edge_mm: f64,
    /// Depth of the channel below the edge's top, mm.
    pub channel_depth_mm: f64,
    /// Steepest slope between centreline and channel, degrees from level.
    pub steepest_deg: FigureAt,
    /// Radius of the largest ball that fits the tightest hollow between centreline and channel, mm; none without a hollow.
    pub smallest_hollow_radius_mm: Option<FigureAt>,
    /// Smallest radius of curvature of what stands out there, mm.
    pub smallest_round_radius_mm: Option<FigureAt>,
    /// The five cross arches, from the lower bout up.
    pub cross_arches: Vec<CrossArchFigures>,
    /// How the inflection line meets each sound hole, bass first.
    pub holes: Vec<HoleMeeting>,
}

impl ArchingFigures {
    /// Reads the figures off a surface. Cost: some 15 000 evaluations of the surface, a few milliseconds.
    pub fn new(outline: &Outline, surface: &Surface, holes: &[SoundHole]) -> ArchingFigures {
        let edge_height = surface.arching().measures().edge_height_mm;
        let found = extremes::search(surface, outline.is_symmetric() && surface.arching().sides_are_alike());
        let stations = outline.measures().named_stations_mm().into_iter();
        let cross_arches = stations.filter_map(|(name, station_mm)| cross_arch(surface, name, station_mm)).collect();
        ArchingFigures {
            apex_mm: found.highest,
            rise_above_edge_mm: found.highest.value - edge_height,
            channel_depth_mm: edge_height - surface.arching().channel_height_mm(),
            steepest_deg: found.steepest_deg,
            smallest_hollow_radius_mm: found.hollow,
            smallest_round_radius_mm: found.round,
            cross_arches,
            holes: holes.iter().map(|hole| HoleMeeting::new(surface, hole)).collect(),
        }
    }
}

/// `None` when the station lies beyond the channel's ends.
fn cross_arch(surface: &Surface, name: &'static str, station_mm: f64) -> Option<CrossArchFigures> {
    /// Samples from centreline to boundary: a ripple shorter than two of them is missed.
    const SAMPLES: u32 = 200;
    let mut figures = CrossArchFigures {
        name,
        station_mm,
        height_mm: surface.height_mm([0.0, station_mm]),
        half_width_mm: [0.0; 2],
        inflection_mm: [0.0; 2],
        fullness: [0.0; 2],
        turns: [0; 2],
    };
    let channel = surface.arching().channel_height_mm();
    for (side, sign) in [-1.0, 1.0].into_iter().enumerate() {
        let half = surface.arching().boundary().half_width(station_mm, sign > 0.0)?.x_mm;
        let at = |place: f64| surface.at([sign * half * place, station_mm]);
        let places = (0..SAMPLES).map(|i| (f64::from(i) + 0.5) / f64::from(SAMPLES));
        let mean = places.clone().map(|place| at(place).height_mm - channel).sum::<f64>() / f64::from(SAMPLES);
        let bends: Vec<f64> = places.map(|place| at(place).bend[0]).collect();
        figures.half_width_mm[side] = half;
        figures.inflection_mm[side] = surface.inflection_mm(station_mm, sign > 0.0)?;
        figures.fullness[side] = mean / (figures.height_mm - channel);
        figures.turns[side] = bends.windows(2).filter(|pair| pair[0] * pair[1] < 0.0).count();
    }
    Some(figures)
}
