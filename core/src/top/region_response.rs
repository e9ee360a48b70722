//! What the regions of a top do when it is driven, at any frequency.

use crate::regions::{RegionKind, Regions};
use crate::response::{Complex, ModalBasis, ModalMotion, Port, QuadraticForm};

const MM_PER_M: f64 = 1e3;

/// The regions' energies and motions as readings of modal amplitudes: made once, then a thousand frequencies cost no field.
#[derive(Debug, Clone)]
pub struct RegionResponse {
    regions: Vec<OneRegion>,
}

#[derive(Debug, Clone)]
struct OneRegion {
    kind: RegionKind,
    area_m2: f64,
    /// Σ mass |u|².
    weighed: QuadraticForm,
    /// Mean by area of |u·n|².
    outward: QuadraticForm,
    volume: Port,
    mean: Port,
}

impl RegionResponse {
    /// Of the nodes of `basis` in `regions`, which are those of the same top.
    ///
    /// Cost: four multiplications for each pair of modes and each node; some tenth of a second for a hundred modes on a standard mesh.
    #[must_use]
    pub fn new(basis: &ModalBasis, regions: &Regions) -> Self {
        let surface = basis.surface();
        let kinds: Vec<Option<RegionKind>> = surface
            .places_m
            .iter()
            .map(|place| regions.at([place[0] * MM_PER_M, place[1] * MM_PER_M]).map(|region| region.kind))
            .collect();
        let of = |kind: RegionKind| {
            let own = |values: &[f64]| -> Vec<f64> {
                values.iter().zip(&kinds).map(|(value, own)| if *own == Some(kind) { *value } else { 0.0 }).collect()
            };
            let areas = own(&surface.areas_m2);
            let area_m2 = areas.iter().sum::<f64>();
            let shares: Vec<f64> = areas.iter().map(|own| own / area_m2.max(f64::MIN_POSITIVE)).collect();
            OneRegion {
                kind,
                area_m2,
                weighed: QuadraticForm::of_displacements(basis, &own(&surface.masses_kg)),
                outward: QuadraticForm::of_outward(basis, &shares),
                volume: Port::outward_sum(basis, &areas),
                mean: Port::outward_sum(basis, &shares),
            }
        };
        Self { regions: regions.regions.iter().map(|region| of(region.kind)).collect() }
    }

    /// The regions, in the order of everything here.
    pub fn kinds(&self) -> impl Iterator<Item = RegionKind> + '_ {
        self.regions.iter().map(|region| region.kind)
    }

    /// (region): share of the top's area.
    pub fn area_shares(&self) -> impl Iterator<Item = f64> + '_ {
        let whole: f64 = self.regions.iter().map(|region| region.area_m2).sum();
        self.regions.iter().map(move |region| region.area_m2 / whole)
    }

    /// (region): share of the kinetic energy; they add up to one where anything moves. By lumped masses and without what
    /// turning takes, so that the sum over all regions differs a little from [`ModalMotion::kinetic_energy_j`].
    #[must_use]
    pub fn energy_shares(&self, motion: &ModalMotion) -> Vec<f64> {
        let energies: Vec<f64> = self.regions.iter().map(|region| motion.of_velocities(&region.weighed)).collect();
        let whole: f64 = energies.iter().sum();
        energies.iter().map(|own| if whole > 0.0 { own / whole } else { 0.0 }).collect()
    }

    /// The mean square, over its area, of the outward velocity's peak of the region at `place` in [`RegionResponse::kinds`], m²/s²; zero
    /// where there is none.
    #[must_use]
    pub fn outward_square(&self, place: usize, motion: &ModalMotion) -> f64 {
        self.regions.get(place).map_or(0.0, |region| motion.of_velocities(&region.outward).max(0.0))
    }

    /// (region): volume velocity outwards, m³/s; they add up to the top's.
    #[must_use]
    pub fn volume_m3_s(&self, motion: &ModalMotion) -> Vec<Complex> {
        self.regions.iter().map(|region| motion.velocity(&region.volume)).collect()
    }

    /// (region): what it adds to the top's volume velocity, as a share of it: Re(U_own/U). They add up to one; those that pump against the rest
    /// are negative. Zeros where nothing is pumped, as by a top with equal sides that rocks: what is left of the sum then is what modes err by.
    #[must_use]
    pub fn volume_shares(&self, motion: &ModalMotion) -> Vec<f64> {
        /// Of all that regions move; modes are accurate to millionths.
        const NOTHING: f64 = 1e-5;
        let own = self.volume_m3_s(motion);
        let (whole, moved): (Complex, f64) = (own.iter().sum(), own.iter().map(|own| own.norm()).sum());
        let is_pumped = whole.norm() > NOTHING * moved;
        own.iter().map(|own| if is_pumped { (own * whole.conj()).re / whole.norm_sqr() } else { 0.0 }).collect()
    }

    /// (region): phase of its mean outward motion against the island's, degrees from −180 to 180; zero means that they go together. None
    /// without an island.
    #[must_use]
    pub fn phases_deg(&self, motion: &ModalMotion) -> Option<Vec<f64>> {
        let island = self.regions.iter().find(|region| region.kind == RegionKind::Island)?;
        let against = motion.displacement(&island.mean).conj();
        Some(
            self.regions
                .iter()
                .map(|region| (motion.displacement(&region.mean) * against).arg().to_degrees())
                .collect(),
        )
    }
}
