//! Pencils that are their own mirror image, given by one half, against the same given whole.

use super::beams::{crossed_beams, rigid};
use super::*;
use crate::eigen::{Refinement, Start, refine};

/// Even, so that a row of nodes lies in the mirror.
const ELEMENTS: usize = 8;
const NODES: usize = ELEMENTS + 1;
const RIGID: usize = 4;

/// The crossed beams with their first direction turned round: nodes on one side are images of those on the other, slopes along it turn.
fn reflection() -> Reflection {
    let equations = 4 * NODES * NODES;
    let mirrored = |equation: usize| {
        let (row, column, local) = (equation / (4 * NODES), equation / 4 % NODES, equation % 4);
        let own = row.min(ELEMENTS - row);
        (4 * (own * NODES + column) + local) as u32
    };
    Reflection {
        image_of: (0..equations).map(mirrored).collect(),
        turns: (0..equations).map(|equation| equation % 4 / 2 == 1).collect(),
    }
}

/// The same, whole and by its half.
struct Mirrored {
    whole: Assembled,
    symbolic: Symbolic,
    stiffness: Vec<f64>,
    mass: Vec<f64>,
}

impl Mirrored {
    fn new() -> Self {
        Self::of(crossed_beams(ELEMENTS))
    }

    /// Heavier towards the mirror and towards one end of it, so that no motion has the frequency of another of the other kind.
    fn uneven() -> Self {
        let mut whole = crossed_beams(ELEMENTS);
        let weight = |equation: usize| {
            let (row, column) = (equation / (4 * NODES), equation / 4 % NODES);
            1.0 + 0.1 * column as f64 + 0.2 * row.min(ELEMENTS - row) as f64
        };
        for column in 0..whole.pattern.dof() {
            for at in whole.pattern.column_starts[column]..whole.pattern.column_starts[column + 1] {
                // D M D with D diagonal stays positive.
                whole.mass[at] *= weight(column) * weight(whole.pattern.row_indices[at] as usize);
            }
        }
        Self::of(whole)
    }

    fn of(whole: Assembled) -> Self {
        let symbolic = Symbolic::new(&whole.pattern).unwrap().mirrored(&reflection()).unwrap();
        let [stiffness, mass] = [&whole.stiffness, &whole.mass].map(|values| {
            // What lies in the mirror has half of its own from either side.
            let half = |&[own, image]: &[u32; 2]| values[own as usize] * if own == image { 0.5 } else { 1.0 };
            symbolic.half_entries().iter().map(half).collect::<Vec<f64>>()
        });
        Self { whole, symbolic, stiffness, mass }
    }

    fn half(&self) -> Pencil<'_> {
        Pencil { pattern: self.symbolic.half().unwrap(), stiffness: &self.stiffness, mass: &self.mass }
    }

    /// By the half, and whole.
    fn both(&self, request: &Request) -> [Eigenpairs; 2] {
        [self.half(), self.whole.pencil()].map(|pencil| lowest(&pencil, &self.symbolic, request).unwrap())
    }
}

/// Ax with A given by its lower triangle.
fn product(pattern: &Pattern, values: &[f64], x: &[f64]) -> Vec<f64> {
    let mut product = vec![0.0; x.len()];
    for (column, bounds) in pattern.column_starts.windows(2).enumerate() {
        let stored = bounds[0]..bounds[1];
        for (&row, value) in pattern.row_indices[stored.clone()].iter().zip(&values[stored]) {
            let row = row as usize;
            product[row] += value * x[column];
            if row != column {
                product[column] += value * x[row];
            }
        }
    }
    product
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// Wherever the list ends, between motions of one kind or within a pair of one frequency.
#[test]
fn the_half_has_the_modes_of_the_whole() {
    let (mirrored, rigid) = (Mirrored::new(), rigid(ELEMENTS));
    for count in 1..=24 {
        let [half, whole] = mirrored.both(&Request { rigid: Some(&rigid), ..Request::count(count) });
        assert_close(&half.values, &whole.values, 1e-9);
        let below = half.counted_below - RIGID;
        assert!(below >= count && half.counted_at.unwrap() > half.values[count - 1], "{count}: {below}");
        let [at, _] = mirrored.both(&Request { rigid: Some(&rigid), ..Request::count(below) });
        assert!(half.counted_at.unwrap() > at.values[below - 1] * (1.0 - 1e-9), "{count}");
        assert_eq!(half.rigid.len(), RIGID);
        assert!(half.rigid.iter().all(|zero| zero.abs() < 1e-6 * half.values[0]), "{:?}", half.rigid);
    }
}

#[test]
fn its_vectors_solve_the_whole_and_are_their_own_image_or_its_opposite() {
    let (mirrored, rigid) = (Mirrored::new(), rigid(ELEMENTS));
    let [half, _] = mirrored.both(&Request { rigid: Some(&rigid), ..Request::count(16) });
    let (whole, Reflection { image_of, turns }) = (&mirrored.whole, reflection());
    let vectors: Vec<&[f64]> = half.vectors.chunks_exact(whole.pattern.dof()).collect();
    let mut kinds = [0; 2];
    for (mode, &vector) in vectors.iter().enumerate() {
        let forces = product(&whole.pattern, &whole.stiffness, vector);
        let inertia = product(&whole.pattern, &whole.mass, vector);
        let left: Vec<f64> = forces.iter().zip(&inertia).map(|(k, m)| k - half.values[mode] * m).collect();
        assert!(dot(&left, &left).sqrt() < 1e-5 * half.values[mode] * dot(&inertia, &inertia).sqrt(), "mode {mode}");
        for (other, &vector) in vectors.iter().enumerate() {
            let unit = f64::from(u8::from(other == mode));
            assert!((dot(vector, &inertia) - unit).abs() < 1e-9, "modes {mode} and {other}");
        }
        let far = |sign: f64| {
            let images = (0..vector.len()).filter(|&equation| image_of[equation] as usize != equation);
            let off = images.map(|image| {
                let turned = if turns[image] { -sign } else { sign };
                (vector[image] - turned * vector[image_of[image] as usize]).abs()
            });
            off.fold(0.0, f64::max)
        };
        let kind = usize::from(far(1.0) > far(-1.0));
        assert!(far(1.0).min(far(-1.0)) < 1e-12, "mode {mode}: {} {}", far(1.0), far(-1.0));
        kinds[kind] += 1;
    }
    assert!(kinds[0] > 4 && kinds[1] > 4, "{kinds:?}");
}

#[test]
fn all_below_a_limit_are_found_and_no_more_than_asked_for() {
    let (mirrored, rigid) = (Mirrored::new(), rigid(ELEMENTS));
    let [known, _] = mirrored.both(&Request { rigid: Some(&rigid), ..Request::count(20) });
    for last in [1, 7, 18] {
        let lambda = 0.5 * (known.values[last] + known.values[last + 1]);
        if known.values[last + 1] / known.values[last] < 1.0 + 1e-6 {
            continue;
        }
        for cap in [100, last] {
            let extent = Extent::Below { lambda, cap };
            let [half, whole] = mirrored.both(&Request { extent, rigid: Some(&rigid), ..Request::count(1) });
            assert_eq!(half.values.len(), cap.min(last + 1));
            assert_close(&half.values, &whole.values, 1e-9);
            if cap > last {
                assert_eq!((half.counted_below, half.counted_at), (whole.counted_below, whole.counted_at));
            }
        }
    }
    let nothing = Extent::Below { lambda: 0.5 * known.values[0], cap: 5 };
    let [half, _] = mirrored.both(&Request { extent: nothing, rigid: Some(&rigid), ..Request::count(1) });
    assert_eq!((half.values.len(), half.counted_below), (0, RIGID));
}

#[test]
fn values_of_the_whole_come_back() {
    let mirrored = Mirrored::new();
    for (half, whole) in [(&mirrored.stiffness, &mirrored.whole.stiffness), (&mirrored.mass, &mirrored.whole.mass)] {
        let largest = whole.iter().fold(0.0, |largest: f64, value| largest.max(value.abs()));
        let back = mirrored.symbolic.whole_values(half);
        assert!(back.iter().zip(whole).all(|(back, whole)| (back - whole).abs() < 1e-12 * largest));
    }
}

/// From modes of the half on the half, and where the next pencil is whole, and back.
#[test]
fn modes_are_refined_in_halves_and_go_on_from_one_to_the_other() {
    let (mirrored, rigid) = (Mirrored::uneven(), rigid(ELEMENTS));
    let [known, _] = mirrored.both(&Request { rigid: Some(&rigid), prove: false, ..Request::count(11) });
    let heavier: Vec<f64> = mirrored.mass.iter().map(|mass| 1.1 * mass).collect();
    let half = Pencil { mass: &heavier, ..mirrored.half() };
    let refinement = Refinement {
        rigid: Some(&rigid),
        start: Start::Vectors(&known.vectors),
        fresh: 1,
        shift: known.shift,
        wanted: 8,
        residual: 1e-5,
        most_passes: 20,
    };
    let check = |pencil: &Pencil, refinement: Refinement, by: f64| {
        let found = refine(pencil, &mirrored.symbolic, &refinement).unwrap().expect("it comes near");
        let expected: Vec<f64> = known.values[..8].iter().map(|value| value / by).collect();
        assert_close(&found.values[..8], &expected, 1e-8);
        found
    };
    let first = check(&half, refinement, 1.1);
    let second = check(&half, Refinement { start: Start::Onward(&first.onward), ..refinement }, 1.1);
    assert_eq!(second.passes, 0, "led by the factor of before");
    let whole = check(&mirrored.whole.pencil(), Refinement { start: Start::Onward(&second.onward), ..refinement }, 1.0);
    let again = check(&mirrored.half(), Refinement { start: Start::Onward(&whole.onward), ..refinement }, 1.0);
    let dof = mirrored.whole.pattern.dof();
    let vectors = again.onward.vectors(&mirrored.symbolic, 8);
    for (mode, vector) in vectors.chunks_exact(dof).enumerate() {
        let energy = dot(vector, &product(&mirrored.whole.pattern, &mirrored.whole.stiffness, vector));
        assert!((energy / again.values[mode] - 1.0).abs() < 1e-9, "mode {mode}");
    }
}

#[test]
fn what_is_no_reflection_of_the_pattern_is_left_aside() {
    let whole = crossed_beams(ELEMENTS);
    let has_half = |change: &dyn Fn(&mut Reflection)| {
        let mut reflection = reflection();
        change(&mut reflection);
        Symbolic::new(&whole.pattern).unwrap().mirrored(&reflection).unwrap().half().is_some()
    };
    assert!(has_half(&|_| ()));
    assert!(!has_half(&|reflection| reflection.turns.truncate(3)), "too short");
    assert!(!has_half(&|reflection| reflection.image_of[70] = u32::MAX), "no such equation");
    // The last row mirrors the second, which then has two images.
    let rows = |row: usize| 4 * NODES * row..4 * NODES * (row + 1);
    let second: Vec<u32> = rows(1).map(|equation| equation as u32).collect();
    assert!(!has_half(&|reflection| reflection.image_of[rows(ELEMENTS)].copy_from_slice(&second)), "two images");
    // Nothing lies in the mirror, so that elements join both sides.
    let middle: Vec<u32> = rows(ELEMENTS / 2 - 1).map(|equation| equation as u32).collect();
    assert!(
        !has_half(&|reflection| reflection.image_of[rows(ELEMENTS / 2)].copy_from_slice(&middle)),
        "past the mirror"
    );
}

#[test]
fn a_half_of_another_length_is_refused() {
    let mirrored = Mirrored::new();
    let short = Pencil { mass: &mirrored.mass[1..], ..mirrored.half() };
    assert!(matches!(lowest(&short, &mirrored.symbolic, &Request::count(1)), Err(EigenError::Length { .. })));
}
