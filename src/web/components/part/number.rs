//! A number: ready-made values in one tap, or typed.

use crate::need::input::Quantity;
use crate::need::questions::Part;
use crate::need::{Reply, Value, value};
use crate::t;
use crate::web::components::field::TextField;
use crate::web::fields::Field;
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::questions::{option, part as part_label, part_hint, quantity as with_unit};

/// The number.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The part.
    pub part: Part,
    /// What it stands for.
    pub quantity: Quantity,
    /// Values in one tap, metric.
    pub presets: &'static [f64],
}

/// A number.
#[component]
pub fn Number(props: &Props) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let (part, quantity) = (props.part, props.quantity);
    let label = part_label(part);
    let held = match value(&app.answers, part) {
        Value::Number(metric) => Some(metric),
        _ => None,
    };
    let is_preset = held.is_some_and(|held| props.presets.iter().any(|preset| same(*preset, held)));
    html! {
        <div class="numbered">
            if !props.presets.is_empty() {
                <fieldset>
                    <legend class="choices__name">{ label.clone() }</legend>
                    <div class="chips">
                        { for props.presets.iter().map(|preset| {
                            let preset = *preset;
                            let words = with_unit(app.answers.units, quantity, preset);
                            let app = app.clone();
                            let choose = Callback::from(move |_: Event| {
                                app.dispatch(Action::Pick(Field::Part(part), Reply::Set(part, Value::Number(preset))));
                            });
                            html! {
                                <label class="chip" key={words.clone()}>
                                    <input type="radio" name={part.key()} checked={held.is_some_and(|held| same(held, preset))} onchange={choose} />
                                    <span>{ words }</span>
                                </label>
                            }
                        }) }
                    </div>
                </fieldset>
            }
            <TextField field={Field::Part(part)} blank={is_preset}
                hint={part_hint(part).map(AttrValue::from)} label={if props.presets.is_empty() { label } else { t!("number-exactly") }} />
        </div>
    }
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-6
}

/// Decades of age.
#[derive(Properties, PartialEq)]
pub struct AgeProps {
    /// Their middles.
    pub middles: &'static [f64],
}

/// Age, by decade or exactly.
#[component]
pub fn Age(props: &AgeProps) -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let eye = app.answers.eye.unwrap_or_default();
    let decade = eye.age_years.filter(|_| eye.age_is_decade);
    html! {
        <div class="numbered">
            <fieldset>
                <legend class="choices__name">{ part_label(Part::Age) }</legend>
                <div class="chips">
                    { for props.middles.iter().map(|middle| {
                        let middle = *middle;
                        let words = option(app.answers.units, Part::Age, &shortest(middle));
                        let app = app.clone();
                        let choose = Callback::from(move |_: Event| {
                            app.dispatch(Action::Pick(Field::Part(Part::Age), Reply::Decade(middle)));
                        });
                        html! {
                            <label class="chip" key={shortest(middle)}>
                                <input type="radio" name="age" checked={decade.is_some_and(|decade| same(decade, middle))} onchange={choose} />
                                <span>{ words }</span>
                            </label>
                        }
                    }) }
                </div>
            </fieldset>
            <TextField field={Field::Part(Part::Age)} blank={decade.is_some()} hint={part_hint(Part::Age).map(AttrValue::from)} label={t!("age-exactly")} />
        </div>
    }
}
