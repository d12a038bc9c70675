//! The advice.

mod cautions;
mod head;
pub mod notes;
mod others;
mod owned;
mod reasons;
pub mod seen;
mod told;
mod weigh;

use crate::t;
use crate::web::components::{Bar, ShareLink, fold};
use crate::web::platform;
use crate::web::route::Route;
use crate::web::state::use_app;
use crate::web::view::prelude::*;

/// The advice: the line first, then why.
#[component]
pub fn AdvicePage() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let units = app.answers.units;
    let Some((advice, is_stale)) = app.advice() else {
        return html! {
            <main class="page page--barred" id="main">
                <h1 id="title" tabindex="-1">{ if app.problem.is_some() { t!("advice-title") } else { t!("advice-pending") } }</h1>
                if let Some(why) = &app.problem {
                    <p class="caution" role="alert">{ t!("advice-failed", why = why) }</p>
                } else {
                    <p class="line" aria-hidden="true"><span class="line__glass">{ "–" }</span></p>
                    <p role="status">{ t!("advice-pending-hint") }</p>
                }
                { bar() }
            </main>
        };
    };
    html! {
        <main class={classes!("page", "page--wide", "page--barred", "page--advice", is_stale.then_some("stale"))} id="main" aria-busy={is_stale.to_string()}>
            <div class="advice">
                <div class="advice__first">
                    <h1 id="title" tabindex="-1" class="advice__title">{ t!("advice-title") }</h1>
                    { notes::troubles(&advice, &app.answers) }
                    <head::Head advice={advice.clone()} {units} />
                    if seen::is_by_day(&advice) {
                        { seen::by_day(&advice, units) }
                    } else {
                        <section class="advice__strip">
                            <h2 class="advice__strip-title">{ t!("advice-tonight") }</h2>
                            <seen::Tonight advice={advice.clone()} {units} />
                        </section>
                        <seen::Dawn advice={advice.clone()} {units} />
                    }
                    <head::Changed advice={advice.clone()} {units} />
                    <p class="line__legend">{ t!("advice-legend") }</p>
                </div>
                <div class="advice__seen">
                    <section class="noprint">
                        <seen::View advice={advice.clone()} {units} />
                        <p><a href={Route::Pictures.href()}>{ t!("advice-pictures") }</a></p>
                    </section>
                </div>
                <div class="advice__rest">
                    <owned::Owned advice={advice.clone()} {units} />
                    <told::NotNeededRows advice={advice.clone()} {units} />
                    <told::Decisions advice={advice.clone()} {units} />
                    <div class="folds">
                        <reasons::Reasons advice={advice.clone()} {units} />
                        <head::Ranges advice={advice.clone()} {units} />
                        <others::Others advice={advice.clone()} {units} />
                        <told::Warnings advice={advice.clone()} {units} />
                        <weigh::WouldChange advice={advice.clone()} {units} />
                        <weigh::Weigh advice={advice.clone()} {units} />
                        { notes::evening(&advice, units) }
                        { notes::flight(&advice, units) }
                        { notes::rings(&advice, units) }
                        <told::Sayings advice={advice.clone()} {units} />
                        <told::NotCountedRows advice={advice.clone()} />
                        { fold("keep", t!("share-title"), t!("share-sum"), html! { <ShareLink /> }) }
                    </div>
                    <cautions::Cautions answers={app.answers.clone()} />
                </div>
            </div>
            { bar() }
        </main>
    }
}

fn bar() -> Html {
    let share = Callback::from(|_: MouseEvent| platform::focus("share"));
    let print = Callback::from(|_: MouseEvent| platform::print());
    html! {
        <Bar even={true} wide={true}>
            <a class="button" href={Route::Check.href()}>{ t!("advice-change") }</a>
            <button type="button" class="button" onclick={print}>{ t!("advice-print") }</button>
            <button type="button" class="button" onclick={share}>{ t!("advice-share") }</button>
        </Bar>
    }
}
