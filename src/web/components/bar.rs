//! The bar under the thumb.

use crate::web::view::prelude::*;

/// What stands in the bar.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// Above the buttons.
    #[prop_or_default]
    pub above: Html,
    /// The buttons share the width evenly.
    #[prop_or_default]
    pub even: bool,
    /// As wide as a wide page.
    #[prop_or_default]
    pub wide: bool,
    /// The buttons.
    pub children: Html,
}

/// The bar under the thumb: always in the same place.
#[component]
pub fn Bar(props: &Props) -> Html {
    html! {
        <div class={classes!("bar", props.wide.then_some("bar--wide"))}>
            { props.above.clone() }
            <div class={classes!("bar__buttons", props.even.then_some("bar__buttons--even"))}>
                { props.children.clone() }
            </div>
        </div>
    }
}
