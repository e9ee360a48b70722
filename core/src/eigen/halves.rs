//! A pencil that is its own mirror image, taken apart.
//!
//! A mode of such a pencil is its own mirror image or its opposite, or can be chosen so (any text on symmetry in mechanics; from memory), and either
//! is known by one half of it. So there are two pencils of half the size, on one pattern: K and M hold what the elements of one side make of it,
//! and those equations in the mirror stand still that would have to be their own opposite. Each has some four tenths of the factor's entries, and
//! two bases of half as many vectors half as long are a quarter of the work to keep orthogonal.

use super::{EigenError, Pattern, Reflection, Symbolic};

/// Which motions a part has: those that are their own mirror image, or those that are its opposite.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Kept,
    Turned,
}

impl Side {
    pub(super) const BOTH: [Side; 2] = [Side::Kept, Side::Turned];
}

/// The half of a pattern.
#[derive(Debug)]
pub(super) struct Halves {
    pub(super) symbolic: Symbolic,
    /// (equation of the half)
    pairs: Vec<Pair>,
    /// (entry of the half): the entry of the whole, and its image.
    pub(super) entries: Vec<[u32; 2]>,
    /// (side): entries off the diagonal that join what stands still there to anything.
    still: [Vec<u32>; 2],
    /// Equations of the whole.
    pub(super) whole: usize,
}

/// What an equation of the half stands for.
#[derive(Debug, Clone, Copy)]
struct Pair {
    own: u32,
    /// Itself in the mirror.
    image: u32,
    /// Whether the mirror turns its motion round.
    turns: bool,
}

impl Pair {
    /// What the image does where its own moves by one.
    fn sign(&self, side: Side) -> f64 {
        if self.turns == (side == Side::Turned) { 1.0 } else { -1.0 }
    }

    fn stands_still(&self, side: Side) -> bool {
        self.own == self.image && self.sign(side) < 0.0
    }
}

impl Halves {
    /// None when the reflection isn't one of this pattern, or an entry joins the two sides past the mirror.
    pub(super) fn new(pattern: &Pattern, reflection: &Reflection) -> Result<Option<Halves>, EigenError> {
        let Reflection { image_of, turns } = reflection;
        let whole = pattern.dof();
        if image_of.len() != whole || turns.len() != whole || image_of.iter().any(|&own| own as usize >= whole) {
            return Ok(None);
        }
        // (equation): its image, itself in the mirror; its place in the half.
        let (mut image, mut place) = (image_of.clone(), vec![0; whole]);
        let (mut pairs, mut node_of_equation) = (Vec::new(), Vec::new());
        for (equation, &own) in image_of.iter().enumerate() {
            if own as usize == equation {
                place[equation] = pairs.len() as u32;
                pairs.push(Pair { own, image: own, turns: turns[equation] });
                node_of_equation.push(pattern.node_of_equation[equation]);
            } else {
                image[own as usize] = equation as u32;
            }
        }
        let (mut column_starts, mut row_indices, mut entries) = (vec![0], Vec::new(), Vec::new());
        let (mut still, mut met) = ([Vec::new(), Vec::new()], 0);
        pairs.iter_mut().for_each(|pair: &mut Pair| pair.image = image[pair.own as usize]);
        for pair in &pairs {
            let column = pair.own as usize;
            for own in pattern.column_starts[column]..pattern.column_starts[column + 1] {
                let row = pattern.row_indices[own] as usize;
                if image_of[row] as usize == row {
                    let Some(image) = entry(pattern, image[row], pair.image) else { return Ok(None) };
                    met += if image == own { 1 } else { 2 };
                    for side in Side::BOTH {
                        let stands_still = pair.stands_still(side) || pairs[place[row] as usize].stands_still(side);
                        if stands_still && row != column {
                            still[side as usize].push(entries.len() as u32);
                        }
                    }
                    entries.push([own as u32, image as u32]);
                    row_indices.push(place[row]);
                }
            }
            column_starts.push(row_indices.len());
        }
        if met != pattern.entries() {
            return Ok(None);
        }
        let half = Pattern { column_starts, row_indices: row_indices.into(), node_of_equation };
        Ok(Some(Halves { symbolic: Symbolic::new(&half)?, pairs, entries, still, whole }))
    }

    /// Stiffness of the half on `side`: what stands still there is a spring, alone.
    pub(super) fn stiffness_on(&self, stiffness: &[f64], side: Side) -> Vec<f64> {
        let mut stiffness = stiffness.to_vec();
        self.still[side as usize].iter().for_each(|&at| stiffness[at as usize] = 0.0);
        stiffness
    }

    /// Whether an equation of the half stands still on `side`.
    pub(super) fn stands_still(&self, equation: usize, side: Side) -> bool {
        self.pairs[equation].stands_still(side)
    }

    /// (entry of the whole): values of which the half is given.
    pub(super) fn whole_values(&self, half: &[f64], entries: usize) -> Vec<f64> {
        let mut values = vec![0.0; entries];
        let Pattern { column_starts, row_indices, .. } = self.symbolic.pattern();
        for (column, bounds) in column_starts.windows(2).enumerate() {
            for at in bounds[0]..bounds[1] {
                let [own, image] = self.entries[at];
                let turns = self.pairs[row_indices[at] as usize].turns != self.pairs[column].turns;
                // In the mirror both sides add up, to nothing between motions that are not alike.
                values[own as usize] += half[at];
                values[image as usize] += if turns { -half[at] } else { half[at] };
            }
        }
        values
    }

    /// (equation of the half): the part of a whole vector that moves on `side`.
    pub(super) fn fold(&self, vector: &[f64], side: Side) -> Vec<f64> {
        let part = |pair: &Pair| 0.5 * (vector[pair.own as usize] + pair.sign(side) * vector[pair.image as usize]);
        self.pairs.iter().map(part).collect()
    }

    /// The whole vector of one of the half, with the same mass, after what `whole` holds already.
    pub(super) fn unfold(&self, vector: &[f64], side: Side, whole: &mut Vec<f64>) {
        let before = whole.len();
        whole.resize(before + self.whole, 0.0);
        let unfolded = &mut whole[before..];
        for (pair, value) in self.pairs.iter().zip(vector) {
            let value = std::f64::consts::FRAC_1_SQRT_2 * value;
            unfolded[pair.own as usize] = value;
            unfolded[pair.image as usize] = pair.sign(side) * value;
        }
    }
}

/// Where a pattern has the entry of two equations.
fn entry(pattern: &Pattern, one: u32, other: u32) -> Option<usize> {
    let (column, row) = (one.min(other) as usize, one.max(other));
    let start = pattern.column_starts[column];
    let rows = &pattern.row_indices[start..pattern.column_starts[column + 1]];
    rows.binary_search(&row).ok().map(|at| start + at)
}
