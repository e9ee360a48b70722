//! The greatest stress along an edge, over a length.

use super::EdgeStress;

/// Where sides meet at more than this, a corner begins: a mean doesn't go round it, degrees.
const CORNER_DEG: f64 = 40.0;

/// The greatest mean of the stresses along a closed edge over `over_mm` on one face, MPa, and where that begins; none on an edge that is
/// shorter than that between any corners.
///
/// Over no length at all a sharp inner corner's stress has no limit, and what a mesh gives for it grows as the mesh gets finer.
#[must_use]
pub fn greatest_stress(sides: &[EdgeStress], over_mm: f64) -> Option<(f64, [f64; 3])> {
    let from = |start: usize| {
        let (mut length, mut sums, mut last) = (0.0, [0.0; 2], sides[start]);
        for side in sides.iter().cycle().skip(start).take(sides.len()) {
            if (side.to_grain_deg - last.to_grain_deg).abs() > CORNER_DEG || length >= over_mm {
                break;
            }
            // Of the last side only what is missing, so that meshes of any size give the mean over the same length.
            let own = side.length_mm.min(over_mm - length);
            length += side.length_mm;
            (0..2).for_each(|face| sums[face] += own * side.faces_mpa[face]);
            last = *side;
        }
        (length >= over_mm).then(|| (sums[0].abs().max(sums[1].abs()) / over_mm, sides[start].at_mm))
    };
    (0..sides.len()).filter_map(from).max_by(|a, b| a.0.total_cmp(&b.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn side(faces_mpa: [f64; 2], to_grain_deg: f64, x: f64) -> EdgeStress {
        EdgeStress { at_mm: [x, 0.0, 0.0], length_mm: 1.0, faces_mpa, to_grain_deg }
    }

    /// A mean over two sides, on the face that has more, and none round a corner.
    #[test]
    fn the_greatest_mean_stays_on_one_side_of_a_corner() {
        let sides = [
            side([1.0, 0.0], 0.0, 0.0),
            side([3.0, -6.0], 0.0, 1.0),
            side([2.0, -4.0], 0.0, 2.0),
            side([90.0, 0.0], 90.0, 3.0),
        ];
        assert_eq!(greatest_stress(&sides, 2.0), Some((5.0, [1.0, 0.0, 0.0])));
        assert_eq!(greatest_stress(&sides, 1.5).unwrap().0, (6.0 + 0.5 * 4.0) / 1.5);
        assert_eq!(greatest_stress(&sides, 9.0), None);
    }
}
