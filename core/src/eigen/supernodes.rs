//! Supernodes: columns of the factor that are stored and factorised together, with the rows that any of them has.
//!
//! Found on the graph of nodes and its columns. A column joins the one after it when that has its rows anyway, or
//! when few zeros are stored for it: small fronts cost more than zeros (relaxed supernodes: C. Ashcraft and R. Grimes, ACM Trans.
//! Math. Softw. 15 (1989) 291-309; from memory).

use super::strips;

/// Up to so many columns together, up to this share of what is stored may be zeros: faer's numbers. More made factorisation and
/// substitution of a top 4 to 13 % slower ((24, 0.8), (48, 0.3) and the like), half of each was no faster.
const RELAXED: [(usize, f64); 4] = [(4, 1.0), (16, 0.8), (48, 0.1), (usize::MAX, 0.05)];

/// All supernodes, in the order of elimination.
#[derive(Debug)]
pub(super) struct Supernodes {
    /// (supernode + 1): its first column, where its pattern and where its values start.
    bounds: Vec<Bounds>,
    /// (place in a pattern): a row below a supernode's own, ascending in each.
    rows: Vec<u32>,
}

#[derive(Debug, Clone, Copy, Default)]
struct Bounds {
    column: usize,
    row: usize,
    value: usize,
}

/// One supernode: its columns, the rows below them, and where its values are.
pub(super) struct Supernode<'a> {
    pub(super) start: usize,
    pub(super) columns: usize,
    pub(super) pattern: &'a [u32],
    pub(super) values: std::ops::Range<usize>,
}

impl Supernode<'_> {
    /// Its own rows and those below.
    pub(super) fn rows(&self) -> usize {
        self.columns + self.pattern.len()
    }
}

/// Supernodes in the making.
#[derive(Clone, Copy)]
struct Group {
    /// Its first and its last node, as places in the order.
    first: usize,
    last: usize,
    columns: usize,
    /// Rows below.
    below: usize,
    /// Entries that are not just stored for the others' sake.
    entries: usize,
}

impl Group {
    /// With the group just before, which must hang on this one in the elimination tree; none where that stores too many zeros.
    fn joined(self, before: Group) -> Option<Group> {
        let columns = before.columns + self.columns;
        let entries = before.entries + self.entries;
        let stored = columns * (columns + 1) / 2 + columns * self.below;
        let (zeros, same) = ((stored - entries) as f64, before.below == self.columns + self.below);
        let few = || RELAXED.iter().any(|&(most, share)| columns <= most && zeros <= share * stored as f64);
        (same || few()).then_some(Group { first: before.first, columns, entries, ..self })
    }
}

impl Supernodes {
    /// Of a graph's `columns` (place in the order of elimination), each of its vertices standing for so many equations, `sizes` (place).
    pub(super) fn new(columns: &[Vec<u32>], sizes: &[usize]) -> Supernodes {
        let mut groups: Vec<Group> = Vec::new();
        for (place, (below, &size)) in columns.iter().zip(sizes).enumerate() {
            let below = below.iter().map(|&row| sizes[row as usize]).sum();
            let entries = size * (size + 1) / 2 + size * below;
            let mut group = Group { first: place, last: place, columns: size, below, entries };
            while let Some(&before) = groups.last() {
                let parent = columns[before.last].first();
                let hangs = parent.is_some_and(|&parent| (group.first..=group.last).contains(&(parent as usize)));
                let Some(joined) = hangs.then(|| group.joined(before)).flatten() else { break };
                group = joined;
                groups.pop();
            }
            groups.push(group);
        }
        let mut starts = vec![0_u32];
        starts.extend(sizes.iter().scan(0, |sum, &size| {
            *sum += size as u32;
            Some(*sum)
        }));
        let (mut bounds, mut rows, mut next) = (vec![Bounds::default()], Vec::new(), Bounds::default());
        for group in groups {
            rows.extend(columns[group.last].iter().flat_map(|&row| starts[row as usize]..starts[row as usize + 1]));
            next.column += group.columns;
            next.row = rows.len();
            next.value += strips::entries(group.columns + group.below, group.columns);
            bounds.push(next);
        }
        Supernodes { bounds, rows }
    }

    /// How many.
    pub(super) fn count(&self) -> usize {
        self.bounds.len() - 1
    }

    /// Entries of the factor, with stored zeros and the triangles above the strips' diagonals.
    pub(super) fn entries(&self) -> usize {
        self.bounds[self.count()].value
    }

    /// One of them.
    pub(super) fn get(&self, index: usize) -> Supernode<'_> {
        let (from, to) = (self.bounds[index], self.bounds[index + 1]);
        Supernode {
            start: from.column,
            columns: to.column - from.column,
            pattern: &self.rows[from.row..to.row],
            values: from.value..to.value,
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::fill::tests::{columns_in, graph};
    use super::super::local_fill::elimination_order;
    use super::*;

    proptest! {
        #[test]
        fn every_entry_has_its_place(sizes in prop::collection::vec(1_usize..7, 1..40), edges in prop::collection::vec((0_usize..40, 0_usize..40), 0..90), in_order in any::<bool>()) {
            let vertices = sizes.len();
            let neighbours = graph(vertices, edges.into_iter().map(|(one, other)| (one % vertices, other % vertices)));
            // In the order in which they happen to be numbered too.
            let order = if in_order { elimination_order(neighbours.clone()).unwrap() } else { (0..vertices as u32).collect() };
            let graphs_columns = columns_in(&neighbours, &order);
            let supernodes = Supernodes::new(&graphs_columns, &sizes);
            let start = |place: usize| sizes[..place].iter().sum::<usize>();
            let (mut columns, mut values) = (0, 0);
            for index in 0..supernodes.count() {
                let own = supernodes.get(index);
                // One after the other, without gaps.
                prop_assert_eq!((own.start, own.values.start), (columns, values));
                columns += own.columns;
                values += strips::entries(own.rows(), own.columns);
                prop_assert_eq!(own.values.end, values);
                prop_assert!(own.pattern.is_sorted_by(|a, b| a < b) && own.pattern.iter().all(|&row| row as usize >= columns));
                for place in (0..vertices).filter(|&place| (own.start..columns).contains(&start(place))) {
                    prop_assert!(start(place + 1) <= columns, "a vertex is split");
                    for &row in &graphs_columns[place] {
                        for row in start(row as usize)..start(row as usize + 1) {
                            prop_assert!(row < columns || own.pattern.contains(&(row as u32)), "row {} of {}", row, place);
                        }
                    }
                }
            }
            prop_assert_eq!((columns, values), (sizes.iter().sum(), supernodes.entries()));
        }
    }

    /// A chain's columns, one equation each, have one row below: four together are worth their zeros, two such groups are not.
    #[test]
    fn small_ones_grow_until_zeros_outweigh() {
        let neighbours = graph(100, (1..100).map(|vertex| (vertex - 1, vertex)));
        let order = elimination_order(neighbours.clone()).unwrap();
        let supernodes = Supernodes::new(&columns_in(&neighbours, &order), &[1; 100]);
        for index in 0..supernodes.count() {
            let own = supernodes.get(index);
            let stored = own.columns * (own.columns + 1) / 2 + own.columns * own.pattern.len();
            let zeros = stored - 2 * own.columns + usize::from(own.pattern.is_empty());
            assert!(own.columns <= 4 || zeros as f64 <= 0.8 * stored as f64, "{} columns", own.columns);
            assert!(own.columns <= 16);
        }
        assert!(supernodes.count() < 50, "{}", supernodes.count());
    }
}
