//! Several vectors at once, laid side by side.

use pulp::{Scalar, Simd, WithSimd};

use super::widest::widest;

/// Vectors laid together, so that what is read for one serves all. Of four, the registers of wasm and AVX2 hold the values of four of a factor's
/// columns at once; eight are no faster for sixteen vectors, and for a block of four do twice the work.
pub(super) const LANES: usize = 4;

/// The same entry of [`LANES`] vectors.
pub(super) type Lanes = [f64; LANES];

/// Vectors of `length`, `columns` (column, equation), laid side by side: (group, equation). What the last group lacks is zero.
pub(super) fn interleaved(columns: &[f64], length: usize) -> Vec<Lanes> {
    let groups = columns.len().div_ceil(LANES * length);
    let lacking = if columns.len() < groups * LANES * length { vec![0.0; length] } else { Vec::new() };
    let mut lanes = Vec::with_capacity(groups * length);
    for group in columns.chunks(LANES * length) {
        let [a, b, c, d] = [0, 1, 2, 3].map(|at| group.get(at * length..(at + 1) * length).unwrap_or(&lacking));
        lanes.extend(a.iter().zip(b).zip(c.iter().zip(d)).map(|((&a, &b), (&c, &d))| [a, b, c, d]));
    }
    lanes
}

/// The other way, for the first `count` vectors, after what `columns` holds already.
pub(super) fn append_separated(columns: &mut Vec<f64>, lanes: &[Lanes], length: usize, count: usize) {
    columns.reserve(count * length);
    for column in 0..count {
        let group = &lanes[column / LANES * length..][..length];
        columns.extend(group.iter().map(|lanes| lanes[column % LANES]));
    }
}

/// What works on vectors laid side by side, with a [`Lanes`] in so many registers.
pub(super) trait LaneKernel {
    /// Must be inlined, to be compiled for the registers it is given.
    fn run<S: Simd, const REGISTERS: usize>(self, simd: S);
}

/// Runs `kernel` with the widest registers of the machine.
pub(super) fn on_lanes(kernel: impl LaneKernel) {
    widest(InRegisters(kernel));
}

struct InRegisters<K>(K);

impl<K: LaneKernel> WithSimd for InRegisters<K> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        match S::F64_LANES {
            2 => self.0.run::<S, { LANES / 2 }>(simd),
            4 => self.0.run::<S, { LANES / 4 }>(simd),
            // Of one number, or wider than all lanes together.
            _ => self.0.run::<Scalar, LANES>(Scalar),
        }
    }
}

/// The vectors as registers.
#[inline(always)]
pub(super) fn registers<S: Simd, const REGISTERS: usize>(lanes: &[Lanes]) -> &[[S::f64s; REGISTERS]] {
    S::as_simd_f64s(lanes.as_flattened()).0.as_chunks().0
}

/// The same to write to.
#[inline(always)]
pub(super) fn registers_mut<S: Simd, const REGISTERS: usize>(lanes: &mut [Lanes]) -> &mut [[S::f64s; REGISTERS]] {
    S::as_mut_simd_f64s(lanes.as_flattened_mut()).0.as_chunks_mut().0
}

/// `to` += `factor` `from`.
#[inline(always)]
pub(super) fn add_multiple<S: Simd, const REGISTERS: usize>(
    simd: S,
    to: &mut [S::f64s; REGISTERS],
    factor: f64,
    from: &[S::f64s; REGISTERS],
) {
    let factor = simd.splat_f64s(factor);
    for (to, &from) in to.iter_mut().zip(from) {
        *to = simd.mul_add_e_f64s(factor, from, *to);
    }
}
