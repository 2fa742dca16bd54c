//! What `plumpline rounds --json` prints: every figure of a plan under a stable name.

use plumpline_core::forecast::fit::Fit;
use plumpline_core::placement::Stitch;
use plumpline_core::warning::Warning;
use plumpline_core::{Piece, Plan, Project, Rz};
use serde::Serialize;

/// All the pieces asked for.
#[derive(Debug, Serialize)]
pub(super) struct Report<'a> {
    pieces: Vec<PieceReport<'a>>,
}

#[derive(Debug, Serialize)]
struct PieceReport<'a> {
    piece: &'a str,
    copies: u32,
    gauge: GaugeReport,
    firmness: f64,
    ease: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    chain: Option<u32>,
    rounds: Vec<RoundReport>,
    outline_mm: Vec<[f64; 2]>,
    forecast_mm: Vec<[f64; 2]>,
    height_mm: f64,
    width_mm: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    depth_mm: Option<f64>,
    fit: Option<Fit>,
    yarn: Vec<YarnReport<'a>>,
    stuffing: StuffingReport,
    warnings: &'a [Warning],
}

#[derive(Debug, Serialize)]
struct GaugeReport {
    stitch_width_mm: f64,
    round_height_mm: f64,
}

#[derive(Debug, Serialize)]
struct RoundReport {
    round: usize,
    count: u32,
    text: String,
    stitches: Vec<&'static str>,
    increases: u32,
    decreases: u32,
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
    pub(super) fn new(project: &'a Project, planned: &'a [(&'a Piece, Plan)]) -> Self {
        let report =
            |(piece, plan): &'a (&'a Piece, Plan)| PieceReport::new(project, piece, plan);
        Self { pieces: planned.iter().map(report).collect() }
    }
}

impl<'a> PieceReport<'a> {
    fn new(project: &'a Project, piece: &'a Piece, plan: &'a Plan) -> Self {
        let pair = |p: &Rz| [p.r, p.z];
        Self {
            piece: &piece.name,
            copies: piece.copies,
            gauge: GaugeReport {
                stitch_width_mm: plan.stitch_mm.0,
                round_height_mm: plan.stitch_mm.1,
            },
            firmness: piece.firmness.0,
            ease: piece.ease,
            chain: plan.chain,
            rounds: rounds(plan),
            outline_mm: plan.outline.iter().map(pair).collect(),
            forecast_mm: plan.forecast.iter().map(pair).collect(),
            height_mm: plan.size_mm.0,
            width_mm: plan.size_mm.1,
            depth_mm: plan.depth_mm,
            fit: plan.fit,
            yarn: yarn(project, plan),
            stuffing: StuffingReport {
                g_low: plan.estimate.stuffing_g.0,
                g_high: plan.estimate.stuffing_g.1,
                volume_ml: plan.estimate.volume_ml,
            },
            warnings: &plan.warnings,
        }
    }
}

fn rounds(plan: &Plan) -> Vec<RoundReport> {
    plan.rounds
        .iter()
        .enumerate()
        .map(|(i, round)| RoundReport {
            round: i + 1,
            count: round.count,
            text: round.text.clone(),
            stitches: round.placement.stitches().map(|s| s.code(round.kind)).collect(),
            increases: round.placement.number_of(Stitch::Increase),
            decreases: round.placement.number_of(Stitch::Decrease),
        })
        .collect()
}

fn yarn<'a>(project: &'a Project, plan: &Plan) -> Vec<YarnReport<'a>> {
    plan.estimate
        .yarn
        .iter()
        .map(|used| {
            let yarn = &project.yarns[used.yarn];
            let (m_low, m_high) = used.range();
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
