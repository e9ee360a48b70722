//! What is drawn on the wood in plan: where it is cut, and which place is looked at.

/// Radius of the ring round a place, mm: about a pencil's width, so that it is seen on a whole top.
const RING_MM: f32 = 3.0;

/// The marks as the shader takes them.
#[derive(Clone, Copy, Debug, Default)]
pub struct Marks {
    /// Normal in plan and distance from the origin, mm.
    cut: Option<[f32; 3]>,
    /// In plan, mm.
    place_mm: Option<[f32; 2]>,
}

impl Marks {
    /// Marks a cut across the top at y = `at_mm`, or along it at x = `at_mm`; not a number marks none.
    pub fn set_cut(&mut self, across: bool, at_mm: f32) {
        let normal = if across { [0.0, 1.0] } else { [1.0, 0.0] };
        self.cut = at_mm.is_finite().then_some([normal[0], normal[1], at_mm]);
    }

    /// Marks a place in plan, mm; none where a coordinate is not a number.
    pub fn set_place(&mut self, x_mm: f32, y_mm: f32) {
        self.place_mm = (x_mm.is_finite() && y_mm.is_finite()).then_some([x_mm, y_mm]);
    }

    /// (normal x, normal y, distance in mm, half width in pixels) of the cut's line; width 0 without a cut.
    #[must_use]
    pub fn cut(&self, half_width_px: f32) -> [f32; 4] {
        self.cut.map_or([0.0; 4], |[x, y, at]| [x, y, at, half_width_px])
    }

    /// (x, y, radius) of the ring, mm; radius 0 without a place.
    #[must_use]
    pub fn place(&self) -> [f32; 3] {
        self.place_mm.map_or([0.0; 3], |[x, y]| [x, y, RING_MM])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_set_and_taken_away() {
        let mut marks = Marks::default();
        assert_eq!((marks.cut(1.0)[3], marks.place()[2]), (0.0, 0.0));
        marks.set_cut(true, 120.0);
        marks.set_place(-20.0, 180.0);
        assert_eq!(marks.cut(1.5), [0.0, 1.0, 120.0, 1.5]);
        assert_eq!(marks.place(), [-20.0, 180.0, RING_MM]);
        marks.set_cut(false, -30.0);
        assert_eq!(marks.cut(1.5), [1.0, 0.0, -30.0, 1.5]);
        marks.set_cut(true, f32::NAN);
        marks.set_place(f32::NAN, 0.0);
        assert_eq!((marks.cut(1.0), marks.place()), ([0.0; 4], [0.0; 3]));
    }
}
