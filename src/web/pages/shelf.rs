//! A shop's own stock list, and what each sight on it does for whoever answered.

use crate::advice::Advice;
use crate::advice::versus::Bench;
use crate::need::answers::{Answers, Units};
use crate::need::resolve;
use crate::ports::{AnswerStore, StoreProblem};
use crate::shelf::{self, DEMO, Judged, Stock, order};
use crate::t;
use crate::web::platform;
use crate::web::route::Route;
use crate::web::shared::Shared;
use crate::web::state::use_app;
use crate::web::stored::SHELF;
use crate::web::view::prelude::*;
use crate::wording::shelf as words;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// Rows judged before the page is let go on.
const AT_ONCE: usize = 4;
/// Rows shown on the page.
const SHOWN: usize = 60;

/// What is shown of the shelf.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// The advice whose ranges the sights are laid beside.
    pub advice: Shared<Advice>,
    /// Rows that are shown.
    pub most: usize,
    /// The list, where it is not the one that is kept.
    #[prop_or_default]
    pub text: Option<AttrValue>,
}

/// All rows judged, best first, in slices so that the page stays usable; none while at it.
fn use_judged(
    stock: &Rc<Stock>,
    advice: &Shared<Advice>,
    answers: &Answers,
) -> Option<Rc<Vec<Judged>>> {
    let judged = use_state(|| None::<Rc<Vec<Judged>>>);
    {
        let (judged, answers) = (judged.clone(), answers.clone());
        use_effect_with((stock.clone(), advice.clone()), move |(stock, advice)| {
            let is_over = Rc::new(Cell::new(false));
            let (stock, advice, over) = (stock.clone(), advice.clone(), Rc::clone(&is_over));
            spawn_local(async move {
                platform::breath().await;
                let Some(pick) = advice.picks.first() else {
                    return;
                };
                let bench = Bench::new(&resolve(&answers));
                let mut list = Vec::new();
                for rows in stock.rows.chunks(AT_ONCE) {
                    if over.get() {
                        return;
                    }
                    list.extend(rows.iter().map(|row| Judged::of(row, &bench, &pick.ranges)));
                    platform::breath().await;
                }
                order(&mut list);
                if !over.get() {
                    judged.set(Some(Rc::new(list)));
                }
            });
            move || is_over.set(true)
        });
    }
    (*judged).clone()
}

fn item(each: &Judged, units: Units) -> Html {
    let notes = words::notes(each, units);
    html! {
        <li class="shelf__item" key={each.row.line.to_string()}>
            <p class="shelf__name">
                <span class="shelf__glass">{ words::name(each) }</span>
                if let Some(label) = &each.row.label { <span class="soft">{ label }</span> }
            </p>
            <p class="shelf__figures">{ words::figures(each, units) }</p>
            if !notes.is_empty() {
                <p class="small soft">{ notes }</p>
            }
        </li>
    }
}

/// The sights of the shelf, each with what it does for whoever answered.
#[component]
pub fn OnShelf(props: &Props) -> Html {
    let app = use_app();
    let text = props
        .text
        .as_ref()
        .map(|text| text.to_string())
        .or_else(|| SHELF.text())
        .unwrap_or_default();
    let stock = use_memo(text, |text| shelf::read(text).unwrap_or_default());
    let answers = app.map(|app| app.answers.clone()).unwrap_or_default();
    let judged = use_judged(&stock, &props.advice, &answers);
    if stock.rows.is_empty() {
        return html! {
            <p>
                { t!("shelf-none") }
                if props.text.is_none() { { " " }<a href={Route::Shelf.href()}>{ t!("shelf-load") }</a> }
            </p>
        };
    }
    let Some(judged) = judged else {
        return html! { <p role="status">{ t!("shelf-judging", count = stock.rows.len()) }</p> };
    };
    html! {
        <>
            <ol class="shelf" role="list">
                { for judged.iter().take(props.most).map(|each| item(each, answers.units)) }
            </ol>
            if judged.len() > props.most {
                <p class="small soft">{ t!("shelf-more", shown = props.most, all = judged.len()) }</p>
            }
        </>
    }
}

/// The page of the shelf.
#[component]
pub fn ShelfPage() -> Html {
    let text = use_state_eq(|| SHELF.text().unwrap_or_default());
    let told = use_state_eq(|| None::<String>);
    let file = use_node_ref();
    let Some(app) = use_app() else {
        return Html::default();
    };
    let load = {
        let (text, told) = (text.clone(), told.clone());
        Callback::from(move |new: String| {
            told.set(match shelf::read(&new) {
                // What cannot be a list is told, and never takes the place of one that is.
                Err(_) => None,
                Ok(_) => SHELF.save(&new).err().map(|problem| match problem {
                    StoreProblem::Denied => t!("shelf-denied"),
                    StoreProblem::Full => t!("shelf-full"),
                }),
            });
            text.set(new);
        })
    };
    let paste = {
        let load = load.clone();
        Callback::from(move |event: InputEvent| {
            load.emit(platform::text_in(&event));
        })
    };
    let choose = {
        let load = load.clone();
        Callback::from(move |event: Event| {
            let load = load.clone();
            if let Some(coming) = platform::chosen_file(&event) {
                spawn_local(async move {
                    if let Some(text) = JsFuture::from(coming)
                        .await
                        .ok()
                        .and_then(|text| text.as_string())
                    {
                        load.emit(text);
                    }
                });
            }
        })
    };
    let demo = {
        let load = load.clone();
        Callback::from(move |_: MouseEvent| load.emit(DEMO.to_owned()))
    };
    // The same file, mended, is a choice again only for a field that holds none.
    let empty = {
        let file = file.clone();
        Callback::from(move |_: MouseEvent| platform::empty_field(&file))
    };
    let forget = {
        let (text, told, empty) = (text.clone(), told.clone(), empty.clone());
        Callback::from(move |event: MouseEvent| {
            empty.emit(event);
            // A browser that denies storage has nothing to forget.
            let _ = SHELF.forget();
            text.set(String::new());
            told.set(Some(t!("shelf-forgotten")));
        })
    };
    let read = shelf::read(&text);
    // While what stands there is no list, the one that is kept goes on.
    let judged = match &read {
        Ok(_) => (*text).clone(),
        Err(_) => SHELF.text().unwrap_or_default(),
    };
    html! {
        <main class="page page--wide" id="main">
            <h1 id="title" tabindex="-1">{ t!("shelf-title") }</h1>
            <p>{ t!("shelf-lead") }</p>
            <div class="shelf__in">
                <div class="shelf__list">
                    <div class="field">
                        <label class="field__label" for="shelf-file">{ t!("shelf-file") }</label>
                        <input type="file" id="shelf-file" ref={file} onclick={empty} accept=".csv,.tsv,.txt,text/csv,text/plain" onchange={choose} />
                    </div>
                    <div class="field">
                        <label class="field__label" for="shelf-text">{ t!("shelf-text") }</label>
                        <span class="field__hint" id="shelf-hint">{ t!("shelf-hint") }</span>
                        <textarea class="field__input shelf__text" id="shelf-text" rows="8" spellcheck="false" autocomplete="off"
                            aria-describedby="shelf-hint" value={(*text).clone()} oninput={paste} />
                    </div>
                    <div class="shelf__ways">
                        <button type="button" class="button" id="shelf-demo" onclick={demo}>{ t!("shelf-demo") }</button>
                        if !text.is_empty() || !judged.is_empty() {
                            <button type="button" class="button" id="shelf-forget" onclick={forget}>{ t!("shelf-forget") }</button>
                        }
                    </div>
                    if *text == DEMO { <p class="soft">{ t!("shelf-is-demo") }</p> }
                    if let Some(told) = &*told { <p role="status">{ told }</p> }
                    { problems(&text, &read) }
                </div>
                <section class="shelf__judged">
                    <h2>{ t!("shelf-judged") }</h2>
                    if app.has_answers() {
                        <p class="soft">{ t!("versus-for-you") }</p>
                    } else {
                        <p class="soft">{ t!("versus-for-usual") }{ " " }<a href={super::first_question(&app.answers).href()}>{ t!("versus-answer") }</a></p>
                    }
                    if let Some((advice, _)) = app.advice() {
                        <OnShelf {advice} most={SHOWN} text={AttrValue::from(judged)} />
                    } else {
                        <p role="status">{ t!("advice-pending") }</p>
                    }
                </section>
            </div>
        </main>
    }
}

/// What is wrong with a list, line by line.
fn problems(text: &str, read: &Result<Stock, shelf::StockProblem>) -> Html {
    if text.is_empty() {
        return Html::default();
    }
    match read {
        Err(problem) => {
            html! { <p class="field__error" role="alert">{ words::stock_problem(problem) }</p> }
        }
        Ok(stock) => html! {
            <>
                <p role="status">{ t!("shelf-read", count = stock.rows.len()) }</p>
                if !stock.ignored.is_empty() {
                    <p class="soft">{ words::ignored(stock) }</p>
                }
                if !stock.problems.is_empty() {
                    <ul class="lines shelf__problems" tabindex="0">
                        { for stock.problems.iter().map(|problem| html! { <li>{ words::row_problem(problem) }</li> }) }
                    </ul>
                }
            </>
        },
    }
}
