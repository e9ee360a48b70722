//! The outer surface: one height and one normal for every point inside the outline.
//!
//! z = channel + depth b(x, y) + rise(y) p(|x| / X(y); k(y)): the arch over the arching boundary X, and beyond it a level
//! platform that rises to the edge by the edge band b (1 on the outline, 0 from the channel line inwards). Because the
//! arch leaves the boundary with zero slope and b leaves the channel line with zero slope, heights and normals are
//! continuous everywhere inside the outline. At the two ends X goes to 0, but the long arch goes to the channel's height
//! there with zero slope, so that the product stays smooth. On the centreline and at the five stations the surface is
//! the long arch and the cross arches themselves, not an approximation of them.

#[cfg(test)]
mod tests;

use crate::{
    arching::Arching,
    outline::{EdgeBand, Outline},
    plan::Point,
};

/// The outer surface. Heights are z above the plane of the ribs, mm.
#[derive(Clone, Debug)]
pub struct Surface {
    arching: Arching,
    edge: EdgeBand,
}

/// The surface at one point in plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnSurface {
    /// Height above the plane of the ribs, mm.
    pub height_mm: f64,
    /// Slope along x and along y, mm per mm.
    pub slope: Point,
}

impl OnSurface {
    /// Unit normal, outwards (z > 0).
    pub fn normal(&self) -> [f64; 3] {
        let [sx, sy] = self.slope;
        let length = (1.0 + sx * sx + sy * sy).sqrt();
        [-sx / length, -sy / length, 1.0 / length]
    }
}

impl Surface {
    /// Joins the arching's curves over an outline.
    pub fn new(arching: &Arching, outline: &Outline) -> Surface {
        Surface { edge: EdgeBand::new(outline, arching.measures().channel_distance_mm), arching: arching.clone() }
    }

    /// Height and slope at a point inside the outline. Below a microsecond.
    pub fn at(&self, p: Point) -> OnSurface {
        let depth = self.arching.measures().channel_depth_mm;
        let (band, band_slope) = self.edge.at(p);
        let mut on = OnSurface {
            height_mm: self.arching.channel_height_mm() + depth * band,
            slope: [depth * band_slope[0], depth * band_slope[1]],
        };
        let [x, y] = p;
        let Some(half) = self.arching.boundary().half_width(y, x >= 0.0) else {
            return on;
        };
        let place = x.abs() / half.x_mm;
        if place >= 1.0 {
            return on;
        }
        let (rise, rise_slope) = self.arching.long_rise_mm(y);
        let (arch, ratio_slope) = self.arching.cross_arch(y);
        let p = arch.at(place);
        on.height_mm += rise * p.height;
        // d(place)/dx = sign(x) / X, d(place)/dy = -place X'/X.
        on.slope[0] += rise * p.by_place * x.signum() / half.x_mm;
        on.slope[1] +=
            rise_slope * p.height + rise * (p.by_ratio * ratio_slope - p.by_place * place * half.relative_slope);
        on
    }

    /// Height above the plane of the ribs, mm.
    pub fn height_mm(&self, p: Point) -> f64 {
        self.at(p).height_mm
    }

    /// Unit normal, outwards.
    pub fn normal(&self, p: Point) -> [f64; 3] {
        self.at(p).normal()
    }

    /// The arching it was made from.
    pub fn arching(&self) -> &Arching {
        &self.arching
    }
}
