//! What `plumpline rounds --json` prints: every figure of a plan under a stable name.

use plumpline_core::Bounds;
use plumpline_core::Sentence;
use plumpline_core::placement::Stitch;
use plumpline_core::warning::Warning;
use plumpline_core::{Piece, Plan, Project, Rz, Wording, words};
use serde::Serialize;

use super::seams::SeamJson;

/// All the pieces asked for.
#[derive(Debug, Serialize)]
pub(super) struct Report<'a> {
    pub(super) pieces: Vec<PieceReport<'a>>,
    /// How pieces meet, where they do.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) seams: Vec<SeamJson>,
}

#[derive(Debug, Serialize)]
pub(super) struct PieceReport<'a> {
    piece: &'a str,
    /// The size this is, where one was asked for and the piece has it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) size: Option<&'a str>,
    copies: u32,
    gauge: GaugeReport,
    firmness: f64,
    simplicity: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    chain: Option<u32>,
    rounds: Vec<RoundReport>,
    outline_mm: Vec<[f64; 2]>,
    forecast_mm: Vec<[f64; 2]>,
    height_mm: f64,
    width_mm: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    depth_mm: Option<f64>,
    fit: Option<FitReport>,
    yarn: Vec<YarnReport<'a>>,
    stuffing: StuffingReport,
    minutes: f64,
    warnings: &'a [Warning],
    /// What has to be said of this size.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) notes: Vec<Sentence>,
    /// The piece at every size it has.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) sizes: Vec<Self>,
    /// The wording of all those sizes in one text.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) written: Option<String>,
}

#[derive(Debug, Serialize)]
struct GaugeReport {
    stitch_width_mm: f64,
    round_height_mm: f64,
}

#[derive(Debug, Serialize)]
struct FitReport {
    rms_stitches: f64,
    max_stitches: f64,
    likely_rms_stitches: f64,
}

#[derive(Debug, Serialize)]
struct RoundReport {
    round: u32,
    count: u32,
    text: String,
    stitches: Vec<&'static str>,
    increases: u32,
    decreases: u32,
    hoop_strain: Option<f64>,
}

#[derive(Debug, Serialize)]
struct YarnReport<'a> {
    name: &'a str,
    m: f64,
    g: f64,
    m_low: f64,
    m_high: f64,
    estimate: bool,
}

#[derive(Debug, Serialize)]
struct StuffingReport {
    g_low: f64,
    g_high: f64,
    volume_ml: f64,
}

impl<'a> Report<'a> {
    pub(super) fn new(
        project: &'a Project,
        planned: &[(&'a Piece, &'a Plan)],
    ) -> anyhow::Result<Self> {
        let report =
            |&(piece, plan): &(&'a Piece, &'a Plan)| PieceReport::new(project, piece, plan);
        let pieces = planned.iter().map(report).collect::<anyhow::Result<_>>()?;
        Ok(Self { pieces, seams: Vec::new() })
    }
}

impl<'a> PieceReport<'a> {
    pub(super) fn new(
        project: &'a Project,
        piece: &'a Piece,
        plan: &'a Plan,
    ) -> anyhow::Result<Self> {
        let pair = |p: &Rz| [p.r, p.z];
        let words = words(plan, piece, &project.wording.writer()?);
        Ok(Self {
            piece: &piece.name,
            size: None,
            copies: piece.copies,
            gauge: GaugeReport {
                stitch_width_mm: plan.stitch_mm.width,
                round_height_mm: plan.stitch_mm.height,
            },
            firmness: piece.firmness.0,
            simplicity: piece.simplicity,
            chain: plan.chain,
            rounds: rounds(plan, &words),
            outline_mm: plan.outline.iter().map(pair).collect(),
            forecast_mm: plan.forecast.iter().map(pair).collect(),
            height_mm: plan.size_mm.height,
            width_mm: plan.size_mm.width,
            depth_mm: plan.depth_mm,
            fit: plan.fit.map(|fit| FitReport {
                rms_stitches: fit.rms_stitches,
                max_stitches: fit.max_stitches,
                likely_rms_stitches: plan.likely_rms_stitches,
            }),
            yarn: yarn(project, plan),
            stuffing: StuffingReport {
                g_low: plan.estimate.stuffing_g.low,
                g_high: plan.estimate.stuffing_g.high,
                volume_ml: plan.estimate.volume_ml,
            },
            minutes: plan.estimate.minutes,
            warnings: &plan.warnings,
            notes: Vec::new(),
            sizes: Vec::new(),
            written: None,
        })
    }
}

impl PieceReport<'_> {
    /// What the piece comes to at this size, in a line.
    pub(super) fn summary(&self, size: &str) -> String {
        let stitches: u32 = self.rounds.iter().map(|round| round.count).sum();
        let (metres, grams) =
            self.yarn.iter().fold((0.0, 0.0), |(m, g), yarn| (m + yarn.m, g + yarn.g));
        let minutes = self.minutes.round() as u32;
        format!(
            "{}, {size}: {:.0} × {:.0} mm high × wide, {} rounds, {stitches} stitches, \
             {metres:.1} m or {grams:.1} g of yarn, {:.0}–{:.0} g of stuffing, {} h {:02} min",
            self.piece,
            self.height_mm,
            self.width_mm,
            self.rounds.len(),
            self.stuffing.g_low,
            self.stuffing.g_high,
            minutes / 60,
            minutes % 60
        )
    }
}

fn rounds(plan: &Plan, words: &Wording) -> Vec<RoundReport> {
    plan.rounds
        .iter()
        .zip(&plan.hoop_strains)
        .zip(1..)
        .map(|((round, &hoop_strain), number)| RoundReport {
            round: number,
            count: round.count,
            text: words.text_of(number).to_owned(),
            stitches: round.placement.stitches().map(|s| s.code(round.kind)).collect(),
            increases: round.placement.number_of(Stitch::Increase),
            decreases: round.placement.number_of(Stitch::Decrease),
            hoop_strain,
        })
        .collect()
}

fn yarn<'a>(project: &'a Project, plan: &Plan) -> Vec<YarnReport<'a>> {
    plan.estimate
        .yarn
        .iter()
        .map(|used| {
            let yarn = &project.yarns[used.yarn];
            let Bounds { low: m_low, high: m_high } = used.range();
            YarnReport {
                name: &yarn.name,
                m: used.metres,
                g: yarn.grams(used.metres),
                m_low,
                m_high,
                estimate: true,
            }
        })
        .collect()
}
