//! How a panel of the factor is kept: in strips of a few columns, row by row.
//!
//! A substitution takes these columns together from top to bottom. As columns they were so many short streams, which a
//! processor doesn't foresee; as strips they are one that runs through the whole factor. What lies above the strips' diagonals
//! isn't kept.

/// Columns of a strip: a node mostly has six equations, or three. What is left over at the end of a panel goes one by one. Four or six were as fast.
pub(super) const WIDE: usize = 3;

/// The strips of a panel with so many columns: (first column, width).
pub(super) fn strips(columns: usize) -> impl DoubleEndedIterator<Item = (usize, usize)> {
    let whole = columns / WIDE * WIDE;
    (0..whole).step_by(WIDE).map(|first| (first, WIDE)).chain((whole..columns).map(|first| (first, 1)))
}

/// Entries of a panel with so many rows and columns.
pub(super) fn entries(rows: usize, columns: usize) -> usize {
    strips(columns).map(|(first, width)| width * (rows - first)).sum()
}

/// Appends a panel (column, row) as strips.
pub(super) fn append(values: &mut Vec<f64>, panel: &[f64], rows: usize) {
    for (first, width) in strips(panel.len() / rows) {
        let from_diagonal = |column: usize| &panel[column * rows + first..(column + 1) * rows];
        if width == WIDE {
            let columns: [&[f64]; WIDE] = std::array::from_fn(|at| from_diagonal(first + at));
            let start = values.len();
            values.resize(start + WIDE * (rows - first), 0.0);
            for (row, strip) in values[start..].as_chunks_mut::<WIDE>().0.iter_mut().enumerate() {
                *strip = columns.map(|column| column[row]);
            }
        } else {
            values.extend_from_slice(from_diagonal(first));
        }
    }
}
