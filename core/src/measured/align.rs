//! Laying a scan into the top's frame by its own shape.

use super::{MeasuredError, Reading, check_length};

/// A top's height over its length is some 0.05; with ribs and back it is 0.17, with the neck 0.13 and more.
const MOST_HEIGHT_SHARE: f64 = 0.11;
/// Strips in which a scan's width and middle are taken.
const STRIPS: usize = 60;
/// Rounds of straightening; each leaves a few hundredths of the tilt before.
const ROUNDS: usize = 6;

/// What the maker puts right after seeing how readings were laid.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Correction {
    /// The neck end is where the bottom was taken to be.
    pub end_for_end: bool,
    /// The outside is where the inside was taken to be.
    pub upside_down: bool,
    /// Bass and treble side are exchanged.
    pub mirrored: bool,
    /// Turn about the middle of the length, counter-clockwise seen from outside, degrees.
    pub turn_deg: f64,
    /// Shift across, along and up, mm.
    pub shift_mm: [f64; 3],
}

impl Correction {
    /// Puts readings right that were given in the frame of a top of this length: about the middle of the length and the plane
    /// of the ribs.
    pub fn apply(&self, readings: &mut [Reading], length_mm: f64) {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        let sign = |turned: bool| if turned { -1.0 } else { 1.0 };
        let (end, down, mirror) = (sign(self.end_for_end), sign(self.upside_down), sign(self.mirrored));
        let middle = 0.5 * length_mm;
        for reading in readings {
            let [x, y] = [mirror * down * end * reading[0], end * (reading[1] - middle)];
            let turned = [cos * x - sin * y, sin * x + cos * y + middle, down * reading[2]];
            *reading = [0, 1, 2].map(|k| turned[k] + self.shift_mm[k]);
        }
    }
}

/// How a scan was laid: point in the frame = turn times point of the scan + shift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alignment {
    /// (frame xyz, scan xyz), a rotation, with a mirror in x where the maker asked for it.
    pub turn: [[f64; 3]; 3],
    /// (frame xyz), mm.
    pub shift_mm: [f64; 3],
}

impl Alignment {
    /// Finds how a scan of a top's outside lies: its longest extent is y, the next x, the least z; outside is where the
    /// middle stands above the rim, the bottom where it is wider; then the rim is laid level at the edge's height and the
    /// middles of its strips on the centreline, its ends as far from the middle of the length. Corrections go on top.
    ///
    /// # Errors
    /// [`MeasuredError`] for a scan in inches, or of more than a top.
    pub fn find(
        readings: &[Reading],
        length_mm: f64,
        edge_height_mm: f64,
        correction: &Correction,
    ) -> Result<Alignment, MeasuredError> {
        let mut frame = Frame::by_extents(readings);
        let (length, height) = (frame.extent(readings, 1), frame.extent(readings, 2));
        check_length(length)?;
        if height > MOST_HEIGHT_SHARE * length {
            let most_mm = MOST_HEIGHT_SHARE * length;
            return Err(MeasuredError::WholeInstrument { height_mm: height, length_mm: length, most_mm });
        }
        if frame.rim(readings).stands_above_middle != correction.upside_down {
            frame.turn(0, 2);
        }
        for _ in 0..ROUNDS {
            frame.straighten(readings);
        }
        if frame.rim(readings).wider_at_top != correction.end_for_end {
            frame.turn(0, 1);
        }
        let rim = frame.rim(readings);
        let middle = 0.5 * length_mm;
        let (sin, cos) = correction.turn_deg.to_radians().sin_cos();
        let mirror = if correction.mirrored { -1.0 } else { 1.0 };
        // About the middle of the length on the centreline, where the scan's own middles lie.
        let laid = [-mirror * rim.middle, -rim.centre, edge_height_mm - rim.height];
        let [x, y, z] = frame.axes;
        let x = x.map(|value| mirror * value);
        let turned = |a: f64, b: f64| [cos * a - sin * b, sin * a + cos * b];
        let shift = turned(laid[0], laid[1]);
        let by = correction.shift_mm;
        let turn = [0, 1, 2].map(|k| turned(x[k], y[k]));
        Ok(Alignment {
            turn: [turn.map(|row| row[0]), turn.map(|row| row[1]), z],
            shift_mm: [shift[0] + by[0], shift[1] + middle + by[1], laid[2] + by[2]],
        })
    }

    /// The readings in the top's frame.
    pub fn apply(&self, readings: &mut [Reading]) {
        for reading in readings {
            *reading = [0, 1, 2].map(|k| dot(self.turn[k], *reading) + self.shift_mm[k]);
        }
    }
}

/// Axes of the top in the scan's coordinates: x, y, z.
struct Frame {
    axes: [[f64; 3]; 3],
}

/// What a scan's rim tells, in a frame.
struct Rim {
    /// Rim points: (x, y, z).
    points: Vec<Reading>,
    middle: f64,
    /// Slope of the strips' middles, dx by dy.
    yaw: f64,
    /// Midway between its ends.
    centre: f64,
    height: f64,
    stands_above_middle: bool,
    wider_at_top: bool,
}

impl Frame {
    /// By the points' principal axes.
    fn by_extents(readings: &[Reading]) -> Frame {
        let n = readings.len() as f64;
        let mean = [0, 1, 2].map(|k| readings.iter().map(|r| r[k]).sum::<f64>() / n);
        let mut spread = nalgebra::Matrix3::<f64>::zeros();
        for reading in readings {
            for i in 0..3 {
                for j in 0..3 {
                    spread[(i, j)] += (reading[i] - mean[i]) * (reading[j] - mean[j]);
                }
            }
        }
        let eigen = spread.symmetric_eigen();
        let mut order = [0, 1, 2];
        order.sort_by(|&a, &b| eigen.eigenvalues[b].total_cmp(&eigen.eigenvalues[a]));
        let axis = |which: usize| [0, 1, 2].map(|k| eigen.eigenvectors[(k, which)]);
        let (y, x) = (axis(order[0]), axis(order[1]));
        Frame { axes: [x, y, cross(x, y)] }
    }

    /// Half a turn: two axes change their direction.
    fn turn(&mut self, first: usize, second: usize) {
        for axis in [first, second] {
            self.axes[axis] = self.axes[axis].map(|v| -v);
        }
    }

    fn extent(&self, readings: &[Reading], axis: usize) -> f64 {
        let values = readings.iter().map(|&r| dot(self.axes[axis], r));
        values.clone().fold(f64::NEG_INFINITY, f64::max) - values.fold(f64::INFINITY, f64::min)
    }

    /// The outermost point on both sides of every strip across and along.
    fn rim(&self, readings: &[Reading]) -> Rim {
        let place = |r: Reading| self.axes.map(|axis| dot(axis, r));
        let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
        let mut mean_height = 0.0;
        for &reading in readings {
            let p = place(reading);
            mean_height += p[2] / readings.len() as f64;
            for k in 0..3 {
                low[k] = low[k].min(p[k]);
                high[k] = high[k].max(p[k]);
            }
        }
        let mut ends: [Vec<Option<[Reading; 2]>>; 2] = [vec![None; STRIPS], vec![None; STRIPS]];
        for &reading in readings {
            let p = place(reading);
            for (across, strips) in ends.iter_mut().enumerate() {
                // Strips across are numbered along y and bounded by x, and the other way round.
                let (number, bound) = if across == 0 { (1, 0) } else { (0, 1) };
                let share = (p[number] - low[number]) / (high[number] - low[number]);
                let strip = ((share * STRIPS as f64) as usize).min(STRIPS - 1);
                let found = strips[strip].get_or_insert([p, p]);
                if p[bound] < found[0][bound] {
                    found[0] = p;
                }
                if p[bound] > found[1][bound] {
                    found[1] = p;
                }
            }
        }
        let rows: Vec<[Reading; 2]> = ends[0].iter().copied().flatten().collect();
        let middles: Vec<[f64; 2]> = rows.iter().map(|[a, b]| [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])]).collect();
        let count = middles.len() as f64;
        let mean = [0, 1].map(|k| middles.iter().map(|m| m[k]).sum::<f64>() / count);
        let slope = middles.iter().map(|m| (m[0] - mean[0]) * (m[1] - mean[1])).sum::<f64>()
            / middles.iter().map(|m| (m[1] - mean[1]).powi(2)).sum::<f64>().max(f64::MIN_POSITIVE);
        let width =
            |from: usize, to: usize| ends[0][from..to].iter().flatten().map(|[a, b]| b[0] - a[0]).fold(0.0, f64::max);
        let points: Vec<Reading> = rows.into_iter().chain(ends[1].iter().copied().flatten()).flatten().collect();
        let height = points.iter().map(|p| p[2]).sum::<f64>() / points.len() as f64;
        Rim {
            middle: mean[0],
            yaw: slope,
            centre: 0.5 * (low[1] + high[1]),
            height,
            stands_above_middle: height > mean_height,
            wider_at_top: width(STRIPS / 2, STRIPS) > width(0, STRIPS / 2),
            points,
        }
    }

    /// Levels the rim and lays the strips' middles along y.
    fn straighten(&mut self, readings: &[Reading]) {
        let rim = self.rim(readings);
        let n = rim.points.len() as f64;
        let mean = [0, 1, 2].map(|k| rim.points.iter().map(|p| p[k]).sum::<f64>() / n);
        let moment = |i: usize, j: usize| rim.points.iter().map(|p| (p[i] - mean[i]) * (p[j] - mean[j])).sum::<f64>();
        // The plane z = b x + c y through the rim.
        let (xx, xy, yy, xz, yz) = (moment(0, 0), moment(0, 1), moment(1, 1), moment(0, 2), moment(1, 2));
        let det = (xx * yy - xy * xy).max(f64::MIN_POSITIVE);
        let (b, c) = ((xz * yy - yz * xy) / det, (yz * xx - xz * xy) / det);
        let [x, y, z] = self.axes;
        let up = unit([0, 1, 2].map(|k| z[k] - b * x[k] - c * y[k]));
        let along = [0, 1, 2].map(|k| y[k] + rim.yaw * x[k]);
        let off = dot(along, up);
        let along = unit([0, 1, 2].map(|k| along[k] - off * up[k]));
        self.axes = [cross(along, up), along, up];
    }
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn unit(a: [f64; 3]) -> [f64; 3] {
    let length = dot(a, a).sqrt();
    if length > 0.0 { a.map(|v| v / length) } else { a }
}
