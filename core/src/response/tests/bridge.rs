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

/// Feet held, the couple on the feet is that of a mass on a torsional spring (closed form), largest at the head's own frequency.
#[test]
fn a_rocking_head_on_a_rock_is_one_oscillator() {
    let basis = oscillators(&[1e7], &[0.01]);
    let feet = feet_of(&basis);
    let bridge = Bridge { feet_apart_m: 1.0, ..violin() }.rocking(3000.0).unwrap();
    let head = bridge.head.unwrap();
    let push = [Complex::from(1.0), Complex::default()];
    let couple_at = |hz: f64| {
        let FeetForces { outward_n: [bass, treble], .. } = bridge.forces(&feet, basis.resonators(), push, hz);
        (bass - treble) * 0.5
    };
    let (arm, lever) = (head.centre_height_m - head.waist_height_m, bridge.height_m - head.waist_height_m);
    let about_waist = head.inertia_kg_m2 + head.mass_kg * arm * arm;
    for hz in [100.0, 1500.0, 2990.0, 3000.0, 3300.0, 5500.0] {
        let ratio = (hz / 3000.0) * (hz / 3000.0);
        // What turns is held back by its inertia about the feet: H − (I_shared/I) (couple about the waist) of one resonator.
        let turn = Complex::from(lever / about_waist) / Complex::new(1.0 - ratio, head.loss_factor);
        let shared = head.inertia_kg_m2 + head.mass_kg * arm * head.centre_height_m;
        let exact = Complex::from(bridge.height_m) + turn * ratio * shared;
        let found = couple_at(hz);
        assert!((found - exact).norm() < 1e-3 * exact.norm(), "{hz} Hz: {found} against {exact}");
    }
    let rings = couple_at(3000.0).norm() / couple_at(100.0).norm();
    assert!(rings > 20.0, "{rings}");
}

/// The two halves as the two bodies that they are: kinetic energy from their own velocities, the shell from its own equation, all solved
/// at once without eliminating anything.
#[test]
fn a_rocking_bridge_moves_as_two_hinged_bodies_on_the_shell_do() {
    let frequencies: [f64; 2] = [700.0, 2600.0];
    let basis = oscillators(&frequencies, &[0.02, 0.02]);
    let feet = feet_of(&basis);
    // Feet at unlike places, so that the shell's outward motion turns it too.
    let feet = BridgeFeet { outward: [feet.outward[0].clone(), Port::combined(&[(0.4, &feet.outward[1])])], ..feet };
    let bridge = Bridge {
        feet_apart_m: 1.0,
        mass_kg: 0.4,
        inertia_kg_m2: 0.02,
        height_m: 0.3,
        centre_height_m: 0.13,
        ..violin()
    };
    let head = crate::response::RockingHead {
        waist_height_m: 0.12,
        mass_kg: 0.15,
        centre_height_m: 0.22,
        inertia_kg_m2: 0.003,
        alone_hz: 1500.0,
        loss_factor: 0.05,
    };
    let bridge = Bridge { head: Some(head), ..bridge };
    let force = [Complex::new(0.7, 0.1), Complex::new(-0.2, 0.4)];
    // The lower body is what the upper leaves of the whole.
    let lower_mass = bridge.mass_kg - head.mass_kg;
    let lower_centre = (bridge.mass_kg * bridge.centre_height_m - head.mass_kg * head.centre_height_m) / lower_mass;
    let about = |mass: f64, centre: f64| mass * (centre - bridge.centre_height_m).powi(2);
    let lower_inertia = bridge.inertia_kg_m2
        - head.inertia_kg_m2
        - about(head.mass_kg, head.centre_height_m)
        - about(lower_mass, lower_centre);
    assert!(lower_inertia > 0.0);
    // (body's sideways, turning, outwards) for each of u, θ, w, ψ.
    let lower = [[1.0, lower_centre, 0.0, 0.0], [0.0, 1.0, 0.0, 0.0], [0.0, 0.0, 1.0, 0.0]];
    let arm = head.centre_height_m - head.waist_height_m;
    let upper = [[1.0, head.centre_height_m, 0.0, arm], [0.0, 1.0, 0.0, 1.0], [0.0, 0.0, 1.0, 0.0]];
    let mass = |i: usize, j: usize| {
        let of =
            |moves: &[[f64; 4]; 3], parts: [f64; 3]| (0..3).map(|k| parts[k] * moves[k][i] * moves[k][j]).sum::<f64>();
        of(&lower, [lower_mass, lower_inertia, lower_mass])
            + of(&upper, [head.mass_kg, head.inertia_kg_m2, head.mass_kg])
    };
    let ports = [
        feet.sideways.clone(),
        Port::combined(&[(1.0, &feet.outward[0]), (-1.0, &feet.outward[1])]),
        Port::combined(&[(0.5, &feet.outward[0]), (0.5, &feet.outward[1])]),
    ];
    for hz in [300.0, 900.0, 1500.0, 2600.0, 4000.0] {
        let square = (TAU * hz).powi(2);
        // Unknowns: two modes, u, θ, w, ψ, and the three forces between bridge and shell.
        let mut equations = nalgebra::DMatrix::<Complex>::zeros(9, 9);
        let mut right = nalgebra::DVector::<Complex>::zeros(9);
        for (mode, own_hz) in frequencies.iter().enumerate() {
            let own = (TAU * own_hz).powi(2);
            equations[(mode, mode)] = Complex::new(own - square, 0.02 * own);
            for (at, port) in ports.iter().enumerate() {
                equations[(mode, 6 + at)] = Complex::from(-port.by_mode()[mode]);
                equations[(6 + at, mode)] = Complex::from(-port.by_mode()[mode]);
            }
        }
        for i in 0..4 {
            for j in 0..4 {
                equations[(2 + i, 2 + j)] = Complex::from(-square * mass(i, j));
            }
        }
        let spring = (TAU * head.alone_hz).powi(2) * mass(3, 3);
        equations[(5, 5)] += Complex::new(spring, head.loss_factor * spring);
        for at in 0..3 {
            equations[(2 + at, 6 + at)] += Complex::from(1.0);
            equations[(6 + at, 2 + at)] += Complex::from(1.0);
        }
        right[2] = force[0];
        right[3] = force[0] * bridge.height_m;
        right[4] = force[1];
        right[5] = force[0] * (bridge.height_m - head.waist_height_m);
        let solved = equations.lu().solve(&right).unwrap();
        let FeetForces { outward_n: [bass, treble], sideways_n } = bridge.forces(&feet, basis.resonators(), force, hz);
        let found = [sideways_n, (bass - treble) * 0.5, bass + treble];
        for at in 0..3 {
            let exact = solved[6 + at];
            assert!((found[at] - exact).norm() < 1e-9 * exact.norm().max(1e-3), "{hz} Hz: {} {exact}", found[at]);
        }
    }
}

#[test]
fn a_head_on_a_very_stiff_waist_is_a_stiff_bridge_and_a_waist_of_rubber_is_refused() {
    let basis = oscillators(&[500.0], &[0.02]);
    let (feet, stiff) = (feet_of(&basis), violin());
    let head = crate::response::RockingHead { alone_hz: 1e8, ..stiff.rocking(3000.0).unwrap().head.unwrap() };
    let force = [Complex::from(1.0), Complex::from(0.3)];
    let of = |bridge: Bridge| bridge.forces(&feet, basis.resonators(), force, 2000.0);
    let (one, other) = (of(Bridge { head: Some(head), ..stiff }), of(stiff));
    assert!((0..2).all(|foot| (one.outward_n[foot] - other.outward_n[foot]).norm() < 1e-6));
    let refused = stiff.rocking(100.0).unwrap_err().to_string();
    assert!(refused.contains("the bridge's own frequency in Hz is 100"), "{refused}");
}
