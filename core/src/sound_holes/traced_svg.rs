//! Traced holes from drawings.

use kurbo::{Affine, BezPath, PathEl};

use super::{impossible, traced::pieces};
use crate::{
    design::{DesignError, TracedHole},
    plan::Point,
};

impl TracedHole {
    /// A hole traced as the data `d` of an SVG path, with its middle where `middle_mm` says. `mm_from_path` are the six numbers of the
    /// transform to millimetres, as in SVG's `matrix(a b c d e f)`; it may mirror.
    ///
    /// The path is kept with thousandths of a millimetre, arcs as Bézier curves within 0.1 % of their radius.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] for what is no path or no hole.
    pub fn of_svg_path(d: &str, mm_from_path: [f64; 6], middle_mm: Point) -> Result<TracedHole, DesignError> {
        const WHERE: &str = "sound_holes.treble";
        let drawn = BezPath::from_svg(d).map_err(|error| {
            impossible(
                format!("{WHERE}.path"),
                "the traced hole is no SVG path",
                error.to_string(),
                "one closed line of lines, arcs and Bézier curves".into(),
                "copy the whole of the d attribute of the hole's path",
            )
        })?;
        let path: Vec<String> = (Affine::new(mm_from_path) * drawn).elements().iter().map(written).collect();
        let [centre_to_centreline_mm, centre_station_mm] = middle_mm;
        let hole = TracedHole { path: path.join(" "), centre_to_centreline_mm, centre_station_mm, lean_deg: 0.0 };
        pieces(&hole, WHERE)?;
        Ok(hole)
    }
}

fn written(element: &PathEl) -> String {
    let fine = |value: f64| (value * 1e3).round() / 1e3;
    let point = |p: &kurbo::Point| format!("{} {}", fine(p.x), fine(p.y));
    match element {
        PathEl::MoveTo(p) => format!("M{}", point(p)),
        PathEl::LineTo(p) => format!("L{}", point(p)),
        PathEl::QuadTo(p, q) => format!("Q{} {}", point(p), point(q)),
        PathEl::CurveTo(p, q, r) => format!("C{} {} {}", point(p), point(q), point(r)),
        PathEl::ClosePath => "Z".into(),
    }
}
