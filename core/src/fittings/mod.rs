//! What is fixed to the shell once its own elements are assembled: bar, post, elastic rim, point masses.
//!
//! Each adds to the stiffness and mass of a [`ShellModel`] through the nodes of one triangle or
//! one node at a time, so the sparsity pattern, and with it the order of factorisation, stays what mesh and supports made
//! it. Springs to the ground are noted as ties, for they take away rigid motions.
//!
//! - [`Bar`]: a stiffener that feels the element's own strain field along its line, wherever that runs. Beam elements
//!   between mesh nodes are the obvious way not taken: they need the mesh to follow the bar.
//! - [`Post`]: a spring along z under one point.
//! - [`ElasticRim`]: springs along the rim, from the ribs as a plate standing on a still back.
//! - [`PointMass`]: a mass at one point.
//!
//! Places are found in plan, so no part of the shell may lie above another. Units are SI; [`Fittings::of_design`] converts.

mod bar;
mod elastic_rim;
mod error;
mod from_design;
mod place;
mod point_mass;
mod post;
mod profile;
mod rib;
mod slopes;
#[cfg(test)]
mod tests;
mod track;

pub use bar::{Bar, BarWood};
pub use elastic_rim::{Block, ElasticRim};
pub use error::FittingError;
pub use point_mass::PointMass;
pub use post::Post;
pub use profile::Profile;
pub use rib::{Rib, RimStiffness};

use crate::shell::{ElementOptions, Equations, ShellGeometry, ShellModel};
use crate::wood::Wood;

/// The shell that fittings go on.
#[derive(Debug, Clone, Copy)]
pub struct Bare<'a> {
    /// Its mid-surface.
    pub geometry: &'a ShellGeometry,
    /// Its wood.
    pub wood: &'a Wood,
    /// Its equations.
    pub equations: &'a Equations,
    /// As it was assembled.
    pub options: ElementOptions,
}

/// Everything that is fixed to one shell.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fittings {
    /// The bar.
    pub bar: Option<Bar>,
    /// The post.
    pub post: Option<Post>,
    /// The ribs, where they give way.
    pub rim: Option<ElasticRim>,
    /// Masses.
    pub masses: Vec<PointMass>,
}

impl Fittings {
    /// Whether there is none.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        *self == Self::default()
    }

    /// Adds all of them to `model`; `rim_nodes` are the nodes on the outline, counter-clockwise.
    ///
    /// # Errors
    /// The first fitting that has an impossible value or doesn't lie on the wood.
    pub fn fit(&self, bare: &Bare, rim_nodes: &[u32], model: &mut ShellModel) -> Result<(), FittingError> {
        if let Some(bar) = &self.bar {
            bar.fit(bare, model)?;
        }
        if let Some(post) = &self.post {
            post.fit(bare, model)?;
        }
        if let Some(rim) = &self.rim {
            rim.fit(bare, rim_nodes, model)?;
        }
        self.masses.iter().try_for_each(|mass| mass.fit(bare, model))
    }
}
