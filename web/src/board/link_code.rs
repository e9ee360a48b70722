//! A link as a QR code, for a page of paper that leads back to the design.

use qrcodegen::{QrCode, QrCodeEcc};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrawingBoard;
use crate::page_values::to_page;
use crate::problem::Problem;

/// What the largest code holds, in bytes: version 40 at level L (ISO/IEC 18004:2015, table 7).
const MOST_BYTES: usize = 2953;

/// The light border that a reader needs, in modules (ISO/IEC 18004:2015, section 5.3.8).
const QUIET_ZONE: i32 = 4;

#[derive(Debug, Serialize)]
struct CodeReply {
    /// Modules along a side, with the quiet zone.
    size: i32,
    /// SVG path data of the dark modules, one unit each.
    path: String,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// The QR code of a text: `{ size, path }`, SVG path data of what is dark on a light square of that side, the light border in it.
    ///
    /// # Errors
    /// A text that is too long for any code.
    pub fn qr_code(text: &str) -> Result<JsValue, Box<Problem>> {
        Ok(to_page(&code_of(text)?))
    }
}

/// Corrects as much as the smallest size that will do leaves room for: a link is long, and small modules are harder to read than few
/// corrections.
fn code_of(text: &str) -> Result<CodeReply, Box<Problem>> {
    let code = QrCode::encode_text(text, QrCodeEcc::Low).map_err(|_| too_long(text.len()))?;
    let mut path = String::new();
    for row in 0..code.size() {
        let mut column = 0;
        while column < code.size() {
            let run = (column..code.size()).take_while(|&x| code.get_module(x, row)).map(|_| 1).sum::<i32>();
            if run > 0 {
                path.push_str(&format!("M{} {}h{run}v1h-{run}z", column + QUIET_ZONE, row + QUIET_ZONE));
            }
            column += run.max(1);
        }
    }
    Ok(CodeReply { size: code.size() + 2 * QUIET_ZONE, path })
}

fn too_long(bytes: usize) -> Box<Problem> {
    Box::new(Problem {
        kind: "link_too_long_for_code".into(),
        message: format!("A QR code holds {MOST_BYTES} bytes at most; this link has {bytes}."),
        value: format!("{bytes} bytes"),
        limits: format!("at most {MOST_BYTES} bytes"),
        remedy: "Send the link itself, or the saved file.".into(),
        ..Problem::default()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each module as a square of pixels, read back from the path as a browser fills it.
    fn painted(code: &CodeReply, scale: usize) -> (usize, Vec<bool>) {
        let side = usize::try_from(code.size).unwrap() * scale;
        let mut dark = vec![false; side * side];
        for run in code.path.split('M').skip(1) {
            let numbers: Vec<usize> =
                run.split(|c: char| !c.is_ascii_digit()).filter_map(|number| number.parse().ok()).collect();
            let [x, y, width] = [numbers[0], numbers[1], numbers[2]];
            for row in y * scale..(y + 1) * scale {
                dark[row * side + x * scale..row * side + (x + width) * scale].fill(true);
            }
        }
        (side, dark)
    }

    fn read(code: &CodeReply) -> String {
        let (side, dark) = painted(code, 3);
        let grey = |x, y| if dark[y * side + x] { 0 } else { 255 };
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side, side, grey);
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1, "one code is to be found in {side} × {side} pixels");
        grids[0].decode().unwrap().1
    }

    /// Read by rqrr, a port of the independent decoder quirc.
    #[test]
    fn a_link_of_any_length_is_read_back_by_another_program() {
        for bytes in [1, 60, 500, 1200, 2000, MOST_BYTES] {
            let text: String =
                "https://example.org/#design=1.".chars().chain(('a'..='z').cycle()).take(bytes).collect();
            assert_eq!(read(&code_of(&text).unwrap()), text, "{bytes} bytes");
        }
    }

    #[test]
    fn a_link_beyond_the_largest_code_is_refused_with_both_numbers() {
        let problem = code_of(&"a".repeat(MOST_BYTES + 1)).unwrap_err();
        assert_eq!(problem.kind, "link_too_long_for_code");
        assert!(problem.message.contains("2953") && problem.message.contains("2954"), "{}", problem.message);
    }
}
