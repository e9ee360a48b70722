//! The search for the lowest eigenpairs, from the request to the proof.

use super::basis::Basis;
use super::error::check_values;
use super::inertia::count_ordered;
use super::lanczos::Lanczos;
use super::pencil::Ordered;
use super::product::SymmetricProduct;
use super::proof::Gap;
use super::report::{Report, report};
use super::rigid::rigid_basis;
use super::ritz::Ritz;
use super::shift;
use super::{EigenError, Pencil, Symbolic};

/// Largest residual |Kx - λMx| / |λMx| of a mode, unless rounding of K alone leaves more.
///
/// The eigenvalue errs by about the square of this over the relative gap to its neighbour, so 1e-6 leaves frequencies exact to 1e-10 at gaps
/// of a per cent, and the shape errs by 1e-6 over the gap. Tighter costs one or two more steps and shows in no figure; looser would show in shapes of
/// close pairs.
pub const RESIDUAL_TOLERANCE: f64 = 1e-6;

/// A mode is first taken for accurate at this share of the tolerance: the iteration knows residuals in the norm of M⁻¹, the report
/// uses the plain one, and the two differ by the spread of masses.
const FIRST_SHARE: f64 = 0.3;
/// When the plain residual still fails, the iteration's own tolerance is tightened by this factor, at most down to the least one.
const TIGHTEN: f64 = 0.03;
const LEAST_TOLERANCE: f64 = 1e-12;
/// Largest block; wider ones only delay convergence.
const LARGEST_BLOCK: usize = 64;
/// The first Ritz value is looked at after this many steps to see whether the shift suits.
const SHIFT_STEPS: usize = 2;
/// The shift is moved at most this often; the second move already starts from a good Ritz value.
const MOST_MOVES: usize = 3;

/// How many modes are wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Extent {
    /// The lowest so many, rigid modes given in the request not counted.
    Count(usize),
    /// Every one below `lambda`, but no more than the lowest `cap`; when `cap` come back, there may be more.
    Below {
        /// Upper end, in units of λ; not included.
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
    /// Vectors iterated together. At least the highest multiplicity expected; eight suits the caches.
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
        Request {
            extent: Extent::Count(count),
            rigid: None,
            block: 8,
            prove: true,
            shift: None,
            start: None,
        }
    }
}

/// Eigenpairs of K x = λ M x, lowest first.
#[derive(Debug, Clone, PartialEq)]
pub struct Eigenpairs {
    /// (mode): λ, ascending.
    pub values: Vec<f64>,
    /// (mode, equation): M-orthonormal; the first entry within a thousandth of the largest magnitude is positive.
    pub vectors: Vec<f64>,
    /// (mode): |Kx - λMx| / |λMx| in the plain norm; for a zero mode a thousandth of the shift stands for λ.
    pub residuals: Vec<f64>,
    /// (mode): largest |xᵢᵀMxⱼ - δᵢⱼ| over all modes and rigid modes j.
    pub orthogonality: Vec<f64>,
    /// Eigenvalues below `counted_at` by inertia, rigid modes included; zero when no proof was asked for.
    pub counted_below: usize,
    /// Where inertia was counted: just above the last mode found, or the limit of [`Extent::Below`]. None when no proof was asked for.
    pub counted_at: Option<f64>,
    /// s of the shift σ = -s that was used.
    pub shift: f64,
    /// Block steps taken, each with one block solve.
    pub passes: usize,
}

/// Finds the lowest eigenpairs of a pencil.
///
/// Shift-invert block Lanczos; every vector is kept and reorthogonalised. Repeated eigenvalues come out with their full
/// multiplicity. With `prove` (and always for [`Extent::Below`]) the inertia count must agree with what was found; when it
/// doesn't, fresh directions are added and the search goes on.
///
/// Cost: one factorisation, about (2 n + 20)/8 block solves for n modes, as many products with M, orthogonalisation growing with n²,
/// and one indefinite factorisation for the proof.
///
/// # Errors
/// [`EigenError::Count`], [`EigenError::Block`], [`EigenError::Shift`] for a request that can't be met; [`EigenError::NotPositiveDefinite`] when K + sM
/// has no Cholesky factor; [`EigenError::MassNotPositive`], [`EigenError::NoStiffness`], [`EigenError::RigidNotNull`], [`EigenError::RigidDependent`],
/// [`EigenError::NotFinite`] for input that breaks a promise; [`EigenError::Exhausted`] when M is singular and there are not
/// as many finite eigenvalues; [`EigenError::NotConverged`], [`EigenError::Missed`], [`EigenError::CountUncertain`] when the search
/// ends without what it promises.
pub fn lowest(
    pencil: &Pencil,
    symbolic: &Symbolic,
    request: &Request,
) -> Result<Eigenpairs, EigenError> {
    let ordered = Ordered::new(pencil, symbolic)?;
    let (mass, stiffness) = (ordered.mass_product(), ordered.stiffness_product());
    let rigid = rigid_basis(&ordered, &mass, &stiffness, request.rigid)?;
    let dof = symbolic.dof();
    let start = start_block(&ordered, request.start)?;
    let guess = match request.shift {
        Some(shift) if shift > 0.0 && shift.is_finite() => shift,
        Some(shift) => return Err(EigenError::Shift { shift: -shift }),
        None => shift::first_guess(&ordered, symbolic.nodes())?,
    };
    if request.block == 0 || request.block > LARGEST_BLOCK {
        return Err(EigenError::Block {
            block: request.block,
            limit: LARGEST_BLOCK,
        });
    }
    let available = dof.saturating_sub(rigid.size());
    let mut proven = None;
    let wanted = match request.extent {
        Extent::Count(count) => count,
        Extent::Below { lambda, cap } => {
            check_values("the limit", &[lambda], 1)?;
            let counted = count_ordered(&ordered, lambda)?;
            let below = counted.saturating_sub(rigid.size());
            if below <= cap {
                proven = Some(Gap { lambda, counted });
            }
            if below == 0 {
                return Ok(nothing_below(lambda, counted, guess));
            }
            below.min(cap)
        }
    };
    if wanted == 0 || wanted > available {
        return Err(EigenError::Count { wanted, available });
    }
    let (shift, factor) = shift::factorise(&ordered, guess)?;
    let deflated = Basis {
        dof,
        vectors: rigid.vectors.clone(),
        images: rigid.images.clone(),
    };
    let width = request.block.min(available);
    let lanczos = Lanczos::new(
        factor,
        &mass,
        deflated,
        &start,
        width,
        2 * wanted + 4 * width,
    )?;
    let mut search = Search {
        ordered: &ordered,
        mass: &mass,
        stiffness: &stiffness,
        rigid: &rigid,
        shift,
        lanczos,
        wanted,
        width,
        prove: request.prove,
        proven,
        tolerance: FIRST_SHARE * RESIDUAL_TOLERANCE,
        passes: 0,
        next_look: 0,
    };
    if request.shift.is_none() {
        search.settle_shift()?;
    }
    search.run()
}

struct Search<'a> {
    ordered: &'a Ordered<'a>,
    mass: &'a SymmetricProduct,
    stiffness: &'a SymmetricProduct,
    rigid: &'a Basis,
    shift: f64,
    lanczos: Lanczos<'a>,
    wanted: usize,
    width: usize,
    prove: bool,
    proven: Option<Gap>,
    tolerance: f64,
    passes: usize,
    /// Expanded vectors at which Ritz pairs are worth a look.
    next_look: usize,
}

impl Search<'_> {
    /// Takes a few steps and moves the shift if the first Ritz value says so, keeping what was learned as the start block.
    fn settle_shift(&mut self) -> Result<(), EigenError> {
        for _ in 0..MOST_MOVES {
            for _ in 0..SHIFT_STEPS {
                self.step()?;
            }
            let ritz = Ritz::of(&self.lanczos)?;
            // Zeros of a free structure whose rigid modes were not given say nothing of its elastic scale.
            let first = ritz
                .theta
                .iter()
                .map(|theta| 1.0 / theta - self.shift)
                .find(|&value| value > self.shift * shift::ZERO);
            let Some(better) = first.and_then(|first| shift::better(self.shift, first)) else {
                return Ok(());
            };
            let kept = self.width.min(ritz.theta.len());
            let start = ritz.vectors(&self.lanczos, kept);
            let (shift, factor) = shift::factorise(self.ordered, better)?;
            self.shift = shift;
            let deflated = Basis {
                dof: self.rigid.dof,
                vectors: self.rigid.vectors.clone(),
                images: self.rigid.images.clone(),
            };
            self.lanczos = Lanczos::new(
                factor,
                self.mass,
                deflated,
                &start,
                self.width,
                2 * self.wanted + 4 * self.width,
            )?;
        }
        Ok(())
    }

    fn step(&mut self) -> Result<(), EigenError> {
        self.passes += 1;
        self.lanczos.step()
    }

    fn run(mut self) -> Result<Eigenpairs, EigenError> {
        let available = self.rigid.dof - self.rigid.size();
        // Well-behaved pencils need about twice the modes wanted plus a few blocks; four times is for clusters at the end of the list.
        let limit = available.min(4 * self.wanted + 40 * self.width);
        self.next_look = self.wanted.min(available);
        let mut missed = None;
        loop {
            let pending = self.lanczos.size() - self.lanczos.expanded();
            let full = pending == 0 && self.lanczos.refresh(self.width)? == 0;
            if !full {
                self.step()?;
            }
            let expanded = self.lanczos.expanded();
            if !full && expanded < self.next_look {
                continue;
            }
            self.next_look = expanded + self.width.max(expanded / 12);
            let ritz = Ritz::of(&self.lanczos)?;
            let accurate = self.accurate(&ritz);
            if accurate >= self.wanted {
                let found = self.report(&ritz);
                if found.accurate {
                    match self.prove(&ritz, full)? {
                        Verdict::Complete(gap) => return Ok(self.finish(found, gap)),
                        Verdict::Undecided => {}
                        Verdict::Missing {
                            lambda,
                            counted,
                            found,
                        } => {
                            missed = Some(EigenError::Missed {
                                lambda,
                                counted,
                                found,
                            });
                            if full || counted < found {
                                return Err(EigenError::Missed {
                                    lambda,
                                    counted,
                                    found,
                                });
                            }
                            self.lanczos.refresh(self.width)?;
                            // Fresh directions need a few steps before they show.
                            self.next_look = expanded + 4 * self.width;
                        }
                    }
                } else if self.tolerance > LEAST_TOLERANCE {
                    self.tolerance *= TIGHTEN;
                }
            } else if full {
                return Err(EigenError::Exhausted {
                    found: ritz.theta.len(),
                    wanted: self.wanted,
                });
            }
            if full || expanded >= limit && expanded < available {
                let gave_up = EigenError::NotConverged {
                    converged: accurate,
                    wanted: self.wanted,
                    basis: expanded,
                };
                return Err(missed.unwrap_or(gave_up));
            }
        }
    }

    fn value(&self, theta: f64) -> f64 {
        1.0 / theta - self.shift
    }

    /// How many of the lowest Ritz pairs, without a break, meet the iteration's tolerance.
    fn accurate(&self, ritz: &Ritz) -> usize {
        let meets = |(theta, error): (&f64, &f64)| {
            let value = self.value(*theta);
            error / (theta * value.abs().max(self.shift * shift::ZERO)) <= self.tolerance
        };
        ritz.theta
            .iter()
            .zip(&ritz.error)
            .take_while(|&pair| meets(pair))
            .count()
    }

    fn report(&self, ritz: &Ritz) -> Report {
        let vectors = ritz.vectors(&self.lanczos, self.wanted);
        let values = ritz.theta[..self.wanted]
            .iter()
            .map(|&theta| self.value(theta))
            .collect();
        report(
            self.mass,
            self.stiffness,
            self.rigid,
            values,
            vectors,
            self.shift,
        )
    }

    fn prove(&self, ritz: &Ritz, full: bool) -> Result<Verdict, EigenError> {
        if let Some(gap) = &self.proven {
            let found = ritz
                .theta
                .iter()
                .filter(|&&theta| self.value(theta) < gap.lambda)
                .count();
            return Ok(Verdict::of(
                gap.clone(),
                self.wanted.min(found) + self.rigid.size(),
            ));
        }
        if !self.prove {
            return Ok(Verdict::Complete(None));
        }
        let Some((last, gap)) = super::proof::gap_above(ritz, self.shift, self.wanted, full) else {
            return Ok(Verdict::Undecided);
        };
        let (lambda, counted) = gap.count(self.ordered)?;
        Ok(Verdict::of(
            Gap { lambda, counted },
            last + self.rigid.size(),
        ))
    }

    fn finish(&self, report: Report, gap: Option<Gap>) -> Eigenpairs {
        let symbolic = self.ordered.symbolic;
        let mut vectors = vec![0.0; report.vectors.len()];
        for (permuted, vector) in report
            .vectors
            .chunks_exact(symbolic.dof())
            .zip(vectors.chunks_exact_mut(symbolic.dof()))
        {
            symbolic.permute_back(permuted, vector);
            super::report::fix_sign(vector);
        }
        Eigenpairs {
            values: report.values,
            vectors,
            residuals: report.residuals,
            orthogonality: report.orthogonality,
            counted_below: gap.as_ref().map_or(0, |gap| gap.counted),
            counted_at: gap.map(|gap| gap.lambda),
            shift: self.shift,
            passes: self.passes,
        }
    }
}

/// What the count says of the modes found.
enum Verdict {
    Complete(Option<Gap>),
    /// No gap to count in yet.
    Undecided,
    Missing {
        lambda: f64,
        counted: usize,
        found: usize,
    },
}

impl Verdict {
    fn of(gap: Gap, found: usize) -> Verdict {
        if gap.counted == found {
            Verdict::Complete(Some(gap))
        } else {
            Verdict::Missing {
                lambda: gap.lambda,
                counted: gap.counted,
                found,
            }
        }
    }
}

fn start_block(pencil: &Ordered, start: Option<&[f64]>) -> Result<Vec<f64>, EigenError> {
    let dof = pencil.symbolic.dof();
    let start = start.unwrap_or(&[]);
    check_values("the start block", start, start.len().div_ceil(dof) * dof)?;
    let mut block = vec![0.0; start.len()];
    for (vector, permuted) in start.chunks_exact(dof).zip(block.chunks_exact_mut(dof)) {
        pencil.symbolic.permute_into(vector, permuted);
    }
    Ok(block)
}

fn nothing_below(lambda: f64, counted: usize, shift: f64) -> Eigenpairs {
    Eigenpairs {
        values: Vec::new(),
        vectors: Vec::new(),
        residuals: Vec::new(),
        orthogonality: Vec::new(),
        counted_below: counted,
        counted_at: Some(lambda),
        shift,
        passes: 0,
    }
}
