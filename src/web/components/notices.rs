//! What is to be told, at the top of the page.

use crate::t;
use crate::web::state::{Action, Notice, use_app};
use crate::web::view::prelude::*;

/// All notices, each with what can be done about it.
#[component]
pub fn Notices() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    html! {
        <div class="notice" role="status">
            { for app.notices.iter().enumerate().map(|(at, notice)| {
                let close = {
                    let app = app.clone();
                    Callback::from(move |_: MouseEvent| app.dispatch(Action::Dismiss(at)))
                };
                let offer = notice.offer.clone().map(|offer| {
                    let words = if offer.is_elsewhere { t!("stored-elsewhere-take") } else { t!("link-opened-undo") };
                    let app = app.clone();
                    let take = Callback::from(move |_: MouseEvent| {
                        app.dispatch(Action::Dismiss(at));
                        app.dispatch(Action::Take(offer.answers.clone(), offer.typed.clone()));
                        if offer.is_elsewhere {
                            app.dispatch(Action::Tell(Notice {
                                said: t!("stored-elsewhere-taken"),
                                offer: Some(app.way_back()),
                            }));
                        }
                    });
                    html! { <button type="button" class="button" onclick={take}>{ words }</button> }
                });
                html! {
                    <div class="notice__in">
                        <p>{ &notice.said }</p>
                        { offer }
                        <button type="button" class="button button--quiet" onclick={close}>{ t!("page-close") }</button>
                    </div>
                }
            }) }
        </div>
    }
}
