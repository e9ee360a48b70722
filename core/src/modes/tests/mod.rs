//! Checks of what is told about modes, on plates and on a carved top.

mod certainty;
mod damping;
mod edge_layer;
mod many;
mod names;
mod plate;
mod sensitivity;
