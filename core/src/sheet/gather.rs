//! What a sheet says, gathered from a project and its plans.

use super::length::{amount, cm, inches, number};
use super::steps::steps;
use super::toy::{minded, put_together, toy_of};
use super::{
    Materials, Pictures, PieceSheet, Sheet, SizeSheet, SizedPlan, Step, hook_size, level,
    sizes, special,
};
use crate::error::Result;
use crate::extent::{Bounds, Extent};
use crate::picture::chart::SingleSymbol;
use crate::piece::Piece;
use crate::piece::gauge::Gauge;
use crate::plan::warning::{Warning, WarningKind};
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::project::companion::instructions;
use crate::project::sizes::{at_all_sizes, size_names};
use crate::words::wording::{Wording, words};
use crate::words::write::Writer;

/// The sheet of every piece of `project`, charts with a cross for single crochet.
///
/// # Errors
/// As [`plan`](plan()), with the piece named.
pub fn sheet(project: &Project) -> Result<Sheet> {
    sheet_with(project, SingleSymbol::default())
}

/// As [`sheet`](sheet()), with the symbol for single crochet.
///
/// # Errors
/// As [`plan`](plan()), with the piece named.
pub fn sheet_with(project: &Project, single: SingleSymbol) -> Result<Sheet> {
    let names = size_names(project);
    let at: Vec<Project> = match names.is_empty() {
        true => vec![project.clone()],
        false => at_all_sizes(project)?.into_iter().map(|at| at.project).collect(),
    };
    let planned =
        |piece: &Piece| plan(piece).map_err(|e| e.within(&format!("piece “{}”", piece.name)));
    let plans = at
        .iter()
        .map(|project| project.pieces.iter().map(planned).collect::<Result<Vec<_>>>())
        .collect::<Result<Vec<_>>>()?;
    let sized = |index: usize| {
        let of = |k: usize, name| SizedPlan {
            name,
            piece: &at[k].pieces[index],
            plan: &plans[k][index],
        };
        let has = |name: &str| project.pieces[index].sizes.iter().any(|s| s.name == name);
        let own: Vec<SizedPlan<'_>> =
            (0..names.len()).filter(|&k| has(names[k])).map(|k| of(k, names[k])).collect();
        // A piece that comes in no sizes is the same in all.
        if own.is_empty() { vec![of(0, "")] } else { own }
    };
    let sized: Vec<Vec<SizedPlan<'_>>> = (0..project.pieces.len()).map(sized).collect();
    let pieces: Vec<&[SizedPlan<'_>]> = sized.iter().map(Vec::as_slice).collect();
    let mut sheet = sheet_of(project, &pieces, single)?;
    // Not at the end of a piece: where its sizes are told apart, that is said size by size.
    let of_size = names.first().map_or_else(String::new, |name| format!(", size {name}"));
    for piece in &project.pieces {
        let who = one_line(&format!("{}{of_size}", piece.name));
        let told = instructions(&at[0], &plans[0], piece.id);
        sheet.assembly.extend(told.iter().map(|words| format!("{who}: {words}")));
    }
    let writer = project.wording.writer()?;
    for (k, (project, plans)) in at.iter().zip(&plans).enumerate() {
        let Some(toy) = toy_of(project, plans) else { break };
        let size = names.get(k).copied().unwrap_or_default();
        sheet.assembly.extend(put_together(project, &toy, size, &writer));
        if k == 0 {
            // Its own list ends with the same last word.
            sheet.cautions.pop();
            sheet.cautions.extend(minded(project, &toy));
        }
    }
    Ok(sheet)
}

/// The sheet of pieces that are planned already, each in one size or several.
///
/// # Errors
/// Where the project's words are not known.
pub fn sheet_of(
    project: &Project,
    pieces: &[&[SizedPlan<'_>]],
    single: SingleSymbol,
) -> Result<Sheet> {
    let writer = project.wording.writer()?;
    let first: Vec<SizedPlan<'_>> =
        pieces.iter().filter_map(|sizes| sizes.first().copied()).collect();
    let sheets: Vec<PieceSheet> = pieces
        .iter()
        .filter_map(|sizes| piece_sheet(project, sizes, &writer, single))
        .collect();
    let lexicon = writer.lexicon();
    Ok(Sheet {
        title: one_line(&project.title),
        designer: one_line(&project.designer),
        licence: one_line(&project.licence),
        language: language(&lexicon.code),
        terms: lexicon.name.clone(),
        unchecked: match lexicon.checked {
            true => String::new(),
            false => writer.phrases().unchecked.clone(),
        },
        level: level::level(project, &first),
        notes: paragraphs(&project.notes),
        assembly: paragraphs(&project.assembly),
        materials: materials(project, pieces, &first),
        abbreviations: abbreviations(&sheets, &writer),
        specials: special::specials(&first, &writer),
        round_word: lexicon.round.brief(1).to_owned(),
        pieces: sheets,
        cautions: usual_cautions(),
    })
}

/// What is needed; where pieces come in several sizes, of the first of them.
fn materials(
    project: &Project,
    pieces: &[&[SizedPlan<'_>]],
    first: &[SizedPlan<'_>],
) -> Materials {
    let named = pieces.iter().filter(|sizes| sizes.len() > 1).find_map(|sizes| sizes.first());
    let of_size = named.map_or_else(String::new, |size| one_line(size.name));
    Materials { of_size, ..Materials::of(project, first) }
}

fn piece_sheet(
    project: &Project,
    sizes: &[SizedPlan<'_>],
    writer: &Writer<'_>,
    single: SingleSymbol,
) -> Option<PieceSheet> {
    let &SizedPlan { piece, plan, .. } = sizes.first()?;
    let wordings: Vec<Wording> = sizes.iter().map(|s| words(s.plan, s.piece, writer)).collect();
    let steps_of = |(sized, wording): (&SizedPlan<'_>, &Wording)| {
        steps(project, sized.plan, wording, writer)
    };
    let all_steps: Vec<Vec<Step>> = sizes.iter().zip(&wordings).map(steps_of).collect();
    let told = |of: fn(&Wording) -> &[String]| -> Option<Vec<String>> {
        let longest = wordings.iter().map(|w| of(w).len()).max().unwrap_or(0);
        let line = |i: usize| {
            let texts = wordings.iter().map(|w| of(w).get(i).map(String::as_str));
            sizes::agreed(&texts.collect::<Option<Vec<_>>>()?)
        };
        (0..longest).map(line).collect()
    };
    let own = |of: fn(&Wording) -> &[String]| of(&wordings[0]).to_vec();
    let together = sizes::together(&all_steps).zip(told(|w| &w.closing));
    let several = sizes.len() > 1;
    let size_of = |sized| size_sheet(project, sized, several);
    let mut size_sheets: Vec<SizeSheet> = sizes.iter().map(size_of).collect();
    let (steps, closing) = together.unwrap_or_else(|| {
        for ((sheet, steps), wording) in size_sheets.iter_mut().zip(all_steps).zip(&wordings) {
            sheet.steps = steps;
            sheet.closing.clone_from(&wording.closing);
        }
        (Vec::new(), Vec::new())
    });
    let most = sizes.iter().flat_map(|s| &s.plan.rounds).map(|r| r.count).max();
    Some(PieceSheet {
        name: named(piece),
        copies: piece.copies,
        sizes: size_sheets,
        gauge: gauge_text(&piece.gauge),
        gauge_counts: gauge_counts(&piece.gauge),
        hook: hook_size(piece.gauge.hook_mm),
        stuffed: stuffed(piece),
        steps,
        most_stitches: most.unwrap_or(0),
        opening: told(|w| &w.opening).unwrap_or_else(|| own(|w| &w.opening)),
        closing,
        warnings: warnings(plan),
        pictures: Pictures::of(project, piece, plan, single),
    })
}

/// What a maker can act on; pins, rules and outlines are the designer's.
fn warnings(plan: &Plan) -> Vec<String> {
    use WarningKind::{Corner, Flat, Oval, Swatch, Unsettled, Wrinkle};
    const FOR_MAKERS: [WarningKind; 6] = [Corner, Wrinkle, Flat, Swatch, Unsettled, Oval];
    let theirs = plan.warnings.iter().filter(|w| FOR_MAKERS.contains(&w.kind));
    theirs.map(for_makers).collect()
}

/// The rounds within the sentence, so that nobody takes them for rounds to be worked:
/// `At rnds 10–12 it stays in 5 mm.`
fn for_makers(warning: &Warning) -> String {
    match warning.named() {
        Some(rounds) => format!("At {} {}", rounds.to_lowercase(), warning.what),
        None => warning.what.to_string(),
    }
}

fn size_sheet(project: &Project, sized: &SizedPlan<'_>, several: bool) -> SizeSheet {
    let Extent { height: height_mm, width: width_mm } = sized.plan.size_mm;
    let mut finished = format!("{} high, {} wide", cm(height_mm), cm(width_mm));
    let mut inch = format!("{} by {}", inches(height_mm), inches(width_mm));
    if let Some(depth) = sized.plan.depth_mm {
        finished.push_str(&format!(", {} deep", cm(depth)));
        inch.push_str(&format!(" by {}", inches(depth)));
    }
    finished.push_str(&format!(" ({inch})"));
    let estimate = &sized.plan.estimate;
    let rounds = sized.plan.rounds.len();
    let mut total = format!("{} stitches in all, {rounds} rounds", estimate.stitches);
    if several {
        let used = estimate.yarn.iter();
        let grams: f64 = used.map(|u| project.yarns[u.yarn].grams(u.metres)).sum();
        let Bounds { low, high } = estimate.stuffing_g;
        total.push_str(&format!(
            ", about {} g of yarn, {}–{} g of stuffing, {:.0} min each",
            amount(grams),
            amount(low),
            amount(high),
            estimate.minutes
        ));
    }
    SizeSheet {
        name: sized.name.to_owned(),
        height_mm,
        width_mm,
        finished,
        measured_on: format!(
            "Stuffed {}; forecast from the gauge, not measured on a finished piece.",
            stuffed(sized.piece)
        ),
        total,
        steps: Vec::new(),
        closing: Vec::new(),
    }
}

fn stuffed(piece: &Piece) -> &'static str {
    match piece.firmness.word() {
        "medium" => "to medium firmness",
        "soft" => "softly",
        _ => "firmly",
    }
}

fn named(piece: &Piece) -> String {
    let name = one_line(&piece.name);
    match piece.copies {
        1 => name,
        n => format!("{name} (make {n})"),
    }
}

/// User text kept to one line, control characters dropped.
fn one_line(text: &str) -> String {
    text.split_whitespace()
        .map(|word| word.chars().filter(|c| !c.is_control()).collect::<String>())
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

fn paragraphs(text: &str) -> Vec<String> {
    text.lines().map(one_line).filter(|line| !line.is_empty()).collect()
}

/// A lexicon's code as a BCP 47 tag.
fn language(code: &str) -> String {
    match code {
        "en-us" => "en-US".into(),
        "en-uk" => "en-GB".into(),
        other => other.into(),
    }
}

fn gauge_counts(gauge: &Gauge) -> (String, String) {
    (number(100.0 / gauge.stitch_width_mm()), number(100.0 / gauge.round_height_mm()))
}

fn gauge_text(gauge: &Gauge) -> String {
    let (stitches, rounds) = gauge_counts(gauge);
    format!(
        "{stitches} sc and {rounds} rounds to 10 cm, worked in the round, right side out, \
         unstuffed"
    )
}

/// Abbreviations that the words around the rounds and the rounds use, and what stands at
/// their end.
fn abbreviations(pieces: &[PieceSheet], writer: &Writer<'_>) -> Vec<(String, String)> {
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
        Step::Yarn(_) | Step::Stuff(_) => [""; 3],
    });
    let mut list = writer.abbreviations(around.iter().map(String::as_str).chain(rounds));
    list.push((writer.count(24), "stitches at the end of the round".into()));
    list
}

/// The usual cautions for a stuffed thing without attachments. Figures only from sources
/// that could be read: 16 CFR 1501.4 and the small parts guidance of the United States Consumer
/// Product Safety Commission.
fn usual_cautions() -> Vec<String> {
    let list = [
        "For a child under 3, embroider features; add no beads, buttons, wire or other parts \
         that could come off. In the United States no such toy, nor any part that comes off \
         it in use, may fit entirely into a cylinder 1.25 in wide and 2.25 in long \
         (16 CFR 1501.4; CPSC small parts guidance).",
        "Sew every opening shut and bury the ends so that no stuffing can be reached.",
        "Before giving or selling it, follow your local rules: they and an accredited test \
         laboratory decide, not this pattern.",
    ];
    list.map(str::to_owned).into()
}
