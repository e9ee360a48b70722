//! The wood as the user gives it, and as the mechanics need it.

use serde::{Deserialize, Serialize};

use super::{Grain, OrthotropicConstants, Species, WoodError};

/// The wood of a design: a species' clear-wood means, or a measured piece.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WoodChoice {
    /// Whose ratios are used.
    pub species: Species,
    /// Angle of the annual rings from quarter-cut, degrees: 0 is quarter-cut, 90 slab-cut.
    pub ring_angle_deg: f64,
    /// Measurements of the piece in hand; without them the species' means are taken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<MeasuredWood>,
}

/// What a maker can measure on a wedge of wood.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredWood {
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Speed of sound along the grain, m/s.
    pub speed_along_m_s: f64,
    /// Speed of sound across the rings, m/s; without it the species' ratio is taken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub speed_across_m_s: Option<f64>,
}

/// Wood with every constant known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wood {
    /// The nine constants; admissible.
    pub constants: OrthotropicConstants,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Angle of the annual rings from quarter-cut, degrees.
    pub ring_angle_deg: f64,
}

impl Wood {
    /// What facets feel of it.
    #[must_use]
    pub fn grain(&self) -> Grain {
        Grain::new(&self.constants, self.ring_angle_deg)
    }
}

impl WoodChoice {
    /// The wood's constants.
    ///
    /// Measured wood: `E = ρ c²` along and across, everything else by the species' ratios: the moduli that involve the
    /// grain (`G_LR`, `G_LT`) scale with `E_L`, those across it (`E_T`, `G_RT`) with `E_R`.
    ///
    /// # Errors
    /// A measurement that isn't positive, or constants that no material can have.
    pub fn wood(&self) -> Result<Wood, WoodError> {
        let record = self.species.record();
        let (constants, density_kg_m3) = match &self.measured {
            None => (record.constants, record.density_kg_m3),
            Some(measured) => (measured.constants(&record.constants)?, measured.density_kg_m3),
        };
        constants.check()?;
        Ok(Wood { constants, density_kg_m3, ring_angle_deg: self.ring_angle_deg })
    }
}

impl MeasuredWood {
    fn constants(&self, species: &OrthotropicConstants) -> Result<OrthotropicConstants, WoodError> {
        const PA_PER_GPA: f64 = 1e9;
        for (name, value) in [
            ("the measured density", self.density_kg_m3),
            ("the measured speed along the grain", self.speed_along_m_s),
            ("the measured speed across the grain", self.speed_across_m_s.unwrap_or(1.0)),
        ] {
            if !(value.is_finite() && value > 0.0) {
                return Err(WoodError::NotPositive { name, value });
            }
        }
        let e_l_gpa = self.density_kg_m3 * self.speed_along_m_s.powi(2) / PA_PER_GPA;
        let along = e_l_gpa / species.e_l_gpa;
        let across = self
            .speed_across_m_s
            .map_or(along, |speed| self.density_kg_m3 * speed.powi(2) / PA_PER_GPA / species.e_r_gpa);
        Ok(OrthotropicConstants {
            e_l_gpa,
            e_r_gpa: species.e_r_gpa * across,
            e_t_gpa: species.e_t_gpa * across,
            g_lr_gpa: species.g_lr_gpa * along,
            g_lt_gpa: species.g_lt_gpa * along,
            g_rt_gpa: species.g_rt_gpa * across,
            ..*species
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_measurements_the_species_means_are_taken() {
        let choice = WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 3.0, measured: None };
        let wood = choice.wood().unwrap();
        assert_eq!(wood.constants, Species::SitkaSpruce.record().constants);
        assert!((wood.ring_angle_deg - 3.0).abs() < 1e-15);
    }

    /// `E = ρ c²` for a slender bar (any acoustics textbook): 400 kg/m³ at 5 500 m/s is 12.1 GPa.
    #[test]
    fn measured_wood_has_the_modulus_of_its_sound_speed() {
        let measured = MeasuredWood { density_kg_m3: 400.0, speed_along_m_s: 5500.0, speed_across_m_s: Some(1500.0) };
        let choice = WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 0.0, measured: Some(measured) };
        let wood = choice.wood().unwrap();
        assert!((wood.constants.e_l_gpa - 12.1).abs() < 1e-12);
        assert!((wood.constants.e_r_gpa - 0.9).abs() < 1e-12);
        let species = Species::SitkaSpruce.record().constants;
        let ratio = |c: &OrthotropicConstants| c.e_t_gpa / c.e_r_gpa;
        assert!((ratio(&wood.constants) - ratio(&species)).abs() < 1e-12);
    }

    #[test]
    fn a_measurement_that_cannot_be_is_named() {
        let measured = MeasuredWood { density_kg_m3: f64::NAN, speed_along_m_s: 5500.0, speed_across_m_s: None };
        let choice = WoodChoice { species: Species::SitkaSpruce, ring_angle_deg: 0.0, measured: Some(measured) };
        let message = choice.wood().unwrap_err().to_string();
        assert!(message.contains("the measured density is NaN"), "{message}");
    }
}
