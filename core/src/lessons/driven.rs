//! Figures of a top that a bow drives through its bridge.

use super::figure::Figure;
use super::{LessonError, Reading};
use crate::regions::RegionKind;
use crate::response::{Complex, Resonators, Sweep};
use crate::top::{DrivenTop, Figure as Summed, LOSSES_SCATTER};

/// Frequencies in half an octave: a resonance is some two steps wide.
const POINTS: usize = 25;

/// Share of the regions of `kinds` in the kinetic energy, a mean over half an octave about `hz`, %: at one frequency alone it would be
/// the nearest mode's.
pub(super) fn energy_share(top: &DrivenTop, kinds: &[RegionKind], hz: f64) -> Result<Reading, LessonError> {
    let own: Vec<bool> = top.regions.kinds().map(|kind| kinds.contains(&kind)).collect();
    let at = |resonators: &Resonators, hz: f64| {
        let force = [Complex::from(1.0), Complex::default()];
        let forces = top.bridge.forces(&top.feet, resonators, force, hz);
        let shares = top.regions.energy_shares(&resonators.motion(&top.feet.loaded(&forces), hz));
        100.0 * shares.iter().zip(&own).filter(|(_, own)| **own).map(|(share, _)| share).sum::<f64>()
    };
    let quarter = 2_f64.powf(0.25);
    let band = Sweep::by_ratio(hz / quarter, hz * quarter, POINTS)?;
    let share = |resonators: &Resonators| {
        band.frequencies_hz().iter().map(|hz| at(resonators, *hz)).sum::<f64>() / POINTS as f64
    };
    let resonators = top.basis.resonators();
    let half = |low: Resonators, high: Resonators| 0.5 * (share(&high) - share(&low));
    let scaled = |frequencies_by, losses_by| resonators.rescaled(frequencies_by, losses_by);
    let (by, losses) = (top.wood_scatter, LOSSES_SCATTER);
    let wood = vec![
        half(scaled(1.0 - by, 1.0), scaled(1.0 + by, 1.0)),
        half(scaled(1.0, 1.0 - losses), scaled(1.0, 1.0 + losses)),
    ];
    Ok(Reading::new(share(resonators), wood, [0.0; 2]))
}

/// One of the figures that sum a response up.
pub(super) fn figure(top: &DrivenTop, figure: Figure) -> Result<Reading, LessonError> {
    let all = top.figures()?.figures();
    let (found, region) = match figure {
        Figure::IslandMobility => (all.island_mobility_db, "island"),
        Figure::WingActivity => (all.wing_activity, "wings"),
        _ => (Some(all.bass_over_treble_db), ""),
    };
    let there = || top.regions.kinds().map(RegionKind::key).collect::<Vec<_>>().join(", ");
    let Summed { value, sure_within } =
        found.ok_or_else(|| LessonError::NoRegion { region: region.to_owned(), there: there() })?;
    Ok(Reading::scattered(value, sure_within))
}
