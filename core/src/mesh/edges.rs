//! The edges of a mesh, each once.

use std::collections::BTreeMap;

/// Edges and which triangles they belong to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Edges {
    /// (edge): its two nodes, the lower number first.
    pub ends: Vec<[u32; 2]>,
    /// (triangle, side): the edge from corner `side` to the next.
    pub of_triangle: Vec<[u32; 3]>,
}

impl Edges {
    /// Numbers the edges of `triangles` (triangle, corner) in the order in which they are met.
    pub(super) fn of(triangles: &[[u32; 3]]) -> Edges {
        let mut numbers = BTreeMap::new();
        let mut ends = Vec::new();
        let of_triangle = triangles
            .iter()
            .map(|corners| {
                [0, 1, 2].map(|side| {
                    let (a, b) = (corners[side], corners[(side + 1) % 3]);
                    let pair = [a.min(b), a.max(b)];
                    *numbers.entry(pair).or_insert_with(|| {
                        ends.push(pair);
                        ends.len() as u32 - 1
                    })
                })
            })
            .collect();
        Edges { ends, of_triangle }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shared_edge_has_one_number() {
        let edges = Edges::of(&[[0, 1, 2], [0, 2, 3]]);
        assert_eq!(edges.ends, [[0, 1], [1, 2], [0, 2], [2, 3], [0, 3]]);
        assert_eq!(edges.of_triangle, [[0, 1, 2], [2, 3, 4]]);
    }
}
