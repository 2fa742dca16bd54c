//! What of a published pattern has changed, as an errata paragraph in the pattern's own words.

use std::collections::BTreeMap;

use super::gather::sheet;
use super::plain::one_line;
use super::{PieceSheet, Sheet};
use crate::error::Result;
use crate::piece::{Piece, PieceId};
use crate::plan::plan;
use crate::project::Project;
use crate::project::sizes::{at_size, size_names};
use crate::words::wording::{Wording, words};
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

/// What has changed from one version of a pattern to the next.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Changes {
    /// Above them: `Changes since version 1`.
    pub heading: String,
    /// One sentence a change, in the order of the pattern; empty where nothing has changed.
    pub lines: Vec<String>,
    /// What is said where there are none.
    pub none: String,
}

impl Changes {
    /// All of it as a paragraph a line.
    pub fn text(&self) -> String {
        let lines = match self.lines.is_empty() {
            true => self.none.clone(),
            false => self.lines.join("\n"),
        };
        format!("{}\n\n{lines}\n", self.heading)
    }
}

/// What of `old` reads otherwise in `new`. Both are said in the words of `new`, so that another
/// style or language is no change; pieces are known by their ids, sizes by their names.
///
/// # Errors
/// As [`sheet`](super::sheet()), for either.
pub fn changes(old: &Project, new: &Project) -> Result<Changes> {
    let old = &Project { wording: new.wording.clone(), ..old.clone() };
    let writer = new.wording.writer()?;
    let heading = match old.version.trim() {
        "" => writer.say("changes_unnamed"),
        version => {
            let version = one_line(version);
            writer.say_of("changes", &[("version", Words(&version))])
        }
    };
    let errata = Errata { writer: &writer };
    let sheets = [sheet(old)?, sheet(new)?];
    let mut lines = Vec::new();
    errata.around(&sheets, &mut lines);
    for piece in &new.pieces {
        let name = one_line(&piece.name);
        let Some(before) = old.position(piece.id) else {
            lines.push(writer.say_of("piece_new", &[("piece", Words(&name))]));
            continue;
        };
        let of = |sheet: &Sheet, index: usize| sheet.pieces[index].clone();
        let after = new.position(piece.id).unwrap_or_default();
        let facts = [facts(&of(&sheets[0], before)), facts(&of(&sheets[1], after))];
        errata.facts(&name, &sheets[1], &facts, &mut lines);
        errata.piece(old, new, piece.id, &mut lines)?;
    }
    for piece in old.pieces.iter().filter(|piece| new.piece(piece.id).is_none()) {
        let name = one_line(&piece.name);
        lines.push(writer.say_of("piece_gone", &[("piece", Words(&name))]));
    }
    let none = writer.say("no_changes");
    Ok(Changes { heading, lines, none })
}

/// What is said of a piece beside its rounds: the name of its label and the words.
fn facts(piece: &PieceSheet) -> Vec<(&'static str, String)> {
    let sizes: Vec<String> = piece
        .sizes
        .iter()
        .map(|size| match size.name.as_str() {
            "" => size.finished.clone(),
            name => format!("{name} {}", size.finished),
        })
        .collect();
    vec![
        ("gauge", piece.gauge_short.clone()),
        ("hook", piece.hook.clone()),
        ("finished_size", sizes.join("; ")),
    ]
}

/// Words changes.
struct Errata<'a> {
    writer: &'a Writer<'a>,
}

impl Errata<'_> {
    /// A sentence about what stands at `place`, before and now.
    fn changed(&self, place: &str, before: Option<&str>, now: Option<&str>) -> Option<String> {
        let name = match (before, now) {
            (Some(before), Some(now)) if before != now => "now_reads",
            (None, Some(_)) => "is_new",
            (Some(_), None) => "left_out",
            _ => return None,
        };
        // Sentences within a sentence end where it does.
        let bare =
            |text: Option<&str>| text.unwrap_or_default().trim_end_matches('.').to_owned();
        let (before, now) = (bare(before), bare(now));
        let values =
            [("where", Words(place)), ("before", Words(&before)), ("now", Words(&now))];
        Some(self.writer.say_of(name, &values))
    }

    /// What stands around the pieces.
    fn around(&self, [old, new]: &[Sheet; 2], lines: &mut Vec<String>) {
        let need = new.label("need");
        listed(&old.materials.lines, &new.materials.lines, |before, now| {
            lines.extend(self.changed(need, before, now));
        });
        let together = new.label("together");
        listed(&old.assembly, &new.assembly, |before, now| {
            lines.extend(self.changed(together, before, now));
        });
    }

    fn facts(
        &self,
        name: &str,
        sheet: &Sheet,
        [old, new]: &[Vec<(&'static str, String)>; 2],
        lines: &mut Vec<String>,
    ) {
        for ((label, before), (_, now)) in old.iter().zip(new) {
            let what = sheet.label(label);
            let values = [("piece", Words(name)), ("what", Words(what))];
            let place = self.writer.say_of("where_piece", &values);
            lines.extend(self.changed(&place, Some(before), Some(now)));
        }
    }

    /// The rounds of a piece and what is said around them, size by size.
    fn piece(
        &self,
        old: &Project,
        new: &Project,
        id: PieceId,
        lines: &mut Vec<String>,
    ) -> Result<()> {
        let names = size_names(new);
        let has = |project: &Project, name: &str| {
            project.piece(id).is_some_and(|p| p.sizes.iter().any(|s| s.name == name))
        };
        let sizes: Vec<&str> = names.into_iter().filter(|name| has(new, name)).collect();
        let sizes = if sizes.is_empty() { vec![""] } else { sizes };
        for size in sizes {
            let Some(now) = self.worded(new, id, size)? else { continue };
            let known = size.is_empty() || has(old, size);
            let before = if known { self.worded(old, id, size)? } else { None };
            let name = one_line(new.name_of(id));
            let name = if size.is_empty() { name } else { format!("{name} {size}") };
            self.rounds(&name, before.as_ref(), &now, lines);
        }
        Ok(())
    }

    fn worded(&self, project: &Project, id: PieceId, size: &str) -> Result<Option<Wording>> {
        let sized = match size {
            "" => project.clone(),
            size => at_size(project, size)?.project,
        };
        let of = |piece: &Piece| {
            plan(piece)
                .map(|plan| words(&plan, piece, self.writer))
                .map_err(|e| e.within(&format!("piece “{}”", piece.name)))
        };
        sized.piece(id).map(of).transpose()
    }

    fn rounds(
        &self,
        name: &str,
        before: Option<&Wording>,
        now: &Wording,
        lines: &mut Vec<String>,
    ) {
        let place = |what: &str| {
            let what = self.writer.say(what);
            self.writer.say_of("where_piece", &[("piece", Words(name)), ("what", Words(&what))])
        };
        let joined = |of: &[String]| of.join(" ");
        if let Some(before) = before {
            let opening = [joined(&before.opening), joined(&now.opening)];
            let [one, other] = &opening;
            lines.extend(self.changed(&place("what_opening"), Some(one), Some(other)));
        }
        let (old, new) =
            (before.map(|w| self.by_round(w)).unwrap_or_default(), self.by_round(now));
        let last = old.keys().chain(new.keys()).max().copied().unwrap_or(0);
        let mut round = 1;
        while round <= last {
            let both = (old.get(&round), new.get(&round));
            // Rounds that change alike are told together.
            let mut to = round;
            while to < last && (old.get(&(to + 1)), new.get(&(to + 1))) == both {
                to += 1;
            }
            let rounds = self.writer.round_name(round, to);
            let values = [("piece", Words(name)), ("round", Words(&rounds))];
            let place = self.writer.say_of("where_round", &values);
            let (one, other) = (both.0.map(String::as_str), both.1.map(String::as_str));
            lines.extend(self.changed(&place, one, other));
            round = to + 1;
        }
        if let Some(before) = before {
            let stuffing = [self.stuffing(before), self.stuffing(now)];
            let [one, other] = &stuffing;
            lines.extend(self.changed(&place("what_stuffing"), Some(one), Some(other)));
            let closing = [joined(&before.closing), joined(&now.closing)];
            let [one, other] = &closing;
            lines.extend(self.changed(&place("what_closing"), Some(one), Some(other)));
        }
    }

    /// What is worked in each round, with its count.
    fn by_round(&self, wording: &Wording) -> BTreeMap<u32, String> {
        let line = |line: &crate::words::wording::WrittenLine| {
            let text = format!("{} {}", line.text, self.writer.count(line.count));
            (line.first..=line.last).map(move |round| (round, text.clone())).collect::<Vec<_>>()
        };
        wording.lines.iter().flat_map(line).collect()
    }

    fn stuffing(&self, wording: &Wording) -> String {
        let stops = wording.stuffing.iter();
        let said = stops.map(|stop| {
            format!("{}: {}", self.writer.round_name(stop.after, stop.after), stop.text)
        });
        said.collect::<Vec<_>>().join(" ")
    }
}

/// Calls `told` with lines that differ, one after another by their places.
fn listed(old: &[String], new: &[String], mut told: impl FnMut(Option<&str>, Option<&str>)) {
    for i in 0..old.len().max(new.len()) {
        let (before, now) = (old.get(i), new.get(i));
        // A line that has only moved is no change.
        let elsewhere = |line: Option<&String>, list: &[String]| {
            line.is_some_and(|line| list.contains(line))
        };
        let (before, now) =
            (before.filter(|_| !elsewhere(before, new)), now.filter(|_| !elsewhere(now, old)));
        told(before.map(String::as_str), now.map(String::as_str));
    }
}
