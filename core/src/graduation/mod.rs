//! Graduation: the thickness of the wood anywhere, along the outer surface's normal.
//!
//! A thicker centre passes smoothly into thinner flanks, and these into the edge, which keeps its thickness over the
//! glued rim. Every value is a mean of the three given thicknesses, so it is never outside their range.

#[cfg(test)]
mod tests;

use crate::{
    arching::Arching,
    design::GraduationMeasures,
    outline::{EdgeBand, Outline},
    plan::Point,
};

/// Place on a cross arch (0 centreline, 1 arching boundary), and on the long arch likewise, up to which the centre's
/// thickness holds, and from which on the flanks' does (common practice, no source: the centre covers the bridge area).
const CENTRE_ENDS: f64 = 0.25;
const FLANKS_BEGIN: f64 = 0.8;
/// The edge's extra thickness is gone this far beyond the channel line, in channel distances from the edge.
const EDGE_BLEND: f64 = 1.25;

/// The thickness map.
#[derive(Clone, Debug)]
pub struct Graduation {
    measures: GraduationMeasures,
    arching: Arching,
    edge: EdgeBand,
}

impl Graduation {
    /// Lays the thicknesses out over an arching.
    pub fn new(measures: &GraduationMeasures, arching: &Arching, outline: &Outline) -> Graduation {
        Graduation {
            measures: measures.clone(),
            edge: EdgeBand::new(outline, EDGE_BLEND * arching.measures().channel_distance_mm),
            arching: arching.clone(),
        }
    }

    /// Thickness along the normal at a point in plan, mm. Always positive.
    pub fn thickness_mm(&self, p: Point) -> f64 {
        let GraduationMeasures { centre_mm, flank_mm, edge_mm } = self.measures;
        let inner = flank_mm + (centre_mm - flank_mm) * self.centre_share(p);
        let edge_share = self.edge.at(p).value;
        inner + (edge_mm - inner) * edge_share
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
    let t = ((FLANKS_BEGIN - place) / (FLANKS_BEGIN - CENTRE_ENDS)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}
