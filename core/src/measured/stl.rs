//! Scans as STL, binary or ASCII.

use super::{MeasuredError, Reading, check_count};

/// A binary file begins with this many bytes of free text, then the number of triangles, then 50 bytes a triangle.
const HEADER: usize = 80;
const TRIANGLE: usize = 50;

/// The corners of all triangles, three for each; corners that triangles share come as often as they are shared. Normals are
/// not read: a scan is laid into the frame by its shape, so that flipped ones do no harm.
///
/// # Errors
/// [`MeasuredError::NotStl`] for another or a damaged file; too few or too many points; NaN.
pub fn read_stl(bytes: &[u8]) -> Result<Vec<Reading>, MeasuredError> {
    let declared = bytes.get(HEADER..HEADER + 4).and_then(|count| count.try_into().ok()).map(u32::from_le_bytes);
    // An ASCII file's bytes there would declare a size that isn't the file's.
    let readings = match declared {
        Some(count) if bytes.len() == HEADER + 4 + count as usize * TRIANGLE => {
            check_count(3 * count as usize)?;
            bytes[HEADER + 4..].chunks_exact(TRIANGLE).flat_map(corners).collect()
        }
        _ if bytes.trim_ascii_start().starts_with(b"solid") => ascii(bytes)?,
        Some(count) => {
            return Err(MeasuredError::NotStl {
                detail: format!("it declares {count} triangles, which don't fill its {} bytes", bytes.len()),
            });
        }
        None => return Err(MeasuredError::NotStl { detail: format!("{} bytes", bytes.len()) }),
    };
    check_count(readings.len())?;
    match readings.iter().position(|reading: &Reading| !reading.iter().all(|value| value.is_finite())) {
        Some(index) => Err(MeasuredError::NotFinite { index: index + 1 }),
        None => Ok(readings),
    }
}

/// The twelve numbers of a triangle are its normal and its three corners.
fn corners(triangle: &[u8]) -> [Reading; 3] {
    let value = |index: usize| {
        let at = 4 * index;
        f64::from(f32::from_le_bytes([triangle[at], triangle[at + 1], triangle[at + 2], triangle[at + 3]]))
    };
    [3, 6, 9].map(|first| [value(first), value(first + 1), value(first + 2)])
}

fn ascii(bytes: &[u8]) -> Result<Vec<Reading>, MeasuredError> {
    let text =
        std::str::from_utf8(bytes).map_err(|_| MeasuredError::NotStl { detail: "neither text nor binary".into() })?;
    let mut readings = Vec::new();
    for (index, line) in text.lines().enumerate() {
        let Some(rest) = line.trim_start().strip_prefix("vertex") else { continue };
        let mut reading = [0.0; 3];
        let mut cells = rest.split_whitespace();
        for (column, value) in reading.iter_mut().enumerate() {
            let cell = cells.next().unwrap_or_default();
            *value = cell.parse().map_err(|_| MeasuredError::NotANumber {
                line: index + 1,
                column: column + 2,
                found: cell.chars().take(40).collect(),
            })?;
        }
        readings.push(reading);
    }
    if !text.trim_end().rsplit('\n').next().unwrap_or_default().trim_start().starts_with("endsolid") {
        return Err(MeasuredError::NotStl { detail: "the text ends before endsolid".into() });
    }
    Ok(readings)
}
