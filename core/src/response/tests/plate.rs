//! Plates as shells of their own modes, against plates as series and as waves.

use std::f64::consts::{PI, TAU};

use crate::eigen::Symbolic;
use crate::modes::{ModesRequest, solve_modes};
use crate::response::{Complex, ModalArrays, ModalBasis, Port, ShellSurface, complete_modes};
use crate::shell::{ElementOptions, Equations, ShellGeometry, ShellModel, Supports};
use crate::statics::{PointLoad, displacements, right_side};
use crate::wood::{OrthotropicConstants, Wood};

/// An isotropic plate on a regular grid, in the plane, `held` at its edges or free.
pub(super) struct Plate {
    pub(super) sides_m: [f64; 2],
    pub(super) thickness_m: f64,
    pub(super) cells: [u32; 2],
    pub(super) supported: bool,
}

const MODULUS_GPA: f64 = 10.0;
const RATIO: f64 = 0.3;
const DENSITY: f64 = 400.0;

pub(super) struct Solvable {
    pub(super) geometry: ShellGeometry,
    pub(super) supports: Supports,
    pub(super) equations: Equations,
    pub(super) model: ShellModel,
    pub(super) symbolic: Symbolic,
}

impl Plate {
    /// Bending stiffness, N·m, and mass per area, kg/m².
    fn stiffness_and_mass(&self) -> (f64, f64) {
        let stiffness = MODULUS_GPA * 1e9 * self.thickness_m.powi(3) / (12.0 * (1.0 - RATIO * RATIO));
        (stiffness, DENSITY * self.thickness_m)
    }

    /// The node nearest to a place given in shares of the sides.
    pub(super) fn node(&self, [a, b]: [f64; 2]) -> usize {
        let at = |share: f64, cells: u32| (share * f64::from(cells)).round() as usize;
        at(b, self.cells[1]) * (self.cells[0] as usize + 1) + at(a, self.cells[0])
    }

    pub(super) fn solvable(&self) -> Solvable {
        let [columns, rows] = self.cells;
        let at = |step: u32, axis: usize| f64::from(step) / f64::from(self.cells[axis]);
        let nodes: Vec<[f64; 3]> = (0..=rows)
            .flat_map(|j| (0..=columns).map(move |i| (i, j)))
            .map(|(i, j)| [1e3 * self.sides_m[0] * at(i, 0), 1e3 * self.sides_m[1] * at(j, 1), 0.0])
            .collect();
        // Diagonals turn from cell to cell, so that no direction is preferred.
        let triangles: Vec<[u32; 3]> = (0..rows * columns)
            .flat_map(|cell| {
                let (i, j) = (cell % columns, cell / columns);
                let [a, b] = [j * (columns + 1) + i, (j + 1) * (columns + 1) + i];
                if (i + j) % 2 == 0 { [[a, a + 1, b + 1], [a, b + 1, b]] } else { [[a, a + 1, b], [a + 1, b + 1, b]] }
            })
            .collect();
        let geometry =
            ShellGeometry::new(&nodes, None, &vec![1e3 * self.thickness_m; nodes.len()], &triangles).unwrap();
        let mut supports = Supports::free(nodes.len());
        for (node, held) in supports.held.iter_mut().enumerate() {
            let (i, j) = (node as u32 % (columns + 1), node as u32 / (columns + 1));
            if self.supported {
                // Simply supported in Kirchhoff's sense: no turning along the edge either.
                let (side, end) = (i == 0 || i == columns, j == 0 || j == rows);
                *held = [false, false, side || end, side, end, false].map(|own| own && (side || end));
                if node == 0 {
                    (held[0], held[1]) = (true, true);
                }
                if node as u32 == columns {
                    held[1] = true;
                }
            }
        }
        let equations = Equations::new(&triangles, &supports).unwrap();
        let constants = OrthotropicConstants::isotropic(MODULUS_GPA, RATIO);
        let wood = Wood { constants, density_kg_m3: DENSITY, ring_angle_deg: 0.0 };
        let model = ShellModel::assemble(&geometry, &wood, &equations, ElementOptions::default()).unwrap();
        let symbolic = Symbolic::new(&equations.pattern).unwrap();
        Solvable { geometry, supports, equations, model, symbolic }
    }
}

impl Solvable {
    /// `most` modes, completed for `loads`, all of loss factor `loss`.
    pub(super) fn basis(&self, most: usize, loss: f64, loads: &[Vec<PointLoad>]) -> ModalBasis {
        let Self { geometry, supports, equations, model, symbolic } = self;
        let request = ModesRequest { most, below_hz: None, prove: false };
        let modes = solve_modes(geometry, supports, equations, model, symbolic, &request).unwrap();
        let forces: Vec<f64> = loads.iter().flat_map(|load| right_side(equations, load)).collect();
        let complete = complete_modes(geometry, supports, equations, model, symbolic, &modes, &forces).unwrap();
        let loss_factors = vec![loss; complete.frequencies_hz.len()];
        let shapes = complete.shapes.iter().map(|value| *value as f32).collect();
        let surface = ShellSurface::new(geometry, model.node_masses_kg(equations));
        let arrays = ModalArrays {
            surface,
            rigid: complete.rigid,
            residual: complete.residual,
            frequencies_hz: complete.frequencies_hz,
            loss_factors,
            shapes,
        };
        ModalBasis::new(arrays).unwrap()
    }
}

fn outward(node: usize) -> Vec<PointLoad> {
    vec![PointLoad { node, force_n: [0.0, 0.0, 1.0] }]
}

/// Mobility of a simply supported thin plate between two places: Y = iω (4/(m″ab)) Σ sin sin sin sin/(ω_mn²(1 + iη) − ω²) (Cremer, Heckl &
/// Petersson 2005, Structure-Borne Sound, ch. 5; from memory), summed to 200 waves a side.
fn series(plate: &Plate, loss: f64, hz: f64, [p, q]: [[f64; 2]; 2]) -> Complex {
    let (stiffness, mass) = plate.stiffness_and_mass();
    let [a, b] = plate.sides_m;
    let omega = TAU * hz;
    let mut sum = Complex::default();
    for m in 1..=200 {
        for n in 1..=200 {
            let (m, n) = (f64::from(m), f64::from(n));
            let own = (stiffness / mass).sqrt() * ((PI * m / a).powi(2) + (PI * n / b).powi(2));
            let at = |[x, y]: [f64; 2]| (PI * m * x).sin() * (PI * n * y).sin();
            sum += Complex::from(at(p) * at(q)) / Complex::new(own * own - omega * omega, loss * own * own);
        }
    }
    sum * Complex::new(0.0, omega * 4.0 / (mass * a * b))
}

/// A thin plate: shear and rotary inertia, which the series leaves out, lower the eleventh mode by 0.1 %; the mesh raises it by as much.
const THIN: Plate = Plate { sides_m: [0.4, 0.3], thickness_m: 0.002, cells: [48, 36], supported: true };

#[test]
fn a_supported_plate_moves_as_its_series_says() {
    let loss = 0.05;
    let places = [[0.25, 1.0 / 3.0], [5.0 / 8.0, 0.5]];
    let [p, q] = places.map(|place| THIN.node(place));
    let basis = THIN.solvable().basis(60, loss, &[outward(p), outward(q)]);
    let ports = [p, q].map(|node| Port::new(&basis, &outward(node)).unwrap());
    for hz in (1..=20).map(|step| 25.0 * f64::from(step)) {
        for (i, j) in [(0, 0), (0, 1), (1, 1)] {
            let exact = series(&THIN, loss, hz, [places[i], places[j]]);
            let got = basis.resonators().mobility(&ports[i], &ports[j], hz);
            // At a peak of loss factor η an error δ of its frequency is worth 2δ/η: 5 % for the 0.13 % that the element has on such plates.
            let scale = series(&THIN, loss, hz, [places[i]; 2]).norm();
            assert!((got - exact).norm() < 0.05 * scale, "{hz} Hz, {i}{j}: {got} against {exact}");
        }
    }
}

/// The mean of the driving-point conductance over frequency and over places away from the edges is that of an endless plate, 1/(8√(D m″))
/// (Cremer, Heckl & Petersson 2005, ch. 5; Skudrzyk 1980, The mean-value method, J. Acoust. Soc. Am. 67, 1105; both from memory).
#[test]
fn a_large_plate_drives_on_the_mean_like_an_endless_one() {
    let places: Vec<[f64; 2]> =
        [0.31, 0.4, 0.47, 0.56, 0.63].into_iter().flat_map(|a| [0.34, 0.45, 0.52, 0.66].map(|b| [a, b])).collect();
    let plate = Plate { sides_m: [0.5, 0.4], thickness_m: 0.002, cells: [60, 48], supported: true };
    let basis = plate.solvable().basis(130, 0.05, &[]);
    let (stiffness, mass) = plate.stiffness_and_mass();
    let endless = 1.0 / (8.0 * (stiffness * mass).sqrt());
    let band: Vec<f64> = (0..400).map(|step| 300.0 + 2.0 * f64::from(step)).collect();
    assert!(basis.complete_to_hz() > 1.5 * band[399], "{}", basis.complete_to_hz());
    let mut sum = 0.0;
    for &place in &places {
        let port = Port::new(&basis, &outward(plate.node(place))).unwrap();
        let mobilities = basis.resonators().mobilities(&port, &port, &band);
        sum += mobilities.iter().map(|mobility| mobility.re).sum::<f64>() / (band.len() * places.len()) as f64;
    }
    // Twenty places see some thirty modes: what is left of chance.
    assert!((sum / endless - 1.0).abs() < 0.05, "{sum} against {endless}");
}

/// With residual vectors the answer to a load is the static one at low frequency, at every node; without them it is not.
#[test]
fn what_is_left_out_is_made_up_for() {
    let plate = Plate { sides_m: [0.2, 0.15], thickness_m: 0.003, cells: [16, 12], supported: true };
    let solvable = plate.solvable();
    let load = outward(plate.node([0.25, 0.5]));
    let Solvable { geometry, supports, equations, model, symbolic } = &solvable;
    let exact = displacements(geometry, supports, equations, model, symbolic, &load).unwrap();
    let largest = exact.iter().map(|moved| moved[2].abs()).fold(0.0, f64::max);
    let worst = |loads: &[Vec<PointLoad>]| {
        let basis = solvable.basis(6, 0.0, loads);
        let port = Port::new(&basis, &load).unwrap();
        let field = basis.resonators().motion(&[(Complex::from(1.0), &port)], 0.01).field(&basis);
        let off = |(node, exact): (usize, &[f64; 6])| (field.displacement(node)[2].re - exact[2]).abs();
        exact.iter().enumerate().map(off).fold(0.0, f64::max) / largest
    };
    // The shift over the seventh eigenvalue, of a part that is itself a tenth of the whole.
    assert!(worst(std::slice::from_ref(&load)) < 1e-5, "{}", worst(std::slice::from_ref(&load)));
    assert!(worst(&[]) > 0.02);
}
