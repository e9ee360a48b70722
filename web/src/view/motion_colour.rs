//! The colours of the signed motion: Crameri's map *vik* (source and licence in `motion_colour/SOURCE.md`).
//!
//! The published text is read at compile time, so the module carries 1 kB of bytes and no number parser, and a
//! damaged file stops the build.

/// Colours in the published map.
const PUBLISHED: usize = 256;

/// Colours left off at each end. The map ends nearly black, where shading and colour can no longer be told apart; at
/// 20 its darkest colours have L* 22 and 27, and more would only make the colours of small motions alike.
const LEFT_OFF: usize = 20;

/// Number of colours used.
pub const COLOURS: usize = PUBLISHED - 2 * LEFT_OFF;

/// The map from full motion inward through rest to full motion outward; (colour, [red, green, blue, 255]) sRGB.
pub const MOTION_COLOURS: [[u8; 4]; COLOURS] = parsed(include_bytes!("motion_colour/vik.txt"));

/// The map without the constant fourth byte; (colour, [red, green, blue]) sRGB, flat.
#[must_use]
pub fn colour_bar() -> Vec<u8> {
    MOTION_COLOURS.iter().flat_map(|colour| colour[..3].iter().copied()).collect()
}

/// Reads `0.123456 0.123456 0.123456\n` lines, the fixed form of the published file.
const fn parsed(text: &[u8]) -> [[u8; 4]; COLOURS] {
    const DIGITS: usize = 6;
    const NUMBER: usize = 2 + DIGITS + 1;
    assert!(text.len() == PUBLISHED * 3 * NUMBER, "the map must hold 256 lines of three shares");
    let mut colours = [[255; 4]; COLOURS];
    let mut index = 0;
    while index < COLOURS * 3 {
        let start = (LEFT_OFF * 3 + index) * NUMBER;
        let mut millionths = (text[start] - b'0') as u32;
        assert!(text[start + 1] == b'.', "each share is 0. or 1. and six digits");
        let mut digit = 0;
        while digit < DIGITS {
            millionths = millionths * 10 + (text[start + 2 + digit] - b'0') as u32;
            digit += 1;
        }
        assert!(millionths <= 1_000_000, "a share is at most 1");
        colours[index / 3][index % 3] = ((millionths * 255 + 500_000) / 1_000_000) as u8;
        index += 1;
    }
    colours
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_the_published_shares() {
        // The published numbers, read by the standard library.
        for line in [LEFT_OFF, 100, 127, 128, 255 - LEFT_OFF] {
            let shares: Vec<f64> = include_str!("motion_colour/vik.txt")
                .lines()
                .nth(line)
                .expect("the file has 256 lines")
                .split(' ')
                .map(|share| share.parse().expect("shares are numbers"))
                .collect();
            for (channel, share) in shares.iter().enumerate() {
                let off = f64::from(MOTION_COLOURS[line - LEFT_OFF][channel]) - 255.0 * share;
                assert!(off.abs() <= 0.5, "line {line}, channel {channel}: off by {off}");
            }
        }
    }

    /// CIE L* of an sRGB colour: IEC 61966-2-1 for the decoding and luminance, CIE 1976 for L*.
    fn lightness(colour: [u8; 4]) -> f64 {
        let linear = |code: u8| {
            let share = f64::from(code) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
        };
        let y = 0.2126 * linear(colour[0]) + 0.7152 * linear(colour[1]) + 0.0722 * linear(colour[2]);
        if y > 216.0 / 24389.0 { 116.0 * y.cbrt() - 16.0 } else { y * 24389.0 / 27.0 }
    }

    #[test]
    fn lightness_rises_steadily_to_the_middle_and_falls_after() {
        // What a diverging map promises (Crameri et al. 2020): rest is the lightest, and both arms darken without a
        // step back, so that more motion never looks like less, in grey or with any colour vision. One code value of
        // rounding is about 0.4 L*. "Middle" is to a 64th of the map: an eye cannot place the palest tint closer.
        let lightness: Vec<f64> = MOTION_COLOURS.iter().map(|&colour| lightness(colour)).collect();
        let lightest = (0..COLOURS).max_by(|&a, &b| lightness[a].total_cmp(&lightness[b])).expect("not empty");
        assert!(lightest.abs_diff(COLOURS / 2) <= PUBLISHED / 64, "lightest at {lightest}");
        for index in 1..COLOURS {
            let step = lightness[index] - lightness[index - 1];
            let rise = if index <= lightest { step } else { -step };
            assert!(rise > -0.4, "step back at {index}: {rise}");
        }
    }

    #[test]
    fn the_bar_is_the_map() {
        let bar = colour_bar();
        assert_eq!(bar.len(), 3 * COLOURS);
        assert_eq!(bar[3 * 200..3 * 201], MOTION_COLOURS[200][..3]);
    }
}
