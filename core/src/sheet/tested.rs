//! For testers and of them: the form they fill in, and what they got against the forecast, in
//! words and as a plot.

use std::collections::BTreeMap;

use serde::Serialize;

use super::blurb::BlurbForm;
use super::length::{amount, cm, number, time};
use super::plain::{escaped, one_line};
use super::{PieceSheet, Sheet};
use crate::error::{Result, is_unseen};
use crate::picture::drawing::{Drawing, Pen, width_of};
use crate::project::Project;
use crate::project::testers::{TestSpread, Tested};
use crate::words::write::Fill::{Number, Words};
use crate::words::write::Writer;

/// The form that a tester fills in: what the pattern says, and room for what came out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TesterForm {
    /// `For testers of Acorn`.
    pub title: String,
    /// What is asked of them, in a sentence.
    pub thanks: String,
    /// Lines to fill in, of the tester: the name, the date.
    pub who: Vec<String>,
    /// Heading over what the pattern says.
    pub ours: String,
    /// Heading over what came out.
    pub yours: String,
    /// What is asked of each piece.
    pub pieces: Vec<TesterPiece>,
    /// Above the room for notes.
    pub notes: String,
}

/// What is asked of a piece.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TesterPiece {
    /// Its name.
    pub name: String,
    /// What is asked, and what the pattern says of it, which may be nothing.
    pub rows: Vec<(String, String)>,
}

/// The form for testers of the pattern called `title`.
pub(super) fn form(
    title: &str,
    pieces: &[PieceSheet],
    labels: &BTreeMap<&'static str, String>,
    writer: &Writer<'_>,
) -> TesterForm {
    let say = |name: &str| writer.say(name);
    let pieces = pieces.iter().map(|piece| TesterPiece {
        name: piece.name.clone(),
        rows: rows(piece, labels, writer),
    });
    TesterForm {
        title: writer.say_of("tester_title", &[("title", Words(title))]),
        thanks: say("tester_thanks"),
        who: vec![say("tester_name"), say("tester_date")],
        ours: say("tester_forecast"),
        yours: say("tester_yours"),
        pieces: pieces.collect(),
        notes: say("tester_notes"),
    }
}

/// The form for testers of `sheet` as a text, to be filled in.
pub fn tester_form(sheet: &Sheet, form: BlurbForm) -> String {
    let asked = &sheet.tester;
    let text = |words: &str| match form {
        BlurbForm::Plain => words.chars().filter(|&c| !is_unseen(c)).collect(),
        BlurbForm::Markdown => escaped(words),
    };
    let mut out = String::new();
    let mut put = |line: String| {
        out.push_str(line.trim_end());
        out.push('\n');
    };
    put(match form {
        BlurbForm::Plain => text(&asked.title),
        BlurbForm::Markdown => format!("# {}", text(&asked.title)),
    });
    if !sheet.version.is_empty() {
        put(text(&sheet.version));
    }
    put(format!("\n{}", text(&asked.thanks)));
    let colon = &sheet.colon;
    for who in &asked.who {
        put(format!("\n{}{colon} {LINE}", text(who)));
    }
    for piece in &asked.pieces {
        put(match form {
            BlurbForm::Plain => format!("\n{}", text(&piece.name)),
            BlurbForm::Markdown => format!("\n## {}", text(&piece.name)),
        });
        put(String::new());
        match form {
            BlurbForm::Markdown => {
                let (ours, yours) = (text(&asked.ours), text(&asked.yours));
                put(format!("| | {ours} | {yours} |\n|---|---|---|"));
                for (what, ours) in &piece.rows {
                    put(format!("| {} | {} | |", text(what), text(ours)));
                }
            }
            BlurbForm::Plain => {
                for (what, ours) in &piece.rows {
                    let ours =
                        if ours.is_empty() { String::new() } else { format!(" ({ours})") };
                    put(format!("{}{}{colon} {LINE}", text(what), text(&ours)));
                }
            }
        }
    }
    put(format!("\n{}{colon}\n\n{LINE}\n\n{LINE}\n\n{LINE}", text(&asked.notes)));
    out
}

/// Room to write on.
const LINE: &str = "______________________________";

/// What is asked of a piece, and what the pattern says of it.
fn rows(
    piece: &PieceSheet,
    labels: &BTreeMap<&'static str, String>,
    writer: &Writer<'_>,
) -> Vec<(String, String)> {
    let sizes = |of: fn(&super::SizeSheet) -> &str| {
        piece.sizes.iter().map(of).collect::<Vec<_>>().join("; ")
    };
    let label = |name: &str| labels.get(name).cloned().unwrap_or_default();
    vec![
        (writer.say("tester_gauge"), piece.gauge_short.clone()),
        (writer.say("tester_hook"), piece.hook.clone()),
        (label("height"), sizes(|size| &size.tall)),
        (label("width"), sizes(|size| &size.wide)),
        (writer.say("tester_yarn"), String::new()),
        (writer.say("tester_stuffing"), String::new()),
        (writer.say("tester_time"), String::new()),
    ]
}

/// What testers got, a line each: `Ball, Height: testers got 11.2–12.0 cm (5); the pattern says
/// 11.6 cm.`
///
/// # Errors
/// Where the project's words are not known.
pub fn testers_got(project: &Project, spreads: &[TestSpread]) -> Result<String> {
    let writer = project.wording.writer()?;
    let mut out = String::new();
    for spread in spreads {
        let piece = one_line(project.name_of(spread.piece));
        out.push_str(&format!("{piece}, {}\n", said(spread, &writer)));
    }
    Ok(out)
}

fn said(spread: &TestSpread, writer: &Writer<'_>) -> String {
    let (low, high) = spread.range();
    let figure = |value: f64| match spread.tested {
        Tested::Height | Tested::Width => cm(value, writer),
        Tested::Stitches | Tested::Rounds => number(value, writer),
        Tested::Yarn | Tested::Stuffing => format!("{} g", amount(value, writer)),
        Tested::Minutes => time(value, writer),
    };
    let (least, most, wanted) = (figure(low), figure(high), figure(spread.forecast));
    // One unit for both ends.
    let unit = least.rsplit_once(' ').map_or("", |(_, unit)| unit);
    let lean = match (spread.tested, least.strip_suffix(unit)) {
        (Tested::Minutes, _) | (_, None) => least.clone(),
        (_, Some(bare)) => bare.trim_end().to_owned(),
    };
    let name = if spread.got.len() == 1 { "testers_got_one" } else { "testers_got" };
    let told = writer.say_of(
        name,
        &[
            ("low", Words(if spread.got.len() == 1 { &least } else { &lean })),
            ("high", Words(&most)),
            ("n", Number(spread.got.len() as u32)),
            ("wanted", Words(&wanted)),
        ],
    );
    format!("{}{}: {told}", what(spread.tested, writer), writer.phrases().before_colon)
}

fn what(tested: Tested, writer: &Writer<'_>) -> String {
    match tested {
        Tested::Stitches => writer.say("count_column"),
        Tested::Rounds => writer.say("rounds_column"),
        Tested::Height => writer.say("height"),
        Tested::Width => writer.say("width"),
        Tested::Yarn => writer.lexicon().yarn.one.clone(),
        Tested::Stuffing => writer.say("what_stuffing"),
        Tested::Minutes => writer.say("tester_time"),
    }
}

/// Width of the plot, mm, and how far its ends are from the forecast, as a share of it.
const WIDE: f32 = 90.0;
const REACH: f64 = 0.3;
/// From row to row and height of type, mm.
const ROW: f32 = 7.0;
const TYPE: f32 = 3.0;

/// What testers got as dots against the forecast, a row each, from 30 % less to 30 % more; those
/// beyond stand at the edge.
///
/// # Errors
/// Where the project's words are not known.
pub fn testers_plot(project: &Project, spreads: &[TestSpread]) -> Result<Drawing> {
    let writer = project.wording.writer()?;
    let (ink, soft, dot) = ([38, 36, 33], [138, 123, 94], [62, 125, 138]);
    let mut plot = Drawing::default();
    let labels: Vec<String> = spreads
        .iter()
        .map(|s| format!("{}, {}", one_line(project.name_of(s.piece)), what(s.tested, &writer)))
        .collect();
    let aside = labels.iter().map(|label| width_of(label, TYPE)).fold(0.0, f32::max) + 4.0;
    let x = |share: f64| {
        let at = (share / REACH).clamp(-1.0, 1.0) as f32;
        aside + 0.5 * WIDE * (1.0 + at)
    };
    let tall = ROW * spreads.len() as f32;
    for (share, label) in
        [(-0.3, "−30 %"), (-0.15, "−15 %"), (0.0, "0"), (0.15, "+15 %"), (0.3, "+30 %")]
    {
        let pen = Pen::new(soft, if share == 0.0 { 0.5 } else { 0.18 });
        plot.line([[x(share), 0.0], [x(share), tall]].to_vec(), pen);
        plot.words(label, [x(share), tall + TYPE], 0.85 * TYPE, ink, false);
    }
    for (row, (spread, label)) in spreads.iter().zip(labels).enumerate() {
        let y = ROW * (row as f32 + 0.5);
        plot.words_from(label, [0.0, y], TYPE, ink, false);
        let share = |value: f64| value / spread.forecast.max(1e-9) - 1.0;
        let (low, high) = spread.range();
        plot.line(vec![[x(share(low)), y], [x(share(high)), y]], Pen::new(dot, 0.4));
        for &value in &spread.got {
            let (cx, r) = (x(share(value)), 1.1);
            let corner = |k: u32| {
                let turn = std::f32::consts::TAU * k as f32 / 16.0;
                [cx + r * turn.cos(), y + r * turn.sin()]
            };
            plot.area((0..16).map(corner).collect::<Vec<_>>(), Some(dot), None);
        }
    }
    Ok(plot)
}
