//! The input file for CalculiX: millimetres, newtons, tonnes, seconds, megapascals.

use std::fmt::Write;

use bombatura_core::wood::Wood;

use super::bricks::Bricks;
use super::wedges::{Hinge, Wedges};

const MPA_PER_GPA: f64 = 1e3;
const TONNE_PER_MM3_PER_KG_PER_M3: f64 = 1e-12;

/// The set whose motion is printed.
pub(super) const PRINTED: &str = "MIDDLE";

/// A frequency analysis of `wedges` cut from `wood`, for the lowest `modes`, rigid motions included.
pub(super) fn text(wedges: &Wedges, wood: &Wood, modes: usize) -> String {
    let mut deck = shape(&wedges.nodes_mm, "C3D15", &wedges.elements);
    deck.push_str(&set(PRINTED, &wedges.middle));
    deck.push_str(&material(wood));
    for hinge in &wedges.hinges {
        hinge_equations(&mut deck, hinge);
    }
    let _ = write!(deck, "*STEP\n*FREQUENCY\n{modes}\n*NODE PRINT, NSET={PRINTED}\nU\n*END STEP\n");
    deck
}

/// A frequency analysis of `bricks` of `wood`, for the lowest `modes`, rigid motions included.
pub(super) fn of_bricks(bricks: &Bricks, wood: &Wood, modes: usize) -> String {
    let shape = shape(&bricks.nodes_mm, "C3D20", &bricks.elements);
    format!("{shape}{}*STEP\n*FREQUENCY\n{modes}\n*END STEP\n", material(wood))
}

/// Nodes, and elements of one kind.
fn shape<const NODES: usize>(nodes_mm: &[[f64; 3]], kind: &str, elements: &[[usize; NODES]]) -> String {
    let mut deck = String::from("*NODE, NSET=ALL\n");
    // Writing into a string can't fail.
    for (node, [x, y, z]) in nodes_mm.iter().enumerate() {
        let _ = writeln!(deck, "{}, {x:.9}, {y:.9}, {z:.9}", node + 1);
    }
    let _ = writeln!(deck, "*ELEMENT, TYPE={kind}, ELSET=TOP");
    for (element, nodes) in elements.iter().enumerate() {
        let numbers: Vec<_> = [element].iter().chain(nodes).map(|number| (number + 1).to_string()).collect();
        // At most sixteen numbers may stand on a line.
        let lines: Vec<_> = numbers.chunks(16).map(|line| line.join(", ")).collect();
        let _ = writeln!(deck, "{}", lines.join(",\n"));
    }
    deck
}

/// Nothing moves along the normal; across it the mean displacement is nothing, by Simpson's rule over the nodes through
/// the wood.
///
/// CalculiX eliminates the first displacement that an equation names, so each equation starts with one of its own: that along
/// the normal's largest component at every node, and those along the other two at the middle node.
fn hinge_equations(deck: &mut String, Hinge { nodes, normal }: &Hinge) {
    let largest = (0..3).max_by(|&a, &b| normal[a].abs().total_cmp(&normal[b].abs())).unwrap_or(2);
    let others = [(largest + 1) % 3, (largest + 2) % 3];
    for node in nodes {
        let terms = [largest, others[0], others[1]].map(|k| (*node, k, normal[k]));
        equation(deck, terms.into_iter().filter(|(_, _, factor)| *factor != 0.0));
    }
    let middle = nodes.len() / 2;
    let weight = |at: usize| match (at, nodes.len()) {
        (0, _) => 1.0,
        (at, count) if at + 1 == count => 1.0,
        (at, _) if at % 2 == 1 => 4.0,
        _ => 2.0,
    };
    for k in others {
        let rest = (0..nodes.len()).filter(|at| *at != middle);
        equation(deck, std::iter::once(middle).chain(rest).map(|at| (nodes[at], k, weight(at))));
    }
}

/// The sum of factors times displacements (node, xyz) is zero.
fn equation(deck: &mut String, terms: impl Iterator<Item = (usize, usize, f64)>) {
    let terms: Vec<_> = terms.map(|(node, k, factor)| format!("{}, {}, {factor:.12}", node + 1, k + 1)).collect();
    // At most four terms may stand on a line.
    let lines: Vec<_> = terms.chunks(4).map(|line| line.join(", ")).collect();
    let _ = writeln!(deck, "*EQUATION\n{}\n{}", terms.len(), lines.join(",\n"));
}

fn set(name: &str, nodes: &[usize]) -> String {
    let mut text = format!("*NSET, NSET={name}\n");
    for node in nodes {
        let _ = writeln!(text, "{},", node + 1);
    }
    text
}

/// The nine constants along L, R, T, and where L and R point: the grain along y, R turned from x towards z by the rings.
fn material(wood: &Wood) -> String {
    let c = &wood.constants;
    let [e_l, e_r, e_t, g_lr, g_lt, g_rt] =
        [c.e_l_gpa, c.e_r_gpa, c.e_t_gpa, c.g_lr_gpa, c.g_lt_gpa, c.g_rt_gpa].map(|gpa| gpa * MPA_PER_GPA);
    let (nu_lr, nu_lt, nu_rt) = (c.nu_lr, c.nu_lt, c.nu_rt);
    let density = wood.density_kg_m3 * TONNE_PER_MM3_PER_KG_PER_M3;
    let (sin, cos) = wood.ring_angle_deg.to_radians().sin_cos();
    format!(
        "*ORIENTATION, NAME=GRAIN\n0., 1., 0., {cos:.9}, 0., {sin:.9}\n\
         *MATERIAL, NAME=WOOD\n*ELASTIC, TYPE=ENGINEERING CONSTANTS\n\
         {e_l}, {e_r}, {e_t}, {nu_lr}, {nu_lt}, {nu_rt}, {g_lr}, {g_lt},\n{g_rt}\n\
         *DENSITY\n{density:e}\n\
         *SOLID SECTION, ELSET=TOP, MATERIAL=WOOD, ORIENTATION=GRAIN\n"
    )
}
