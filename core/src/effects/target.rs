//! The smallest change of the top that leads to a target.

use super::least_change::least_change;
use super::step::applied;
use super::{Effect, EffectError, NearTop, Step, StepGroup};
use crate::design::{Design, Measure};
use crate::top::ResponseFigures;

/// How much a missed target weighs beside the changes: a whole target missed weighs like a hundred steps.
const MISSED_WEIGHS: f64 = 100.0;
/// Times that the target is corrected by what the last proposal really does.
const CORRECTIONS: usize = 3;
/// A proposal this near its target, as a share of it, is there.
const NEAR_ENOUGH: f64 = 0.02;

/// What is to change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wanted {
    /// The frequency of a mode, counted from zero, by so many Hz.
    ModeHz {
        /// Which.
        mode: usize,
        /// By how much.
        change_hz: f64,
    },
    /// The mobility of the island, by so many dB.
    IslandMobility {
        /// By how much.
        change_db: f64,
    },
    /// The mass, by so many grams.
    Mass {
        /// By how much.
        change_g: f64,
    },
}

/// A target and what holds on the way there.
#[derive(Debug, Clone, PartialEq)]
pub struct Target {
    /// What is to change.
    pub wanted: Wanted,
    /// Most that the mass may grow by, g.
    pub heavier_by_g: Option<f64>,
    /// Least width of every narrow place, mm.
    pub narrows_mm: Option<f64>,
    /// Whether the top is carved already: then wood is only taken off.
    pub carved: bool,
    /// What may change.
    pub allowed: Vec<StepGroup>,
    /// How many steps each control may go, at most.
    pub steps: f64,
}

/// A step and what it does.
#[derive(Debug, Clone, PartialEq)]
pub struct KnownStep {
    /// The step.
    pub step: Step,
    /// To first order.
    pub effect: Effect,
    /// What it makes of the response; none where that wasn't asked for.
    pub response: Option<ResponseFigures>,
}

/// A way towards a target.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// (step, shares of it), those that change anything.
    pub changes: Vec<(usize, f64)>,
    /// The design with them.
    pub design: Design,
    /// What the proposal really changes, worked out anew, in the target's unit; none where its shape could no longer be told.
    pub reached: Option<f64>,
    /// What was wanted.
    pub wanted: f64,
    /// Mass and narrows after it.
    pub mass_g: f64,
    /// (narrow place) mm.
    pub narrows_mm: Vec<f64>,
}

impl Wanted {
    fn change(&self) -> f64 {
        match *self {
            Self::ModeHz { change_hz, .. } => change_hz,
            Self::IslandMobility { change_db } => change_db,
            Self::Mass { change_g } => change_g,
        }
    }

    /// What a step does to it; nothing where that isn't known.
    fn effect_of(&self, known: &KnownStep) -> Option<f64> {
        match *self {
            Self::ModeHz { mode, .. } => known.effect.by_mode_hz.get(mode).copied(),
            Self::IslandMobility { .. } => known.response?.island_mobility_db.map(|figure| figure.value),
            Self::Mass { .. } => Some(known.effect.mass_g),
        }
    }
}

/// The smallest change, in squares of steps, that reaches `target` on the way that `known` steps open, each with its effect and, for the response,
/// what it makes of that. What can't be reached is missed by as little as the limits allow.
///
/// To first order the way is a least change within limits; since effects hold for small steps only, the proposal is worked out anew and the
/// target corrected by what it missed, up to three times.
///
/// # Errors
/// [`EffectError`] for a target that is no number or a mode that there isn't.
pub fn propose(near: &mut NearTop, known: &[KnownStep], target: &Target) -> Result<Proposal, EffectError> {
    let wanted = target.wanted.change();
    for (what, value) in [
        ("the change wanted", wanted),
        ("the mass allowed", target.heavier_by_g.unwrap_or(0.0)),
        ("the least width of the narrows", target.narrows_mm.unwrap_or(0.0)),
        ("the number of steps", target.steps),
    ] {
        if !value.is_finite() {
            return Err(EffectError::NotFinite { what, value });
        }
    }
    if let Wanted::ModeHz { mode, .. } = target.wanted {
        let count = near.modes().count();
        if mode >= count {
            return Err(EffectError::NoSuchMode { mode: mode + 1, count });
        }
    }
    let movable = movable(known, target);
    let limits = limits(near, known, &movable, target)?;
    let mut aim = wanted;
    let mut best: Option<Proposal> = None;
    for _ in 0..=CORRECTIONS {
        let shares = shares(known, &movable, &limits, target, aim);
        let proposal = worked_out(near, known, &movable, &shares, target)?;
        let missed = |own: &Proposal| own.reached.map_or(f64::INFINITY, |reached| (reached - wanted).abs());
        let reached = proposal.reached;
        if best.as_ref().is_none_or(|best| missed(&proposal) < missed(best)) {
            best = Some(proposal);
        }
        match reached {
            Some(reached) if (reached - wanted).abs() > NEAR_ENOUGH * wanted.abs() => aim += wanted - reached,
            _ => break,
        }
    }
    best.ok_or(EffectError::NotFinite { what: "the change wanted", value: wanted })
}

/// Index of a step and how far it may go, in steps.
struct Movable {
    step: usize,
    least: f64,
    most: f64,
}

fn movable(known: &[KnownStep], target: &Target) -> Vec<Movable> {
    let own = |(index, known): (usize, &KnownStep)| {
        let step = &known.step;
        let of_target = target.wanted.effect_of(known)?;
        if !target.allowed.contains(&step.group) || !of_target.is_finite() {
            return None;
        }
        let measure = Measure::of_path(step.measure);
        let room =
            |limit: fn(&Measure) -> f64| measure.map_or(f64::INFINITY, |own| (limit(own) - step.now) / step.change);
        let (mut least, mut most) =
            (-room(|own| own.least).abs().min(target.steps), room(|own| own.most).abs().min(target.steps));
        if target.carved {
            let [down, up] = taking_off(step);
            least = if down { least } else { 0.0 };
            most = if up { most } else { 0.0 };
        }
        (least < most).then_some(Movable { step: index, least, most })
    };
    known.iter().enumerate().filter_map(own).collect()
}

/// Whether a carved top lets a control go down and up. Arching and thickness go both ways: place by place it is seen to that wood is only
/// taken off.
fn taking_off(step: &Step) -> [bool; 2] {
    match step.group {
        StepGroup::Arching | StepGroup::Graduation => [true, true],
        StepGroup::SoundHoles => {
            // Holes can be cut wider.
            let wider = ["diameter_mm", "stem_width_mm", "lower_wing_hollow_mm"];
            [false, wider.iter().any(|end| step.measure.ends_with(end)) && !step.measure.contains("wing_width")]
        }
        // A bar can be planed, the post can be set elsewhere.
        StepGroup::Fittings if step.measure.starts_with("post") => [true, true],
        StepGroup::Fittings => [step.measure.ends_with("height_mm") || step.measure.ends_with("width_mm"), false],
        StepGroup::Outline | StepGroup::Rim => [false, false],
    }
}

/// Rows that hold whatever is aimed at: (coefficients over the movable steps, most).
fn limits(
    near: &mut NearTop,
    known: &[KnownStep],
    movable: &[Movable],
    target: &Target,
) -> Result<Vec<(Vec<f64>, f64)>, EffectError> {
    let mut rows = Vec::new();
    let unit = |at: usize, sign: f64| -> Vec<f64> {
        (0..movable.len()).map(|own| if own == at { sign } else { 0.0 }).collect()
    };
    for (at, own) in movable.iter().enumerate() {
        rows.push((unit(at, 1.0), own.most));
        rows.push((unit(at, -1.0), -own.least));
    }
    let row = |read: &dyn Fn(&Effect) -> f64| -> Vec<f64> {
        movable.iter().map(|own| read(&known[own.step].effect)).collect()
    };
    if let Some(heavier) = target.heavier_by_g {
        rows.push((row(&|effect| effect.mass_g), heavier.max(0.0)));
    }
    if let Some(least) = target.narrows_mm {
        for (place, own) in near.narrows().iter().enumerate() {
            // What is too narrow already may at least not become narrower.
            rows.push((row(&|effect| -effect.narrows_mm[place]), (own.width_mm - least).max(0.0)));
        }
    }
    if target.carved {
        let steps: Vec<&Step> = movable.iter().map(|own| &known[own.step].step).collect();
        rows.extend(near.taken_off(&steps)?);
    }
    Ok(rows)
}

/// (movable): how far each goes, in steps.
fn shares(known: &[KnownStep], movable: &[Movable], limits: &[(Vec<f64>, f64)], target: &Target, aim: f64) -> Vec<f64> {
    // One more unknown takes up what is missed, so that there is always a way.
    let mut rows: Vec<(Vec<f64>, f64)> =
        limits.iter().map(|(row, most)| (row.iter().copied().chain([0.0]).collect(), *most)).collect();
    let towards = aim.signum();
    let missed = aim.abs() / MISSED_WEIGHS;
    let effects = movable.iter().map(|own| -towards * target.wanted.effect_of(&known[own.step]).unwrap_or(0.0));
    rows.push((effects.chain([-missed]).collect(), -aim.abs()));
    // The limits are many and cost nothing; the target is one among them.
    let mut found = least_change(movable.len() + 1, &rows).changes;
    found.truncate(movable.len());
    found
}

/// What the shares make of the top, anew.
fn worked_out(
    near: &mut NearTop,
    known: &[KnownStep],
    movable: &[Movable],
    shares: &[f64],
    target: &Target,
) -> Result<Proposal, EffectError> {
    // What no ruler shows stays: a twentieth of a millimetre of arch, a hundredth of thickness.
    const NOTHING: f64 = 0.1;
    let changes: Vec<(usize, f64)> = movable
        .iter()
        .zip(shares)
        .filter(|(_, share)| share.abs() > NOTHING)
        .map(|(own, share)| (own.step, *share))
        .collect();
    let parts: Vec<(&Step, f64)> = changes.iter().map(|&(step, share)| (&known[step].step, share)).collect();
    let design = applied(&parts, near.design())?;
    let after = near.after(&design, &target.wanted)?;
    Ok(Proposal {
        changes,
        design,
        reached: after.change,
        wanted: target.wanted.change(),
        mass_g: after.mass_g,
        narrows_mm: after.narrows_mm,
    })
}
