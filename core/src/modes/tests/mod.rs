//! Checks of what is told about modes, on plates and on a carved top.

mod names;
mod plate;
