//! Laying down one half of the outline with compass arcs.

use std::f64::consts::FRAC_PI_2;

use crate::{
    design::{CornerMeasures, DesignError, OutlineMeasures},
    plan::{
        Arc, Line, Piece, Point, biarc,
        vector::{along, direction, left_of, scale},
    },
};

/// How far a corner's two flanks close in on the tip, each from the corner's axis. Larger gives a stubbier corner.
const FLANK_CLOSING_DEG: f64 = 26.0;
/// Tangent length at the bout over that at the corner: larger carries the bout's round further towards the corner
/// and leaves a tighter hook at the tip.
const BOUT_TO_CORNER: f64 = 1.15;
/// The same from the waist to a corner: larger keeps the waist's long arc and tightens the curl into the corner.
const WAIST_TO_CORNER: f64 = 1.25;

/// One half of the outline, drawn on the side x > 0 and walked from the bottom edge to the neck end.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Half {
    /// Bottom centre to the lower corner: two arcs of the end, two of the bout; the last hooks out to the tip.
    pub(crate) lower_bout: Vec<Piece>,
    /// The cut of the lower corner.
    pub(crate) lower_tip: Piece,
    /// Lower corner to upper corner: curl, two arcs of the waist, curl.
    pub(crate) waist: Vec<Piece>,
    /// The cut of the upper corner.
    pub(crate) upper_tip: Piece,
    /// Upper corner to neck end.
    pub(crate) upper_bout: Vec<Piece>,
}

impl Half {
    pub(crate) fn new(m: &OutlineMeasures) -> Result<Half, DesignError> {
        check_order(m)?;
        let lower = Corner::new(&m.lower_corner, 1.0);
        let upper = Corner::new(&m.upper_corner, -1.0);
        let lower_side = [0.5 * m.lower_width_mm, m.lower_station_mm];
        let upper_side = [0.5 * m.upper_width_mm, m.upper_station_mm];
        let waist = [0.5 * m.waist_width_mm, m.waist_station_mm];
        let up = [0.0, 1.0];
        let down = [0.0, -1.0];

        let end = end_curve(lower_side, m.lower_end_fullness, "outline.lower_end_fullness")?;
        let mut lower_bout: Vec<Piece> = end.map(Piece::Arc).into();
        lower_bout.extend(
            biarc(lower_side, up, lower.bout_side, lower.bout_flank, BOUT_TO_CORNER)
                .ok_or_else(|| no_arcs("outline.lower_corner.station_mm", m.lower_corner.station_mm))?,
        );

        // Drawn from the waist outwards, then turned round where the walk needs it.
        let to_lower = biarc(waist, down, lower.waist_side, lower.waist_flank, WAIST_TO_CORNER)
            .ok_or_else(|| no_arcs("outline.lower_corner.reach_mm", m.lower_corner.reach_mm))?;
        let to_upper = biarc(waist, up, upper.waist_side, upper.waist_flank, WAIST_TO_CORNER)
            .ok_or_else(|| no_arcs("outline.upper_corner.reach_mm", m.upper_corner.reach_mm))?;
        let mut waist_pieces: Vec<Piece> = to_lower.iter().rev().map(Piece::reversed).collect();
        waist_pieces.extend(to_upper);

        // The upper bout is the lower one seen from the neck end.
        let turned_side = [upper_side[0], m.length_mm - upper_side[1]];
        let from_corner = biarc(upper_side, down, upper.bout_side, upper.bout_flank, BOUT_TO_CORNER)
            .ok_or_else(|| no_arcs("outline.upper_corner.station_mm", m.upper_corner.station_mm))?;
        let mut upper_bout: Vec<Piece> = from_corner.iter().rev().map(Piece::reversed).collect();
        let end = end_curve(turned_side, m.upper_end_fullness, "outline.upper_end_fullness")?;
        upper_bout.extend(end.iter().rev().map(|arc| at_neck_end(arc, m.length_mm)));

        Ok(Half {
            lower_bout,
            lower_tip: Piece::Line(Line { start: lower.bout_side, end: lower.waist_side }),
            waist: waist_pieces,
            upper_tip: Piece::Line(Line { start: upper.waist_side, end: upper.bout_side }),
            upper_bout,
        })
    }

    /// All pieces from the bottom edge to the neck end.
    pub(crate) fn pieces(&self) -> impl Iterator<Item = &Piece> {
        self.lower_bout
            .iter()
            .chain([&self.lower_tip])
            .chain(&self.waist)
            .chain([&self.upper_tip])
            .chain(&self.upper_bout)
    }

    /// Largest x of the half at station y.
    pub(crate) fn half_width_mm(&self, y_mm: f64) -> Option<f64> {
        let mut widest: Option<f64> = None;
        for piece in self.pieces() {
            for x in crossings_at(piece, y_mm) {
                widest = Some(widest.map_or(x, |w: f64| w.max(x)));
            }
        }
        widest
    }
}

/// A corner's two cut points and the directions in which its flanks run outwards to them.
struct Corner {
    bout_side: Point,
    waist_side: Point,
    bout_flank: Point,
    waist_flank: Point,
}

impl Corner {
    /// `towards_waist` is the sign of y from the corner to the waist.
    fn new(m: &CornerMeasures, towards_waist: f64) -> Corner {
        let tip = [m.reach_mm, m.station_mm];
        let lean = m.lean_deg.to_radians();
        let closing = FLANK_CLOSING_DEG.to_radians();
        let leaning = |angle: f64| {
            let d = direction(angle);
            [d[0], d[1] * towards_waist]
        };
        let across = scale(left_of(direction(lean)), 0.5 * m.width_mm);
        let across = [across[0], across[1] * towards_waist];
        Corner {
            bout_side: along(tip, across, -1.0),
            waist_side: along(tip, across, 1.0),
            bout_flank: leaning(lean + closing),
            waist_flank: leaning(lean - closing),
        }
    }
}

/// The two arcs from (0, 0), level, to `side`, upright. With the side arc's radius r = fullness times the end's height b
/// and half width a, the end arc's radius is R = (a^2 + b^2 - 2 a r) / (2 (b - r)), from the centres' distance R - r.
fn end_curve(side: Point, fullness: f64, path: &str) -> Result<[Arc; 2], DesignError> {
    let [a, b] = side;
    let r = fullness * b;
    if r >= a || r >= b {
        return Err(no_arcs(path, fullness));
    }
    let big = (a * a + b * b - 2.0 * a * r) / (2.0 * (b - r));
    // Angle from the downward direction, at the big arc's centre, to where the arcs meet.
    let meet = (a - r).atan2(big - b);
    Ok([
        Arc { centre: [0.0, big], radius_mm: big, start_rad: -FRAC_PI_2, sweep_rad: meet },
        Arc { centre: [a - r, b], radius_mm: r, start_rad: meet - FRAC_PI_2, sweep_rad: FRAC_PI_2 - meet },
    ])
}

/// An end arc laid at the neck end instead, at `length_mm`, and walked the other way.
fn at_neck_end(arc: &Arc, length_mm: f64) -> Piece {
    Piece::Arc(Arc {
        centre: [arc.centre[0], length_mm - arc.centre[1]],
        start_rad: -(arc.start_rad + arc.sweep_rad),
        ..*arc
    })
}

/// x of every crossing of a piece with the level y.
fn crossings_at(piece: &Piece, y_mm: f64) -> Vec<f64> {
    // A level that touches an arc's end by rounding still counts.
    const SLACK: f64 = 1e-9;
    match piece {
        Piece::Line(line) => {
            let rise = line.end[1] - line.start[1];
            if rise == 0.0 {
                return if y_mm == line.start[1] { vec![line.start[0], line.end[0]] } else { vec![] };
            }
            let t = (y_mm - line.start[1]) / rise;
            if (-SLACK..=1.0 + SLACK).contains(&t) { vec![line.point(t)[0]] } else { vec![] }
        }
        Piece::Arc(arc) => {
            let sine = (y_mm - arc.centre[1]) / arc.radius_mm;
            if sine.abs() > 1.0 + SLACK {
                return vec![];
            }
            let rise = sine.clamp(-1.0, 1.0).asin();
            [rise, std::f64::consts::PI - rise]
                .into_iter()
                .filter_map(|angle| {
                    let p = along(arc.centre, direction(angle), arc.radius_mm);
                    let t = arc.nearest(p);
                    let on_arc = arc.point(t);
                    ((on_arc[0] - p[0]).hypot(on_arc[1] - p[1]) < SLACK * arc.radius_mm.max(1.0)).then_some(p[0])
                })
                .collect()
        }
        Piece::Cubic(_) => vec![],
    }
}

/// Stations in order from the bottom edge, corners between waist and bouts.
fn check_order(m: &OutlineMeasures) -> Result<(), DesignError> {
    let stations = [
        ("outline.lower_station_mm", m.lower_station_mm),
        ("outline.lower_corner.station_mm", m.lower_corner.station_mm),
        ("outline.waist_station_mm", m.waist_station_mm),
        ("outline.upper_corner.station_mm", m.upper_corner.station_mm),
        ("outline.upper_station_mm", m.upper_station_mm),
        ("outline.length_mm", m.length_mm),
    ];
    for pair in stations.windows(2) {
        if pair[1].1 <= pair[0].1 {
            return Err(DesignError::Impossible {
                kind: "crossing_stations",
                path: pair[1].0.into(),
                what: "stations out of order".into(),
                value: format!("{} mm", pair[1].1),
                limits: format!("it must lie above {} = {} mm", pair[0].0, pair[0].1),
                remedy: "raise this station or lower the other".into(),
            });
        }
    }
    let reaches = [
        ("outline.lower_corner.reach_mm", m.lower_corner.reach_mm, m.lower_width_mm),
        ("outline.upper_corner.reach_mm", m.upper_corner.reach_mm, m.upper_width_mm),
    ];
    for (path, reach, width) in reaches {
        let (least, most) = (0.5 * m.waist_width_mm, 0.5 * width);
        if reach <= least || reach > most {
            return Err(DesignError::Impossible {
                kind: "corner_out_of_place",
                path: path.into(),
                what: "a corner stands between the waist and the bout".into(),
                value: format!("{reach} mm"),
                limits: format!("it must be more than {least} mm and at most {most} mm, half the widths beside it"),
                remedy: "move the corner or change the widths".into(),
            });
        }
    }
    Ok(())
}

fn no_arcs(path: &str, value: f64) -> DesignError {
    DesignError::Impossible {
        kind: "outline_not_drawable",
        path: path.into(),
        what: "no pair of arcs joins these points smoothly".into(),
        value: format!("{value}"),
        limits: "the arcs' centres must stay inside the bout".into(),
        remedy: "move this measure towards that of the demonstration design".into(),
    }
}

pub(super) fn crossing(m: &OutlineMeasures) -> DesignError {
    DesignError::Impossible {
        kind: "outline_crosses_itself",
        path: "outline".into(),
        what: "the outline crosses itself".into(),
        value: format!(
            "corners at {} mm and {} mm, waist {} mm wide",
            m.lower_corner.station_mm, m.upper_corner.station_mm, m.waist_width_mm
        ),
        limits: "no two parts of the outline may meet".into(),
        remedy: "move the corners apart, make them narrower, or let them lean less".into(),
    }
}
