//! A fill-reducing order: which vertex of a graph to eliminate next.
//!
//! Eliminating a vertex joins all its neighbours; the edges that this adds are its local fill. Taking the vertex of least fill is the
//! third scheme of W. Tinney and J. Walker (Proc. IEEE 55 (1967) 1801-1809); dividing by the degree, so that a vertex with many
//! neighbours may fill more, belongs to the rules of E. Rothberg and S. Eisenstat (SIAM J. Matrix Anal. Appl. 19 (1998) 682-695)
//! and of E. Ng and P. Raghavan (20 (1999) 902-914; all three from memory, the quotient below is our own). They bound or estimate the
//! fill; here it is exact, because the graph of a shell's nodes is small enough to be eliminated in earnest.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::ascending::ascending;
use crate::patience::{self, GivenUp};

/// Added to the degree that divides the fill. Less division gains less: with 16 here a top's meshes lose a quarter to nearly all of the
/// gain. More is the brink where the busiest vertices go first: fill over degree^1.25 makes ten times the operations.
const DAMPING: u64 = 2;

/// The order in which to eliminate a graph, its vertices. Each comes after its descendants in the elimination tree, and right after the child
/// with the longest column.
///
/// Let equations be numbered by it, those of a vertex one after the other: a [`Symbolic`](super::Symbolic) factorisation eliminates them as they
/// are numbered. On the graph of nodes the order is found in a thirty-sixth of the time for six equations a node, and supernodes come out whole.
///
/// `neighbours` (vertex): those it shares an edge with, each once, itself not among them. Ties go to the lower number.
/// Cost: about the degree for each edge of the filled graph; half of one numeric factorisation at 15 000 equations.
///
/// # Errors
/// [`GivenUp`] when nobody waits for it.
pub fn elimination_order(neighbours: Vec<Vec<u32>>) -> Result<Vec<u32>, GivenUp> {
    let mut graph = Graph::new(neighbours);
    let mut queue: BinaryHeap<_> =
        (0..graph.neighbours.len()).map(|vertex| Reverse((graph.rank(vertex), vertex))).collect();
    let mut place = vec![usize::MAX; graph.neighbours.len()];
    let mut eliminated = Vec::with_capacity(place.len());
    while let Some(Reverse((rank, vertex))) = queue.pop() {
        // What was queued before its rank changed is there again.
        if place[vertex] != usize::MAX || rank != graph.rank(vertex) {
            continue;
        }
        patience::check()?;
        place[vertex] = eliminated.len();
        eliminated.push(vertex);
        graph.eliminate(vertex);
        queue.extend(graph.changed.list.iter().map(|&other| Reverse((graph.rank(other as usize), other as usize))));
    }
    Ok(postorder(&eliminated, &place, &graph.neighbours))
}

/// A graph under elimination.
struct Graph {
    /// (vertex): those still there; of an eliminated vertex those that were there then, which is its column of the factor.
    neighbours: Vec<Vec<u32>>,
    /// (vertex): pairs of its neighbours without an edge.
    fill: Vec<u64>,
    among: Marks,
    /// Whose rank the last elimination may have changed.
    changed: Marks,
}

impl Graph {
    fn new(neighbours: Vec<Vec<u32>>) -> Graph {
        let count = neighbours.len();
        let mut graph =
            Graph { neighbours, fill: vec![0; count], among: Marks::new(count), changed: Marks::new(count) };
        for vertex in 0..count {
            let around = &graph.neighbours[vertex];
            graph.among.only(around);
            // Each of the others misses itself too.
            let missing =
                around.iter().map(|&other| around.len() - 1 - graph.among.count(&graph.neighbours[other as usize]));
            graph.fill[vertex] = missing.sum::<usize>() as u64 / 2;
        }
        graph
    }

    /// Least first: fill over degree, in 1/65 536.
    fn rank(&self, vertex: usize) -> u64 {
        (self.fill[vertex] << 16) / (self.neighbours[vertex].len() as u64 + DAMPING)
    }

    /// Takes a vertex out and joins its neighbours.
    fn eliminate(&mut self, vertex: usize) {
        let around = std::mem::take(&mut self.neighbours[vertex]);
        self.changed.only(&around);
        self.among.only(&around);
        for &other in &around {
            let own = &mut self.neighbours[other as usize];
            own.retain(|&third| third as usize != vertex);
            // With the vertex go the pairs that it made with others.
            self.fill[other as usize] -= (own.len() - self.among.count(own)) as u64;
        }
        if self.fill[vertex] > 0 {
            for (at, &one) in around.iter().enumerate() {
                self.among.only(&self.neighbours[one as usize]);
                for &other in &around[at + 1..] {
                    if !self.among.has(other) {
                        self.join(one as usize, other as usize);
                    }
                }
            }
        }
        self.neighbours[vertex] = around;
    }

    /// Adds an edge, where the neighbours of `one` are the marked ones.
    fn join(&mut self, one: usize, other: usize) {
        let mut common = 0;
        for &third in self.neighbours[other].iter().filter(|&&third| self.among.has(third)) {
            common += 1;
            self.fill[third as usize] -= 1;
            self.changed.add(third);
        }
        for (from, to) in [(one, other), (other, one)] {
            self.fill[from] += self.neighbours[from].len() as u64 - common;
            self.neighbours[from].push(to as u32);
        }
        self.among.add(other as u32);
    }
}

/// A set of vertices that is emptied at no cost.
struct Marks {
    list: Vec<u32>,
    round: u32,
    /// (vertex): the round it was last added in.
    last: Vec<u32>,
}

impl Marks {
    fn new(count: usize) -> Marks {
        Marks { list: Vec::new(), round: 0, last: vec![0; count] }
    }

    fn only(&mut self, vertices: &[u32]) {
        self.list.clear();
        self.round += 1;
        for &vertex in vertices {
            self.add(vertex);
        }
    }

    fn add(&mut self, vertex: u32) {
        if !self.has(vertex) {
            self.last[vertex as usize] = self.round;
            self.list.push(vertex);
        }
    }

    fn has(&self, vertex: u32) -> bool {
        self.last[vertex as usize] == self.round
    }

    fn count(&self, vertices: &[u32]) -> usize {
        vertices.iter().filter(|&&vertex| self.has(vertex)).count()
    }
}

/// The same elimination with each vertex after its descendants, which leaves the fill as it is.
fn postorder(eliminated: &[usize], place: &[usize], columns: &[Vec<u32>]) -> Vec<u32> {
    let mut children: Vec<Vec<u32>> = vec![Vec::new(); columns.len()];
    let mut open: Vec<u32> = Vec::new();
    for &vertex in eliminated {
        match columns[vertex].iter().min_by_key(|&&other| place[other as usize]) {
            Some(&parent) => children[parent as usize].push(vertex as u32),
            None => open.push(vertex as u32),
        }
    }
    // From the last to the first: a parent, then its children from the longest column on.
    let mut order = Vec::with_capacity(columns.len());
    while let Some(vertex) = open.pop() {
        order.push(vertex);
        let own = &children[vertex as usize];
        let by_length = |&child: &u32| (columns[child as usize].len() * columns.len() + child as usize) as f64;
        let lengths: Vec<f64> = own.iter().map(by_length).collect();
        open.extend(ascending(&lengths).into_iter().map(|at| own[at]));
    }
    order.reverse();
    order
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::fill::tests::{columns_in, graph};
    use super::*;

    /// Squares side by side, `side` corners each way, each corner joined to the other three of its squares.
    fn grid(side: usize) -> Vec<Vec<u32>> {
        let squares = (0..side - 1).flat_map(|row| (0..side - 1).map(move |column| row * side + column));
        let edges = squares.flat_map(|a| {
            let [b, c, d] = [a + 1, a + side, a + side + 1];
            [(a, b), (a, c), (a, d), (b, c), (b, d), (c, d)]
        });
        graph(side * side, edges)
    }

    /// (place): its column of the factor, in the order that was found.
    fn columns(neighbours: &[Vec<u32>]) -> Vec<Vec<u32>> {
        columns_in(neighbours, &elimination_order(neighbours.to_vec()).unwrap())
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn every_vertex_has_its_place(vertices in 1_usize..40, edges in prop::collection::vec((0_usize..40, 0_usize..40), 0..90)) {
            let edges = edges.into_iter().map(|(one, other)| (one % vertices, other % vertices));
            let mut order = elimination_order(graph(vertices, edges)).unwrap();
            order.sort_unstable();
            prop_assert_eq!(order, (0..vertices as u32).collect::<Vec<_>>());
        }

        #[test]
        fn descendants_come_right_before(vertices in 1_usize..40, edges in prop::collection::vec((0_usize..40, 0_usize..40), 0..90)) {
            let edges = edges.into_iter().map(|(one, other)| (one % vertices, other % vertices));
            let columns = columns(&graph(vertices, edges));
            let parent = |place: usize| columns[place].first().map(|&parent| parent as usize);
            // A postorder: between a vertex and its parent are descendants of the parent alone.
            for place in 0..vertices {
                if let Some(above) = parent(place) {
                    for between in place + 1..above {
                        prop_assert!(parent(between).is_some_and(|own| own <= above), "{} in {}..{}", between, place, above);
                    }
                }
            }
        }

        /// A tree can be eliminated from its leaves without any fill, and least fill finds out how.
        #[test]
        fn a_tree_fills_nothing(parents in prop::collection::vec(0_usize..1000, 0..60)) {
            let edges = parents.iter().enumerate().map(|(child, parent)| (child + 1, parent % (child + 1)));
            let columns = columns(&graph(parents.len() + 1, edges));
            prop_assert_eq!(columns.iter().map(Vec::len).sum::<usize>(), parents.len());
        }
    }

    /// Nested dissection of n × n corners has 31/4 n² log₂ n entries and takes 829/84 n³ multiplications, to the leading order, which no order
    /// beats by more than a factor (A. George, SIAM J. Numer. Anal. 10 (1973) 345-363; A. George and J. Liu, Computer Solution of
    /// Large Sparse Positive Definite Systems, 1981, chapter 8; both from memory).
    #[test]
    fn a_grid_fills_no_more_than_by_nested_dissection() {
        for side in [20_usize, 40, 60] {
            let columns = columns(&grid(side));
            let entries: usize = columns.iter().map(|column| column.len() + 1).sum();
            let multiplications: usize = columns.iter().map(|column| column.len() * (column.len() + 3) / 2).sum();
            let side = side as f64;
            assert!((entries as f64) < 31.0 / 4.0 * side.powi(2) * side.log2(), "{entries} entries, {side} a side");
            assert!((multiplications as f64) < 829.0 / 84.0 * side.powi(3), "{multiplications}, {side} a side");
        }
    }
}
