//! Zones and maps.

use proptest::prelude::*;

use super::*;
use crate::{
    design::{Design, PaintedThickness, PlanPlace},
    sound_holes::Eye,
    top::Shape,
};

fn shape(change: impl FnOnce(&mut GraduationMeasures)) -> Shape {
    let mut design = Design::demo();
    change(&mut design.graduation);
    Shape::new(&design).unwrap()
}

/// Points all over the wood.
fn wood(shape: &Shape) -> Vec<Point> {
    (0..6000)
        .map(|i| [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0])
        .filter(|&p| shape.outline.contains(p) && !shape.holes.iter().any(|hole| hole.contains(p)))
        .collect()
}

#[test]
fn each_zone_has_its_thickness_where_makers_look_for_it() {
    let made = shape(|g| {
        g.upper_bout_mm = Some(2.3);
        g.lower_bout_mm = Some(2.4);
        g.channel_mm = Some(3.4);
        g.around_holes_mm = Some(3.2);
        g.wings_mm = Some(2.0);
    });
    let at = |p: Point| made.graduation.thickness_mm(p);
    assert!((at([0.0, 320.0]) - 2.3).abs() < 1e-9 && (at([0.0, 35.0]) - 2.4).abs() < 1e-9);
    assert!((at([0.0, 177.5]) - 3.0).abs() < 1e-12);
    // The channel line is 8 mm from the edge; at the lower bout's widest place that is x = 95.
    assert!((at([95.0, 71.0]) - 3.4).abs() < 1e-9, "{}", at([95.0, 71.0]));
    for p in made.outline.polyline(0.5) {
        assert!((at(p) - 4.0).abs() < 1e-9, "the edge keeps its own");
    }
    let [upper, _]: [Eye; 2] = made.holes[1].eyes().unwrap();
    let beside_eye = [upper.centre[0] - upper.radius_mm - 0.01, upper.centre[1]];
    assert!((at(beside_eye) - 3.2).abs() < 0.01, "{}", at(beside_eye));
    let on_wing = [upper.centre[0] + upper.radius_mm + 3.5, upper.centre[1] + 4.0];
    assert!((at(on_wing) - 2.0).abs() < 1e-9, "{}", at(on_wing));
}

/// A smooth blend changes by no more than its range over its length: the steepest is the channel's, from edge to channel
/// within 8 mm, 1.5 times as steep as straight.
#[test]
fn zones_never_jump_nor_leave_the_range_given() {
    let made = shape(|g| {
        g.upper_bout_mm = Some(2.3);
        g.channel_mm = Some(3.4);
        g.around_holes_mm = Some(3.2);
        g.wings_mm = Some(2.0);
        let place = PlanPlace { across_mm: -40.0, station_mm: 90.0 };
        g.painted = vec![PaintedThickness { place, thickness_mm: 2.2, reach_mm: 30.0 }];
    });
    for p in wood(&made) {
        let t = made.graduation.thickness_mm(p);
        assert!((2.0 - 1e-12..=4.0 + 1e-12).contains(&t), "{t} at {p:?}");
        for beside in [[p[0] + 0.01, p[1]], [p[0], p[1] + 0.01]] {
            if made.outline.contains(beside) && !made.holes.iter().any(|hole| hole.contains(beside)) {
                let jump = (made.graduation.thickness_mm(beside) - t).abs();
                assert!(jump < 0.012, "{jump} mm at {p:?}");
            }
        }
    }
}

#[test]
fn a_bout_left_out_is_as_the_flanks() {
    let left_out = shape(|_| ());
    let same = shape(|g| (g.upper_bout_mm, g.lower_bout_mm) = (Some(g.flank_mm), Some(g.flank_mm)));
    for p in wood(&left_out) {
        assert_eq!(left_out.graduation.thickness_mm(p).to_bits(), same.graduation.thickness_mm(p).to_bits());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    /// A measured map gives back its points and stays within their range; paint counts fully at its place.
    #[test]
    fn maps_give_back_their_points(values in prop::collection::vec(2.0..4.5f64, 30), paint in 1.5..5.0f64) {
        let readings: Vec<[f64; 3]> = values.iter().enumerate()
            .map(|(i, &t)| [(i as f64 * 0.618_034).fract() * 150.0 - 75.0, (i as f64 * 0.414_214).fract() * 300.0 + 20.0, t])
            .collect();
        let measured = shape(|g| g.measure(&readings));
        for [x, y, t] in &readings {
            prop_assert!((measured.graduation.thickness_mm([*x, *y]) - t).abs() < 1e-12);
        }
        for p in wood(&measured).into_iter().step_by(50) {
            prop_assert!((2.0..=4.5).contains(&measured.graduation.thickness_mm(p)));
        }
        let place = PlanPlace { across_mm: 10.0, station_mm: 120.0 };
        let painted = shape(|g| g.painted = vec![PaintedThickness { place, thickness_mm: paint, reach_mm: 20.0 }]);
        prop_assert!((painted.graduation.thickness_mm([10.0, 120.0]) - paint).abs() < 1e-12);
        prop_assert_eq!(painted.graduation.thickness_mm([30.1, 120.0]), shape(|_| ()).graduation.thickness_mm([30.1, 120.0]));
    }
}

/// Nodes lie on the hole's boundary, within 0.05 mm of it at the middles of edges: the wing's wood must not end just before.
#[test]
fn a_wings_thickness_holds_up_to_its_border() {
    let made = shape(|g| g.wings_mm = Some(2.0));
    let near = |p: Point, q: Point| (p[0] - q[0]).hypot(p[1] - q[1]);
    let [upper, lower] = made.holes[1].eyes().unwrap();
    let mut met = 0;
    for p in made.holes[1].boundary().polyline(0.02) {
        if [upper, lower].iter().any(|eye| near(p, eye.throat[0]) < 1.5) {
            assert!((made.graduation.thickness_mm(p) - 2.0).abs() < 1e-9, "at {p:?}");
            met += 1;
        }
    }
    assert!(met > 10, "the throats' ends are on the boundary");
}
