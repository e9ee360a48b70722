//! A mass at one point.

use nalgebra::Matrix3;

use super::error::check_values;
use super::place::Place;
use super::{Bare, FittingError};
use crate::shell::{ElementMatrix, ShellModel};

/// A small body fixed to the shell, such as a bridge's foot or a mute; its own size is left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointMass {
    /// (xy) in plan, m.
    pub place_m: [f64; 2],
    /// kg.
    pub mass_kg: f64,
}

impl PointMass {
    /// Adds the mass to `model`; it doesn't count as the top's own.
    ///
    /// # Errors
    /// [`FittingError`] for a negative mass, or a place without wood.
    pub fn fit(&self, bare: &Bare, model: &mut ShellModel) -> Result<(), FittingError> {
        check_values(&[("the added mass (kg)", self.mass_kg)])?;
        let place = Place::find(bare.geometry, self.place_m, "the added mass")?;
        add_mass(bare, &place, self.mass_kg, model);
        Ok(())
    }
}

/// Mass `mass_kg` at `place`, following the mid-surface's linear displacement: m Nᵢ Nⱼ in every direction.
pub(super) fn add_mass(bare: &Bare, place: &Place, mass_kg: f64, model: &mut ShellModel) {
    let mut mass = ElementMatrix::zeros();
    for i in 0..3 {
        for j in 0..3 {
            let shared = Matrix3::from_diagonal_element(mass_kg * place.barycentric[i] * place.barycentric[j]);
            mass.fixed_view_mut::<3, 3>(6 * i, 6 * j).copy_from(&shared);
        }
    }
    model.add(bare.equations, &place.nodes, &ElementMatrix::zeros(), &mass);
}
