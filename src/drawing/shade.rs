//! The shadow in a sight's picture when the eye is not where the beam is.

use core::f64::consts::PI;

/// The share of the light that enters when beam and pupil are `apart_mm` apart, over the
/// share when both are centred: the area in which the two discs overlap over the smaller one.
///
/// # Validity
/// Round discs, evenly lit; positive diameters.
///
/// # Source
/// Geometry of two discs.
#[must_use]
pub fn share_entering(exit_pupil_mm: f64, eye_pupil_mm: f64, apart_mm: f64) -> f64 {
    let (a, b) = (0.5 * exit_pupil_mm, 0.5 * eye_pupil_mm);
    let x = apart_mm.abs();
    if !(a > 0.0 && b > 0.0) || x >= a + b {
        return 0.0;
    }
    if x <= (a - b).abs() {
        return 1.0;
    }
    let segment = |radius: f64, chord: f64| {
        let d = (chord / radius).clamp(-1.0, 1.0);
        radius * radius * (libm::acos(d) - d * (1.0 - d * d).sqrt())
    };
    let chord = (x * x + a * a - b * b) / (2.0 * x);
    let overlap = segment(a, chord) + segment(b, x - chord);
    let least = a.min(b);
    (overlap / (PI * least * least)).min(1.0)
}

/// How the shadow lies over the picture.
#[derive(Clone, Debug, PartialEq)]
pub enum Shade {
    /// No part of the field is darker than it would be.
    None,
    /// All of the field is darker alike: this share of the light is left.
    Even(f64),
    /// Shares of the light fall along rings round a point.
    Rings {
        /// That point, in px from the middle of the field to the right.
        centre_px: f64,
        /// From here outwards all is black, in px.
        black_px: f64,
        /// Share of `black_px`, and the share of the light that is left there.
        stops: [(f64, f64); STOPS],
    },
}

/// Points at which a shadow's course is stated.
pub const STOPS: usize = 9;
/// Nearer than this to the eye point the whole field darkens alike, in mm.
const AT_EYE_POINT_MM: f64 = 0.05;

/// Where an eye stands, and what beam it meets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stance {
    /// Diameter of the exit pupil in mm.
    pub exit_pupil_mm: f64,
    /// Diameter of the eye's pupil in mm.
    pub eye_pupil_mm: f64,
    /// Apparent field (full angle) in degrees.
    pub apparent_field_deg: f64,
    /// Off the axis in mm, positive to the right.
    pub aside_mm: f64,
    /// Behind the eye point in mm; negative is too near.
    pub behind_mm: f64,
}

impl Stance {
    fn edge_tangent(&self) -> f64 {
        libm::tan(0.5 * self.apparent_field_deg * PI / 180.0)
    }

    /// The share of the light that is left at a place of the field, −1 at its left edge and
    /// 1 at its right.
    ///
    /// The beam that comes from an apparent angle ω runs towards the other side: z behind the
    /// eye point its middle lies at −z·tan ω, the eye at x, so that both are x + z·tan ω apart.
    ///
    /// # Validity
    /// The eye looks at the middle; the exit pupil is free of aberrations.
    #[must_use]
    pub fn share_at(&self, place: f64) -> f64 {
        let apart = self.aside_mm + self.behind_mm * place * self.edge_tangent();
        share_entering(self.exit_pupil_mm, self.eye_pupil_mm, apart)
    }

    /// The share of the light that is left, averaged over the field.
    #[must_use]
    pub fn mean_share(&self) -> f64 {
        // Rings of equal area, twelve places on each.
        let mut sum = 0.0;
        for ring in 0..8 {
            let r = ((f64::from(ring) + 0.5) / 8.0).sqrt();
            for step in 0..12 {
                let at = f64::from(step) * PI / 6.0;
                let tangent = self.behind_mm * r * self.edge_tangent();
                let (x, y) = (
                    self.aside_mm + tangent * libm::cos(at),
                    tangent * libm::sin(at),
                );
                sum += share_entering(self.exit_pupil_mm, self.eye_pupil_mm, libm::hypot(x, y));
            }
        }
        sum / 96.0
    }

    /// The shadow over a field of `field_px` across.
    #[must_use]
    pub fn shade(&self, field_px: f64) -> Shade {
        let full_mm = 0.5 * (self.exit_pupil_mm - self.eye_pupil_mm).abs();
        let gone_mm = 0.5 * (self.exit_pupil_mm + self.eye_pupil_mm);
        let edge_mm = self.behind_mm.abs() * self.edge_tangent();
        if self.aside_mm.abs() + edge_mm <= full_mm {
            return Shade::None;
        }
        if self.behind_mm.abs() < AT_EYE_POINT_MM {
            return Shade::Even(share_entering(
                self.exit_pupil_mm,
                self.eye_pupil_mm,
                self.aside_mm,
            ));
        }
        let px_per_mm = 0.5 * field_px / edge_mm;
        let from = full_mm / gone_mm;
        let stops = core::array::from_fn(|n| {
            let at = from + (1.0 - from) * n as f64 / (STOPS - 1) as f64;
            let share = share_entering(self.exit_pupil_mm, self.eye_pupil_mm, at * gone_mm);
            (at, share)
        });
        Shade::Rings {
            centre_px: -self.aside_mm / self.behind_mm * 0.5 * field_px / self.edge_tangent(),
            black_px: gone_mm * px_per_mm,
            stops,
        }
    }
}
