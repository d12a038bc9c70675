//! How it works, where the numbers come from, what is kept.

use crate::need::answers::{Answers, Units};
use crate::t;
use crate::web::components::{ForgetAll, Segments, explained};
use crate::web::platform;
use crate::web::state::{Action, App, Notice, Theme, use_app};
use crate::web::stored::{ANSWERS, SET_ASIDE, SHELF, THEME, TYPED};
use crate::web::view::prelude::*;
use crate::wording::say;

/// Everything that is stored, by its name in the browser's storage.
const KEPT: [platform::Kept; 5] = [ANSWERS, TYPED, SET_ASIDE, THEME, SHELF];

/// About this page.
#[component]
pub fn AboutPage() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let colours = {
        let app = app.clone();
        Callback::from(move |key: AttrValue| app.dispatch(Action::Colour(Theme::named(&key))))
    };
    let drop_copy = {
        let app = app.clone();
        Callback::from(move |_: MouseEvent| {
            platform::drop_offline_copy();
            app.dispatch(Action::Tell(Notice {
                said: t!("about-copy-dropped"),
                offer: None,
            }));
        })
    };
    html! {
        <main class="page" id="main">
            <h1 id="title" tabindex="-1">{ t!("about-title") }</h1>
            <section><h2>{ t!("about-what") }</h2><p>{ explained(t!("about-what-1")) }</p></section>
            <section><h2>{ t!("about-not") }</h2><p>{ explained(t!("about-not-1")) }</p><p>{ explained(t!("about-not-2")) }</p></section>
            <section>
                <h2>{ t!("about-kept") }</h2>
                <p>{ explained(t!("about-kept-1")) }</p>
                <dl class="kept">
                    { for KEPT.iter().map(|kept| html! {
                        <div key={kept.0} data-kept={kept.0}>
                            <dt>{ say(&format!("about-kept-{}", kept.0.strip_prefix("scopewright.").unwrap_or(kept.0)), &[]) }</dt>
                            <dd class="soft small">{ t!("about-kept-where", name = kept.0) }</dd>
                        </div>
                    }) }
                    <div>
                        <dt>{ t!("about-kept-copy") }</dt>
                        <dd class="soft small">{ t!("about-kept-copy-where") }</dd>
                    </div>
                </dl>
                <p>{ t!("about-kept-not") }</p>
                <ForgetAll />
                <p>{ explained(t!("about-offline")) }</p>
                <button type="button" class="button" id="drop-copy" onclick={drop_copy}>{ t!("about-drop-copy") }</button>
            </section>
            <section class="noprint">
                <h2>{ t!("about-units") }</h2>
                { units_choice(&app) }
            </section>
            <section class="noprint">
                <h2>{ t!("about-colours") }</h2>
                <Segments label={t!("about-colours")} group="colours" onchoose={colours}
                    options={vec![
                        ("system".into(), t!("theme-system").into()),
                        ("day".into(), t!("theme-day").into()),
                        ("night".into(), t!("theme-night").into()),
                    ]}
                    chosen={app.theme.name().unwrap_or("system")} />
            </section>
            <section>
                <h2>{ t!("about-sources") }</h2>
                <ul class="lines">
                    <li>{ explained(t!("about-source-pupil")) }</li>
                    <li>{ explained(t!("about-source-threshold")) }</li>
                    <li>{ explained(t!("about-source-sun")) }</li>
                    <li>{ explained(t!("about-source-light")) }</li>
                    <li>{ explained(t!("about-source-flight")) }</li>
                    <li>{ explained(t!("about-source-practice")) }</li>
                </ul>
            </section>
        </main>
    }
}

/// In what units to read.
pub fn units_choice(app: &App) -> Html {
    let units = {
        let app = app.clone();
        Callback::from(move |key: AttrValue| {
            let units = if key == "imperial" {
                Units::Imperial
            } else {
                Units::Metric
            };
            app.dispatch(Action::Answer(Answers {
                units,
                ..app.answers.clone()
            }));
        })
    };
    html! {
        <Segments label={t!("about-units")} group="units" onchoose={units}
            options={vec![("metric".into(), t!("page-units-metric").into()), ("imperial".into(), t!("page-units-imperial").into())]}
            chosen={if app.answers.units == Units::Imperial { "imperial" } else { "metric" }} />
    }
}
