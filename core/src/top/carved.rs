//! The wood on the mesh: mid-surface, shell, fittings and mass.

use std::borrow::Cow;

use super::{Plan, Shape, TopError};
use crate::fittings::{Bare, Fittings};
use crate::mesh::{Across, MidSurface};
use crate::modes::{Modes, ModesRequest, solve_modes};
use crate::response::ShellSurface;
use crate::shell::{DOFS_PER_NODE, ElementOptions, ShellGeometry, ShellModel};
use crate::statics::{PointLoad, StaticsError, displacements};
use crate::wood::Wood;

const G_PER_KG: f64 = 1e3;

/// A carved top, ready to be solved.
#[derive(Debug, Clone)]
pub struct Carved {
    /// Nodes, normals and thickness in millimetres.
    pub mid_surface: MidSurface,
    /// The same as the elements see it.
    pub geometry: ShellGeometry,
    /// Stiffness and mass, of one side only where that says all.
    pub(super) model: ShellModel,
}

impl Carved {
    /// Lays `shape` of `wood` on `plan` and puts `fittings` on.
    ///
    /// # Errors
    /// [`TopError::Shell`] when the surface gives no shell, [`TopError::Fitting`] when a fitting finds no wood.
    pub fn new(plan: &Plan, shape: &Shape, wood: &Wood, fittings: &Fittings) -> Result<Self, TopError> {
        Self::on(plan, MidSurface::new(&plan.mesh, &shape.surface, &shape.graduation), wood, fittings)
    }

    /// Makes a shell of `wood` of `mid_surface`, which was laid on the mesh of `plan`, and puts `fittings` on.
    ///
    /// # Errors
    /// As for [`Carved::new`].
    pub fn on(plan: &Plan, mid_surface: MidSurface, wood: &Wood, fittings: &Fittings) -> Result<Self, TopError> {
        let Across { normals, thickness_mm, edge_normals, edge_thickness_mm } = &mid_surface.across;
        let geometry = ShellGeometry::new(&mid_surface.nodes_mm, Some(normals), thickness_mm, &plan.mesh.triangles)?
            .with_mid_edges(edge_normals, edge_thickness_mm, &plan.mesh.edges.of_triangle)
            .with_free_edges(free_edges(plan, fittings.rim.is_some()));
        let options = ElementOptions::default();
        let model = match plan.one_side.as_ref().filter(|_| fittings.is_nothing()) {
            Some(side) => ShellModel::assemble_one_side(&geometry, wood, &plan.equations, side, options)?,
            None => {
                let mut model = ShellModel::assemble(&geometry, wood, &plan.equations, options)?;
                let bare = Bare { geometry: &geometry, wood, equations: &plan.equations, options };
                fittings.fit(&bare, &plan.mesh.rim_nodes, &mut model)?;
                model
            }
        };
        Ok(Self { mid_surface, geometry, model })
    }

    /// Stiffness and mass of the whole top on `plan`.
    #[must_use]
    pub fn whole_model(&self, plan: &Plan) -> Cow<'_, ShellModel> {
        self.model.whole(&plan.symbolic)
    }

    /// Mass of the wood, the bar included, g.
    #[must_use]
    pub fn mass_g(&self) -> f64 {
        self.model.total_mass_kg * G_PER_KG
    }

    /// The modes of the top on `plan`.
    ///
    /// # Errors
    /// [`TopError::Modes`] when they can't be had.
    pub fn modes(&self, plan: &Plan, request: &ModesRequest) -> Result<Modes, TopError> {
        let modes = solve_modes(&self.geometry, &plan.supports, &plan.equations, &self.model, &plan.symbolic, request)?;
        Ok(modes)
    }

    /// (node, dof): displacements (m) and rotations (rad) of the top on `plan` under `loads`.
    ///
    /// # Errors
    /// As for [`displacements`].
    pub fn displacements(&self, plan: &Plan, loads: &[PointLoad]) -> Result<Vec<[f64; DOFS_PER_NODE]>, StaticsError> {
        let Plan { supports, equations, symbolic, .. } = plan;
        displacements(&self.geometry, supports, equations, &self.whole_model(plan), symbolic, loads)
    }

    /// What moves with each node of the top on `plan`.
    #[must_use]
    pub fn surface(&self, plan: &Plan) -> ShellSurface {
        ShellSurface::new(&self.geometry, self.whole_model(plan).node_masses_kg(&plan.equations))
    }
}

/// (triangle, side): whether the wood ends there and nothing holds it against turning.
fn free_edges(plan: &Plan, on_ribs: bool) -> Vec<[bool; 3]> {
    let mesh = &plan.mesh;
    let mut held = vec![false; mesh.points_mm.len()];
    if on_ribs {
        // Ribs and linings hold the rim against turning.
        mesh.rim_nodes.iter().for_each(|&node| held[node as usize] = true);
    }
    let turns = |node: u32| !(held[node as usize] || plan.supports.turning_is_held(node));
    let mut free = mesh.edges.at_the_end();
    for (free, corners) in free.iter_mut().zip(&mesh.triangles) {
        for side in 0..3 {
            free[side] &= turns(corners[side]) || turns(corners[(side + 1) % 3]);
        }
    }
    free
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::fittings_tests::fit_out;
    use crate::design::{BassArch, Design, PaintedThickness, PlanPlace, Rim, SoundHoleChoice};
    use crate::mesh::MeshSize;
    use crate::top::Stages;

    type Change = fn(&mut Design);

    fn changed(change: Change) -> Stages {
        let mut design = Design::demo();
        change(&mut design);
        Stages::new(design)
    }

    /// The same equations and the same modes as if every element had been worked out.
    #[test]
    fn one_side_says_all_of_a_top_whose_sides_are_alike() {
        let rims: [(&str, Change); 3] = [
            ("free", |_| ()),
            ("hinged", |design| design.rim = Rim::Hinged),
            ("clamped", |design| design.rim = Rim::Clamped),
        ];
        for (name, change) in rims {
            let mut stages = changed(change);
            let wood = stages.design().wood.wood().unwrap();
            let (plan, carved) = stages.carved(MeshSize::Preview).unwrap();
            let Cow::Owned(told) = carved.whole_model(plan) else { panic!("{name}: it was assembled whole") };
            let options = ElementOptions::default();
            let whole = ShellModel::assemble(&carved.geometry, &wood, &plan.equations, options).unwrap();
            assert!((told.total_mass_kg / whole.total_mass_kg - 1.0).abs() < 1e-12, "{name}");
            let starts = &plan.equations.pattern.column_starts;
            for (told, whole) in [(&told.stiffness, &whole.stiffness), (&told.mass, &whole.mass)] {
                let root = |equation: usize| whole[starts[equation]].sqrt();
                for column in 0..plan.equations.count() {
                    for at in starts[column]..starts[column + 1] {
                        let row = plan.equations.pattern.row_indices[at] as usize;
                        assert!((told[at] - whole[at]).abs() <= 1e-11 * root(row) * root(column), "{name}: {at}");
                    }
                }
            }
            let request = ModesRequest::lowest(20);
            let halves = carved.modes(plan, &request).unwrap();
            let modes =
                solve_modes(&carved.geometry, &plan.supports, &plan.equations, &whole, &plan.symbolic, &request)
                    .unwrap();
            assert_eq!((halves.counted, halves.rigid_hz.len()), (modes.counted, modes.rigid_hz.len()), "{name}");
            assert!(halves.rigid_hz.iter().all(|hz| *hz < 0.01), "{name}: {:?}", halves.rigid_hz);
            assert_eq!(halves.names, modes.names, "{name}");
            for mode in 0..20 {
                let ratio = halves.frequencies_hz[mode] / modes.frequencies_hz[mode];
                assert!((ratio - 1.0).abs() < 1e-9, "{name}, mode {mode}: {ratio}");
                let apart = halves.shape(mode).iter().zip(modes.shape(mode)).map(|(a, b)| (a - b).abs());
                let largest = modes.shape(mode).iter().fold(0.0, |largest: f64, value| largest.max(value.abs()));
                assert!(apart.fold(0.0, f64::max) < 1e-5 * largest, "{name}, mode {mode}");
            }
        }
    }

    #[test]
    fn a_top_whose_sides_differ_is_assembled_whole() {
        let changes: [(&str, Change); 8] = [
            ("leaning rings", |design| design.wood.ring_angle_deg = 3.0),
            ("bar", |design| design.bar = fitted_out().bar),
            ("post", |design| design.post = fitted_out().post),
            ("mass", |design| design.masses = fitted_out().masses),
            ("ribs that give way", |design| design.rim = fitted_out().rim),
            ("one hole", |design| design.sound_holes.bass = SoundHoleChoice::None),
            ("one side's arch", |design| {
                let arch = &mut design.arching.cross_arches.waist;
                arch.bass = Some(BassArch { fullness: 1.02 * arch.fullness, curve: arch.curve.clone() });
            }),
            ("painted", |design| {
                let place = PlanPlace { across_mm: 40.0, station_mm: 150.0 };
                design.graduation.painted.push(PaintedThickness { place, thickness_mm: 2.0, reach_mm: 30.0 });
            }),
        ];
        for (name, change) in changes {
            let mut stages = changed(change);
            let (plan, carved) = stages.carved(MeshSize::Preview).unwrap();
            assert!(matches!(carved.whole_model(plan), Cow::Borrowed(_)), "{name}");
        }
    }

    fn fitted_out() -> Design {
        let mut design = Design::demo();
        fit_out(&mut design);
        design
    }
}
