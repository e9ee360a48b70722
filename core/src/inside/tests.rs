//! Inside and body against balls and plates.

use std::f64::consts::PI;

use super::*;
use crate::{
    arching::Arching,
    design::Design,
    mesh::{MeshSize, PlanMesh},
    outline::Outline,
    sound_holes::SoundHole,
    surface::OnSurface,
};

/// A regular polygon of `sides` sides and radius a, cut into triangles of `rings` rings.
fn polygon(sides: u32, rings: u32, a: f64) -> (Vec<Point>, Vec<[u32; 3]>) {
    let mut points = vec![[0.0; 2]];
    for ring in 1..=rings {
        // On straight lines between the corners, so that the outermost ring is the polygon.
        for side in 0..sides {
            let corner = |k: u32| {
                let angle = 2.0 * PI * f64::from(k) / f64::from(sides);
                let r = a * f64::from(ring) / f64::from(rings);
                [r * angle.cos(), r * angle.sin()]
            };
            let (from, to) = (corner(side), corner(side + 1));
            points.extend((0..ring).map(|i| {
                let t = f64::from(i) / f64::from(ring);
                [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]
            }));
        }
    }
    let node = |ring: u32, at: u32| {
        if ring == 0 { 0 } else { 1 + sides * ring * (ring - 1) / 2 + at % (sides * ring) }
    };
    let mut triangles = Vec::new();
    for ring in 1..=rings {
        for side in 0..sides {
            for i in 0..ring {
                let (outer, inner) = (side * ring + i, side * (ring - 1) + i);
                triangles.push([node(ring, outer), node(ring, outer + 1), node(ring - 1, inner)]);
                if i + 1 < ring {
                    triangles.push([node(ring - 1, inner), node(ring, outer + 1), node(ring - 1, inner + 1)]);
                }
            }
        }
    }
    (points, triangles)
}

/// A ball of radius R over a polygon of inner radius d: the area in a slice at the angle q from a side's middle is
/// R (R - sqrt(R^2 - d^2/cos^2 q)) dq (Archimedes: equal areas of equal heights); the layer of thickness t below it holds
/// R^3 - (R - t)^3 over 3 R^2 of it; its height moment is plan area times (R^4 - (R - t)^4) / (4 R^2), as the normal's z
/// times the area is plan area. All to 1e-6.
#[test]
fn a_caps_area_volume_and_centre_are_the_balls() {
    let (sides, a, r, t) = (24, 60.0, 150.0_f64, 3.0);
    let (points, triangles) = polygon(sides, 24, a);
    let ball = |p: Point| {
        let [x, y] = p;
        let z = (r * r - x * x - y * y).sqrt();
        let z3 = z.powi(3);
        OnSurface {
            height_mm: z,
            slope: [-x / z, -y / z],
            bend: [-(r * r - y * y) / z3, -x * y / z3, -(r * r - x * x) / z3],
        }
    };
    let body = Body::over(&points, &triangles, ball, |_| t);
    let half = PI / f64::from(sides);
    let d = a * half.cos();
    // Simpson's rule on 400 intervals of a smooth function: exact to rounding.
    let slice = |q: f64| r * (r - (r * r - (d / q.cos()).powi(2)).sqrt());
    let step = half / 400.0;
    let sum: f64 = (0..=400)
        .map(|i| f64::from(if i == 0 || i == 400 { 1 } else { 2 + 2 * (i % 2) }) * slice(f64::from(i) * step))
        .sum();
    let area = 2.0 * f64::from(sides) * sum * step / 3.0;
    assert!((body.outside_area_mm2 / area - 1.0).abs() < 1e-6, "{} {area}", body.outside_area_mm2);
    let volume = area * (r.powi(3) - (r - t).powi(3)) / (3.0 * r * r);
    assert!((body.volume_mm3 / volume - 1.0).abs() < 1e-6, "{} {volume}", body.volume_mm3);
    let plan = 0.5 * f64::from(sides) * a * a * (2.0 * half).sin();
    let height = plan * (r.powi(4) - (r - t).powi(4)) / (4.0 * r * r) / volume;
    assert!((body.centre_mm[2] - height).abs() < 1e-4, "{} {height}", body.centre_mm[2]);
    assert!(body.centre_mm[0].abs() < 1e-9 && body.centre_mm[1].abs() < 1e-9);
    // 420 kg/m3 are 0.42 mg a cubic millimetre.
    assert!((body.mass_g(420.0) - volume * 0.42e-3).abs() < 1e-4);
}

/// A level plate whose thickness grows evenly along y: a wedge, centre from its closed moments.
#[test]
fn a_wedges_centre_lies_towards_its_thick_end() {
    let points = [[0.0, 0.0], [20.0, 0.0], [20.0, 50.0], [0.0, 50.0]];
    let level = |_: Point| OnSurface { height_mm: 10.0, slope: [0.0; 2], bend: [0.0; 3] };
    let body = Body::over(&points, &[[0, 1, 2], [0, 2, 3]], level, |p| 2.0 + 0.04 * p[1]);
    // Thickness 2 + 0.04 y over 0..50: volume 20 (100 + 50), moment by y 20 (2500 + 5000/3), by depth 20/2 integral t^2.
    assert!((body.volume_mm3 - 3000.0).abs() < 1e-9);
    assert!((body.centre_mm[1] - 20.0 * (2500.0 + 5000.0 / 3.0) / 3000.0).abs() < 1e-9);
    let squares = (4.0_f64.powi(3) - 8.0) / (3.0 * 0.04);
    assert!((body.centre_mm[2] - (10.0 - 10.0 * squares / 3000.0)).abs() < 1e-9);
}

#[test]
fn the_tops_inside_is_its_thickness_away_everywhere() {
    let design = Design::demo();
    let outline = Outline::new(&design.outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    let surface = Surface::new(&arching, &outline);
    let graduation = Graduation::new(&design.graduation, &arching, &outline);
    let inside = InsideSurface::new(&surface, &graduation);
    for i in 0..500 {
        let p = [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0];
        if outline.signed_distance_mm(p) < 5.0 {
            continue;
        }
        let [x, y, z] = inside.opposite(p);
        let away = ((x - p[0]).powi(2) + (y - p[1]).powi(2) + (z - surface.height_mm(p)).powi(2)).sqrt();
        assert!((away - graduation.thickness_mm(p)).abs() < 1e-12);
        assert!((inside.height_mm([x, y]) - z).abs() < 1e-7, "{p:?}");
    }
    // On the apex both surfaces are level: 3 mm apart.
    assert!((inside.height_mm([0.0, 177.5]) - 12.5).abs() < 1e-9);

    let holes = SoundHole::both(&design.sound_holes, &outline).unwrap();
    let mesh = PlanMesh::new(&outline, &holes, MeshSize::Standard).unwrap();
    let body = Body::new(&mesh, &surface, &graduation);
    // A symmetric top balances on its centreline, between the middle of its length and the wider lower bout.
    assert!(body.centre_mm[0].abs() < 1e-3 && (165.0..177.5).contains(&body.centre_mm[1]), "{body:?}");
    assert!(body.outside_area_mm2 > outline.area_mm2() - holes.iter().map(SoundHole::area_mm2).sum::<f64>());
}
