//! Flat plates: isotropic and spruce, free and simply supported.

use anyhow::Result;

use super::{Row, Target};
use crate::reference;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    spruce_simply_supported()
}

/// The closed form of row P-ORTHO-SS (Leissa 1969, NASA SP-160, ch. 9) against its evaluation in row P-ORTHO-SS-A, so
/// that both lines of the reference mean the same plate. The evaluation has five digits, hence 0.001 %.
fn spruce_simply_supported() -> Result<Vec<Row>> {
    let evaluated = reference::row("plates", "P-ORTHO-SS-A")?;
    let half_waves = [(1, 1), (2, 1), (1, 2), (2, 2), (3, 1), (1, 3)];
    let row = |((along, across), value): (_, f64)| {
        let target = Target::from_reference(&evaluated, &format!("closed-form({along},{across})"), value, 0.001);
        Row::judge(&target, simply_supported_hz(along, across), 0)
    };
    Ok(half_waves.into_iter().zip(evaluated.numbers()?).map(row).collect())
}

/// Frequency of a simply supported 400 x 200 x 3 mm spruce plate with `along` half waves along the grain and `across`
/// half waves across it.
fn simply_supported_hz(along: u32, across: u32) -> f64 {
    let (length_m, width_m, thickness_m, density) = (0.4, 0.2, 0.003_f64, 448.0);
    let (e_l, nu_lr) = (11.88e9, 0.372);
    let (e_r, g_lr) = (0.078 * e_l, 0.064 * e_l);
    let nu_rl = nu_lr * e_r / e_l;
    let cube = thickness_m.powi(3) / 12.0;
    let d_l = e_l * cube / (1.0 - nu_lr * nu_rl);
    let d_r = e_r * cube / (1.0 - nu_lr * nu_rl);
    let (d_lr, d_66) = (nu_lr * d_r, g_lr * cube);
    let (m, n) = (f64::from(along) / length_m, f64::from(across) / width_m);
    let stiffness = d_l * m.powi(4) + 2.0 * (d_lr + 2.0 * d_66) * (m * n).powi(2) + d_r * n.powi(4);
    std::f64::consts::FRAC_PI_2 * (stiffness / (density * thickness_m)).sqrt()
}
