//! The light question's strip: the evening, and a handle to drag to where one stops.

use super::advice::seen::typical_evening;
use crate::need::answers::StopTime;
use crate::need::questions::Part;
use crate::need::{Reply, Value};
use crate::sky::evening::SunCourse;
use crate::t;
use crate::web::fields::Field;
use crate::web::pictures::{DuskStrip, said_minute};
use crate::web::state::{Action, App, use_app};
use crate::web::view::prelude::*;

/// Where the handle stands while nothing else is known, minutes after sunset.
const USUAL_MIN: f64 = 30.0;

/// The minute that is answered, or that the answers come to, and whether it was dragged.
fn minute(app: &App) -> (f64, bool) {
    let light = app.answers.light.as_ref();
    if let Some(minutes) = light.and_then(|light| light.minutes_after_sunset) {
        return (minutes, true);
    }
    let computed = || {
        let (advice, _) = app.advice()?;
        advice.facts.typical.stop_minutes_after_sunset
    };
    let told = match light.and_then(|light| light.until) {
        Some(StopTime::Daylight) => Some(f64::NEG_INFINITY),
        Some(StopTime::Sunset) => Some(0.0),
        Some(StopTime::HalfHourAfterSunset) => Some(30.0),
        Some(StopTime::HourAfterSunset) => Some(60.0),
        Some(StopTime::Moon) => Some(f64::INFINITY),
        Some(StopTime::EndOfSeeing | StopTime::LitRange) | None => computed(),
    };
    (told.unwrap_or(USUAL_MIN), false)
}

/// The strip as an answer; nothing where the Sun does not set in the middle of the season.
#[component]
pub fn StopStrip() -> Html {
    let app = use_app();
    let answers = app
        .as_ref()
        .map(|app| app.answers.clone())
        .unwrap_or_default();
    let evening = {
        let answers = answers.clone();
        use_memo((answers.light.clone(), answers.place), move |_| {
            typical_evening(&answers).filter(|evening| evening.sun == SunCourse::Sets)
        })
    };
    let (Some(app), Some(evening)) = (app, (*evening).clone()) else {
        return Html::default();
    };
    let (minute, is_dragged) = minute(&app);
    let said = if is_dragged {
        t!("stop-at", when = said_minute(&evening, minute))
    } else {
        t!("stop-drag")
    };
    let on_change = {
        let app = app.clone();
        Callback::from(move |minutes: f64| {
            let part = Part::MinutesAfterSunset;
            app.dispatch(Action::Pick(
                Field::Part(part),
                Reply::Set(part, Value::Number(minutes)),
            ));
        })
    };
    html! {
        <div class="stop">
            <DuskStrip {evening} whiskers={false} minute={Some(minute)} label={t!("stop-label")} {on_change} />
            <p class="small soft" aria-live="polite">{ said }{ " " }{ t!("stop-evening") }</p>
        </div>
    }
}
