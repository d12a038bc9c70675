//! All answers, with a way back to each.

use crate::need::answers::Answers;
use crate::need::doubts;
use crate::need::flow::{self, State as Answered};
use crate::need::questions::{Question, Stage};
use crate::plain::Gathered;
use crate::t;
use crate::web::components::{Bar, ForgetAll, Forming};
use crate::web::route::Route;
use crate::web::state::use_app;
use crate::web::view::prelude::*;
use crate::wording::advice::capitalised;
use crate::wording::problems::doubt;
use crate::wording::questions::{part_answer, question as question_title, question_unsure};

fn rows(answers: &Answers, stage: Stage) -> Html {
    html! {
        <dl class="told">
            { for flow::asked(answers, stage).map(|question| row(answers, question)) }
        </dl>
    }
}

fn row(answers: &Answers, question: &'static Question) -> Html {
    let title = question_title(question);
    let held = match flow::state(answers, question) {
        Answered::NotSure => vec![t!(
            "check-unsure",
            assumption = question_unsure(question, answers)
        )],
        Answered::Open => vec![t!(
            "check-unanswered",
            assumption = question_unsure(question, answers)
        )],
        Answered::Answered => question
            .all_parts()
            .filter_map(|part| part_answer(part, answers).map(|words| capitalised(&words)))
            .gathered(),
    };
    let is_open = flow::state(answers, question) != Answered::Answered;
    html! {
        <div class="told__row" key={question.key}>
            <dt class="told__question">{ title.clone() }</dt>
            <dd class={classes!("told__answer", is_open.then_some("soft"))}>
                { for held.into_iter().map(|line| html! { <span class="block">{ line }</span> }) }
            </dd>
            <dd class="told__change">
                <a href={Route::Question(question.key.into()).href()} aria-label={t!("check-change-what", question = title)}>{ t!("check-change") }</a>
            </dd>
        </div>
    }
}

/// Figures that look as if they were meant in another unit, with the way to their question.
fn doubted(answers: &Answers) -> Html {
    let found = doubts(answers);
    html! {
        <>
            { for found.iter().filter_map(|each| Some((each, Question::of_part(each.part)?))).map(|(each, asked)| html! {
                <p class="caution">{ doubt(each) }{ " " }<a href={Route::Question(asked.key.into()).href()}>{ t!("check-change-what", question = question_title(asked)) }</a></p>
            }) }
        </>
    }
}

/// All answers.
#[component]
pub fn CheckPage() -> Html {
    let Some(app) = use_app() else {
        return Html::default();
    };
    let back = flow::asked(&app.answers, Stage::First)
        .last()
        .map_or(Route::Opening, |question| {
            Route::Question(question.key.into())
        });
    html! {
        <main class={classes!("page", "page--barred", if app.went_back { "page--enter-back" } else { "page--enter" })} id="main">
            <h1 id="title" tabindex="-1">{ t!("check-title") }</h1>
            <p class="why">{ t!("check-lead") }</p>
            { doubted(&app.answers) }
            { rows(&app.answers, Stage::First) }
            <section>
                <h2>{ t!("check-sharpen") }</h2>
                <p class="soft">{ t!("check-sharpen-lead") }</p>
                { rows(&app.answers, Stage::Sharpen) }
            </section>
            <ForgetAll />
            <Bar above={html! { <Forming /> }}>
                <a class="button" href={back.href()}>{ t!("page-back") }</a>
                <a class="button button--primary" href={Route::Advice.href()}>{ t!("check-advice") }</a>
            </Bar>
        </main>
    }
}
