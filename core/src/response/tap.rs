//! What a tap sounds like: modes that ring and die away.

use std::f64::consts::TAU;

use super::{Complex, ModalBasis, Port, ResponseError};

/// One mode of a tap tone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TapPeak {
    /// Hz.
    pub frequency_hz: f64,
    /// Velocity at the place listened to just after a blow of 1 N·s, m/s; with its sign.
    pub amplitude_m_s: f64,
    /// Amplitudes die away as e^{−decay t}, 1/s: half the loss factor times ω. It has fallen by 60 dB after 6.9/decay.
    pub decay_per_s: f64,
}

/// The velocity at one place after a short blow at another: each mode rings at its own frequency and dies away at its own rate.
///
/// A blow of 1 N·s gives mode r the velocity φᵣᵀd; structural losses die away as viscous ones of ηᵣωᵣ/2 would (Cremer, Heckl &
/// Petersson 2005, ch. 3; from memory), which holds for small losses. Rigid motions make no sound, and residual vectors aren't modes: both are left out.
#[derive(Debug, Clone, PartialEq)]
pub struct TapTone {
    peaks: Vec<TapPeak>,
}

impl TapTone {
    /// Of a tap at `tapped`, heard at `heard`, both ports of `basis`. A [`Port::volume`] hears what radiates at low
    /// frequency.
    ///
    /// `contact_s` is how long the tip touches the wood: a half sine of that length, which takes from the high modes. With zero the
    /// blow is sudden.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] for a contact shorter than nothing or longer than a tenth of a second.
    pub fn new(basis: &ModalBasis, tapped: &Port, heard: &Port, contact_s: f64) -> Result<Self, ResponseError> {
        ResponseError::limit("the contact in s", contact_s, -f64::MIN_POSITIVE, 0.1)?;
        let peak = |((own, loss), (tapped, heard)): ((f64, f64), (&f64, &f64))| TapPeak {
            frequency_hz: own / TAU,
            amplitude_m_s: tapped * heard * half_sine(own * contact_s),
            decay_per_s: 0.5 * loss * own,
        };
        let ports = tapped.by_mode().iter().zip(heard.by_mode());
        let modes = basis.resonators().each().zip(ports).enumerate();
        let elastic = modes.filter(|(mode, _)| basis.elastic().contains(mode));
        Ok(Self { peaks: elastic.map(|(_, mode)| peak(mode)).collect() })
    }

    /// Without modes above `hz`.
    #[must_use]
    pub fn below(mut self, hz: f64) -> Self {
        self.peaks.retain(|peak| peak.frequency_hz <= hz);
        self
    }

    /// Its modes, by frequency.
    #[must_use]
    pub fn peaks(&self) -> &[TapPeak] {
        &self.peaks
    }

    /// (sample): `length_s` of it at `rate_hz`, scaled so that the largest magnitude is `loudest`.
    ///
    /// Modes at half the rate and above are left out, since they would sound as others. Cost: four multiplications for each mode
    /// and sample.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] for a rate above 192 kHz, more than 30 s, or a level above one.
    pub fn samples(&self, rate_hz: f64, length_s: f64, loudest: f32) -> Result<Vec<f32>, ResponseError> {
        ResponseError::limit("the sample rate in Hz", rate_hz, 0.0, 192_000.0)?;
        ResponseError::limit("the length in s", length_s, 0.0, 30.0)?;
        ResponseError::limit("the loudest sample", loudest.into(), 0.0, 1.0)?;
        let mut sound = vec![0.0; (rate_hz * length_s) as usize];
        for peak in self.peaks.iter().filter(|peak| 2.0 * peak.frequency_hz < rate_hz) {
            let step = Complex::from_polar((-peak.decay_per_s / rate_hz).exp(), TAU * peak.frequency_hz / rate_hz);
            let mut now = Complex::from(peak.amplitude_m_s);
            for sample in &mut sound {
                *sample += now.re;
                now *= step;
            }
        }
        let largest = sound.iter().fold(0.0_f64, |largest, sample| largest.max(sample.abs()));
        let scale = if largest > 0.0 { f64::from(loudest) / largest } else { 0.0 };
        Ok(sound.iter().map(|sample| (sample * scale) as f32).collect())
    }
}

/// What a half sine as long as the phase `contact` of a mode gives it, over what a sudden blow of the same momentum gives:
/// cos(x/2)/(1 − (x/π)²), which is the Fourier transform of the half sine.
fn half_sine(contact: f64) -> f64 {
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};
    let off = contact - PI;
    if off.abs() < 1e-6 {
        // Both ends of the fraction vanish at π; its limit.
        return FRAC_PI_4;
    }
    let share = contact / PI;
    (FRAC_PI_2 * share).cos() / (1.0 - share * share)
}
