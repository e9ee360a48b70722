//! Modes of a shell that changes little by little, as under a dragged handle: each time from the last ones.
//!
//! After each step every mode is known by its own number, which goes on with its shape through crossings of frequencies and
//! changes of mesh, and moves the same way as before. Nothing proves that no mode is missing: that is for [`solve_modes`],
//! when the handle is let go.
//!
//! [`solve_modes`]: super::solve_modes

use super::matching::{displacements, pair_off, push_unit_moves, roots_of_masses};
use super::solve::{BLOCK, frequency_hz};
use super::{Modes, ModesError, ModesRequest, name_modes, rigid_motions};
use crate::eigen::{Extent, Onward, Refinement, Request, Start, Symbolic, inner_products, lowest, refine};
use crate::shell::{DOFS_PER_NODE, Equations, ShellGeometry, ShellModel, Supports};

/// Vectors iterated beside the modes shown. Four, one of them fresh each time, are what a block solve takes at once; with fewer the highest mode
/// comes near too slowly.
const GUARDS: usize = 4;
const FRESH: usize = 1;

/// Largest residual of a mode shown, where the step factorised. The frequency errs by half of its square over the relative gap to what lies
/// outside the block, that is by no more than 0.1 % where the gap is a half; measured on a violin top (arch +0.5 and +2 mm, thickness
/// −5 and −20 %, an eye moved 0.5 mm, 1 200 nodes) by 3e-5, 6e-5 at most. Ten times less would take a step more each time and show
/// in no figure. Steps with a factor of before are judged otherwise (`eigen::refine`), and err by no more than 0.1 % either, measured.
pub const FOLLOW_RESIDUAL: f64 = 0.03;

/// Steps before a search from nothing is the better way: it costs as much as some ten of them, and more don't help a
/// block that has lost its modes.
const MOST_PASSES: usize = 4;

/// A shape goes on as the one most like it, if at least so much. Where two modes mix evenly each holds half of either; three, a third.
const LEAST_LIKENESS: f64 = 0.3;

/// The modes of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct Followed {
    /// Lowest first. Not counted, and rigid motions are not reported.
    pub modes: Modes,
    /// (mode): the number that goes on with its shape, from 1.
    pub identities: Vec<u32>,
    /// Steps from the last modes with a factor of this shell's own, zero where one of before led well enough; none when they were
    /// sought from nothing.
    pub passes: Option<usize>,
    /// What the next step starts from.
    pub trail: Trail,
}

/// Modes and guards, from which the next step starts.
#[derive(Debug, Clone, PartialEq)]
pub struct Trail {
    /// (vector, node, dof), modes first.
    shapes: Vec<f64>,
    /// What [`refine`] left of them for its next start; none on another mesh than theirs, or after a search.
    onward: Option<Onward>,
    /// (mode)
    identities: Vec<u32>,
    /// The next number to give to a shape not seen before.
    unused: u32,
    shift: f64,
}

impl Trail {
    /// The same on another mesh: `carry` takes one shape (node, dof) there.
    #[must_use]
    pub fn carried(&self, nodes: usize, carry: impl Fn(&[f64]) -> Vec<f64>) -> Self {
        let shapes = self.shapes.chunks_exact(nodes * DOFS_PER_NODE).flat_map(carry).collect();
        Self { shapes, onward: None, identities: self.identities.clone(), ..*self }
    }
}

/// The lowest `count` elastic modes of `model`, from the modes of a shell a little different on the same nodes, where there are any.
///
/// Cost: a block solve or two, and a factorisation unless little has changed since the last one; without modes to start from, or after
/// a large change, a whole search.
///
/// # Errors
/// As for [`solve_modes`](super::solve_modes).
pub fn follow_modes(
    geometry: &ShellGeometry,
    supports: &Supports,
    equations: &Equations,
    model: &ShellModel,
    symbolic: &Symbolic,
    count: usize,
    before: Option<&Trail>,
) -> Result<Followed, ModesError> {
    ModesRequest::lowest(count).check()?;
    let pencil = model.pencil(equations, symbolic);
    let rigid = rigid_motions(geometry, supports, &model.ties, equations).concat();
    let rigid = (!rigid.is_empty()).then_some(rigid.as_slice());
    let kept = count + GUARDS - FRESH;
    let known = before.filter(|trail| trail.shapes.len() >= kept * equations.equation_of.len() * DOFS_PER_NODE);
    let refined = match known {
        Some(trail) => {
            let gathered;
            let start = match &trail.onward {
                Some(onward) => Start::Onward(onward),
                None => {
                    gathered = equations.gather(&trail.shapes);
                    Start::Vectors(&gathered)
                }
            };
            let refinement = Refinement {
                rigid,
                start,
                fresh: FRESH,
                shift: trail.shift,
                wanted: count,
                residual: FOLLOW_RESIDUAL,
                most_passes: MOST_PASSES,
            };
            refine(&pencil, symbolic, &refinement)?.map(|refined| (refined, trail.shift))
        }
        None => None,
    };
    let (values, mut shapes, onward, residuals, passes, shift) = match refined {
        Some((found, shift)) => {
            let shapes = equations.spread(&found.onward.vectors(symbolic, kept));
            (found.values, shapes, Some(found.onward), found.residuals, Some(found.passes), shift)
        }
        None => {
            let extent = Extent::Count(kept);
            let request = Request { extent, rigid, block: BLOCK, prove: false, shift: None, start: None };
            let found = lowest(&pencil, symbolic, &request)?;
            (found.values, equations.spread(&found.vectors), None, found.residuals, None, found.shift)
        }
    };
    let (identities, unused) = carry_on(geometry, before, &mut shapes, count);
    let mut modes = Modes {
        nodes: geometry.node_count(),
        frequencies_hz: values[..count].iter().map(|lambda| frequency_hz(*lambda)).collect(),
        shapes: shapes[..count * geometry.node_count() * DOFS_PER_NODE].to_vec(),
        names: vec![None; count],
        residuals: residuals[..count].to_vec(),
        orthogonality: Vec::new(),
        rigid_hz: Vec::new(),
        counted: None,
    };
    if model.ties.is_empty() {
        modes.names = name_modes(geometry, supports, &modes);
    }
    let trail = Trail { shapes, onward, identities: identities.clone(), unused, shift };
    Ok(Followed { modes, identities, passes, trail })
}

/// Gives each of `count` shapes (mode, node, dof) the number of the shape before that it goes on from, and turns it to move the same way;
/// those that go on from none get new numbers. Returns the numbers and the next unused one.
fn carry_on(geometry: &ShellGeometry, before: Option<&Trail>, shapes: &mut [f64], count: usize) -> (Vec<u32>, u32) {
    let Some(before) = before else {
        return ((1..=count as u32).collect(), count as u32 + 1);
    };
    let length = geometry.node_count() * DOFS_PER_NODE;
    let roots = roots_of_masses(geometry);
    let moves = |shapes: &[f64], count: usize| -> Vec<f64> {
        let mut moves = Vec::new();
        for shape in shapes.chunks_exact(length).take(count) {
            push_unit_moves(&mut moves, &displacements(shape).collect::<Vec<_>>(), &roots);
        }
        moves
    };
    let (now, then) = (moves(shapes, count), moves(&before.shapes, before.identities.len()));
    // (now, then)
    let overlaps = inner_products(&then, &now, 3 * geometry.node_count());
    let likeness: Vec<f64> = overlaps.iter().map(|overlap| overlap * overlap).collect();
    let mut unused = before.unused;
    let mut identities = Vec::with_capacity(count);
    for (mode, (going_on, shape)) in pair_off(&likeness, before.identities.len(), LEAST_LIKENESS)
        .into_iter()
        .zip(shapes.chunks_exact_mut(length))
        .enumerate()
    {
        match going_on {
            Some(known) => {
                if overlaps[mode * before.identities.len() + known] < 0.0 {
                    shape.iter_mut().for_each(|value| *value = -*value);
                }
                identities.push(before.identities[known]);
            }
            None => {
                identities.push(unused);
                unused += 1;
            }
        }
    }
    (identities, unused)
}

#[cfg(test)]
mod tests {
    use super::*;

    const NODES: usize = 4;

    /// Three motions, each of a node of its own, come in another order and one of them turned about: the numbers go with them.
    #[test]
    fn numbers_go_with_their_shapes_round_three_places() {
        let places = [[0.0, 0.0, 0.0], [10.0, 0.0, 0.0], [10.0, 10.0, 0.0], [0.0, 10.0, 0.0]];
        let geometry = ShellGeometry::new(&places, None, &[1.0; NODES], &[[0, 1, 2], [0, 2, 3]]).unwrap();
        let moving = |node: usize, by: f64| {
            let mut shape = vec![0.0; NODES * DOFS_PER_NODE];
            shape[node * DOFS_PER_NODE + 2] = by;
            shape
        };
        let shapes = [moving(0, 1.0), moving(1, 1.0), moving(2, 1.0)].concat();
        let before = Trail { shapes, onward: None, identities: vec![7, 8, 9], unused: 10, shift: 1.0 };
        let mut now = [moving(2, 1.0), moving(0, -1.0), moving(1, 1.0)].concat();
        assert_eq!(carry_on(&geometry, Some(&before), &mut now, 3), (vec![9, 7, 8], 10));
        assert_eq!(now, [moving(2, 1.0), moving(0, 1.0), moving(1, 1.0)].concat());
    }
}
