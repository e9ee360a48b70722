//! The edges of a mesh, each once.

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
    pub(crate) fn of(triangles: &[[u32; 3]]) -> Edges {
        // (lower node): the edges met there.
        let mut met: Vec<Vec<u32>> = Vec::new();
        let mut ends: Vec<[u32; 2]> = Vec::new();
        let mut of_triangle = Vec::with_capacity(triangles.len());
        for corners in triangles {
            of_triangle.push([0, 1, 2].map(|side| {
                let (a, b) = (corners[side], corners[(side + 1) % 3]);
                let pair = [a.min(b), a.max(b)];
                let lower = pair[0] as usize;
                if met.len() <= lower {
                    met.resize_with(lower + 1, Vec::new);
                }
                if let Some(&known) = met[lower].iter().find(|&&edge| ends[edge as usize] == pair) {
                    return known;
                }
                let edge = ends.len() as u32;
                met[lower].push(edge);
                ends.push(pair);
                edge
            }));
        }
        Edges { ends, of_triangle }
    }

    /// (triangle, side): whether the mesh ends there, which is where no other triangle shares the edge.
    pub(crate) fn at_the_end(&self) -> Vec<[bool; 3]> {
        let mut sharing = vec![0_u8; self.ends.len()];
        for &edge in self.of_triangle.iter().flatten() {
            sharing[edge as usize] = sharing[edge as usize].saturating_add(1);
        }
        self.of_triangle.iter().map(|edges| edges.map(|edge| sharing[edge as usize] == 1)).collect()
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
        assert_eq!(edges.at_the_end(), [[true, true, false], [false, true, true]]);
    }
}
