//! Moving interior nodes towards even triangles.

use super::size_field::SizeField;
use crate::plan::Point;

/// One round: every interior node (from `fixed` on) moves to the mean of its triangles' middles, each weighted by its
/// area over h^4, h the edge length wanted there.
///
/// Source: Chen & Holst 2011, Efficient mesh optimization schemes based on optimal Delaunay triangulations, Comput.
/// Methods Appl. Mech. Eng. 200, 967-984, the patch-centroid scheme; in the plane a density of h^-4 leads to edges
/// proportional to h (Du & Wang 2003, Int. J. Numer. Meth. Eng. 56, 1355-1373).
pub(super) fn round(points: &mut [Point], triangles: &[[u32; 3]], fixed: usize, field: &SizeField) {
    let mut sums = vec![[0.0; 3]; points.len()];
    for triangle in triangles {
        let [a, b, c] = triangle.map(|corner| points[corner as usize]);
        let middle = [(a[0] + b[0] + c[0]) / 3.0, (a[1] + b[1] + c[1]) / 3.0];
        let area = 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
        let h = field.at(middle);
        let weight = area / (h * h * h * h);
        for &corner in triangle {
            let sum = &mut sums[corner as usize];
            sum[0] += weight * middle[0];
            sum[1] += weight * middle[1];
            sum[2] += weight;
        }
    }
    for (p, sum) in points.iter_mut().zip(&sums).skip(fixed) {
        if sum[2] > 0.0 {
            *p = [sum[0] / sum[2], sum[1] / sum[2]];
        }
    }
}
