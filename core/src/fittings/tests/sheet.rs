//! A flat sheet to put fittings on, and its modes.

use super::super::{Bare, Fittings};
use crate::eigen::Symbolic;
use crate::modes::{Modes, ModesRequest, solve_modes};
use crate::shell::{ElementOptions, Equations, ShellGeometry, ShellModel, Supports};
use crate::statics::{PointLoad, displacements};
use crate::wood::{OrthotropicConstants, Species, Wood};

/// A rectangle cut into triangles, turned about z.
pub(super) struct Sheet {
    pub(super) columns: usize,
    pub(super) rows: usize,
    pub(super) length_mm: f64,
    pub(super) width_mm: f64,
    pub(super) thickness_mm: f64,
    pub(super) turn_deg: f64,
    /// Inner nodes are moved by up to this share of a cell, so that nothing lies along a mesh line.
    pub(super) disorder: f64,
    pub(super) wood: Wood,
}

impl Sheet {
    /// The plan point at `along`, `across` from the sheet's corner, m.
    pub(super) fn plan_m(&self, [along, across]: [f64; 2]) -> [f64; 2] {
        let (s, c) = self.turn_deg.to_radians().sin_cos();
        [(along * c - across * s) * 1e-3, (along * s + across * c) * 1e-3]
    }

    pub(super) fn node(&self, column: usize, row: usize) -> u32 {
        (row * (self.columns + 1) + column) as u32
    }

    pub(super) fn nodes(&self) -> usize {
        (self.columns + 1) * (self.rows + 1)
    }

    /// Nodes on the outline, once round, counter-clockwise.
    pub(super) fn rim(&self) -> Vec<u32> {
        let (n, m) = (self.columns, self.rows);
        let lower = (0..n).map(|i| self.node(i, 0));
        let right = (0..m).map(|j| self.node(n, j));
        let upper = (0..n).map(|i| self.node(n - i, m));
        let left = (0..m).map(|j| self.node(0, m - j));
        lower.chain(right).chain(upper).chain(left).collect()
    }

    fn triangles(&self) -> Vec<[u32; 3]> {
        let cells = (0..self.rows).flat_map(|j| (0..self.columns).map(move |i| (i, j)));
        cells
            .flat_map(|(i, j)| {
                let [a, b, c, d] = [(i, j), (i + 1, j), (i + 1, j + 1), (i, j + 1)].map(|(i, j)| self.node(i, j));
                if (i + j) % 2 == 0 { [[a, b, c], [a, c, d]] } else { [[a, b, d], [b, c, d]] }
            })
            .collect()
    }

    fn geometry(&self) -> ShellGeometry {
        let shift = |node: usize, salt: f64| ((node as f64 + salt) * 12.9898).sin() * self.disorder;
        let nodes: Vec<[f64; 3]> = (0..self.nodes())
            .map(|node| {
                let (i, j) = (node % (self.columns + 1), node / (self.columns + 1));
                let inner = i > 0 && i < self.columns && j > 0 && j < self.rows;
                let (dx, dy) = if inner { (shift(node, 0.1), shift(node, 0.7)) } else { (0.0, 0.0) };
                let place = [
                    (i as f64 + dx) * self.length_mm / self.columns as f64,
                    (j as f64 + dy) * self.width_mm / self.rows as f64,
                ];
                let [x, y] = self.plan_m(place);
                [x * 1e3, y * 1e3, 0.0]
            })
            .collect();
        ShellGeometry::new(&nodes, None, &vec![self.thickness_mm; nodes.len()], &self.triangles()).unwrap()
    }

    pub(super) fn with(&self, fittings: &Fittings, supports: Supports) -> Fitted {
        let geometry = self.geometry();
        let equations = Equations::new(geometry.triangles(), &supports).unwrap();
        let options = ElementOptions::default();
        let mut model = ShellModel::assemble(&geometry, &self.wood, &equations, options).unwrap();
        let bare = Bare { geometry: &geometry, wood: &self.wood, equations: &equations, options };
        fittings.fit(&bare, &self.rim(), &mut model).unwrap();
        Fitted { geometry, supports, equations, model }
    }

    pub(super) fn bare(&self, supports: Supports) -> Fitted {
        self.with(&Fittings::default(), supports)
    }
}

/// A sheet with its fittings, assembled.
pub(super) struct Fitted {
    pub(super) geometry: ShellGeometry,
    pub(super) supports: Supports,
    pub(super) equations: Equations,
    pub(super) model: ShellModel,
}

impl Fitted {
    pub(super) fn modes(&self, count: usize) -> Modes {
        let symbolic = Symbolic::new(&self.equations.pattern).unwrap();
        let request = ModesRequest::lowest(count);
        solve_modes(&self.geometry, &self.supports, &self.equations, &self.model, &symbolic, &request).unwrap()
    }

    pub(super) fn under(&self, loads: &[PointLoad]) -> Vec<[f64; 6]> {
        let symbolic = Symbolic::new(&self.equations.pattern).unwrap();
        displacements(&self.geometry, &self.supports, &self.equations, &self.model, &symbolic, loads).unwrap()
    }
}

pub(super) fn isotropic(e_gpa: f64, density_kg_m3: f64) -> Wood {
    Wood { constants: OrthotropicConstants::isotropic(e_gpa, 0.3), density_kg_m3, ring_angle_deg: 0.0 }
}

pub(super) fn spruce() -> Wood {
    let record = Species::SitkaSpruce.record();
    Wood { constants: record.constants, density_kg_m3: record.density_kg_m3, ring_angle_deg: 0.0 }
}

/// A square plate of side 200 mm.
pub(super) fn plate(cells: usize) -> Sheet {
    Sheet {
        columns: cells,
        rows: cells,
        length_mm: 200.0,
        width_mm: 200.0,
        thickness_mm: 3.0,
        turn_deg: 0.0,
        disorder: 0.0,
        wood: isotropic(10.0, 400.0),
    }
}

/// Everything is held but displacement along z.
pub(super) fn only_upwards(nodes: usize) -> Supports {
    Supports { held: vec![[true, true, false, true, true, true]; nodes] }
}
