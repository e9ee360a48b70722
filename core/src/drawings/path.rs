//! SVG path data.

use crate::plan::{Piece, Point};

/// Points nearer than this to the last kept one are left out of a smooth line, unless it turns by more than
/// `LEAST_TURN_RAD` from there on: the cubics between then stray by less than 0.02 mm from an arc of that turn, and a
/// line takes a fifth of the text.
const LONGEST_STEP_MM: f64 = 12.0;
const LEAST_TURN_RAD: f64 = 0.2;

/// Path data under way.
#[derive(Default)]
pub(super) struct Path {
    text: String,
}

impl Path {
    /// The finished text.
    pub(super) fn text(self) -> String {
        self.text
    }

    /// Straight from point to point.
    pub(super) fn polyline(mut self, points: &[Point], closed: bool) -> Path {
        for (i, &p) in points.iter().enumerate() {
            self.command(if i == 0 { 'M' } else { 'L' }, &[p]);
        }
        self.close(closed)
    }

    /// Plan pieces laid end to end, exact but for rounding: arcs stay arcs.
    pub(super) fn pieces(mut self, pieces: &[Piece]) -> Path {
        if let Some(first) = pieces.first() {
            self.command('M', &[on_sheet(first.start())]);
        }
        for piece in pieces {
            let end = on_sheet(piece.end());
            match piece {
                Piece::Line(_) => self.command('L', &[end]),
                Piece::Cubic(cubic) => self.command('C', &[1, 2, 3].map(|i| on_sheet(cubic.control[i]))),
                Piece::Arc(arc) => {
                    self.text.push('A');
                    self.number(arc.radius_mm);
                    self.number(arc.radius_mm);
                    // Counter-clockwise in plan is SVG's negative direction on the sheet, whose v points down.
                    let long = u8::from(arc.sweep_rad.abs() > std::f64::consts::PI);
                    let clockwise = u8::from(arc.sweep_rad < 0.0);
                    self.text.push_str(&format!("0 {long} {clockwise} "));
                    self.point(end);
                }
            }
        }
        self.close(true)
    }

    /// A smooth line through points that lie close on a smooth curve.
    pub(super) fn smooth(mut self, points: &[Point], closed: bool) -> Path {
        let kept = thinned(points, closed);
        let count = kept.len();
        let Some(&first) = kept.first() else {
            return self;
        };
        let at = |i: usize| kept[i % count];
        let tangent = |i: usize| -> Point {
            let here = at(i);
            let before = if i > 0 || closed { at(i + count - 1) } else { here };
            let after = if i + 1 < count || closed { at(i + 1) } else { here };
            let (b, a) = (span(before, here), span(here, after));
            // The parabola through three points has at the middle one the mean of both chords' directions, each weighted
            // with the other's length; at an end only one chord is there.
            [0, 1].map(|k| {
                let (in_, out) = (here[k] - before[k], after[k] - here[k]);
                if b == 0.0 {
                    out / a.max(f64::MIN_POSITIVE)
                } else if a == 0.0 {
                    in_ / b
                } else {
                    (in_ / b * a + out / a * b) / (a + b)
                }
            })
        };
        self.command('M', &[first]);
        for i in 0..if closed { count } else { count - 1 } {
            let (p, q) = (at(i), at(i + 1));
            let third = span(p, q) / 3.0;
            let (tp, tq) = (tangent(i), tangent((i + 1) % count));
            let c1 = [p[0] + tp[0] * third, p[1] + tp[1] * third];
            let c2 = [q[0] - tq[0] * third, q[1] - tq[1] * third];
            self.command('C', &[c1, c2, q]);
        }
        self.close(closed)
    }

    fn command(&mut self, letter: char, points: &[Point]) {
        self.text.push(letter);
        for &p in points {
            self.point(p);
        }
    }

    fn point(&mut self, p: Point) {
        self.number(p[0]);
        self.number(p[1]);
    }

    /// Hundredths of a millimetre, which a cutter or printer can't resolve; written without the formatter of floats,
    /// which takes most of the time otherwise.
    fn number(&mut self, value: f64) {
        let hundredths = (value * 100.0).round() as i64;
        if hundredths < 0 {
            self.text.push('-');
        }
        let (whole, rest) = (hundredths.unsigned_abs() / 100, hundredths.unsigned_abs() % 100);
        self.text.push_str(&whole.to_string());
        if rest > 0 {
            self.text.push('.');
            self.text.push(char::from(b'0' + (rest / 10) as u8));
            if !rest.is_multiple_of(10) {
                self.text.push(char::from(b'0' + (rest % 10) as u8));
            }
        }
        self.text.push(' ');
    }

    fn close(mut self, closed: bool) -> Path {
        if closed {
            self.text.push('Z');
        }
        self
    }
}

/// A place in plan on the sheet of the plan.
pub(super) fn on_sheet(p: Point) -> Point {
    [p[0], -p[1]]
}

fn span(p: Point, q: Point) -> f64 {
    (q[0] - p[0]).hypot(q[1] - p[1])
}

/// The points that a smooth line needs: first and last, and of those between as many as its turns ask for.
fn thinned(points: &[Point], closed: bool) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    let (mut length, mut turn) = (0.0, 0.0);
    for (i, &p) in points.iter().enumerate() {
        let before = i.checked_sub(1).map(|j| points[j]);
        let after = points.get(i + 1).copied();
        if let (Some(before), Some(after)) = (before, after) {
            let (a, b) = ([p[0] - before[0], p[1] - before[1]], [after[0] - p[0], after[1] - p[1]]);
            length += span(before, p);
            turn += (a[0] * b[1] - a[1] * b[0]).atan2(a[0] * b[0] + a[1] * b[1]).abs();
            if length < LONGEST_STEP_MM && turn < LEAST_TURN_RAD {
                continue;
            }
        }
        // A crossing of two lattice lines gives two points at one place; only one of them has a direction to the next.
        if kept.last().is_none_or(|&last| span(last, p) > 0.5) {
            kept.push(p);
            (length, turn) = (0.0, 0.0);
        }
    }
    if closed && kept.len() > 1 && span(kept[0], kept[kept.len() - 1]) <= 0.5 {
        kept.pop();
    }
    kept
}
