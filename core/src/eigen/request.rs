//! What is asked for, and what comes back.

/// Largest residual |Kx - λMx| / |λMx| of a mode, unless rounding of K alone leaves more.
///
/// The eigenvalue errs by about the square of this over the relative gap to its neighbour, so 1e-6 leaves frequencies exact to 1e-10 at gaps
/// of a per cent, and the shape errs by 1e-6 over the gap. Tighter costs one or two more steps and shows in no figure; looser would show in shapes of
/// close pairs.
pub const RESIDUAL_TOLERANCE: f64 = 1e-6;

/// By what share of itself the upper end of [`Extent::Below`] may be moved up: in a frequency half as much.
pub const LIMIT_MOVES: f64 = 1e-3;

/// How many modes are wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Extent {
    /// The lowest so many, rigid modes given in the request not counted.
    Count(usize),
    /// Every one below `lambda`, but no more than the lowest `cap`; when `cap` come back, there may be more.
    Below {
        /// Upper end, in units of λ; not included. Moved up by a share of at most [`LIMIT_MOVES`] where eigenvalues can't be counted at it.
        lambda: f64,
        /// Most modes to return.
        cap: usize,
    },
}

/// What to find, and how.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// How many modes.
    pub extent: Extent,
    /// (mode, equation): exact null vectors of K, deflated and neither counted nor returned. Without them a free structure's zeros come out
    /// as eigenvalues.
    pub rigid: Option<&'a [f64]>,
    /// Vectors iterated together: as many as the highest multiplicity expected, in fours; the fewer, the fewer in all.
    pub block: usize,
    /// Whether to count eigenvalues by inertia to prove that none was missed. Costs about one factorisation.
    pub prove: bool,
    /// s in K + sM, units of λ; found from the diagonals when left out. Good values lie near the first elastic eigenvalue.
    pub shift: Option<f64>,
    /// (vector, equation): where to start, such as the modes of a slightly different pencil; a fixed pseudo-random block when left out.
    pub start: Option<&'a [f64]>,
}

impl Request<'_> {
    /// The lowest `count` modes in blocks of eight, proven, no rigid modes known.
    #[must_use]
    pub fn count(count: usize) -> Request<'static> {
        Request { extent: Extent::Count(count), rigid: None, block: 8, prove: true, shift: None, start: None }
    }
}

/// Eigenpairs of K x = λ M x, lowest first.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Eigenpairs {
    /// (mode): λ, ascending.
    pub values: Vec<f64>,
    /// (mode, equation): M-orthonormal, of either sign.
    pub vectors: Vec<f64>,
    /// (mode): |Kx - λMx| / |λMx| in the plain norm; for a zero mode the shift stands for λ.
    pub residuals: Vec<f64>,
    /// (mode): largest |xᵢᵀMxⱼ - δᵢⱼ| over all modes and rigid modes j.
    pub orthogonality: Vec<f64>,
    /// (rigid mode): the λ that K and M give it, zero but for rounding.
    pub rigid: Vec<f64>,
    /// Eigenvalues below `counted_at` by inertia, rigid modes included; zero when no proof was asked for.
    pub counted_below: usize,
    /// Where inertia was counted: just above the last mode found, or the limit of [`Extent::Below`]. None when no proof was asked for.
    pub counted_at: Option<f64>,
    /// s of the shift σ = -s that was used.
    pub shift: f64,
    /// Block steps taken, each with one block solve.
    pub passes: usize,
}
