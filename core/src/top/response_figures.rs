//! A top's response in a few figures.

use serde::Serialize;

use super::RegionResponse;
use crate::patience::{self, GivenUp};
use crate::regions::RegionKind;
use crate::response::{Bridge, BridgeFeet, Complex, ModalMotion, Port, Resonators, ResponseError, Sweep, decibels};

/// Up to here a top on its ribs has the few modes in which the island swings with the bridge as a whole; common practice, no source.
const ISLAND_BAND_HZ: [f64; 2] = [100.0, 800.0];
/// From here to where the ear is keenest the wings have modes of their own; common practice, no source.
const WING_BAND_HZ: [f64; 2] = [1_500.0, 5_000.0];
/// Frequencies in a band: at spruce's 1 to 2 % of losses a resonance is two or three steps wide.
const POINTS: usize = 300;
/// Loss factors of spruce sheets differ by so much from piece to piece: assumed, no source.
pub(crate) const LOSSES_SCATTER: f64 = 0.2;

/// A figure and how sure it is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Figure {
    /// Its value.
    pub value: f64,
    /// One standard deviation that the wood's scatter makes, in the same unit.
    pub sure_within: f64,
}

/// What the bridge makes of a top, in figures that a maker can compare.
///
/// Each is a mean over a band of frequencies, for a force of 1 N along the bow at the top of a weightless bridge. Single resonances shift with
/// the wood, and curves with them; means over a band shift much less.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ResponseFigures {
    /// How freely the island swings: level of the root mean square of its outward velocity over its area and 100 to 800 Hz, dB re 1 (m/s)/N;
    /// none without an island.
    pub island_mobility_db: Option<Figure>,
    /// How much the wings flap: their share of the kinetic energy over 1.5 to 5 kHz, over their share of the wood's area. One: they move like
    /// the rest. None without wings.
    pub wing_activity: Option<Figure>,
    /// Level of the outward velocity of the bass foot over that of the treble foot, over 100 to 800 Hz, dB; above zero the bass side
    /// moves more.
    pub bass_over_treble_db: Figure,
}

/// The figures of one top as it is, with all frequencies lower and higher, and with all losses lower and higher.
#[derive(Debug, Clone)]
pub struct BandFigures([Bands; 5]);

impl BandFigures {
    /// Of a top with `regions`, driven through `bridge` on `feet`; all of one basis, whose resonators are `resonators`.
    ///
    /// How sure each is: it is worked out again with all frequencies raised and lowered by `frequencies_within` (a share: one standard
    /// deviation of what the wood does to a frequency, see [`Certainty::wood_pct`](crate::modes::Certainty)), and with all losses by a
    /// fifth; half of the differences, added as squares. An honest but simple estimate: wood that differs only along or only across the grain moves modes
    /// against each other, which isn't in it.
    ///
    /// Cost: five sweeps of 600 frequencies.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] for a scatter below zero or above a half.
    pub fn new(
        regions: &RegionResponse,
        resonators: &Resonators,
        bridge: &Bridge,
        feet: &BridgeFeet,
        frequencies_within: f64,
    ) -> Result<Self, ResponseError> {
        ResponseError::limit("the scatter of the frequencies", frequencies_within, -f64::MIN_POSITIVE, 0.5)?;
        let of = |frequencies_by: f64, losses_by: f64| {
            Bands::new(regions, &resonators.rescaled(frequencies_by, losses_by), bridge, feet)
        };
        Ok(Self([
            of(1.0, 1.0)?,
            of(1.0 - frequencies_within, 1.0)?,
            of(1.0 + frequencies_within, 1.0)?,
            of(1.0, 1.0 - LOSSES_SCATTER)?,
            of(1.0, 1.0 + LOSSES_SCATTER)?,
        ]))
    }

    /// The figures.
    #[must_use]
    pub fn figures(&self) -> ResponseFigures {
        ResponseFigures::of(|read| self.each(read))
    }

    /// What they differ by from those of another top of the same board: both are lower or higher together where the wood is, so that the
    /// difference is surer than either.
    #[must_use]
    pub fn change_from(&self, before: &Self) -> ResponseFigures {
        ResponseFigures::of(|read| {
            let (own, other) = (self.each(read)?, before.each(read)?);
            Some(std::array::from_fn(|at| own[at] - other[at]))
        })
    }

    fn each(&self, read: Read) -> Option<[f64; 5]> {
        let [middle, slow, fast, lively, dull] = self.0.each_ref().map(read);
        Some([middle?, slow?, fast?, lively?, dull?])
    }
}

type Read = fn(&Bands) -> Option<f64>;

impl ResponseFigures {
    fn of(each: impl Fn(Read) -> Option<[f64; 5]>) -> Self {
        let figure = |read: Read| {
            let [value, slow, fast, lively, dull] = each(read)?;
            Some(Figure { value, sure_within: (0.5 * (fast - slow)).hypot(0.5 * (dull - lively)) })
        };
        let both_feet = figure(|bands| Some(bands.bass_over_treble_db));
        Self {
            island_mobility_db: figure(|bands| bands.island_db),
            wing_activity: figure(|bands| bands.wing_activity),
            bass_over_treble_db: both_feet.unwrap_or(Figure { value: 0.0, sure_within: 0.0 }),
        }
    }
}

/// The figures themselves.
#[derive(Debug, Clone)]
struct Bands {
    island_db: Option<f64>,
    wing_activity: Option<f64>,
    bass_over_treble_db: f64,
}

impl Bands {
    fn new(
        regions: &RegionResponse,
        resonators: &Resonators,
        bridge: &Bridge,
        feet: &BridgeFeet,
    ) -> Result<Self, ResponseError> {
        // The bow's newton towards the treble side.
        let forces = feet.loaded(&bridge.weightless_forces([Complex::from(1.0), Complex::default()]));
        let kinds: Vec<RegionKind> = regions.kinds().collect();
        let wing: Vec<bool> = kinds.iter().map(|kind| kind.is_wing()).collect();
        let island = kinds.iter().position(|kind| *kind == RegionKind::Island);

        let low = motions(resonators, &forces, ISLAND_BAND_HZ)?;
        let island_db = match island {
            Some(island) => {
                let square = |motion: &ModalMotion| regions.outward_square(island, motion);
                Some(decibels(mean(&low, square)?.sqrt(), 1.0))
            }
            None => None,
        };
        let foot = |side: usize| mean(&low, |motion| motion.velocity(&feet.outward[side]).norm_sqr()).map(f64::sqrt);
        let bass_over_treble_db = decibels(foot(0)?, foot(1)?);

        let area_of_wings: f64 =
            regions.area_shares().zip(&wing).filter(|(_, wing)| **wing).map(|(share, _)| share).sum();
        let wing_activity = if area_of_wings > 0.0 {
            let of_wings = |motion: &ModalMotion| {
                regions.energy_shares(motion).iter().zip(&wing).filter(|(_, wing)| **wing).map(|(share, _)| share).sum()
            };
            Some(mean(&motions(resonators, &forces, WING_BAND_HZ)?, of_wings)? / area_of_wings)
        } else {
            None
        };
        Ok(Self { island_db, wing_activity, bass_over_treble_db })
    }
}

fn motions(
    resonators: &Resonators,
    forces: &[(Complex, &Port)],
    [from_hz, to_hz]: [f64; 2],
) -> Result<Vec<ModalMotion>, ResponseError> {
    let sweep = Sweep::by_ratio(from_hz, to_hz, POINTS)?;
    Ok(sweep.frequencies_hz().iter().map(|&hz| resonators.motion(forces, hz)).collect())
}

fn mean(motions: &[ModalMotion], read: impl Fn(&ModalMotion) -> f64) -> Result<f64, GivenUp> {
    let mut sum = 0.0;
    for motion in motions {
        patience::check()?;
        sum += read(motion);
    }
    Ok(sum / motions.len().max(1) as f64)
}
