//! Where and in which direction a shell is driven or watched.

use super::{ModalBasis, ResponseError};
use crate::statics::PointLoad;

/// A unit force spread over nodes, by the work it does in each mode; read as a place to watch, the displacement that such a force
/// would work along.
#[derive(Debug, Clone, PartialEq)]
pub struct Port {
    /// (mode): φᵣᵀd, 1/√kg.
    by_mode: Vec<f64>,
}

impl Port {
    /// The port of `loads`, each of which is a share of one newton on a node.
    ///
    /// # Errors
    /// [`ResponseError::NoSuchNode`], or [`ResponseError::BadNumber`] for a force that isn't finite.
    pub fn new(basis: &ModalBasis, loads: &[PointLoad]) -> Result<Self, ResponseError> {
        for (index, &PointLoad { node, force_n }) in loads.iter().enumerate() {
            if node >= basis.node_count() {
                return Err(ResponseError::NoSuchNode { node, last: basis.node_count().saturating_sub(1) });
            }
            if let Some(&value) = force_n.iter().find(|force| !force.is_finite()) {
                return Err(ResponseError::BadNumber { what: "the forces", index, value, and: "" });
            }
        }
        let work = |mode: usize, load: &PointLoad| -> f64 {
            let moved = basis.displacement(mode, load.node);
            moved.iter().zip(load.force_n).map(|(moved, force)| f64::from(*moved) * force).sum()
        };
        Ok(Self::of_each(basis, |mode| loads.iter().map(|load| work(mode, load)).sum()))
    }

    /// A unit force along the outward normal at a place in plan, such as a tap: shared by the corners of the triangle there.
    ///
    /// # Errors
    /// [`ResponseError::OffTheSurface`] where there is no wood.
    pub fn outward(basis: &ModalBasis, place_m: [f64; 2]) -> Result<Self, ResponseError> {
        let surface = basis.surface();
        let (nodes, shares) = surface.at(place_m).ok_or(ResponseError::OffTheSurface { place_m })?;
        let load = |corner: usize| {
            let node = nodes[corner] as usize;
            PointLoad { node, force_n: surface.normals[node].map(|part| part * shares[corner]) }
        };
        Self::new(basis, &[0, 1, 2].map(load))
    }

    /// Reads the volume that the whole surface displaces outwards, m³; its mobility to a force is volume velocity, (m³/s)/N.
    #[must_use]
    pub fn volume(basis: &ModalBasis) -> Self {
        Self::outward_sum(basis, &basis.surface().areas_m2)
    }

    /// Reads Σ w u·n over the nodes, u·n the displacement outwards, `weights` (node): with areas, the volume that part of the surface displaces;
    /// with shares that add up to one, a mean.
    #[must_use]
    pub fn outward_sum(basis: &ModalBasis, weights: &[f64]) -> Self {
        let weighed =
            |mode: usize| weights.iter().enumerate().map(move |(node, weight)| weight * basis.outward(mode, node));
        Self::of_each(basis, |mode| weighed(mode).take(basis.node_count()).sum())
    }

    /// The sum of ports, each taken so many times; all of one basis.
    #[must_use]
    pub fn combined(parts: &[(f64, &Port)]) -> Self {
        let modes = parts.iter().map(|(_, port)| port.by_mode.len()).max().unwrap_or(0);
        let mut by_mode = vec![0.0; modes];
        for (times, port) in parts {
            by_mode.iter_mut().zip(&port.by_mode).for_each(|(sum, own)| *sum += times * own);
        }
        Self { by_mode }
    }

    /// (mode): φᵣᵀd, 1/√kg.
    #[must_use]
    pub fn by_mode(&self) -> &[f64] {
        &self.by_mode
    }

    fn of_each(basis: &ModalBasis, work: impl FnMut(usize) -> f64) -> Self {
        Self { by_mode: (0..basis.count()).map(work).collect() }
    }
}
