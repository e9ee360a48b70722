//! The straight cuts between boundaries that part one region from the next.

use super::kind::{RegionKind, Side};
use crate::{
    outline::Outline,
    plan::{
        Point, PolylineCrossing, polyline_crossings, segments_cross,
        vector::{add, along, left_of, scale, sub, unit},
    },
    sound_holes::{Eye, SoundHole},
};

/// Half the width of the narrows over the eye's radius: a quarter turn of the eye faces the other side.
const NARROWS: f64 = std::f64::consts::FRAC_1_SQRT_2;
/// How far from the eye's middle a wing's root runs, over the eye's radius. At one it would only touch the eye.
const ROOT: f64 = 0.9;
/// Farther than any top is long, mm.
const BEYOND_MM: f64 = 2000.0;

/// The outline among the boundaries; hole i is boundary i + 1.
const OUTLINE: usize = 0;

/// A place on a boundary.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OnBoundary {
    pub(super) boundary: usize,
    pub(super) crossing: PolylineCrossing,
}

/// A straight cut through wood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cut {
    pub(super) ends: [OnBoundary; 2],
    /// The region to the left and to the right of it, seen from its start.
    pub(super) beside: [RegionKind; 2],
}

impl Cut {
    pub(super) fn points(&self) -> [Point; 2] {
        self.ends.map(|end| end.crossing.point)
    }
}

/// The cuts of a top. None crosses another: of two that would, the latter is left out, and with it the region it closes.
pub(super) fn all(outline: &Outline, holes: &[SoundHole], boundaries: &[Vec<Point>]) -> Vec<Cut> {
    let sketch = Sketch { holes, boundaries };
    let wanted = match holes {
        [bass, treble] => [sketch.across(bass, treble), sketch.beside(0, None), sketch.beside(1, None)].concat(),
        [only] => sketch.beside(0, Some(Side::of(only))),
        _ => sketch.between_corners(outline),
    };
    let mut cuts: Vec<Cut> = Vec::new();
    for cut in wanted.into_iter().flatten() {
        if cuts.iter().all(|other| !segments_cross(cut.points(), other.points())) {
            cuts.push(cut);
        }
    }
    cuts
}

struct Sketch<'a> {
    holes: &'a [SoundHole],
    boundaries: &'a [Vec<Point>],
}

impl Sketch<'_> {
    /// The cuts from hole to hole.
    fn across(&self, bass: &SoundHole, treble: &SoundHole) -> Vec<Option<Cut>> {
        let [[bass_upper, bass_lower], [treble_upper, treble_lower]] = [bass.ends_mm(), treble.ends_mm()];
        let mut cuts = Vec::new();
        if let (Some([b, _]), Some([t, _])) = (bass.eyes(), treble.eyes()) {
            let up = left_of(unit(sub(t.centre, b.centre)));
            let offset = |eye: Eye, sign: f64| along(eye.centre, up, sign * NARROWS * eye.radius_mm);
            for (sign, beside) in [
                (1.0, [RegionKind::UpperBout, RegionKind::UpperNarrows]),
                (-1.0, [RegionKind::UpperNarrows, RegionKind::Island]),
            ] {
                cuts.push(self.cut([1, 2], [offset(b, sign), offset(t, sign)], beside));
            }
        } else {
            let beside = [RegionKind::UpperBout, RegionKind::Island];
            cuts.push(self.cut([1, 2], [bass_upper, treble_upper], beside));
        }
        let beside = [RegionKind::Island, RegionKind::LowerBout];
        cuts.push(self.cut([1, 2], [bass_lower, treble_lower], beside));
        cuts
    }

    /// The cuts from hole `index` to the edge beside it, and its wings' roots; to the edge on the far side too when it is
    /// the `only` hole.
    fn beside(&self, index: usize, only: Option<Side>) -> Vec<Option<Cut>> {
        let hole = &self.holes[index];
        let side = Side::of(hole);
        let [upper_end, lower_end] = hole.ends_mm();
        let flank = RegionKind::Flank(side);
        let inner = if only.is_some() { RegionKind::MiddleBout } else { RegionKind::Island };
        let level = |from: Point, side: Side, above: RegionKind, below: RegionKind| {
            let outwards = [outwards(side), 0.0];
            self.cut([index + 1, OUTLINE], [from, along(from, outwards, BEYOND_MM)], sides(side, above, below))
        };
        let mut cuts = vec![level(upper_end, side, RegionKind::UpperBout, flank)];
        match hole.eyes() {
            Some([upper, lower]) => {
                cuts.extend(self.lower_narrows(index, lower, side));
                let upwards = hole.stem().map_or([0.0, 1.0], |stem| stem.upwards);
                let to_edge = scale(left_of(upwards), -outwards(side));
                let root = |eye: Eye, up: f64, towards: Point, beside: [RegionKind; 2]| {
                    let from = along(eye.centre, upwards, up * ROOT * eye.radius_mm);
                    self.cut([index + 1; 2], [from, along(from, towards, BEYOND_MM)], beside)
                };
                let beside = sides(side, RegionKind::UpperWing(side), inner);
                cuts.push(root(upper, -1.0, to_edge, beside));
                let beside = sides(side.other(), flank, RegionKind::LowerWing(side));
                cuts.push(root(lower, 1.0, scale(to_edge, -1.0), beside));
            }
            None => cuts.push(level(lower_end, side, flank, RegionKind::LowerBout)),
        }
        if only.is_some() {
            cuts.push(level(upper_end, side.other(), RegionKind::UpperBout, inner));
            cuts.push(level(lower_end, side.other(), inner, RegionKind::LowerBout));
        }
        cuts
    }

    /// The two cuts that frame the wood between a lower eye and the nearest edge.
    fn lower_narrows(&self, index: usize, eye: Eye, side: Side) -> Vec<Option<Cut>> {
        let nearest = super::narrowest::nearest_on(&self.boundaries[OUTLINE], eye.centre);
        let towards = unit(sub(nearest, eye.centre));
        let up = scale(left_of(towards), outwards(side));
        let (narrows, flank) = (RegionKind::LowerNarrows(side), RegionKind::Flank(side));
        [(1.0, flank, narrows), (-1.0, narrows, RegionKind::LowerBout)]
            .into_iter()
            .map(|(sign, above, below)| {
                let from = along(eye.centre, up, sign * NARROWS * eye.radius_mm);
                let ends = [from, along(from, towards, BEYOND_MM)];
                self.cut([index + 1, OUTLINE], ends, sides(side, above, below))
            })
            .collect()
    }

    /// The cuts of a top without holes: level, where its corners are.
    fn between_corners(&self, outline: &Outline) -> Vec<Option<Cut>> {
        let [lower, upper] = outline.corner_tips_mm();
        let level = |y: f64, beside: [RegionKind; 2]| {
            let middle = [0.0, y];
            let ends = [-1.0, 1.0].map(|sign| {
                let end = add(middle, [sign * BEYOND_MM, 0.0]);
                polyline_crossings(&self.boundaries[OUTLINE], middle, end).first().copied()
            });
            let [Some(start), Some(end)] = ends else { return None };
            Some(Cut { ends: [start, end].map(|crossing| OnBoundary { boundary: OUTLINE, crossing }), beside })
        };
        vec![
            level(upper[1], [RegionKind::UpperBout, RegionKind::MiddleBout]),
            level(lower[1], [RegionKind::MiddleBout, RegionKind::LowerBout]),
        ]
    }

    /// The cut along `line`, which starts in an opening: from where it leaves that hole to where it next meets boundary
    /// `joins[1]`. On the way to another boundary it may pass through its own hole again; it then begins behind it. None
    /// when another boundary comes between.
    fn cut(&self, joins: [usize; 2], line: [Point; 2], beside: [RegionKind; 2]) -> Option<Cut> {
        let met = |boundary: usize| polyline_crossings(&self.boundaries[boundary], line[0], line[1]);
        let own = met(joins[0]);
        let (start, end) = if joins[0] == joins[1] {
            (*own.first()?, *own.get(1)?)
        } else {
            let end = *met(joins[1]).first()?;
            (*own.iter().rfind(|crossing| crossing.share < end.share)?, end)
        };
        let between = |crossing: &PolylineCrossing| crossing.share > start.share && crossing.share < end.share;
        let clear = (0..self.boundaries.len()).all(|boundary| !met(boundary).iter().any(between));
        let on = |boundary: usize, crossing| OnBoundary { boundary, crossing };
        clear.then(|| Cut { ends: [on(joins[0], start), on(joins[1], end)], beside })
    }
}

/// Sign of x towards the edge of a side.
fn outwards(side: Side) -> f64 {
    match side {
        Side::Bass => -1.0,
        Side::Treble => 1.0,
    }
}

/// Left and right of a cut that runs towards the edge of `side`.
fn sides(side: Side, above: RegionKind, below: RegionKind) -> [RegionKind; 2] {
    match side {
        Side::Treble => [above, below],
        Side::Bass => [below, above],
    }
}
