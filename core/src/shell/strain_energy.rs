//! Where in the wood a shape stores its strain energy.

use super::element::{ElementOptions, element};
use super::energy::{of_element, quadratic};
use super::geometry::ShellGeometry;
use crate::wood::Wood;

/// Strain energy of one shape over a shell.
#[derive(Debug, Clone, PartialEq)]
pub struct StrainEnergy {
    /// (node): energy per volume of wood, J/m³ where displacements are in m: the mean over the elements that meet there, each by
    /// its volume, so that density times volume adds up to the whole.
    pub density_j_m3: Vec<f64>,
    /// (node): a third of the volume of each element that meets there, m³.
    pub volume_m3: Vec<f64>,
}

impl StrainEnergy {
    /// Of `shape` (node, dof) in a bare shell of `wood`, whose constants must be admissible.
    ///
    /// Cost: one element's stiffness for each triangle.
    #[must_use]
    pub fn new(geometry: &ShellGeometry, wood: &Wood, options: ElementOptions, shape: &[f64]) -> Self {
        let zeros = || vec![0.0; geometry.node_count()];
        let (mut energy_j, mut volume_m3) = (zeros(), zeros());
        let grain = wood.grain();
        for (triangle, nodes) in geometry.triangles.iter().enumerate() {
            let patch = geometry.patch(triangle);
            let part = element(&patch, &grain, options);
            let energy = 0.5 * quadratic(&part.stiffness, &of_element(shape, nodes));
            let volume = part.area * patch.mean_thickness();
            for &node in nodes {
                energy_j[node as usize] += energy / 3.0;
                volume_m3[node as usize] += volume / 3.0;
            }
        }
        let density_j_m3 = energy_j.iter().zip(&volume_m3).map(|(energy, volume)| energy / volume).collect();
        Self { density_j_m3, volume_m3 }
    }

    /// The whole energy, J.
    #[must_use]
    pub fn total_j(&self) -> f64 {
        self.density_j_m3.iter().zip(&self.volume_m3).map(|(density, volume)| density * volume).sum()
    }

    /// (node): density over the mean of the whole shell; zeros for a shape that strains nothing.
    #[must_use]
    pub fn over_mean(&self) -> Vec<f64> {
        let mean_j_m3 = self.total_j() / self.volume_m3.iter().sum::<f64>();
        let over = |density: &f64| if mean_j_m3 > 0.0 { density / mean_j_m3 } else { 0.0 };
        self.density_j_m3.iter().map(over).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::energy::tests::{bent, sheet, spruce};
    use super::*;

    fn energy(shape: &[f64]) -> StrainEnergy {
        StrainEnergy::new(&sheet(), &spruce(), ElementOptions::default(), shape)
    }

    /// Pure twist stores 4 G_LR t³/12 κ²/2 over each area, t times it over each volume (any plate theory), everywhere alike.
    #[test]
    fn a_twisted_sheet_works_alike_everywhere() {
        let twisted = energy(&bent(&sheet(), [0.0, 0.0, 1.0]));
        let exact_j_m3 = 2.0 * spruce().constants.g_lr_gpa * 1e9 * 3e-3_f64.powi(2) / 12.0;
        for (density, over_mean) in twisted.density_j_m3.iter().zip(twisted.over_mean()) {
            assert!((density / exact_j_m3 - 1.0).abs() < 1e-9, "{density} against {exact_j_m3}");
            assert!((over_mean - 1.0).abs() < 1e-9);
        }
        assert!((twisted.volume_m3.iter().sum::<f64>() / (20e-3 * 16e-3 * 3e-3) - 1.0).abs() < 1e-12);
    }

    /// The sum over nodes against the sum over elements of another stage.
    #[test]
    fn density_times_volume_adds_up_to_the_whole() {
        let shape: Vec<f64> = (0..54).map(|k| f64::from(k * k % 17) - 8.0).collect();
        let slopes = super::super::EnergySlopes::new(&sheet(), &spruce(), ElementOptions::default(), &shape).unwrap();
        assert!((2.0 * energy(&shape).total_j() / slopes.stiffness[0] - 1.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_is_stored_where_nothing_moves() {
        assert_eq!(energy(&[0.0; 54]).over_mean(), [0.0; 9]);
    }
}
