//! Smooth outlines from few points, written as SVG path data.

/// A point of an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downwards, once a figure is placed; upwards while it is read.
    pub y: f64,
    /// The outline turns sharply here.
    pub corner: bool,
}

impl Point {
    /// A point on a smooth stretch.
    #[must_use]
    pub fn smooth(x: f64, y: f64) -> Self {
        Self {
            x,
            y,
            corner: false,
        }
    }

    /// A corner.
    #[must_use]
    pub fn corner(x: f64, y: f64) -> Self {
        Self { x, y, corner: true }
    }
}

/// Appends a number with at most `digits` decimals, without trailing zeros.
pub fn push_number(out: &mut String, value: f64, digits: u32) {
    let scale = match digits {
        0 => 1.0,
        1 => 10.0,
        2 => 100.0,
        _ => 1000.0,
    };
    // Beyond this nothing on a screen can be meant; it also keeps NaN out.
    let limited = if value.is_nan() {
        0.0
    } else {
        value.clamp(-1e6, 1e6)
    };
    let whole = (limited * scale).round() as i64;
    if whole < 0 {
        out.push('-');
    }
    let whole = whole.unsigned_abs();
    let scale = scale as u64;
    push_unsigned(out, whole / scale);
    let mut rest = whole % scale;
    if rest > 0 {
        out.push('.');
        let mut unit = scale / 10;
        while rest > 0 {
            out.push(char::from(b'0' + u8::try_from(rest / unit).unwrap_or(0)));
            rest %= unit;
            unit = (unit / 10).max(1);
        }
    }
}

fn push_unsigned(out: &mut String, value: u64) {
    let mut digits = [0u8; 20];
    let mut at = digits.len();
    let mut left = value;
    loop {
        at -= 1;
        digits[at] = b'0' + u8::try_from(left % 10).unwrap_or(0);
        left /= 10;
        if left == 0 {
            break;
        }
    }
    for digit in &digits[at..] {
        out.push(char::from(*digit));
    }
}

/// Appends `x y` with `digits` decimals after a command letter.
pub fn push_pair(out: &mut String, command: char, x: f64, y: f64, digits: u32) {
    out.push(command);
    push_number(out, x, digits);
    out.push(' ');
    push_number(out, y, digits);
}

/// The way an outline runs at a point: that of the circle through it and its neighbours, for
/// which the nearer neighbour counts more.
fn direction(points: &[Point], at: usize) -> (f64, f64) {
    let n = points.len();
    let here = points[at];
    if here.corner {
        return (0.0, 0.0);
    }
    let (before, after) = (points[(at + n - 1) % n], points[(at + 1) % n]);
    let (ax, ay) = (here.x - before.x, here.y - before.y);
    let (bx, by) = (after.x - here.x, after.y - here.y);
    let (a, b) = (ax * ax + ay * ay, bx * bx + by * by);
    let (dx, dy) = (ax * b + bx * a, ay * b + by * a);
    let length = libm::hypot(dx, dy);
    if length > 0.0 {
        (dx / length, dy / length)
    } else {
        (0.0, 0.0)
    }
}

/// Appends a closed outline through `points`: cubic Bézier curves that follow a circle where
/// the points lie on one; straight into corners.
///
/// An arc that turns by θ over a chord c has handles of ⅔·c/(1 + cos ½θ), and ½θ lies between
/// chord and tangent.
pub fn push_outline(out: &mut String, points: &[Point], digits: u32) {
    let n = points.len();
    if n < 3 {
        return;
    }
    push_pair(out, 'M', points[0].x, points[0].y, digits);
    for i in 0..n {
        let (a, b) = (points[i], points[(i + 1) % n]);
        let (cx, cy) = (b.x - a.x, b.y - a.y);
        let chord = libm::hypot(cx, cy).max(f64::MIN_POSITIVE);
        let handle = |at: usize| {
            let (x, y) = direction(points, at);
            let cosine = ((x * cx + y * cy) / chord).max(0.0);
            let length = chord * 2.0 / (3.0 * (1.0 + cosine));
            (x * length, y * length)
        };
        let (from, to) = (handle(i), handle((i + 1) % n));
        push_pair(out, 'C', a.x + from.0, a.y + from.1, digits);
        push_pair(out, ' ', b.x - to.0, b.y - to.1, digits);
        push_pair(out, ' ', b.x, b.y, digits);
    }
    out.push('Z');
}

/// The outline of a limb: a centre line of (x, y, half width) with square ends.
#[must_use]
pub fn limb_outline(line: &[(f64, f64, f64)]) -> Vec<Point> {
    let n = line.len();
    if n < 2 {
        return Vec::new();
    }
    let mut left = Vec::with_capacity(2 * n);
    let mut right = Vec::with_capacity(n);
    for i in 0..n {
        let before = line[i.saturating_sub(1)];
        let after = line[(i + 1).min(n - 1)];
        let (dx, dy) = (after.0 - before.0, after.1 - before.1);
        let length = libm::hypot(dx, dy).max(f64::MIN_POSITIVE);
        let (x, y, half) = line[i];
        let (nx, ny) = (-dy / length * half, dx / length * half);
        let corner = i == 0 || i == n - 1;
        left.push(Point {
            x: x + nx,
            y: y + ny,
            corner,
        });
        right.push(Point {
            x: x - nx,
            y: y - ny,
            corner,
        });
    }
    left.extend(right.into_iter().rev());
    left
}

/// Area of the polygon through `points`, never negative, in the square of their unit.
#[must_use]
pub fn area(points: &[Point]) -> f64 {
    let n = points.len();
    let twice: f64 = (0..n)
        .map(|i| {
            let (a, b) = (points[i], points[(i + 1) % n]);
            a.x * b.y - b.x * a.y
        })
        .sum();
    0.5 * twice.abs()
}

/// Length of the closed polygon through `points`, in their unit.
#[must_use]
pub fn perimeter(points: &[Point]) -> f64 {
    let n = points.len();
    (0..n)
        .map(|i| {
            let (a, b) = (points[i], points[(i + 1) % n]);
            libm::hypot(b.x - a.x, b.y - a.y)
        })
        .sum()
}

/// Appends a full circle as two arcs.
pub fn push_circle(out: &mut String, x: f64, y: f64, radius: f64, digits: u32) {
    push_pair(out, 'M', x - radius, y, digits);
    for end in [x + radius, x - radius] {
        out.push('A');
        push_number(out, radius, digits);
        out.push(' ');
        push_number(out, radius, digits);
        out.push_str(" 0 1 1");
        push_pair(out, ' ', end, y, digits);
    }
    out.push('Z');
}

/// Appends an upright rectangle.
pub fn push_rectangle(out: &mut String, left: f64, top: f64, width: f64, height: f64, digits: u32) {
    push_pair(out, 'M', left, top, digits);
    out.push('h');
    push_number(out, width, digits);
    out.push('v');
    push_number(out, height, digits);
    out.push('h');
    push_number(out, -width, digits);
    out.push('Z');
}

#[cfg(test)]
mod tests {
    use super::*;

    fn number(value: f64, digits: u32) -> String {
        let mut out = String::new();
        push_number(&mut out, value, digits);
        out
    }

    #[test]
    fn numbers_are_short_and_right() {
        assert_eq!(number(0.0, 2), "0");
        assert_eq!(number(-0.004, 2), "0");
        assert_eq!(number(1.5, 2), "1.5");
        assert_eq!(number(-12.345, 2), "-12.35");
        assert_eq!(number(3.005, 3), "3.005");
        assert_eq!(number(100.0, 2), "100");
        assert_eq!(number(f64::NAN, 2), "0");
        assert_eq!(number(f64::INFINITY, 2), "1000000");
    }

    #[test]
    fn a_square_has_its_area_and_perimeter() {
        let square = [
            Point::corner(0.0, 0.0),
            Point::corner(2.0, 0.0),
            Point::corner(2.0, 2.0),
            Point::corner(0.0, 2.0),
        ];
        assert_eq!(area(&square), 4.0);
        assert_eq!(perimeter(&square), 8.0);
    }

    #[test]
    fn four_points_of_a_circle_make_a_circle() {
        let mut path = String::new();
        let ring = [(-1.0, 0.0), (0.0, 1.0), (1.0, 0.0), (0.0, -1.0)];
        push_outline(&mut path, &ring.map(|(x, y)| Point::smooth(x, y)), 3);
        // The usual constant of four Bézier curves: 4/3·(√2 − 1) = 0.5523.
        assert!(path.starts_with("M-1 0C-1 0.552 -0.552 1 0 1"), "{path}");
    }

    #[test]
    fn a_limb_is_as_wide_as_it_says() {
        let outline = limb_outline(&[(0.0, 0.0, 1.0), (10.0, 0.0, 1.0)]);
        assert!((area(&outline) - 20.0).abs() < 1e-12);
    }
}
