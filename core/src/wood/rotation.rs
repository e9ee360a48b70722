//! Turning stresses between frames.

use nalgebra::{Matrix3, Matrix6, Vector3};

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

/// The matrix that turns stresses given in one orthonormal frame into another.
///
/// `to_from_frame` has the new frame's axes as rows, written in the old one. Stress order (11, 22, 33, 23, 13, 12).
/// Bond's stress matrix (Auld 1973, Acoustic Fields and Waves in Solids vol. 1, eq. 3.34; from memory).
#[must_use]
pub fn stress_rotation(to_from_frame: &Matrix3<f64>) -> Matrix6<f64> {
    const PAIRS: [(usize, usize); 6] = [(0, 0), (1, 1), (2, 2), (1, 2), (0, 2), (0, 1)];
    let a = to_from_frame;
    Matrix6::from_fn(|row, column| {
        let (i, j) = PAIRS[row];
        let (k, l) = PAIRS[column];
        if k == l { a[(i, k)] * a[(j, k)] } else { a[(i, k)] * a[(j, l)] + a[(i, l)] * a[(j, k)] }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::{Rotation3, Vector6};
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
            let voigt = stress_rotation(&a) * Vector6::from_row_slice(&s);
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
