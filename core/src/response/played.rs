//! What a bowed note makes of a shell: the motions of all its harmonics at once.

use super::{Bridge, BridgeFeet, Complex, ComplexField, ModalBasis, ModalMotion, Port, Resonators, Sawtooth};

/// A note played with the bow: its harmonics and the motion that each makes.
#[derive(Debug, Clone, PartialEq)]
pub struct PlayedNote {
    note: Sawtooth,
    harmonics: Vec<ModalMotion>,
}

impl PlayedNote {
    /// `note` acting along the bow at the top of `bridge` on `feet`, with all harmonics up to `to_hz`: beyond the last mode of a basis
    /// ([`ModalBasis::complete_to_hz`]) they are not known.
    #[must_use]
    pub fn new(resonators: &Resonators, bridge: &Bridge, feet: &BridgeFeet, note: Sawtooth, to_hz: f64) -> Self {
        let moved = |(hz, force): (f64, Complex)| {
            let forces = bridge.forces(feet, resonators, [force, Complex::default()], hz);
            resonators.motion(&feet.loaded(&forces), hz)
        };
        Self { note, harmonics: note.harmonics(to_hz).into_iter().map(moved).collect() }
    }

    /// (harmonic): the motion of each, from the note itself upwards.
    #[must_use]
    pub fn harmonics(&self) -> &[ModalMotion] {
        &self.harmonics
    }

    /// (harmonic): share of each in the mean square of the velocity at `ports` together; they add up to one where anything moves.
    #[must_use]
    pub fn shares(&self, ports: &[&Port]) -> Vec<f64> {
        let square = |own: &ModalMotion| ports.iter().map(|port| own.velocity(port).norm_sqr()).sum();
        let squares: Vec<f64> = self.harmonics.iter().map(square).collect();
        let whole: f64 = squares.iter().sum();
        squares.iter().map(|own| if whole > 0.0 { own / whole } else { 0.0 }).collect()
    }

    /// Displacement at `port`, m, when the note's own phase is `phase`: 0 to 2π is one period, as slow as one likes.
    #[must_use]
    pub fn displacement(&self, port: &Port, phase: f64) -> f64 {
        let turned = |own: &ModalMotion| (own.displacement(port) * self.note.turned(own.hz(), phase)).re;
        self.harmonics.iter().map(turned).sum()
    }

    /// (node, dof): where everything is at that phase, m and rad. Cost: that of one field, however many harmonics there are.
    #[must_use]
    pub fn field(&self, basis: &ModalBasis, phase: f64) -> Vec<f32> {
        let mut now = vec![0.0; basis.count()];
        for harmonic in &self.harmonics {
            let turned = self.note.turned(harmonic.hz(), phase);
            now.iter_mut().zip(harmonic.amplitudes()).for_each(|(sum, own)| *sum += (own * turned).re);
        }
        ComplexField::real(basis, &now)
    }
}
