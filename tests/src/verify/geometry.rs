//! Geometry: curves, curvatures, areas and volumes against their closed forms.

use anyhow::{Context, Result};
use bombatura_core::{
    arching::{ArcWithReverseArc, Arching, CurtateCycloid},
    design::Design,
    inside::Body,
    outline::Outline,
    plan::Point,
    surface::{OnSurface, Surface},
};

use super::mesh::{Mesh, on_circle};
use super::{Row, Target};
use crate::reference;

/// Closed forms without a mesh: rounding only.
const EXACT_PCT: f64 = 1e-4;
/// A design draws its curves over half widths found to 1e-6 of their length and more.
const DRAWN_PCT: f64 = 0.01;

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let mut rows = bodies()?;
    rows.extend(curvatures()?);
    rows.extend(curves()?);
    rows.extend(drawn()?);
    Ok(rows)
}

fn judged(id: &str, suffixes: &[&str], got: &[f64], tolerance_pct: f64, nodes: usize) -> Result<Vec<Row>> {
    let line = reference::row("geometry", id)?;
    let numbers = line.numbers()?;
    let rows = numbers.iter().zip(suffixes).zip(got);
    Ok(rows
        .map(|((&value, suffix), &got)| {
            Row::judge(&Target::from_reference(&line, suffix, value, tolerance_pct), got, nodes)
        })
        .collect())
}

/// Outside area and the volume of a layer of 3 mm below it.
fn bodies() -> Result<Vec<Row>> {
    let body = |mesh: &Mesh, outside: &dyn Fn(Point) -> OnSurface| {
        let points: Vec<Point> = mesh.nodes_mm.iter().map(|p| [p[0], p[1]]).collect();
        let body = Body::over(&points, &mesh.triangles, outside, |_| 3.0);
        [body.outside_area_mm2, body.volume_mm3]
    };
    let disc = Mesh::disc(80, |r, turn| [60.0 * r * on_circle(turn).0, 60.0 * r * on_circle(turn).1, 0.0]);
    let sheet = Mesh::grid(40, 48, |x, y| [100.0 * (x - 0.5), 120.0 * y, 0.0]);
    // A polygon of 480 sides is (2 pi / 480)^2 / 6, 0.003 %, smaller than its circle.
    let mut rows = judged("G-CAP", &["area", "volume"], &body(&disc, &ball), 0.005, disc.nodes_mm.len())?;
    rows.extend(judged("G-CYL", &["area", "volume"], &body(&sheet, &cylinder), EXACT_PCT, sheet.nodes_mm.len())?);
    Ok(rows)
}

fn curvatures() -> Result<Vec<Row>> {
    let found = ball([35.0, -40.0]).curvatures();
    let both = [-found.least_per_mm, -found.greatest_per_mm];
    let line = reference::row("geometry", "G-BALL-K")?;
    let curvature = line.number()?;
    let target = |suffix: &str| Target::from_reference(&line, suffix, curvature, EXACT_PCT);
    let mut rows = vec![Row::judge(&target("one way"), both[0], 0), Row::judge(&target("across"), both[1], 0)];
    let found = torus([70.0 * 0.3_f64.cos(), 70.0 * 0.3_f64.sin()]).curvatures();
    let both = [-found.least_per_mm, -found.greatest_per_mm];
    rows.extend(judged("G-TORUS-K", &["tube", "round"], &both, EXACT_PCT, 0)?);
    Ok(rows)
}

/// A ball of radius 150 mm, its middle at height 0.
fn ball([x, y]: Point) -> OnSurface {
    let r = 150.0_f64;
    let z = (r * r - x * x - y * y).sqrt();
    let bend = [-(r * r - y * y), -x * y, -(r * r - x * x)].map(|value| value / (z * z * z));
    OnSurface { height_mm: z, slope: [-x / z, -y / z], bend }
}

/// A cylinder of radius 80 mm along y.
fn cylinder([x, _]: Point) -> OnSurface {
    let r = 80.0_f64;
    let z = (r * r - x * x).sqrt();
    OnSurface { height_mm: z, slope: [-x / z, 0.0], bend: [-r * r / (z * z * z), 0.0, 0.0] }
}

/// A lying torus of radii 60 and 25 mm: z = sqrt(r^2 - (rho - R)^2).
fn torus([x, y]: Point) -> OnSurface {
    let (big, small) = (60.0_f64, 25.0_f64);
    let rho = x.hypot(y);
    let (sin, cos) = (y / rho, x / rho);
    let off = rho - big;
    let z = (small * small - off * off).sqrt();
    let (first, second) = (-off / z, -small * small / (z * z * z));
    let round = first / rho;
    let bend =
        [second * cos * cos + round * sin * sin, (second - round) * sin * cos, second * sin * sin + round * cos * cos];
    OnSurface { height_mm: z, slope: [first * cos, first * sin], bend }
}

/// Places of the cycloid's row, from the channel.
const CYCLOID_PLACES: [f64; 3] = [0.256_147_287_974_282_4, 0.410_873_231_868_538_6, 0.589_480_621_307_615_7];
const CYCLOID_ANGLES: [&str; 3] = ["60 degrees", "90 degrees", "120 degrees"];

fn curves() -> Result<Vec<Row>> {
    let cycloid = CurtateCycloid::from_ratio(0.28);
    let heights = CYCLOID_PLACES.map(|from_channel| cycloid.at(1.0 - from_channel).height);
    let mut rows = judged("G-CYCLOID", &CYCLOID_ANGLES, &heights, EXACT_PCT, 0)?;
    rows.extend(judged("G-CYCLOID-TURN", &["curve"], &[cycloid.inflection()], EXACT_PCT, 0)?);
    // The radii from the bends at both level ends, by place: scaled back to half span 48 and rise 12.3.
    let (half, rise) = (48.0, 12.3);
    for place in [0.3, 0.6] {
        let arcs = ArcWithReverseArc::from_inflection(rise / half, place);
        let radius = |place: f64| half * half / (rise * arcs.at(place)[2].abs());
        let suffix = format!("meeting at {place}");
        rows.extend(judged("G-ARCS", &[&suffix], &[radius(0.0) + radius(1.0)], EXACT_PCT, 0)?);
    }
    Ok(rows)
}

/// The same curves as the demonstration's surface has them at its waist, whose fullness is 0.57.
fn drawn() -> Result<Vec<Row>> {
    let design = Design::demo();
    let outline = Outline::new(&design.outline)?;
    let surface = Surface::new(&Arching::new(&design.arching, &outline)?, &outline);
    let (y, channel) = (design.outline.waist_station_mm, surface.arching().channel_height_mm());
    let half = surface.arching().boundary().half_width(y, true).context("the waist's half width")?.x_mm;
    let rise = surface.height_mm([0.0, y]) - channel;
    let heights =
        CYCLOID_PLACES.map(|from_channel| (surface.height_mm([half * (1.0 - from_channel), y]) - channel) / rise);
    let suffixes = CYCLOID_ANGLES.map(|angle| format!("waist of a design, {angle}"));
    let suffixes = suffixes.each_ref().map(String::as_str);
    let mut rows = judged("G-CYCLOID", &suffixes, &heights, DRAWN_PCT, 0)?;
    let turn = surface.inflection_mm(y, true).context("the waist's inflection")? / half;
    rows.extend(judged("G-CYCLOID-TURN", &["waist of a design"], &[turn], DRAWN_PCT, 0)?);
    Ok(rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_closed_form_is_met() {
        let rows = rows().unwrap();
        assert_eq!(rows.len(), 18);
        for row in rows {
            assert!(row.pass, "{}: {} for {}, {} %", row.id, row.got, row.target, row.error_pct);
        }
    }
}
