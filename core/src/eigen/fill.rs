//! What eliminating a graph in a given order fills.

use std::mem::take;

use crate::ascending::distinct;

/// (place): the places after it that its column of the factor has, ascending; the first is its parent in the elimination tree. `later`
/// (place): those after it that it shares an entry with, in any order.
///
/// A column has its own entries and those of its children's columns (A. George and J. Liu, Computer Solution of Large Sparse Positive
/// Definite Systems, 1981, chapter 5; from memory).
pub(super) fn columns(later: Vec<Vec<u32>>) -> Vec<Vec<u32>> {
    let mut columns = later;
    let mut children: Vec<Vec<u32>> = vec![Vec::new(); columns.len()];
    for place in 0..columns.len() {
        let mut own = take(&mut columns[place]);
        for child in take(&mut children[place]) {
            // The first of a child's column is this place.
            own.extend(&columns[child as usize][1..]);
        }
        let own = distinct(own);
        if let Some(&parent) = own.first() {
            children[parent as usize].push(place as u32);
        }
        columns[place] = own;
    }
    columns
}

#[cfg(test)]
pub(super) mod tests {
    use proptest::prelude::*;

    use super::*;

    /// (vertex): its neighbours, from edges in any order, given twice or not.
    pub(in super::super) fn graph(vertices: usize, edges: impl IntoIterator<Item = (usize, usize)>) -> Vec<Vec<u32>> {
        let mut neighbours = vec![Vec::new(); vertices];
        for (one, other) in edges.into_iter().filter(|(one, other)| one != other) {
            neighbours[one].push(other as u32);
            neighbours[other].push(one as u32);
        }
        for list in &mut neighbours {
            list.sort_unstable();
            list.dedup();
        }
        neighbours
    }

    /// The columns of a graph eliminated in the order of `vertices`.
    pub(in super::super) fn columns_in(neighbours: &[Vec<u32>], vertices: &[u32]) -> Vec<Vec<u32>> {
        let mut place = vec![0; vertices.len()];
        for (at, &vertex) in vertices.iter().enumerate() {
            place[vertex as usize] = at as u32;
        }
        let later = |(at, vertex): (usize, &u32)| {
            let all = neighbours[*vertex as usize].iter().map(|&other| place[other as usize]);
            all.filter(|&other| other as usize > at).collect()
        };
        columns(vertices.iter().enumerate().map(later).collect())
    }

    /// Whether a path leads from one vertex to the other through vertices before both: exactly then has the factor an entry
    /// (D. Rose, R. Tarjan and G. Lueker, SIAM J. Comput. 5 (1976) 266-283, lemma 4; from memory).
    fn path(neighbours: &[Vec<u32>], from: usize, to: usize) -> bool {
        let mut reached = vec![from];
        let mut at = 0;
        while at < reached.len() {
            for next in neighbours[reached[at]].iter().map(|&next| next as usize) {
                if next == to {
                    return true;
                }
                if next < from.min(to) && !reached.contains(&next) {
                    reached.push(next);
                }
            }
            at += 1;
        }
        false
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn an_entry_is_filled_where_a_path_leads(vertices in 1_usize..16, edges in prop::collection::vec((0_usize..16, 0_usize..16), 0..40)) {
            let neighbours = graph(vertices, edges.into_iter().map(|(one, other)| (one % vertices, other % vertices)));
            let natural: Vec<u32> = (0..vertices as u32).collect();
            for (place, column) in columns_in(&neighbours, &natural).iter().enumerate() {
                let expected: Vec<u32> =
                    (place + 1..vertices).filter(|&row| path(&neighbours, place, row)).map(|row| row as u32).collect();
                prop_assert_eq!(column, &expected, "column {}", place);
            }
        }
    }
}
