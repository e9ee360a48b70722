//! Whether what takes long is still wanted.
//!
//! A thread that computes hears nothing. What may run for longer than a person waits after a change therefore asks, some dozen times
//! a second or more, whether its result is still wanted, and ends with [`GivenUp`] when it isn't. Whoever can know says so once for its thread, by
//! [`depends_on`]; where nobody does, all is wanted.
//!
//! This is the one thing that reaches functions unnamed: it can change no result, only whether there is one, and would otherwise
//! stand in every signature between a page and a loop.

use std::cell::RefCell;

/// The end of a computation that nobody waits for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("given up half-way, since nobody waits for it any more; ask again where that is wrong")]
pub struct GivenUp;

thread_local! {
    static WANTED: RefCell<Option<Box<dyn Fn() -> bool>>> = const { RefCell::new(None) };
}

/// From now on what this thread computes is given up as soon as `wanted` says no. It is asked often, and must not compute with this crate itself.
pub fn depends_on(wanted: impl Fn() -> bool + 'static) {
    WANTED.with_borrow_mut(|asked| *asked = Some(Box::new(wanted)));
}

/// Goes on only as long as the result is wanted.
///
/// # Errors
/// [`GivenUp`] when it isn't.
#[inline(never)] // Asked in many places, where it takes longer to be answered than to be called.
pub(crate) fn check() -> Result<(), GivenUp> {
    let wanted = WANTED.with_borrow(|asked| asked.as_ref().is_none_or(|wanted| wanted()));
    if wanted { Ok(()) } else { Err(GivenUp) }
}

#[cfg(test)]
mod tests {
    use std::cell::Cell;
    use std::rc::Rc;

    use super::*;
    use crate::design::Design;
    use crate::mesh::MeshSize;
    use crate::modes::ModesRequest;
    use crate::top::{Stages, TopError};

    const SIZE: MeshSize = MeshSize::Preview;

    /// Lets this thread ask so many times; returns what is left of them.
    fn patient_for(times: usize) -> Rc<Cell<usize>> {
        let left = Rc::new(Cell::new(times));
        let told = Rc::clone(&left);
        depends_on(move || {
            let wanted = told.get() > 0;
            told.set(told.get().saturating_sub(1));
            wanted
        });
        left
    }

    /// Wherever a solve is given up it says so, and the same stages then make what others would.
    #[test]
    fn a_solve_is_given_up_anywhere_and_leaves_no_trace() {
        const PLENTY: usize = 1_000_000;
        let request = ModesRequest::lowest(4);
        let left = patient_for(PLENTY);
        let whole = Stages::new(Design::demo()).modes(SIZE, &request).unwrap().clone();
        let asked = PLENTY - left.get();
        assert!(asked > 1000, "a solve asked only {asked} times whether it is wanted");
        for share in 0..20 {
            let mut stages = Stages::new(Design::demo());
            patient_for(asked * share / 20);
            let refused: TopError = stages.modes(SIZE, &request).unwrap_err();
            assert_eq!(refused.kind(), "given_up", "{refused}");
            patient_for(PLENTY);
            assert_eq!(stages.modes(SIZE, &request).unwrap(), &whole, "begun again after {share} of 20 parts");
        }
    }

    #[test]
    fn slopes_are_given_up_like_modes() {
        let mut stages = Stages::new(Design::demo());
        let request = ModesRequest::lowest(2);
        stages.modes(SIZE, &request).unwrap();
        patient_for(10);
        assert_eq!(stages.sensitivities(SIZE, &request).unwrap_err().kind(), "given_up");
    }
}
