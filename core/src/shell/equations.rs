//! Numbering of the degrees of freedom that can move, and the sparsity they make.

use super::error::ShellError;
use super::supports::{DOFS_PER_NODE, Supports};
use crate::eigen::Pattern;

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
    /// Numbers the free degrees of freedom of `triangles` on `supports.held.len()` nodes.
    ///
    /// # Errors
    /// [`ShellError::NothingMoves`] when all are held, [`ShellError::NoSuchNode`] when a triangle names a node beyond them.
    pub fn new(triangles: &[[u32; 3]], supports: &Supports) -> Result<Self, ShellError> {
        let mut node_of_equation = Vec::new();
        let mut equation_of = vec![[None; DOFS_PER_NODE]; supports.held.len()];
        for (node, held) in supports.held.iter().enumerate() {
            for (dof, _) in held.iter().enumerate().filter(|(_, held)| !**held) {
                equation_of[node][dof] = Some(node_of_equation.len() as u32);
                node_of_equation.push(node as u32);
            }
        }
        if node_of_equation.is_empty() {
            return Err(ShellError::NothingMoves);
        }
        let neighbours = neighbours_from(triangles, supports.held.len())?;
        let mut column_starts = vec![0];
        let mut row_indices = Vec::new();
        for (column, &node) in node_of_equation.iter().enumerate() {
            for &other in &neighbours[node as usize] {
                let rows = equation_of[other as usize].iter().flatten().map(|&row| row as usize);
                row_indices.extend(rows.filter(|row| *row >= column));
            }
            column_starts.push(row_indices.len());
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
            for (i, &row_node) in nodes.iter().enumerate().filter(|(_, row_node)| **row_node >= column_node) {
                let Some((_, first_row)) = free(row_node).next() else { continue };
                // A node's rows stand together and its columns are alike but for what lies above the diagonal, so one search
                // finds them all.
                let ahead = rows.partition_point(|row| *row < first_row);
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

/// (node): itself and the nodes it shares a triangle with, those numbered from it upwards, ascending.
fn neighbours_from(triangles: &[[u32; 3]], nodes: usize) -> Result<Vec<Vec<u32>>, ShellError> {
    let mut neighbours: Vec<Vec<u32>> = (0..nodes).map(|node| vec![node as u32]).collect();
    for (index, triangle) in triangles.iter().enumerate() {
        for &a in triangle {
            let Some(list) = neighbours.get_mut(a as usize) else {
                return Err(ShellError::NoSuchNode { triangle: index, node: a, last: nodes.saturating_sub(1) });
            };
            list.extend(triangle.iter().filter(|&&b| b > a));
        }
    }
    for list in &mut neighbours {
        list.sort_unstable();
        list.dedup();
    }
    Ok(neighbours)
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
                assert_eq!(equations.pattern.row_indices[at], place(row));
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
