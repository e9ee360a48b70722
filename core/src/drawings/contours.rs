//! Contour lines of the arch.
//!
//! The arch falls from the long arch to its boundary at every station, so a contour line is a ring: from the place where
//! the long arch has its height, up one side and down the other, and at each station one root. That takes a tenth of the
//! time of marching over a lattice, in which most points lie far from any line; a drawing must keep pace with a hand.

use std::f64::consts::PI;

use crate::{
    arching::Arching,
    plan::{Point, vector::mirrored},
};

/// Stations of a ring from its lower to its upper end, crowded there as on a circle: a point at least every 13 mm on a
/// violin, between which the smooth line strays by less than 0.1 mm.
const STATIONS: u32 = 42;
/// Halvings of a half length or a half width of at most 400 mm: 400 / 2^40 is far below what is drawn.
const HALVINGS: u32 = 40;
/// False position by Illinois's rule ends where the height, over the rise, is this near: some 1e-4 mm. It takes four to seven
/// steps on these curves; where a curve is no arch, twenty are enough of it.
const NEAR: f64 = 1e-5;
const STEPS: u32 = 20;

/// The closed ring of all points of the arch that are `height_mm` high, counter-clockwise from its lower end; empty at and
/// above the apex and at and below the channel. `symmetric` saves the second side's work.
pub(super) fn ring(arching: &Arching, height_mm: f64, symmetric: bool) -> Vec<Point> {
    let level = height_mm - arching.channel_height_mm();
    let [low, high] = arching.boundary().ends_mm();
    let middle = arching.apex_station_mm();
    if level <= 0.0 || arching.long_rise_mm(middle)[0] <= level {
        return Vec::new();
    }
    let end = |outer: f64| {
        let (mut inside, mut outside) = (middle, outer);
        for _ in 0..HALVINGS {
            let y = 0.5 * (inside + outside);
            if arching.long_rise_mm(y)[0] > level { inside = y } else { outside = y }
        }
        inside
    };
    let (from, to) = (end(low), end(high));
    let station = |i: u32| 0.5 * (from + to) - 0.5 * (to - from) * (PI * f64::from(i) / f64::from(STATIONS)).cos();
    let across = |y: f64, treble_side: bool| {
        let half = arching.boundary().half_width(y, treble_side)?;
        let rise = arching.long_rise_mm(y)[0];
        let place = place_at(|place| arching.cross_arch(y, place, treble_side).height - level / rise);
        Some([if treble_side { half.x_mm * place } else { -half.x_mm * place }, y])
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
    let mut place = 0.0;
    for _ in 0..STEPS {
        place = (a * at_b - b * at_a) / (at_b - at_a);
        let value = curve(place);
        if value.abs() < NEAR {
            break;
        }
        // The end that stays counts for half, so that it can't stay for long.
        if value > 0.0 {
            (a, at_a) = (place, value);
            at_b *= 0.5;
        } else {
            (b, at_b) = (place, value);
            at_a *= 0.5;
        }
    }
    place
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{design::Design, top::Shape};

    #[test]
    fn every_point_of_a_ring_has_its_height_on_the_surface() {
        let shape = Shape::new(&Design::demo()).unwrap();
        for height_mm in [3.3, 4.0, 7.0, 12.0, 15.0, 15.4] {
            let both = [true, false].map(|symmetric| ring(shape.surface.arching(), height_mm, symmetric));
            assert_eq!(both[0], both[1], "mirrored and made");
            assert_eq!(both[0].len() as u32, 2 * STATIONS, "{height_mm}");
            for &p in &both[0] {
                let off = (shape.surface.height_mm(p) - height_mm).abs();
                assert!(off < 1e-3, "{p:?} is {off} mm off {height_mm}");
            }
        }
    }

    #[test]
    fn there_is_no_ring_above_the_apex_nor_in_the_channel() {
        let shape = Shape::new(&Design::demo()).unwrap();
        for height_mm in [15.5, 20.0, 3.2, 1.0] {
            assert!(ring(shape.surface.arching(), height_mm, false).is_empty(), "{height_mm}");
        }
    }
}
