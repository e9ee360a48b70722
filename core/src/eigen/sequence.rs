//! A fixed pseudo-random sequence, so that every run starts alike.

/// Numbers spread evenly over [-1, 1): Weyl's sequence scrambled by the finaliser of SplitMix64
/// (G. Steele, D. Lea and C. Flood, OOPSLA 2014; constants from memory).
pub(super) struct Sequence {
    state: u64,
}

impl From<u64> for Sequence {
    fn from(seed: u64) -> Sequence {
        Sequence { state: seed }
    }
}

impl Sequence {
    pub(super) fn new() -> Sequence {
        // Any seed does; the start only must not be orthogonal to a mode, which a fixed odd pattern is as unlikely to be as any.
        Sequence { state: 0x0123_4567_89AB_CDEF }
    }

    pub(super) fn fill(&mut self, vector: &mut [f64]) {
        for value in vector {
            self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
            let mut bits = self.state;
            bits = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
            bits = (bits ^ (bits >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
            bits ^= bits >> 31;
            // The top 53 bits fill the significand exactly.
            *value = (bits >> 11) as f64 * 2.0_f64.powi(-52) - 1.0;
        }
    }
}
