//! Several vectors at once, laid side by side.

/// Vectors laid together: eight doubles are one cache line, so that what is read for one serves all, and whole SIMD registers on
/// every machine. Sixteen at once were slower than two runs of eight.
pub(super) const LANES: usize = 8;

/// The same entry of [`LANES`] vectors.
pub(super) type Lanes = [f64; LANES];

/// Lays up to [`LANES`] vectors (column, position) side by side.
pub(super) fn interleave(columns: &[f64], lanes: &mut [Lanes]) {
    for (lane, column) in columns.chunks_exact(lanes.len()).enumerate() {
        for (lanes, &value) in lanes.iter_mut().zip(column) {
            lanes[lane] = value;
        }
    }
}

/// The other way.
pub(super) fn separate(lanes: &[Lanes], columns: &mut [f64]) {
    for (lane, column) in columns.chunks_exact_mut(lanes.len()).enumerate() {
        for (value, lanes) in column.iter_mut().zip(lanes) {
            *value = lanes[lane];
        }
    }
}
