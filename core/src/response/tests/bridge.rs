//! The bridge: Newton's laws, and a bridge of known mass on a known spring.

use std::f64::consts::TAU;

use super::oscillators;
use crate::response::{Bridge, BridgeFeet, Complex, FeetForces, Port, unit_loads};
use crate::statics::PointLoad;

fn violin() -> Bridge {
    Bridge::of_stop(0.195)
}

#[test]
fn a_weightless_bridge_is_in_balance() {
    let bridge = violin();
    let force = [Complex::new(0.8, 0.3), Complex::new(-0.2, 0.5)];
    let FeetForces { outward_n: [bass, treble], sideways_n } = bridge.weightless_forces(force);
    assert!((sideways_n - force[0]).norm() < 1e-12 && (bass + treble - force[1]).norm() < 1e-12);
    // Couples about y at the middle between the feet: z Fx − x Fz.
    let half = 0.5 * bridge.feet_apart_m;
    let couple = (bass - treble) * half;
    assert!((couple - force[0] * bridge.height_m).norm() < 1e-12);
    // Pushed towards the treble side, the treble foot presses down.
    let FeetForces { outward_n, .. } = bridge.weightless_forces([Complex::from(1.0), Complex::default()]);
    assert!(outward_n[1].re < 0.0 && outward_n[0].re > 0.0);
}

fn feet_of(basis: &crate::response::ModalBasis) -> BridgeFeet {
    // A metre apart, on the corners of the square.
    let patches = [vec![(0_u32, 1.0)], vec![(1_u32, 1.0)]];
    BridgeFeet::on(basis, &patches).unwrap()
}

/// A bridge of 0.5 kg on a square of 1 kg and its spring: together they swing at f0/√1.5, and a force at the top meets (k − ω²(m + M)).
#[test]
fn a_heavy_bridge_adds_its_mass() {
    let f0 = 50.0;
    let basis = oscillators(&[f0], &[0.01]);
    let feet = feet_of(&basis);
    let bridge = Bridge { mass_kg: 0.5, feet_apart_m: 1.0, ..violin() };
    let push = [Complex::default(), Complex::from(1.0)];
    for hz in [10.0, f0 / 1.5_f64.sqrt(), f0, 200.0] {
        let forces = feet.loaded(&bridge.forces(&feet, basis.resonators(), push, hz));
        let moved = basis.resonators().motion(&forces, hz).displacement(&feet.outward[0]);
        let (own, square) = ((TAU * f0).powi(2), (TAU * hz).powi(2));
        let exact = Complex::from(1.0) / Complex::new(own - 1.5 * square, 0.01 * own);
        assert!((moved - exact).norm() < 1e-6 * exact.norm(), "{hz} Hz: {moved} against {exact}");
    }
}

#[test]
fn without_mass_both_ways_are_one() {
    let basis = oscillators(&[50.0], &[0.01]);
    let (feet, bridge) = (feet_of(&basis), violin().weightless());
    let force = [Complex::new(0.3, 0.4), Complex::new(1.0, -2.0)];
    let (coupled, led) = (bridge.forces(&feet, basis.resonators(), force, 77.0), bridge.weightless_forces(force));
    assert!((coupled.sideways_n - led.sideways_n).norm() < 1e-12);
    assert!((0..2).all(|foot| (coupled.outward_n[foot] - led.outward_n[foot]).norm() < 1e-9));
}

/// On ground that doesn't give way the bridge stands still, mass or no mass.
#[test]
fn on_a_rock_a_bridge_only_leads_the_force_on() {
    let basis = oscillators(&[1e6], &[0.01]);
    let (feet, bridge) = (feet_of(&basis), violin());
    let force = [Complex::from(1.0), Complex::from(0.5)];
    let (coupled, led) = (bridge.forces(&feet, basis.resonators(), force, 100.0), bridge.weightless_forces(force));
    assert!((0..2).all(|foot| (coupled.outward_n[foot] - led.outward_n[foot]).norm() < 1e-5));
}

#[test]
fn feet_bear_evenly_and_stand_on_the_wood() {
    let basis = oscillators(&[50.0], &[0.01]);
    let surface = basis.surface();
    let patch = surface.under_rectangle([0.4, 0.55], [0.3, 0.2]).unwrap();
    assert!((patch.iter().map(|(_, share)| share).sum::<f64>() - 1.0).abs() < 1e-12);
    let middle =
        |axis: usize| patch.iter().map(|&(node, share)| surface.places_m[node as usize][axis] * share).sum::<f64>();
    assert!((middle(0) - 0.4).abs() < 1e-12 && (middle(1) - 0.55).abs() < 1e-12);
    assert_eq!(surface.under_rectangle([0.95, 0.5], [0.3, 0.2]), None);
    let loads = unit_loads(&[patch.clone(), patch]);
    let sum = |loads: &[PointLoad], axis: usize| loads.iter().map(|load| load.force_n[axis]).sum::<f64>();
    assert!((sum(&loads[0], 2) - 1.0).abs() < 1e-12 && (sum(&loads[2], 0) - 1.0).abs() < 1e-12);
    assert!(Port::new(&basis, &loads[0]).is_ok());
}

#[test]
fn a_viola_has_a_larger_bridge_and_a_bad_one_is_refused() {
    let viola = Bridge::of_stop(0.225);
    assert!(viola.height_m > violin().height_m && viola.mass_kg > 1.4 * violin().mass_kg);
    assert!(violin().check().is_ok() && violin().weightless().check().is_ok());
    let bad = Bridge { feet_apart_m: 0.0, ..violin() };
    assert!(bad.check().unwrap_err().to_string().contains("the distance of its feet in m is 0"));
    assert!(Bridge { mass_kg: f64::NAN, ..violin() }.check().is_err());
}
