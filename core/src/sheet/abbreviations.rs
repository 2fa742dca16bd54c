//! Abbreviations of a sheet, with what stands around them.

use super::{PieceSheet, Step};
use crate::words::StitchKind;
use crate::words::tree::{Op, Placed, Times};
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Below, Writer};

/// Abbreviations that the words around the rounds and the rounds use, forms that need saying
/// (`sc 2`, `( ) × 6`), and what stands at the end of a round.
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
    let rounds: Vec<[&str; 3]> = steps
        .map(|step| match step {
            Step::Rounds(line) => [line.heading.as_str(), &line.text, &line.count],
            // The names of yarns are the maker's.
            Step::Yarn(_) | Step::Stuff(_) => [""; 3],
        })
        .collect();
    let texts = around.iter().map(String::as_str).chain(rounds.iter().copied().flatten());
    let mut list = writer.abbreviations(texts);
    let decrease = writer.lexicon().decrease.brief(1);
    let found = list.iter_mut().find(|(short, _)| invisible && short == decrease);
    if let Some((_, meaning)) = found {
        meaning.clone_from(&writer.phrases().invisible_means);
    }
    list.extend(forms(&rounds, writer));
    list.push((writer.count(24), writer.say("stitches_at_end")));
    list
}

/// The forms of the house that its rounds use and that a beginner may not know.
fn forms(rounds: &[[&str; 3]], writer: &Writer<'_>) -> Vec<(String, String)> {
    let kind = StitchKind::Single;
    let text = |op: Op| writer.text(&[Placed::unread(op)], Below::default());
    let mut list = Vec::new();
    let used = |part: &str| rounds.iter().any(|[_, text, _]| text.contains(part));
    let two = text(Op::Each { kind, count: 2 });
    let name = writer.lexicon().kind(kind).brief(1);
    // Words that say it in full need no saying again.
    let bare = two.split_whitespace().count() == 2;
    let about = [("kind", Words(name)), ("n", Number(2))];
    if bare && used(&two) {
        list.push((two.clone(), writer.say_of("plain_means", &about)));
    }
    let body = vec![
        Placed::unread(Op::Each { kind, count: 2 }),
        Placed::unread(Op::Each { kind, count: 2 }),
    ];
    let group = text(Op::Group { body, times: Times::In(6) });
    let open = group.chars().next().unwrap_or_default();
    let end = group.rfind([')', ']', '}']).and_then(|at| group.get(at..));
    if let Some(end) = end.filter(|_| "([{".contains(open))
        && used(&open.to_string())
    {
        let means = writer.say_of("times_means", &[("n", Number(6))]);
        list.push((format!("{open} {end}"), means));
    }
    list
}
