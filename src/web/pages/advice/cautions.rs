//! The cautions: those for everybody, and those this person's answers call for.

use crate::need::answers::Answers;
use crate::need::cautions::{ALWAYS, for_need};
use crate::need::resolve;
use crate::t;
use crate::web::view::prelude::*;
use crate::wording::questions::caution;

/// For these answers.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// What was said.
    pub answers: Answers,
}

/// The cautions, as a list.
#[component]
pub fn Cautions(props: &Props) -> Html {
    let own = for_need(&resolve(&props.answers));
    html! {
        <section>
            <h2>{ t!("advice-cautions") }</h2>
            <ul class="plainlist plainlist--tight">
                { for own.iter().chain(&ALWAYS).map(|each| html! { <li key={each.key()}>{ caution(*each) }</li> }) }
            </ul>
            <p class="small soft">{ t!("advice-caution") }</p>
        </section>
    }
}
