//! Invented designs to start from, from a quarter-size violin to a cello.
//!
//! Each is the demonstration design's construction with measures of its own size; none is a real instrument. The table is
//! `presets.csv`; what it doesn't hold (stations, corners, sound holes) goes with the length or the width beside it.

use super::{Design, tenths};

/// One invented design.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Preset {
    /// A stable snake_case word.
    pub word: &'static str,
    /// What it is, in words.
    pub name: &'static str,
    row: [f64; 11],
}

impl Preset {
    /// All of them, full-size violin first.
    pub fn all() -> Vec<Preset> {
        include_str!("presets.csv").lines().skip(1).filter_map(Preset::read).collect()
    }

    /// The one of a word.
    pub fn of_word(word: &str) -> Option<Preset> {
        Preset::all().into_iter().find(|preset| preset.word == word)
    }

    fn read(line: &'static str) -> Option<Preset> {
        let (word, rest) = line.split_once(",\"")?;
        let (name, numbers) = rest.split_once("\",")?;
        let numbers: Vec<f64> = numbers.split(',').map(str::parse).collect::<Result<_, _>>().ok()?;
        Some(Preset { word, name, row: numbers.try_into().ok()? })
    }

    /// The whole design.
    pub fn design(&self) -> Design {
        let [length, upper, waist, lower, edge, apex, depth, distance, centre, flank, overhang] = self.row;
        let mut design = Design::demo();
        design.name = self.name.into();
        design.note = format!("{}: invented, plausible workshop measures. It is no real instrument.", self.name);
        let m = &mut design.outline;
        let along = length / m.length_mm;
        for station in [
            &mut m.length_mm,
            &mut m.upper_station_mm,
            &mut m.waist_station_mm,
            &mut m.lower_station_mm,
            &mut m.upper_corner.station_mm,
            &mut m.lower_corner.station_mm,
            &mut m.upper_corner.width_mm,
            &mut m.lower_corner.width_mm,
        ] {
            *station = tenths(*station * along);
        }
        m.upper_corner.reach_mm = tenths(m.upper_corner.reach_mm * upper / m.upper_width_mm);
        m.lower_corner.reach_mm = tenths(m.lower_corner.reach_mm * lower / m.lower_width_mm);
        (m.upper_width_mm, m.waist_width_mm, m.lower_width_mm, m.overhang_mm) = (upper, waist, lower, overhang);
        let a = &mut design.arching;
        (a.edge_height_mm, a.apex_height_mm) = (edge, apex);
        (a.channel_depth_mm, a.channel_distance_mm) = (depth, distance);
        design.sound_holes.scale(along);
        let g = &mut design.graduation;
        (g.centre_mm, g.flank_mm, g.edge_mm) = (centre, flank, edge);
        design
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{outline::Outline, surface::Surface};

    #[test]
    fn every_preset_is_sound_says_that_it_is_invented_and_comes_back_from_its_drawing() {
        let presets = Preset::all();
        assert_eq!(presets.len(), 7);
        assert_eq!(Preset::of_word("cello").unwrap().word, "cello");
        for preset in presets {
            let design = preset.design();
            design.check().unwrap_or_else(|error| panic!("{}: {error}", preset.word));
            assert!(design.name.contains("Invented") && design.note.contains("no real instrument"));
            assert_eq!(Design::from_json(&design.to_json()), Ok(design.clone()));
            let m = &design.outline;
            let outline = Outline::new(m).unwrap();
            let points = outline.polyline(1e-4);
            let top = points.iter().map(|p| p[1]).fold(0.0, f64::max);
            assert!((top - m.length_mm).abs() < 0.01);
            for (low, high, width) in
                [(0.0, 0.3 * m.length_mm, m.lower_width_mm), (0.75 * m.length_mm, m.length_mm, m.upper_width_mm)]
            {
                let half = points.iter().filter(|p| p[1] > low && p[1] < high).map(|p| p[0]).fold(0.0, f64::max);
                assert!((2.0 * half - width).abs() < 0.01, "{}: {half} {width}", preset.word);
            }
            assert!((outline.width_mm(m.waist_station_mm).unwrap() - m.waist_width_mm).abs() < 0.01);
            let arching = crate::arching::Arching::new(&design.arching, &outline).unwrap();
            let surface = Surface::new(&arching, &outline);
            let apex = surface.height_mm([0.0, arching.apex_station_mm()]);
            assert!((apex - design.arching.apex_height_mm).abs() < 0.01);
        }
    }

    /// Workshop tables: violin 355;168;112;206, arch 15.5 ("Average Measurements of the Violin in millimeters",
    /// makingtheviolin.com); viola, small to large, body 390-430, upper 188-200, waist 127-, lower 228-250, arch 17
    /// ("The Viola", table of measures). The invented ones must lie within 3 % of the violin's and between the violas' sizes.
    #[test]
    fn invented_measures_stand_among_published_ones() {
        let violin = Preset::of_word("violin").unwrap().row;
        for (ours, published) in violin.iter().zip([355.0, 168.0, 112.0, 206.0]) {
            assert!((ours / published - 1.0_f64).abs() < 0.03);
        }
        for word in ["viola", "viola_large"] {
            let [length, upper, waist, lower, ..] = Preset::of_word(word).unwrap().row;
            assert!((390.0..=430.0).contains(&length) && (188.0..=200.0).contains(&upper));
            assert!((127.0..=140.0).contains(&waist) && (228.0..=250.0).contains(&lower));
        }
    }
}
