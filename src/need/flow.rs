//! From question to question, without state of its own.

use super::answers::Answers;
use super::questions::{QUESTIONS, Question, Stage};
use super::value::{Value, value};
use crate::plain::Gathered;

/// The questions of a stage that are asked, in order.
pub fn asked(answers: &Answers, stage: Stage) -> impl Iterator<Item = &'static Question> {
    QUESTIONS
        .iter()
        .filter(move |question| question.stage == stage && question.is_asked(answers))
}

/// The question after this one in its stage; none after the last.
#[must_use]
pub fn next(answers: &Answers, question: &Question) -> Option<&'static Question> {
    let at = place(question)?;
    QUESTIONS[at + 1..]
        .iter()
        .find(|each| each.stage == question.stage && each.is_asked(answers))
}

/// The question before this one in its stage; none before the first.
#[must_use]
pub fn previous(answers: &Answers, question: &Question) -> Option<&'static Question> {
    let at = place(question)?;
    QUESTIONS[..at]
        .iter()
        .rev()
        .find(|each| each.stage == question.stage && each.is_asked(answers))
}

fn place(question: &Question) -> Option<usize> {
    QUESTIONS.iter().position(|each| each.key == question.key)
}

/// How far a question is answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Not yet.
    Open,
    /// With something.
    Answered,
    /// With "not sure".
    NotSure,
}

/// How far a question is answered.
#[must_use]
pub fn state(answers: &Answers, question: &Question) -> State {
    if answers.not_sure.iter().any(|key| key == question.key) {
        State::NotSure
    } else if question
        .all_parts()
        .any(|part| value(answers, part) != Value::Nothing)
    {
        State::Answered
    } else {
        State::Open
    }
}

/// The first question of a stage that is still open, to go on where one left off.
#[must_use]
pub fn first_open(answers: &Answers, stage: Stage) -> Option<&'static Question> {
    asked(answers, stage).find(|question| state(answers, question) == State::Open)
}

/// Where one is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Place of the question, from 1.
    pub position: usize,
    /// How many there are in this stage.
    pub of: usize,
    /// About how long the rest takes, this one included: 12 s a question (assumption).
    pub seconds_left: usize,
}

/// Where one is with this question; none if it is not asked.
#[must_use]
pub fn progress(answers: &Answers, question: &Question) -> Option<Progress> {
    let list: Vec<_> = asked(answers, question.stage).gathered();
    let at = list.iter().position(|each| each.key == question.key)?;
    Some(Progress {
        position: at + 1,
        of: list.len(),
        seconds_left: 12 * (list.len() - at),
    })
}
