//! Sound pressure against closed forms: the piston in a baffle, the simple source.

use std::f64::consts::{PI, TAU};

use crate::response::radiation::{AIR_KG_M3, SOUND_M_S, level_db, rayleigh_pa, simple_source_pa};
use crate::response::{Complex, ComplexField, ModalArrays, ModalBasis, Port, ShellSurface};
use crate::shell::DOFS_PER_NODE;

/// A disc of radius `radius_m` in rings of nodes, whose one mode moves it outwards as a whole.
fn piston(radius_m: f64) -> ModalBasis {
    let (rings, round) = (60_u32, 120_u32);
    let mut places_m = Vec::new();
    let mut areas_m2 = Vec::new();
    for ring in 0..rings {
        let edges = [ring, ring + 1].map(|edge| radius_m * f64::from(edge) / f64::from(rings));
        let area = PI * (edges[1].powi(2) - edges[0].powi(2)) / f64::from(round);
        let middle = (0.5 * (edges[0].powi(2) + edges[1].powi(2))).sqrt();
        for step in 0..round {
            let angle = TAU * f64::from(step) / f64::from(round);
            places_m.push([middle * angle.cos(), middle * angle.sin(), 0.0]);
            areas_m2.push(area);
        }
    }
    let nodes = places_m.len();
    let surface = ShellSurface {
        places_m,
        normals: vec![[0.0, 0.0, 1.0]; nodes],
        areas_m2,
        thickness_m: vec![0.0; nodes],
        masses_kg: vec![0.0; nodes],
        triangles: vec![[0, 1, 2]],
    };
    let shape: [f32; DOFS_PER_NODE] = [0.0, 0.0, 1.0, 0.0, 0.0, 0.0];
    ModalBasis::new(ModalArrays {
        surface,
        rigid: 0,
        residual: 0,
        frequencies_hz: vec![100.0],
        loss_factors: vec![0.0],
        shapes: shape.repeat(nodes),
    })
    .unwrap()
}

/// One metre a second outwards.
fn moving(basis: &ModalBasis, hz: f64) -> ComplexField {
    let nodes = basis.node_count();
    let mut field = ComplexField { re: vec![0.0; nodes * DOFS_PER_NODE], im: vec![0.0; nodes * DOFS_PER_NODE] };
    field.im.iter_mut().skip(2).step_by(DOFS_PER_NODE).for_each(|own| *own = (-1.0 / (TAU * hz)) as f32);
    field
}

/// J1 by its integral, ∫ cos(θ − x sin θ) dθ/π from 0 to π.
fn j1(x: f64) -> f64 {
    let steps = 2000;
    let at = |step: i32| {
        let angle = PI * (f64::from(step) + 0.5) / f64::from(steps);
        (angle - x * angle.sin()).cos()
    };
    (0..steps).map(at).sum::<f64>() / f64::from(steps)
}

/// On the axis |p| = 2 ρ c v |sin(½k(√(r² + a²) − r))|; far off, ρckva²/(2r) · 2J1(ka sin θ)/(ka sin θ) (Kinsler, Frey, Coppens & Sanders
/// 2000, Fundamentals of Acoustics, 4th ed., ch. 7; from memory).
#[test]
fn a_piston_in_a_baffle_sounds_as_in_the_book() {
    let radius = 0.1;
    let basis = piston(radius);
    for ka in [0.5, 2.0, 6.0] {
        let wave_number = ka / radius;
        let hz = wave_number * SOUND_M_S / TAU;
        let field = moving(&basis, hz);
        for r in [0.1, 0.25, 1.0] {
            let got = rayleigh_pa(&basis, &field, hz, [0.0, 0.0, r]).norm();
            let path = (r * r + radius * radius).sqrt() - r;
            let exact = 2.0 * AIR_KG_M3 * SOUND_M_S * (0.5 * wave_number * path).sin().abs();
            // The midpoint rule over 60 rings.
            assert!((got / exact - 1.0).abs() < 1e-3, "ka {ka}, r {r}: {got} against {exact}");
        }
        let r = 50.0;
        let axis = AIR_KG_M3 * SOUND_M_S * wave_number * radius * radius / (2.0 * r);
        for angle in [0.2_f64, 0.5, 1.0, 1.4] {
            let got = rayleigh_pa(&basis, &field, hz, [r * angle.sin(), 0.0, r * angle.cos()]).norm();
            let across = ka * angle.sin();
            let exact = axis * (2.0 * j1(across) / across).abs();
            assert!((got - exact).abs() < 1e-3 * axis, "ka {ka}, {angle} rad: {got} against {exact}");
        }
    }
}

/// Small against the wavelength a piston in a baffle is a simple source whose half of the air is all there is: twice the pressure.
#[test]
fn a_small_piston_in_a_baffle_is_a_simple_source_twice_over() {
    let (radius, hz, r) = (0.01, 100.0, 1.0);
    let basis = piston(radius);
    let volume = Port::volume(&basis);
    assert!((volume.by_mode()[0] / (PI * radius * radius) - 1.0).abs() < 1e-6);
    let got = rayleigh_pa(&basis, &moving(&basis, hz), hz, [0.0, 0.0, r]);
    let simple = simple_source_pa(Complex::from(PI * radius * radius), hz, r);
    assert!((got / simple - Complex::from(2.0)).norm() < 1e-3, "{got} {simple}");
    // iωρU/(4πr) of a cubic centimetre a second.
    let exact = TAU * hz * AIR_KG_M3 * 1e-6 / (4.0 * PI);
    assert!((simple_source_pa(Complex::from(1e-6), hz, 1.0).norm() / exact - 1.0).abs() < 1e-12);
}

/// 20 µPa of root mean square is 0 dB; the level is a simple source's below and Rayleigh's above.
#[test]
fn the_level_goes_from_one_limit_to_the_other() {
    let radius = 0.1;
    let basis = piston(radius);
    let level = |peak_pa: f64| 20.0 * (peak_pa / 2.0_f64.sqrt() / 20e-6).log10();
    for (ka, own) in [(0.05, true), (20.0, false)] {
        let hz = ka / radius * SOUND_M_S / TAU;
        let field = moving(&basis, hz);
        let exact = if own {
            simple_source_pa(Complex::from(PI * radius * radius), hz, 1.0)
        } else {
            rayleigh_pa(&basis, &field, hz, [0.0, 0.0, 1.0])
        };
        let got = level_db(&basis, &field, hz, 1.0);
        // What is left of the step at either end: (ka)², or 1/(ka)², of six decibels' half.
        assert!((got - level(exact.norm())).abs() < 0.05, "ka {ka}: {got} against {}", level(exact.norm()));
    }
}
