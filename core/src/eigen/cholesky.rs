//! Cholesky factorisation of a sparse matrix, front by front; of an indefinite one with the pivots' signs set apart.
//!
//! The multifrontal method (I. Duff and J. Reid, ACM Trans. Math. Softw. 9 (1983) 302-325; from memory): a supernode's columns are
//! assembled in a dense front with what its children in the elimination tree left over, factorised there, and what they leave
//! over goes to the parent. All arithmetic is in [`tiles`](super::tiles).
//!
//! This part was faer's, until it was measured in wasm, where faer multiplies blocks of some ten rows without SIMD: a shell of 1 200
//! nodes took 7.7 ms, eight right sides 3.1 ms.

use pulp::{Simd, WithSimd};

use super::Symbolic;
use super::lanes::{LaneKernel, Lanes, append_separated, interleaved, on_lanes, registers_mut};
use super::pencil::Shifted;
use super::spare;
use super::strips;
use super::substitution;
use super::supernodes::{Supernode, Supernodes};
use super::tiles::{Columns, subtract_below, subtract_product};
use super::widest::widest;
use crate::patience::{self, GivenUp};

/// Columns of a front that are factorised together before the rest of the front is told.
const TOGETHER: usize = 24;

/// What pivots are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pivots {
    /// Positive ones: the matrix must be positive definite.
    Positive,
    /// All but zero.
    Any,
}

/// Why there is no factor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Refused {
    /// A pivot that is not taken.
    Pivot { equation: usize },
    /// Nobody waits for it.
    GivenUp(GivenUp),
}

/// What becomes of L.
pub(super) trait Panels {
    /// Its columns come supernode by supernode: (column, row), the diagonal block's rows first, then those of the pattern.
    fn take(&mut self, own: &Supernode, panel: &[f64]);
}

/// Factorises the `matrix` L S Lᵀ, and gives the signs of the pivots in S, 1 or -1 (equation).
pub(super) fn factorise(
    symbolic: &Symbolic,
    matrix: Shifted,
    pivots: Pivots,
    panels: &mut dyn Panels,
) -> Result<Vec<f64>, Refused> {
    let mut signs = vec![1.0; symbolic.dof()];
    widest(Factorise { supernodes: &symbolic.supernodes, matrix, pivots, panels, signs: &mut signs })?;
    Ok(signs)
}

/// L of A = L Lᵀ, all of it.
#[derive(Debug, PartialEq)]
pub(super) struct Cholesky {
    values: Vec<f64>,
}

impl Panels for Cholesky {
    fn take(&mut self, own: &Supernode, panel: &[f64]) {
        strips::append(&mut self.values, panel, own.rows());
    }
}

impl Drop for Cholesky {
    fn drop(&mut self) {
        spare::give(std::mem::take(&mut self.values));
    }
}

impl Cholesky {
    /// Factorises a positive definite `matrix`.
    pub(super) fn new(symbolic: &Symbolic, matrix: Shifted) -> Result<Cholesky, Refused> {
        let mut own = Cholesky { values: spare::take(symbolic.supernodes.entries()) };
        factorise(symbolic, matrix, Pivots::Positive, &mut own)?;
        Ok(own)
    }

    /// Whether it has the entries of a factor on `symbolic`.
    pub(super) fn fits(&self, symbolic: &Symbolic) -> bool {
        self.values.len() == symbolic.supernodes.entries()
    }

    /// Solves for right sides, `columns` (column, equation). All take part in one passage through the factor, [`LANES`](super::lanes::LANES) at a time
    /// at each supernode: a factor is larger than the caches.
    pub(super) fn solve(&self, symbolic: &Symbolic, columns: &[f64]) -> Vec<f64> {
        let dof = symbolic.dof();
        let mut lanes = interleaved(columns, dof);
        on_lanes(Solve { supernodes: &symbolic.supernodes, values: &self.values, dof, lanes: &mut lanes });
        let mut solved = Vec::new();
        append_separated(&mut solved, &lanes, dof, columns.len() / dof);
        solved
    }
}

struct Factorise<'a> {
    supernodes: &'a Supernodes,
    matrix: Shifted<'a>,
    pivots: Pivots,
    panels: &'a mut dyn Panels,
    /// (equation)
    signs: &'a mut [f64],
}

impl WithSimd for Factorise<'_> {
    type Output = Result<(), Refused>;

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) -> Self::Output {
        let Factorise { supernodes, matrix, pivots, panels, signs } = self;
        let (count, dof) = (supernodes.count(), signs.len());
        let mut home = vec![0_u32; dof];
        for index in 0..count {
            let Supernode { start, columns, .. } = supernodes.get(index);
            home[start..start + columns].fill(index as u32);
        }
        // (supernode): what its children left over, each (column, row) on the child's pattern.
        let mut left_over: Vec<Vec<(usize, Vec<f64>)>> = (0..count).map(|_| Vec::new()).collect();
        // What fronts are done with: fresh memory costs more than its zeros.
        let mut spare: Vec<Vec<f64>> = Vec::new();
        let mut panel = Vec::new();
        let (mut signed, mut runs) = (Vec::new(), Vec::new());
        // (equation): its row in the front at hand.
        let mut row_of = vec![0_u32; dof];
        for index in 0..count {
            patience::check().map_err(Refused::GivenUp)?;
            let own = supernodes.get(index);
            let (rows, below) = (own.rows(), own.pattern.len());
            for (row, place) in (own.start..own.start + own.columns).enumerate() {
                row_of[place] = row as u32;
            }
            for (row, &place) in own.pattern.iter().enumerate() {
                row_of[place as usize] = (own.columns + row) as u32;
            }
            panel.clear();
            panel.resize(own.columns * rows, 0.0);
            for (column, panel) in panel.chunks_exact_mut(rows).enumerate() {
                for (row, entry) in matrix.column(own.start + column) {
                    panel[row_of[row as usize] as usize] = entry;
                }
            }
            let mut rest = zeros(&mut spare, below * below);
            for (child, update) in left_over[index].drain(..) {
                let pattern = supernodes.get(child).pattern;
                find_runs(&mut runs, pattern.iter().map(|&place| row_of[place as usize] as usize));
                for (at, run) in runs.iter().enumerate() {
                    for (column, to) in (run.from..run.from + run.length).zip(run.to..) {
                        // The rest of the front has neither the columns nor the rows of the panel.
                        let (into, first) = if to < own.columns {
                            (&mut panel[to * rows..(to + 1) * rows], 0)
                        } else {
                            let to = to - own.columns;
                            (&mut rest[to * below..(to + 1) * below], own.columns)
                        };
                        add_below(into, first, &runs[at..], &update[column * pattern.len()..], column);
                    }
                }
                spare.push(update);
            }
            let signs = &mut signs[own.start..own.start + own.columns];
            factorise_panel(simd, &mut panel, rows, signs, pivots)
                .map_err(|column| Refused::Pivot { equation: own.start + column })?;
            if let Some(&first) = own.pattern.first() {
                let lower = Columns { entries: &panel[own.columns..], stride: rows };
                if signs.contains(&-1.0) {
                    signed.clear();
                    signed.extend(signed_rows(lower, below, signs));
                    subtract_below(
                        simd,
                        &mut rest,
                        below,
                        lower,
                        Columns { entries: &signed, stride: below },
                        own.columns,
                    );
                } else {
                    subtract_below(simd, &mut rest, below, lower, lower, own.columns);
                }
                left_over[home[first as usize] as usize].push((index, rest));
            }
            panels.take(&own, &panel);
        }
        Ok(())
    }
}

/// Rows of what a child left over that follow each other in the front at hand too; most do, since a node's equations stay together.
struct Run {
    from: usize,
    to: usize,
    length: usize,
}

/// The runs of rows that go to rows `to`, ascending.
fn find_runs(runs: &mut Vec<Run>, to: impl Iterator<Item = usize>) {
    runs.clear();
    for (from, to) in to.enumerate() {
        match runs.last_mut() {
            Some(run) if run.to + run.length == to => run.length += 1,
            _ => runs.push(Run { from, to, length: 1 }),
        }
    }
}

/// Adds a column of what a child left over, from row `begin` on, which lies in the first of `runs`; `into` begins with row `first`.
#[inline(always)]
fn add_below(into: &mut [f64], first: usize, runs: &[Run], column: &[f64], begin: usize) {
    for run in runs {
        let done = begin.saturating_sub(run.from);
        let into = &mut into[run.to + done - first..run.to + run.length - first];
        for (into, value) in into.iter_mut().zip(&column[run.from + done..]) {
            *into += value;
        }
    }
}

/// So many zeros, in the smallest of the `spare` vectors that holds them or in a new one.
fn zeros(spare: &mut Vec<Vec<f64>>, count: usize) -> Vec<f64> {
    let large_enough = spare.iter().enumerate().filter(|(_, vector)| vector.capacity() >= count);
    let smallest = large_enough.min_by_key(|(_, vector)| vector.capacity()).map(|(at, _)| at);
    let mut zeros = smallest.map(|at| spare.swap_remove(at)).unwrap_or_default();
    zeros.clear();
    zeros.resize(count, 0.0);
    zeros
}

/// Factorises the first columns of a front with `rows` rows, as many as `signs`, and sets these; gives the column of a pivot that is
/// refused.
#[inline(always)]
fn factorise_panel<S: Simd>(
    simd: S,
    panel: &mut [f64],
    rows: usize,
    signs: &mut [f64],
    pivots: Pivots,
) -> Result<(), usize> {
    let columns = signs.len();
    for first in (0..columns).step_by(TOGETHER) {
        let width = TOGETHER.min(columns - first);
        let (before, block) = panel.split_at_mut(first * rows);
        if first > 0 {
            // Everything from the diagonal down, less what the columns before say.
            let left = Columns { entries: &before[first..], stride: rows };
            let signed: Vec<f64> = signed_rows(left, width, &signs[..first]).collect();
            let across = Columns { entries: &signed, stride: width };
            subtract_product(simd, &mut block[first..], rows, left, across, [rows - first, width, first]);
        }
        for column in 0..width {
            let (done, rest) = block[..width * rows].split_at_mut((column + 1) * rows);
            let own = &mut done[column * rows + first + column..];
            let pivot = own[0];
            // Not a number is no pivot either.
            if pivot.is_nan() || pivot == 0.0 || (pivots == Pivots::Positive && pivot < 0.0) {
                return Err(first + column);
            }
            let sign = pivot.signum();
            signs[first + column] = sign;
            // One division for a column: SIMD divides a tenth as fast as it multiplies.
            let over = sign / pivot.abs().sqrt();
            own.iter_mut().for_each(|value| *value *= over);
            for (later, other) in rest.chunks_exact_mut(rows).enumerate() {
                let at = later + 1;
                let share = sign * own[at];
                for (other, own) in other[first + column + at..].iter_mut().zip(&own[at..]) {
                    *other -= share * own;
                }
            }
        }
    }
    Ok(())
}

/// The first `rows` rows of L S, column by column.
#[inline(always)]
fn signed_rows<'a>(l: Columns<'a>, rows: usize, signs: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
    let columns = l.entries.chunks(l.stride).zip(signs);
    columns.flat_map(move |(column, sign)| column[..rows].iter().map(move |value| sign * value))
}

struct Solve<'a> {
    supernodes: &'a Supernodes,
    values: &'a [f64],
    dof: usize,
    /// (group of right sides, equation)
    lanes: &'a mut [Lanes],
}

impl LaneKernel for Solve<'_> {
    #[inline(always)]
    fn run<S: Simd, const REGISTERS: usize>(self, simd: S) {
        let Solve { supernodes, values, dof, lanes } = self;
        let groups = registers_mut::<S, REGISTERS>(lanes);
        let nothing = [simd.splat_f64s(0.0); REGISTERS];
        let mut front = Vec::new();
        for index in 0..supernodes.count() {
            let own = supernodes.get(index);
            let columns = own.start..own.start + own.columns;
            for lanes in groups.chunks_exact_mut(dof) {
                front.clear();
                front.extend_from_slice(&lanes[columns.clone()]);
                front.resize(own.rows(), nothing);
                substitution::forth(simd, &values[own.values.clone()], own.columns, &mut front);
                let (done, below) = front.split_at(own.columns);
                lanes[columns.clone()].copy_from_slice(done);
                for (&place, part) in own.pattern.iter().zip(below) {
                    for (value, &part) in lanes[place as usize].iter_mut().zip(part) {
                        *value = simd.add_f64s(*value, part);
                    }
                }
            }
        }
        for index in (0..supernodes.count()).rev() {
            let own = supernodes.get(index);
            let columns = own.start..own.start + own.columns;
            for lanes in groups.chunks_exact_mut(dof) {
                front.clear();
                front.extend_from_slice(&lanes[columns.clone()]);
                front.extend(own.pattern.iter().map(|&place| lanes[place as usize]));
                substitution::back(simd, &values[own.values.clone()], own.columns, &mut front);
                lanes[columns.clone()].copy_from_slice(&front[..own.columns]);
            }
        }
    }
}
