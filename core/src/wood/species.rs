//! Presets: clear-wood means at about 12 % moisture from the published handbook table.

use serde::{Deserialize, Serialize};

use super::constants::OrthotropicConstants;

/// The table itself; each row names its source.
const TABLE: &str = include_str!("species.csv");

/// A species whose clear-wood means are built in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Species {
    /// *Picea sitchensis*.
    SitkaSpruce,
    /// *Picea engelmannii*.
    EngelmannSpruce,
    /// *Thuja plicata*.
    WesternRedcedar,
}

impl Species {
    /// Every preset, in the table's order.
    pub const ALL: [Self; 3] = [Self::SitkaSpruce, Self::EngelmannSpruce, Self::WesternRedcedar];

    /// The species' row of the built-in table.
    #[must_use]
    pub fn record(self) -> SpeciesRecord {
        let row = TABLE.lines().nth(1 + self as usize).expect("the built-in species table has a row for every species");
        SpeciesRecord::parse(row)
    }
}

/// What the table says of one species.
#[derive(Debug, Clone, PartialEq)]
pub struct SpeciesRecord {
    /// Stable word for files.
    pub key: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// Density at about 12 % moisture, kg/m³.
    pub density_kg_m3: f64,
    /// The nine constants.
    pub constants: OrthotropicConstants,
    /// Where the figures come from.
    pub source: &'static str,
}

impl SpeciesRecord {
    fn parse(row: &'static str) -> Self {
        let mut fields = row.splitn(13, ',');
        let mut next = || fields.next().expect("the built-in species table has thirteen columns");
        let (key, name) = (next(), next());
        // By the reader that designs need anyway; the standard library's brings tables of 11 kB.
        let mut number =
            || serde_json::from_str::<f64>(next()).expect("the built-in species table holds plain numbers");
        let density_kg_m3 = number();
        let e_l_gpa = number();
        let constants = OrthotropicConstants {
            e_l_gpa,
            e_r_gpa: e_l_gpa * number(),
            e_t_gpa: e_l_gpa * number(),
            g_lr_gpa: e_l_gpa * number(),
            g_lt_gpa: e_l_gpa * number(),
            g_rt_gpa: e_l_gpa * number(),
            nu_lr: number(),
            nu_lt: number(),
            nu_rt: number(),
        };
        Self { key, name, density_kg_m3, constants, source: next().trim_matches('"') }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_species_has_its_own_admissible_row_with_a_source() {
        for species in Species::ALL {
            let record = species.record();
            let key = serde_json::to_string(&species).unwrap();
            assert_eq!(key, format!("\"{}\"", record.key));
            record.constants.check().unwrap();
            assert!(record.source.contains("Wood Handbook"));
        }
    }

    /// Wood Handbook FPL-GTR-190 (Kretschmann 2010), Tables 5-1 and 5-3a, from memory: `E_L` = 1.10 × 10.8 GPa,
    /// `E_R/E_L` 0.078, `G_RT/E_L` 0.003, specific gravity 0.40 at 12 % moisture.
    #[test]
    fn sitka_spruce_is_the_handbooks() {
        let record = Species::SitkaSpruce.record();
        assert!((record.constants.e_l_gpa - 1.10 * 10.8).abs() < 1e-12);
        assert!((record.constants.e_r_gpa / record.constants.e_l_gpa - 0.078).abs() < 1e-12);
        assert!((record.constants.g_rt_gpa / record.constants.e_l_gpa - 0.003).abs() < 1e-12);
        assert!((record.density_kg_m3 - 0.40 * 1120.0).abs() < 1e-9);
    }
}
