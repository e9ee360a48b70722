//! How far an f-hole leans, which follows from where its eyes are.

use super::SoundHole;
use crate::{
    design::EyesAndStem,
    outline::Outline,
    plan::{Point, vector::sub},
};

impl SoundHole {
    /// Lean of an f-hole's upper end towards the centreline, degrees: of the line through the middles of its eyes. Other holes
    /// have none.
    pub fn lean_deg(&self) -> Option<f64> {
        let [[x, y], _, _] = self.span()?;
        Some((-x).atan2(y).to_degrees())
    }

    /// The measures with which this f-hole, drawn from `measures`, leans by `lean_deg`: its eyes move across, each at its own
    /// station, and the place of the line through them that is level with the nicks stays.
    ///
    /// None for other holes and for leans of more than 80 degrees. Whether the hole can be cut so is the design's check.
    pub fn leaning(&self, measures: &EyesAndStem, outline: &Outline, lean_deg: f64) -> Option<EyesAndStem> {
        let [[x, y], upper, lower] = self.span()?;
        if !(-80.0..=80.0).contains(&lean_deg) {
            return None;
        }
        let nicks = Outline::on_side(self.stem()?.nicks, self.treble_side);
        let wider = -lean_deg.to_radians().tan() - x / y;
        let moved = |eye: Point| eye[0] + wider * (eye[1] - nicks[1]);
        let to_edge = outline.signed_distance_mm(Outline::on_side([moved(lower), lower[1]], self.treble_side));
        Some(EyesAndStem {
            upper_eye_to_centreline_mm: moved(upper) - 0.5 * measures.upper_eye_diameter_mm,
            lower_eye_to_edge_mm: to_edge - 0.5 * measures.lower_eye_diameter_mm,
            ..measures.clone()
        })
    }

    /// From the lower eye's middle to the upper's, and both middles, as on the treble side.
    fn span(&self) -> Option<[Point; 3]> {
        let [upper, lower] = self.eyes()?.map(|eye| Outline::on_side(eye.centre, self.treble_side));
        Some([sub(upper, lower), upper, lower])
    }
}
