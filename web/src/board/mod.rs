//! The drawing board's side: the drawings of one design, what its arching does and how it is changed, measured files read
//! into a design.
//!
//! A module and a worker of its own: the page loads it once the first figures are there, and a drawing never waits for a
//! solve.

mod arches;
mod comparison;
mod drawing_board;
mod fittings;
mod holes;
mod link_code;
mod measured;
mod movement;
mod places;
mod replies;
mod wood;

pub use drawing_board::DrawingBoard;
pub use measured::{read_heights, read_outline};

use bombatura_core::design::{Design, DesignError};

fn checked(design: &Design) -> Result<String, DesignError> {
    design.check()?;
    Ok(design.to_json())
}
