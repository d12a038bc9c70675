//! One of some options, or several with how often.

use crate::need::questions::Part;
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::components::{Choice, Segments};
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::questions::{option, option_hint};

/// The options.
#[derive(Properties, PartialEq)]
pub struct OneProps {
    /// The part.
    pub part: Part,
    /// Keys of the options.
    pub list: &'static [&'static str],
}

/// One of these.
#[component]
pub fn OneOf(props: &OneProps) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let part = props.part;
    let units = app.answers.units;
    let held = value(&app.answers, part);
    // Short answers stand side by side.
    let is_short = props.list.len() > 2
        && props.list.iter().all(|each| {
            option(units, part, each).chars().count() <= 14 && option_hint(part, each).is_none()
        });
    if is_short {
        return html! {
            <div class="chips">
                { for props.list.iter().map(|each| {
                    let app = app.clone();
                    let choose = Callback::from(move |_: Event| {
                        app.dispatch(Action::Reply(Reply::Set(part, Value::One((*each).to_owned()))));
                    });
                    html! {
                        <label class="chip" key={*each}>
                            <input type="radio" name={part.key()} value={*each}
                                checked={held == Value::One((*each).to_owned())} onchange={choose} />
                            <span>{ option(units, part, each) }</span>
                        </label>
                    }
                }) }
            </div>
        };
    }
    html! {
        <div class={classes!("choices", (props.list.len() > 5).then_some("choices--two"))}>
            { for props.list.iter().map(|each| {
                let app = app.clone();
                let onchoose = Callback::from(move |_: bool| {
                    app.dispatch(Action::Reply(Reply::Set(part, Value::One((*each).to_owned()))));
                });
                html! {
                    <Choice key={*each} group={part.key()} value={*each} name={option(units, part, each)}
                        hint={option_hint(part, each).map(AttrValue::from)}
                        chosen={held == Value::One((*each).to_owned())} {onchoose} />
                }
            }) }
        </div>
    }
}

/// The options, and whether how often is asked.
#[derive(Properties, PartialEq)]
pub struct SomeProps {
    /// The part.
    pub part: Part,
    /// Keys of the options.
    pub list: &'static [&'static str],
    /// How often is asked for each.
    pub shares: bool,
}

/// Several of these.
#[component]
pub fn SomeOf(props: &SomeProps) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let part = props.part;
    let units = app.answers.units;
    let held = match value(&app.answers, part) {
        Value::Many(list) => list,
        _ => Vec::new(),
    };
    html! {
        <div class={classes!("choices", (props.list.len() > 5).then_some("choices--two"))}>
            { for props.list.iter().map(|each| {
                let share = held.iter().find(|(key, _)| key == each).map(|(_, share)| *share);
                let app = app.clone();
                let onchoose = Callback::from(move |_: bool| {
                    app.dispatch(Action::Reply(Reply::Tap(part, (*each).to_owned())));
                });
                html! {
                    <Choice key={*each} group={part.key()} value={*each} name={option(units, part, each)}
                        hint={option_hint(part, each).map(AttrValue::from)}
                        many={true} chosen={share.is_some()} {onchoose}
                        more={share.filter(|_| props.shares && held.len() > 1).map(|share| html! {
                            <Often {part} option={*each} {share} name={option(units, part, each)} />
                        })} />
                }
            }) }
        </div>
    }
}

/// Whose share.
#[derive(Properties, PartialEq)]
pub struct OftenProps {
    /// The part.
    pub part: Part,
    /// The option.
    pub option: AttrValue,
    /// Its words.
    pub name: AttrValue,
    /// Its share: often 4, sometimes 2, rarely 1.
    pub share: f64,
}

/// Often, sometimes or rarely.
#[component]
pub fn Often(props: &OftenProps) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let (part, each) = (props.part, props.option.clone());
    let onchoose = Callback::from(move |key: AttrValue| {
        let share = match key.as_str() {
            "often" => 4.0,
            "sometimes" => 2.0,
            _ => 1.0,
        };
        app.dispatch(Action::Reply(Reply::Often(part, each.to_string(), share)));
    });
    let chosen = if props.share >= 3.0 {
        "often"
    } else if props.share >= 1.5 {
        "sometimes"
    } else {
        "rarely"
    };
    html! {
        <Segments label={t!("often-label", what = props.name.as_str())} group={format!("often-{}", props.option)}
            {chosen} {onchoose} options={vec![
                ("often".into(), t!("often-4").into()),
                ("sometimes".into(), t!("often-2").into()),
                ("rarely".into(), t!("often-1").into()),
            ]} />
    }
}
