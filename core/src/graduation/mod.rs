//! Graduation: the thickness of the wood anywhere, along the outer surface's normal.
//!
//! A thicker centre passes smoothly into thinner flanks, and these into the edge, which keeps its thickness over the
//! glued rim. Bouts, channel, the wood round the holes and the wings may have thicknesses of their own; a measured map may
//! stand for all of these, and thicknesses may be painted over. Every value is a mean of the thicknesses given, so it is
//! never outside their range, and a zone that is left out changes nothing.

mod beside_holes;
mod map;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod zone_tests;

use crate::{
    arching::Arching,
    design::GraduationMeasures,
    outline::{EdgeBand, Outline},
    plan::Point,
    regions::Wing,
    sound_holes::SoundHole,
};
use beside_holes::BesideHoles;

/// Place on a cross arch (0 centreline, 1 arching boundary), and on the long arch likewise, up to which the centre's
/// thickness holds, and from which on the flanks' does (common practice, no source: the centre covers the bridge area).
const CENTRE_ENDS: f64 = 0.25;
const FLANKS_BEGIN: f64 = 0.8;
/// The edge's extra thickness is gone this far beyond the channel line, in channel distances from the edge.
const EDGE_BLEND: f64 = 1.25;
/// Place on the long arch at which a bout's own thickness begins, and from which on it holds.
const BOUT_BEGINS: f64 = 0.3;
const BOUT_HOLDS: f64 = 0.75;

/// The thickness map.
#[derive(Clone, Debug)]
pub struct Graduation {
    measures: GraduationMeasures,
    arching: Arching,
    edge: EdgeBand,
    /// 1 on the edge to 0 at twice the channel's distance: one half on the channel line.
    channel: EdgeBand,
    beside_holes: BesideHoles,
}

impl Graduation {
    /// Lays the thicknesses out over an arching.
    pub fn new(measures: &GraduationMeasures, arching: &Arching, outline: &Outline) -> Graduation {
        let distance = arching.measures().channel_distance_mm;
        Graduation {
            measures: measures.clone(),
            edge: EdgeBand::new(outline, EDGE_BLEND * distance),
            channel: EdgeBand::new(outline, 2.0 * distance),
            beside_holes: BesideHoles::default(),
            arching: arching.clone(),
        }
    }

    /// The same with the zones that lie beside sound holes, which a top without holes hasn't.
    #[must_use]
    pub(crate) fn beside<'a>(self, holes: &[SoundHole], wings: impl FnOnce() -> &'a [Wing]) -> Graduation {
        let m = &self.measures;
        if m.around_holes_mm.is_none() && m.wings_mm.is_none() {
            return self;
        }
        let reach = self.arching.measures().channel_distance_mm;
        let wings = m.wings_mm.map_or(&[][..], |_| wings());
        Graduation { beside_holes: BesideHoles::new(holes, wings, reach), ..self }
    }

    /// True when each side is known to mirror the other if outline and holes do: nothing lies at places of its own.
    pub fn sides_are_alike(&self) -> bool {
        let m = &self.measures;
        m.measured.is_empty() && m.painted.is_empty() && self.arching.sides_are_alike()
    }

    /// Thickness along the normal at a point in plan, mm. Always positive.
    pub fn thickness_mm(&self, p: Point) -> f64 {
        let under = if self.measures.measured.is_empty() {
            self.of_zones(p)
        } else {
            map::measured(&self.measures.measured, p)
        };
        map::painted(&self.measures.painted, p, under)
    }

    fn of_zones(&self, p: Point) -> f64 {
        let m = &self.measures;
        let flank = self.flank_or_bout_mm(p[1]);
        let inner = flank + (m.centre_mm - flank) * self.centre_share(p);
        let edge_share = self.edge.at(p).value;
        let mut thickness = inner + (m.edge_mm - inner) * edge_share;
        let mut blend = |zone: Option<f64>, share: &dyn Fn() -> f64| {
            if let Some(zone) = zone {
                thickness += (zone - thickness) * share();
            }
        };
        blend(m.channel_mm, &|| {
            let band = self.channel.at(p).value;
            4.0 * band * (1.0 - band)
        });
        blend(m.around_holes_mm, &|| self.beside_holes.around(p));
        blend(m.wings_mm, &|| self.beside_holes.on_wing(p));
        thickness
    }

    /// Thickness outside the centre at station y.
    fn flank_or_bout_mm(&self, y: f64) -> f64 {
        let m = &self.measures;
        let bout = if y > self.arching.apex_station_mm() { m.upper_bout_mm } else { m.lower_bout_mm };
        let share = |place: f64| smooth_step((place - BOUT_BEGINS) / (BOUT_HOLDS - BOUT_BEGINS));
        bout.map_or(m.flank_mm, |bout| m.flank_mm + (bout - m.flank_mm) * share(self.arching.along_long_arch(y)))
    }

    /// 1 in the centre, 0 on the flanks.
    fn centre_share(&self, [x, y]: Point) -> f64 {
        let Some(half) = self.arching.boundary().half_width(y, x >= 0.0) else {
            return 0.0;
        };
        falling(x.abs() / half.x_mm) * falling(self.arching.along_long_arch(y))
    }
}

/// 1 up to the centre's end, 0 from the flanks' beginning on, smooth between.
fn falling(place: f64) -> f64 {
    smooth_step((FLANKS_BEGIN - place) / (FLANKS_BEGIN - CENTRE_ENDS))
}

/// 0 up to 0, 1 from 1 on, level at both.
fn smooth_step(t: f64) -> f64 {
    let t = t.clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}
