//! The bar: a stiffener of varying height along any line of the inner face.

use nalgebra::{Matrix3, Vector2, Vector3};

use super::error::check_values;
use super::place::{Place, carried};
use super::profile::torsion_constant_on_plate;
use super::track::{Segment, track};
use super::{Bare, FittingError, Profile};
use crate::shell::{ElementMatrix, LineStrain, ShellModel};
use crate::wood::Wood;

/// What a bar's wood does along its grain, which runs along the bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarWood {
    /// Young's modulus along the grain, Pa.
    pub modulus_pa: f64,
    /// Shear modulus of the grain with the bar's height, Pa.
    pub shear_pa: f64,
    /// kg/m³.
    pub density_kg_m3: f64,
}

impl BarWood {
    /// Of `wood` whose rings lie as the top's do: the tangential direction is the bar's height.
    #[must_use]
    pub fn of(wood: &Wood) -> Self {
        const PA_PER_GPA: f64 = 1e9;
        Self {
            modulus_pa: wood.constants.e_l_gpa * PA_PER_GPA,
            shear_pa: wood.constants.g_lt_gpa * PA_PER_GPA,
            density_kg_m3: wood.density_kg_m3,
        }
    }
}

/// A bar of rectangular section glued along a straight line in plan.
///
/// In each element it crosses it stretches by ε + zκ, bends by κ and twists and shears as the element does along its line,
/// z being its own middle, half its height below the inner face; energy ½∫(EA(ε + zκ)² + EIκ² + GJτ² + ⅚GAγ²) ds, with
/// one point a segment, so that linear κ and constant ε don't fight. A state of constant strain and curvature has its exact
/// energy. The bar shears by γ, the shell's own lean from its normal: a deep bar of spruce on a strip comes within 0.7 % of the
/// shear-flow formula so, and is 7 % too soft if only the plate resists shear.
///
/// Half of it lies along each of two lines, as far apart as its width asks: one line would turn in the plate, which shears easily
/// across the grain, and would depend on whether it follows the mesh's edges. J is what it adds to a plate that it stands on. Left out: the plate
/// can't bend across under the bar's foot, which raises a plate of 200 x 350 mm by 0.8 % in bending across, and a blunt end sheds torsion, which
/// one that is scooped has little of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// (end, xy) in plan, m.
    pub ends_m: [[f64; 2]; 2],
    /// Width, m.
    pub width_m: f64,
    /// Height along the length.
    pub profile: Profile,
    /// Its wood.
    pub wood: BarWood,
}

/// Where the bar's halves lie, in widths from its middle: by Gauss's rule, so that they turn sideways and about the bar as its width does.
const ACROSS: [f64; 2] = [-0.288_675_134_594_812_9, 0.288_675_134_594_812_9];

/// Shear stress is a parabola over a rectangle's height (Timoshenko; any strength of materials).
const PARABOLIC_SHEAR: f64 = 5.0 / 6.0;

impl Bar {
    /// Adds the bar to `model`. Where it has no height it adds nothing.
    ///
    /// # Errors
    /// [`FittingError`] for a negative value, or when part of the bar has no wood over it.
    pub fn fit(&self, bare: &Bare, model: &mut ShellModel) -> Result<(), FittingError> {
        check_values(&[
            ("the bar's width (m)", self.width_m),
            ("the bar's height (m)", self.profile.height_m),
            ("the height of the bar's ends (m)", self.profile.end_height_m),
            ("the bar's modulus along the grain (Pa)", self.wood.modulus_pa),
            ("the bar's shear modulus (Pa)", self.wood.shear_pa),
            ("the bar's density (kg/m3)", self.wood.density_kg_m3),
        ])?;
        for across in ACROSS {
            for segment in track(bare.geometry, self.line_m(across), "the bar")? {
                let piece = Piece::new(self, bare, &segment);
                let (stiffness, mass) = (piece.stiffness(bare, segment.triangle), piece.mass());
                model.add(bare.equations, &piece.middle.nodes, &stiffness, &mass);
                model.total_mass_kg += self.wood.density_kg_m3 * piece.area * piece.length;
            }
        }
        Ok(())
    }

    /// (end, xy) in plan, m: beside its middle by `across` widths.
    fn line_m(&self, across: f64) -> [[f64; 2]; 2] {
        let [from, to] = self.ends_m.map(Vector2::from);
        let along = (to - from).normalize();
        let beside = Vector2::new(-along.y, along.x) * (across * self.width_m);
        [(from + beside).into(), (to + beside).into()]
    }
}

/// The half of a bar in one element, taken as even.
struct Piece {
    wood: BarWood,
    start: Place,
    middle: Place,
    end: Place,
    /// Unit, along the bar on the facet.
    along: Vector3<f64>,
    /// m; the triangle's share, and the half's.
    length: f64,
    /// Of the whole bar, as are height and section.
    width: f64,
    height: f64,
    /// Section, m².
    area: f64,
}

impl Piece {
    fn new(bar: &Bar, bare: &Bare, segment: &Segment) -> Self {
        let [first, last] = segment.barycentric;
        let half_way = [0, 1, 2].map(|k| 0.5 * (first[k] + last[k]));
        let [start, middle, end] = [first, half_way, last].map(|at| Place::on(bare.geometry, segment.triangle, at));
        let run = end.middle_m - start.middle_m;
        let height = bar.profile.height_at_m(0.5 * (segment.span[0] + segment.span[1]));
        Self {
            wood: bar.wood,
            start,
            middle,
            end,
            along: run.normalize(),
            length: run.norm() * segment.share / ACROSS.len() as f64,
            width: bar.width_m,
            height,
            area: bar.width_m * height,
        }
    }

    /// Its middle from the shell's mid-surface, outwards, m: negative.
    fn offset(&self) -> f64 {
        -0.5 * (self.middle.thickness_m + self.height)
    }

    fn stiffness(&self, bare: &Bare, triangle: usize) -> ElementMatrix {
        let Bare { geometry, wood, options, .. } = *bare;
        let strain = LineStrain::new(geometry, triangle, wood, options, &self.middle.barycentric, &self.along);
        // The facet's normal may point inwards.
        let facing = geometry.facet_normal(triangle).dot(&self.middle.outward).signum();
        let stretch = strain.stretch + strain.curvature * (self.offset() * facing);
        let torsion = torsion_constant_on_plate(self.width, self.height, self.middle.thickness_m);
        let (e, g) = (self.wood.modulus_pa * self.length, self.wood.shear_pa * self.length);
        stretch.transpose() * stretch * (e * self.area)
            + strain.curvature.transpose() * strain.curvature * (e * self.area * self.height.powi(2) / 12.0)
            + strain.twist.transpose() * strain.twist * (g * torsion)
            + strain.shear.transpose() * strain.shear * (g * PARABOLIC_SHEAR * self.area)
    }

    /// Half consistent, half lumped between the corners, as the shell's own mass is, and for the same reason; the bar's middle
    /// is carried rigidly by the shell's normal.
    fn mass(&self) -> ElementMatrix {
        let density = self.wood.density_kg_m3 * self.length;
        let carried = carried(&(self.middle.outward * self.offset()));
        let moved = carried.transpose() * carried * (density * self.area);
        let across = self.middle.outward.cross(&self.along);
        let square = |axis: &Vector3<f64>| -> Matrix3<f64> { axis * axis.transpose() };
        // The width turns by itself: the halves lie beside each other.
        let turned = (square(&across) + square(&self.along)) * (density * self.area * self.height.powi(2) / 12.0);
        let mut mass = ElementMatrix::zeros();
        let [a, m, b] = [&self.start, &self.middle, &self.end].map(|place| place.barycentric);
        for i in 0..3 {
            for j in 0..3 {
                // Simpson's rule is exact for the product of two linear functions.
                let consistent = (a[i] * a[j] + 4.0 * m[i] * m[j] + b[i] * b[j]) / 6.0;
                let lumped = if i == j { m[i] } else { 0.0 };
                let block = moved * (0.5 * (consistent + lumped));
                mass.fixed_view_mut::<6, 6>(6 * i, 6 * j).copy_from(&block);
            }
            let mut own = mass.fixed_view_mut::<3, 3>(6 * i + 3, 6 * i + 3);
            own += turned * m[i];
        }
        mass
    }
}
