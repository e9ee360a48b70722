//! Bar, post and added masses in plan, where they touch the top.

use std::f64::consts::TAU;

use super::{
    Drawing, LineKind,
    handle::Handles,
    path::{Path, on_sheet},
    plan_lines::closed,
};
use crate::{
    design::{Design, PlanPlace},
    plan::{Arc, Piece},
};

/// Radius of the ring drawn round an added mass, which has no size of its own, mm.
const MASS_RING_MM: f64 = 2.0;

pub(super) fn draw(design: &Design, handles: &Handles, sheet: &mut Drawing) {
    if let Some(bar) = &design.bar {
        sheet.line(LineKind::Fitting, closed(&bar.foot_mm()));
        for (end, name) in [(&bar.lower_end, "lower_end"), (&bar.upper_end, "upper_end")] {
            let at = on_sheet([end.across_mm, end.station_mm]);
            sheet.handles.extend(handles.at(&format!("bar.{name}.across_mm"), at, [1.0, 0.0]));
        }
    }
    if let Some(post) = &design.post {
        let radius_mm = 0.5 * post.diameter_mm;
        sheet.line(LineKind::Fitting, ring(&post.place, radius_mm));
        // Across by its middle, along by its lower rim: one place can't be dragged both ways.
        let [u, v] = on_sheet([post.place.across_mm, post.place.station_mm]);
        sheet.handles.extend(handles.at("post.place.across_mm", [u, v], [1.0, 0.0]));
        sheet.handles.extend(handles.at("post.place.station_mm", [u, v + 2.0 * radius_mm], [0.0, -1.0]));
    }
    for mass in &design.masses {
        sheet.line(LineKind::Fitting, ring(&mass.place, MASS_RING_MM));
    }
}

/// A circle in two halves: SVG has no arc that ends where it begins.
fn ring(place: &PlanPlace, radius_mm: f64) -> String {
    let centre = [place.across_mm, place.station_mm];
    let half = |start_rad: f64| Piece::Arc(Arc { centre, radius_mm, start_rad, sweep_rad: 0.5 * TAU });
    Path::default().pieces(&[half(0.0), half(0.5 * TAU)]).text()
}
