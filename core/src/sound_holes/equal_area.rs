//! Other patterns of the same opening, so that a comparison of patterns is fair.

use std::f64::consts::PI;

use super::{SoundHole, crescent};
use crate::{
    design::{CrescentHole, EndCut, RoundHole, SlotHole, SoundHoleChoice},
    plan::Piece,
};

/// A pattern to compare with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pattern {
    /// A round hole.
    Round,
    /// A crescent as long as the hole that it stands for, hollow towards the island.
    Crescent,
    /// A straight slot as long as the hole that it stands for.
    Slot,
}

/// The crescent's bow over its length: its arcs then turn by some 100 degrees.
const BOW: f64 = 0.25;
/// The horns' rounding over the crescent's width.
const ROUNDING: f64 = 0.1;
/// Halvings in the search for a width; 60 end at rounding.
const HALVINGS: u32 = 60;

impl SoundHole {
    /// A hole of another pattern with the same area, in the middle of the box round this one.
    ///
    /// None when no such hole can be as long as this one: a slot that would be wider than long.
    pub fn of_equal_area(&self, pattern: Pattern) -> Option<SoundHoleChoice> {
        let area = self.area_mm2();
        let (low, high) = self.drawn.bounds_mm();
        let [centre_to_centreline_mm, centre_station_mm] = self.middle_mm();
        let length_mm = high[1] - low[1];
        match pattern {
            Pattern::Round => {
                let diameter_mm = 2.0 * (area / PI).sqrt();
                Some(SoundHoleChoice::Round(RoundHole { diameter_mm, centre_to_centreline_mm, centre_station_mm }))
            }
            Pattern::Slot => {
                // Half-round ends: area = length width - (1 - pi/4) width^2, the smaller root.
                let lost = 1.0 - 0.25 * PI;
                let width_mm = (length_mm - (length_mm * length_mm - 4.0 * lost * area).sqrt()) / (2.0 * lost);
                (width_mm < length_mm).then_some(SoundHoleChoice::Slot(SlotHole {
                    length_mm,
                    width_mm,
                    centre_to_centreline_mm,
                    centre_station_mm,
                    lean_deg: 0.0,
                    ends: EndCut::Round,
                }))
            }
            Pattern::Crescent => {
                let of_width = |width_mm: f64| CrescentHole {
                    length_mm,
                    width_mm,
                    bow_mm: BOW * length_mm,
                    end_rounding_mm: ROUNDING * width_mm,
                    centre_to_centreline_mm,
                    centre_station_mm,
                    lean_deg: 0.0,
                    ends: EndCut::Round,
                };
                let area_of = |width_mm: f64| {
                    let pieces = crescent::pieces(&of_width(width_mm), self.path()).ok()?;
                    Some(-pieces.iter().map(Piece::area_share_mm2).sum::<f64>())
                };
                let (mut narrow, mut wide) = (0.0, 1.9 * BOW * length_mm);
                area_of(wide).filter(|&widest| widest > area)?;
                for _ in 0..HALVINGS {
                    let middle = 0.5 * (narrow + wide);
                    if area_of(middle)? < area { narrow = middle } else { wide = middle }
                }
                Some(SoundHoleChoice::Crescent(of_width(wide)))
            }
        }
    }
}
