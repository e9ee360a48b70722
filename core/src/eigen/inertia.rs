//! How many eigenvalues lie below a value, by Sylvester's law of inertia.
//!
//! K - λM = P L D Lᵀ Pᵀ has as many negative eigenvalues as the pencil has eigenvalues below λ (M positive semidefinite), and D as many as K - λM
//! (Parlett, "The Symmetric Eigenvalue Problem", section 3.3). D is found with Bunch and Kaufman's 1x1 and 2x2 pivots inside each
//! supernode. Pivoting is confined to the supernode, so growth is possible in principle; it is therefore measured, and a
//! count with too much growth is refused rather than returned.

use faer::dyn_stack::{MemBuffer, MemStack};
use faer::perm::PermRef;
use faer::sparse::SparseColMatRef;
use faer::sparse::linalg::cholesky::{SymbolicCholeskyRaw, supernodal::SupernodalIntranodeLbltRef};
use faer::{Par, Side, Spec};

use super::error::check_values;
use super::factor::out_of_memory;
use super::pencil::Ordered;
use super::{EigenError, Pencil, Symbolic};

/// Largest growth of a row, |L||D||Lᵀ| over |K - λM|, at which a count is believed.
///
/// The factorisation is exact for a matrix whose entries differ from K - λM by a few rounding units times this growth. A growth of
/// 1e6 leaves ten true digits in every row, as many as assembly in double precision promises on meshes whose element sizes
/// differ a thousandfold. Cholesky-like pencils stay near 1e3; larger limits would accept counts made within 1e-10 of an eigenvalue of a
/// leading block, smaller ones refuse counts for no gain.
const GROWTH_LIMIT: f64 = 1e6;

/// A pivot smaller than so many rounding units of its grown row has an uncertain sign: λ then is an eigenvalue to working precision.
const PIVOT_UNITS: f64 = 16.0;

/// Number of eigenvalues of the pencil below `lambda` (units of λ), rigid modes included, multiplicities counted.
///
/// Cost: one indefinite factorisation, about one and a half times a Cholesky one.
///
/// # Errors
/// [`EigenError::CountUncertain`] when `lambda` is so close to an eigenvalue (of the pencil or of a leading block in elimination order) that
/// digits are lost; [`EigenError::NotFinite`], [`EigenError::Length`], [`EigenError::ForeignSymbolic`] for wrong input.
pub fn count_below(pencil: &Pencil, symbolic: &Symbolic, lambda: f64) -> Result<usize, EigenError> {
    check_values("lambda", &[lambda], 1)?;
    count_ordered(&Ordered::new(pencil, symbolic)?, lambda)
}

pub(super) fn count_ordered(pencil: &Ordered, lambda: f64) -> Result<usize, EigenError> {
    let symbolic = pencil.symbolic;
    let shifted = pencil.shifted(lambda);
    let cholesky = &symbolic.cholesky;
    let dof = symbolic.dof();
    let mut values = vec![0.0; cholesky.len_val()];
    let mut subdiagonal = vec![0.0; dof];
    let (mut forward, mut inverse) = (vec![0_u32; dof], vec![0_u32; dof]);
    let scratch = cholesky.factorize_numeric_intranode_lblt_scratch::<f64>(Par::Seq, Spec::default());
    let mut memory = MemBuffer::try_new(scratch).map_err(|_| out_of_memory(symbolic))?;
    cholesky.factorize_numeric_intranode_lblt(
        &mut values,
        &mut subdiagonal,
        &mut forward,
        &mut inverse,
        SparseColMatRef::new(symbolic.lower.as_ref(), &shifted),
        Side::Lower,
        Par::Seq,
        MemStack::new(&mut memory),
        Spec::default(),
    );
    let SymbolicCholeskyRaw::Supernodal(supernodes) = cholesky.raw() else {
        unreachable!("broken invariant: the symbolic factorisation is supernodal by construction")
    };
    let perm = PermRef::new_checked(&forward, &inverse, dof);
    let factor = SupernodalIntranodeLbltRef::new(supernodes, &values, &subdiagonal, perm);
    let growth = growth(factor, supernodes.n_supernodes(), &subdiagonal, &pencil.row_sums(&shifted));
    if growth <= GROWTH_LIMIT {
        Ok(pivots(factor, supernodes.n_supernodes(), &subdiagonal).map(|pivot| pivot.negative()).sum())
    } else {
        Err(EigenError::CountUncertain { lambda, growth, limit: GROWTH_LIMIT })
    }
}

type Factored<'a> = SupernodalIntranodeLbltRef<'a, u32, f64>;

/// A 1x1 or 2x2 block of D.
struct Pivot {
    /// Its first row, in pivoted order.
    place: usize,
    first: f64,
    /// (below, second) of a 2x2 block.
    rest: Option<(f64, f64)>,
}

impl Pivot {
    /// Negative eigenvalues. Signs from determinant and trace: no square root, no cancellation worth a sign.
    fn negative(&self) -> usize {
        match self.rest {
            None => usize::from(self.first < 0.0),
            Some((below, second)) if self.first * second < below * below => 1,
            Some((_, second)) if self.first + second < 0.0 => 2,
            Some(_) => 0,
        }
    }

    /// Smallest eigenvalue in magnitude, to a factor of two: |determinant| over the sum of magnitudes.
    fn least(&self) -> f64 {
        match self.rest {
            None => self.first.abs(),
            Some((below, second)) => {
                (self.first * second - below * below).abs() / (self.first.abs() + second.abs() + 2.0 * below.abs())
            }
        }
    }
}

/// The blocks of D in order; a 2x2 block is where the subdiagonal is not zero.
fn pivots<'a>(factor: Factored<'a>, supernodes: usize, subdiagonal: &'a [f64]) -> impl Iterator<Item = Pivot> + 'a {
    (0..supernodes).flat_map(move |index| {
        let supernode = factor.supernode(index);
        let (start, panel) = (supernode.start(), supernode.val());
        let mut row = 0;
        std::iter::from_fn(move || {
            let place = start + row;
            let first = (row < panel.ncols()).then(|| panel[(row, row)])?;
            let below = subdiagonal[place];
            let rest = (below != 0.0).then(|| (below, panel[(row + 1, row + 1)]));
            row += if rest.is_some() { 2 } else { 1 };
            Some(Pivot { place, first, rest })
        })
    })
}

/// Largest ratio over the rows of |L||D||Lᵀ| e to |K - λM| e, e all ones; infinite when a pivot vanished.
///
/// Bounds the backward error of the factorisation row by row (N. Higham, "Accuracy and Stability of Numerical
/// Algorithms", 2nd ed., theorem 11.3; from memory). Bottom rows of a panel are named by their place before pivoting, hence `inverse`.
fn growth(factor: Factored, supernodes: usize, subdiagonal: &[f64], row_sums: &[f64]) -> f64 {
    let (forward, inverse) = factor.perm().arrays();
    let dof = row_sums.len();
    let mut scaled = vec![0.0; dof];
    let mut grown = vec![0.0; dof];
    for index in 0..supernodes {
        let supernode = factor.supernode(index);
        let (start, width, panel) = (supernode.start(), supernode.val().ncols(), supernode.val());
        let pattern = supernode.pattern();
        for column in 0..width {
            let entries = panel.col(column);
            let magnitude = |row: usize| entries[row].abs();
            scaled[start + column] = 1.0 + (column + 1..panel.nrows()).map(magnitude).sum::<f64>();
        }
        // |D| times the column sums; a 2x2 block couples two of them.
        let sums = scaled[start..start + width].to_vec();
        for column in 0..width {
            scaled[start + column] = panel[(column, column)].abs() * sums[column];
        }
        for column in 0..width.saturating_sub(1) {
            let below = subdiagonal[start + column].abs();
            scaled[start + column] += below * sums[column + 1];
            scaled[start + column + 1] += below * sums[column];
        }
        for column in 0..width {
            let (weight, entries) = (scaled[start + column], panel.col(column));
            grown[start + column] += weight;
            for row in column + 1..width {
                grown[start + row] += entries[row].abs() * weight;
            }
            for (row, &place) in pattern.iter().enumerate() {
                grown[inverse[place as usize] as usize] += entries[width + row].abs() * weight;
            }
        }
    }
    let mut largest: f64 = 0.0;
    for (grown, &place) in grown.iter().zip(forward) {
        let ratio = grown / row_sums[place as usize];
        // NaN must count as infinite growth, and f64::max would drop it.
        largest = if ratio.is_nan() { f64::INFINITY } else { largest.max(ratio) };
    }
    let doubtful = pivots(factor, supernodes, subdiagonal)
        .any(|pivot| pivot.least() <= PIVOT_UNITS * f64::EPSILON * grown[pivot.place]);
    if doubtful { f64::INFINITY } else { largest }
}
