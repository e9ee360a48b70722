//! The bridge's own resonance: its upper half rocks on the narrow waist above its legs.

use nalgebra::{Matrix3, Vector3};

use super::{Bridge, Complex, ResponseError};

/// Outside these the waist would be no waist.
const SLOWEST_HZ: f64 = 500.0;
const FASTEST_HZ: f64 = 10_000.0;

/// The upper half of a bridge on the spring of its waist: the lowest resonance in the bridge's plane (Reinicke 1973; Fletcher & Rossing 1998, The
/// Physics of Musical Instruments, 2nd ed., ch. 10; as one mass on one torsional spring: Woodhouse 2005, Acta Acustica 91, 155; all from
/// memory).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RockingHead {
    /// Of the waist over the feet, m.
    pub waist_height_m: f64,
    /// Part of the bridge's own mass, kg.
    pub mass_kg: f64,
    /// Height of its centre of mass over the feet, m.
    pub centre_height_m: f64,
    /// About the axis through its centre of mass along the strings, kg·m²; part of the bridge's own inertia.
    pub inertia_kg_m2: f64,
    /// What it swings at when the feet are held, Hz.
    pub alone_hz: f64,
    /// Of the waist's spring.
    pub loss_factor: f64,
}

/// What a head that swings freely on its spring changes for the rest of the bridge.
pub(super) struct Swung {
    /// To be added to the dynamic stiffness of sideways, turning and outwards.
    pub(super) stiffness: Matrix3<Complex>,
    /// To be added to the force, the couple and the force on them.
    pub(super) applied: Vector3<Complex>,
}

impl RockingHead {
    /// Usually 3 kHz (Fletcher & Rossing and Woodhouse, see [`RockingHead`]; makers trim the waist for it).
    pub const USUAL_HZ: f64 = 3000.0;

    /// The upper half of `bridge`, rocking at `alone_hz` on feet that are held: half of the mass above a waist at 15 mm of 33, its centre at 23,
    /// its inertia that of an even plate of 38 mm by 18 mm; what is left for the lower half is then a plate of 42 mm by 15 mm. An estimate, as
    /// is the loss factor, 0.02, that of maple across the grain.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] for a frequency outside 500 to 10 000 Hz.
    pub fn of(bridge: &Bridge, alone_hz: f64) -> Result<Self, ResponseError> {
        ResponseError::limit("the bridge's own frequency in Hz", alone_hz, SLOWEST_HZ, FASTEST_HZ)?;
        let scale = bridge.height_m / 0.033;
        let mass_kg = 0.5 * bridge.mass_kg;
        let [wide_m, high_m] = [0.038 * scale, 0.018 * scale];
        Ok(Self {
            waist_height_m: 0.015 * scale,
            mass_kg,
            centre_height_m: 0.023 * scale,
            inertia_kg_m2: mass_kg * (wide_m * wide_m + high_m * high_m) / 12.0,
            alone_hz,
            loss_factor: 0.02,
        })
    }

    /// About the waist, kg·m².
    fn inertia_at_waist(&self) -> f64 {
        let arm = self.centre_height_m - self.waist_height_m;
        self.inertia_kg_m2 + self.mass_kg * arm * arm
    }

    /// What its turning on the waist shares with the bridge moving sideways and turning as a whole: off the mass matrix's diagonal.
    fn shared_inertia(&self) -> Vector3<f64> {
        let moment = self.mass_kg * (self.centre_height_m - self.waist_height_m);
        Vector3::new(moment, self.inertia_kg_m2 + moment * self.centre_height_m, 0.0)
    }

    /// Its turn ψ on the waist, eliminated: from dᵀx + (κ(1 + iη) − ω²I)ψ = C with d = −ω² times [`Self::shared_inertia`] and the couple C about
    /// the waist that the strings put on it, `square` being ω².
    pub(super) fn swung(&self, square: f64, couple: Complex) -> Swung {
        let inertia = self.inertia_at_waist();
        let spring = (std::f64::consts::TAU * self.alone_hz).powi(2) * inertia;
        // An inertia of nothing would swing without end; no bridge has one, and a weightless one has no head.
        let turning = Complex::new(spring - square * inertia, self.loss_factor * spring);
        let shared = self.shared_inertia().map(|own| Complex::from(-square * own));
        Swung { stiffness: -(shared * shared.transpose()) / turning, applied: -shared * (couple / turning) }
    }
}
