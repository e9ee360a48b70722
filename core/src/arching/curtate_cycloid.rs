//! The curtate cycloid, a family of arch curves.
//!
//! A point at distance d from the hub of a wheel of radius r that rolls along a line draws
//! x = r phi - d sin(phi), z = -d cos(phi) (Lockwood 1961, A book of curves, ch. "Cycloids": the curtate cycloid, d < r).
//! From a low point of the curve (phi = 0, the channel) to a high point (phi = pi, the crest) it is tight at the
//! bottom and broad on top, as classical cross arches are read to be. Scaled to unit half span and unit rise, its
//! only parameter is the ratio k = d / r. k = 0 is a cosine; negative k draws it upside down: a narrow crest between
//! wide hollows.

use std::f64::consts::PI;

/// A step of the phase, rad, after which nothing is left of its error, which falls with the cube.
const LAST_STEP: f64 = 1e-4;

/// A curtate cycloid scaled to half span 1 and rise 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurtateCycloid {
    ratio: f64,
}

/// The curve at one place u of the curve with the ratio k.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnCycloid {
    /// Height above the channel over the rise: 1 at the crest, 0 at the channel.
    pub height: f64,
    /// Derivatives of the height: by u, by k.
    pub slope: [f64; 2],
    /// Second derivatives: by u twice, by u and k, by k twice.
    pub bend: [f64; 3],
}

impl CurtateCycloid {
    /// By the ratio k = d / r, |k| < 1.
    pub fn from_ratio(ratio: f64) -> CurtateCycloid {
        CurtateCycloid { ratio }
    }

    /// By fullness, the mean height over the rise. The mean of (1 - cos phi) / 2 over x is
    /// 1/pi times the integral of (1 - cos phi)/2 (1 - k cos phi) d phi over 0..pi = 1/2 + k/4.
    pub fn from_fullness(fullness: f64) -> CurtateCycloid {
        CurtateCycloid { ratio: 4.0 * fullness - 2.0 }
    }

    /// The ratio k.
    pub fn ratio(&self) -> f64 {
        self.ratio
    }

    /// Where it turns from convex to concave, 0 at the crest and 1 at the channel: z'' = 0 where cos phi = k.
    pub fn inflection(&self) -> f64 {
        let phi = self.ratio.acos();
        1.0 - (phi - self.ratio * phi.sin()) / PI
    }

    /// The curve whose inflection stands at a place, 0 crest to 1 channel. Ratios beyond +-0.95 (places 0.007 and 0.993)
    /// are not given: their tight end is near a cusp. Bisection, as the place rises with the ratio.
    pub fn from_inflection(place: f64) -> CurtateCycloid {
        let (mut low, mut high) = (-0.95, 0.95);
        // 60 halvings of 1.9 end below the rounding of the ratio.
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if CurtateCycloid::from_ratio(middle).inflection() < place { low = middle } else { high = middle }
        }
        CurtateCycloid::from_ratio(0.5 * (low + high))
    }

    /// The fullness, as in [`CurtateCycloid::from_fullness`].
    pub fn fullness(&self) -> f64 {
        0.5 + 0.25 * self.ratio
    }

    /// The curve at a place, 0 at the crest to 1 at the channel; beyond the channel it stays level.
    ///
    /// With s = 1 - k cos phi: d phi/du = -pi/s and d phi/dk = sin phi / s, from phi - k sin phi = pi (1 - u).
    pub fn at(&self, place: f64) -> OnCycloid {
        if place >= 1.0 {
            return OnCycloid { height: 0.0, slope: [0.0; 2], bend: [0.0; 3] };
        }
        let k = self.ratio;
        let (sin, cos) = self.phase(PI * (1.0 - place));
        let s = 1.0 - k * cos;
        let half_s3 = 0.5 / (s * s * s);
        OnCycloid {
            height: 0.5 * (1.0 - cos),
            slope: [-0.5 * sin * PI / s, 0.5 * sin * sin / s],
            bend: [
                PI * PI * half_s3 * (cos - k),
                -PI * half_s3 * sin * (2.0 * cos - k * (1.0 + cos * cos)),
                half_s3 * sin * sin * (3.0 * cos * s - k * sin * sin),
            ],
        }
    }

    /// The sine and cosine of the phi in 0..=pi that solves phi - k sin phi = mean (Kepler's equation), by Halley's method: for |k| < 1 the
    /// left side rises everywhere, and the digits triple at each step.
    fn phase(&self, mean: f64) -> (f64, f64) {
        let k = self.ratio;
        let mut phi = mean;
        let (mut sin, mut cos) = phi.sin_cos();
        for _ in 0..30 {
            let (off, rises) = (phi - k * sin - mean, 1.0 - k * cos);
            let next = (phi - off * rises / (rises * rises - 0.5 * off * k * sin)).clamp(0.0, PI);
            let step = next - phi;
            phi = next;
            if step.abs() < LAST_STEP {
                // The angles' sum, where the step's powers from the fourth on are below the rounding.
                let (turn, level) = (step * (1.0 - step * step / 6.0), 1.0 - 0.5 * step * step);
                return (sin * level + cos * turn, cos * level - sin * turn);
            }
            (sin, cos) = phi.sin_cos();
        }
        (sin, cos)
    }
}
