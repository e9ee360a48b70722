//! Forced response: plates driven at a point, against closed forms.

use std::f64::consts::{PI, TAU};

use anyhow::Result;
use bombatura_core::response::{ModalBasis, Port};
use bombatura_core::statics::PointLoad;

use super::mesh::{Mesh, stands_at};
use super::shell::{Shell, isotropic};
use super::{Row, Target};

const SIDES_M: [f64; 2] = [0.5, 0.4];
const THICKNESS_M: f64 = 0.002;
const MODULUS_GPA: f64 = 10.0;
const RATIO: f64 = 0.3;
const DENSITY: f64 = 400.0;
const LOSS: f64 = 0.05;
const MM_PER_M: f64 = 1e3;

/// A simply supported plate driven at points.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mesh = Mesh::grid(60, 48, |a, b| [MM_PER_M * SIDES_M[0] * a, MM_PER_M * SIDES_M[1] * b, 0.0]);
    let supports = |a: f64, b: f64| {
        let (left_right, up_down) = (stands_at(a, 0.0) || stands_at(a, 1.0), stands_at(b, 0.0) || stands_at(b, 1.0));
        match (left_right, up_down) {
            (true, true) => "xyzabc",
            (true, false) => "xyzac",
            (false, true) => "xyzbc",
            (false, false) => "xyc",
        }
        .to_owned()
    };
    let shell = Shell {
        mesh: &mesh,
        thickness_mm: MM_PER_M * THICKNESS_M,
        material: isotropic(MODULUS_GPA, RATIO, DENSITY),
        supports: &supports,
    };
    let basis = shell.modal_basis(130, LOSS)?;
    let stiffness = MODULUS_GPA * 1e9 * THICKNESS_M.powi(3) / (12.0 * (1.0 - RATIO * RATIO));
    let mass = DENSITY * THICKNESS_M;
    let driven = |a: f64, b: f64| Port::new(&basis, &[PointLoad { node: mesh.at(a, b), force_n: [0.0, 0.0, 1.0] }]);
    let row = |id: &str, source: &str, value: f64, tolerance_pct: f64, got: f64| {
        let target =
            Target { id: id.into(), source: source.into(), source_kind: "memory".into(), value, tolerance_pct };
        Row::judge(&target, got, shell.nodes())
    };

    // The first peak in the middle: 4/(m″ab ω₁₁ η), ω₁₁ = π²√(D/m″)(1/a² + 1/b²); the other modes add two per mille there, so a per cent.
    let [a, b] = SIDES_M;
    let first = PI * PI * (stiffness / mass).sqrt() * (1.0 / (a * a) + 1.0 / (b * b));
    let middle = driven(0.5, 0.5)?;
    let peak = basis.resonators().mobility(&middle, &middle, first / TAU);
    // The mean over a band and over places away from the edges; thirty modes seen from twenty places leave some 4 % to chance.
    let endless = 1.0 / (8.0 * (stiffness * mass).sqrt());
    Ok(vec![
        row(
            "RESPONSE-PLATE-PEAK",
            "simply supported thin plate: conductance at its first resonance, Cremer, Heckl & Petersson, Structure-Borne Sound, 3rd ed.",
            4.0 / (mass * a * b * first * LOSS),
            1.0,
            peak.re,
        ),
        row(
            "RESPONSE-PLATE-ENDLESS",
            "point mobility of an endless plate, 1/(8 sqrt(D m)), as the mean of a finite one's: Cremer, Heckl & Petersson, \
             Structure-Borne Sound, 3rd ed.; Skudrzyk, J. Acoust. Soc. Am. 67 (1980) 1105",
            endless,
            5.0,
            mean_conductance(&basis, driven)?,
        ),
    ])
}

/// Mean conductance over 300 to 1 100 Hz and twenty places in the middle of the plate.
fn mean_conductance(
    basis: &ModalBasis,
    driven: impl Fn(f64, f64) -> Result<Port, bombatura_core::response::ResponseError>,
) -> Result<f64> {
    let band: Vec<f64> = (0..400).map(|step| 300.0 + 2.0 * f64::from(step)).collect();
    let places: Vec<[f64; 2]> = [0.3, 0.4, 0.45, 0.55, 0.65]
        .into_iter()
        .flat_map(|a| [1.0 / 3.0, 0.4375, 0.5, 0.625].map(|b| [a, b]))
        .collect();
    let mut sum = 0.0;
    for &[a, b] in &places {
        let port = driven(a, b)?;
        sum += basis.resonators().mobilities(&port, &port, &band).iter().map(|own| own.re).sum::<f64>();
    }
    Ok(sum / (band.len() * places.len()) as f64)
}
