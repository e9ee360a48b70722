//! The driven top's side: what a force of any frequency makes of one design.
//!
//! A module and a worker of its own, loaded when somebody first asks how the top answers a force: it solves for a hundred modes and more,
//! keeps them where they are summed, and hands the page nothing but motions and curves.

mod curves;
mod driven_top;
mod forces;
mod lessons;
mod motions;
mod sounds;
mod step_bench;

pub use driven_top::DrivenTop;
pub use step_bench::StepBench;
