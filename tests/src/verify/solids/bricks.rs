//! A level plate with a bar under it as quadratic bricks.

use std::collections::BTreeMap;

use bombatura_core::fittings::Profile;

/// Nodes of CalculiX's C3D20, in half cells along x, y, z from the cell's first corner.
const NODES: [[usize; 3]; 20] = [
    [0, 0, 0],
    [2, 0, 0],
    [2, 2, 0],
    [0, 2, 0],
    [0, 0, 2],
    [2, 0, 2],
    [2, 2, 2],
    [0, 2, 2],
    [1, 0, 0],
    [2, 1, 0],
    [1, 2, 0],
    [0, 1, 0],
    [1, 0, 2],
    [2, 1, 2],
    [1, 2, 2],
    [0, 1, 2],
    [0, 0, 1],
    [2, 0, 1],
    [2, 2, 1],
    [0, 2, 1],
];

pub(super) const M_PER_MM: f64 = 1e-3;

/// Places along an axis, mm, each run of cells as many as it says: (its end, cells).
struct Axis {
    begin_mm: f64,
    runs: [(f64, usize); 3],
}

impl Axis {
    /// At every half cell.
    fn halves_mm(&self) -> Vec<f64> {
        let mut from = self.begin_mm;
        let mut halves = vec![from];
        for (to, cells) in self.runs {
            halves.extend((1..=2 * cells).map(|half| from + (to - from) * half as f64 / (2 * cells) as f64));
            from = to;
        }
        halves
    }

    /// Whether the cell lies in the middle run.
    fn is_in_the_middle(&self, cell: usize) -> bool {
        (self.runs[0].1..self.runs[0].1 + self.runs[1].1).contains(&cell)
    }
}

/// A rectangle and what it measures, mm.
#[derive(Clone, Copy)]
pub(super) struct BarredPlate {
    pub(super) width_mm: f64,
    pub(super) length_mm: f64,
    pub(super) thickness_mm: f64,
    /// Where the bar's middle lies across the plate, from its edge.
    pub(super) bar_across_mm: f64,
    /// Where it begins and ends along the plate.
    pub(super) bar_ends_mm: [f64; 2],
    pub(super) bar_width_mm: f64,
    /// Its height along the way.
    pub(super) bar: Profile,
}

/// The bricks.
pub(super) struct Bricks {
    /// (node, xyz) mm.
    pub(super) nodes_mm: Vec<[f64; 3]>,
    /// (element, node).
    pub(super) elements: Vec<[usize; 20]>,
}

impl Bricks {
    /// Two layers in the plate and in the bar; cells of 8 mm in plan, the bar two wide. With half as many again each way the twist is 0.1 %
    /// lower, the next seven modes 0.0 to 0.1 %.
    pub(super) fn new(plate: &BarredPlate) -> Bricks {
        let cells = |length_mm: f64| (length_mm / 8.0).ceil() as usize;
        let [from, to] = [-0.5, 0.5].map(|widths| plate.bar_across_mm + widths * plate.bar_width_mm);
        let [begin, end] = plate.bar_ends_mm;
        let across =
            Axis { begin_mm: 0.0, runs: [(from, cells(from)), (to, 2), (plate.width_mm, cells(plate.width_mm - to))] };
        let along = Axis {
            begin_mm: 0.0,
            runs: [(begin, cells(begin)), (end, cells(end - begin)), (plate.length_mm, cells(plate.length_mm - end))],
        };
        let half = 0.5 * plate.thickness_mm;
        let bar_mm = plate.bar.height_m / M_PER_MM;
        let up = Axis { begin_mm: -half - bar_mm, runs: [(-half, 2), (0.0, 1), (half, 1)] };
        // What lies below the plate follows the bar's profile.
        let as_high_as_it_is = |along_mm: f64, up_mm: f64| {
            let height_m = plate.bar.height_at_m((along_mm - begin) / (end - begin));
            up_mm.max(-half) + (up_mm + half).min(0.0) * height_m / plate.bar.height_m
        };
        let places_mm = [&across, &along, &up].map(Axis::halves_mm);
        let [columns, rows, layers] = [0, 1, 2].map(|axis| places_mm[axis].len() / 2);
        let mut numbers = BTreeMap::new();
        let mut bricks = Bricks { nodes_mm: Vec::new(), elements: Vec::new() };
        for cell in (0..layers).flat_map(|k| (0..rows).flat_map(move |j| (0..columns).map(move |i| [i, j, k]))) {
            let [i, j, k] = cell;
            let is_wood = k >= up.runs[0].1 || (across.is_in_the_middle(i) && along.is_in_the_middle(j));
            if !is_wood {
                continue;
            }
            bricks.elements.push(NODES.map(|offset| {
                let at = [0, 1, 2].map(|axis| 2 * cell[axis] + offset[axis]);
                *numbers.entry(at).or_insert_with(|| {
                    let [x, y, z] = [0, 1, 2].map(|axis| places_mm[axis][at[axis]]);
                    bricks.nodes_mm.push([x, y, as_high_as_it_is(y, z)]);
                    bricks.nodes_mm.len() - 1
                })
            }));
        }
        bricks
    }
}
