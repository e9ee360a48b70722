//! Turning stresses between frames.

use nalgebra::{Matrix3, Vector3, Vector6};

/// The wood's axes L, R, T as columns in the top's frame (x across, y along the grain, z outward).
///
/// `ring_angle_deg` turns R from the top's x towards z about the grain: 0 is quarter-cut, 90 slab-cut.
#[must_use]
pub fn wood_axes(ring_angle_deg: f64) -> Matrix3<f64> {
    let (sin, cos) = ring_angle_deg.to_radians().sin_cos();
    let l = Vector3::new(0.0, 1.0, 0.0);
    let r = Vector3::new(cos, 0.0, sin);
    Matrix3::from_columns(&[l, r, l.cross(&r)])
}

/// A unit stress 11 (i = j = 0), 12 (i = 0, j = 1) and so on of one orthonormal frame, seen in another.
///
/// `to_from_frame` has the new frame's axes as rows, written in the old one. Stress order (11, 22, 33, 23, 13, 12).
/// A column of Bond's stress matrix (Auld 1973, Acoustic Fields and Waves in Solids vol. 1, eq. 3.34; from memory).
#[must_use]
pub fn stress_in(to_from_frame: &Matrix3<f64>, i: usize, j: usize) -> Vector6<f64> {
    let (a, b) = (to_from_frame.column(i), to_from_frame.column(j));
    let share = if i == j { 0.5 } else { 1.0 };
    let part = |k: usize, l: usize| share * (a[k] * b[l] + a[l] * b[k]);
    Vector6::new(part(0, 0), part(1, 1), part(2, 2), part(1, 2), part(0, 2), part(0, 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::Rotation3;
    use proptest::prelude::*;

    proptest! {
        /// The definition σ' = A σ Aᵀ written out as tensors.
        #[test]
        fn agrees_with_the_tensor_product(
            angles in prop::array::uniform3(-3.0_f64..3.0),
            s in prop::array::uniform6(-1.0_f64..1.0),
        ) {
            let a = *Rotation3::from_euler_angles(angles[0], angles[1], angles[2]).matrix();
            let tensor = Matrix3::new(s[0], s[5], s[4], s[5], s[1], s[3], s[4], s[3], s[2]);
            let turned = a * tensor * a.transpose();
            const PAIRS: [(usize, usize); 6] = [(0, 0), (1, 1), (2, 2), (1, 2), (0, 2), (0, 1)];
            let voigt: Vector6<f64> = PAIRS.iter().zip(s).map(|(&(i, j), part)| stress_in(&a, i, j) * part).sum();
            let expected = [turned[(0, 0)], turned[(1, 1)], turned[(2, 2)], turned[(1, 2)], turned[(0, 2)], turned[(0, 1)]];
            for (got, want) in voigt.iter().zip(expected) {
                prop_assert!((got - want).abs() < 1e-13);
            }
        }
    }

    #[test]
    fn quarter_cut_wood_has_its_grain_along_y_and_rings_across_x() {
        let axes = wood_axes(0.0);
        assert_eq!(axes.column(0), Vector3::y());
        assert!((axes.column(1) - Vector3::x()).norm() < 1e-15);
        assert!((wood_axes(90.0).column(1) - Vector3::z()).norm() < 1e-15);
    }
}
