//! The path of a traced hole as a design keeps it: absolute M, L, Q, C and Z of SVG's path data (SVG 1.1, section 8.3), numbers
//! as JSON has them.
//!
//! What a drawing may say besides (relative commands, arcs, shorthands) is written so when it is read in
//! ([`TracedHole::of_svg_path`](crate::design::TracedHole::of_svg_path)). Reading all of it here, with the standard library's reader of numbers, took 14 kB of the first load.

use crate::plan::{Cubic, Line, Piece, Point};

/// The lines of a path, each from its M on, y upwards; what it holds instead where it can't be read.
pub(super) fn parts(path: &str) -> Result<Vec<Vec<Piece>>, String> {
    let mut parts: Vec<Vec<Piece>> = Vec::new();
    let mut at: Point = [0.0; 2];
    let mut reader = Reader { rest: path };
    let mut command = None;
    while let Some(next) = reader.command(command)? {
        command = Some(next);
        let Some(part) = parts.last_mut() else {
            if next != 'M' {
                return Err(format!("it begins with {next}"));
            }
            at = reader.point()?;
            parts.push(Vec::new());
            continue;
        };
        match next {
            'M' => {
                at = reader.point()?;
                parts.push(Vec::new());
                continue;
            }
            'L' => {
                let end = reader.point()?;
                part.push(Piece::Line(Line { start: at, end }));
            }
            'Q' => {
                let [control, end] = [reader.point()?, reader.point()?];
                // A parabola's arc as a cubic: its handles reach two thirds of the way to the control point.
                let towards = |from: Point| [0, 1].map(|k| from[k] + 2.0 / 3.0 * (control[k] - from[k]));
                part.push(Piece::Cubic(Cubic { control: [at, towards(at), towards(end), end] }));
            }
            'C' => {
                let control = [at, reader.point()?, reader.point()?, reader.point()?];
                part.push(Piece::Cubic(Cubic { control }));
            }
            _ => continue,
        }
        at = part.last().map_or(at, Piece::end);
    }
    Ok(parts)
}

struct Reader<'a> {
    rest: &'a str,
}

impl Reader<'_> {
    /// The next command; `before` again where numbers follow without one. None at the end.
    fn command(&mut self, before: Option<char>) -> Result<Option<char>, String> {
        self.rest = self.rest.trim_start_matches(between);
        let Some(first) = self.rest.chars().next() else { return Ok(None) };
        if "MLQCZ".contains(first) {
            self.rest = &self.rest[1..];
            return Ok(Some(first));
        }
        match before {
            Some('M') if begins_a_number(first) => Ok(Some('L')),
            Some(command @ ('L' | 'Q' | 'C')) if begins_a_number(first) => Ok(Some(command)),
            _ => Err(format!("\"{}\"", self.rest.chars().take(20).collect::<String>())),
        }
    }

    /// SVG's y points down.
    fn point(&mut self) -> Result<Point, String> {
        Ok([self.number()?, -self.number()?])
    }

    fn number(&mut self) -> Result<f64, String> {
        self.rest = self.rest.trim_start_matches(between);
        let mut after_e = true;
        let end = self.rest.find(|c: char| {
            let goes_on =
                c.is_ascii_digit() || c == '.' || matches!(c, 'e' | 'E') || (after_e && matches!(c, '+' | '-'));
            after_e = matches!(c, 'e' | 'E');
            !goes_on
        });
        let (number, rest) = self.rest.split_at(end.unwrap_or(self.rest.len()));
        let value = serde_json::from_str(number).map_err(|_| {
            let found: String = self.rest.chars().take(20).collect();
            if found.is_empty() { "it ends early".into() } else { format!("\"{found}\" for a number") }
        })?;
        self.rest = rest;
        Ok(value)
    }
}

fn between(c: char) -> bool {
    c.is_ascii_whitespace() || c == ','
}

fn begins_a_number(c: char) -> bool {
    c.is_ascii_digit() || c == '-'
}
