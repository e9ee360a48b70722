//! Arithmetic of plan points and vectors.

use super::Point;

/// a + b.
pub fn add(a: Point, b: Point) -> Point {
    [a[0] + b[0], a[1] + b[1]]
}

/// a - b.
pub fn sub(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1]]
}

/// a times s.
pub fn scale(a: Point, s: f64) -> Point {
    [a[0] * s, a[1] * s]
}

/// a + s b.
pub fn along(a: Point, b: Point, s: f64) -> Point {
    [a[0] + b[0] * s, a[1] + b[1] * s]
}

/// a . b.
pub fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

/// z of a x b: positive when b lies to the left of a.
pub fn cross(a: Point, b: Point) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

/// Length of a.
pub fn norm(a: Point) -> f64 {
    // Plan lengths neither overflow nor vanish when squared, and `hypot` costs ten times as much in wasm.
    (a[0] * a[0] + a[1] * a[1]).sqrt()
}

/// Distance between a and b.
pub fn distance(a: Point, b: Point) -> f64 {
    norm(sub(a, b))
}

/// a over its length; a zero vector stays zero.
pub fn unit(a: Point) -> Point {
    let length = norm(a);
    if length > 0.0 { scale(a, 1.0 / length) } else { a }
}

/// a turned a quarter turn counter-clockwise.
pub fn left_of(a: Point) -> Point {
    [-a[1], a[0]]
}

/// Unit vector at an angle from +x, counter-clockwise.
pub fn direction(angle_rad: f64) -> Point {
    [angle_rad.cos(), angle_rad.sin()]
}

/// a turned counter-clockwise by an angle.
pub fn turned(a: Point, angle_rad: f64) -> Point {
    let (sin, cos) = angle_rad.sin_cos();
    [a[0] * cos - a[1] * sin, a[0] * sin + a[1] * cos]
}

/// The mirror image of a across the centreline x = 0.
pub fn mirrored(a: Point) -> Point {
    [-a[0], a[1]]
}

/// Lowest x and y, and highest x and y; infinite the wrong way round where there are no points.
pub fn bounds(points: impl IntoIterator<Item = Point>) -> (Point, Point) {
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for p in points {
        for k in 0..2 {
            low[k] = low[k].min(p[k]);
            high[k] = high[k].max(p[k]);
        }
    }
    (low, high)
}

/// The same box, larger by `margin` on every side.
pub fn widened((low, high): (Point, Point), margin: f64) -> (Point, Point) {
    (low.map(|value| value - margin), high.map(|value| value + margin))
}
