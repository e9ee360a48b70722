//! A flat free plate, solved.

use crate::eigen::Symbolic;
use crate::modes::{Modes, ModesRequest, solve_modes};
use crate::shell::{ElementOptions, Equations, ShellGeometry, ShellModel, Supports};
use crate::wood::{OrthotropicConstants, Species, Wood};

/// A rectangle, grain along y, middle at the origin.
pub(super) struct Plate {
    pub(super) geometry: ShellGeometry,
    pub(super) supports: Supports,
    pub(super) equations: Equations,
    pub(super) symbolic: Symbolic,
}

impl Plate {
    /// `across_mm` along x, `along_mm` along y, cut into `cells` (x, y), each into two triangles, diagonals mirrored
    /// about both middles.
    pub(super) fn new(across_mm: f64, along_mm: f64, thickness_mm: f64, cells: [u32; 2]) -> Self {
        let [columns, rows] = cells;
        let place = |k: u32, of: u32, length: f64| length * (f64::from(k) / f64::from(of) - 0.5);
        let nodes: Vec<[f64; 3]> = (0..=rows)
            .flat_map(|j| (0..=columns).map(move |i| [place(i, columns, across_mm), place(j, rows, along_mm), 0.0]))
            .collect();
        let triangles: Vec<[u32; 3]> = (0..rows * columns)
            .flat_map(|cell| {
                let (i, j) = (cell % columns, cell / columns);
                let a = j * (columns + 1) + i;
                let (b, c, d) = (a + 1, a + columns + 2, a + columns + 1);
                if (2 * i < columns) == (2 * j < rows) { [[a, b, c], [a, c, d]] } else { [[a, b, d], [b, c, d]] }
            })
            .collect();
        let geometry = ShellGeometry::new(&nodes, None, &vec![thickness_mm; nodes.len()], &triangles).unwrap();
        let supports = Supports::free(nodes.len());
        let equations = Equations::new(&triangles, &supports).unwrap();
        let symbolic = Symbolic::new(&equations.pattern).unwrap();
        Self { geometry, supports, equations, symbolic }
    }

    pub(super) fn modes(&self, wood: &Wood, count: usize) -> Modes {
        let model = ShellModel::assemble(&self.geometry, wood, &self.equations, ElementOptions::default()).unwrap();
        let request = ModesRequest::lowest(count);
        solve_modes(&self.geometry, &self.supports, &self.equations, &model, &self.symbolic, &request).unwrap()
    }
}

/// Clear Sitka spruce, quarter-cut.
pub(super) fn spruce() -> Wood {
    let record = Species::SitkaSpruce.record();
    Wood { constants: record.constants, density_kg_m3: record.density_kg_m3, ring_angle_deg: 0.0 }
}

/// The same all ways, 10 GPa, 450 kg/m³.
pub(super) fn isotropic(nu: f64) -> Wood {
    Wood { constants: OrthotropicConstants::isotropic(10.0, nu), density_kg_m3: 450.0, ring_angle_deg: 0.0 }
}
