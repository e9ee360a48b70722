//! Puts element matrices together into a pencil with a sparse pattern.

use super::Pattern;

/// A pencil that owns its arrays.
#[derive(Debug)]
pub(super) struct Assembled {
    pub(super) pattern: Pattern,
    pub(super) stiffness: Vec<f64>,
    pub(super) mass: Vec<f64>,
}

/// One element: its equations and its dense matrices, (row, column) row by row.
pub(super) struct Element {
    pub(super) equations: Vec<usize>,
    pub(super) stiffness: Vec<f64>,
    pub(super) mass: Vec<f64>,
}

/// Sums the elements' lower triangles; equations absent from every element get a zero diagonal.
pub(super) fn assemble(node_of_equation: Vec<u32>, elements: &[Element]) -> Assembled {
    let dof = node_of_equation.len();
    let mut entries: Vec<(usize, usize, f64, f64)> = (0..dof).map(|d| (d, d, 0.0, 0.0)).collect();
    for element in elements {
        let size = element.equations.len();
        for (i, &row) in element.equations.iter().enumerate() {
            for (j, &column) in element.equations.iter().enumerate() {
                if row >= column {
                    let at = i * size + j;
                    entries.push((column, row, element.stiffness[at], element.mass[at]));
                }
            }
        }
    }
    compress(node_of_equation, entries)
}

/// Sums entries (column, row, stiffness, mass) of the lower triangle.
pub(super) fn compress(node_of_equation: Vec<u32>, mut entries: Vec<(usize, usize, f64, f64)>) -> Assembled {
    let dof = node_of_equation.len();
    entries.sort_by_key(|&(column, row, ..)| (column, row));
    let mut column_starts = vec![0; dof + 1];
    let (mut row_indices, mut stiffness, mut mass) = (Vec::new(), Vec::new(), Vec::new());
    for group in entries.chunk_by(|a, b| (a.0, a.1) == (b.0, b.1)) {
        column_starts[group[0].0 + 1] += 1;
        row_indices.push(group[0].1 as u32);
        stiffness.push(group.iter().map(|entry| entry.2).sum());
        mass.push(group.iter().map(|entry| entry.3).sum());
    }
    for column in 0..dof {
        column_starts[column + 1] += column_starts[column];
    }
    Assembled { pattern: Pattern { column_starts, row_indices: row_indices.into(), node_of_equation }, stiffness, mass }
}
