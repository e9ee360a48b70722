//! K and M on one pattern, as given and checked.

use super::error::check_values;
use super::halves::{Halves, Side};
use super::symmetric::Symmetric;
use super::{EigenError, Pattern, Symbolic};

/// The pencil K x = λ M x: two sets of values on one pattern.
///
/// K must be symmetric, M symmetric and positive semidefinite; only lower triangles are given. Units are the pencil's own:
/// λ has those of K over M.
#[derive(Debug, Clone, Copy)]
pub struct Pencil<'a> {
    /// The pattern of both.
    pub pattern: &'a Pattern,
    /// (entry of the pattern): K.
    pub stiffness: &'a [f64],
    /// (entry of the pattern): M.
    pub mass: &'a [f64],
}

/// A pencil that was checked.
pub(super) struct Checked<'a> {
    pub(super) symbolic: &'a Symbolic,
    pub(super) stiffness: Symmetric<'a>,
    /// Most of the pattern is zero here, and left out: directions are not coupled by inertia.
    pub(super) mass: Symmetric<'a>,
}

impl<'a> Checked<'a> {
    pub(super) fn new(pencil: &Pencil<'a>, symbolic: &'a Symbolic) -> Result<Checked<'a>, EigenError> {
        symbolic.check(pencil.pattern)?;
        let entries = pencil.pattern.entries();
        check_values("the stiffness", pencil.stiffness, entries)?;
        check_values("the mass", pencil.mass, entries)?;
        let stiffness = Symmetric::new(pencil.pattern, pencil.stiffness);
        let mass = Symmetric::without_zeros(pencil.pattern, pencil.mass);
        Ok(Checked { symbolic, stiffness, mass })
    }

    /// Both parts of the pencil of which `half` is given.
    pub(super) fn parts(half: &Pencil, halves: &'a Halves) -> Result<[Checked<'a>; 2], EigenError> {
        let symbolic = &halves.symbolic;
        let Checked { mass, .. } = Checked::new(half, symbolic)?;
        Ok(Side::BOTH.map(|side| Checked {
            symbolic,
            stiffness: Symmetric::new(symbolic.pattern(), halves.stiffness_on(half.stiffness, side)),
            mass: mass.without(|equation| halves.stands_still(equation, side)),
        }))
    }

    /// K - σM.
    pub(super) fn shifted(&self, sigma: f64) -> Shifted<'_> {
        Shifted { stiffness: &self.stiffness, mass: &self.mass, sigma }
    }
}

/// K - σM, whose values are never all there at once: reading both twice costs less than fresh memory.
#[derive(Clone, Copy)]
pub(super) struct Shifted<'a> {
    stiffness: &'a Symmetric<'a>,
    mass: &'a Symmetric<'a>,
    sigma: f64,
}

impl Shifted<'_> {
    /// The rows of a column, from the diagonal on, and what stands there. All entries of M are among K's.
    #[inline(always)]
    pub(super) fn column(&self, column: usize) -> impl Iterator<Item = (u32, f64)> {
        let mut mass = self.mass.column(column).peekable();
        self.stiffness.column(column).map(move |(row, stiffness)| {
            let own = mass.next_if(|&(place, _)| place == row);
            (row, own.map_or(stiffness, |(_, mass)| stiffness - self.sigma * mass))
        })
    }

    /// (equation): the sum of the magnitudes in each of `dof` rows.
    pub(super) fn row_sums(&self, dof: usize) -> Vec<f64> {
        let mut sums = vec![0.0; dof];
        for column in 0..dof {
            for (row, value) in self.column(column) {
                sums[row as usize] += value.abs();
                if row as usize != column {
                    sums[column] += value.abs();
                }
            }
        }
        sums
    }
}
