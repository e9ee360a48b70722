//! The rim on ribs that give way.

use nalgebra::{Matrix6, Vector3, Vector6};

use super::error::check_values;
use super::{Bare, FittingError, RimStiffness};
use crate::shell::{ShellModel, Tie};

/// A block glued between the ribs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// (xy) in plan, m.
    pub centre_m: [f64; 2],
    /// Rim nearer to the centre than this stands on the block, m.
    pub reach_m: f64,
}

/// Springs along the whole rim, stiffer on the blocks.
#[derive(Debug, Clone, PartialEq)]
pub struct ElasticRim {
    /// Between the blocks.
    pub stiffness: RimStiffness,
    /// Where blocks stand.
    pub blocks: Vec<Block>,
    /// How many times as stiff as a rib a block is.
    pub block_factor: f64,
}

impl ElasticRim {
    /// Adds the springs to `model`, each node taking half the rim to either neighbour. `rim_nodes` go once round, counter-clockwise
    /// seen from outside. The springs act at the mid-surface; its height over the ribs is left out.
    ///
    /// # Errors
    /// [`FittingError`] for a negative value.
    pub fn fit(&self, bare: &Bare, rim_nodes: &[u32], model: &mut ShellModel) -> Result<(), FittingError> {
        check_values(&[
            ("the rim's stiffness upwards (N/m2)", self.stiffness.upright),
            ("the rim's stiffness along itself (N/m2)", self.stiffness.along),
            ("the rim's stiffness outwards (N/m2)", self.stiffness.bending[(0, 0)]),
            ("the rim's stiffness against turning (N)", self.stiffness.bending[(1, 1)]),
            ("the blocks' factor", self.block_factor),
        ])?;
        let place = |index: usize| bare.geometry.nodes_m()[rim_nodes[index % rim_nodes.len()] as usize];
        for (index, &node) in rim_nodes.iter().enumerate() {
            let (before, here, after) = (place(index + rim_nodes.len() - 1), place(index), place(index + 1));
            let length = 0.5 * ((here - before).xy().norm() + (after - here).xy().norm());
            let run = (after - before).xy().normalize();
            let along = Vector3::new(run.x, run.y, 0.0);
            let outward = along.cross(&Vector3::z());
            let stiffness = self.at(&here).times(length);
            model.add(bare.equations, &[node], &springs(&stiffness, &along, &outward), &Matrix6::zeros());
            let ties = [
                (stiffness.upright, Vector3::z(), false),
                (stiffness.along, along, false),
                (stiffness.bending[(0, 0)], outward, false),
                (stiffness.bending[(1, 1)], along, true),
            ];
            let felt = ties.into_iter().filter(|(stiffness, ..)| *stiffness > 0.0);
            model.ties.extend(felt.map(|(_, axis, turning)| Tie { place_m: here, axis, turning }));
        }
        Ok(())
    }

    fn at(&self, place: &Vector3<f64>) -> RimStiffness {
        let near = |block: &Block| (place.x - block.centre_m[0]).hypot(place.y - block.centre_m[1]) <= block.reach_m;
        if self.blocks.iter().any(near) { self.stiffness.times(self.block_factor) } else { self.stiffness }
    }
}

/// Springs on a node's six degrees of freedom. A turn about `along`, the rim walked counter-clockwise, leans the rib's top
/// outwards.
fn springs(stiffness: &RimStiffness, along: &Vector3<f64>, outward: &Vector3<f64>) -> Matrix6<f64> {
    let moving = |axis: &Vector3<f64>| Vector6::new(axis.x, axis.y, axis.z, 0.0, 0.0, 0.0);
    let turning = |axis: &Vector3<f64>| Vector6::new(0.0, 0.0, 0.0, axis.x, axis.y, axis.z);
    let (up, along_rim) = (moving(&Vector3::z()), moving(along));
    let bend = [moving(outward), turning(along)];
    let mut sum = up * up.transpose() * stiffness.upright + along_rim * along_rim.transpose() * stiffness.along;
    for (i, a) in bend.iter().enumerate() {
        for (j, b) in bend.iter().enumerate() {
            sum += a * b.transpose() * stiffness.bending[(i, j)];
        }
    }
    sum
}
