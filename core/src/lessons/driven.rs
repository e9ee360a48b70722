//! Figures of a top that a bow drives through its bridge.

use super::figure::Figure;
use super::{LessonError, Reading};
use crate::mesh::MeshSize;
use crate::modes::ModesRequest;
use crate::regions::{RegionKind, Regions};
use crate::response::{Bridge, BridgeFeet, Complex, ModalBasis, Resonators, Sweep};
use crate::top::{DrivableModes, Figure as Summed, RegionResponse, ResponseFigures, Stages};

/// As the driven top on the page.
const REQUEST: ModesRequest = ModesRequest { most: ModesRequest::LIMIT, below_hz: Some(6000.0), prove: false };
/// As in [`ResponseFigures`]: assumed, no source.
const LOSSES_SCATTER: f64 = 0.2;

/// Frequencies in half an octave: a resonance is some two steps wide.
const POINTS: usize = 25;

/// A top with its modes up to 6 kHz and a bridge on it.
pub(super) struct Driven {
    basis: ModalBasis,
    bridge: Bridge,
    feet: BridgeFeet,
    regions: RegionResponse,
    wood_scatter: f64,
}

impl Driven {
    pub(super) fn new(top: &mut Stages) -> Result<Self, LessonError> {
        let (bridge, stands_at_m) = (top.bridge(), top.bridge_stands_at_m());
        let DrivableModes { arrays, wood_scatter } = top.drivable_modes(MeshSize::Standard, &bridge, &REQUEST)?;
        let basis = ModalBasis::new(arrays)?;
        let patches = bridge.patches(basis.surface(), stands_at_m).ok_or(LessonError::NoBridge)?;
        let feet = BridgeFeet::on(&basis, &patches)?;
        let shape = top.shape()?;
        let regions = RegionResponse::new(&basis, &Regions::new(&shape.outline, &shape.holes));
        Ok(Self { basis, bridge, feet, regions, wood_scatter })
    }

    /// Share of the regions of `kinds` in the kinetic energy, a mean over half an octave about `hz`, %: at one frequency alone it would be
    /// the nearest mode's.
    pub(super) fn energy_share(&self, kinds: &[RegionKind], hz: f64) -> Result<Reading, LessonError> {
        let own: Vec<bool> = self.regions.kinds().map(|kind| kinds.contains(&kind)).collect();
        let at = |resonators: &Resonators, hz: f64| {
            let force = [Complex::from(1.0), Complex::default()];
            let forces = self.bridge.forces(&self.feet, resonators, force, hz);
            let shares = self.regions.energy_shares(&resonators.motion(&self.feet.loaded(&forces), hz));
            100.0 * shares.iter().zip(&own).filter(|(_, own)| **own).map(|(share, _)| share).sum::<f64>()
        };
        let quarter = 2_f64.powf(0.25);
        let band = Sweep::by_ratio(hz / quarter, hz * quarter, POINTS)?;
        let share = |resonators: &Resonators| {
            band.frequencies_hz().iter().map(|hz| at(resonators, *hz)).sum::<f64>() / POINTS as f64
        };
        let resonators = self.basis.resonators();
        let half = |low: Resonators, high: Resonators| 0.5 * (share(&high) - share(&low));
        let scaled = |frequencies_by, losses_by| resonators.rescaled(frequencies_by, losses_by);
        let (by, losses) = (self.wood_scatter, LOSSES_SCATTER);
        let wood = vec![
            half(scaled(1.0 - by, 1.0), scaled(1.0 + by, 1.0)),
            half(scaled(1.0, 1.0 - losses), scaled(1.0, 1.0 + losses)),
        ];
        Ok(Reading::new(share(resonators), wood, [0.0; 2]))
    }

    /// One of the figures that sum a response up.
    pub(super) fn figure(&self, figure: Figure) -> Result<Reading, LessonError> {
        let all =
            ResponseFigures::new(&self.regions, self.basis.resonators(), &self.bridge, &self.feet, self.wood_scatter)?;
        let (found, region) = match figure {
            Figure::IslandMobility => (all.island_mobility_db, "island"),
            Figure::WingActivity => (all.wing_activity, "wings"),
            _ => (Some(all.bass_over_treble_db), ""),
        };
        let there = || self.regions.kinds().map(RegionKind::key).collect::<Vec<_>>().join(", ");
        let Summed { value, sure_within } =
            found.ok_or_else(|| LessonError::NoRegion { region: region.to_owned(), there: there() })?;
        Ok(Reading::scattered(value, sure_within))
    }
}
