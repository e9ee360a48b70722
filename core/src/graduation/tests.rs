//! The thickness map against the thicknesses it was made from.

use super::*;
use crate::design::Design;

fn demo() -> (Outline, Graduation) {
    let design = Design::demo();
    let outline = Outline::new(&design.outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    let graduation = Graduation::new(&design.graduation, &arching, &outline);
    (outline, graduation)
}

#[test]
fn centre_flanks_and_edge_have_their_thickness() {
    let (outline, graduation) = demo();
    assert!((graduation.thickness_mm([0.0, 177.5]) - 3.0).abs() < 1e-12);
    assert!((graduation.thickness_mm([0.0, 160.0]) - 3.0).abs() < 1e-12);
    assert!((graduation.thickness_mm([80.0, 71.0]) - 2.6).abs() < 1e-12);
    assert!((graduation.thickness_mm([0.0, 20.0]) - 2.6).abs() < 1e-12);
    for p in outline.polyline(0.1) {
        assert!((graduation.thickness_mm(p) - 4.0).abs() < 1e-9);
    }
}

#[test]
fn it_never_leaves_the_given_range_and_never_jumps() {
    let (outline, graduation) = demo();
    for i in 0..20_000 {
        let p = [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0];
        if !outline.contains(p) {
            continue;
        }
        let t = graduation.thickness_mm(p);
        assert!((2.6 - 1e-12..=4.0 + 1e-12).contains(&t));
        let beside = [p[0] + 0.01, p[1] + 0.01];
        if outline.contains(beside) {
            // From 4.0 to 2.6 mm over 10 mm by a smooth step: at most 0.21 mm per mm of distance.
            assert!((graduation.thickness_mm(beside) - t).abs() < 0.01, "{p:?}");
        }
    }
}
