//! The lowest eigenpairs of a large sparse symmetric pencil K x = λ M x, and a proof that none is missing.
//!
//! K and M share one [`Pattern`]; K is symmetric, M symmetric and positive semidefinite. A [`Symbolic`] is made once per
//! pattern (its supernodes, in the order that [`elimination_order`] found) and serves every later set of values. [`lowest()`] runs a shift-invert
//! block Lanczos iteration in the M-inner product; [`count_below`] counts eigenvalues by Sylvester's law of inertia,
//! which is how `lowest` proves that it returned every one.
//!
//! After this stage: eigenvalues ascend, vectors are M-orthonormal, every residual is below [`RESIDUAL_TOLERANCE`] or at the
//! level that rounding of K itself leaves, and (unless the request waives it) the inertia count agrees.
//!
//! Everything here is pure mathematics in the units of the pencil; nothing knows what the equations stand for.
//! One thread, no clocks, no hash maps: the same input gives the same bytes.
//!
//! A pencil that is its own mirror image ([`Reflection`], [`Symbolic::mirrored`]) is given by one half and solved as two of half the size: those of
//! motions that the mirror keeps and those that it turns round.
//!
//! Modes known from a pencil a little different are refined by [`refine()`], unproven. [`complement()`] adds what the modes left out answer
//! to given loads.
//!
//! Ways not taken: subspace iteration from nothing (2 to 5 times slower on shell pencils, measured); thick restarts (the few hundred basis
//! vectors needed for 150 modes fit in memory, and keeping them makes orthogonality and convergence simple);
//! nested dissection (least fill on the node graph leaves a sixth less to do, or better, on a top's meshes; DEVELOPERS.md has the figures).
//!
//! Sources: R. G. Grimes, J. G. Lewis and H. D. Simon, "A shifted block Lanczos algorithm for solving sparse symmetric
//! generalized eigenproblems", SIAM J. Matrix Anal. Appl. 15 (1994) 228-272; B. N. Parlett, "The Symmetric Eigenvalue
//! Problem" (SIAM 1998), chapters 3 (inertia) and 13 (Lanczos); B. Nour-Omid, B. N. Parlett, T. Ericsson and
//! P. S. Jensen, "How to implement the spectral transformation", Math. Comp. 48 (1987) 663-673 (purified vectors).
//! All three from memory.

mod basis;
mod block;
mod cholesky;
mod complement;
mod dense;
mod drift;
mod error;
mod factor;
mod fill;
mod halves;
mod inertia;
mod lanczos;
mod lanes;
mod local_fill;
mod lowest;
mod part;
mod pattern;
mod pencil;
mod proof;
mod rayleigh_ritz;
mod refine;
mod reflection;
mod report;
mod request;
mod rigid;
mod ritz;
mod search;
mod sequence;
mod shift;
mod spare;
mod strips;
mod substitution;
mod supernodes;
mod symbolic;
mod symmetric;
#[cfg(test)]
mod tests;
mod tiles;
mod widest;

pub use complement::{Complement, Known, complement};
pub(crate) use dense::inner_products;
pub use error::EigenError;
pub use factor::Factor;
pub use inertia::count_below;
pub use local_fill::elimination_order;
pub use lowest::lowest;
pub use pattern::Pattern;
pub use pencil::Pencil;
pub use refine::{Onward, Refined, Refinement, Start, refine};
pub use reflection::Reflection;
pub use request::{Eigenpairs, Extent, LIMIT_MOVES, RESIDUAL_TOLERANCE, Request};
pub use symbolic::Symbolic;
