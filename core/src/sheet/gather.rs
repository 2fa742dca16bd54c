//! What a sheet says, gathered from a project and its plans.

use super::abbreviations::{abbreviations, forms};
use super::floats::long_floats;
use super::labels::labels;
use super::length::{
    amount, cm, inches, knows_inches, length, millimetres, number, time, whole_length,
};
use super::needs::{inner_needs, needed};
use super::plain::{language, one_line};
use super::steps::steps;
use super::toy::{minded, put_together, time_line, toy_of, with_needed};
use super::{
    Materials, Pictures, PieceSheet, Sheet, SizeSheet, SizedPlan, Step, ToyPictures, ToySheet,
    blurb, hook_size, level, sizes, special, spoken,
};
use crate::error::Result;
use crate::extent::{Bounds, Extent};
use crate::picture::chart::SingleSymbol;
use crate::piece::Piece;
use crate::piece::cloth::Kind;
use crate::piece::gauge::Gauge;
use crate::plan::placement::Stitch;
use crate::plan::warning::{Misfit, Warning, WarningKind};
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::project::companion::instructions;
use crate::project::sizes::{at_all_sizes, size_names};
use crate::toy::steps as steps_of;
use crate::words::wording::{Wording, words};
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Writer, capitalised};

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
        .map(|at| {
            let mut plans = at.pieces.iter().map(planned).collect::<Result<Vec<_>>>()?;
            let empty = at.pieces.iter().zip(&mut plans).filter(|(p, _)| !at.stuffs(p.id));
            empty.for_each(|(_, plan)| plan.leave_empty());
            Ok(plans)
        })
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
    let writer = project.wording.writer()?;
    // Not at the end of a piece: where its sizes are told apart, that is said size by size.
    for piece in &project.pieces {
        let name = one_line(&piece.name);
        for told in instructions(&at[0], &plans[0], piece.id, &writer) {
            let what = told.to_string();
            sheet.assembly.push(match names.first() {
                None => format!("{name}{}: {what}", writer.phrases().before_colon),
                Some(size) => {
                    let values = [
                        ("piece", Words(&name)),
                        ("size", Words(size)),
                        ("what", Words(&what)),
                    ];
                    writer.say_of("in_size", &values)
                }
            });
        }
    }
    for (k, (project, plans)) in at.iter().zip(&plans).enumerate() {
        let Some(toy) = toy_of(project, plans) else { break };
        let size = names.get(k).copied().unwrap_or_default();
        let steps = steps_of(project, &toy, &writer);
        let first_step = sheet.assembly.len();
        sheet.assembly.extend(put_together(&steps, size));
        if k == 0 {
            let needed = needed(project, &toy, &writer);
            let time = time_line(&sheet.materials.time, &writer);
            with_needed(&mut sheet.materials.lines, needed, &time);
            let pictures = ToyPictures::of(project, plans, &toy, &steps, &writer);
            sheet.toy = Some(ToySheet { first_step, steps: steps.len(), pictures });
            // Its own list ends with the same last word.
            sheet.cautions.pop();
            sheet.cautions.extend(minded(project, &toy, &writer));
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
    let level = level::level(project, &first, &writer);
    let assembled = !project.assembly.trim().is_empty() || !project.toy.parts.is_empty();
    Ok(Sheet {
        title: one_line(&project.title),
        designer: one_line(&project.designer),
        licence: one_line(&project.licence),
        version: version(&project.version, &writer),
        language: language(&lexicon.code),
        terms: lexicon.name.clone(),
        unchecked: match lexicon.checked {
            true => String::new(),
            false => writer.phrases().unchecked.clone(),
        },
        intro: blurb::intro(&sheets, &level, &writer),
        included: blurb::included(&sheets, assembled, &writer),
        script: spoken::spoken(project, &first, &writer),
        level,
        notes: paragraphs(&project.notes),
        assembly: paragraphs(&project.assembly),
        toy: None,
        materials: {
            let mut materials = materials(project, pieces, &first, &writer);
            let time = time_line(&materials.time, &writer);
            with_needed(&mut materials.lines, inner_needs(&first, &writer), &time);
            materials
        },
        abbreviations: abbreviations(&sheets, decreases_single(&first), &writer),
        forms: forms(&sheets, &writer),
        specials: special::specials(&first, &writer),
        round_word: lexicon.round.brief(1).to_owned(),
        labels: labels(&writer),
        colon: writer.phrases().before_colon.clone() + ":",
        pieces: sheets,
        cautions: usual_cautions(&writer),
    })
}

/// Whether all decreases are of single crochet: those are worked so that they do not show.
fn decreases_single(plans: &[SizedPlan<'_>]) -> bool {
    let mut rounds = plans.iter().flat_map(|sized| &sized.plan.rounds);
    rounds.all(|r| r.kind == Kind::Single || r.placement.number_of(Stitch::Decrease) == 0)
}

/// What is needed; where pieces come in several sizes, of the first of them.
fn materials(
    project: &Project,
    pieces: &[&[SizedPlan<'_>]],
    first: &[SizedPlan<'_>],
    writer: &Writer<'_>,
) -> Materials {
    let named = pieces.iter().filter(|sizes| sizes.len() > 1).find_map(|sizes| sizes.first());
    let of_size = named.map_or_else(String::new, |size| one_line(size.name));
    Materials::of(project, first, &of_size, writer)
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
        steps(project, sized.piece.working, sized.plan, wording, writer)
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
    let size_of = |sized| size_sheet(project, sized, several, writer);
    let mut size_sheets: Vec<SizeSheet> = sizes.iter().map(size_of).collect();
    let (steps, closing) = together.unwrap_or_else(|| {
        for ((sheet, steps), wording) in size_sheets.iter_mut().zip(all_steps).zip(&wordings) {
            sheet.steps = steps;
            sheet.closing.clone_from(&wording.closing);
        }
        (Vec::new(), Vec::new())
    });
    let most = sizes.iter().flat_map(|s| &s.plan.rounds).map(|r| r.count).max();
    let hook = hook_size(piece.gauge.hook_mm, writer);
    Some(PieceSheet {
        name: named(piece, writer),
        copies: piece.copies,
        sizes: size_sheets,
        gauge: gauge_text("gauge_text", &piece.gauge, writer),
        gauge_short: gauge_text("gauge_short", &piece.gauge, writer),
        hooked: writer.say_of("hook_of", &[("size", Words(&hook))]),
        hook,
        stuffed: match is_empty(plan) {
            true => writer.say("left_empty"),
            false => writer.say_of("stuffed_how", &[("how", Words(&stuffed(piece, writer)))]),
        },
        steps,
        most_stitches: most.unwrap_or(0),
        opening: told(|w| &w.opening).unwrap_or_else(|| own(|w| &w.opening)),
        closing,
        warnings: warnings(piece, plan, writer),
        pictures: Pictures::of(project, piece, plan, single, writer),
    })
}

/// What a maker can act on; pins, rules and outlines are the designer's.
fn warnings(piece: &Piece, plan: &Plan, writer: &Writer<'_>) -> Vec<String> {
    let mut told = Vec::new();
    for warning in &plan.warnings {
        let here = place(warning, writer);
        let at = [("where", Words(&here))];
        match warning.kind {
            WarningKind::Corner => {
                let of = |m: &&Misfit| m.rounds()[..] == warning.rounds[..];
                if let Some(misfit) = plan.misfits.iter().find(of) {
                    let gap = gap(misfit, plan, &here, writer);
                    told.push(format!("{gap} {}", writer.say("corner")));
                }
            }
            WarningKind::Wrinkle => told.push(writer.say_of("wrinkles", &at)),
            WarningKind::Flat => told.push(writer.say_of("level_cloth", &at)),
            WarningKind::Oval => told.push(writer.say("oval_guess")),
            WarningKind::Unsettled => told.push(writer.say("unsettled")),
            WarningKind::Float => told.push(long_floats(plan, &here, warning, writer)),
            _ => {}
        }
    }
    for kind in piece.unmeasured_kinds() {
        let name = writer.lexicon().kind(kind.into()).brief(1);
        let times = writer.figure(&kind.default_height().to_string());
        let values = [("kind", Words(name)), ("times", Words(&times))];
        told.push(writer.say_of("assumed_height", &values));
    }
    told
}

/// `At rounds 10–12`, within the sentence, so that nobody takes them for rounds to be worked.
fn place(warning: &Warning, writer: &Writer<'_>) -> String {
    match warning.rounds[..] {
        [first, last] if first < last => {
            writer.say_of("at_rounds", &[("first", Number(first)), ("last", Number(last))])
        }
        [round, ..] => writer.say_of("at_round", &[("n", Number(round))]),
        [] => String::new(),
    }
}

/// How the forecast leaves the outline there.
fn gap(misfit: &Misfit, plan: &Plan, here: &str, writer: &Writer<'_>) -> String {
    let name = match (misfit.off_mm > 0.0, misfit.is_at_end(plan.rounds.len())) {
        (true, true) => "sticks_out",
        (false, true) => "falls_short",
        (true, false) => "bulges",
        (false, false) => "stays_in",
    };
    let mm = millimetres(misfit.off_mm.abs(), writer);
    writer.say_of(name, &[("where", Words(here)), ("mm", Words(&mm))])
}

fn size_sheet(
    project: &Project,
    sized: &SizedPlan<'_>,
    several: bool,
    writer: &Writer<'_>,
) -> SizeSheet {
    let Extent { height: height_mm, width: width_mm } = sized.plan.size_mm;
    let (tall, wide) = (cm(height_mm, writer), cm(width_mm, writer));
    let values = [("tall", Words(&tall)), ("wide", Words(&wide))];
    let mut finished = writer.say_of("size_high_wide", &values);
    let mut inch = format!("{} × {}", inches(height_mm), inches(width_mm));
    if let Some(depth) = sized.plan.depth_mm {
        let deep = cm(depth, writer);
        let deep = writer.say_of("size_deep", &[("deep", Words(&deep))]);
        finished.push_str(&format!(", {deep}"));
        inch.push_str(&format!(" × {}", inches(depth)));
    }
    if knows_inches(writer) {
        finished.push_str(&format!(" ({inch})"));
    }
    let estimate = &sized.plan.estimate;
    let rounds = sized.plan.rounds.len() as u32;
    let rows = writer.say_n("rounds", rounds, &[]);
    let mut total = writer.say_n("total", estimate.stitches, &[("rows", Words(&rows))]);
    if several {
        let used = estimate.yarn.iter();
        let grams: f64 = used.map(|u| project.yarns[u.yarn].grams(u.metres)).sum();
        let Bounds { low, high } = estimate.stuffing_g;
        let told = [amount(grams, writer), amount(low, writer), amount(high, writer)];
        let [yarn, low, high] = &told;
        let time = time(estimate.minutes, writer);
        let values = [
            ("yarn", Words(yarn)),
            ("low", Words(low)),
            ("high", Words(high)),
            ("time", Words(&time)),
        ];
        total.push_str(", ");
        let name = if is_empty(sized.plan) { "total_each_empty" } else { "total_each" };
        total.push_str(&writer.say_of(name, &values));
    }
    let measured = match is_empty(sized.plan) {
        true => writer.say("measured_empty"),
        false => {
            let how = stuffed(sized.piece, writer);
            writer.say_of("measured_on", &[("how", Words(&how))])
        }
    };
    SizeSheet {
        name: sized.name.to_owned(),
        height_mm,
        width_mm,
        tall: length(height_mm, writer),
        wide: length(width_mm, writer),
        deep: sized.plan.depth_mm.map(|mm| length(mm, writer)),
        stitches: estimate.stitches,
        rounds,
        finished,
        measured_on: capitalised(&measured),
        total,
        steps: Vec::new(),
        closing: Vec::new(),
    }
}

/// Whether it is left without stuffing.
fn is_empty(plan: &Plan) -> bool {
    plan.stuffing.is_empty()
}

fn stuffed(piece: &Piece, writer: &Writer<'_>) -> String {
    writer.say(match piece.firmness.word() {
        "medium" => "medium",
        "soft" => "softly",
        _ => "firmly",
    })
}

fn named(piece: &Piece, writer: &Writer<'_>) -> String {
    let name = one_line(&piece.name);
    match piece.copies {
        1 => name,
        n => writer.say_of("make", &[("name", Words(&name)), ("n", Number(n))]),
    }
}

/// `Version 2`; nothing where none is given.
fn version(version: &str, writer: &Writer<'_>) -> String {
    match one_line(version).as_str() {
        "" => String::new(),
        version => writer.say_of("version", &[("version", Words(version))]),
    }
}

fn paragraphs(text: &str) -> Vec<String> {
    text.lines().map(one_line).filter(|line| !line.is_empty()).collect()
}

fn gauge_text(name: &str, gauge: &Gauge, writer: &Writer<'_>) -> String {
    let across = number(100.0 / gauge.stitch_width_mm(), writer);
    let up = number(100.0 / gauge.round_height_mm(), writer);
    let length = whole_length(100.0, writer);
    let values = [("across", Words(&across)), ("up", Words(&up)), ("length", Words(&length))];
    writer.say_of(name, &values)
}

/// The usual cautions for a stuffed thing without attachments. Figures only from sources
/// that could be read: 16 CFR 1501.4 and the small parts guidance of the United States Consumer
/// Product Safety Commission.
fn usual_cautions(writer: &Writer<'_>) -> Vec<String> {
    ["caution_small", "caution_sew", "caution_rules"].map(|name| writer.say(name)).into()
}
