//! Moving interior nodes towards even triangles.

use super::size_field::SizeField;
use crate::plan::Point;

/// One round: every interior node (from `fixed` on) moves towards the mean of its triangles' middles, weighted so that
/// triangles keep the size the field asks for (Chen & Holst 2011, Efficient mesh optimization schemes based on optimal
/// Delaunay triangulations, CMAME 200, 967-984: the patch-centroid scheme, density 1/h^4 ... taken per area).
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
