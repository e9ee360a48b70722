//! What can go wrong between a pencil and its eigenpairs, said with the value, the limit and the remedy.

use crate::patience::GivenUp;

/// Why a pencil could not be ordered, factorised or solved.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum EigenError {
    /// The pattern has no equations.
    #[error("the pencil has no equations; give at least one free degree of freedom")]
    Empty,
    /// The pattern is not the lower triangle it promises to be.
    #[error("the pattern is malformed at equation {equation}: {what}")]
    Malformed {
        /// Column (or index) where the pattern breaks its promise.
        equation: usize,
        /// The promise broken, in words.
        what: &'static str,
    },
    /// A slice does not have the length its shape asks for.
    #[error("{what} has {got} entries where {wanted} are needed")]
    Length {
        /// Which slice.
        what: &'static str,
        /// Entries given.
        got: usize,
        /// Entries needed.
        wanted: usize,
    },
    /// The symbolic factorisation was made from another pattern.
    #[error("the symbolic factorisation belongs to another pattern; make it again from this one")]
    ForeignSymbolic,
    /// The pencil is larger than 32-bit indices can address.
    #[error("{what} would need {got} entries; the limit is {limit}; use a coarser mesh")]
    TooLarge {
        /// Which array.
        what: &'static str,
        /// Entries it would need, or a lower bound of them.
        got: usize,
        /// Largest number that can be addressed.
        limit: usize,
    },
    /// A number given is NaN or infinite.
    #[error("{what} holds {value} at index {index}; every value must be finite")]
    NotFinite {
        /// Which slice or argument.
        what: &'static str,
        /// Position in it.
        index: usize,
        /// The value found.
        value: f64,
    },
    /// K - σM has no Cholesky factor.
    #[error(
        "K - sigma M is not positive definite at sigma = {sigma}: the pivot of equation {equation} is not positive; \
         the structure has a mechanism or a negative stiffness there, or sigma is not below the lowest eigenvalue"
    )]
    NotPositiveDefinite {
        /// The equation (in the pattern's order) whose pivot failed.
        equation: usize,
        /// The shift.
        sigma: f64,
    },
    /// M has a negative direction, or no mass at all.
    #[error(
        "the mass matrix is not positive semidefinite (found x'Mx = {value}); every element's mass must be at least zero"
    )]
    MassNotPositive {
        /// The offending quadratic form or diagonal value.
        value: f64,
    },
    /// No diagonal entry of K is positive where there is mass, so no scale can be found.
    #[error("no equation has both stiffness and mass; check the assembly, or give a shift")]
    NoStiffness,
    /// A shift at which `lowest` cannot work.
    #[error("the shift {shift} can't be used; it must be finite and below zero")]
    Shift {
        /// The shift given.
        shift: f64,
    },
    /// A rigid mode is not a null vector of K.
    #[error(
        "rigid mode {mode} is no null vector of K: |Kz| / (|K||z|) = {ratio:e}, limit {limit:e}; leave it out or mend the element"
    )]
    RigidNotNull {
        /// Index of the mode given.
        mode: usize,
        /// Largest |Kz|ᵢ over the largest (|K||z|)ᵢ.
        ratio: f64,
        /// Largest ratio accepted.
        limit: f64,
    },
    /// The rigid modes given depend on each other, or carry no mass.
    #[error("only {independent} of the {given} rigid modes are independent in the mass matrix; give each once")]
    RigidDependent {
        /// Modes given.
        given: usize,
        /// Independent ones among them.
        independent: usize,
    },
    /// The request can't be met whatever the pencil.
    #[error("{wanted} modes were asked for; this pencil has between 1 and {available}")]
    Count {
        /// Modes asked for.
        wanted: usize,
        /// Equations less rigid modes.
        available: usize,
    },
    /// The block size is outside its limits.
    #[error("a block of {block} vectors can't be used; it must be from 1 to {limit}")]
    Block {
        /// Block size given.
        block: usize,
        /// Largest block accepted.
        limit: usize,
    },
    /// M has a null space, and fewer finite eigenvalues exist than were asked for.
    #[error(
        "only {found} finite eigenvalues exist where {wanted} were asked for; ask for fewer or give every part mass"
    )]
    Exhausted {
        /// Eigenvalues found.
        found: usize,
        /// Eigenvalues asked for.
        wanted: usize,
    },
    /// The iteration spent its basis before every mode was accurate.
    #[error(
        "{converged} of {wanted} modes are accurate after {basis} basis vectors, the limit; ask for fewer modes, or check the matrices' scaling"
    )]
    NotConverged {
        /// Lowest modes that meet the tolerance.
        converged: usize,
        /// Modes asked for.
        wanted: usize,
        /// Basis vectors built.
        basis: usize,
    },
    /// The projected matrix had no eigendecomposition.
    #[error("the projected matrix of size {size} has no eigendecomposition; the pencil's values overflow")]
    Projection {
        /// Its size.
        size: usize,
    },
    /// The inertia count keeps disagreeing with the modes found.
    #[error("{counted} eigenvalues lie below {lambda} and only {found} were found; the mode list would be incomplete")]
    Missed {
        /// Where the count was taken.
        lambda: f64,
        /// Eigenvalues below it by inertia.
        counted: usize,
        /// Eigenvalues found below it, rigid ones included.
        found: usize,
    },
    /// The indefinite factorisation lost too many digits to be trusted.
    #[error(
        "eigenvalues below {lambda} can't be counted: the factorisation grew by {growth:e}, limit {limit:e}; \
         {lambda} is too close to an eigenvalue, count at a value a little away"
    )]
    CountUncertain {
        /// Where the count was asked for.
        lambda: f64,
        /// Element growth |L||D||Lᵀ| over |A|, infinite when a pivot vanished.
        growth: f64,
        /// Largest growth trusted.
        limit: f64,
    },
    /// Nobody waits for the result.
    #[error(transparent)]
    GivenUp(#[from] GivenUp),
}

/// Refuses a slice that holds NaN or infinity, or has the wrong length.
pub(super) fn check_values(what: &'static str, values: &[f64], wanted: usize) -> Result<(), EigenError> {
    if values.len() != wanted {
        return Err(EigenError::Length { what, got: values.len(), wanted });
    }
    match values.iter().position(|value| !value.is_finite()) {
        Some(index) => Err(EigenError::NotFinite { what, index, value: values[index] }),
        None => Ok(()),
    }
}
