//! A guess beside the answer that the model works out.

use super::figures::Figures;
use super::{LessonAsk, LessonStep, LessonWords};
use crate::error::{Error, Result};
use crate::plan::bend::BendWord;
use crate::sentence::Sentence;

/// Missing angle at a round's edge from which on it counts as curved, radians: less than a
/// fifth of a stitch.
const CURVED: f64 = 0.2;

/// Names that a reply may have besides figures, to try its words out.
pub(super) const NAMES_OF_REPLY: &[(&str, &str)] =
    &[("guess", ""), ("answer", ""), ("apart", ""), ("unit", "")];

/// What can be chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LessonChoice {
    /// It cups.
    Cup,
    /// It lies flat.
    Flat,
    /// It ruffles.
    Ruffle,
    /// It is curved like a ball.
    Ball,
    /// It is not curved: it can be cut open and laid flat.
    Straight,
    /// It is curved like a saddle.
    Saddle,
}

/// What a learner says before the answer is shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LessonGuess {
    /// One of the choices.
    Choice(LessonChoice),
    /// A number.
    Number(f64),
}

/// What the model says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LessonAnswer {
    /// One of the choices.
    Choice(LessonChoice),
    /// A number, to how many places it is said and how near a guess is right.
    Number {
        /// The number.
        value: f64,
        /// Places it is said to.
        places: usize,
        /// How near is right.
        near: f64,
    },
}

/// What is said to a guess.
#[derive(Debug, Clone, PartialEq)]
pub struct GuessReply {
    /// Whether the guess is right.
    pub right: bool,
    /// By how much a number is off, above it positive; 0 for a choice.
    pub off: f64,
    /// Guess and answer side by side.
    pub verdict: Sentence,
    /// Why that guess is wrong; empty if it is right.
    pub because: Sentence,
}

impl LessonChoice {
    /// It in words.
    pub fn text(self, words: &LessonWords) -> &str {
        match self {
            Self::Cup => &words.cup,
            Self::Flat => &words.flat,
            Self::Ruffle => &words.ruffle,
            Self::Ball => &words.ball,
            Self::Straight => &words.straight,
            Self::Saddle => &words.saddle,
        }
    }
}

impl LessonAsk {
    /// What can be chosen, in the order it is shown; nothing where a number is asked for.
    pub fn choices(&self) -> &'static [LessonChoice] {
        match self {
            Self::Bend { .. } => &[LessonChoice::Cup, LessonChoice::Flat, LessonChoice::Ruffle],
            Self::Curve { .. } => {
                &[LessonChoice::Ball, LessonChoice::Straight, LessonChoice::Saddle]
            }
            Self::Number { .. } => &[],
        }
    }

    /// What to say to a choice that is wrong.
    fn because(&self, choice: LessonChoice) -> &str {
        match (self, choice) {
            (Self::Bend { cup, .. }, LessonChoice::Cup) => cup,
            (Self::Bend { flat, .. }, LessonChoice::Flat) => flat,
            (Self::Bend { ruffle, .. }, LessonChoice::Ruffle) => ruffle,
            (Self::Curve { ball, .. }, LessonChoice::Ball) => ball,
            (Self::Curve { straight, .. }, LessonChoice::Straight) => straight,
            (Self::Curve { saddle, .. }, LessonChoice::Saddle) => saddle,
            _ => "",
        }
    }
}

impl LessonStep {
    /// The answer to its question, worked out of `figures`.
    ///
    /// # Errors
    /// Where the data ask for a figure or a round that there is not.
    pub fn answer(&self, figures: &Figures) -> Result<LessonAnswer> {
        let value = |name: &str| {
            figures.get(name).and_then(super::figures::Figure::value).ok_or_else(|| {
                Error::new(
                    format!("lesson, “{}”", self.title),
                    format!("“{name}” is no figure of this step"),
                    "ask for one that is",
                )
            })
        };
        match &self.prediction.ask {
            LessonAsk::Bend { .. } => {
                let word = BendWord::of(value("gain")?, value("flat")?);
                Ok(LessonAnswer::Choice(match word {
                    BendWord::Ruffle => LessonChoice::Ruffle,
                    BendWord::Flat => LessonChoice::Flat,
                    BendWord::Cup | BendWord::Straight | BendWord::DrawIn => LessonChoice::Cup,
                }))
            }
            LessonAsk::Curve { round, .. } => {
                let i = (*round as usize).wrapping_sub(1);
                let edge = figures.curvature.edges.get(i).ok_or_else(|| {
                    Error::new(
                        format!("lesson, “{}”", self.title),
                        format!("there is no round {round}"),
                        "ask for one that there is",
                    )
                })?;
                Ok(LessonAnswer::Choice(match edge.missing_rad {
                    missing if missing > CURVED => LessonChoice::Ball,
                    missing if missing < -CURVED => LessonChoice::Saddle,
                    _ => LessonChoice::Straight,
                }))
            }
            LessonAsk::Number { figure, near, .. } => {
                let places = match figures.get(figure) {
                    Some(super::figures::Figure::Number(_, places)) => *places,
                    _ => 0,
                };
                Ok(LessonAnswer::Number { value: value(figure)?, places, near: *near })
            }
        }
    }

    /// What it says to predictions that are wrong.
    pub(super) fn replies(&self) -> [&str; 3] {
        match &self.prediction.ask {
            LessonAsk::Bend { cup, flat, ruffle } => [cup, flat, ruffle],
            LessonAsk::Curve { ball, straight, saddle, .. } => [ball, straight, saddle],
            LessonAsk::Number { low, high, .. } => [low, high, ""],
        }
    }

    /// What is said to `guess`.
    ///
    /// # Errors
    /// As [`LessonStep::answer`], and for a guess of the wrong kind or no number.
    pub fn reply(
        &self,
        guess: LessonGuess,
        figures: &Figures,
        words: &LessonWords,
    ) -> Result<GuessReply> {
        let ask = &self.prediction.ask;
        match (guess, self.answer(figures)?) {
            (LessonGuess::Choice(said), LessonAnswer::Choice(answer))
                if ask.choices().contains(&said) =>
            {
                let right = said == answer;
                let more = [("guess", said.text(words)), ("answer", answer.text(words))];
                let verdict = if right { &words.right_choice } else { &words.wrong_choice };
                let because = if right { "" } else { ask.because(said) };
                Ok(GuessReply {
                    right,
                    off: 0.0,
                    verdict: figures.filled(verdict, &more)?,
                    because: figures.filled(because, &more)?,
                })
            }
            (LessonGuess::Number(said), LessonAnswer::Number { value, places, near })
                if said.is_finite() =>
            {
                let off = said - value;
                let right = off.abs() <= near;
                let unit = match ask {
                    LessonAsk::Number { unit, .. } => unit.as_str(),
                    _ => "",
                };
                let told = |value: f64| {
                    let whole = value.fract().abs() < 1e-9;
                    if whole { format!("{value:.0}") } else { format!("{value:.1}") }
                };
                let (said, answer) = (told(said), format!("{value:.places$}"));
                let apart = format!("{:.places$}", off.abs());
                let more = [
                    ("guess", said.as_str()),
                    ("answer", answer.as_str()),
                    ("apart", apart.as_str()),
                    ("unit", unit),
                ];
                let verdict = if right { &words.right_number } else { &words.wrong_number };
                let because = match ask {
                    LessonAsk::Number { low, .. } if !right && off < 0.0 => low.as_str(),
                    LessonAsk::Number { high, .. } if !right => high.as_str(),
                    _ => "",
                };
                Ok(GuessReply {
                    right,
                    off,
                    verdict: figures.filled(verdict, &more)?,
                    because: figures.filled(because, &more)?,
                })
            }
            _ => Err(Error::new(
                format!("lesson, “{}”", self.title),
                "that is no answer to this question",
                "choose one of the answers, or give a number where a number is asked for",
            )),
        }
    }
}
