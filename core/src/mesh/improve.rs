//! Mending the few sharp triangles that smoothing leaves.

use crate::plan::{
    Point,
    vector::{cross, direction, dot, sub},
};

/// Triangles sharper than this are worked on, degrees.
const SHARP_DEG: f64 = 30.0;
/// Directions tried, and step lengths over the shortest edge at the node.
const DIRECTIONS: u32 = 8;
const STEPS: [f64; 3] = [0.3, 0.12, 0.04];

/// Moves each interior node (from `fixed` on) of a sharp triangle to where the sharpest angle round it is widest, by a
/// pattern search of a few steps. Never makes the sharpest angle round a node sharper, so that no triangle turns over.
pub(super) fn sharp_triangles(points: &mut [Point], triangles: &[[u32; 3]], fixed: usize) {
    let mut around: Vec<Vec<[u32; 2]>> = vec![Vec::new(); points.len()];
    let mut work = vec![false; points.len()];
    for triangle in triangles {
        let sharp = sharpest_rad(triangle.map(|corner| points[corner as usize])) < SHARP_DEG.to_radians();
        for k in 0..3 {
            let node = triangle[k] as usize;
            around[node].push([triangle[(k + 1) % 3], triangle[(k + 2) % 3]]);
            work[node] |= sharp;
        }
    }
    for node in (fixed..points.len()).filter(|&node| work[node]) {
        let star = &around[node];
        let sharpest = |p: Point| {
            star.iter()
                .map(|others| sharpest_rad([p, points[others[0] as usize], points[others[1] as usize]]))
                .fold(f64::INFINITY, f64::min)
        };
        let mut best = (sharpest(points[node]), points[node]);
        let edge = star
            .iter()
            .map(|others| sub(points[others[0] as usize], points[node]))
            .map(|v| dot(v, v))
            .fold(f64::INFINITY, f64::min)
            .sqrt();
        for step in STEPS {
            let from = best.1;
            for k in 0..DIRECTIONS {
                let to = direction(std::f64::consts::TAU * f64::from(k) / f64::from(DIRECTIONS));
                let p = [from[0] + step * edge * to[0], from[1] + step * edge * to[1]];
                let angle = sharpest(p);
                if angle > best.0 {
                    best = (angle, p);
                }
            }
        }
        points[node] = best.1;
    }
}

/// Smallest angle of a counter-clockwise triangle, rad; negative when it is turned over.
fn sharpest_rad(p: [Point; 3]) -> f64 {
    (0..3)
        .map(|i| {
            let (u, v) = (sub(p[(i + 1) % 3], p[i]), sub(p[(i + 2) % 3], p[i]));
            cross(u, v).atan2(dot(u, v))
        })
        .fold(f64::INFINITY, f64::min)
}
