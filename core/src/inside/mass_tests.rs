//! What regions weigh, contour lines of thickness, and the mass target.

use proptest::prelude::*;

use super::*;
use crate::{
    design::{Design, GraduationMeasures, fittings_tests::fit_out},
    mesh::{MeshSize, PlanMesh},
    regions::Regions,
    sound_holes::SoundHole,
    top::Shape,
};

fn shape(change: impl FnOnce(&mut GraduationMeasures)) -> Shape {
    let mut design = Design::demo();
    change(&mut design.graduation);
    Shape::new(&design).unwrap()
}

fn density() -> f64 {
    Design::demo().wood.wood().unwrap().density_kg_m3
}

/// Against the whole top's body, integrated over a mesh that knows no regions; regions that mirror each other weigh the
/// same, but for the diagonals of their triangles.
#[test]
fn masses_add_up_to_the_tops_and_mirror_each_other() {
    let made = shape(|_| ());
    let regions = Regions::new(&made.outline, &made.holes);
    let mesh = PlanMesh::new(&made.outline, &made.holes, MeshSize::Fine).unwrap();
    let wanted = Body::new(&mesh, &made.surface, &made.graduation).mass_g(density());
    let mass = |kind| RegionWood::of(regions.get(kind).unwrap(), &made.surface, &made.graduation, density()).mass_g;
    let sum: f64 = regions.regions.iter().map(|region| mass(region.kind)).sum();
    assert!((sum / wanted - 1.0).abs() < 5e-4, "{sum} against {wanted} g");
    for region in &regions.regions {
        let image = mass(region.kind.mirrored());
        assert!(mass(region.kind) > 0.0 && (image / mass(region.kind) - 1.0).abs() < 1e-4, "{:?}", region.kind);
    }
}

#[test]
fn the_bars_line_weighs_what_lies_under_it() {
    let mut design = Design::demo();
    fit_out(&mut design);
    let made = Shape::new(&design).unwrap();
    let bar = design.bar.as_ref().unwrap();
    let line = BarLine::under(bar, &made.surface, &made.graduation, density());
    let flat_g = line.area_mm2 * line.wood.mean_thickness_mm * density() * 1e-6;
    // The arch is longer than its plan, by no more than its slope asks for.
    assert!(line.wood.mass_g > flat_g && line.wood.mass_g < 1.1 * flat_g, "{} {flat_g}", line.wood.mass_g);
    let lower = [bar.lower_end.across_mm, bar.lower_end.station_mm];
    let corner = line.polygon.map(|p| (p[0] - lower[0]).hypot(p[1] - lower[1]));
    assert!((corner.into_iter().fold(f64::INFINITY, f64::min) - 0.5 * bar.width_mm).abs() < 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    /// The wood weighs what was wished for after the change, with every zone and map in play.
    #[test]
    fn the_change_for_a_mass_reaches_it(mass in 55.0..80.0f64, wings in 2.2..3.0f64) {
        let mut design = Design::demo();
        design.graduation.wings_mm = Some(wings);
        design.graduation.channel_mm = Some(3.2);
        let before = Shape::new(&design).unwrap();
        let mesh = PlanMesh::new(&before.outline, &before.holes, MeshSize::Preview).unwrap();
        let density = design.wood.wood().unwrap().density_kg_m3;
        let change = uniform_change_mm(&mesh, &before.surface, &before.graduation, density, mass).unwrap();
        design.graduation = design.graduation.thicker_by(change);
        design.check().unwrap();
        let after = Shape::new(&design).unwrap();
        let got = Body::new(&mesh, &after.surface, &after.graduation).mass_g(density);
        prop_assert!((got - mass).abs() < 1e-6, "{} for {}", got, mass);
    }
}

#[test]
fn masses_out_of_reach_are_refused() {
    let made = shape(|_| ());
    let mesh = PlanMesh::new(&made.outline, &made.holes, MeshSize::Preview).unwrap();
    let change = |mass_g: f64| uniform_change_mm(&mesh, &made.surface, &made.graduation, 430.0, mass_g);
    assert!(matches!(change(5.0), Err(MassTargetError::OutOfReach { .. })));
    assert!(matches!(change(900.0), Err(MassTargetError::OutOfReach { .. })));
    assert!(matches!(change(f64::NAN), Err(MassTargetError::NotAMass { .. })));
    assert!(matches!(change(-3.0), Err(MassTargetError::NotAMass { .. })));
}

#[test]
fn contour_lines_lie_at_their_thickness_and_end_on_boundaries() {
    let made = shape(|_| ());
    let mesh = PlanMesh::new(&made.outline, &made.holes, MeshSize::Standard).unwrap();
    let lines = thickness_contours(&mesh, &made.graduation, 0.1);
    for level in [2.7, 2.8, 2.9, 3.0, 3.5] {
        assert!(lines.iter().any(|line| (line.thickness_mm - level).abs() < 1e-9), "no line at {level}");
    }
    for line in &lines {
        for &p in &line.points {
            let off = (made.graduation.thickness_mm(p) - line.thickness_mm).abs();
            assert!(off < 1e-4, "{off} mm off at {p:?}");
        }
        if !line.closed {
            for end in [line.points.first(), line.points.last()].into_iter().flatten() {
                let curves = std::iter::once(made.outline.boundary()).chain(made.holes.iter().map(SoundHole::boundary));
                let nearest = curves.map(|curve| curve.nearest(*end).distance_mm).fold(f64::INFINITY, f64::min);
                assert!(nearest < 0.06, "an end {nearest} mm inside the wood");
            }
        }
    }
}
