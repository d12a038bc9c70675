//! What is to be told, at the top of the page.

use crate::t;
use crate::web::state::{Action, Offer, use_app};
use crate::web::stored;
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
                    let words = match offer {
                        Offer::Back(..) => t!("link-opened-undo"),
                        Offer::TakeKept => t!("stored-elsewhere-take"),
                    };
                    let app = app.clone();
                    let take = Callback::from(move |_: MouseEvent| {
                        match &offer {
                            Offer::Back(answers, typed) => {
                                app.dispatch(Action::Take(answers.clone(), typed.clone()));
                            }
                            Offer::TakeKept => {
                                if let Some(Ok(rescued)) = stored::kept() {
                                    app.dispatch(Action::Take(Box::new(rescued.answers), stored::kept_typed()));
                                }
                            }
                        }
                        app.dispatch(Action::Dismiss(at));
                    });
                    html! { <button type="button" class="button" onclick={take}>{ words }</button> }
                });
                html! {
                    <div class="notice__in" key={notice.said.clone()}>
                        <p>{ &notice.said }</p>
                        { offer }
                        <button type="button" class="button button--quiet" onclick={close}>{ t!("page-close") }</button>
                    </div>
                }
            }) }
        </div>
    }
}
