//! The search: steps, looks at the Ritz pairs, moves of the shift, and the proof.

use super::basis::Basis;
use super::lanczos::Lanczos;
use super::pencil::Checked;
use super::proof::{Gap, gap_above};
use super::report::{Report, report};
use super::ritz::Ritz;
use super::shift::{self, Scale};
use super::{EigenError, Factor, RESIDUAL_TOLERANCE};
use crate::patience::GivenUp;

/// A mode is first taken for accurate at this share of the tolerance: the iteration knows residuals in the norm of M⁻¹, the report
/// uses the plain one, and the two differ by the spread of masses.
const FIRST_SHARE: f64 = 0.3;
/// When the plain residual still fails, the iteration's own tolerance is tightened by this factor, at most down to the least one.
const TIGHTEN: f64 = 0.03;
const LEAST_TOLERANCE: f64 = 1e-12;
/// The first Ritz value is looked at after this many steps to see whether the shift suits.
const SHIFT_STEPS: usize = 2;
/// The shift is moved at most this often; the second move already starts from a good Ritz value.
const MOST_MOVES: usize = 3;

/// What the search has to do, checked.
pub(super) struct Task<'a> {
    pub(super) pencil: &'a Checked<'a>,
    /// Deflated modes, M-orthonormal.
    pub(super) rigid: &'a Basis,
    pub(super) scale: Scale,
    /// The caller's shift; found here when left out.
    pub(super) shift: Option<f64>,
    /// At least one, at most those available.
    pub(super) wanted: usize,
    /// Equations that can move, less the rigid modes.
    pub(super) available: usize,
    /// Vectors in a block.
    pub(super) width: usize,
    /// A count already made that the modes wanted must match.
    pub(super) proven: Option<Gap>,
}

/// The search's state.
pub(super) struct Search<'a> {
    pub(super) task: Task<'a>,
    pub(super) shift: f64,
    lanczos: Lanczos<'a>,
    tolerance: f64,
    pub(super) passes: usize,
    /// Whether the shift may still be moved when accuracy can't be had at it.
    may_move: bool,
    /// Expanded vectors at which Ritz pairs are worth a look.
    next_look: usize,
    /// What the last count had to say against the modes found.
    missed: Option<EigenError>,
}

/// Modes that are accurate, and what they were read from.
pub(super) struct Found {
    pub(super) report: Report,
    ritz: Ritz,
    /// Whether the basis spans everything.
    full: bool,
}

impl<'a> Search<'a> {
    /// Factorises and starts from `start` (vector, equation), made up to a block.
    pub(super) fn new(task: Task<'a>, start: &[f64]) -> Result<Search<'a>, EigenError> {
        let (shift, factor) = match task.shift {
            Some(shift) => (shift, Factor::of(task.pencil, -shift)?),
            None => shift::factorise(task.pencil, task.scale.guess)?,
        };
        let lanczos = begin(&task, factor, start)?;
        let may_move = task.shift.is_none();
        let tolerance = FIRST_SHARE * RESIDUAL_TOLERANCE;
        let next_look = task.wanted;
        let mut search = Search { task, shift, lanczos, tolerance, passes: 0, may_move, next_look, missed: None };
        if may_move {
            search.settle_shift()?;
        }
        Ok(search)
    }

    /// Takes a few steps and moves the shift if the first Ritz value says so.
    fn settle_shift(&mut self) -> Result<(), EigenError> {
        for _ in 0..MOST_MOVES {
            for _ in 0..SHIFT_STEPS {
                self.step()?;
            }
            let ritz = Ritz::of(&self.lanczos)?;
            // Zeros of a free structure whose rigid modes were not given say nothing of its elastic scale, and their copies not yet
            // converged look like small elastic values: with zeros about, the shift is left alone until the end.
            let first = ritz.theta.first().map(|&theta| self.value(theta));
            let elastic = first.filter(|&first| first > self.shift * shift::ZERO);
            match elastic.and_then(|first| shift::better(self.shift, first, self.task.scale.least)) {
                Some(better) => self.move_shift(better, &ritz)?,
                None => break,
            }
        }
        Ok(())
    }

    /// A shift closer to the first elastic value, when rounding at the present one keeps converged modes from the tolerance.
    fn clearer_shift(&self, ritz: &Ritz) -> Option<f64> {
        let mut values = ritz.theta.iter().map(|&theta| self.value(theta));
        let first = values.find(|&value| value > self.shift * shift::ZERO)?;
        shift::clearer(self.shift, first)
    }

    /// Starts again at another shift, from the lowest Ritz vectors.
    fn move_shift(&mut self, shift: f64, ritz: &Ritz) -> Result<(), EigenError> {
        let start = ritz.vectors(&self.lanczos, self.task.width.min(ritz.theta.len()))?;
        let (shift, factor) = shift::factorise(self.task.pencil, shift)?;
        self.shift = shift;
        self.tolerance = FIRST_SHARE * RESIDUAL_TOLERANCE;
        self.next_look = self.task.wanted;
        self.lanczos = begin(&self.task, factor, &start)?;
        Ok(())
    }

    fn step(&mut self) -> Result<(), EigenError> {
        self.passes += 1;
        self.lanczos.step()
    }

    /// Goes on until the modes wanted are accurate.
    pub(super) fn find(&mut self) -> Result<Found, EigenError> {
        let available = self.task.available;
        // Well-behaved pencils need about twice the modes wanted plus a few blocks; four times is for clusters at the end of the list.
        let limit = available.min(4 * self.task.wanted + 40 * self.task.width);
        loop {
            let pending = self.lanczos.size() - self.lanczos.expanded();
            let full = pending == 0 && self.lanczos.refresh(self.task.width)? == 0;
            if !full && self.lanczos.expanded() < self.next_look {
                self.step()?;
                continue;
            }
            let expanded = self.lanczos.expanded();
            self.next_look = expanded + self.task.width.max(expanded / 12);
            let ritz = Ritz::of(&self.lanczos)?;
            let accurate = self.accurate(&ritz);
            if accurate >= self.task.wanted {
                let report = self.report(&ritz)?;
                if report.accurate {
                    return Ok(Found { report, ritz, full });
                }
                if self.tolerance > LEAST_TOLERANCE {
                    self.tolerance *= TIGHTEN;
                }
            } else if full {
                return Err(EigenError::Exhausted { found: ritz.theta.len(), wanted: self.task.wanted });
            }
            if full || expanded >= limit && expanded < available {
                if let Some(shift) = self.clearer_shift(&ritz).filter(|_| self.may_move) {
                    self.may_move = false;
                    self.move_shift(shift, &ritz)?;
                    continue;
                }
                let gave_up =
                    EigenError::NotConverged { converged: accurate, wanted: self.task.wanted, basis: expanded };
                return Err(self.missed.take().unwrap_or(gave_up));
            }
        }
    }

    /// Goes on for so many more modes.
    pub(super) fn find_more(&mut self, count: usize) -> Result<Found, EigenError> {
        self.task.wanted += count;
        // They may be accurate already.
        self.next_look = self.task.wanted.max(self.lanczos.expanded());
        self.find()
    }

    /// Goes on until a count agrees with what was found; where it was taken.
    pub(super) fn complete(&mut self, found: &mut Found) -> Result<Gap, EigenError> {
        loop {
            match self.prove(found)? {
                Verdict::Complete(gap) => return Ok(gap),
                Verdict::Undecided => {}
                Verdict::Missing { lambda, counted, found: known } => {
                    let missed = EigenError::Missed { lambda, counted, found: known };
                    if found.full || counted < known {
                        return Err(missed);
                    }
                    self.missed = Some(missed);
                    self.lanczos.refresh(self.task.width)?;
                    // Fresh directions need a few steps before they show.
                    self.next_look = self.lanczos.expanded() + 4 * self.task.width;
                }
            }
            *found = self.find()?;
        }
    }

    fn value(&self, theta: f64) -> f64 {
        1.0 / theta - self.shift
    }

    /// How many of the lowest Ritz pairs, without a break, meet the iteration's tolerance.
    fn accurate(&self, ritz: &Ritz) -> usize {
        let meets = |(theta, error): (&f64, &f64)| {
            let value = self.value(*theta);
            error / (theta * shift::measure(value, self.shift)) <= self.tolerance
        };
        ritz.theta.iter().zip(&ritz.error).take_while(|&pair| meets(pair)).count()
    }

    fn report(&self, ritz: &Ritz) -> Result<Report, GivenUp> {
        let vectors = ritz.vectors(&self.lanczos, self.task.wanted)?;
        report(self.task.pencil, self.task.rigid, vectors, self.shift)
    }

    fn prove(&self, found: &Found) -> Result<Verdict, EigenError> {
        let Found { ritz, full, .. } = found;
        if let Some(gap) = &self.task.proven {
            let below = ritz.theta.iter().filter(|&&theta| self.value(theta) < gap.lambda).count();
            return Ok(Verdict::of(gap.clone(), self.task.wanted.min(below) + self.task.rigid.size()));
        }
        let Some((last, gap)) = gap_above(ritz, self.shift, self.task.wanted, *full) else {
            return Ok(Verdict::Undecided);
        };
        let (lambda, counted) = gap.count(self.task.pencil)?;
        Ok(Verdict::of(Gap { lambda, counted }, last + self.task.rigid.size()))
    }
}

/// The iteration at one shift, with memory for what 26 and 60 modes of a top were seen to need; moving the basis when it grows costs more.
fn begin<'a>(task: &Task<'a>, factor: Factor<'a>, start: &[f64]) -> Result<Lanczos<'a>, EigenError> {
    let expected = 4 * task.wanted + task.width;
    Lanczos::new(factor, &task.pencil.mass, task.rigid, start, task.width, expected)
}

/// What the count says of the modes found.
enum Verdict {
    Complete(Gap),
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
            Verdict::Complete(gap)
        } else {
            Verdict::Missing { lambda: gap.lambda, counted: gap.counted, found }
        }
    }
}
