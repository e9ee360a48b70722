//! Contour lines: all points of one height.

use super::Surface;
use crate::{outline::Outline, plan::Point};

/// Distance between the lines of the lattice on which contours are looked for. A loop that fits between two lines is
/// missed; halving it takes four times as long.
const LATTICE_MM: f64 = 2.0;

/// One connected contour line.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour {
    /// Height above the plane of the ribs, mm.
    pub height_mm: f64,
    /// Points on the line, at most `sqrt(2)` lattice steps (2.8 mm) apart, each within 1e-9 mm of the height.
    pub points: Vec<Point>,
    /// True when the last point joins the first.
    pub closed: bool,
}

impl Surface {
    /// The contour lines at every whole multiple of `step_mm` above the plane of the ribs, inside the outline, lowest first.
    ///
    /// Cost: a height every 2 mm both ways, some 20 000 for a violin, and about ten for each point of a line.
    pub fn contours(&self, outline: &Outline, step_mm: f64) -> Vec<Contour> {
        let lattice = Lattice::new(outline, |p| self.height_mm(p));
        let (lowest, highest) = lattice.range();
        let first = (lowest / step_mm).ceil().max(1.0) as u32;
        let last = (highest / step_mm).floor().max(0.0) as u32;
        let levels = (first..=last).map(|i| f64::from(i) * step_mm);
        levels
            .flat_map(|height_mm| {
                let lines = lattice.lines(height_mm, |p| self.height_mm(p));
                lines.into_iter().flat_map(move |(points, closed)| clipped(outline, height_mm, points, closed))
            })
            .collect()
    }
}

/// Heights on a lattice that covers the outline, with a line on the centreline.
struct Lattice {
    corner: Point,
    columns: usize,
    rows: usize,
    /// (row, column)
    heights: Vec<f64>,
}

impl Lattice {
    fn new(outline: &Outline, height: impl Fn(Point) -> f64) -> Lattice {
        let (low, high) = outline.boundary().bounds_mm();
        let first = [(low[0] / LATTICE_MM).floor() - 1.0, (low[1] / LATTICE_MM).floor() - 1.0];
        let corner = first.map(|i| i * LATTICE_MM);
        let columns = ((high[0] / LATTICE_MM).ceil() - first[0]) as usize + 2;
        let rows = ((high[1] / LATTICE_MM).ceil() - first[1]) as usize + 2;
        let mut lattice = Lattice { corner, columns, rows, heights: Vec::new() };
        lattice.heights = (0..rows * columns).map(|node| height(lattice.place(node))).collect();
        lattice
    }

    fn place(&self, node: usize) -> Point {
        let (row, column) = (node / self.columns, node % self.columns);
        [self.corner[0] + column as f64 * LATTICE_MM, self.corner[1] + row as f64 * LATTICE_MM]
    }

    fn range(&self) -> (f64, f64) {
        self.heights.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), &h| (low.min(h), high.max(h)))
    }

    /// The lines of one height: marching over the cells, then chained from cell to cell.
    fn lines(&self, level: f64, height: impl Fn(Point) -> f64) -> Vec<(Vec<Point>, bool)> {
        // An edge is numbered 2 node for the one to the right of a node, 2 node + 1 for the one above it.
        let mut points: Vec<Option<Point>> = vec![None; 2 * self.heights.len()];
        let mut links: Vec<[Option<usize>; 2]> = vec![[None; 2]; points.len()];
        for node in 0..self.heights.len() {
            for (edge, next, inside) in [
                (2 * node, node + 1, (node + 1) % self.columns != 0),
                (2 * node + 1, node + self.columns, node / self.columns + 1 < self.rows),
            ] {
                if inside && (self.heights[node] < level) != (self.heights[next] < level) {
                    points[edge] = Some(crossing(self.place(node), self.place(next), level, &height));
                }
            }
        }
        for row in 0..self.rows - 1 {
            for column in 0..self.columns - 1 {
                let node = row * self.columns + column;
                // Counter-clockwise from the lower edge.
                let edges = [2 * node, 2 * (node + 1) + 1, 2 * (node + self.columns), 2 * node + 1];
                let crossed: Vec<usize> = edges.into_iter().filter(|&edge| points[edge].is_some()).collect();
                // A cell crossed on all four edges is a saddle: the mean says which corners belong together.
                let corners = [node, node + 1, node + self.columns + 1, node + self.columns];
                let mean = 0.25 * corners.iter().map(|&corner| self.heights[corner]).sum::<f64>();
                let first_apart = (mean < level) == (self.heights[node] < level);
                let pairs: &[[usize; 2]] = match (crossed.len(), first_apart) {
                    (2, _) => &[[0, 1]],
                    (4, true) => &[[0, 1], [2, 3]],
                    (4, false) => &[[3, 0], [1, 2]],
                    _ => &[],
                };
                for &[a, b] in pairs {
                    for (from, to) in [(crossed[a], crossed[b]), (crossed[b], crossed[a])] {
                        let free = usize::from(links[from][0].is_some());
                        links[from][free] = Some(to);
                    }
                }
            }
        }
        chained(&points, &links)
    }
}

/// Follows the links from every open end, then round every ring.
fn chained(points: &[Option<Point>], links: &[[Option<usize>; 2]]) -> Vec<(Vec<Point>, bool)> {
    let mut taken = vec![false; points.len()];
    let mut lines = Vec::new();
    for ends_only in [true, false] {
        for start in 0..points.len() {
            if taken[start] || points[start].is_none() || (ends_only && links[start][1].is_some()) {
                continue;
            }
            let mut line = Vec::new();
            let mut at = Some(start);
            while let Some(edge) = at {
                taken[edge] = true;
                line.extend(points[edge]);
                at = links[edge].into_iter().flatten().find(|&next| !taken[next]);
            }
            lines.push((line, !ends_only));
        }
    }
    lines
}

/// The point between a and b that has the level, by the Illinois rule (Dowell & Jarratt 1971, BIT 11, 168-174): false
/// position that halves a height standing twice on one side, some six evaluations.
fn crossing(a: Point, b: Point, level: f64, height: impl Fn(Point) -> f64) -> Point {
    let at = |t: f64| [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    let (mut low, mut high) = ((0.0, height(a) - level), (1.0, height(b) - level));
    let mut t = 0.0;
    for _ in 0..40 {
        t = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
        let off = height(at(t)) - level;
        if off.abs() < 1e-10 {
            break;
        }
        if (off < 0.0) == (high.1 < 0.0) {
            high = (t, off);
            low.1 *= 0.5;
        } else {
            // The two ends change roles, so that the last found always stands second.
            (low, high) = (high, (t, off));
        }
    }
    at(t)
}

/// Where between 0 and 1 a condition that holds at 0 ceases to hold.
fn halved(holds: impl Fn(f64) -> bool, halvings: u32) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..halvings {
        let middle = 0.5 * (low + high);
        if holds(middle) { low = middle } else { high = middle }
    }
    low
}

/// The parts of a line that lie inside the outline.
fn clipped(outline: &Outline, height_mm: f64, points: Vec<Point>, closed: bool) -> Vec<Contour> {
    let inside: Vec<bool> = points.iter().map(|&p| outline.contains(p)).collect();
    if inside.iter().all(|&is| is) {
        return vec![Contour { height_mm, points, closed }];
    }
    let count = points.len();
    // A ring is walked from just after a point outside, so that no part is cut in two.
    let first = if closed { inside.iter().position(|&is| !is).map_or(0, |at| at + 1) } else { 0 };
    let mut parts = Vec::new();
    let mut part: Vec<Point> = Vec::new();
    let edge = |from: Point, to: Point| {
        let at = |t: f64| [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
        at(halved(|t| outline.contains(at(t)), 30))
    };
    let steps = if closed { count } else { count - 1 };
    if inside[first % count] && !closed {
        part.push(points[first]);
    }
    if inside[first % count] && closed {
        part.push(edge(points[first % count], points[(first + count - 1) % count]));
        part.push(points[first % count]);
    }
    for step in 0..steps {
        let (from, to) = ((first + step) % count, (first + step + 1) % count);
        match (inside[from], inside[to]) {
            (true, true) => part.push(points[to]),
            (true, false) => {
                part.push(edge(points[from], points[to]));
                parts.push(std::mem::take(&mut part));
            }
            (false, true) => part = vec![edge(points[to], points[from]), points[to]],
            (false, false) => {}
        }
    }
    if part.len() > 1 {
        parts.push(part);
    }
    parts.into_iter().map(|points| Contour { height_mm, points, closed: false }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{arching::Arching, design::Design};

    fn demo() -> (Outline, Surface) {
        let design = Design::demo();
        let outline = Outline::new(&design.outline).unwrap();
        let arching = Arching::new(&design.arching, &outline).unwrap();
        let surface = Surface::new(&arching, &outline);
        (outline, surface)
    }

    /// A ball of radius R whose middle lies c below the plane is cut at the height z in a circle of radius
    /// sqrt(R^2 - (z + c)^2).
    #[test]
    fn a_caps_contours_are_circles_of_the_closed_radius() {
        let (outline, _) = demo();
        let (r, c, middle) = (200.0_f64, 180.0, [3.0, 170.0]);
        let ball = |p: Point| {
            let (x, y) = (p[0] - middle[0], p[1] - middle[1]);
            (r * r - x * x - y * y).max(0.0).sqrt() - c
        };
        let lattice = Lattice::new(&outline, ball);
        for level in [12.0, 15.0, 18.0, 19.5, 19.99] {
            let lines = lattice.lines(level, ball);
            assert_eq!(lines.len(), 1, "{level}");
            let (points, closed) = &lines[0];
            assert!(closed);
            let radius = (r * r - (level + c) * (level + c)).sqrt();
            for p in points {
                assert!(((p[0] - middle[0]).hypot(p[1] - middle[1]) - radius).abs() < 1e-6);
            }
        }
    }

    #[test]
    fn a_saddles_contours_do_not_cross() {
        let (outline, _) = demo();
        let saddle = |p: Point| (p[0] - 0.3) * (p[1] - 170.7) + 0.1;
        let lines = Lattice::new(&outline, saddle).lines(0.0, saddle);
        assert_eq!(lines.len(), 2);
        assert!(lines.iter().all(|(points, closed)| !closed && points.len() > 20));
    }

    #[test]
    fn every_whole_millimetre_of_the_top_has_its_line_inside_the_outline() {
        let (outline, surface) = demo();
        let contours = surface.contours(&outline, 1.0);
        let mut levels: Vec<f64> = contours.iter().map(|line| line.height_mm).collect();
        levels.dedup();
        assert_eq!(levels, (4..=15).map(f64::from).collect::<Vec<_>>());
        for line in &contours {
            assert!(line.points.len() > 1);
            for &p in &line.points {
                // Where a line is cut by the outline its end lies on a chord of two lattice steps at most.
                assert!((surface.height_mm(p) - line.height_mm).abs() < 1e-3, "{p:?}");
                assert!(outline.signed_distance_mm(p) > -1e-6);
            }
        }
        // Above the edge's height each line is one ring round the apex.
        for level in 6..=15 {
            let rings: Vec<_> = contours.iter().filter(|line| line.height_mm == f64::from(level)).collect();
            assert!(rings.len() == 1 && rings[0].closed, "{level}: {}", rings.len());
        }
    }
}
