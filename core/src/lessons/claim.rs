//! What a lesson says that a figure does, and whether it does.

use serde::{Deserialize, Serialize};

use super::figure::{Figure, ModeWish, Push};
use super::{LessonError, Reading, driven, pushed, shaken};
use crate::design::Design;
use crate::mesh::MeshSize;
use crate::regions::{RegionKind, Regions};
use crate::top::{DrivenTop, Stages};

/// Which way a figure goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Goes {
    /// Up.
    Rises,
    /// Down.
    Falls,
    /// Neither.
    Stays,
}

/// What a lesson says that a figure does.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Claim {
    /// The figure.
    pub figure: Figure,
    /// Which mode it is read of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mode: Option<ModeWish>,
    /// At which frequency, Hz.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hz: Option<f64>,
    /// Of which region, by [`RegionKind::key`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub region: Option<String>,
    /// Under which push.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub push: Option<Push>,
    /// By what it is read after the change, where that is something else.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub then: Option<Then>,
    /// Which way it goes.
    pub goes: Goes,
    /// At least by this, or at most where it stays: in [`Figure::change_unit`].
    pub by: f64,
}

/// What a figure is read by after the change.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Then {
    /// Which mode.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mode: Option<ModeWish>,
    /// At which frequency, Hz.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hz: Option<f64>,
    /// Of which region.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub region: Option<String>,
}

/// What became of a claim.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Before the change.
    pub before: Reading,
    /// And after it.
    pub after: Reading,
    /// In [`Figure::change_unit`].
    pub change: f64,
    /// ± one standard deviation, in the same unit.
    pub change_within: f64,
    /// Whether both tops are of one board, so that what boards differ by moves both figures alike.
    pub same_board: bool,
    /// Whether the figure does what the claim says.
    pub shown: bool,
}

/// The wings together.
const WINGS: &str = "wings";

impl Claim {
    /// Works the figure out for both designs.
    ///
    /// Cost: seconds; two fine meshes or two hundred modes.
    ///
    /// # Errors
    /// [`LessonError`] where a design has no such figure.
    pub fn outcome(&self, before: &Design, after: &Design) -> Result<Outcome, LessonError> {
        let [first, last] = self.readings(before, after)?;
        // Rings that lean otherwise are the same board, cut otherwise.
        let board = |design: &Design| (design.wood.species, design.wood.measured);
        let same_board = board(before) == board(after);
        let [change, change_within] = first.change(&last, self.figure.scale(), same_board);
        let shown = match self.goes {
            Goes::Rises => change >= self.by,
            Goes::Falls => change <= -self.by,
            Goes::Stays => change.abs() <= self.by,
        };
        Ok(Outcome { before: first, after: last, change, change_within, same_board, shown })
    }

    fn readings(&self, before: &Design, after: &Design) -> Result<[Reading; 2], LessonError> {
        let mut tops = [before, after].map(|design| Stages::new(design.clone()));
        let then = self.then.clone().unwrap_or_default();
        let regions = [self.region.as_deref(), then.region.as_deref().or(self.region.as_deref())];
        let [first, last] = &mut tops;
        match self.figure {
            Figure::Frequency | Figure::IslandLift | Figure::WingFlap => {
                let wish = self.mode.ok_or(LessonError::Needs { figure: self.figure.word(), key: "mode" })?;
                shaken::readings(self.figure, [first, last], wish, then.mode)
            }
            Figure::EnergyShare => {
                let hz = self.hz.ok_or(LessonError::Needs { figure: self.figure.word(), key: "hz" })?;
                let [own, other] = regions.map(Option::unwrap_or_default);
                // One at a time: a driven top is large.
                let before = driven(first)?;
                let share = driven::energy_share(&before, &kinds(first, own)?, hz)?;
                let same = (first.design() == last.design()).then_some(before);
                let after = same.map_or_else(|| driven(last), Ok)?;
                Ok([share, driven::energy_share(&after, &kinds(last, other)?, then.hz.unwrap_or(hz))?])
            }
            Figure::IslandMobility | Figure::WingActivity | Figure::BassOverTreble => {
                let read = |top: &mut Stages| driven::figure(&driven(top)?, self.figure);
                Ok([read(first)?, read(last)?])
            }
            Figure::Give => {
                let push = self.push.ok_or(LessonError::Needs { figure: self.figure.word(), key: "push" })?;
                Ok([pushed::give(first, push)?, pushed::give(last, push)?])
            }
            Figure::EdgeStress => Ok([pushed::edge_stress(first)?, pushed::edge_stress(last)?]),
            Figure::Narrowest => {
                let [own, other] = regions.map(Option::unwrap_or_default);
                Ok([narrowest(first, own)?, narrowest(last, other)?])
            }
            Figure::Mass => Ok([mass(first)?, mass(last)?]),
        }
    }
}

fn driven(top: &mut Stages) -> Result<DrivenTop, LessonError> {
    top.driven(MeshSize::Standard, false)
}

fn mass(top: &mut Stages) -> Result<Reading, LessonError> {
    let value = top.carved(MeshSize::Standard)?.1.mass_g();
    let wood = vec![0.01 * top.design().wood.scatter().density_pct * value];
    Ok(Reading::new(value, wood, [0.0; 2]))
}

fn narrowest(top: &mut Stages, word: &str) -> Result<Reading, LessonError> {
    let shape = top.shape()?;
    let regions = Regions::new(&shape.outline, &shape.holes);
    let narrow = |kind: RegionKind| regions.get(kind).and_then(|region| region.narrowest);
    let width_mm = regions.regions.iter().find(|region| region.kind.key() == word).and_then(|own| narrow(own.kind));
    let there = || regions.regions.iter().map(|own| own.kind).filter(|kind| narrow(*kind).is_some());
    width_mm.map(|across| Reading::drawn(across.width_mm)).ok_or_else(|| no_region(word, there()))
}

/// The regions that a word stands for.
fn kinds(top: &mut Stages, word: &str) -> Result<Vec<RegionKind>, LessonError> {
    let shape = top.shape()?;
    let regions = Regions::new(&shape.outline, &shape.holes);
    let all = || regions.regions.iter().map(|region| region.kind);
    let kinds: Vec<RegionKind> =
        all().filter(|kind| if word == WINGS { kind.is_wing() } else { kind.key() == word }).collect();
    if kinds.is_empty() { Err(no_region(word, all())) } else { Ok(kinds) }
}

fn no_region(region: &str, there: impl Iterator<Item = RegionKind>) -> LessonError {
    let there: Vec<&str> = there.map(RegionKind::key).collect();
    LessonError::NoRegion { region: region.to_owned(), there: there.join(", ") }
}
