//! Which triangle of a mesh lies over a point in plan.

use super::PlanMesh;
use crate::plan::{Point, vector::bounds};

/// Shares this little below zero still count as inside: rounding on an edge.
const ON_EDGE: f64 = 1e-9;

/// A triangle's nodes and their shares in a point, which add up to one.
pub type Shares = ([u32; 3], [f64; 3]);

/// What varies linearly over the triangle, at that point; `of` gives it at a node.
pub fn interpolated((nodes, shares): &Shares, of: impl Fn(u32) -> f64) -> f64 {
    nodes.iter().zip(shares).map(|(&node, share)| of(node) * share).sum()
}

/// Finds triangles by the square bins that they reach into.
#[derive(Debug)]
pub struct Locator<'a> {
    points: &'a [Point],
    triangles: &'a [[u32; 3]],
    low: Point,
    side: f64,
    columns: usize,
    rows: usize,
    /// (bin): triangles.
    bins: Vec<Vec<u32>>,
}

impl<'a> Locator<'a> {
    /// Sorts the triangles of `mesh` into bins of some two triangles each.
    #[must_use]
    pub fn new(mesh: &'a PlanMesh) -> Self {
        Self::over(&mesh.points_mm, &mesh.triangles)
    }

    /// The same for any `triangles` of `points`, of which none may lie over another.
    #[must_use]
    pub fn over(points: &'a [Point], triangles: &'a [[u32; 3]]) -> Self {
        let (low, high) = bounds(points.iter().copied());
        let (width, height) = (high[0] - low[0], high[1] - low[1]);
        let side = (width * height / triangles.len().max(1) as f64).sqrt().max(f64::MIN_POSITIVE);
        let (columns, rows) = ((width / side) as usize + 1, (height / side) as usize + 1);
        let mut located = Self { points, triangles, low, side, columns, rows, bins: vec![Vec::new(); columns * rows] };
        for (triangle, nodes) in triangles.iter().enumerate() {
            let (low, high) = bounds(nodes.map(|node| points[node as usize]));
            let ([left, bottom], [right, top]) = (located.bin(low), located.bin(high));
            for row in bottom..=top {
                for column in left..=right {
                    located.bins[row * columns + column].push(triangle as u32);
                }
            }
        }
        located
    }

    /// The triangle over `p`; none off the wood.
    #[must_use]
    pub fn at(&self, p: Point) -> Option<Shares> {
        let [column, row] = self.bin(p);
        let over = self.bins[row * self.columns + column].iter().map(|&triangle| self.shares(triangle, p));
        over.into_iter().find(|(_, shares)| shares.iter().all(|share| *share >= -ON_EDGE))
    }

    /// The same; off the wood, the node nearest to `p` alone. Cost there: a look at every node.
    #[must_use]
    pub fn nearest(&self, p: Point) -> Shares {
        self.at(p).unwrap_or_else(|| {
            let distance = |q: &Point| (q[0] - p[0]).powi(2) + (q[1] - p[1]).powi(2);
            let nodes = self.points.iter().enumerate();
            let nearest =
                nodes.min_by(|a, b| distance(a.1).total_cmp(&distance(b.1))).map_or(0, |(node, _)| node as u32);
            ([nearest; 3], [1.0, 0.0, 0.0])
        })
    }

    fn bin(&self, p: Point) -> [usize; 2] {
        let along =
            |axis: usize, bins: usize| (((p[axis] - self.low[axis]) / self.side).max(0.0) as usize).min(bins - 1);
        [along(0, self.columns), along(1, self.rows)]
    }

    fn shares(&self, triangle: u32, p: Point) -> Shares {
        let nodes = self.triangles[triangle as usize];
        let [a, b, c] = nodes.map(|node| self.points[node as usize]);
        let twice = |a: Point, b: Point, c: Point| (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
        let whole = twice(a, b, c);
        (nodes, [twice(p, b, c), twice(a, p, c), twice(a, b, p)].map(|part| part / whole))
    }
}

impl PlanMesh {
    /// Lowest and highest x and y of the nodes, mm.
    #[must_use]
    pub fn bounds_mm(&self) -> (Point, Point) {
        bounds(self.points_mm.iter().copied())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{design::Design, mesh::MeshSize, outline::Outline, sound_holes::SoundHole};

    /// The definition of barycentric coordinates: the shares of the corners give the point back.
    #[test]
    fn shares_give_the_point_back_and_there_are_none_off_the_wood() {
        let design = Design::demo();
        let outline = Outline::new(&design.outline).unwrap();
        let holes = SoundHole::both(&design.sound_holes, &outline).unwrap();
        let mesh = PlanMesh::new(&outline, &holes, MeshSize::Preview).unwrap();
        let locator = Locator::new(&mesh);
        let (low, high) = mesh.bounds_mm();
        let (mut on, mut off) = (0, 0);
        for i in 0..60 {
            for j in 0..90 {
                let p = [
                    low[0] + (high[0] - low[0]) * (f64::from(i) + 0.5) / 60.0,
                    low[1] + (high[1] - low[1]) * (f64::from(j) + 0.5) / 90.0,
                ];
                let by_hand = (0..mesh.triangles.len() as u32)
                    .any(|triangle| locator.shares(triangle, p).1.iter().all(|share| *share >= -ON_EDGE));
                assert_eq!(locator.at(p).is_some(), by_hand, "{p:?}");
                let place = locator.nearest(p);
                assert!((place.1.iter().sum::<f64>() - 1.0).abs() < 1e-9);
                if by_hand {
                    on += 1;
                    let back = [0, 1].map(|axis| interpolated(&place, |node| mesh.points_mm[node as usize][axis]));
                    assert!((back[0] - p[0]).hypot(back[1] - p[1]) < 1e-9);
                } else {
                    off += 1;
                }
            }
        }
        assert!(on > 2000 && off > 500, "{on} {off}");
    }
}
