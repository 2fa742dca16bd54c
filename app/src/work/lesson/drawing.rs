//! How the pictures of the lesson's cloth are drawn: at first as a draft, then with all care;
//! small ones of what can be predicted.

use egui::ColorImage;
use plumpline_core::lesson::course::{LessonChoice, SampleGain, SampleRule};
use plumpline_core::lesson::net::RoundLook;
use plumpline_core::picture::Rgb;
use plumpline_core::picture::relief::{Drape, Quality, ReliefView, Still};
use plumpline_core::piece::cloth::Kind;
use plumpline_core::{Gauge, Result};

use super::super::still::image_of;
use super::cloth::{LessonCloth, LessonPlace, middle};
use super::{LessonDrawn, LessonLook, LessonSight};

/// How much of its place a picture fills.
const FILLS: f32 = 0.96;
/// Pixels of the small picture of a choice.
const CHOICE_PIXELS: [u32; 2] = [216, 132];

/// Both pictures at once, with little care.
pub(super) fn draft(cloth: &LessonCloth, look: &LessonLook) -> [LessonDrawn; 2] {
    both(cloth, look, Quality::Draft)
}

/// Both pictures with all care, unless they become vain.
pub(super) fn whole(
    cloth: &LessonCloth,
    look: &LessonLook,
    is_vain: impl Fn() -> bool,
) -> Option<[LessonDrawn; 2]> {
    if is_vain() {
        return None;
    }
    let pictures = both(cloth, look, Quality::Full);
    (!is_vain()).then_some(pictures)
}

fn both(cloth: &LessonCloth, look: &LessonLook, quality: Quality) -> [LessonDrawn; 2] {
    let loose = &cloth.cloth;
    let places = loose.places(look.held);
    let (about, places) = (single(middle(&places)), singles(&places));
    let drape = Drape::new(places, &loose.cells, loose.stitch_mm()).in_yarns(&look.faces);
    let [wide, tall] = look.sights[0].pixels.map(|p| p.max(1) as f32);
    let shared = FILLS * 0.5 * wide.min(tall) / cloth.reach;
    let one = |sight: &LessonSight| {
        let [low, high] = drape.bounds(sight.turned.turn_deg, sight.turned.tilt_deg, about);
        let half = |i: usize| high[i].max(-low[i]).max(1e-3);
        let [wide, tall] = sight.pixels.map(|p| 0.5 * FILLS * p.max(1) as f32);
        // One scale for both, unless it stands too high for its place.
        let scale = shared.min(wide / half(0)).min(tall / half(1)) * sight.turned.zoom;
        let view = ReliefView {
            turn_deg: sight.turned.turn_deg,
            tilt_deg: sight.turned.tilt_deg,
            scale,
            middle: about,
            size: sight.pixels.map(|p| p.max(1)),
            quality,
        };
        drawn(&drape, &view, &look.colours, look.lit)
    };
    let [first, second] = &look.sights;
    let (first, second) = rayon::join(|| one(first), || one(second));
    [first, second]
}

fn drawn(
    drape: &Drape<'_>,
    view: &ReliefView,
    colours: &[Rgb],
    lit: Option<(u32, Rgb)>,
) -> LessonDrawn {
    match drape.still(view, colours, lit) {
        Ok(mut still) => LessonDrawn { image: image_of(&mut still), map: still.map },
        // Of more pixels than a picture may have: no window is so large.
        Err(_) => LessonDrawn::default(),
    }
}

/// Small pictures of all that can be predicted, unless they become vain. They are in stitches
/// as broad as high, whatever the project's: they show a kind of shape, not this sample.
pub(super) fn choices(
    colours: &[Rgb],
    is_vain: impl Fn() -> bool,
) -> Option<Vec<(LessonChoice, ColorImage)>> {
    let steady = |gain| SampleRule::Steady {
        gain: SampleGain::Fixed(gain),
        rounds: 6,
        kind: Kind::Single,
    };
    let neck = |edge, change| SampleRule::Neck { edge, change, rounds: 4 };
    let list = [
        (LessonChoice::Cup, steady(4), 24.0),
        (LessonChoice::Flat, SampleRule::Level { rounds: 6 }, 30.0),
        (LessonChoice::Ruffle, steady(11), 30.0),
        (LessonChoice::Ball, SampleRule::Ball { middle: 20 }, 14.0),
        (LessonChoice::Straight, neck(16, 0), 14.0),
        (LessonChoice::Saddle, neck(22, 3), 14.0),
    ];
    let mut pictures = Vec::with_capacity(list.len());
    for (choice, rule, tilt_deg) in list {
        if is_vain() {
            return None;
        }
        if let Some(picture) = small(rule, tilt_deg, colours) {
            pictures.push((choice, picture));
        }
    }
    Some(pictures)
}

fn small(rule: SampleRule, tilt_deg: f32, colours: &[Rgb]) -> Option<ColorImage> {
    let gauge = Gauge::of_stitch(5.0, 5.0);
    let looks = [(20.0, tilt_deg)];
    let mut stills = at_rest(rule, gauge, &looks, CHOICE_PIXELS, colours).ok()?;
    stills.first_mut().map(image_of)
}

/// The cloth of `rule` let go until it rests, a still of each look at it, turned and tilted by
/// so many degrees, as large as it fits into so many pixels.
///
/// # Errors
/// Where it cannot be worked at `gauge`.
pub(in crate::work) fn at_rest(
    rule: SampleRule,
    gauge: Gauge,
    looks: &[(f32, f32)],
    size: [u32; 2],
    colours: &[Rgb],
) -> Result<Vec<Still>> {
    let mut relaxation = rule.at(gauge)?.relaxation(gauge)?;
    while !relaxation.is_at_rest() {
        relaxation.step();
    }
    let net = relaxation.net();
    let kind = rule.kind();
    let cells = net.cells(|_| RoundLook { kind, yarn: 0 });
    let places = net.closed(&relaxation.nodes());
    let about = single(middle(&places));
    let drape = Drape::new(singles(&places), &cells, net.stitch_width_mm() as f32);
    let one = |&(turn_deg, tilt_deg): &(f32, f32)| {
        let [low, high] = drape.bounds(turn_deg, tilt_deg, about);
        let half = |i: usize| high[i].max(-low[i]).max(1e-3);
        let [wide, tall] = size.map(|p| 0.5 * p as f32);
        let scale = FILLS * (wide / half(0)).min(tall / half(1));
        let quality = Quality::Full;
        let view = ReliefView { turn_deg, tilt_deg, scale, middle: about, size, quality };
        drape.still(&view, colours, None)
    };
    looks.iter().map(one).collect()
}

fn single(place: LessonPlace) -> [f32; 3] {
    place.map(|v| v as f32)
}

fn singles(places: &[LessonPlace]) -> Vec<[f32; 3]> {
    places.iter().map(|&place| single(place)).collect()
}
