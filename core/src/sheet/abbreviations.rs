//! Abbreviations of a sheet, with what stands around them.

use super::{PieceSheet, Step};
use crate::words::StitchKind;
use crate::words::tree::{Op, Placed, Times};
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Below, Writer};

/// Abbreviations that the words around the rounds and the rounds use, and what stands at the end
/// of a round.
pub(super) fn abbreviations(
    pieces: &[PieceSheet],
    invisible: bool,
    writer: &Writer<'_>,
) -> Vec<(String, String)> {
    let after = |piece: &'_ PieceSheet| {
        piece
            .lists()
            .into_iter()
            .flat_map(|(_, _, closing)| closing.to_vec())
            .collect::<Vec<_>>()
    };
    let around: Vec<String> =
        pieces.iter().flat_map(|p| [p.opening.clone(), after(p)].concat()).collect();
    let steps = pieces.iter().flat_map(PieceSheet::lists).flat_map(|(_, steps, _)| steps);
    let rounds = steps.flat_map(|step| match step {
        Step::Rounds(line) => [line.heading.as_str(), &line.text, &line.count],
        // The names of yarns are the maker's.
        Step::Yarn(_) | Step::Stuff(_) | Step::Inside(_) => [""; 3],
    });
    let mut list = writer.abbreviations(around.iter().map(String::as_str).chain(rounds));
    let decrease = writer.lexicon().decrease.brief(1);
    let found = list.iter_mut().find(|(short, _)| invisible && short == decrease);
    if let Some((_, meaning)) = found {
        let invisible = writer.lexicon().invisible_decrease.brief(1);
        let means = &writer.phrases().invisible_means;
        *meaning = format!("{invisible}{}: {means}", writer.phrases().before_colon);
    }
    list.push((writer.count(24), writer.say("stitches_at_end")));
    list
}

/// The forms of the house that its rounds use and that a beginner may not know, `sc 2` and
/// `( ) × 6`, a sentence each.
pub(super) fn forms(pieces: &[PieceSheet], writer: &Writer<'_>) -> Vec<String> {
    let kind = StitchKind::Single;
    let text = |op: Op| writer.text(&[Placed::unread(op)], Below::default());
    let steps = pieces.iter().flat_map(PieceSheet::lists).flat_map(|(_, steps, _)| steps);
    let rounds: Vec<&str> = steps
        .filter_map(|step| match step {
            Step::Rounds(line) => Some(line.text.as_str()),
            Step::Yarn(_) | Step::Stuff(_) | Step::Inside(_) => None,
        })
        .collect();
    let used = |part: &str| rounds.iter().any(|text| text.contains(part));
    let mut list = Vec::new();
    let two = text(Op::Each { kind, count: 2 });
    // Words that say it in full need no saying again.
    if two.split_whitespace().count() == 2 && used(&two) {
        let name = writer.lexicon().kind(kind).brief(1);
        let values = [("form", Words(&two)), ("kind", Words(name)), ("n", Number(2))];
        list.push(writer.say_of("plain_means", &values));
    }
    let each = Placed::unread(Op::Each { kind, count: 2 });
    let group = text(Op::Group { body: vec![each.clone(), each], times: Times::In(6) });
    let open = group.chars().next().filter(|c| "([{".contains(*c));
    let end = group.rfind([')', ']', '}']).and_then(|at| group.get(at..));
    if let (Some(open), Some(end)) = (open, end)
        && rounds.iter().any(|text| text.contains(open))
    {
        let form = format!("{open} {end}");
        list.push(writer.say_of("times_means", &[("form", Words(&form))]));
    }
    list
}
