//! The outer surface: height, normal and bend for every point inside the outline.
//!
//! z = channel + depth b(x, y) + rise(y) p(|x| / X(y); k(y)): the arch over the arching boundary X, and beyond it a level
//! platform that rises to the edge by the edge band b (1 on the outline, 0 from the channel line inwards). Because the
//! arch leaves the boundary with zero slope and b leaves the channel line with zero slope, heights and normals are
//! continuous everywhere inside the outline. At the two ends X goes to 0, but the long arch goes to the channel's height
//! there with zero slope, so that the product stays smooth. On the centreline and at the five stations the surface is
//! the long arch and the cross arches themselves, not an approximation of them.

mod contours;
mod curvature;
mod inflection;
#[cfg(test)]
mod laws;
#[cfg(test)]
pub(crate) mod regular;
#[cfg(test)]
mod tests;
mod wing_hollow;

use crate::{
    arching::Arching,
    design::SoundHoles,
    outline::{EdgeBand, Outline},
    plan::Point,
    regions::Wing,
};
use wing_hollow::WingHollow;

pub use curvature::PrincipalCurvatures;

/// The outer surface. Heights are z above the plane of the ribs, mm.
#[derive(Clone, Debug)]
pub struct Surface {
    arching: Arching,
    edge: EdgeBand,
    outline_is_symmetric: bool,
    hollows: Vec<WingHollow>,
}

/// The surface at one point in plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnSurface {
    /// Height above the plane of the ribs, mm.
    pub height_mm: f64,
    /// Slope along x and along y, mm per mm.
    pub slope: Point,
    /// Second derivatives of the height by x twice, x and y, y twice, 1/mm. They jump where one curve is joined to the
    /// next: across the channel line and the arching boundary, at the stations, and where the outline's arcs meet.
    pub bend: [f64; 3],
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
        let edge = EdgeBand::new(outline, arching.measures().channel_distance_mm);
        Surface { edge, arching: arching.clone(), outline_is_symmetric: outline.is_symmetric(), hollows: Vec::new() }
    }

    /// The same with the fluting run into the lower wings where the holes' measures ask for it.
    #[must_use]
    pub(crate) fn fluted<'a>(self, choices: &SoundHoles, wings: impl FnOnce() -> &'a [Wing]) -> Surface {
        Surface { hollows: WingHollow::all(choices, wings), ..self }
    }

    /// True when each side mirrors the other.
    pub fn sides_are_alike(&self) -> bool {
        self.outline_is_symmetric && self.hollows.is_empty() && self.arching.sides_are_alike()
    }

    /// Height, slope and bend at a point inside the outline. Below a microsecond.
    pub fn at(&self, p: Point) -> OnSurface {
        let mut on = self.arched(p);
        for depth in self.hollows.iter().filter_map(|hollow| hollow.at(p)) {
            on.height_mm -= depth.value;
            (0..2).for_each(|i| on.slope[i] -= depth.slope[i]);
            (0..3).for_each(|i| on.bend[i] -= depth.bend[i]);
        }
        on
    }

    /// The arching alone.
    fn arched(&self, p: Point) -> OnSurface {
        let depth = self.arching.measures().channel_depth_mm;
        let band = self.edge.at(p);
        let mut on = OnSurface {
            height_mm: self.arching.channel_height_mm() + depth * band.value,
            slope: band.slope.map(|slope| depth * slope),
            bend: band.bend.map(|bend| depth * bend),
        };
        let [x, y] = p;
        let Some(half) = self.arching.boundary().half_width(y, x >= 0.0) else {
            return on;
        };
        let place = x.abs() / half.x_mm;
        if place >= 1.0 {
            return on;
        }
        let [rise, rise_slope, rise_bend] = self.arching.long_rise_mm(y);
        let arch = self.arching.cross_arch(y, place, x >= 0.0);
        // The place u = |x| / X(y) moves with x and with y.
        let u_x = x.signum() / half.x_mm;
        let u_y = -place * half.relative_slope;
        let u_xy = -u_x * half.relative_slope;
        let u_yy = place * (2.0 * half.relative_slope * half.relative_slope - half.relative_bend);
        // The arch's height h(u(x, y), y) and its derivatives by x and y.
        let [h_u, h_s] = arch.slope;
        let [h_uu, h_us, h_ss] = arch.bend;
        let h_y = h_u * u_y + h_s;
        on.height_mm += rise * arch.height;
        on.slope[0] += rise * h_u * u_x;
        on.slope[1] += rise_slope * arch.height + rise * h_y;
        on.bend[0] += rise * h_uu * u_x * u_x;
        on.bend[1] += rise_slope * h_u * u_x + rise * (u_x * (h_uu * u_y + h_us) + h_u * u_xy);
        on.bend[2] += rise_bend * arch.height
            + 2.0 * rise_slope * h_y
            + rise * (h_uu * u_y * u_y + 2.0 * h_us * u_y + h_u * u_yy + h_ss);
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
