//! What a person sees of the drawn top: a picture of the canvas as the browser composed it, and comparisons of two.

use std::collections::BTreeSet;

use anyhow::{Context, Result, ensure};
use thirtyfour::prelude::*;

use super::Session;

/// Two colours further apart than this in a channel are different to the eye, not only to rounding.
const VISIBLE: u8 = 12;

/// A picture of the canvas, rows of red, green, blue.
pub(super) struct Picture {
    pixels: Vec<[u8; 3]>,
    size: (u32, u32),
}

impl Picture {
    /// Takes the picture of the page's canvas.
    pub(super) async fn take(session: &Session) -> Result<Picture> {
        let canvas = session.driver.find(By::Css("canvas")).await.context("the page has no canvas")?;
        Picture::decode(&canvas.screenshot_as_png().await?)
    }

    pub(super) fn new(pixels: Vec<[u8; 3]>, size: (u32, u32)) -> Picture {
        Picture { pixels, size }
    }

    pub(super) fn decode(png: &[u8]) -> Result<Picture> {
        let mut decoder = png::Decoder::new(std::io::Cursor::new(png));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = decoder.read_info()?;
        let mut bytes = vec![0; reader.output_buffer_size().context("a picture too large for memory")?];
        let frame = reader.next_frame(&mut bytes)?;
        let channels = frame.color_type.samples();
        ensure!(channels >= 3, "a picture in colour has three channels or more, this one {channels}");
        let pixels =
            bytes[..frame.buffer_size()].chunks_exact(channels).map(|pixel| [pixel[0], pixel[1], pixel[2]]).collect();
        Ok(Picture { pixels, size: (frame.width, frame.height) })
    }

    /// The upper left corner of it, `width` by `height` pixels.
    pub(super) fn corner(&self, width: u32, height: u32) -> Result<Picture> {
        ensure!(
            width <= self.size.0 && height <= self.size.1,
            "a picture of {:?} pixels has no such corner",
            self.size
        );
        let rows = self.pixels.chunks_exact(self.size.0 as usize).take(height as usize);
        let pixels = rows.flat_map(|row| &row[..width as usize]).copied().collect();
        Ok(Picture::new(pixels, (width, height)))
    }

    /// Its left and its right half.
    pub(super) fn halves(&self) -> [Picture; 2] {
        let (width, half) = (self.size.0 as usize, self.size.0 as usize / 2);
        [0, half].map(|from| {
            let pixels = self.pixels.chunks_exact(width).flat_map(|row| &row[from..from + half]).copied().collect();
            Picture::new(pixels, (half as u32, self.size.1))
        })
    }

    /// As a PNG.
    pub(super) fn encode(&self) -> Result<Vec<u8>> {
        let mut png = Vec::new();
        let mut encoder = png::Encoder::new(&mut png, self.size.0, self.size.1);
        encoder.set_color(png::ColorType::Rgb);
        encoder.set_compression(png::Compression::High);
        encoder.write_header()?.write_image_data(self.pixels.as_flattened())?;
        Ok(png)
    }

    /// Width, height and the lightness of each pixel.
    pub(super) fn grey(&self) -> (usize, usize, Vec<u8>) {
        let [width, height] = [self.size.0, self.size.1].map(|side| side as usize);
        let lightness =
            |[red, green, blue]: &[u8; 3]| ((u16::from(*red) + u16::from(*green) + u16::from(*blue)) / 3) as u8;
        (width, height, self.pixels.iter().map(lightness).collect())
    }

    /// Share of pixels that look different in `other`.
    pub(super) fn share_changed(&self, other: &Picture) -> Result<f64> {
        ensure!(self.size == other.size, "the canvas changed from {:?} to {:?} pixels", self.size, other.size);
        let differs = |(a, b): (&[u8; 3], &[u8; 3])| a.iter().zip(b).any(|(a, b)| a.abs_diff(*b) > VISIBLE);
        let changed = self.pixels.iter().zip(&other.pixels).filter(|pair| differs(*pair)).count();
        Ok(changed as f64 / self.pixels.len() as f64)
    }

    /// Share of pixels that differ from the picture's corner, which shows the background.
    pub(super) fn share_drawn(&self) -> f64 {
        let Some(background) = self.pixels.first() else { return 0.0 };
        let drawn = |pixel: &&[u8; 3]| pixel.iter().zip(background).any(|(a, b)| a.abs_diff(*b) > VISIBLE);
        self.pixels.iter().filter(drawn).count() as f64 / self.pixels.len() as f64
    }

    /// Distinct colours, counted in steps of 8 in each channel.
    pub(super) fn colours(&self) -> usize {
        self.pixels.iter().map(|pixel| pixel.map(|channel| channel / 8)).collect::<BTreeSet<_>>().len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn picture(pixels: &[[u8; 3]]) -> Picture {
        let whole = Picture::new(pixels.to_vec(), (pixels.len() as u32, 1));
        Picture::decode(&whole.encode().unwrap()).unwrap()
    }

    #[test]
    fn a_blank_picture_has_nothing_drawn_on_it() {
        let blank = picture(&[[20, 20, 20]; 8]);
        assert_eq!(blank.share_drawn(), 0.0);
        assert_eq!(blank.colours(), 1);
    }

    #[test]
    fn visible_changes_count_and_rounding_does_not() {
        let first = picture(&[[20, 20, 20], [100, 0, 0], [0, 0, 0], [0, 0, 0]]);
        let rounded = picture(&[[21, 20, 20], [100, 3, 0], [0, 0, 0], [0, 0, 0]]);
        let moved = picture(&[[20, 20, 20], [20, 20, 20], [100, 0, 0], [0, 0, 0]]);
        assert_eq!(first.share_changed(&rounded).unwrap(), 0.0);
        assert_eq!(first.share_changed(&moved).unwrap(), 0.5);
        assert!(first.share_changed(&picture(&[[0, 0, 0]])).is_err());
    }
}
