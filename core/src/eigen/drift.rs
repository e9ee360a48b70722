//! How well a step was led by the factor of another pencil.

/// How far a step went, and what its factor made of that: each by the worst mode.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Drift {
    /// √(rᵀw / λ) with the residual r before the step and the correction w: the way to the mode, in the norm of the energy, over the
    /// mode's own length.
    way: f64,
    /// |wᵀ(K + sM)w / rᵀw - 1|: by what share the factor misjudges the energy of the way.
    misjudged: f64,
}

/// On a way so short a frequency errs by a millionth at most, however it is misjudged; and its energy, a difference of energies a million
/// times as large, is soon rounding.
const NO_WAY: f64 = 1e-3;

/// A step is taken for good when its drift is no more than this. Frequencies of a violin top then err by no more than 1e-3 (arch,
/// thickness, eyes; DEVELOPERS.md).
const GOOD: Drift = Drift { way: 0.4, misjudged: 0.3 };

/// By how much the root of what a factor misjudges grows with the length of the way, from step to step (an arch that rises; thickness
/// and wood less).
const GROWS: f64 = 1.2;

impl Drift {
    /// Takes in a mode whose energy was `whole`, for which the factor did the `work` rᵀw and whose way has the `energy` wᵀ(K + sM)w.
    pub(super) fn take(&mut self, whole: f64, work: f64, energy: f64) {
        let way = if whole > 0.0 { (work / whole).sqrt() } else { f64::INFINITY };
        self.way = self.way.max(way);
        if way > NO_WAY {
            self.misjudged = self.misjudged.max((energy / work - 1.0).abs());
        }
    }

    /// Whether the step counts.
    pub(super) fn is_good(self) -> bool {
        self.way <= GOOD.way && self.misjudged <= GOOD.misjudged
    }

    /// Whether another step as long can be expected to be good as well.
    pub(super) fn goes_on(self) -> bool {
        self.misjudged.sqrt() + GROWS * self.way <= GOOD.misjudged.sqrt()
    }
}
