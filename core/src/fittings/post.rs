//! The post: a spring along z under one point of the inner face.

use nalgebra::Vector3;

use super::error::check_values;
use super::place::{Place, carried};
use super::point_mass::add_mass;
use super::{Bare, FittingError};
use crate::shell::{ElementMatrix, Row18, ShellModel, Tie};

/// A dowel standing upright between the top and a back that doesn't move.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Post {
    /// (xy) in plan, m.
    pub place_m: [f64; 2],
    /// Force per shortening, N/m: E A / L of the dowel.
    pub stiffness_n_per_m: f64,
    /// Its mass, kg.
    pub mass_kg: f64,
}

/// How much of a rod's mass moves with its end, the other end being still: as a spring it stretches linearly, as a strut it
/// leans linearly, and ∫ρ(s/L)² ds is a third either way (Rayleigh, Theory of Sound, vol. 1; from memory).
const MOVING_SHARE: f64 = 1.0 / 3.0;

impl Post {
    /// A round dowel of modulus `modulus_pa` along its length.
    #[must_use]
    pub fn dowel(place_m: [f64; 2], diameter_m: f64, length_m: f64, modulus_pa: f64, density_kg_m3: f64) -> Self {
        let area = std::f64::consts::FRAC_PI_4 * diameter_m.powi(2);
        let (stiffness_n_per_m, mass_kg) = (modulus_pa * area / length_m, density_kg_m3 * area * length_m);
        Self { place_m, stiffness_n_per_m, mass_kg }
    }

    /// Adds the post to `model`. It pushes and pulls, as a post under string load does in small vibration.
    ///
    /// # Errors
    /// [`FittingError`] for a negative value, or a place without wood.
    pub fn fit(&self, bare: &Bare, model: &mut ShellModel) -> Result<(), FittingError> {
        check_values(&[
            ("the post's stiffness (N/m)", self.stiffness_n_per_m),
            ("the post's mass (kg)", self.mass_kg),
        ])?;
        let place = Place::find(bare.geometry, self.place_m, "the post")?;
        let to_face = place.to_inner_face();
        let upward = carried(&to_face).row(2).into_owned();
        let mut felt = Row18::zeros();
        for (corner, share) in place.barycentric.iter().enumerate() {
            felt.fixed_view_mut::<1, 6>(0, 6 * corner).copy_from(&(upward * *share));
        }
        let stiffness = felt.transpose() * felt * self.stiffness_n_per_m;
        model.add(bare.equations, &place.nodes, &stiffness, &ElementMatrix::zeros());
        add_mass(bare, &place, MOVING_SHARE * self.mass_kg, model);
        if self.stiffness_n_per_m > 0.0 {
            model.ties.push(Tie { place_m: place.middle_m + to_face, axis: Vector3::z(), turning: false });
        }
        Ok(())
    }
}
