//! The drawing board's side: the drawings of one design and what its arching does.
//!
//! A module and a worker of its own: the page loads it once the first figures are there, and a drawing never waits for a
//! solve.

mod drawing_board;
mod replies;

pub use drawing_board::DrawingBoard;
