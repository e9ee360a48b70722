//! One oscillator, of which everything is known (Ewins 2000, Modal Testing, 2nd ed., ch. 2, structural damping; from memory).

use std::f64::consts::TAU;

use super::oscillators;
use crate::response::{Port, Sweep, decibels};

#[test]
fn one_oscillator_has_its_peak_its_width_and_its_skeleton() {
    let (f0, loss) = (440.0, 0.02);
    let basis = oscillators(&[f0], &[loss]);
    let port = Port::outward(&basis, [0.3, 0.6]).unwrap();
    let own = basis.resonators();
    let omega = TAU * f0;

    // Peak of the mobility of 1 kg: 1/(m ω0 η), real.
    let peak = own.mobility(&port, &port, f0);
    assert!((peak.re * omega * loss - 1.0).abs() < 1e-6 && peak.im.abs() < 1e-9 * peak.re, "{peak}");
    // Of the receptance: half the power where ω² = ω0²(1 ± η).
    let most = own.receptance(&port, &port, f0).norm_sqr();
    for side in [-1.0, 1.0] {
        let half = own.receptance(&port, &port, f0 * (1.0 + side * loss).sqrt()).norm_sqr();
        assert!((half / most - 0.5).abs() < 1e-9, "{}", half / most);
    }
    // Skeleton: a spring far below, ω/k; a mass far above, 1/(ωm).
    let (below, above) = (f0 / 300.0, f0 * 300.0);
    let spring = own.mobility(&port, &port, below).norm() / (TAU * below / (omega * omega));
    let mass = own.mobility(&port, &port, above).norm() * TAU * above;
    assert!((spring - 1.0).abs() < 1e-3 && (mass - 1.0).abs() < 1e-3, "{spring} {mass}");
}

#[test]
fn a_square_metre_that_moves_as_one_pumps_its_own_displacement() {
    let basis = oscillators(&[100.0], &[0.01]);
    let volume = Port::volume(&basis);
    assert!((volume.by_mode()[0] - 1.0).abs() < 1e-7);
}

#[test]
fn sweeps_have_both_ends_and_even_steps() {
    let sweep = Sweep::by_ratio(100.0, 6400.0, 7).unwrap();
    let hz = sweep.frequencies_hz();
    assert!((hz[1] / hz[0] - 2.0).abs() < 1e-12 && (hz[6] - 6400.0).abs() < 1e-9, "{hz:?}");
    assert_eq!(sweep.band(150.0, 900.0), &hz[1..4]);
    assert!((Sweep::even(0.5, 2.5, 3).unwrap().frequencies_hz()[1] - 1.5).abs() < 1e-12);
    for (from, to, points) in [(0.0, 10.0, 5), (10.0, 10.0, 5), (10.0, f64::NAN, 5), (1.0, 2.0, 1), (1.0, 2.0, 999_999)]
    {
        assert!(Sweep::by_ratio(from, to, points).is_err(), "{from} {to} {points}");
    }
    assert!((decibels(10.0, 1.0) - 20.0).abs() < 1e-12);
}
