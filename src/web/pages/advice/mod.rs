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
use crate::web::components::{Bar, ShareLink};
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
                    <section class="advice__strip">
                        <h2 class="advice__strip-title">{ t!("advice-tonight") }</h2>
                        <seen::Tonight advice={advice.clone()} {units} />
                    </section>
                    { notes::evening(&advice, units) }
                    <head::Ranges advice={advice.clone()} {units} />
                </div>
                <div class="advice__seen">
                    <section class="noprint">
                        <seen::View advice={advice.clone()} {units} />
                    </section>
                </div>
                <div class="advice__rest">
                    <told::NotNeededRows advice={advice.clone()} {units} />
                    <owned::Owned advice={advice.clone()} {units} />
                    <told::Decisions advice={advice.clone()} {units} />
                    <reasons::Reasons advice={advice.clone()} {units} />
                    { notes::flight(&advice, units) }
                    { notes::rings(&advice, units) }
                    <others::Others advice={advice.clone()} {units} />
                    <weigh::Weigh advice={advice.clone()} {units} />
                    <weigh::WouldChange advice={advice.clone()} {units} />
                    <told::Warnings advice={advice.clone()} {units} />
                    <told::Sayings advice={advice.clone()} {units} />
                    <told::NotCountedRows advice={advice.clone()} />
                    <section class="noprint">
                        <h2>{ t!("advice-from-here") }</h2>
                        <ul class="plainlist plainlist--tight">
                            <li><a href={Route::Shop.href()}>{ t!("shop-title") }</a></li>
                            <li><a href={Route::After.href()}>{ t!("after-title") }</a></li>
                            <li><a href={Route::Compare.href()}>{ t!("opening-door-compare") }</a></li>
                            <li><a href={Route::Pictures.href()}>{ t!("advice-pictures") }</a></li>
                        </ul>
                    </section>
                    <ShareLink />
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
