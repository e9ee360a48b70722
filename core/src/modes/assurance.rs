//! The modal assurance criterion: how far two modes have the same shape, whatever their sizes, signs and numbers.
//!
//! MAC(a, b) = |aᵀb|² / (aᵀa · bᵀb): one for the same shape, zero where one says nothing of the other. Source: R. J. Allemang 2003,
//! "The modal assurance criterion – twenty years of use and abuse", Sound and Vibration 37(8), equation 1; from memory.

use super::pair_off;

/// The floor below which two modes are no pair: more than half of one's mean square must be the other's shape. Of the modes of one top,
/// which are orthogonal, no two can hold more than half of the same shape (Bessel's inequality), so that above it a pair is the only
/// one there is; modes that mixed on the way and are neither are said to have no partner.
pub const LEAST_ASSURANCE: f64 = 0.5;

/// (mode of a, mode of b): aᵀb / √(aᵀa · bᵀb), from −1 for the same shape the other way round to 1. Its square is the modal assurance
/// criterion.
///
/// `a` and `b` are (mode, place), `places` numbers a mode at the same places; a mode that is zero everywhere is like none.
#[must_use]
pub fn shape_correlations(a: &[f32], b: &[f32], places: usize) -> Vec<f64> {
    let product = |a: &[f32], b: &[f32]| a.iter().zip(b).map(|(a, b)| f64::from(*a) * f64::from(*b)).sum::<f64>();
    let lengths = |of: &[f32]| of.chunks_exact(places).map(|mode| product(mode, mode).sqrt()).collect::<Vec<_>>();
    let (a_lengths, b_lengths) = (lengths(a), lengths(b));
    let mut correlations = Vec::with_capacity(a_lengths.len() * b_lengths.len());
    for (a, a_length) in a.chunks_exact(places).zip(&a_lengths) {
        for (b, b_length) in b.chunks_exact(places).zip(&b_lengths) {
            let lengths = a_length * b_length;
            correlations.push(if lengths > 0.0 { product(a, b) / lengths } else { 0.0 });
        }
    }
    correlations
}

/// (mode of a): the mode of b with its shape, by `correlations` (mode of a, mode of b) with `others` modes of b. The pair that is most
/// alike is taken first, each mode once at most, down to [`LEAST_ASSURANCE`].
#[must_use]
pub fn pairs_by_shape(correlations: &[f64], others: usize) -> Vec<Option<usize>> {
    let assurance: Vec<f64> = correlations.iter().map(|correlation| correlation * correlation).collect();
    pair_off(&assurance, others, LEAST_ASSURANCE)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLACES: usize = 64;

    /// Sines of whole half waves, which are orthogonal at evenly spaced places (discrete sine transform).
    fn sine(half_waves: usize, size: f32) -> Vec<f32> {
        let at = |place| std::f64::consts::PI * half_waves as f64 * (place as f64 + 1.0) / (PLACES as f64 + 1.0);
        (0..PLACES).map(|place| size * at(place).sin() as f32).collect()
    }

    fn assurance(a: &[f32], b: &[f32]) -> f64 {
        shape_correlations(a, b, PLACES)[0].powi(2)
    }

    #[test]
    fn a_shape_is_like_itself_whatever_its_size_and_sign() {
        for half_waves in 1..9 {
            let own = sine(half_waves, 1.0);
            for size in [1.0, -1.0, 1e-4, -250.0] {
                assert!((assurance(&own, &sine(half_waves, size)) - 1.0).abs() < 1e-6, "{half_waves} {size}");
            }
        }
    }

    #[test]
    fn orthogonal_shapes_are_not_alike() {
        for (a, b) in [(1, 2), (1, 3), (4, 9)] {
            assert!(assurance(&sine(a, 1.0), &sine(b, 7.0)) < 1e-10, "{a} {b}");
        }
    }

    /// cos²: of two orthogonal shapes of one size, a mixture at an angle is like the first by its cosine, squared.
    #[test]
    fn a_mixture_is_like_its_parts_by_the_angle() {
        for degrees in [10.0_f64, 30.0, 45.0, 80.0] {
            let (sin, cos) = degrees.to_radians().sin_cos();
            let mixed: Vec<f32> =
                sine(1, cos as f32).iter().zip(sine(2, sin as f32)).map(|(one, two)| one + two).collect();
            assert!((assurance(&mixed, &sine(1, 3.0)) - cos * cos).abs() < 1e-6, "{degrees}");
            assert!((assurance(&mixed, &sine(2, -3.0)) - sin * sin).abs() < 1e-6, "{degrees}");
        }
    }

    #[test]
    fn it_is_the_same_either_way_and_says_the_direction() {
        let a = [sine(1, 1.0), sine(2, 1.0), sine(5, 2.0)].concat();
        let b: Vec<f32> = a.iter().enumerate().map(|(at, value)| value + 0.3 * ((at % 7) as f32 - 3.0)).collect();
        let (ab, ba) = (shape_correlations(&a, &b, PLACES), shape_correlations(&b, &a, PLACES));
        for i in 0..3 {
            for k in 0..3 {
                assert!((ab[3 * i + k] - ba[3 * k + i]).abs() < 1e-12, "{i} {k}");
            }
        }
        assert!(shape_correlations(&sine(3, 1.0), &sine(3, -2.0), PLACES)[0] < -0.999);
    }

    #[test]
    fn rest_is_like_nothing() {
        assert_eq!(shape_correlations(&[0.0; PLACES], &sine(1, 1.0), PLACES), [0.0]);
        assert!(shape_correlations(&[], &sine(1, 1.0), PLACES).is_empty());
    }

    #[test]
    fn modes_that_trade_places_are_paired_by_shape() {
        let a = [sine(1, 1.0), sine(2, 1.0), sine(3, 1.0)].concat();
        let b = [sine(2, -1.0), sine(1, 5.0), sine(4, 1.0)].concat();
        assert_eq!(pairs_by_shape(&shape_correlations(&a, &b, PLACES), 3), [Some(1), Some(0), None]);
    }

    /// Half and half of two shapes is a partner of neither.
    #[test]
    fn what_is_half_like_each_of_two_has_no_partner() {
        let mixed: Vec<f32> = sine(1, 1.0).iter().zip(sine(2, 1.001)).map(|(one, two)| one + two).collect();
        let b = [sine(1, 1.0), sine(3, 1.0)].concat();
        assert_eq!(pairs_by_shape(&shape_correlations(&mixed, &b, PLACES), 2), [None]);
    }
}
