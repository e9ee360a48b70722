//! Contour lines of the arch.
//!
//! The arch falls from the long arch to its boundary at every station, so a contour line is a ring: from the place where
//! the long arch has its height, up one side and down the other, and at each station one root. That takes a tenth of the
//! time of marching over a lattice, in which most points lie far from any line; a drawing must keep pace with a hand.

use std::f64::consts::PI;

use super::Surface;
use crate::plan::{Point, vector::mirrored};

/// Stations of a ring from its lower to its upper end, crowded there as on a circle: a point at least every 13 mm on a
/// violin, between which the smooth line strays by less than 0.1 mm.
const STATIONS: u32 = 42;
/// Halvings of a half length of at most 400 mm: 400 / 2^40 is far below what is drawn.
const HALVINGS: u32 = 40;
/// False position by the Illinois rule (Dowell & Jarratt 1971, BIT 11, 168-174) ends where the height is this near, mm. It takes
/// five to nine steps on these curves; where a curve is no arch, twenty are enough of it.
const NEAR_MM: f64 = 1e-9;
const STEPS: u32 = 20;

impl Surface {
    /// The closed ring of all points of the arch that are `height_mm` above the plane of the ribs, counter-clockwise from its
    /// lower end; empty at and above the apex and at and below the channel. `symmetric` saves the second side's work where
    /// both are alike.
    ///
    /// Cost: some 600 heights, half of that if symmetric.
    #[must_use]
    pub fn contour(&self, height_mm: f64, symmetric: bool) -> Vec<Point> {
        let arching = self.arching();
        let level = height_mm - arching.channel_height_mm();
        if level <= 0.0 {
            return Vec::new();
        }
        let long = |y: f64| arching.long_rise_mm(y)[0] - level;
        let side = |y: f64, treble_side: bool| {
            let (half, rise) = (arching.boundary().half_width(y, treble_side)?, arching.long_rise_mm(y)[0]);
            let above = move |place: f64| rise * arching.cross_arch(y, place, treble_side).height - level;
            Some((half.x_mm, above))
        };
        ring(arching.apex_station_mm(), arching.boundary().ends_mm(), symmetric, long, side)
    }
}

/// The ring on which a height is zero that is above it at the apex and falls from there along the centreline and, at each
/// station, from the centreline to a half width. `side` gives the half width and the height by the place, 0 to 1 across it.
fn ring<Across: Fn(f64) -> f64>(
    apex_mm: f64,
    [low, high]: [f64; 2],
    symmetric: bool,
    long: impl Fn(f64) -> f64,
    side: impl Fn(f64, bool) -> Option<(f64, Across)>,
) -> Vec<Point> {
    if long(apex_mm) <= 0.0 {
        return Vec::new();
    }
    let end = |outer: f64| {
        let (mut inside, mut outside) = (apex_mm, outer);
        for _ in 0..HALVINGS {
            let y = 0.5 * (inside + outside);
            if long(y) > 0.0 { inside = y } else { outside = y }
        }
        inside
    };
    let (from, to) = (end(low), end(high));
    let station = |i: u32| 0.5 * (from + to) - 0.5 * (to - from) * (PI * f64::from(i) / f64::from(STATIONS)).cos();
    let across = |y: f64, treble_side: bool| {
        let (half, above) = side(y, treble_side)?;
        let x = half * place_at(above);
        Some([if treble_side { x } else { -x }, y])
    };
    let mut ring = vec![[0.0, from]];
    ring.extend((1..STATIONS).filter_map(|i| across(station(i), true)));
    let treble = ring.len();
    ring.push([0.0, to]);
    if symmetric {
        ring.extend_from_within(1..treble);
        ring[treble + 1..].reverse();
        ring[treble + 1..].iter_mut().for_each(|p| *p = mirrored(*p));
    } else {
        ring.extend((1..STATIONS).rev().filter_map(|i| across(station(i), false)));
    }
    ring
}

/// Where between 0 and 1 a curve that is not negative at 0 and not positive at 1 is zero.
fn place_at(curve: impl Fn(f64) -> f64) -> f64 {
    let (mut a, mut b) = (0.0, 1.0);
    let (mut at_a, mut at_b) = (curve(a), curve(b));
    if at_a <= 0.0 {
        return 0.0;
    }
    let (mut place, mut last_above) = (0.0, None);
    for _ in 0..STEPS {
        place = (a * at_b - b * at_a) / (at_b - at_a);
        let value = curve(place);
        if value.abs() < NEAR_MM {
            break;
        }
        let above = value > 0.0;
        // An end that stays a second time counts for half, so that it can't stay for long.
        let stays = if last_above == Some(above) { 0.5 } else { 1.0 };
        if above {
            (a, at_a, at_b) = (place, value, stays * at_b);
        } else {
            (b, at_b, at_a) = (place, value, stays * at_a);
        }
        last_above = Some(above);
    }
    place
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{arching::Arching, design::Design, outline::Outline};

    fn demo() -> Surface {
        let design = Design::demo();
        let outline = Outline::new(&design.outline).unwrap();
        Surface::new(&Arching::new(&design.arching, &outline).unwrap(), &outline)
    }

    /// A ball of radius R whose middle lies c below the plane is cut at the height z in a circle of radius
    /// sqrt(R^2 - (z + c)^2).
    #[test]
    fn a_caps_contours_are_circles_of_the_closed_radius() {
        let (r, c, middle) = (200.0_f64, 180.0, 170.0);
        let ball = move |x: f64, y: f64| (r * r - x * x - (y - middle).powi(2)).max(0.0).sqrt() - c;
        for level in [12.0, 15.0, 18.0, 19.5, 19.99] {
            let side = |y: f64, _| Some((90.0, move |place: f64| ball(90.0 * place, y) - level));
            let radius = (r * r - (level + c) * (level + c)).sqrt();
            for symmetric in [true, false] {
                let points = ring(middle, [middle - 90.0, middle + 90.0], symmetric, |y| ball(0.0, y) - level, side);
                assert_eq!(points.len() as u32, 2 * STATIONS);
                for p in points {
                    assert!((p[0].hypot(p[1] - middle) - radius).abs() < 1e-6, "{level}: {p:?}");
                }
            }
        }
    }

    #[test]
    fn every_point_of_a_ring_has_its_height_on_the_surface() {
        let surface = demo();
        for height_mm in [3.3, 4.0, 7.0, 12.0, 15.0, 15.4] {
            let both = [true, false].map(|symmetric| surface.contour(height_mm, symmetric));
            assert_eq!(both[0], both[1], "mirrored and made");
            assert_eq!(both[0].len() as u32, 2 * STATIONS, "{height_mm}");
            for &p in &both[0] {
                let off = (surface.height_mm(p) - height_mm).abs();
                assert!(off < 1e-6, "{p:?} is {off} mm off {height_mm}");
            }
        }
    }

    #[test]
    fn there_is_no_ring_above_the_apex_nor_in_the_channel() {
        let surface = demo();
        for height_mm in [15.5, 20.0, 3.2, 1.0] {
            assert!(surface.contour(height_mm, false).is_empty(), "{height_mm}");
        }
    }
}
