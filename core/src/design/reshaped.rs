//! Tops beside the demonstration's, for laws that every regular top must obey.

use super::{Design, SoundHoleChoice};

/// The demonstration with another waist and other f-holes (lower eye to the edge, upper eye to the centreline, widths of stem, upper eye
/// and upper wing), mm; those of the treble side alone unless both are to be `alike`.
pub(crate) fn reshaped(waist: f64, [edge, centre, stem, eye, wing]: [f64; 5], alike: bool) -> Design {
    let mut design = Design::demo();
    design.outline.waist_width_mm = waist;
    let holes = &mut design.sound_holes;
    for hole in [&mut holes.treble, &mut holes.bass].into_iter().take(if alike { 2 } else { 1 }) {
        let SoundHoleChoice::EyesAndStem(m) = hole else { panic!("the demonstration has f-holes") };
        m.lower_eye_to_edge_mm = edge;
        m.upper_eye_to_centreline_mm = centre;
        m.stem_width_mm = stem;
        m.upper_eye_diameter_mm = eye;
        m.upper_wing_width_mm = wing;
    }
    design
}
