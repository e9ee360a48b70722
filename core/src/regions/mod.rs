//! Regions: what makers call the parts of a top, found from outline and sound holes.
//!
//! After this stage every bit of wood belongs to exactly one region. Straight *cuts* join the boundaries: they follow the
//! line between the upper eyes and that between the lower eyes, close the wings at their roots, and frame the narrows
//! beside the eyes. The faces that they leave of the wood are the regions. Sorting points by rules (above this line,
//! inside that one) was not taken: it gives no polygons to draw, and its areas need not add up.
//!
//! | region | from | to |
//! | --- | --- | --- |
//! | island | the upper narrows | the line between the lower eyes |
//! | upper wing | the line square to the stem by the upper eye's lower side | its point |
//! | lower wing | the line square to the stem by the lower eye's upper side | its point |
//! | upper narrows | upper eye | upper eye, a quarter turn of each |
//! | lower narrows | lower eye, a quarter turn | the nearest edge |
//! | flank | the hole | the edge, between the levels of the eyes |
//! | upper bout, lower bout | beyond the eyes | the ends |
//!
//! A hole without eyes has neither wings nor narrows and ends near its topmost and its lowest place. Where no pair of holes
//! parts an island from flanks, the wood between the bouts is the *middle bout*; without any hole the corners bound it.

mod cuts;
mod faces;
mod kind;
mod narrowest;
#[cfg(test)]
mod tests;

pub use kind::{RegionKind, Side};
pub use narrowest::Narrowest;

use crate::{
    outline::Outline,
    plan::{
        Point, polygon_contains,
        vector::{bounds, widened},
    },
    sound_holes::SoundHole,
};
use cuts::Cut;
use faces::Face;

/// How far the regions' polygons stray from outline and holes, mm: 0.02 % of the area of a wing.
const TOLERANCE_MM: f64 = 0.01;

/// One region.
#[derive(Clone, Debug, PartialEq)]
pub struct Region {
    /// Which.
    pub kind: RegionKind,
    /// Closed polygons in plan, mm: counter-clockwise ones enclose wood, clockwise ones holes in it.
    pub polygons: Vec<Vec<Point>>,
    /// Area in plan, mm2.
    pub area_mm2: f64,
    /// Where it is narrowest: of wings the root, of island, narrows and flanks the least distance between the boundaries
    /// on both sides. Bouts have none.
    pub narrowest: Option<Narrowest>,
}

impl Region {
    /// True inside; a point on a border may be judged either way.
    pub fn contains(&self, p: Point) -> bool {
        self.polygons.iter().filter(|polygon| polygon_contains(polygon, p)).count() % 2 == 1
    }
}

/// The slot between a wing's point and the stem.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Throat {
    /// The wing it belongs to.
    pub wing: RegionKind,
    /// Its width and ends.
    pub across: Narrowest,
}

/// All regions of a top.
#[derive(Clone, Debug, PartialEq)]
pub struct Regions {
    /// In the order of [`RegionKind`].
    pub regions: Vec<Region>,
    /// Bass before treble, upper before lower.
    pub throats: Vec<Throat>,
}

impl Regions {
    /// Finds the regions of a top. [`crate::inside::RegionWood`] says what they weigh.
    pub fn new(outline: &Outline, holes: &[SoundHole]) -> Regions {
        let (cuts, faces) = parted(outline, holes);
        let region = |face: &Face| Region {
            kind: face.kind,
            polygons: face.polygons(),
            area_mm2: face.area_mm2(),
            narrowest: narrowest::of_face(face, &cuts),
        };
        let mut regions: Vec<Region> = faces.iter().map(region).collect();
        regions.sort_by_key(|region| region.kind);
        Regions { regions, throats: throats(holes) }
    }

    /// The region that a point of the wood belongs to; a point on a boundary belongs to a region beside it. Points off the
    /// wood belong to the nearest region.
    ///
    /// None only where there are no regions.
    pub fn at(&self, p: Point) -> Option<&Region> {
        let inside = |region: &&Region| region.contains(p);
        let distance = |region: &Region| narrowest::to_polygons(p, &region.polygons);
        let nearest = || self.regions.iter().min_by(|a, b| distance(a).total_cmp(&distance(b)));
        self.regions.iter().find(inside).or_else(nearest)
    }

    /// One region.
    pub fn get(&self, kind: RegionKind) -> Option<&Region> {
        self.regions.iter().find(|region| region.kind == kind)
    }
}

/// A wing's border.
#[derive(Clone, Debug)]
pub(crate) struct Wing {
    pub(crate) kind: RegionKind,
    /// Closed, mm.
    pub(crate) polygon: Vec<Point>,
    /// The side of it where it is joined to the top; the wing lies to its left.
    pub(crate) root: [Point; 2],
    /// Lowest and highest x and y of its border's reach.
    reach: (Point, Point),
}

/// A point this near to a wing's border is on the wing: nodes and the middles of their edges lie on the hole's boundary, from
/// which the polygon strays, and no slot is as narrow as this (mm).
const ON_BORDER_MM: f64 = 0.15;

impl Wing {
    fn new(kind: RegionKind, polygon: Vec<Point>, root: [Point; 2]) -> Wing {
        let reach = widened(bounds(polygon.iter().copied()), ON_BORDER_MM);
        Wing { kind, polygon, root, reach }
    }

    /// True on the wing and on its border.
    pub(crate) fn covers(&self, p: Point) -> bool {
        let (low, high) = self.reach;
        (0..2).all(|k| p[k] >= low[k] && p[k] <= high[k])
            && (polygon_contains(&self.polygon, p)
                || narrowest::to_polygons(p, std::slice::from_ref(&self.polygon)) < ON_BORDER_MM)
    }
}

/// The wings of a top, which need no surface or thickness.
pub(crate) fn wings(outline: &Outline, holes: &[SoundHole]) -> Vec<Wing> {
    let (cuts, faces) = parted(outline, holes);
    let wing = |face: &Face| {
        let (RegionKind::UpperWing(_) | RegionKind::LowerWing(_)) = face.kind else { return None };
        let root = &cuts[face.rings[0].iter().find_map(|corner| corner.cut)?];
        let [start, end] = root.points();
        let root = if root.beside[0] == face.kind { [start, end] } else { [end, start] };
        Some(Wing::new(face.kind, face.polygons().swap_remove(0), root))
    };
    faces.iter().filter_map(wing).collect()
}

fn parted(outline: &Outline, holes: &[SoundHole]) -> (Vec<Cut>, Vec<Face>) {
    let boundaries: Vec<Vec<Point>> = std::iter::once(outline.boundary())
        .chain(holes.iter().map(SoundHole::boundary))
        .map(|boundary| boundary.polyline(TOLERANCE_MM))
        .collect();
    let cuts = cuts::all(outline, holes, &boundaries);
    let faces = faces::all(&boundaries, &cuts);
    (cuts, faces)
}

fn throats(holes: &[SoundHole]) -> Vec<Throat> {
    let mut throats = Vec::new();
    for hole in holes {
        let side = Side::of(hole);
        let Some([upper, lower]) = hole.eyes() else { continue };
        for (wing, eye) in [(RegionKind::UpperWing(side), upper), (RegionKind::LowerWing(side), lower)] {
            throats.push(Throat { wing, across: Narrowest::between(eye.throat) });
        }
    }
    throats
}
