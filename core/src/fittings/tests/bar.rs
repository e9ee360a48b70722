//! The bar on a strip against the composite beam.

use std::f64::consts::TAU;

use super::super::{Bar, BarWood, FittingError, Fittings, Profile};
use super::sheet::{Fitted, Sheet, isotropic, spruce};
use crate::shell::Supports;
use crate::statics::PointLoad;
use crate::wood::Wood;

const WIDTH: f64 = 12e-3;
const THICKNESS: f64 = 3e-3;

struct Case {
    name: &'static str,
    length_mm: f64,
    rows: usize,
    turn_deg: f64,
    disorder: f64,
    wood: Wood,
    bar_height: f64,
}

/// Strips along x, along the grain, and oblique; the bar's line inside elements, along mesh edges, and across a disordered
/// mesh. Long enough for shear and rotary inertia to cost less than half a per cent (Timoshenko's correction ½k²r²(1 + E/κG)).
fn cases() -> Vec<Case> {
    let case = |name, rows, turn_deg, disorder| Case {
        name,
        length_mm: 400.0,
        rows,
        turn_deg,
        disorder,
        wood: isotropic(10.0, 400.0),
        bar_height: 6e-3,
    };
    vec![
        case("inside elements", 3, 0.0, 0.0),
        case("along edges", 4, 0.0, 0.0),
        case("oblique, disordered", 3, 31.0, 0.25),
        Case { wood: spruce(), length_mm: 600.0, ..case("spruce along the grain", 3, 90.0, 0.25) },
    ]
}

impl Case {
    fn sheet(&self) -> Sheet {
        Sheet {
            columns: (self.length_mm / 5.0) as usize,
            rows: self.rows,
            length_mm: self.length_mm,
            width_mm: WIDTH * 1e3,
            thickness_mm: THICKNESS * 1e3,
            turn_deg: self.turn_deg,
            disorder: self.disorder,
            wood: self.wood,
        }
    }

    fn bar(&self) -> Bar {
        let sheet = self.sheet();
        let middle = 0.5 * sheet.width_mm;
        Bar {
            ends_m: [sheet.plan_m([0.0, middle]), sheet.plan_m([sheet.length_mm, middle])],
            width_m: 5.5e-3,
            profile: Profile::even(self.bar_height),
            wood: BarWood { modulus_pa: 12e9, shear_pa: 12e9 / 2.6, density_kg_m3: 430.0 },
        }
    }

    fn fitted(&self, supports: Supports) -> Fitted {
        self.sheet().with(&Fittings { bar: Some(self.bar()), ..Fittings::default() }, supports)
    }

    /// Bending stiffness (N·m²) about the common neutral axis and mass per length (kg/m): the transformed section (Timoshenko,
    /// Strength of Materials, part I, beams of two materials; from memory).
    fn composite(&self) -> (f64, f64) {
        let bar = self.bar();
        let (b, h) = (bar.width_m, self.bar_height);
        let plate = self.wood.constants.e_l_gpa * 1e9 * WIDTH * THICKNESS;
        let stick = bar.wood.modulus_pa * b * h;
        let apart = 0.5 * (THICKNESS + h);
        let own = plate * THICKNESS.powi(2) / 12.0 + stick * h.powi(2) / 12.0;
        let bending = own + plate * stick / (plate + stick) * apart.powi(2);
        (bending, self.wood.density_kg_m3 * WIDTH * THICKNESS + bar.wood.density_kg_m3 * b * h)
    }
}

/// f₁ = (4.7300)²/(2πL²) √(EI/ρA) of the free composite beam (Timoshenko, Vibration Problems in Engineering; from memory).
/// Tolerance: 1 % is what the bar has to reach; shear and rotary inertia, left out of the formula, take up to half of it.
#[test]
fn a_free_strip_with_a_bar_rings_as_the_composite_beam() {
    for case in cases() {
        let sheet = case.sheet();
        let modes = case.fitted(Supports::free(sheet.nodes())).modes(8);
        // The mode that looks most like a beam's first: bent across the strip's middle, along z.
        let likeness = |mode: usize| -> f64 {
            let node = |j: usize, i: usize| 6 * sheet.node(i, j) as usize + 2;
            let bent = |i: usize| (2.0 * i as f64 / sheet.columns as f64 - 1.0).powi(2) - 1.0 / 3.0;
            let cells = (0..=sheet.rows).flat_map(|j| (0..=sheet.columns).map(move |i| (i, j)));
            cells.map(|(i, j)| modes.shape(mode)[node(j, i)] * bent(i)).sum::<f64>().abs()
        };
        let first = (0..modes.count()).max_by(|a, b| likeness(*a).total_cmp(&likeness(*b))).unwrap();
        let (bending, mass) = case.composite();
        let exact = 4.730_04_f64.powi(2) / (TAU * (case.length_mm * 1e-3).powi(2)) * (bending / mass).sqrt();
        let error = modes.frequencies_hz[first] / exact - 1.0;
        assert!(error.abs() < 0.01, "{}: {:+.3} %", case.name, 100.0 * error);
        assert!(modes.rigid_hz.iter().all(|hz| *hz < 1e-2 * exact), "{:?}", modes.rigid_hz);
    }
}

/// w = P L³/(3 E I) at the tip of the clamped composite beam (Timoshenko, Strength of Materials; from memory).
#[test]
fn a_clamped_strip_with_a_bar_gives_way_as_the_composite_beam() {
    for case in cases() {
        let sheet = case.sheet();
        let root: Vec<u32> = (0..=sheet.rows).map(|j| sheet.node(0, j)).collect();
        let fitted = case.fitted(Supports::clamped(sheet.nodes(), &root));
        let tip: Vec<usize> = (0..=sheet.rows).map(|j| sheet.node(sheet.columns, j) as usize).collect();
        let share = 1.0 / tip.len() as f64;
        let loads: Vec<_> = tip.iter().map(|&node| PointLoad { node, force_n: [0.0, 0.0, share] }).collect();
        let moved = fitted.under(&loads);
        let got = tip.iter().map(|&node| moved[node][2]).sum::<f64>() * share;
        let exact = (case.length_mm * 1e-3).powi(3) / (3.0 * case.composite().0);
        assert!((got / exact - 1.0).abs() < 0.01, "{}: {:+.3} %", case.name, 100.0 * (got / exact - 1.0));
    }
}

/// 62.62 Hz: CalculiX 2.20 on 8 472 bricks (C3D20), as `cargo xtask verify` computes it on fewer. With the torsion constant of a rectangle by
/// itself the bar is 1.3 and 1.7 % too low.
#[test]
fn a_bar_stiffens_a_plates_twist_on_any_mesh() {
    for cell_mm in [8.0, 3.5] {
        let (length_mm, width_mm): (f64, f64) = (350.0, 200.0);
        let sheet = Sheet {
            columns: (length_mm / cell_mm) as usize,
            rows: (width_mm / cell_mm) as usize,
            length_mm,
            width_mm,
            thickness_mm: 3.0,
            turn_deg: 90.0,
            disorder: 0.25,
            wood: spruce(),
        };
        let bar = Bar {
            ends_m: [40.0, 310.0].map(|along| sheet.plan_m([along, 85.0])),
            width_m: 5.5e-3,
            profile: Profile { height_m: 10e-3, end_height_m: 3e-3, highest_share: 0.5 },
            wood: BarWood::of(&sheet.wood),
        };
        let free = Supports::free(sheet.nodes());
        let hz = sheet.with(&Fittings { bar: Some(bar), ..Fittings::default() }, free).modes(1).frequencies_hz[0];
        assert!((hz / 62.62 - 1.0).abs() < 0.01, "{hz} Hz on cells of {cell_mm} mm");
    }
}

/// The neutral axis of the composite lies between plate and bar, so the bar's mass and the strip's are all there, and no more.
#[test]
fn a_bar_weighs_what_its_wood_does() {
    let case = &cases()[2];
    let scooped = Profile { height_m: 6e-3, end_height_m: 2e-3, highest_share: 0.5 };
    let bar = Bar { profile: scooped, ..case.bar() };
    let bare = case.sheet().bare(Supports::free(case.sheet().nodes()));
    let fitted = case.sheet().with(&Fittings { bar: Some(bar), ..Fittings::default() }, bare.supports.clone());
    // The mean of a half cosine wave is half its rise.
    let exact = 430.0 * 5.5e-3 * 4e-3 * 0.4;
    let noted = fitted.model.total_mass_kg - bare.model.total_mass_kg;
    assert!((noted / exact - 1.0).abs() < 1e-3, "{noted} against {exact}");
    let moving = |fitted: &Fitted| {
        let pattern = &fitted.equations.pattern;
        let upwards = |equation: usize| equation % 6 == 2;
        let entries = (0..fitted.equations.count()).filter(|column| upwards(*column)).flat_map(|column| {
            (pattern.column_starts[column]..pattern.column_starts[column + 1]).map(move |at| (column, at))
        });
        entries
            .filter(|&(_, at)| upwards(pattern.row_indices[at] as usize))
            .map(|(column, at)| {
                fitted.model.mass[at] * if pattern.row_indices[at] as usize == column { 1.0 } else { 2.0 }
            })
            .sum::<f64>()
    };
    assert!(((moving(&fitted) - moving(&bare)) / noted - 1.0).abs() < 1e-9);
}

#[test]
fn a_bar_without_height_changes_nothing() {
    let case = Case { bar_height: 0.0, ..cases().remove(2) };
    let nodes = case.sheet().nodes();
    let (bare, fitted) = (case.sheet().bare(Supports::free(nodes)), case.fitted(Supports::free(nodes)));
    assert_eq!(bare.model, fitted.model);
}

#[test]
fn a_bar_that_leaves_the_wood_or_has_a_negative_height_is_refused() {
    let case = &cases()[0];
    let fitted = case.sheet().bare(Supports::free(case.sheet().nodes()));
    let bare = super::super::Bare {
        geometry: &fitted.geometry,
        wood: &case.wood,
        equations: &fitted.equations,
        options: Default::default(),
    };
    let refused = |bar: Bar| bar.fit(&bare, &mut fitted.model.clone()).unwrap_err();
    let mut beyond = case.bar();
    beyond.ends_m[1][0] += 0.02;
    assert!(matches!(refused(beyond), FittingError::OffTheWood { what: "the bar", x_mm, .. } if x_mm > 400.0));
    let hollow = Bar { profile: Profile::even(-1e-3), ..case.bar() };
    assert!(matches!(refused(hollow), FittingError::BadValue { .. }));
}
