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
        Ok(Self { equation_of, pattern: Pattern { column_starts, row_indices, node_of_equation } })
    }

    /// Number of equations.
    #[must_use]
    pub fn count(&self) -> usize {
        self.pattern.node_of_equation.len()
    }

    /// Visits the stored entries that a part joining `nodes`, one node or neighbours, adds to: the place among the pattern's
    /// values, and the part's row and column (corner and dof, 0..6 N).
    pub(super) fn for_each_entry<const N: usize>(&self, nodes: &[u32; N], mut visit: impl FnMut(usize, usize, usize)) {
        for (j, &column_node) in nodes.iter().enumerate() {
            for (column_dof, column) in self.equation_of[column_node as usize].iter().enumerate() {
                let Some(column) = *column else { continue };
                let start = self.pattern.column_starts[column as usize];
                let rows = &self.pattern.row_indices[start..self.pattern.column_starts[column as usize + 1]];
                for (i, &row_node) in nodes.iter().enumerate().filter(|(_, row_node)| **row_node >= column_node) {
                    let mut of_node = self.equation_of[row_node as usize]
                        .iter()
                        .enumerate()
                        .filter_map(|(dof, row)| row.filter(|row| *row >= column).map(|row| (dof, row)))
                        .peekable();
                    let Some(&(_, first)) = of_node.peek() else { continue };
                    // A node's rows stand together, so one search finds them all.
                    let place = start + rows.partition_point(|row| *row < first as usize);
                    for (offset, (row_dof, _)) in of_node.enumerate() {
                        visit(place + offset, 6 * i + row_dof, 6 * j + column_dof);
                    }
                }
            }
        }
    }
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
