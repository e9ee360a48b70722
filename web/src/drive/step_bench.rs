//! The class that tells what workshop steps do.

use bombatura_core::design::Design;
use bombatura_core::effects::{
    Effect, EffectError, KnownStep, NearTop, Step, StepGroup, Target, Wanted, propose, steps_of,
};
use bombatura_core::mesh::MeshSize;
use bombatura_core::top::ResponseFigures;
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::page_values::to_page;
use crate::problem::Problem;

/// The mesh of settled designs.
const SIZE: MeshSize = MeshSize::Standard;
/// Modes whose frequencies steps are told for.
const COUNT: usize = 20;

/// One design, and what steps away from it do. Problems are thrown as plain objects `{kind, message, path?, value?, limits?, remedy?}`.
#[wasm_bindgen]
#[derive(Debug)]
pub struct StepBench {
    near: NearTop,
    steps: Vec<Step>,
    /// (step), once asked for.
    effects: Vec<Option<Effect>>,
    responses: Vec<Option<ResponseFigures>>,
}

#[derive(Serialize)]
struct AboutReply {
    modes: Vec<ModeReply>,
    mass_g: f64,
    narrows: Vec<NarrowReply>,
    steps: Vec<StepReply>,
}

#[derive(Serialize)]
struct ModeReply {
    hz: f64,
    name: Option<&'static str>,
    /// One standard deviation of an effect, as a share of it.
    sure_within: f64,
}

#[derive(Serialize)]
struct NarrowReply {
    key: &'static str,
    width_mm: f64,
}

#[derive(Serialize)]
struct StepReply {
    group: &'static str,
    measure: &'static str,
    path: String,
    change: f64,
    now: f64,
}

#[derive(Serialize)]
struct EffectReply<'a> {
    by_mode_hz: &'a [f64],
    mass_g: f64,
    narrows_mm: &'a [f64],
}

#[derive(Serialize)]
struct ProposalReply {
    changes: Vec<ShareReply>,
    design: String,
    reached: Option<f64>,
    mass_g: f64,
    narrows_mm: Vec<f64>,
}

#[derive(Serialize)]
struct ShareReply {
    step: usize,
    share: f64,
}

#[wasm_bindgen]
impl StepBench {
    /// Solves the design of a JSON document.
    ///
    /// # Errors
    /// What is wrong with the document, or a top that can't be meshed or solved.
    #[wasm_bindgen(constructor)]
    pub fn new(json: &str) -> Result<StepBench, Box<Problem>> {
        console_error_panic_hook::set_once();
        let near = NearTop::new(Design::parse(json)?, SIZE, COUNT)?;
        let steps = steps_of(near.design());
        let count = steps.len();
        Ok(StepBench { near, steps, effects: vec![None; count], responses: vec![None; count] })
    }

    /// What there is: `{ modes: [{ hz, name?, sure_within }], mass_g, narrows: [{ key, width_mm }], steps: [{ group, measure, path, change,
    /// now }] }`.
    #[must_use]
    pub fn about(&self) -> JsValue {
        let modes = self.near.modes();
        let mode = |(mode, hz): (usize, &f64)| ModeReply {
            hz: *hz,
            name: modes.names[mode].map(bombatura_core::modes::ModeName::word),
            sure_within: self.near.sure_within(mode),
        };
        let narrow =
            |own: &bombatura_core::effects::Narrow| NarrowReply { key: own.kind.key(), width_mm: own.width_mm };
        let step = |step: &Step| StepReply {
            group: step.group.key(),
            measure: step.measure,
            path: step.paths.first().cloned().unwrap_or_default(),
            change: step.change,
            now: step.now,
        };
        to_page(&AboutReply {
            modes: modes.frequencies_hz.iter().enumerate().map(mode).collect(),
            mass_g: self.near.mass_g(),
            narrows: self.near.narrows().iter().map(narrow).collect(),
            steps: self.steps.iter().map(step).collect(),
        })
    }

    /// What step `index` does: `{ by_mode_hz, mass_g, narrows_mm }`, to first order; see
    /// [`NearTop::effect`](bombatura_core::effects::NearTop::effect).
    ///
    /// # Errors
    /// A step that there isn't or that can't be made.
    pub fn effect(&mut self, index: usize) -> Result<JsValue, Box<Problem>> {
        let effect = self.known(index)?;
        let Effect { by_mode_hz, mass_g, narrows_mm } = effect;
        Ok(to_page(&EffectReply { by_mode_hz: &by_mode_hz, mass_g, narrows_mm: &narrows_mm }))
    }

    /// What step `index` makes of the figures that sum up the response: `{ island_mobility_db?, wing_activity?, bass_over_treble_db }`, each
    /// `{ value, sure_within }`. Cost: some two seconds.
    ///
    /// # Errors
    /// As for [`StepBench::effect`].
    pub fn response_effect(&mut self, index: usize) -> Result<JsValue, Box<Problem>> {
        let change = match self.responses.get(index).copied().flatten() {
            Some(known) => known,
            None => {
                let step = self.step(index)?.clone();
                self.near.response_effect(&step)?
            }
        };
        self.responses[index] = Some(change);
        Ok(to_page(&change))
    }

    /// The design after `share` of step `index`, as a JSON document.
    ///
    /// # Errors
    /// A step that there isn't, or a design that can't be.
    pub fn changed(&self, index: usize, share: f64) -> Result<String, Box<Problem>> {
        Ok(self.step(index)?.applied(self.near.design(), share)?.to_json())
    }

    /// The smallest change that reaches a target: `{ changes: [{ step, share }], design, reached?, mass_g, narrows_mm }`.
    ///
    /// `what` is "mode" (number `mode`, from zero, by `change` Hz), "island" (dB) or "mass" (g); `heavier_by_g` and `narrows_mm` limit where they are
    /// numbers; `carved` takes wood off only; `allowed` lists groups of steps, parted by blanks; `steps` is how far each control may go. For the
    /// island, steps whose [`StepBench::response_effect`] was asked for are used.
    ///
    /// # Errors
    /// A target that there isn't or that is no number.
    #[expect(clippy::too_many_arguments, reason = "wasm-bindgen takes no struct from plain JavaScript")]
    pub fn propose(
        &mut self,
        what: &str,
        mode: usize,
        change: f64,
        heavier_by_g: Option<f64>,
        narrows_mm: Option<f64>,
        carved: bool,
        allowed: &str,
        steps: f64,
    ) -> Result<JsValue, Box<Problem>> {
        let wanted = match what {
            "mode" => Wanted::ModeHz { mode, change_hz: change },
            "island" => Wanted::IslandMobility { change_db: change },
            "mass" => Wanted::Mass { change_g: change },
            _ => {
                let text = format!("There is no target called \"{what}\"; use mode, island or mass.");
                return Err(Problem::said("unknown_target", text));
            }
        };
        let groups = StepGroup::ALL.into_iter().filter(|group| allowed.split(' ').any(|word| word == group.key()));
        let target = Target { wanted, heavier_by_g, narrows_mm, carved, allowed: groups.collect(), steps };
        // Steps that can't be made lead nowhere.
        let makeable: Vec<usize> = (0..self.steps.len()).filter(|&index| self.known(index).is_ok()).collect();
        let known: Vec<KnownStep> = makeable
            .iter()
            .filter_map(|&index| {
                let (step, effect) = (self.steps[index].clone(), self.effects[index].clone()?);
                Some(KnownStep { step, effect, response: self.responses[index] })
            })
            .collect();
        let found = propose(&mut self.near, &known, &target)?;
        Ok(to_page(&ProposalReply {
            changes: found.changes.iter().map(|&(at, share)| ShareReply { step: makeable[at], share }).collect(),
            design: found.design.to_json(),
            reached: found.reached,
            mass_g: found.mass_g,
            narrows_mm: found.narrows_mm,
        }))
    }
}

impl StepBench {
    fn step(&self, index: usize) -> Result<&Step, Box<Problem>> {
        self.steps.get(index).ok_or_else(|| {
            let text = format!("Step {index} is asked for; there are 0 to {}.", self.steps.len().saturating_sub(1));
            Problem::said("unknown_step", text)
        })
    }

    fn known(&mut self, index: usize) -> Result<Effect, Box<Problem>> {
        let step = self.step(index)?.clone();
        if let Some(effect) = &self.effects[index] {
            return Ok(effect.clone());
        }
        let effect = self.near.effect(&step)?;
        self.effects[index] = Some(effect.clone());
        Ok(effect)
    }
}

impl From<EffectError> for Box<Problem> {
    fn from(error: EffectError) -> Box<Problem> {
        match error {
            EffectError::Top(error) => error.into(),
            EffectError::Response(error) => error.into(),
            other => Problem::said(other.kind(), other.to_string()),
        }
    }
}
