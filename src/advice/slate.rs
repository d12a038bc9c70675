//! The occasions as columns of logarithms: what every need asks, once for all candidates.

use super::chance::Tables;
use super::needs::{aim, detail, mark, steady};
use super::occasions::Occasion;
use super::world::World;
use crate::eye;
use crate::sight::subtension::ARCMIN_PER_MRAD;
use crate::sight::{GlassGrade, fits};

/// Grades of glass in the order of their index.
pub const GRADES: [GlassGrade; 3] = [GlassGrade::Basic, GlassGrade::Good, GlassGrade::Best];

/// The columns; late occasions come first.
#[derive(Clone, Debug)]
pub struct Slate {
    /// Number of occasions.
    pub count: usize,
    /// How many of them, from the first on, are late.
    pub late: usize,
    /// log10 of the background luminance.
    pub log_light: Vec<f32>,
    /// What the light of the air and other light than twilight do to what must be told apart,
    /// as a shift of `log_light`.
    pub log_other_light: Vec<f32>,
    /// Pupil, mm.
    pub pupil_mm: Vec<f32>,
    /// log10 of the pupil.
    pub log_pupil: Vec<f32>,
    /// Decades of age over 23.
    pub decades: Vec<f32>,
    /// By grade: log10 of the veil factor.
    pub log_veil: [Vec<f32>; 3],
    /// log10 of the contrast, less the world's shift of the threshold.
    pub log_contrast: Vec<f32>,
    /// log10 of the patch's solid angle, sr.
    pub log_patch_sr: Vec<f32>,
    /// log10 of the detail's angle in arcminutes over its reserve.
    pub log_detail: Vec<f32>,
    /// Weight of the detail.
    pub detail_weight: Vec<f32>,
    /// log10 of the fineness of aiming in arcminutes.
    pub log_fineness: Vec<f32>,
    /// log10 of the needed field over the range.
    pub log_field_need: Vec<f32>,
    /// log10 of the magnification that the wobble leaves room for.
    pub log_room: Vec<f32>,
    /// 1 over the head's offset, 1/mm.
    pub per_offset: Vec<f32>,
    /// 1 over the circle, 1/mm.
    pub per_circle: Vec<f32>,
    /// Range, m.
    pub range_m: Vec<f32>,
    /// Mark: what makes it harder to see.
    pub log_harder: Vec<f32>,
    /// Mark: room for a line, log10 mrad.
    pub log_line_room: Vec<f32>,
    /// Mark: room for a dot, log10 mrad.
    pub log_dot_room: Vec<f32>,
    /// Light in a dim lit mark serves here, 0 to 1.
    pub dim_serves: Vec<f32>,
    /// Light in a bright lit mark serves here, 0 to 1.
    pub bright_serves: Vec<f32>,
    /// Largest of the two.
    pub both_serve: Vec<f32>,
    /// By grade: log10 of the transmission.
    pub log_transmission: [f32; 3],
}

/// Zero for the logarithm of nothing.
const LOG_NONE: f32 = 9.0;

impl Slate {
    /// The columns of occasions in a world.
    #[must_use]
    pub fn of(occasions: &[Occasion], world: &World, astigmatism: bool) -> Self {
        let column = |f: &dyn Fn(&Occasion) -> f64| -> Vec<f32> {
            occasions.iter().map(|o| f(o) as f32).collect()
        };
        let log = |x: f64| libm::log10(x.max(1e-12));
        let angle_arcmin = |mm: f64, range_m: f64| mm / range_m * ARCMIN_PER_MRAD;
        let glare: [f64; 3] = GRADES.map(|grade| fits::veiling_glare(grade).value * world.glare);
        let veil = |o: &Occasion, index: f64| {
            eye::veil::veil_factor(index + eye::veil::straylight_index(o.age_years), o.surround)
        };
        let lit = |lit, o: &Occasion| {
            mark::Mark {
                width: 1.0,
                dot: true,
                bars: 0.0,
                plane: crate::sight::FocalPlane::Second,
                lit,
            }
            .lit_share(o.luminance_cd_m2, astigmatism)
        };
        let covers = |o: &Occasion, still: f64| {
            let part = if o.moving { mark::MOVING_COVERS } else { still };
            log(part * o.covered_of_mm / o.range_m)
        };
        Self {
            count: occasions.len(),
            late: occasions.iter().filter(|o| o.late).count(),
            log_light: column(&|o| log(o.luminance_cd_m2)),
            log_other_light: column(&other_light_dex),
            pupil_mm: column(&|o| o.pupil_mm),
            log_pupil: column(&|o| log(o.pupil_mm)),
            decades: column(&|o| {
                let held = o
                    .age_years
                    .clamp(eye::person::HELD_BELOW_YEARS, eye::person::HELD_ABOVE_YEARS);
                (held - 23.0).max(0.0) / 10.0
            }),
            log_veil: glare.map(|index| column(&|o| log(veil(o, index)))),
            log_contrast: column(&|o| log(o.contrast) - world.threshold_dex),
            log_patch_sr: column(&|o| 2.0 * log(1e-3 * o.patch_mm / o.range_m)),
            log_detail: column(&|o| {
                if o.detail_mm > 0.0 {
                    log(angle_arcmin(o.detail_mm, o.range_m) / detail::RESERVE)
                } else {
                    f64::from(LOG_NONE)
                }
            }),
            detail_weight: column(&|o| o.detail_weight * detail::fade(o.luminance_cd_m2)),
            log_fineness: column(&|o| {
                let fine = aim::fineness_mm(
                    o.circle_mm,
                    o.moving,
                    o.luminance_cd_m2,
                    o.wobble_mrad,
                    o.range_m,
                );
                log(angle_arcmin(fine, o.range_m))
            }),
            log_field_need: column(&|o| log(o.field_m / o.range_m)),
            log_room: occasions
                .iter()
                .map(|o| steady::log_room(o.wobble_mrad))
                .collect(),
            per_offset: column(&|o| 1.0 / o.eye_offset_mm),
            per_circle: column(&|o| 1.0 / o.circle_mm),
            range_m: column(&|o| o.range_m),
            log_harder: column(&|o| {
                // A black line on a dark coat is seen by what the coat gives over the veil.
                let on_coat =
                    o.target_over_background / (o.target_over_background + veil(o, glare[1]) - 1.0);
                let glance = if o.moving { mark::GLANCE } else { 1.0 };
                log(glance) - 0.5 * log(on_coat.clamp(0.05, 1.0))
            }),
            log_line_room: column(&|o| covers(o, mark::LINE_COVERS)),
            log_dot_room: column(&|o| covers(o, mark::DOT_COVERS)),
            dim_serves: column(&|o| lit(crate::sight::Illumination::NightFine, o)),
            bright_serves: column(&|o| lit(crate::sight::Illumination::DayBright, o)),
            both_serve: column(&|o| lit(crate::sight::Illumination::Both, o)),
            log_transmission: GRADES
                .map(|grade| libm::log10(fits::transmission_day(grade).value) as f32),
        }
    }

    /// The half of the late occasions, or of the others.
    #[must_use]
    pub fn half(&self, late: bool) -> core::ops::Range<usize> {
        if late {
            0..self.late
        } else {
            self.late..self.count
        }
    }
}

/// By how much an occasion's light is worth more or less to this eye than as much twilight on
/// the ground alone, dex: the air adds its own, moonlight and lamps give the rods less.
///
/// # Accuracy
/// Exact for a pupil that is filled; 0.01 dex for a smaller beam.
fn other_light_dex(o: &Occasion) -> f64 {
    let twilight = eye::equivalent::TWILIGHT_SP_RATIO;
    let by_air = libm::log10(o.air_factor);
    if (o.sp_ratio - twilight).abs() < 1e-9 {
        return by_air;
    }
    let cones = o.luminance_cd_m2 * eye::aperture::cone_area_mm2(o.pupil_mm);
    let rods = o.luminance_cd_m2 * eye::aperture::rod_area_mm2(o.pupil_mm);
    let seen = |ratio: f64| eye::equivalent::laboratory_luminance(cones, ratio * rods).0;
    by_air + libm::log10(seen(o.sp_ratio) / seen(twilight))
}

/// log10 of the smallest angle told apart through a sight, arcminutes.
#[inline(always)]
#[must_use]
pub fn log_mar(
    tables: &Tables,
    log_light: f32,
    log_transmission: f32,
    log_exit_pupil: f32,
    log_pupil: f32,
) -> f32 {
    tables.log_mar(log_light + log_transmission + 2.0 * (log_exit_pupil - log_pupil).min(0.0))
}
