//! An arched lattice of three-dimensional beams along the edges of a triangulated grid: six equations a node, the pattern and the spread of
//! stiffness of a shell, and six exact rigid modes.

use super::assembly::{Assembled, Element, assemble};
use super::elimination_order;

/// Spacing, section and material of the lattice: roughly a spruce plate 350 mm long and 3 mm thick, in mm, N and tonnes.
const LENGTH: f64 = 350.0;
const ARCH: f64 = 15.0;
const THICKNESS: f64 = 3.0;
const MODULUS: f64 = 10_000.0;
const DENSITY: f64 = 0.4e-9;

pub(super) struct Frame {
    pub(super) pencil: Assembled,
    /// (mode, equation)
    pub(super) rigid: Vec<f64>,
}

/// A lattice of `side` by `side` nodes.
pub(super) fn frame(side: usize) -> Frame {
    let spacing = LENGTH / (side - 1) as f64;
    let beams = beams(side);
    let order = elimination_order(neighbours(side * side, &beams)).expect("it is waited for");
    let mut place = vec![0; order.len()];
    for (at, &node) in order.iter().enumerate() {
        place[node as usize] = at;
    }
    let nodes: Vec<[f64; 3]> = order
        .iter()
        .map(|&node| {
            let (row, column) = (node as usize / side, node as usize % side);
            let (x, y) = (column as f64 * spacing, row as f64 * spacing);
            let bump = |u: f64| (std::f64::consts::PI * u / LENGTH).sin();
            [x, y, ARCH * bump(x) * bump(y)]
        })
        .collect();
    let elements: Vec<Element> =
        beams.iter().map(|&[first, second]| beam(&nodes, place[first], place[second], spacing)).collect();
    let node_of_equation = (0..6 * nodes.len()).map(|equation| (equation / 6) as u32).collect();
    Frame { pencil: assemble(node_of_equation, &elements), rigid: rigid_modes(&nodes) }
}

/// (beam, end): nodes, row by row: along the rows, the columns and one way across.
fn beams(side: usize) -> Vec<[usize; 2]> {
    let mut beams = Vec::new();
    for (row, column) in (0..side).flat_map(|row| (0..side).map(move |column| (row, column))) {
        let node = row * side + column;
        let (beside, above) = (column + 1 < side, row + 1 < side);
        let ends = [(beside, node + 1), (above, node + side), (beside && above, node + side + 1)];
        beams.extend(ends.iter().filter(|(is_there, _)| *is_there).map(|&(_, end)| [node, end]));
    }
    beams
}

fn neighbours(nodes: usize, beams: &[[usize; 2]]) -> Vec<Vec<u32>> {
    let mut neighbours = vec![Vec::new(); nodes];
    for &[first, second] in beams {
        neighbours[first].push(second as u32);
        neighbours[second].push(first as u32);
    }
    neighbours
}

/// Translations along and rotations about the axes.
fn rigid_modes(nodes: &[[f64; 3]]) -> Vec<f64> {
    let mut modes = Vec::new();
    for axis in 0..3 {
        modes.extend(nodes.iter().flat_map(|_| (0..6).map(move |d| f64::from(u8::from(d == axis)))));
    }
    for axis in 0..3 {
        let mut turn = [0.0; 3];
        turn[axis] = 1.0;
        modes.extend(nodes.iter().flat_map(|point| {
            let moved = cross(turn, *point);
            [moved[0], moved[1], moved[2], turn[0], turn[1], turn[2]]
        }));
    }
    modes
}

/// Euler-Bernoulli beam of width `width` and the lattice's thickness (12 x 12, from memory of any text on matrix structural analysis), mass lumped.
fn beam(nodes: &[[f64; 3]], first: usize, second: usize, width: f64) -> Element {
    let along = subtract(nodes[second], nodes[first]);
    let length = norm(along);
    let area = width * THICKNESS;
    let (inertia, side_inertia) = (width * THICKNESS.powi(3) / 12.0, THICKNESS * width.powi(3) / 12.0);
    let torsion = MODULUS / 2.6 * 2.0 * inertia;
    let mut local = [[0.0; 12]; 12];
    let mut pair = |a: usize, b: usize, value: f64| {
        local[a][b] += value;
        if a != b {
            local[b][a] += value;
        }
    };
    for (d, stiffness) in [(0, MODULUS * area / length), (3, torsion / length)] {
        pair(d, d, stiffness);
        pair(d + 6, d + 6, stiffness);
        pair(d, d + 6, -stiffness);
    }
    // (deflection, rotation, sign of the rotation, EI): bending out of the lattice's plane and within it.
    for (v, r, sign, bending) in [(2, 4, -1.0, MODULUS * inertia), (1, 5, 1.0, MODULUS * side_inertia)] {
        let (a, b, c) = (12.0 * bending / length.powi(3), 6.0 * bending / length.powi(2), 2.0 * bending / length);
        pair(v, v, a);
        pair(v + 6, v + 6, a);
        pair(v, v + 6, -a);
        for (rotation, end) in [(r, 1.0), (r + 6, 1.0)] {
            pair(v, rotation, sign * end * b);
            pair(v + 6, rotation, -sign * end * b);
        }
        pair(r, r, 2.0 * c);
        pair(r + 6, r + 6, 2.0 * c);
        pair(r, r + 6, c);
    }
    let x = scale(along, 1.0 / length);
    let y = normalise(cross([0.0, 0.0, 1.0], x));
    let axes = [x, y, cross(x, y)];
    let mut element = Element { equations: Vec::new(), stiffness: vec![0.0; 144], mass: vec![0.0; 144] };
    for node in [first, second] {
        element.equations.extend(6 * node..6 * node + 6);
    }
    for a in 0..12 {
        for b in 0..12 {
            for (p, from) in axes.iter().enumerate() {
                for (q, to) in axes.iter().enumerate() {
                    element.stiffness[a * 12 + b] += from[a % 3] * local[a / 3 * 3 + p][b / 3 * 3 + q] * to[b % 3];
                }
            }
        }
        let translation = 0.5 * DENSITY * area * length;
        let is_rotation = a % 6 >= 3;
        element.mass[a * 12 + a] = if is_rotation { translation * THICKNESS.powi(2) / 12.0 } else { translation };
    }
    element
}

fn subtract(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn norm(a: [f64; 3]) -> f64 {
    a.iter().map(|value| value * value).sum::<f64>().sqrt()
}

fn scale(a: [f64; 3], factor: f64) -> [f64; 3] {
    a.map(|value| value * factor)
}

fn normalise(a: [f64; 3]) -> [f64; 3] {
    scale(a, 1.0 / norm(a))
}
