//! A played note and a tap, by their Fourier series and by their own samples.

use std::f64::consts::{PI, TAU};

use super::oscillators;
use crate::response::{Bridge, BridgeFeet, Complex, ModalBasis, PlayedNote, Port, Sawtooth, TapTone};
use crate::statics::PointLoad;

/// The definition of Fourier's coefficients, integrated by the midpoint rule over a period: F/(πn), all sines.
#[test]
fn a_sawtooth_has_its_fourier_series() {
    let note = Sawtooth { note_hz: 196.0, peak_to_peak_n: 0.7 };
    let harmonics = note.harmonics(10.5 * 196.0);
    assert_eq!(harmonics.len(), 10);
    let steps = 20_000;
    for (hz, amplitude) in harmonics {
        let coefficient: Complex = (0..steps)
            .map(|step| {
                let t = (f64::from(step) + 0.5) / f64::from(steps) / note.note_hz;
                Complex::from_polar(2.0 * note.force_n(t) / f64::from(steps), -TAU * hz * t)
            })
            .sum();
        assert!((coefficient - amplitude).norm() < 1e-6, "{hz} Hz: {coefficient} against {amplitude}");
    }
}

/// Its harmonics put together again, away from the jump, where the rest of the series is below 1/(πN sin(π t/T)).
#[test]
fn harmonics_in_step_are_the_sawtooth_again() {
    let note = Sawtooth { note_hz: 440.0, peak_to_peak_n: 2.0 };
    let harmonics = note.harmonics(400.5 * 440.0);
    for phase in [0.7, 1.9, 3.3, 5.0] {
        let sum: f64 = harmonics.iter().map(|(hz, amplitude)| (amplitude * note.turned(*hz, phase)).re).sum();
        let exact = note.force_n(phase / TAU / note.note_hz);
        assert!((sum - exact).abs() < 2.0 / (PI * 400.0 * (0.5 * phase).sin()), "{phase}: {sum} against {exact}");
    }
    assert!(Sawtooth::of_note(0.0).is_err() && Sawtooth::of_note(f64::NAN).is_err());
}

/// The frequency near `near_hz` at which samples have the largest sum with e^{−iωt}, sought to 0.01 Hz.
fn heard_hz(samples: &[f32], rate_hz: f64, near_hz: f64) -> f64 {
    let size = |hz: f64| -> f64 {
        let turn = Complex::from_polar(1.0, -TAU * hz / rate_hz);
        let mut now = Complex::from(1.0);
        let mut sum = Complex::default();
        for sample in samples {
            sum += now * f64::from(*sample);
            now *= turn;
        }
        sum.norm()
    };
    let candidates = (-300..=300).map(|step| near_hz + 0.01 * f64::from(step));
    candidates.map(|hz| (hz, size(hz))).max_by(|a, b| a.1.total_cmp(&b.1)).unwrap().0
}

#[test]
fn a_tap_sounds_at_its_modes_and_no_louder_than_asked() {
    let (frequencies, losses) = ([82.3, 147.9, 305.2, 1210.7, 30_000.0], [0.003; 5]);
    let basis = oscillators(&frequencies, &losses);
    let port = Port::outward(&basis, [0.4, 0.4]).unwrap();
    let tone = TapTone::new(&basis, &port, &port, 0.0).unwrap();
    let rate = 44_100.0;
    let samples = tone.samples(rate, 2.0, 0.9).unwrap();
    assert_eq!(samples.len(), 88_200);
    let largest = samples.iter().fold(0.0_f32, |largest, sample| largest.max(sample.abs()));
    assert!((largest - 0.9).abs() < 1e-6);
    assert_eq!(tone.peaks().len(), 5);
    for peak in &tone.peaks()[..4] {
        let heard = heard_hz(&samples, rate, peak.frequency_hz);
        assert!((heard - peak.frequency_hz).abs() < 0.1, "{heard} against {}", peak.frequency_hz);
    }
    // Of one mode alone, what is left after ln 1000/(πηf) is a thousandth, 60 dB: a structural loss factor is twice the share of critical
    // damping (Cremer, Heckl & Petersson 2005, ch. 3; from memory).
    let alone = oscillators(&frequencies[..1], &[0.01]);
    let port = Port::outward(&alone, [0.4, 0.4]).unwrap();
    let tone = TapTone::new(&alone, &port, &port, 0.0).unwrap();
    let samples = tone.samples(rate, 5.0, 1.0).unwrap();
    let at = |t: f64| {
        let around = (t * rate) as usize;
        samples[around..around + (rate / frequencies[0]) as usize].iter().fold(0.0_f32, |most, own| most.max(own.abs()))
    };
    let fall = 20.0 * (at(0.5 + 1000.0_f64.ln() / (PI * 0.01 * frequencies[0])) / at(0.5)).log10();
    assert!((fall + 60.0).abs() < 0.5, "{fall} dB");
}

/// The half sine as it pushes, integrated: a mode gets ∫ f e^{−iωt} dt of it.
#[test]
fn a_soft_tip_leaves_high_modes_out_as_its_half_sine_says() {
    let contact = 0.002;
    let basis = oscillators(&[50.0, 250.0, 400.0, 900.0], &[0.01; 4]);
    let port = Port::outward(&basis, [0.4, 0.4]).unwrap();
    let sudden = TapTone::new(&basis, &port, &port, 0.0).unwrap();
    let soft = TapTone::new(&basis, &port, &port, contact).unwrap();
    let steps = 10_000;
    for (soft, sudden) in soft.peaks().iter().zip(sudden.peaks()) {
        let push = |step: i32| {
            let t = (f64::from(step) + 0.5) / f64::from(steps) * contact;
            // About the push's middle, where the transform is real; momentum 1 N·s.
            let force = PI / (2.0 * contact) * (PI * t / contact).sin();
            force * (TAU * soft.frequency_hz * (t - 0.5 * contact)).cos() * contact / f64::from(steps)
        };
        let exact: f64 = (0..steps).map(push).sum();
        assert!((soft.amplitude_m_s / sudden.amplitude_m_s - exact).abs() < 1e-6, "{} Hz", soft.frequency_hz);
    }
    assert!(sudden.samples(44_100.0, 31.0, 1.0).is_err() && sudden.samples(44_100.0, 1.0, 1.5).is_err());
    assert!(TapTone::new(&basis, &port, &port, -1.0).is_err());
    assert_eq!(sudden.below(300.0).peaks().len(), 2);
}

/// In step, harmonics add up to one motion, whichever way it is read.
#[test]
fn a_note_is_the_sum_of_its_harmonics() {
    let patches = [vec![(0_u32, 1.0)], vec![(1_u32, 1.0)]];
    let note = Sawtooth { note_hz: 196.0, peak_to_peak_n: 1.0 };
    let basis = oscillators(&[300.0, 1100.0], &[0.02, 0.03]);
    let bridge = Bridge { feet_apart_m: 1.0, ..Bridge::of_stop(0.195) };
    // Feet on nodes that differ in one mode.
    let mut arrays = basis.arrays().clone();
    arrays.shapes[2] = 0.3;
    let basis = ModalBasis::new(arrays).unwrap();
    let feet = BridgeFeet::on(&basis, &patches).unwrap();
    let port = Port::outward(&basis, [0.4, 0.4]).unwrap();
    let played = PlayedNote::new(basis.resonators(), &bridge, &feet, note, 4000.0);
    assert_eq!(played.harmonics().len(), 20);
    let shares = played.shares(&[&port]);
    assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12 && shares[0] > shares[19]);
    for phase in [0.0, 0.4, 3.0, 5.9] {
        let by_fields: f32 = played
            .harmonics()
            .iter()
            .map(|own| {
                let field = own.field(&basis);
                let turned = note.turned(own.hz(), phase);
                field.re[26] * turned.re as f32 - field.im[26] * turned.im as f32
            })
            .sum();
        let field = played.field(&basis, phase);
        assert!((field[26] - by_fields).abs() < 1e-5 * by_fields.abs() + 1e-12, "{phase}: {} {by_fields}", field[26]);
        let node = Port::new(&basis, &[PointLoad { node: 4, force_n: [0.0, 0.0, 1.0] }]).unwrap();
        let read = played.displacement(&node, phase);
        assert!((read - f64::from(field[26])).abs() < 1e-5 * read.abs() + 1e-12, "{phase}");
    }
}
