//! Whether what is fixed to the top has wood to stand on.

use super::{BarMeasures, Design, DesignError, PlanPlace, Rim, StickWood};
use crate::{outline::Outline, plan::Point, sound_holes::SoundHole};

/// Wood left beside the bar's foot: glue squeezes out there, and the mesh follows a boundary to 0.05 mm only.
const BESIDE_BAR_MM: f64 = 1.0;
/// The bar's line is judged at points this far apart; between them the distance to a boundary changes by half as much at most.
const STEP_MM: f64 = 1.0;
/// A bar shorter than this is a patch.
const SHORTEST_BAR_MM: f64 = 20.0;
/// A mass has no size here but must lie on the mesh, which follows a boundary to 0.05 mm.
const BESIDE_MASS_MM: f64 = 0.5;

impl Design {
    pub(super) fn check_fittings(&self, outline: &Outline, holes: &[SoundHole]) -> Result<(), DesignError> {
        let wood_left = |place: &PlanPlace| {
            let at: Point = [place.across_mm, place.station_mm];
            let to_holes = holes.iter().map(|hole| -hole.boundary().signed_distance_mm(at));
            to_holes.fold(outline.signed_distance_mm(at), f64::min)
        };
        if let Some(bar) = &self.bar {
            check_bar(bar, wood_left)?;
        }
        if let Some(post) = &self.post {
            check_wood(&post.wood, "post.wood")?;
            check_stands("post.place", "the post", &post.place, 0.5 * post.diameter_mm, wood_left(&post.place))?;
        }
        for (index, mass) in self.masses.iter().enumerate() {
            let path = format!("masses.{index}.place");
            check_stands(&path, "the added mass", &mass.place, BESIDE_MASS_MM, wood_left(&mass.place))?;
        }
        match &self.rim {
            Rim::Elastic(ribs) if ribs.lining_height_mm > 0.5 * ribs.height_mm => Err(DesignError::Impossible {
                kind: "linings_overlap",
                path: "rim.elastic.lining_height_mm".into(),
                what: "the linings under the top and on the back overlap".into(),
                value: format!("{} mm", ribs.lining_height_mm),
                limits: format!("at most half the ribs' height, {} mm", 0.5 * ribs.height_mm),
                remedy: "make the linings lower or the ribs higher".into(),
            }),
            _ => Ok(()),
        }
    }
}

fn check_bar(bar: &BarMeasures, wood_left: impl Fn(&PlanPlace) -> f64) -> Result<(), DesignError> {
    check_wood(&bar.wood, "bar.wood")?;
    let (lower, upper) = (&bar.lower_end, &bar.upper_end);
    let length = upper.station_mm - lower.station_mm;
    if length < SHORTEST_BAR_MM {
        return Err(DesignError::Impossible {
            kind: "bar_too_short",
            path: "bar.upper_end.station_mm".into(),
            what: "the bar's upper end is not far enough above its lower end".into(),
            value: format!("{length} mm"),
            limits: format!("at least {SHORTEST_BAR_MM} mm between their stations"),
            remedy: "move the ends apart, the lower end nearer to the bottom edge".into(),
        });
    }
    if bar.highest_station_mm < lower.station_mm || bar.highest_station_mm > upper.station_mm {
        return Err(DesignError::Impossible {
            kind: "bar_highest_beyond_end",
            path: "bar.highest_station_mm".into(),
            what: "the bar's highest place lies beyond one of its ends".into(),
            value: format!("{} mm", bar.highest_station_mm),
            limits: format!("between {} and {} mm", lower.station_mm, upper.station_mm),
            remedy: "move it between the ends, under the bridge as a rule".into(),
        });
    }
    if bar.end_height_mm > bar.height_mm {
        return Err(DesignError::Impossible {
            kind: "bar_ends_too_high",
            path: "bar.end_height_mm".into(),
            what: "the bar's ends are higher than its highest place".into(),
            value: format!("{} mm", bar.end_height_mm),
            limits: format!("at most {} mm", bar.height_mm),
            remedy: "lower the ends or make the bar higher".into(),
        });
    }
    let steps = ((upper.across_mm - lower.across_mm).hypot(length) / STEP_MM).ceil();
    let share = |step: u32| f64::from(step) / steps;
    for step in 0..=steps as u32 {
        let place = PlanPlace {
            across_mm: lower.across_mm + share(step) * (upper.across_mm - lower.across_mm),
            station_mm: lower.station_mm + share(step) * length,
        };
        check_stands("bar", "the bar", &place, 0.5 * bar.width_mm + BESIDE_BAR_MM, wood_left(&place))?;
    }
    Ok(())
}

/// `left_mm` is the distance from `place` to the nearest boundary, negative off the wood.
fn check_stands(path: &str, what: &str, place: &PlanPlace, least_mm: f64, left_mm: f64) -> Result<(), DesignError> {
    if left_mm >= least_mm {
        return Ok(());
    }
    let off = if left_mm < 0.0 { "leaves the wood" } else { "comes too near a sound hole or the edge" };
    Err(DesignError::Impossible {
        kind: "fitting_off_the_wood",
        path: path.into(),
        what: format!("{what} {off} at x = {:.1} mm, y = {:.1} mm", place.across_mm, place.station_mm),
        value: format!("{left_mm:.1} mm to the nearest edge of the wood"),
        limits: format!("its middle must be at least {least_mm:.1} mm from sound holes and edge"),
        remedy: "move it, or make it narrower".into(),
    })
}

fn check_wood(wood: &StickWood, path: &str) -> Result<(), DesignError> {
    match wood.wood() {
        Ok(_) => Ok(()),
        Err(error) => Err(DesignError::impossible_wood(path, wood.species, &error)),
    }
}
