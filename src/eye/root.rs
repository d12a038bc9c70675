//! One bracketing root finder for this room.

/// The root of `f` between `low` and `high`, found by secants with a bisection in every
/// third step.
///
/// `f(low)` and `f(high)` differ in sign; if they do not, the end with the smaller
/// absolute value is returned.
pub(crate) fn bracketed(low: f64, high: f64, tolerance: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa == 0.0 {
        return a;
    }
    if fb == 0.0 {
        return b;
    }
    if (fa > 0.0) == (fb > 0.0) {
        return if fa.abs() < fb.abs() { a } else { b };
    }
    // Halve once in every three steps, so that a bent curve cannot stall the secant.
    for step in 0..200 {
        if (b - a).abs() <= tolerance {
            break;
        }
        let x = if step % 3 == 2 {
            0.5 * (a + b)
        } else {
            let secant = b - fb * (b - a) / (fb - fa);
            // Keep away from the ends: a secant that lands on one gains nothing.
            let nudge = 0.25 * tolerance;
            secant.clamp(a.min(b) + nudge, a.max(b) - nudge)
        };
        let fx = f(x);
        if fx == 0.0 {
            return x;
        }
        if (fx > 0.0) == (fa > 0.0) {
            a = x;
            fa = fx;
        } else {
            b = x;
            fb = fx;
        }
    }
    if fa.abs() < fb.abs() { a } else { b }
}
