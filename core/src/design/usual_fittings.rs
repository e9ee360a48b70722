//! What is usually fixed to a top of a design's size: a beginning for a maker's own bar, post and ribs.
//!
//! Measures of full-size violins from workshop tables (`tests/reference/violin.csv`), which go with the body's length. The place of a
//! bar is each maker's own; the line taken here is one published rule among several.

use super::{BarMeasures, Design, PlanPlace, PostMeasures, RibMeasures, StickWood, tenths};
use crate::wood::Species;

/// The body that the tables speak of, mm.
const FULL_SIZE_MM: f64 = 355.0;
/// Ribs grow faster than bodies: 30 mm on a violin, some 118 mm on a cello of 755 mm (common practice, no source).
const RIBS_GROW: f64 = 1.81;
/// And their thickness slower: 1.1 mm and some 1.5 mm (the same).
const RIB_THICKNESS_GROWS: f64 = 0.45;
/// Of the arch's inner height, what top and back together leave above the ribs where the post stands; the back is taken to be arched
/// as the top is (common practice, no source).
const POST_ABOVE_RIBS: f64 = 1.85;
const SPRUCE: StickWood = StickWood { species: Species::SitkaSpruce, measured: None };

impl Design {
    /// A bar along a line at a seventh of the half width (V-BAR-POS), highest at the bridge (common practice, no source), of spruce. Its
    /// section is V-BAR-MCC's.
    #[must_use]
    pub fn usual_bar(&self) -> BarMeasures {
        let m = &self.outline;
        let size = self.size();
        let half = |own: Option<f64>, whole_mm: f64| own.unwrap_or(0.5 * whole_mm);
        let bass = m.bass.as_ref();
        let lower_mm = half(bass.map(|bass| bass.lower_half_width_mm), m.lower_width_mm) / 7.0;
        let upper_mm = half(bass.map(|bass| bass.upper_half_width_mm), m.upper_width_mm) / 7.0;
        let inwards = (lower_mm - upper_mm) / (m.upper_station_mm - m.lower_station_mm);
        let end = |station_mm: f64| PlanPlace {
            across_mm: -tenths(lower_mm - inwards * (station_mm - m.lower_station_mm)),
            station_mm: tenths(station_mm),
        };
        BarMeasures {
            lower_end: end(40.0 * size),
            upper_end: end(m.length_mm - 40.0 * size),
            width_mm: tenths(5.5 * size),
            height_mm: tenths(13.0 * size),
            highest_station_mm: tenths(self.bridge_station_mm()),
            end_height_mm: tenths(3.0 * size),
            wood: SPRUCE,
        }
    }

    /// A post of spruce behind the treble foot: 2.5 mm off a foot of 4.5 mm whose middle is 17 mm from the centreline, of a diameter
    /// of 6.2 mm (common practice, no source).
    #[must_use]
    pub fn usual_post(&self) -> PostMeasures {
        let size = self.size();
        let inner_height_mm = self.arching.apex_height_mm - self.graduation.centre_mm;
        PostMeasures {
            place: PlanPlace {
                across_mm: tenths(17.0 * size),
                station_mm: tenths(self.bridge_station_mm() - (2.25 + 2.5 + 3.1) * size),
            },
            diameter_mm: tenths(6.2 * size),
            length_mm: tenths(self.usual_ribs().height_mm + POST_ABOVE_RIBS * inner_height_mm),
            wood: SPRUCE,
        }
    }

    /// Ribs of maple: height and thickness V-AV-RIBH and V-AV-RIBT, moduli across the grain and in the face W-SMA-ER and W-SMA-GLR of
    /// `tests/reference/wood.csv` times 13.9 GPa; linings of 6 x 1.8 mm, blocks and their stiffness from common practice, no source.
    #[must_use]
    pub fn usual_ribs(&self) -> RibMeasures {
        let size = self.size();
        RibMeasures {
            height_mm: tenths(30.0 * size.powf(RIBS_GROW)),
            thickness_mm: tenths(1.1 * size.powf(RIB_THICKNESS_GROWS)),
            lining_height_mm: tenths(6.0 * size),
            lining_thickness_mm: tenths(1.8 * size.powf(RIB_THICKNESS_GROWS)),
            across_gpa: 1.8,
            shear_gpa: 1.5,
            end_block_reach_mm: tenths(24.0 * size),
            corner_block_reach_mm: tenths(20.0 * size),
            block_factor: 20.0,
        }
    }

    /// Where the bridge stands, from the bottom edge, mm.
    #[must_use]
    pub fn bridge_station_mm(&self) -> f64 {
        self.outline.length_mm - self.sound_holes.stop_mm
    }

    /// The body's length over a full-size violin's.
    fn size(&self) -> f64 {
        self.outline.length_mm / FULL_SIZE_MM
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Preset, Rim};

    /// Rows V-BAR-POS (15 and 12 mm off the centre at the bouts, ends 40 mm from the edges), V-BAR-DIM (265 to 275 mm long) and
    /// V-BAR-L80 (80 mm shorter than the body) of `tests/reference/violin.csv`.
    #[test]
    fn a_violins_usual_bar_is_the_workshops() {
        let design = Design::demo();
        let bar = design.usual_bar();
        let at = |station_mm: f64| {
            let (a, b) = (bar.lower_end, bar.upper_end);
            let share = (station_mm - a.station_mm) / (b.station_mm - a.station_mm);
            a.across_mm + share * (b.across_mm - a.across_mm)
        };
        assert!((at(design.outline.lower_station_mm) + 15.0).abs() < 0.5);
        assert!((at(design.outline.upper_station_mm) + 12.0).abs() < 0.5);
        let length = bar.upper_end.station_mm - bar.lower_end.station_mm;
        assert!((265.0..=276.0).contains(&length), "{length}");
    }

    /// V-VLA-BAR, a medium viola's bar: 6 mm thick, 14 mm high; ribs of a viola and a cello of some 38 and 118 mm, a cello's post of some
    /// 150 to 165 mm and a violin's of 50 to 56 (common practice, no source).
    #[test]
    fn larger_bodies_have_larger_fittings() {
        let of = |word: &str| Preset::of_word(word).unwrap().design();
        let (violin, viola, cello) = (of("violin"), of("viola"), of("cello"));
        let bar = viola.usual_bar();
        assert!((bar.width_mm / 6.0 - 1.0).abs() < 0.1 && (bar.height_mm / 14.0 - 1.0).abs() < 0.1);
        assert!((viola.usual_ribs().height_mm / 38.0 - 1.0).abs() < 0.05);
        assert!((cello.usual_ribs().height_mm / 118.0 - 1.0).abs() < 0.02);
        assert!((50.0..=56.0).contains(&violin.usual_post().length_mm));
        assert!((150.0..=165.0).contains(&cello.usual_post().length_mm), "{}", cello.usual_post().length_mm);
    }

    #[test]
    fn every_invented_design_can_have_the_usual_fittings() {
        for preset in Preset::all() {
            let mut design = preset.design();
            design.bar = Some(design.usual_bar());
            design.post = Some(design.usual_post());
            design.rim = Rim::Elastic(design.usual_ribs());
            assert_eq!(design.check(), Ok(()), "{}", preset.word);
        }
    }
}
