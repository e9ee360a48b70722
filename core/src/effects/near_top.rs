//! A solved top on a mesh that goes along with small changes.

use std::f64::consts::TAU;

use super::{Effect, EffectError, Narrow, Step, Wanted};
use crate::design::{Design, Rim};
use crate::fittings::Fittings;
use crate::inside::InsideSurface;
use crate::mesh::{MeshSize, MovableMesh};
use crate::modes::{Modes, ModesRequest, match_modes, sensitivities};
use crate::plan::Point;
use crate::regions::Regions;
use crate::shell::ShellGeometry;
use crate::top::{BandFigures, Carved, DrivenTop, Held, Plan, ResponseFigures, Shape, TopError, energy_slopes};

/// Share of a step by which stiffness and mass are differenced, to both sides. A shape that is held while the arch rises stretches the
/// wood, which costs with the square of the share: a quarter of half a millimetre puts the lowest mode's effect 0.3 % off, this 0.01 %.
const SHARE: f64 = 0.05;
/// By how much effects on a standard mesh miss those on a fine one, root mean square over that of the effects: every step of [`steps_of`] on the
/// lowest ten modes of the demonstration, free and with all fittings on ribs. Half of the steps miss by less than 3 and 10 per cent; held tops
/// have modes so near each other that two meshes mix them differently. (On a preview mesh 0.16 and 0.44.)
///
/// [`steps_of`]: super::steps_of
const FREE_MESH_SHARE: f64 = 0.10;
const HELD_MESH_SHARE: f64 = 0.26;
/// Places at which it is seen to that wood is only taken off.
const WOOD_PLACES: usize = 200;
/// A gouge's shaving is thicker.
const UNSEEN_MM: f64 = 0.01;

/// One top and its modes, near which others are looked at.
#[derive(Debug)]
pub struct NearTop {
    design: Design,
    size: MeshSize,
    movable: MovableMesh,
    /// Its mesh is wherever it was last taken.
    plan: Plan,
    /// The top's own nodes in plan, mm, and its shell.
    places: Vec<Point>,
    geometry: ShellGeometry,
    modes: Modes,
    /// (mode, equation)
    shapes: Vec<f64>,
    /// (mode): one standard deviation of what boards differ by, as a share of the frequency.
    wood_shares: Vec<f64>,
    narrows: Vec<Narrow>,
    mass_g: f64,
    /// What the bridge makes of it, once asked for.
    driven: Option<BandFigures>,
}

impl NearTop {
    /// Solves `design` on a mesh of `size` for its lowest `count` elastic modes.
    ///
    /// # Errors
    /// [`EffectError::Top`] of the stage that failed.
    pub fn new(design: Design, size: MeshSize, count: usize) -> Result<Self, EffectError> {
        let shape = Shape::new(&design)?;
        let plan = Plan::new(&shape, Held::by(&design.rim), size)?;
        let carved = carved(&plan, &shape, &design)?;
        let modes = carved.modes(&plan, &ModesRequest::lowest(count))?;
        let shapes = plan.equations.gather(&modes.shapes);
        let slopes = energy_slopes(&design, &plan, &carved, &modes.shapes)?;
        let scatter = design.wood.scatter();
        let wood_shares = sensitivities(&slopes).iter().map(|own| 0.01 * own.wood_pct(&scatter)).collect();
        Ok(Self {
            movable: MovableMesh::new(plan.mesh.clone(), &shape.outline, &shape.holes),
            narrows: Narrow::of(&shape),
            mass_g: carved.mass_g(),
            wood_shares,
            driven: None,
            places: plan.mesh.points_mm.clone(),
            geometry: carved.geometry,
            design,
            size,
            plan,
            modes,
            shapes,
        })
    }

    /// The design.
    #[must_use]
    pub fn design(&self) -> &Design {
        &self.design
    }

    /// Its modes.
    #[must_use]
    pub fn modes(&self) -> &Modes {
        &self.modes
    }

    /// Of the wood, the bar included, g.
    #[must_use]
    pub fn mass_g(&self) -> f64 {
        self.mass_g
    }

    /// The narrow places.
    #[must_use]
    pub fn narrows(&self) -> &[Narrow] {
        &self.narrows
    }

    /// One standard deviation of an effect on the frequency of `mode`, as a share of it: what boards differ by moves an effect as it moves the
    /// frequency, and the mesh leaves its own share open.
    #[must_use]
    pub fn sure_within(&self, mode: usize) -> f64 {
        let free = self.design.rim == Rim::Free && self.design.post.is_none();
        let mesh = if free { FREE_MESH_SHARE } else { HELD_MESH_SHARE };
        self.wood_shares.get(mode).map_or(mesh, |wood| wood.hypot(mesh))
    }

    /// What `step` does, to first order.
    ///
    /// For a mode with Kφ = λMφ and φᵀMφ = 1, dλ = φᵀ(dK − λ dM)φ (Fox & Kapoor 1968, AIAA J. 6, 2426): the shape's own change plays no
    /// part. dK and dM are differences of the assembled matrices on the same triangles, whose nodes go along with the
    /// boundaries; so the effect is that of the meshed top exactly, without the scatter of new meshes. Of modes with one frequency
    /// it tells the change of the shapes as they came out.
    ///
    /// Cost: two assemblies and a product for each mode.
    ///
    /// # Errors
    /// [`EffectError`] where the step can't be made to either side.
    pub fn effect(&mut self, step: &Step) -> Result<Effect, EffectError> {
        let forth = self.beside(step, SHARE);
        let back = self.beside(step, -SHARE);
        // At a limit there is only one side.
        let ((more, upper), (less, lower)) = match (forth, back) {
            (Ok(more), Ok(less)) => ((more, SHARE), (less, -SHARE)),
            (Ok(more), Err(_)) => ((more, SHARE), (self.beside(step, 0.0)?, 0.0)),
            (Err(_), Ok(less)) => ((self.beside(step, 0.0)?, 0.0), (less, -SHARE)),
            (Err(error), Err(_)) => return Err(error),
        };
        let per_step = 1.0 / (upper - lower);
        let difference = |more: &[f64], less: &[f64]| -> Vec<f64> {
            more.iter().zip(less).map(|(more, less)| (more - less) * per_step).collect()
        };
        let [upper, lower] = [&more, &less].map(|beside| beside.carved.whole_model(&self.plan));
        let stiffness = difference(&upper.stiffness, &lower.stiffness);
        let mass = difference(&upper.mass, &lower.mass);
        let pattern = &self.plan.equations.pattern;
        let by_mode_hz = self.shapes.chunks_exact(pattern.dof()).zip(&self.modes.frequencies_hz).map(|(shape, hz)| {
            let own = (TAU * hz).powi(2);
            let slope = pattern.quadratic(&stiffness, shape) - own * pattern.quadratic(&mass, shape);
            // dλ = 2 (2π)² f df
            slope / (2.0 * TAU * TAU * hz)
        });
        let narrows = more.narrows.iter().zip(&less.narrows);
        Ok(Effect {
            by_mode_hz: by_mode_hz.collect(),
            mass_g: (more.carved.mass_g() - less.carved.mass_g()) * per_step,
            narrows_mm: narrows.map(|(more, less)| (more.width_mm - less.width_mm) * per_step).collect(),
        })
    }

    /// What `step` makes of the figures that sum up the response, as the difference of two tops worked out alike; how sure each difference
    /// is, by the scatter of wood and losses that both share.
    ///
    /// Cost: all modes up to 6 kHz; for the first step twice.
    ///
    /// # Errors
    /// [`EffectError`] where the step can't be made or the bridge has no wood under its feet.
    pub fn response_effect(&mut self, step: &Step) -> Result<ResponseFigures, EffectError> {
        let (design, shape) = self.drawn(step, 1.0)?;
        self.go_along(&shape)?;
        let after = driven(&self.plan, &design, &shape)?;
        Ok(after.change_from(&self.driven()?))
    }

    /// Limits on shares of `steps` that keep wood from being added, (step coefficients, most): at places all over the top the outer surface
    /// may not rise nor the inner one sink, both by more than a hundredth of a millimetre.
    ///
    /// # Errors
    /// [`EffectError`] where a step can't be drawn.
    pub(super) fn taken_off(&self, steps: &[&Step]) -> Result<Vec<(Vec<f64>, f64)>, EffectError> {
        let places: Vec<Point> = self.places.iter().step_by(self.places.len() / WOOD_PLACES + 1).copied().collect();
        let before = faces(&Shape::new(&self.design)?, &places);
        let mut rows: Vec<Vec<f64>> = vec![Vec::with_capacity(steps.len()); before.len()];
        for step in steps {
            let (share, drawn) = match self.drawn(step, SHARE) {
                Ok(drawn) => (SHARE, drawn),
                Err(_) => (-SHARE, self.drawn(step, -SHARE)?),
            };
            let after = faces(&drawn.1, &places);
            rows.iter_mut().zip(after.iter().zip(&before)).for_each(|(row, (after, before))| {
                row.push((after - before) / share);
            });
        }
        Ok(rows.into_iter().map(|row| (row, UNSEEN_MM)).collect())
    }

    /// A changed design worked out anew: on the same triangles as far as they go along, else on new ones.
    ///
    /// # Errors
    /// [`EffectError`] of the stage that failed.
    pub(super) fn after(&mut self, design: &Design, wanted: &Wanted) -> Result<After, EffectError> {
        let shape = Shape::new(design)?;
        let made_anew;
        let plan = match self.go_along(&shape) {
            Ok(()) => &self.plan,
            Err(_) => {
                made_anew = Plan::new(&shape, Held::by(&design.rim), self.size)?;
                &made_anew
            }
        };
        let carved = carved(plan, &shape, design)?;
        let mass_g = carved.mass_g();
        let change = match *wanted {
            Wanted::Mass { .. } => Some(mass_g - self.mass_g),
            Wanted::ModeHz { mode, .. } => {
                let modes =
                    carved.modes(plan, &ModesRequest { prove: false, ..ModesRequest::lowest(self.modes.count()) })?;
                let partner = match_modes((&self.geometry, &self.modes), (&carved.geometry, &modes))[mode];
                partner.map(|own| modes.frequencies_hz[own] - self.modes.frequencies_hz[mode])
            }
            Wanted::IslandMobility { .. } => {
                let after = driven(plan, design, &shape)?;
                let before = self.driven()?;
                after.change_from(&before).island_mobility_db.map(|figure| figure.value)
            }
        };
        let narrows_mm = Narrow::of(&shape).iter().map(|own| own.width_mm).collect();
        Ok(After { change, mass_g, narrows_mm })
    }

    /// What the bridge makes of the top as it is; worked out once.
    fn driven(&mut self) -> Result<BandFigures, EffectError> {
        if let Some(driven) = &self.driven {
            return Ok(driven.clone());
        }
        let shape = Shape::new(&self.design)?;
        self.go_along(&shape)?;
        let figures = driven(&self.plan, &self.design, &shape)?;
        self.driven = Some(figures.clone());
        Ok(figures)
    }

    /// The top after `share` of a step, on the same triangles.
    fn beside(&mut self, step: &Step, share: f64) -> Result<Beside, EffectError> {
        let (design, shape) = self.drawn(step, share)?;
        self.go_along(&shape)?;
        Ok(Beside { carved: carved(&self.plan, &shape, &design)?, narrows: Narrow::of(&shape) })
    }

    fn drawn(&self, step: &Step, share: f64) -> Result<(Design, Shape), EffectError> {
        let design = step.applied(&self.design, share)?;
        let shape = Shape::new(&design)?;
        Ok((design, shape))
    }

    /// Takes the mesh along; always from where it was made, so that the way doesn't count.
    fn go_along(&mut self, shape: &Shape) -> Result<(), EffectError> {
        let moved = self.movable.moved(&shape.outline, &shape.holes);
        self.plan.mesh = moved.map_err(|why| EffectError::Unmoved { why })?;
        Ok(())
    }
}

/// What a changed design came to.
pub(super) struct After {
    /// Of what was wanted; none where the mode's shape could no longer be told.
    pub(super) change: Option<f64>,
    pub(super) mass_g: f64,
    pub(super) narrows_mm: Vec<f64>,
}

/// (face, place): height of the outside and, below zero, of the inside, mm: what rises here is added wood.
fn faces(shape: &Shape, places: &[Point]) -> Vec<f64> {
    let inside = InsideSurface::new(&shape.surface, &shape.graduation);
    let outer = places.iter().map(|&p| shape.surface.height_mm(p));
    outer.chain(places.iter().map(|&p| -inside.height_mm(p))).collect()
}

struct Beside {
    carved: Carved,
    narrows: Vec<Narrow>,
}

fn carved(plan: &Plan, shape: &Shape, design: &Design) -> Result<Carved, TopError> {
    Carved::new(plan, shape, &design.wood.wood()?, &Fittings::of_design(design)?)
}

fn driven(plan: &Plan, design: &Design, shape: &Shape) -> Result<BandFigures, EffectError> {
    let carved = carved(plan, shape, design)?;
    let regions = Regions::new(&shape.outline, &shape.holes);
    Ok(DrivenTop::of::<EffectError>(design, (plan, &carved), &regions, false)?.figures()?)
}
