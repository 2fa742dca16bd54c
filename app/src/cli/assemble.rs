//! `plumpline assemble`: how the parts of a toy go together, what it weighs, how it hangs and
//! stands, as lines or as JSON.

use std::fmt::Write as _;
use std::path::PathBuf;

use anyhow::anyhow;
use clap::Args;
use plumpline_core::project::toy::attachment::{Attachment, CordHold};
use plumpline_core::toy::figures::small_parts::fits;
use plumpline_core::toy::held::{HeldPart, HeldPlace};
use plumpline_core::toy::steps::{misfit_text, part_name, where_held};
use plumpline_core::toy::{Assembled, assembled, cautions, steps};
use plumpline_core::words::Writer;
use plumpline_core::{Project, file, sizes};
use serde::Serialize;

/// Arguments of `plumpline assemble`.
#[derive(Debug, Args)]
pub(super) struct Assemble {
    /// Project file.
    project: PathBuf,
    /// Every figure, as JSON.
    #[arg(long)]
    json: bool,
    /// The toy at the size of this name.
    #[arg(long, value_name = "NAME")]
    size: Option<String>,
}

impl Assemble {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let mut project = file::load(&self.project)?;
        let shown = self.project.display().to_string();
        if let Some(name) = &self.size {
            let at = sizes::at_size(&project, name).map_err(|e| anyhow!("{shown}, {e}"))?;
            project = at.project;
        }
        let toy = assembled(&project).map_err(|e| anyhow!("{shown}, {e}"))?;
        let writer = project.wording.writer()?;
        let report = report(&project, &toy, &writer);
        let out = match self.json {
            true => serde_json::to_string_pretty(&report)? + "\n",
            false => lines(&report),
        };
        super::out::print(&out);
        Ok(())
    }
}

/// What `assemble --json` prints.
#[derive(Debug, Serialize)]
struct AssemblyReport {
    title: String,
    grams: f64,
    grams_low: f64,
    grams_high: f64,
    /// From the start of the first body: to the side, ahead, along its axis.
    centre_of_mass_mm: [f64; 3],
    parts: Vec<PartReport>,
    attachments: Vec<AttachmentReport>,
    hangs: Vec<HangsReport>,
    stands: Option<StandsReport>,
    steps: Vec<StepReport>,
    cautions: Vec<CautionReport>,
}

#[derive(Debug, Serialize)]
struct PartReport {
    part: usize,
    name: String,
    number: usize,
    on: Option<usize>,
    first_round: Option<u32>,
    last_round: Option<u32>,
    stitches_along: Vec<AlongReport>,
    stitches_apart: Option<f64>,
    widest_stitches: Option<f64>,
    around_the_axis: Option<bool>,
    /// Small things: between this round and the next, after these stitches of it.
    between_round: Option<u32>,
    after_stitches: Vec<u32>,
    edge_stitches: Option<f64>,
    edge_mm: Option<f64>,
    footprint_mm: Option<f64>,
    /// The curve, in rounds from the start and turns from the front.
    footprint: Vec<[f64; 2]>,
    fits: bool,
    misfit: Option<String>,
    against_small_parts_cylinder: f64,
    fits_small_parts_cylinder: bool,
    /// The first copy: origin, front and axis in the toy's axes.
    origin_mm: Option<[f64; 3]>,
    front: Option<[f64; 3]>,
    axis: Option<[f64; 3]>,
}

#[derive(Debug, Serialize)]
struct AlongReport {
    round: u32,
    stitches: f64,
}

#[derive(Debug, Default, Serialize)]
struct AttachmentReport {
    kind: &'static str,
    places: Vec<String>,
    length_mm: Option<f64>,
    bears_g: Option<f64>,
    /// Each of the cords that meet above.
    cords: Vec<SlungReport>,
    wire_safety: Option<f64>,
    wire_least_mm: Option<f64>,
    wire_awg: Option<i32>,
    wire_swg: Option<u32>,
    sways_mm_at_tenth_newton: Option<f64>,
}

#[derive(Debug, Serialize)]
struct SlungReport {
    part: usize,
    /// Between this round and the next, after this stitch of it; 0 is before the first.
    between_round: u32,
    after_stitch: u32,
    free_mm: f64,
    /// 0 where it hangs slack.
    bears_g: f64,
}

#[derive(Debug, Serialize)]
struct HangsReport {
    attachment: usize,
    point_mm: [f64; 3],
    grams: f64,
    leans_deg: f64,
    towards: [f64; 3],
}

#[derive(Debug, Serialize)]
struct StandsReport {
    on_parts: Vec<usize>,
    stands: bool,
    tips_at_deg: Option<f64>,
    centre_height_mm: f64,
    rocks: bool,
    comes_upright: Option<bool>,
}

#[derive(Debug, Serialize)]
struct StepReport {
    parts: Vec<usize>,
    attachment: Option<usize>,
    text: String,
}

#[derive(Debug, Serialize)]
struct CautionReport {
    code: &'static str,
    part: Option<usize>,
    attachment: Option<usize>,
    refused: bool,
    text: String,
    source: &'static str,
}

fn report(project: &Project, toy: &Assembled, writer: &Writer<'_>) -> AssemblyReport {
    let held = project.toy.attachments.iter().zip(&toy.held);
    AssemblyReport {
        title: project.title.clone(),
        grams: toy.mass.grams,
        grams_low: toy.grams.0,
        grams_high: toy.grams.1,
        centre_of_mass_mm: toy.mass.centre,
        parts: (0..toy.parts.len()).map(|index| part(project, toy, index)).collect(),
        attachments: held.map(|(a, h)| attachment(project, toy, writer, a, h)).collect(),
        hangs: toy
            .hangings
            .iter()
            .map(|h| HangsReport {
                attachment: h.attachment,
                point_mm: h.point,
                grams: h.mass.grams,
                leans_deg: h.lean_deg,
                towards: h.towards,
            })
            .collect(),
        stands: toy.standing.as_ref().map(|s| StandsReport {
            on_parts: s.on.clone(),
            stands: s.tips.is_some(),
            tips_at_deg: s.tips.map(|(deg, _)| deg),
            centre_height_mm: s.height_mm,
            rocks: s.rocks.is_some(),
            comes_upright: s.rocks,
        }),
        steps: steps(project, toy, writer)
            .into_iter()
            .map(|s| StepReport { parts: s.parts, attachment: s.attachment, text: s.text })
            .collect(),
        cautions: cautions(project, toy, writer)
            .into_iter()
            .map(|c| CautionReport {
                code: c.code,
                part: c.part,
                attachment: c.attachment,
                refused: c.refused,
                text: c.text,
                source: c.source,
            })
            .collect(),
    }
}

fn part(project: &Project, toy: &Assembled, index: usize) -> PartReport {
    let figures = &toy.parts[index];
    let (span, print) = (figures.span.as_ref(), figures.footprint.as_ref());
    let point = figures.point.as_ref();
    let frame = toy.poses.iter().find(|pose| pose.part == index).map(|pose| pose.frame);
    let small_apart = point.and_then(|point| point.apart).map(f64::from);
    PartReport {
        part: index,
        name: part_name(project, index, &Writer::bench()),
        number: figures.number,
        on: project.toy.parts[index].on.map(|seat| seat.part),
        first_round: span.map(|span| span.rounds.0),
        last_round: span.map(|span| span.rounds.1),
        stitches_along: span.map_or_else(Vec::new, |span| {
            let along = span.along.iter();
            along.map(|a| AlongReport { round: a.round, stitches: a.stitches }).collect()
        }),
        stitches_apart: span
            .and_then(|span| span.apart)
            .map(|apart| apart.stitches)
            .or(small_apart),
        widest_stitches: span.map(|span| span.widest),
        around_the_axis: span.map(|span| span.around),
        between_round: point.map(|point| point.round),
        after_stitches: point.map_or_else(Vec::new, |point| point.after.clone()),
        edge_stitches: print.map(|print| print.edge_stitches),
        edge_mm: print.and_then(|print| print.edge_mm),
        footprint_mm: print.map(|print| print.length_mm),
        footprint: print.map_or_else(Vec::new, |print| {
            print.curve.iter().map(|on| [on.round, on.turn]).collect()
        }),
        fits: figures.misfit.is_none(),
        misfit: misfit_text(project, toy, index),
        against_small_parts_cylinder: figures.against_cylinder,
        fits_small_parts_cylinder: fits(figures.against_cylinder),
        origin_mm: frame.map(|frame| frame.origin),
        front: frame.map(|frame| frame.y),
        axis: frame.map(|frame| frame.z),
    }
}

fn attachment(
    project: &Project,
    toy: &Assembled,
    writer: &Writer<'_>,
    attachment: &Attachment,
    held: &HeldPart,
) -> AttachmentReport {
    let place = |hold: CordHold, found: HeldPlace| {
        let place = where_held(project, toy, writer, hold, found);
        format!("{} {place}", part_name(project, hold.part, writer))
    };
    match (attachment, held) {
        (Attachment::Cord(cord), HeldPart::Cord { from, to, length, bears_g }) => {
            let below = cord.to.zip(*to).map(|(hold, found)| place(hold, found));
            AttachmentReport {
                kind: "cord",
                places: std::iter::once(place(cord.from, *from)).chain(below).collect(),
                length_mm: Some(length.all_mm),
                bears_g: Some(*bears_g),
                ..AttachmentReport::default()
            }
        }
        (Attachment::Loop(hanger), HeldPart::Loop { on }) => AttachmentReport {
            kind: "loop",
            places: vec![place(hanger.on, *on)],
            ..AttachmentReport::default()
        },
        (Attachment::Wire(wire), HeldPart::Wire(figures)) => AttachmentReport {
            kind: "wire",
            places: vec![
                place(wire.carries, figures.carries),
                place(wire.stands_in, figures.stands_in),
            ],
            length_mm: Some(figures.cut_mm),
            bears_g: Some(figures.load.grams),
            cords: Vec::new(),
            wire_safety: Some(figures.safety),
            wire_least_mm: figures.least_mm,
            wire_awg: figures.gauges.0,
            wire_swg: figures.gauges.1,
            sways_mm_at_tenth_newton: figures.sways_mm,
        },
        (_, HeldPart::Sling(figures)) => AttachmentReport {
            kind: "cords that meet",
            places: figures
                .legs
                .iter()
                .map(|leg| part_name(project, leg.part, writer))
                .collect(),
            length_mm: Some(figures.all_mm),
            bears_g: Some(figures.bears_g),
            cords: figures
                .legs
                .iter()
                .map(|leg| SlungReport {
                    part: leg.part,
                    between_round: leg.round,
                    after_stitch: leg.after,
                    free_mm: leg.free_mm,
                    bears_g: leg.bears_g,
                })
                .collect(),
            ..AttachmentReport::default()
        },
        (_, HeldPart::Joint { thread_mm }) => AttachmentReport {
            kind: "joint",
            length_mm: Some(*thread_mm),
            ..AttachmentReport::default()
        },
        _ => AttachmentReport::default(),
    }
}

fn lines(report: &AssemblyReport) -> String {
    let mut out = String::new();
    // Writing to a String cannot fail.
    let mut put = |line: String| writeln!(out, "{line}").ok();
    put(format!(
        "{}: about {:.0} g ({:.0}–{:.0} g)",
        report.title, report.grams, report.grams_low, report.grams_high
    ));
    for (number, step) in (1..).zip(&report.steps) {
        put(format!("{number}. {}", step.text));
    }
    for hangs in &report.hangs {
        put(match hangs.leans_deg < 0.05 {
            true => "It hangs upright (as a rigid body)".to_owned(),
            false => format!("It hangs {:.1}° from upright (as a rigid body)", hangs.leans_deg),
        });
    }
    if let Some(stands) = &report.stands {
        put(match (stands.tips_at_deg, stands.comes_upright) {
            (None, _) => "It does not stand: it falls over (as a rigid body)".to_owned(),
            (Some(deg), None) => {
                format!("It stands, and tips at {deg:.1}° (as a rigid body)")
            }
            (Some(_), Some(true)) => {
                "It rocks on one round bottom and comes upright again (as a rigid body)"
                    .to_owned()
            }
            (Some(_), Some(false)) => {
                "It rocks on one round bottom and stays where it falls (as a rigid body)"
                    .to_owned()
            }
        });
    }
    for (number, cord) in report.attachments.iter().flat_map(|a| (1..).zip(&a.cords)) {
        put(match cord.bears_g > 0.0 {
            true => format!(
                "Cord {number} is {:.0} mm and bears {:.0} g",
                cord.free_mm, cord.bears_g
            ),
            false => format!("Cord {number} is {:.0} mm and hangs slack", cord.free_mm),
        });
    }
    for attachment in &report.attachments {
        let Some(safety) = attachment.wire_safety else { continue };
        let least = attachment.wire_least_mm.map_or_else(
            || "no wire of this metal is enough".to_owned(),
            |mm| format!("the least is {mm:.2} mm"),
        );
        put(format!("The wire bears {safety:.1} times what is on it; {least}"));
    }
    let misfits = report.parts.iter().filter_map(|part| part.misfit.as_ref());
    for text in misfits {
        put(format!("Note: {text}"));
    }
    for caution in &report.cautions {
        let source = match caution.source.is_empty() {
            true => String::new(),
            false => format!(" ({})", caution.source),
        };
        put(format!("Caution: {}{source}", caution.text));
    }
    out
}
