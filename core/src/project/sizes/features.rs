//! Features that must not scale away: necks, lips and openings, found on the outline.
//!
//! A feature that would come out with fewer stitches than it must have is widened back. The
//! widening is greatest at the feature and falls off, by arc length, to nothing at the body's
//! widest places and its closed ends, so the rest of the outline keeps its form.

use crate::piece::Piece;
use crate::piece::outline::{Outline, Profile};
use crate::plan::Plan;
use crate::plan::counts::Start;
use crate::sentence::Sentence;

/// A neck is at most this share of the narrower of the swells beside it.
const NECK: f64 = 0.9;

/// An opening is at most this share of the widest radius: a wider one is the body itself.
const OPENING: f64 = 0.85;

/// A lip's swell is at most this share of the widest radius.
const LIP: f64 = 0.75;

/// Most of the working between a lip and its end.
const LIP_REACH: f64 = 0.25;

/// Waves of less than this many stitch widths are none.
const WAVE: f64 = 0.1;

/// A feature that is kept never comes nearer to the body's own width than this.
const NARROWER: f64 = 0.96;

/// What a feature is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FeatureKind {
    /// A place narrower than what lies on both its sides.
    Neck,
    /// The swell between a neck and an end.
    Lip,
    /// An open end narrower than the body.
    Opening,
}

impl FeatureKind {
    /// The feature in a word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Neck => "neck",
            Self::Lip => "lip",
            Self::Opening => "opening",
        }
    }
}

/// A feature of a piece as it is planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Feature {
    /// What it is.
    pub kind: FeatureKind,
    /// Where it is, mm of arc length from the start of the outline.
    pub at_mm: f64,
    /// Radius of the outline there, mm.
    pub radius_mm: f64,
    /// Stitches there: the fewest of a neck, the most of a lip, those of an open edge.
    pub stitches: u32,
    /// Share of the working between which it lies.
    within: (f64, f64),
}

/// A turning point of the radius, or an end.
#[derive(Debug, Clone, Copy)]
struct TurningPoint {
    s: f64,
    r: f64,
    swell: bool,
}

/// The turning points of the radius along `profile`, ends included, swells and waists taking
/// turns. Waves of less than `least` mm are none.
fn turns(profile: &Profile, least: f64) -> Vec<TurningPoint> {
    let turn = |i: usize, swell: bool| {
        let st = &profile.stations[i];
        TurningPoint { s: st.s, r: st.at.r, swell }
    };
    let last = profile.stations.len() - 1;
    let (mut turns, mut furthest, mut rising) = (Vec::new(), turn(0, false), None);
    for i in 1..=last {
        let here = turn(i, false);
        let wave = (here.r - furthest.r).abs() > least;
        match rising {
            None if wave => {
                let up = here.r > furthest.r;
                turns.push(turn(0, !up));
                (rising, furthest) = (Some(up), here);
            }
            Some(up) if (here.r >= furthest.r) == up => furthest = here,
            Some(up) if wave => {
                turns.push(TurningPoint { swell: up, ..furthest });
                (rising, furthest) = (Some(!up), here);
            }
            _ => {}
        }
    }
    if turns.is_empty() {
        turns.push(turn(0, false));
    }
    turns.push(turn(last, rising == Some(true)));
    turns
}

/// The features of `piece`, planned as `plan`, in working order.
pub fn features(piece: &Piece, plan: &Plan) -> Vec<Feature> {
    let profile = piece.outline.profile(INTERVALS);
    let turns = turns(&profile, WAVE * piece.gauge.stitch_width_mm());
    let (length, widest) = (profile.length_mm(), profile.widest_mm());
    let last = turns.len() - 1;
    let mut found: Vec<(usize, FeatureKind)> = Vec::new();
    for (i, turn) in turns.iter().enumerate() {
        let inner = i > 0 && i < last;
        if inner && !turn.swell {
            let beside = turns[i - 1].r.min(turns[i + 1].r);
            if turn.r <= NECK * beside {
                found.push((i, FeatureKind::Neck));
            }
        }
        let open = (i == 0 && !piece.outline.starts_closed())
            || (i == last && !piece.outline.finishes_closed());
        if open && turn.r <= OPENING * widest {
            found.push((i, FeatureKind::Opening));
        }
    }
    let necks: Vec<usize> =
        found.iter().filter(|f| f.1 == FeatureKind::Neck).map(|f| f.0).collect();
    for (i, turn) in turns.iter().enumerate().take(last).skip(1) {
        let from_end = turn.s.min(length - turn.s);
        let beyond = necks.iter().any(|&n| match turn.s < 0.5 * length {
            true => n > i,
            false => n < i,
        });
        if turn.swell && beyond && turn.r <= LIP * widest && from_end <= LIP_REACH * length {
            found.push((i, FeatureKind::Lip));
        }
    }
    found.sort_by_key(|f| f.0);
    let feature = |(i, kind): (usize, FeatureKind)| {
        let share = |j: usize| turns[j].s / length;
        let within = (share(i.saturating_sub(1)), share((i + 1).min(last)));
        let (at_mm, radius_mm) = (turns[i].s, turns[i].r);
        let mut feature = Feature { kind, at_mm, radius_mm, stitches: 0, within };
        feature.stitches = feature.stitches_in(plan);
        feature
    };
    found.into_iter().map(feature).collect()
}

/// Intervals in which an outline is sampled to find its features.
const INTERVALS: usize = 400;

impl Feature {
    /// Its stitches in another plan of the same form.
    fn stitches_in(&self, plan: &Plan) -> u32 {
        let rounds = plan.rounds.len();
        let round = |share: f64| (share * rounds as f64).round() as usize;
        let first = round(self.within.0).clamp(1, rounds);
        let last = round(self.within.1).clamp(first, rounds);
        let counts = plan.rounds[first - 1..last].iter().map(|r| r.count);
        let end = plan.rounds.last().map_or(0, |r| r.count);
        let found = match self.kind {
            FeatureKind::Neck => counts.min(),
            FeatureKind::Lip => counts.max(),
            FeatureKind::Opening => match plan.start {
                Start::Chain(chain) if self.at_mm <= 0.0 => Some(chain),
                _ => Some(end),
            },
        };
        found.unwrap_or(0)
    }
}

/// What features must keep in a size, and the widening that makes them.
#[derive(Debug, Clone)]
pub(super) struct Kept {
    features: Vec<Feature>,
    /// Fewest stitches of each.
    least: Vec<u32>,
    /// Arc lengths of the turning points that stay as they are, mm.
    fixed: Vec<f64>,
    knots_mm: Vec<f64>,
    widest_mm: f64,
    /// What each is widened beyond its least, mm: raised while counts come out short.
    extra: Vec<f64>,
}

impl Kept {
    /// What the features of `piece`, planned as `plan`, must keep: all their stitches if
    /// `all`, or the least that its rules ask.
    pub(super) fn new(piece: &Piece, plan: &Plan, all: bool) -> Self {
        let features = features(piece, plan);
        let profile = piece.outline.profile(INTERVALS);
        let rule = piece.rules.smallest_neck;
        let least: Vec<u32> = features
            .iter()
            .map(|f| if all { f.stitches } else { f.stitches.min(rule) })
            .collect();
        let turns = turns(&profile, WAVE * piece.gauge.stitch_width_mm());
        let is_feature = |turn: &TurningPoint| features.iter().any(|f| f.at_mm == turn.s);
        let fixed = turns.iter().filter(|t| !is_feature(t)).map(|t| t.s).collect();
        Self {
            extra: vec![0.0; features.len()],
            least,
            fixed,
            knots_mm: profile.knots_mm.clone(),
            widest_mm: profile.widest_mm(),
            features,
        }
    }

    /// `outline` scaled by `scale`, its features no narrower than their stitches of
    /// `times` the width need.
    pub(super) fn outline(&self, outline: &Outline, scale: f64, times: f64) -> Outline {
        let mut scaled = outline.scaled(scale, scale);
        let mut anchors: Vec<(f64, f64)> = self.fixed.iter().map(|&s| (s, 0.0)).collect();
        for ((f, &least), &extra) in self.features.iter().zip(&self.least).zip(&self.extra) {
            let share = f64::from(least) / f64::from(f.stitches.max(1));
            let wanted = f.radius_mm * share * times + extra;
            let most = NARROWER * scale * self.widest_mm;
            let added = (wanted - scale * f.radius_mm).max(0.0);
            anchors.push((f.at_mm, added.min((most - scale * f.radius_mm).max(0.0))));
        }
        if anchors.iter().all(|a| a.1 == 0.0) {
            return scaled;
        }
        anchors.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (knot, &s) in scaled.knots.iter_mut().zip(&self.knots_mm) {
            if !knot.is_pole() {
                knot.radius_mm += between(&anchors, s);
            }
        }
        scaled
    }

    /// Widens what came out short in `plan` by the stitches it lacks.
    pub(super) fn raise(&mut self, plan: &Plan, width_mm: f64) {
        for ((f, &least), extra) in self.features.iter().zip(&self.least).zip(&mut self.extra) {
            let lacks = least.saturating_sub(f.stitches_in(plan));
            if lacks > 0 {
                *extra += (f64::from(lacks) + 0.25) * width_mm / std::f64::consts::TAU;
            }
        }
    }

    /// What still came out short, a sentence each.
    pub(super) fn notes(&self, plan: &Plan) -> Vec<Sentence> {
        let short = |(f, &least): (&Feature, &u32)| {
            let got = f.stitches_in(plan);
            let key = match f.kind {
                FeatureKind::Neck => "neck_short",
                FeatureKind::Lip => "lip_short",
                FeatureKind::Opening => "opening_short",
            };
            let values = [("got", got.into()), ("least", least.into())];
            (got < least).then(|| Sentence::note(key, values))
        };
        self.features.iter().zip(&self.least).filter_map(short).collect()
    }
}

/// Linear between `anchors` (growing), constant beyond them.
fn between(anchors: &[(f64, f64)], s: f64) -> f64 {
    let after = anchors.partition_point(|a| a.0 < s);
    match (after.checked_sub(1).map(|i| anchors[i]), anchors.get(after)) {
        (Some(a), Some(&b)) => a.1 + (b.1 - a.1) * (s - a.0) / (b.0 - a.0).max(1e-9),
        (Some(a), None) => a.1,
        (None, Some(b)) => b.1,
        (None, None) => 0.0,
    }
}
