//! Numbering of the degrees of freedom that can move, and the sparsity they make.

use super::error::ShellError;
use super::supports::{DOFS_PER_NODE, Supports};
use crate::ascending::distinct;
use crate::eigen::{Pattern, elimination_order};

/// Equation numbers of the degrees of freedom that can move, and the sparsity pattern they make.
///
/// Depends on triangles and supports only: heights, thickness and wood leave it, and its factorisation's order, as they are.
#[derive(Debug, Clone, PartialEq)]
pub struct Equations {
    /// (node, dof): the equation, or none where it is held.
    pub equation_of: Vec<[Option<u32>; DOFS_PER_NODE]>,
    /// Lower triangle of the matrices.
    pub pattern: Pattern,
    /// (triangle, entry of an element's lower triangle): the place among the pattern's values.
    places: Vec<[u32; ELEMENT_ENTRIES]>,
}

impl Equations {
    /// Numbers the free degrees of freedom of `triangles` on `supports.held.len()` nodes, node by node in an order that fills little.
    ///
    /// # Errors
    /// [`ShellError::NothingMoves`] when all are held, [`ShellError::NoSuchNode`] when a triangle names a node beyond them,
    /// [`ShellError::GivenUp`] when nobody waits for the order.
    pub fn new(triangles: &[[u32; 3]], supports: &Supports) -> Result<Self, ShellError> {
        let neighbours = moving_neighbours(triangles, supports)?;
        let mut node_of_equation = Vec::new();
        let mut equation_of = vec![[None; DOFS_PER_NODE]; supports.held.len()];
        for node in elimination_order(neighbours.clone())? {
            let held = &supports.held[node as usize];
            for (dof, _) in held.iter().enumerate().filter(|(_, held)| !**held) {
                equation_of[node as usize][dof] = Some(node_of_equation.len() as u32);
                node_of_equation.push(node);
            }
        }
        if node_of_equation.is_empty() {
            return Err(ShellError::NothingMoves);
        }
        let mut column_starts = vec![0];
        let mut row_indices: Vec<u32> = Vec::new();
        for nodes_columns in node_of_equation.chunk_by(|a, b| a == b) {
            let node = nodes_columns[0];
            let around = neighbours[node as usize].iter().chain([&node]);
            let rows =
                distinct(around.flat_map(|&other| equation_of[other as usize].iter().flatten().copied()).collect());
            for _ in nodes_columns {
                let column = column_starts.len() as u32 - 1;
                row_indices.extend(rows.iter().filter(|row| **row >= column));
                column_starts.push(row_indices.len());
            }
        }
        let pattern = Pattern { column_starts, row_indices: row_indices.into(), node_of_equation };
        let mut equations = Self { equation_of, pattern, places: Vec::new() };
        let mut all = vec![[HELD; ELEMENT_ENTRIES]; triangles.len()];
        for (places, nodes) in all.iter_mut().zip(triangles) {
            equations.for_each_entry(nodes, |at, row, column| places[lower_entry(row, column)] = at as u32);
        }
        equations.places = all;
        Ok(equations)
    }

    /// Number of equations.
    #[must_use]
    pub fn count(&self) -> usize {
        self.pattern.node_of_equation.len()
    }

    /// Visits the stored entries that a part joining `nodes`, one node or neighbours, adds to: the place among the pattern's
    /// values, and the part's row and column (corner and dof, 0..6 N).
    pub(super) fn for_each_entry<const N: usize>(&self, nodes: &[u32; N], mut visit: impl FnMut(usize, usize, usize)) {
        let free = |node: u32| {
            let dofs = self.equation_of[node as usize].iter().enumerate();
            dofs.filter_map(|(dof, equation)| equation.map(|equation| (dof, equation as usize)))
        };
        let Pattern { column_starts, row_indices, .. } = &self.pattern;
        for (j, &column_node) in nodes.iter().enumerate() {
            let Some((_, first_column)) = free(column_node).next() else { continue };
            let start = column_starts[first_column];
            let rows = &row_indices[start..column_starts[first_column + 1]];
            for (i, &row_node) in nodes.iter().enumerate() {
                let Some((_, first_row)) = free(row_node).next().filter(|(_, row)| *row >= first_column) else {
                    continue;
                };
                // A node's rows stand together and its columns are alike but for what lies above the diagonal, so one search
                // finds them all.
                let ahead = rows.partition_point(|row| (*row as usize) < first_row);
                for (column_dof, column) in free(column_node) {
                    let above = column - first_column;
                    for (row_dof, row) in free(row_node).filter(|(_, row)| *row >= column) {
                        let place = column_starts[column] + ahead + (row - first_row) - above;
                        visit(place, 6 * i + row_dof, 6 * j + column_dof);
                    }
                }
            }
        }
    }

    /// (mode, node, dof) from (mode, equation), held degrees of freedom at zero.
    pub(crate) fn spread(&self, vectors: &[f64]) -> Vec<f64> {
        let dofs = self.equation_of.as_flattened();
        let mut shapes = Vec::with_capacity(vectors.len() / self.count() * dofs.len());
        for vector in vectors.chunks_exact(self.count()) {
            shapes.extend(dofs.iter().map(|equation| equation.map_or(0.0, |at| vector[at as usize])));
        }
        shapes
    }

    /// The other way: (mode, equation) from (mode, node, dof).
    pub(crate) fn gather(&self, shapes: &[f64]) -> Vec<f64> {
        let dofs = self.equation_of.as_flattened();
        let mut vectors = vec![0.0; shapes.len() / dofs.len() * self.count()];
        for (shape, vector) in shapes.chunks_exact(dofs.len()).zip(vectors.chunks_exact_mut(self.count())) {
            for (equation, value) in dofs.iter().zip(shape) {
                if let Some(equation) = equation {
                    vector[*equation as usize] = *value;
                }
            }
        }
        vectors
    }

    pub(super) fn triangle_count(&self) -> usize {
        self.places.len()
    }

    /// Where the parts of `triangle` go: (entry of an element's lower triangle, column by column), [`HELD`] where a degree of
    /// freedom is held.
    pub(super) fn places(&self, triangle: usize) -> &[u32; ELEMENT_ENTRIES] {
        &self.places[triangle]
    }
}

/// Entries of the lower triangle of an element's matrix, 18 by 18.
pub(super) const ELEMENT_ENTRIES: usize = 18 * 19 / 2;

/// The place of an entry whose row or column is held.
pub(super) const HELD: u32 = u32::MAX;

/// Which entry of the lower triangle, column by column, `row` and `column` of an element's symmetric matrix share.
pub(super) const fn lower_entry(row: usize, column: usize) -> usize {
    let (low, high) = if row < column { (row, column) } else { (column, row) };
    low * (37 - low) / 2 + high - low
}

/// (node): the others that it shares a triangle with, ascending. What is held altogether is nobody's neighbour.
fn moving_neighbours(triangles: &[[u32; 3]], supports: &Supports) -> Result<Vec<Vec<u32>>, ShellError> {
    let nodes = supports.held.len();
    let mut neighbours: Vec<Vec<u32>> = vec![Vec::new(); nodes];
    for (index, triangle) in triangles.iter().enumerate() {
        if let Some(&node) = triangle.iter().find(|&&node| node as usize >= nodes) {
            return Err(ShellError::NoSuchNode { triangle: index, node, last: nodes.saturating_sub(1) });
        }
        let moves = |node: u32| supports.held[node as usize].contains(&false);
        for &node in triangle.iter().filter(|&&node| moves(node)) {
            neighbours[node as usize].extend(triangle.iter().filter(|&&other| other != node && moves(other)));
        }
    }
    Ok(neighbours.into_iter().map(distinct).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_held_plate_cannot_move() {
        let held = Supports::clamped(3, &[0, 1, 2]);
        assert_eq!(Equations::new(&[[0, 1, 2]], &held), Err(ShellError::NothingMoves));
    }

    #[test]
    fn every_pair_of_free_dofs_of_an_element_has_one_place() {
        let triangles = [[0, 1, 2], [2, 1, 3]];
        let mut supports = Supports::free(4);
        supports.held[1] = [true, false, false, true, false, false];
        let equations = Equations::new(&triangles, &supports).unwrap();
        assert_eq!(equations.count(), 22);
        let mut touched = vec![0; equations.pattern.row_indices.len()];
        for nodes in &triangles {
            equations.for_each_entry(nodes, |at, row, column| {
                let place = |k: usize| equations.equation_of[nodes[k / 6] as usize][k % 6].unwrap() as usize;
                assert_eq!(equations.pattern.row_indices[at] as usize, place(row));
                let column = place(column);
                let starts = &equations.pattern.column_starts;
                assert!((starts[column]..starts[column + 1]).contains(&at));
                touched[at] += 1;
            });
        }
        // Nodes 1 and 2 belong to both triangles, 0 and 3 to one: every stored entry is reached, shared ones twice.
        assert!(touched.iter().all(|times| (1..=2).contains(times)));
        assert_eq!(touched.iter().filter(|times| **times == 2).count(), (4 * 5 + 6 * 7) / 2 + 4 * 6);
    }
}
