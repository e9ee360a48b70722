//! The fluting that runs from the flank into a lower wing.
//!
//! A trough along the line square to the wing's root: deepest along its middle, level with the arching at the sides that the
//! root's ends give it. It begins half a root's width outside the wing and fades out towards its own end. Depth, slope and
//! bend are continuous on the wood.

use crate::{
    design::{EyesAndStem, SoundHoleChoice, SoundHoles},
    plan::{
        Point,
        vector::{cross, distance, dot, sub, unit},
    },
    regions::{RegionKind, Side, Wing},
};

/// How far outside the root the fluting begins, over the root's width.
const BEGINS: f64 = 0.75;
/// Over what part of the wing's length it fades out.
const FADES_OVER: f64 = 0.5;
/// How far the fluting runs where a design doesn't say.
const REACH: f64 = 0.8;

/// The fluting in one lower wing.
#[derive(Clone, Debug)]
pub(super) struct WingHollow {
    wing: Wing,
    depth_mm: f64,
    /// Unit vector along the root, and the root's middle.
    across: Point,
    middle: Point,
    half_width_mm: f64,
    /// From the root: where it begins (below zero), where it is as deep as it gets, where it begins to fade, where it ends.
    along_mm: [f64; 4],
}

/// Depth below the arching with its first and second derivatives.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Depth {
    pub(super) value: f64,
    pub(super) slope: Point,
    pub(super) bend: [f64; 3],
}

impl WingHollow {
    /// The flutings that a design asks for.
    pub(super) fn all<'a>(choices: &SoundHoles, wings: impl FnOnce() -> &'a [Wing]) -> Vec<WingHollow> {
        let wanted = |side: Side| {
            let choice = choices.on_side(side == Side::Treble);
            let SoundHoleChoice::EyesAndStem(measures) = choice else { return None };
            measures.lower_wing_hollow_mm.filter(|&depth_mm| depth_mm > 0.0).map(|depth_mm| (depth_mm, measures))
        };
        if [Side::Bass, Side::Treble].into_iter().all(|side| wanted(side).is_none()) {
            return Vec::new();
        }
        let hollow = |wing: &Wing| {
            let RegionKind::LowerWing(side) = wing.kind else { return None };
            let (depth_mm, measures) = wanted(side)?;
            Some(WingHollow::new(wing.clone(), depth_mm, measures))
        };
        wings().iter().filter_map(hollow).collect()
    }

    fn new(wing: Wing, depth_mm: f64, measures: &EyesAndStem) -> WingHollow {
        let [a, b] = wing.root;
        let across = unit(sub(b, a));
        let width = distance(a, b);
        let length = wing.polygon.iter().map(|&corner| cross(across, sub(corner, a))).fold(0.0, f64::max);
        let end = length * measures.lower_wing_hollow_reach.unwrap_or(REACH);
        let begin = -BEGINS * width;
        WingHollow {
            depth_mm,
            across,
            middle: [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])],
            half_width_mm: 0.5 * width,
            along_mm: [begin, 0.0, (end - FADES_OVER * length).max(0.0), end],
            wing,
        }
    }

    /// What is taken off the arching at a point of the wood.
    pub(super) fn at(&self, p: Point) -> Option<Depth> {
        let from = sub(p, self.middle);
        let (t, s) = (dot(self.across, from), cross(self.across, from));
        let [begin, full, fade, end] = self.along_mm;
        if t.abs() >= self.half_width_mm || s <= begin || s >= end || (s > 0.0 && !self.wing.covers(p)) {
            return None;
        }
        let [a, a_t, a_tt] = crosswise(t / self.half_width_mm);
        let (a_t, a_tt) = (a_t / self.half_width_mm, a_tt / self.half_width_mm.powi(2));
        let [b, b_s, b_ss] = if s < full {
            let length = full - begin;
            let [b, b_1, b_2] = rising((s - begin) / length);
            [b, b_1 / length, b_2 / length.powi(2)]
        } else if s > fade {
            let length = end - fade;
            let [b, b_1, b_2] = rising((end - s) / length);
            [b, -b_1 / length, b_2 / length.powi(2)]
        } else {
            [1.0, 0.0, 0.0]
        };
        let depth = self.depth_mm;
        // t and s turn into x and y: t along `across`, s along its left.
        let [c, n] = self.across;
        let (d_t, d_s) = (depth * a_t * b, depth * a * b_s);
        let (d_tt, d_ts, d_ss) = (depth * a_tt * b, depth * a_t * b_s, depth * a * b_ss);
        Some(Depth {
            value: depth * a * b,
            slope: [c * d_t - n * d_s, n * d_t + c * d_s],
            bend: [
                c * c * d_tt - 2.0 * c * n * d_ts + n * n * d_ss,
                c * n * (d_tt - d_ss) + (c * c - n * n) * d_ts,
                n * n * d_tt + 2.0 * c * n * d_ts + c * c * d_ss,
            ],
        })
    }
}

/// 1 in the middle, 0 with its first two derivatives at both sides, -1 and 1: (1 - t²)³ and its derivatives.
fn crosswise(t: f64) -> [f64; 3] {
    let rest = 1.0 - t * t;
    [rest.powi(3), -6.0 * t * rest * rest, rest * (30.0 * t * t - 6.0)]
}

/// From 0 at 0 to 1 at 1, level and unbent at both, with its derivatives.
fn rising(t: f64) -> [f64; 3] {
    [
        t.powi(3) * (10.0 - 15.0 * t + 6.0 * t * t),
        30.0 * (t * (1.0 - t)).powi(2),
        60.0 * t * (1.0 - t) * (1.0 - 2.0 * t),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{design::Design, regions::Regions, surface::OnSurface, top::Shape};

    const DEPTH_MM: f64 = 1.2;

    fn fluted(reach: Option<f64>) -> Shape {
        let mut design = Design::demo();
        for hole in [&mut design.sound_holes.bass, &mut design.sound_holes.treble] {
            let SoundHoleChoice::EyesAndStem(m) = hole else { panic!("the demonstration has f-holes") };
            (m.lower_wing_hollow_mm, m.lower_wing_hollow_reach) = (Some(DEPTH_MM), reach);
        }
        Shape::new(&design).unwrap()
    }

    /// Points of the wood, close together.
    fn wood(shape: &Shape) -> impl Iterator<Item = Point> {
        (0..60_000)
            .map(|i| {
                [(f64::from(i) * 0.618_034).fract() * 190.0 - 95.0, (f64::from(i) * 0.414_214).fract() * 80.0 + 110.0]
            })
            .filter(|&p| shape.outline.contains(p) && !shape.holes.iter().any(|hole| hole.contains(p)))
    }

    /// Off the lower wings, and off the flanks above their roots, the surface is the arching's.
    #[test]
    fn only_lower_wings_and_what_leads_to_them_are_hollowed() {
        let (plain, made) = (Shape::new(&Design::demo()).unwrap(), fluted(None));
        let regions = Regions::new(&made.outline, &made.holes);
        let mut deepest: f64 = 0.0;
        let mut hollowed = 0;
        for p in wood(&made) {
            let depth = plain.surface.height_mm(p) - made.surface.height_mm(p);
            let kind = regions.at(p).unwrap().kind;
            assert!((0.0..=DEPTH_MM + 1e-9).contains(&depth), "{depth} at {p:?}");
            if depth > 0.0 {
                assert!(matches!(kind, RegionKind::LowerWing(_) | RegionKind::Flank(_)), "{kind:?} at {p:?}");
                hollowed += 1;
            }
            if matches!(kind, RegionKind::LowerWing(_)) {
                deepest = deepest.max(depth);
            }
        }
        assert!(hollowed > 100 && deepest > 0.95 * DEPTH_MM, "{hollowed} points, {deepest} mm");
    }

    /// Slope and bend against differences of height and slope, and no jump: over 0.02 mm the height changes by no more than the
    /// steepest slope, 1.2 mm within 5 mm at 1.8 times as steep as straight, added to the arching's 0.5.
    #[test]
    fn slopes_are_those_of_the_heights_and_nothing_jumps() {
        let made = fluted(Some(1.3));
        let (h, at) = (1e-4, |x: f64, y: f64| made.surface.at([x, y]));
        let mut compared = 0;
        for [x, y] in wood(&made) {
            let hollow = made.surface.hollows.iter().any(|hollow| hollow.at([x, y]).is_some());
            let beside = [[x + 0.02, y], [x - 0.02, y], [x, y + 0.02], [x, y - 0.02]];
            if !hollow || made.holes.iter().any(|hole| beside.iter().any(|&p| hole.contains(p))) {
                continue;
            }
            let here = at(x, y);
            let differ = |p: OnSurface, q: OnSurface| (p.height_mm - q.height_mm) / (2.0 * h);
            assert!((differ(at(x + h, y), at(x - h, y)) - here.slope[0]).abs() < 1e-4);
            assert!((differ(at(x, y + h), at(x, y - h)) - here.slope[1]).abs() < 1e-4);
            let bend = (at(x, y + h).slope[0] - at(x, y - h).slope[0]) / (2.0 * h);
            assert!((bend - here.bend[1]).abs() < 1e-2, "{bend} {:?} at {x} {y}", here.bend);
            for p in beside {
                assert!((made.surface.height_mm(p) - here.height_mm).abs() < 0.02, "at {p:?}");
            }
            compared += 1;
        }
        assert!(compared > 100, "{compared}");
    }

    /// Half as deep half way: where the fluting is said to run out, nothing is left of it.
    #[test]
    fn it_runs_as_far_as_asked() {
        let plain = Shape::new(&Design::demo()).unwrap();
        let point = |shape: &Shape| shape.holes[1].eyes().unwrap()[1].throat[0];
        let depth = |shape: &Shape, p: Point| plain.surface.height_mm(p) - shape.surface.height_mm(p);
        let (short, long) = (fluted(Some(0.6)), fluted(Some(1.3)));
        assert_eq!(depth(&short, point(&short)), 0.0);
        let deepest = |shape: &Shape| wood(shape).map(|p| depth(shape, p)).fold(0.0, f64::max);
        assert!(deepest(&short) > 0.9 * DEPTH_MM && deepest(&long) > 0.9 * DEPTH_MM);
        let volume = |shape: &Shape| wood(shape).map(|p| depth(shape, p)).sum::<f64>();
        assert!(volume(&long) > 1.3 * volume(&short), "{} {}", volume(&long), volume(&short));
    }
}
