//! The pattern as sentences to say: on camera, or to a class. `said` words a round, `captions`
//! lays the lines out in time.

mod captions;
mod said;

pub use captions::{captions_srt, captions_vtt, script};

use super::SizedPlan;
use super::length::time;
use crate::piece::Yarn;
use crate::piece::cloth::{Hand, Working};
use crate::plan::counts::Start;
use crate::plan::inside::{Inside, InsideStop};
use crate::plan::stuffing::StuffHow;
use crate::project::Project;
use crate::words::from_plan::planned_work;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Below, Writer};
use said::Speech;

/// How fast a script goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ScriptPace {
    /// As long as the sentence takes to say.
    #[default]
    Said,
    /// As long as the round takes to work, by the maker's stitches a minute; no less than the
    /// sentence takes to say.
    Worked,
}

/// Words said in a minute: slow enough to follow with a hook in hand. Common practice, no
/// source.
const WORDS_A_MINUTE: f64 = 120.0;
/// Shortest a line stands, s.
const LEAST_SECONDS: f64 = 1.5;

/// One line of a script.
#[derive(Debug, Clone, PartialEq)]
pub struct ScriptLine {
    /// What to say, in sentences.
    pub text: String,
    /// First and last round it is about; none for what stands around the rounds.
    pub rounds: Option<(u32, u32)>,
    /// Stitches at the end of those rounds; 0 around them.
    pub count: u32,
    /// How long it takes to say, s.
    pub said_s: f64,
    /// How long it takes to work, s, by the maker's stitches a minute; no less than to say.
    pub worked_s: f64,
}

impl ScriptLine {
    /// How long it stands at this pace, s.
    pub fn seconds(&self, pace: ScriptPace) -> f64 {
        match pace {
            ScriptPace::Said => self.said_s,
            ScriptPace::Worked => self.worked_s,
        }
    }
}

/// A pattern as it is said.
#[derive(Debug, Clone, PartialEq)]
pub struct Script {
    /// What the pattern is called.
    pub title: String,
    /// BCP 47 tag of its language.
    pub language: String,
    /// Said of words that no native reader has checked; empty where one has.
    pub unchecked: String,
    /// How long all of it takes to say and to work, in words.
    pub takes: [String; 2],
    /// Its lines.
    pub lines: Vec<ScriptLine>,
}

/// The pieces of `project`, planned in one size each, as they are said; every round that
/// differs in a line of its own.
pub(super) fn spoken(
    project: &Project,
    plans: &[SizedPlan<'_>],
    writer: &Writer<'_>,
) -> Script {
    let speech = Speech { writer };
    let mut lines = Vec::new();
    for &SizedPlan { piece, plan, .. } in plans {
        let mut opening = Vec::new();
        if plans.len() > 1 {
            let name = super::plain::one_line(&piece.name);
            opening.push(writer.say_of("say_piece", &[("name", Words(&name))]));
        }
        if piece.copies > 1 {
            opening.push(speech.counted("say_copies", piece.copies));
        }
        let kind = piece.kind_of_round(1);
        let joined = piece.working != Working::Spiral;
        opening.push(match joined {
            false => writer.say("say_spiral"),
            true => speech.counted("say_joined", kind.turning_chain()),
        });
        if piece.hand == Hand::Left {
            opening.push(writer.say("say_left"));
        }
        match plan.start {
            Start::Ring => {}
            Start::Chain(n) => opening.push(speech.counted("say_chain_ring", n)),
            Start::Oval(n) => {
                opening.push(speech.counted("say_chain", n + kind.turning_chain()));
            }
        }
        lines.push(around(opening.join(" ")));
        let yarns = plan.estimate.yarn.len() > 1;
        let mut yarn = None;
        let mut below = Below { count: plan.start.joined(), ..Below::default() };
        let mut k = 0;
        while let Some(round) = plan.rounds.get(k) {
            let number = k as u32 + 1;
            if yarns && yarn != Some(round.yarn) {
                yarn = Some(round.yarn);
                let letter = Yarn::letter(round.yarn);
                let text = writer.say_of("say_yarn", &[("letter", Words(&letter))]);
                lines.push(around(text));
            }
            let work = |k: usize| planned_work(piece, plan, k as u32 + 1);
            let this = work(k);
            // Rounds alike are said once, but not past a place where something is done.
            let stops = |after: u32| plan.stuffing.iter().find(move |s| s.after == after);
            let mut last = k;
            let inner = |after: u32| plan.inside.iter().filter(move |s| s.after == after);
            while stops(last as u32 + 1).is_none()
                && inner(last as u32 + 1).next().is_none()
                && plan
                    .rounds
                    .get(last + 1)
                    .is_some_and(|next| next.count == round.count && next.yarn == round.yarn)
                && below.count == Some(round.count)
                && work(last + 1) == this
            {
                last += 1;
            }
            let to = last as u32 + 1;
            let said = speech.rounds((number, to), &this, below.count);
            let count = speech.counted_n("say_count", round.count);
            let after = if joined { "say_join" } else { "say_marker" };
            let text = format!("{said} {count} {}", writer.say(after));
            let stitches = round.count * (to - number + 1);
            let rate = piece.habits.stitches_per_minute.max(0.1);
            let worked = 60.0 * f64::from(stitches) / rate;
            let spoken = seconds(&text);
            lines.push(ScriptLine {
                text,
                rounds: Some((number, to)),
                count: round.count,
                said_s: spoken,
                worked_s: worked.max(spoken),
            });
            let said = |under: bool| {
                let here = inner(to).filter(move |stop| stop.what.is_under_stuffing() == under);
                here.filter_map(|stop| said_inside(stop, writer))
                    .map(around)
                    .collect::<Vec<_>>()
            };
            lines.extend(said(true));
            if let Some(stop) = stops(to) {
                let later = plan.stuffing.iter().any(|s| s.after > to);
                lines.push(around(writer.say(match stop.how {
                    StuffHow::AsYouGo => "say_stuff_as_you_go",
                    StuffHow::Filled if later => "say_stuff_part",
                    StuffHow::Filled => "say_stuff",
                })));
            }
            lines.extend(said(false));
            below = Below { kind: Some(round.kind.into()), count: Some(round.count) };
            k = last + 1;
        }
        let drawn = piece.outline.finishes_closed();
        let last = plan.rounds.last().map_or(0, |round| round.count);
        lines.push(around(match (drawn, plan.start) {
            (true, Start::Oval(_)) => speech.counted("say_close_flat", last),
            (true, _) => speech.counted("say_close", last),
            (false, _) => writer.say("say_open"),
        }));
        lines.extend(plan.inside.iter().filter_map(|s| said_after(s, writer)).map(around));
    }
    let takes = [ScriptPace::Said, ScriptPace::Worked].map(|pace| {
        let all: f64 = lines.iter().map(|line| line.seconds(pace)).sum();
        time(all / 60.0, writer)
    });
    Script {
        title: super::plain::one_line(&project.title),
        language: super::plain::language(&writer.lexicon().code),
        unchecked: match writer.lexicon().checked {
            true => String::new(),
            false => writer.phrases().unchecked.clone(),
        },
        takes,
        lines,
    }
}

/// What is done inside after a round, as it is said.
fn said_inside(stop: &InsideStop, writer: &Writer<'_>) -> Option<String> {
    let whole = |mm: f64| format!("{:.0}", mm.floor().max(1.0));
    Some(match stop.what {
        Inside::Card { across_mm, hole_mm, .. } => {
            let (mm, hole) = (whole(across_mm), whole(hole_mm.unwrap_or(0.0)));
            let name = if hole_mm.is_some() { "flat_ring_laid" } else { "disc_laid" };
            writer.say_of(name, &[("mm", Words(&mm)), ("hole", Words(&hole))])
        }
        Inside::Thread { .. } => writer.say("say_thread_laid"),
        Inside::Sewn { .. } => return None,
    })
}

/// What of it is done at the end, as it is said.
fn said_after(stop: &InsideStop, writer: &Writer<'_>) -> Option<String> {
    let (name, mm) = match stop.what {
        Inside::Thread { across_mm } => ("say_thread_drawn", across_mm),
        Inside::Sewn { across_mm } => ("say_round_sewn", across_mm),
        Inside::Card { .. } => return None,
    };
    let mm = format!("{mm:.0}");
    Some(writer.say_of(name, &[("number", Number(stop.after)), ("mm", Words(&mm))]))
}

/// A line around the rounds.
fn around(text: String) -> ScriptLine {
    let seconds = seconds(&text);
    ScriptLine { text, rounds: None, count: 0, said_s: seconds, worked_s: seconds }
}

/// How long a text takes to say.
fn seconds(text: &str) -> f64 {
    let words = text.split([' ', '-', '\u{a0}']).filter(|word| !word.is_empty()).count();
    (60.0 * words as f64 / WORDS_A_MINUTE).max(LEAST_SECONDS)
}
