//! What can be said of a sample in numbers, by name.

use std::collections::BTreeMap;
use std::f64::consts::TAU;

use super::sample::{LessonSample, SampleRule, growth};
use crate::error::{Error, Result};
use crate::extent::StitchSize;
use crate::lesson::curvature::{ClosedEnds, CurvatureSum};
use crate::piece::gauge::Gauge;
use crate::piece::given::Start;
use crate::sentence::Sentence;

/// Stitches a learner works in a minute: half of what a maker is reckoned with. Common
/// practice, no source.
const LEARNER_PACE: f64 = 6.0;

/// Minutes it takes to begin and to look at what was made.
const AROUND_IT: f64 = 2.0;

/// A number with what is needed to say it.
#[derive(Debug, Clone, PartialEq)]
pub enum Figure {
    /// A number and to how many places it is said.
    Number(f64, usize),
    /// A length, mm.
    Length(f64),
    /// Something counted out: stitches round by round.
    Words(String),
}

impl Figure {
    /// Its value; none of words.
    pub fn value(&self) -> Option<f64> {
        match self {
            Self::Number(value, _) | Self::Length(value) => Some(*value),
            Self::Words(_) => None,
        }
    }

    /// It as text, to its places; lengths in mm.
    pub fn text(&self) -> String {
        match self {
            Self::Number(value, places) => number(*value, *places),
            Self::Length(mm) => Sentence::default().rough_mm(*mm).to_string(),
            Self::Words(words) => words.clone(),
        }
    }
}

/// A number to so many places; a minus that is nothing is left out.
fn number(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    let nothing = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if nothing { text.trim_start_matches('-').to_owned() } else { text }
}

/// The figures of one sample.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    of: BTreeMap<&'static str, Figure>,
    /// Curvature of its rounds at rest.
    pub curvature: CurvatureSum,
}

impl SampleRule {
    /// The figures of its rounds in stitches of `gauge`.
    ///
    /// # Errors
    /// As [`SampleRule::at`].
    pub fn figures(self, gauge: Gauge) -> Result<Figures> {
        Ok(Figures::of(self, &self.at(gauge)?, gauge))
    }
}

impl Figures {
    /// The figures of `sample`, which `rule` gave at `gauge`.
    pub fn of(rule: SampleRule, sample: &LessonSample, gauge: Gauge) -> Self {
        let single = gauge.stitch_size();
        let StitchSize { width, height } = rule.stitch_mm(gauge);
        let flat = rule.flat(gauge);
        let rounds = sample.counts.len();
        let start = sample.start.joined().unwrap_or(0);
        let around = std::iter::once(start).chain(sample.counts.iter().copied());
        let around: Vec<f64> = around.map(|n| f64::from(n) * width).collect();
        let ends = ClosedEnds { start: sample.start == Start::Ring, end: sample.stuffed };
        let curvature = CurvatureSum::of(&around, &vec![height; rounds], ends);
        let last = f64::from(sample.counts.last().copied().unwrap_or(0));
        let most = f64::from(sample.counts.iter().copied().max().unwrap_or(0));
        let least = f64::from(sample.counts.iter().copied().min().unwrap_or(0));
        let gain = (last - f64::from(start)) / rounds.max(1) as f64;
        let out = rounds as f64 * height;
        let plain = |value| Figure::Number(value, 0);
        let fine = |value| Figure::Number(value, 1);
        let mut of = BTreeMap::from([
            ("stitch_width", Figure::Length(width)),
            ("stitch_height", Figure::Length(height)),
            ("height_over_width", Figure::Number(height / width, 2)),
            ("flat", fine(flat)),
            ("flat_single", fine(TAU * single.height / single.width)),
            ("flat_whole", plain(flat.round())),
            ("two_pi", Figure::Number(TAU, 2)),
            ("gain", plain(gain)),
            ("off_flat", fine((gain - flat).abs())),
            ("rounds", plain(rounds as f64)),
            ("stitches", plain(f64::from(sample.stitches()))),
            ("last", plain(last)),
            ("most", plain(most)),
            ("least", plain(least)),
            ("stitch_degrees", plain((width / height).to_degrees())),
            ("tip_degrees", plain((TAU - TAU * gain / flat).abs().to_degrees())),
            ("full_turn", plain(360.0)),
            ("half_turn", plain(180.0)),
            ("whole_ball", plain(720.0)),
            ("out", Figure::Length(out)),
            ("rim", Figure::Length(last * width)),
            ("flat_rim", Figure::Length(TAU * out)),
            ("rim_times", fine(last * width / (TAU * out))),
            ("across", Figure::Length(most * width / std::f64::consts::PI)),
            ("counts", Figure::Words(counted(&sample.counts))),
            ("minutes", plain(minutes(sample))),
        ]);
        if gain > 0.0 && gain <= flat {
            of.insert("share", Figure::Number(gain / flat, 2));
            of.insert("pressed_degrees", plain(180.0 * gain / flat));
            of.insert("opening_degrees", plain(2.0 * (gain / flat).asin().to_degrees()));
        }
        if let SampleRule::Ball { middle } = rule {
            let middle = f64::from(middle);
            of.insert("half_way", plain((middle * std::f64::consts::FRAC_PI_4.sin()).round()));
            of.insert("half_of_middle", plain(0.5 * middle));
        }
        if let SampleRule::Hyperbolic { every, .. } = rule {
            of.insert("every", plain(f64::from(every)));
            of.insert("radius", Figure::Length(height / growth(every)));
        }
        if let SampleRule::Cylinder { bottom, .. } = rule {
            let edge = curvature.edges.get((bottom as usize).saturating_sub(1));
            let missing = edge.map_or(0.0, |edge| edge.missing_rad);
            of.insert("bottom", plain(f64::from(bottom)));
            of.insert("turn_up_degrees", plain(missing.to_degrees()));
        }
        if let SampleRule::Neck { rounds: waist, .. } = rule {
            let edge = curvature.edges.get((waist as usize).saturating_sub(1));
            let missing = edge.map_or(0.0, |edge| edge.missing_rad);
            of.insert("waist", plain(f64::from(waist)));
            of.insert("waist_degrees", plain(missing.abs().to_degrees()));
        }
        Self { of, curvature }
    }

    /// The figure called `name`.
    pub fn get(&self, name: &str) -> Option<&Figure> {
        self.of.get(name)
    }

    /// Names of all of them, in the order of the alphabet.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.of.keys().copied()
    }

    /// `text` with every name in braces filled in, by `more` or by a figure; lengths stay
    /// lengths.
    ///
    /// # Errors
    /// Names what stands in braces and is no figure.
    pub fn filled(&self, text: &str, more: &[(&str, &str)]) -> Result<Sentence> {
        let mut said = Sentence::default();
        let mut rest = text;
        while let Some((before, after)) = rest.split_once('{') {
            let Some((name, after)) = after.split_once('}') else {
                return Err(Error::new(
                    "lesson",
                    format!("“{text}” opens a brace and does not close it"),
                    "close it",
                ));
            };
            said = said.words(before);
            let given = more.iter().find(|(given, _)| *given == name);
            said = match (given, self.of.get(name)) {
                (Some((_, words)), _) => said.words(*words),
                (None, Some(Figure::Length(mm))) => said.mm(*mm),
                (None, Some(figure)) => said.words(figure.text()),
                (None, None) => {
                    return Err(Error::new(
                        "lesson",
                        format!("“{name}” in “{text}” is no figure of this step"),
                        format!("use one of {}", self.names().collect::<Vec<_>>().join(", ")),
                    ));
                }
            };
            rest = after;
        }
        Ok(said.words(rest))
    }
}

/// Minutes to work `sample` by hand, for a learner.
pub fn minutes(sample: &LessonSample) -> f64 {
    (f64::from(sample.stitches()) / LEARNER_PACE + AROUND_IT).ceil()
}

fn counted(counts: &[u32]) -> String {
    counts.iter().map(u32::to_string).collect::<Vec<_>>().join(", ")
}
