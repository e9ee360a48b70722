//! The motion of a shell at one frequency, by its modes.

use std::f64::consts::TAU;

use super::{Complex, ComplexField, ModalBasis, Port, QuadraticForm, Resonators};

/// Complex amplitudes of the modes at one frequency.
#[derive(Debug, Clone, PartialEq)]
pub struct ModalMotion {
    hz: f64,
    amplitudes: Vec<Complex>,
}

impl ModalMotion {
    pub(super) fn new(hz: f64, amplitudes: Vec<Complex>) -> Self {
        Self { hz, amplitudes }
    }

    /// The frequency, Hz.
    #[must_use]
    pub fn hz(&self) -> f64 {
        self.hz
    }

    /// (mode): complex amplitude, m√kg.
    #[must_use]
    pub fn amplitudes(&self) -> &[Complex] {
        &self.amplitudes
    }

    /// Displacement at `port`, m.
    #[must_use]
    pub fn displacement(&self, port: &Port) -> Complex {
        self.amplitudes.iter().zip(port.by_mode()).map(|(own, weight)| own * *weight).sum()
    }

    /// Velocity at `port`, m/s.
    #[must_use]
    pub fn velocity(&self, port: &Port) -> Complex {
        Complex::new(0.0, TAU * self.hz) * self.displacement(port)
    }

    /// Displacement and rotation of every node. Cost: four flops for each mode, node and degree of freedom.
    #[must_use]
    pub fn field(&self, basis: &ModalBasis) -> ComplexField {
        ComplexField::new(basis, &self.amplitudes)
    }

    /// Power that forces of complex amplitude (N) at ports put in on the time's mean, W: ½ Re(f* v).
    #[must_use]
    pub fn power_in_w(&self, forces: &[(Complex, &Port)]) -> f64 {
        forces.iter().map(|(force, port)| 0.5 * (force.conj() * self.velocity(port)).re).sum()
    }

    /// Power that the modes turn into heat on the time's mean, W: ½ ω ηᵣ ωᵣ² |qᵣ|² summed.
    #[must_use]
    pub fn power_lost_w(&self, resonators: &Resonators) -> f64 {
        let lost = |((own, loss), amplitude): ((f64, f64), &Complex)| loss * own * own * amplitude.norm_sqr();
        0.5 * TAU * self.hz * resonators.each().zip(&self.amplitudes).map(lost).sum::<f64>()
    }

    /// Kinetic energy on the time's mean, J: ¼ ω² |qᵣ|² summed.
    #[must_use]
    pub fn kinetic_energy_j(&self) -> f64 {
        0.25 * (TAU * self.hz).powi(2) * self.amplitudes.iter().map(Complex::norm_sqr).sum::<f64>()
    }

    /// `form` of the velocities: e.g. what a mean square of displacements reads, in (m/s)².
    #[must_use]
    pub fn of_velocities(&self, form: &QuadraticForm) -> f64 {
        (TAU * self.hz).powi(2) * form.at(&self.amplitudes)
    }
}
