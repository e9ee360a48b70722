//! The flat arrays that come from the page, held against each other before the device sees them.

use super::bounds::Bounds;
use super::motion_colour::COLOURS;
use super::problem::ViewError;

/// Numbers a vertex in a motion field's part: displacement and change of the normal, each xyz.
pub const MOTION_COMPONENTS: usize = 6;

/// A picture of the top whose arrays fit each other: every vertex has a finite position and normal and a kind, and
/// every triangle names vertices that exist.
#[derive(Clone, Copy, Debug)]
pub struct PictureArrays<'a> {
    /// (vertex, xyz), mm.
    pub positions: &'a [f32],
    /// (vertex, xyz), unit.
    pub normals: &'a [f32],
    /// (triangle, corner).
    pub triangles: &'a [u32],
    /// (vertex): 0 outside, 1 inside, 2 wall.
    pub kinds: &'a [u32],
    /// The box round the positions.
    pub bounds: Bounds,
}

impl<'a> PictureArrays<'a> {
    /// Checks the arrays; cost linear in their length.
    ///
    /// # Errors
    /// [`ViewError::Length`], [`ViewError::NotFinite`], [`ViewError::NoSuchVertex`] or [`ViewError::NoExtent`].
    pub fn new(
        positions: &'a [f32],
        normals: &'a [f32],
        triangles: &'a [u32],
        kinds: &'a [u32],
    ) -> Result<Self, ViewError> {
        let vertices = kinds.len();
        check_length("positions", positions.len(), 3 * vertices)?;
        check_length("normals", normals.len(), 3 * vertices)?;
        if triangles.is_empty() || !triangles.len().is_multiple_of(3) {
            return Err(ViewError::Length {
                array: "triangles",
                got: triangles.len(),
                expected: "a positive multiple of 3".to_owned(),
            });
        }
        check_finite("positions", positions)?;
        check_finite("normals", normals)?;
        if let Some(corner) = triangles.iter().position(|&vertex| vertex as usize >= vertices) {
            return Err(ViewError::NoSuchVertex { triangle: corner / 3, vertex: triangles[corner], vertices });
        }
        let bounds = Bounds::round(positions).ok_or(ViewError::NoExtent)?;
        Ok(Self { positions, normals, triangles, kinds, bounds })
    }
}

/// A motion field for a picture: as many vertices, every number finite.
#[derive(Clone, Copy, Debug)]
pub struct MotionArrays<'a> {
    /// (vertex, [ux, uy, uz, nx, ny, nz]), real part, mm and 1/1.
    pub re: &'a [f32],
    /// The imaginary part, alike.
    pub im: &'a [f32],
    /// Whether the imaginary part is zero throughout: the motion has one phase and its nodes stand still.
    pub standing: bool,
    /// The phase at which the motion as a whole is farthest from rest, radians; half a period later it is so again.
    pub furthest_rad: f32,
}

impl<'a> MotionArrays<'a> {
    /// Checks the arrays for a picture of `vertices`; cost linear in their length.
    ///
    /// # Errors
    /// [`ViewError::Length`] or [`ViewError::NotFinite`].
    pub fn new(re: &'a [f32], im: &'a [f32], vertices: usize) -> Result<Self, ViewError> {
        check_length("motion's real parts", re.len(), MOTION_COMPONENTS * vertices)?;
        check_length("motion's imaginary parts", im.len(), MOTION_COMPONENTS * vertices)?;
        check_finite("motion's real parts", re)?;
        check_finite("motion's imaginary parts", im)?;
        let standing = im.iter().all(|&part| part == 0.0);
        Ok(Self { re, im, standing, furthest_rad: if standing { 0.0 } else { furthest_rad(re, im) } })
    }
}

/// Where the sum of |re cos p - im sin p|^2 over all displacements is largest: it is A cos^2 p + B sin^2 p - 2 C sin p cos p,
/// which turns with 2 p and has its top where tan 2p = -2 C / (A - B).
fn furthest_rad(re: &[f32], im: &[f32]) -> f32 {
    let [mut difference, mut product] = [0.0, 0.0];
    for (re, im) in re.chunks_exact(MOTION_COMPONENTS).zip(im.chunks_exact(MOTION_COMPONENTS)) {
        for (re, im) in re.iter().zip(im).take(3) {
            difference += re * re - im * im;
            product += re * im;
        }
    }
    0.5 * (-2.0 * product).atan2(difference)
}

/// Checks numbers of vertices, of which there must be `count`; cost linear in their length.
///
/// # Errors
/// [`ViewError::Length`] or [`ViewError::NotFinite`].
pub fn check_numbers(values: &[f32], count: usize) -> Result<(), ViewError> {
    check_length("values", values.len(), count)?;
    check_finite("values", values)
}

/// Checks a map of [`COLOURS`] colours of four bytes.
///
/// # Errors
/// [`ViewError::Length`].
pub fn check_colours(colours: &[u8]) -> Result<(), ViewError> {
    check_length("colours", colours.len(), 4 * COLOURS)
}

fn check_length(array: &'static str, got: usize, expected: usize) -> Result<(), ViewError> {
    if got == expected { Ok(()) } else { Err(ViewError::Length { array, got, expected: expected.to_string() }) }
}

fn check_finite(array: &'static str, numbers: &[f32]) -> Result<(), ViewError> {
    match numbers.iter().position(|number| !number.is_finite()) {
        None => Ok(()),
        Some(index) => {
            let value = if numbers[index].is_nan() { "NaN" } else { "an infinity" };
            Err(ViewError::NotFinite { array, index, value })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const POSITIONS: [f32; 9] = [0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0, 0.0];
    const NORMALS: [f32; 9] = [0.0, 0.0, 1.0, 0.0, 0.0, 1.0, 0.0, 0.0, 1.0];

    #[test]
    fn a_triangle_is_a_picture() {
        assert!(PictureArrays::new(&POSITIONS, &NORMALS, &[0, 1, 2], &[0; 3]).is_ok());
    }

    #[test]
    fn arrays_that_do_not_fit_are_refused_with_the_reason() {
        let mut broken = POSITIONS;
        broken[4] = f32::NAN;
        let refusals = [
            (PictureArrays::new(&POSITIONS[..8], &NORMALS, &[0, 1, 2], &[0; 3]), "8"),
            (PictureArrays::new(&POSITIONS, &NORMALS, &[0, 1], &[0; 3]), "multiple of 3"),
            (PictureArrays::new(&POSITIONS, &NORMALS, &[], &[0; 3]), "positive"),
            (PictureArrays::new(&broken, &NORMALS, &[0, 1, 2], &[0; 3]), "index 4"),
            (PictureArrays::new(&POSITIONS, &NORMALS, &[0, 1, 3], &[0; 3]), "vertex 3"),
            (PictureArrays::new(&[1.0; 9], &NORMALS, &[0, 1, 2], &[0; 3]), "one place"),
        ];
        for (refusal, reason) in refusals {
            let message = refusal.expect_err(reason).to_string();
            assert!(message.contains(reason), "{message}");
        }
    }

    #[test]
    fn a_motion_with_any_imaginary_part_does_not_stand() {
        let re = [0.5; 18];
        let mut im = [0.0; 18];
        assert!(MotionArrays::new(&re, &im, 3).is_ok_and(|motion| motion.standing));
        im[17] = 1e-20;
        assert!(MotionArrays::new(&re, &im, 3).is_ok_and(|motion| !motion.standing));
        assert!(MotionArrays::new(&re, &im, 4).is_err());
    }

    #[test]
    fn the_furthest_phase_is_where_a_search_finds_it() {
        let re: Vec<f32> = (0..18).map(|k| (0.7 * k as f32).sin()).collect();
        let im: Vec<f32> = (0..18).map(|k| 0.6 * (1.3 * k as f32 + 0.4).cos()).collect();
        let size = |phase: f32| -> f32 {
            let moved = |k: usize| re[k] * phase.cos() - im[k] * phase.sin();
            (0..18).filter(|k| k % 6 < 3).map(|k| moved(k).powi(2)).sum()
        };
        let found = size(MotionArrays::new(&re, &im, 3).unwrap().furthest_rad);
        let searched = (0..1000).map(|k| size(0.001 * std::f32::consts::PI * k as f32)).fold(0.0, f32::max);
        assert!((found / searched - 1.0).abs() < 1e-4, "{found} {searched}");
    }

    #[test]
    fn every_vertex_has_one_finite_number() {
        assert_eq!(check_numbers(&[1.0, 2.0], 2), Ok(()));
        assert!(check_numbers(&[1.0], 2).is_err());
        assert!(check_numbers(&[1.0, f32::NAN], 2).is_err());
        assert_eq!(check_colours(&[0; 4 * COLOURS]), Ok(()));
        assert!(check_colours(&[0; COLOURS]).is_err());
    }
}
