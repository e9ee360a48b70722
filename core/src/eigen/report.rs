//! Residuals and orthogonality of the modes found, measured afresh from K and M.

use super::RESIDUAL_TOLERANCE;
use super::basis::Basis;
use super::dense::{dot, inner_products, symmetric_products};
use super::pencil::Checked;
use super::shift::measure;
use crate::ascending::ascending;
use crate::patience::{self, GivenUp};

/// A residual of so many rounding units of |K||x| + |λ||M||x| is all that a vector in double precision can have: storing x rounds every entry,
/// and the factor's own backward error is some tens of units.
const ROUNDING_UNITS: f64 = 200.0;

/// Modes with their measures.
pub(super) struct Report {
    pub(super) values: Vec<f64>,
    /// (mode, equation)
    pub(super) vectors: Vec<f64>,
    pub(super) residuals: Vec<f64>,
    pub(super) orthogonality: Vec<f64>,
    /// Whether every residual meets the tolerance or is rounding.
    pub(super) accurate: bool,
}

/// Scales `vectors` (mode, equation) to unit mass and measures them.
///
/// Values are Rayleigh quotients: their error is the square of the vector's and the rounding of xᵀKx, whatever the shift, while 1/θ - s
/// carries the rounding of the largest θ.
///
/// # Errors
/// [`GivenUp`] when nobody waits for it.
pub(super) fn report(pencil: &Checked, rigid: &Basis, vectors: Vec<f64>, shift: f64) -> Result<Report, GivenUp> {
    let Checked { mass, stiffness, .. } = pencil;
    let dof = rigid.dof;
    let mut vectors = vectors;
    let mut images = mass.multiply(&vectors);
    for (vector, image) in vectors.chunks_exact_mut(dof).zip(images.chunks_exact_mut(dof)) {
        let length = dot(vector, image).sqrt();
        vector.iter_mut().chain(image).for_each(|value| *value /= length);
    }
    patience::check()?;
    let forces = stiffness.multiply(&vectors);
    let quotients: Vec<f64> =
        vectors.chunks_exact(dof).zip(forces.chunks_exact(dof)).map(|(vector, force)| dot(vector, force)).collect();
    // Equal eigenvalues come in any order; rounding decides which is the lower.
    let order = ascending(&quotients);
    let values: Vec<f64> = order.iter().map(|&mode| quotients[mode]).collect();
    let ordered = |columns: Vec<f64>| -> Vec<f64> {
        if order.is_sorted() {
            return columns;
        }
        order.iter().flat_map(|&mode| columns[mode * dof..(mode + 1) * dof].iter().copied()).collect()
    };
    let [vectors, images, forces] = [vectors, images, forces].map(ordered);
    patience::check()?;
    let modes = || forces.chunks_exact(dof).zip(images.chunks_exact(dof)).zip(&values);
    let residuals: Vec<f64> = modes()
        .map(|((force, image), &value)| {
            let left = norm(force.iter().zip(image).map(|(force, image)| force - value * image));
            left / (measure(value, shift) * norm(image.iter().copied()))
        })
        .collect();
    let accurate = residuals.iter().zip(modes()).enumerate().all(|(mode, (&residual, ((_, image), &value)))| {
        residual <= RESIDUAL_TOLERANCE || {
            let magnitudes: Vec<f64> = vectors[mode * dof..(mode + 1) * dof].iter().map(|x| x.abs()).collect();
            let rounded = norm(stiffness.magnitudes().multiply(&magnitudes).into_iter())
                + value.abs() * norm(mass.magnitudes().multiply(&magnitudes).into_iter());
            let unit = f64::EPSILON * rounded / (measure(value, shift) * norm(image.iter().copied()));
            residual <= ROUNDING_UNITS * unit
        }
    });
    let orthogonality = orthogonality(&vectors, &images, rigid);
    Ok(Report { values, vectors, residuals, orthogonality, accurate })
}

/// (mode): largest departure of its row of [X Z]ᵀ M X from the identity.
fn orthogonality(vectors: &[f64], images: &[f64], rigid: &Basis) -> Vec<f64> {
    let dof = rigid.dof;
    let count = vectors.len() / dof;
    let among = symmetric_products(images, vectors, dof);
    let with_rigid = inner_products(&rigid.images, vectors, dof);
    (0..count)
        .map(|mode| {
            let own = &among[mode * count..(mode + 1) * count];
            let departures = own.iter().enumerate().map(|(other, part)| if other == mode { part - 1.0 } else { *part });
            let rigid_parts = &with_rigid[mode * rigid.size()..(mode + 1) * rigid.size()];
            departures.chain(rigid_parts.iter().copied()).fold(0.0, |largest: f64, part| largest.max(part.abs()))
        })
        .collect()
}

fn norm(values: impl Iterator<Item = f64>) -> f64 {
    values.map(|value| value * value).sum::<f64>().sqrt()
}
