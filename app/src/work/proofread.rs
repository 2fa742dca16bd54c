//! The written pattern being proofread: its text, and what was found in it. Long texts are
//! checked on a thread, so that typing never waits.

use egui::Context;
use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use plumpline_core::pattern::HouseStyle;
use plumpline_core::pattern::Span;
use plumpline_core::pattern::proofread::{
    Finding, LineIndex, RoundRead, Summary, listing, proofread, summary, work_words,
};
use plumpline_core::pattern::read::{Reading, Saying, Sure, TermsWish, read_with};
use plumpline_core::project::shape::{MadeProject, shape};
use plumpline_core::{Firmness, Gauge};

use super::lingering::{self, Lingering, LongWork};
use super::worker::{Newest, Ticket, Voice, Worker};
use crate::view::ids::pattern_id;

/// Texts longer than this are checked off the frame, bytes.
const LONG: usize = 100_000;

/// A change of the pattern that is proofread.
#[derive(Debug, Clone, PartialEq)]
pub enum Proofread {
    /// Another text.
    Text(String),
    /// The text of a file, whose author has not been explained yet.
    Opened(String),
    /// The text that was kept with a project, and what was said of it.
    Kept(String, Vec<Saying>),
    /// Begins to say what the words of a finding mean.
    Tell(usize),
    /// What is being typed as their meaning.
    Telling(String),
    /// Says no more.
    TellNothing,
    /// Keeps what was typed as their meaning, for the rest of the text too.
    Say,
    /// Takes back what was said.
    Unsay(usize),
    /// Terms to read it in, by their code; found out from the text if `None`.
    Terms(Option<&'static str>),
    /// Selects a finding, and shows its place.
    Take(usize),
    /// The place has been shown.
    Shown,
    /// Replaces these bytes by this.
    Mend(Span, String),
}

/// A text to check, and the terms to read it in.
#[derive(Debug)]
struct Text {
    text: String,
    terms: Option<&'static str>,
    sayings: Vec<Saying>,
}

/// Words of the text whose meaning a person is about to say.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Telling {
    /// The finding they belong to.
    pub finding: usize,
    /// The words.
    pub words: String,
    /// What has been typed so far.
    pub means: String,
    /// Whether the field has still to take the keyboard.
    pub fresh: bool,
}

/// The text and what is known of it.
#[derive(Debug)]
pub struct Proofreading {
    worker: Worker<Newest<Text>, Checked>,
    text: String,
    /// The text as it was last saved or opened with a project.
    kept: String,
    /// What a person said that words of it mean, and as it was last saved.
    sayings: Vec<Saying>,
    sayings_kept: Vec<Saying>,
    telling: Option<Telling>,
    wish: Option<&'static str>,
    /// What was found last; in the text as it is now if none is awaited.
    checked: Option<Checked>,
    awaited: Option<Ticket>,
    taken: Option<usize>,
    /// Whether the place of the selected finding has still to be shown.
    show: bool,
}

impl Default for Proofreading {
    fn default() -> Self {
        let work = || {
            |text: Text, voice: &Voice<'_, Newest<Text>, Checked>| {
                voice.say(Checked::of(&text.text, text.terms, &text.sayings));
            }
        };
        Self {
            worker: Worker::new("proofread", work),
            text: String::new(),
            kept: String::new(),
            sayings: Vec::new(),
            sayings_kept: Vec::new(),
            telling: None,
            wish: None,
            checked: None,
            awaited: None,
            taken: None,
            show: false,
        }
    }
}

/// What was found in a text.
#[derive(Debug)]
pub struct Checked {
    /// What the reader made of it.
    pub reading: Reading,
    /// What does not add up, in the order of the text.
    pub findings: Vec<Finding>,
    /// Line (from 1) of each finding.
    pub lines: Vec<usize>,
    /// What was read, round by round, in the order of the text.
    pub rounds: Vec<RoundRead>,
    /// Rounds, stitches, the widest round.
    pub summary: Summary,
    /// In which terms it was read, and why.
    pub terms: String,
}

impl Checked {
    fn of(text: &str, terms: Option<&'static str>, sayings: &[Saying]) -> Self {
        let wish = terms.map_or(TermsWish::Infer, TermsWish::Lexicon);
        let reading = read_with(text, wish, sayings);
        let findings = proofread(text, &reading);
        let places = LineIndex::new(text);
        Self {
            lines: findings.iter().map(|f| places.line_of(f.at.start)).collect(),
            rounds: listing(text, &reading, HouseStyle::bench()),
            summary: summary(&reading),
            terms: places.terms(&reading),
            reading,
            findings,
        }
    }

    /// Lines of rounds that could not be counted.
    pub fn unread(&self) -> usize {
        self.rounds.iter().filter(|r| r.sure == Sure::Unread).count()
    }

    /// The pieces it makes at this gauge.
    ///
    /// # Errors
    /// As [`shape`].
    pub fn shape(
        &self,
        gauge: Gauge,
        firmness: Firmness,
    ) -> plumpline_core::Result<MadeProject> {
        let Reading { pattern, unread, .. } = &self.reading;
        shape(pattern, unread, say!("trouble-written-piece"), gauge, firmness)
    }
}

impl Proofreading {
    /// The work under way, if it takes so long that a person wonders.
    pub fn lingering(&self) -> Option<Lingering> {
        lingering::of(&self.worker, LongWork::Proofread, say!("trouble-reading-the-pattern"))
    }

    /// Gives it up.
    pub fn give_up(&mut self, ctx: &Context) {
        self.worker.give_up(ctx);
    }

    /// The text.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Whether there is a text that closing the window would lose.
    pub fn is_unkept(&self) -> bool {
        !self.text.trim().is_empty()
            && (self.text != self.kept || self.sayings != self.sayings_kept)
    }

    /// Remembers that this text is saved, and what was said of it with it.
    pub fn kept(&mut self, text: String) {
        self.kept = text;
        self.sayings_kept.clone_from(&self.sayings);
    }

    /// What a person said that words of the text mean.
    pub fn sayings(&self) -> &[Saying] {
        &self.sayings
    }

    /// The words whose meaning is being said.
    pub fn telling(&self) -> Option<&Telling> {
        self.telling.as_ref()
    }

    /// The terms asked for, by their code.
    pub fn wish(&self) -> Option<&'static str> {
        self.wish
    }

    /// What was found in the text as it is now; `None` while it is empty or being checked.
    pub fn checked(&self) -> Option<&Checked> {
        self.checked.as_ref().filter(|_| self.awaited.is_none())
    }

    /// Whether it is being checked.
    pub fn is_busy(&self) -> bool {
        self.awaited.is_some()
    }

    /// The selected finding, and whether its place has still to be shown.
    pub fn taken(&self) -> Option<(usize, bool)> {
        self.taken.map(|index| (index, self.show))
    }

    /// Makes a change, and checks the text again where it matters.
    pub fn apply(&mut self, ctx: &Context, change: Proofread) {
        match change {
            Proofread::Text(text) => self.set_text(ctx, text),
            Proofread::Opened(text) => {
                self.sayings.clear();
                self.sayings_kept.clear();
                self.set_text(ctx, text);
            }
            Proofread::Kept(text, sayings) => {
                self.kept.clone_from(&text);
                self.sayings_kept.clone_from(&sayings);
                self.sayings = sayings;
                self.set_text(ctx, text);
            }
            Proofread::Tell(finding) => self.tell(finding),
            Proofread::Telling(means) => {
                if let Some(telling) = &mut self.telling {
                    (telling.means, telling.fresh) = (means, false);
                }
            }
            Proofread::TellNothing => self.telling = None,
            Proofread::Say => {
                let told = self.telling.take().filter(|t| !t.means.trim().is_empty());
                if let Some(Telling { words, means, .. }) = told {
                    self.sayings.retain(|s| s.words != words);
                    self.sayings.push(Saying { words, means: means.trim().to_owned() });
                    (self.taken, self.show) = (None, false);
                    self.check(ctx);
                }
            }
            Proofread::Unsay(index) => {
                if index < self.sayings.len() {
                    self.sayings.remove(index);
                    self.check(ctx);
                }
            }
            Proofread::Terms(wish) => {
                self.wish = wish;
                self.check(ctx);
            }
            Proofread::Take(index) => (self.taken, self.show) = (Some(index), true),
            Proofread::Shown => self.show = false,
            Proofread::Mend(at, new) => {
                if self.text.get(at.clone()).is_some() {
                    self.keep_for_undo(ctx, at.start);
                    let mut text = self.text.clone();
                    text.replace_range(at, &new);
                    self.set_text(ctx, text);
                }
            }
        }
    }

    fn tell(&mut self, finding: usize) {
        let Some(checked) = &self.checked else { return };
        let Some(at) = checked.findings.get(finding).map(|f| f.at.clone()) else { return };
        let place = work_words(&self.text, &checked.reading, &at);
        let words = self.text.get(place).unwrap_or_default().to_owned();
        if !words.trim().is_empty() {
            let means = String::new();
            self.telling = Some(Telling { finding, words, means, fresh: true });
        }
    }

    fn set_text(&mut self, ctx: &Context, text: String) {
        self.text = text;
        self.telling = None;
        (self.taken, self.show) = (None, false);
        self.check(ctx);
    }

    /// Lets the text field take the change back: its own Ctrl+Z knows only what was typed.
    fn keep_for_undo(&self, ctx: &Context, byte: usize) {
        let mut state = TextEditState::load(ctx, pattern_id()).unwrap_or_default();
        let at = CCursor::new(self.text[..byte].chars().count());
        let mut undoer = state.undoer();
        undoer.add_undo(&(CCursorRange::one(at), self.text.clone()));
        state.set_undoer(undoer);
        state.store(ctx, pattern_id());
        ctx.memory_mut(|m| m.request_focus(pattern_id()));
    }

    fn check(&mut self, ctx: &Context) {
        self.awaited = None;
        if self.text.trim().is_empty() {
            self.checked = None;
        } else if self.text.len() <= LONG {
            self.checked = Some(Checked::of(&self.text, self.wish, &self.sayings));
        } else {
            let sayings = self.sayings.clone();
            let text = Text { text: self.text.clone(), terms: self.wish, sayings };
            self.awaited = Some(self.worker.ask(ctx, text));
        }
    }

    /// Takes what the thread has found. Returns whether there is anything new to show.
    ///
    /// # Errors
    /// One line, once, where the text could not be checked; it is checked again when it is
    /// changed.
    pub fn update(&mut self) -> Result<bool, String> {
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            let is_last = self.awaited.take_if(|ticket| *ticket == heard.to).is_some();
            news |= is_last;
            match heard.answer {
                Ok(checked) if is_last => self.checked = Some(checked),
                Ok(_) => {} // The text is another by now.
                Err(broken) => {
                    self.checked.take_if(|_| is_last);
                    return Err(say!(
                        "trouble-the-pattern-could-not-be-checked",
                        broken = broken.to_string()
                    ));
                }
            }
        }
        Ok(news)
    }
}
