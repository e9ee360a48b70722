//! A screen that nobody sees, for a browser that draws nothing without one: Xvfb, which keeps its picture in a file.

use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, ensure};
use tempfile::TempDir;

use super::pixels::Picture;
use super::process::Process;

const WIDTH: usize = 1024;
const HEIGHT: usize = 768;

/// A running X server; it ends when dropped.
pub(super) struct VirtualScreen {
    _process: Process,
    folder: TempDir,
    /// The display's name, as in `DISPLAY`.
    pub(super) display: String,
}

impl VirtualScreen {
    pub(super) fn start() -> Result<VirtualScreen> {
        let folder = tempfile::tempdir()?;
        let mut process = Command::new("Xvfb")
            .args(["-displayfd", "1", "-nocursor", "-nolisten", "tcp", "-screen", "0"])
            .arg(format!("{WIDTH}x{HEIGHT}x24"))
            .arg("-fbdir")
            .arg(folder.path())
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("can't start Xvfb")?;
        let mut number = String::new();
        let told = process.stdout.take().context("Xvfb's output")?;
        BufReader::new(told).read_line(&mut number)?;
        let screen = VirtualScreen { _process: Process(process), folder, display: format!(":{}", number.trim()) };
        ensure!(number.trim().parse::<u32>().is_ok(), "Xvfb opened no display: {number:?}");
        Ok(screen)
    }

    /// What is on the screen now.
    pub(super) fn picture(&self) -> Result<Picture> {
        picture_of_dump(&std::fs::read(self.folder.path().join("Xvfb_screen0"))?)
    }
}

/// An X window dump (XWD version 7, `X11/XWDFile.h`): a header of big-endian words, a colour table, rows of pixels.
fn picture_of_dump(dump: &[u8]) -> Result<Picture> {
    let word = |index: usize| -> Result<usize> {
        let bytes = dump.get(4 * index..4 * index + 4).context("a screen dump without a whole header")?;
        Ok(u32::from_be_bytes(bytes.try_into()?) as usize)
    };
    let [header, version, width, height] = [word(0)?, word(1)?, word(4)?, word(5)?];
    let [order, bits, row_bytes, colours] = [word(7)?, word(11)?, word(12)?, word(19)?];
    ensure!(version == 7 && bits == 32, "a screen dump of version {version} with {bits} bits a pixel");
    /// Bytes of one colour of the table.
    const COLOUR: usize = 12;
    let pixels = dump.get(header + COLOUR * colours..).context("a screen dump without pixels")?;
    ensure!(pixels.len() >= row_bytes * height, "a screen dump that ends too early");
    let of_pixel = |p: &[u8]| if order == 0 { [p[2], p[1], p[0]] } else { [p[1], p[2], p[3]] };
    let rows = pixels.chunks_exact(row_bytes).take(height);
    let shown = rows.flat_map(|row| row[..4 * width].chunks_exact(4).map(of_pixel)).collect();
    Ok(Picture::new(shown, (u32::try_from(width)?, u32::try_from(height)?)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dump_is_read_in_either_order_of_bytes() {
        for (order, bytes) in [(0_u32, [3, 2, 1, 0]), (1, [0, 1, 2, 3])] {
            let mut words = [0_u32; 25];
            (words[0], words[1], words[4], words[5]) = (100, 7, 1, 1);
            (words[7], words[11], words[12], words[19]) = (order, 32, 4, 1);
            let mut dump: Vec<u8> = words.iter().flat_map(|word| word.to_be_bytes()).collect();
            dump.extend([9; 12]);
            dump.extend(bytes);
            let same = Picture::new(vec![[1, 2, 3]], (1, 1));
            assert_eq!(picture_of_dump(&dump).unwrap().share_changed(&same).unwrap(), 0.0);
            assert!(picture_of_dump(&dump[..dump.len() - 1]).is_err());
        }
    }
}
