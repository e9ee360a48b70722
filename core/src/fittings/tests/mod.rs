//! Fittings on flat sheets, against beams, springs and supports that are solved elsewhere.

mod bar;
mod bar_shear;
mod point_mass;
mod post;
mod rim;
mod sheet;
