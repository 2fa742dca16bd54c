//! Cloth in space, as it is drawn: whole, as large as it lies, every stitch in its round.

use std::collections::BTreeSet;

use plumpline_core::Gauge;
use plumpline_core::lesson::course::SampleRule;
use plumpline_core::lesson::net::{Net, NetEnd, RoundLook};
use plumpline_core::picture::relief::{Drape, Quality, ReliefView, Seen, Still};
use plumpline_core::piece::cloth::Kind;

/// A circle held flat, seen from above at so many pixels a mm, and how far out it reaches.
fn circle(rounds: u32, scale: f32, quality: Quality) -> (Vec<u32>, f32, Still) {
    let gauge = Gauge::of_stitch(5.0, 5.0);
    let sample = SampleRule::Level { rounds }.at(gauge).expect("it can be worked");
    let piece = sample.piece("Circle", gauge);
    let net =
        Net::of_counts(&piece, sample.start, &sample.counts, NetEnd::Open).expect("a net");
    let cells = net.cells(|_| RoundLook { kind: Kind::Single, yarn: 0 });
    let places = net.closed(&net.held_flat());
    let places = places.into_iter().map(|p| p.map(|v| v as f32)).collect();
    let drape = Drape::new(places, &cells, 5.0);
    let reach = 5.0 * rounds as f32;
    let side = (2.0 * reach * scale) as u32 + 8;
    let view = ReliefView {
        turn_deg: 0.0,
        tilt_deg: 90.0,
        scale,
        middle: [0.0; 3],
        size: [side; 2],
        quality,
    };
    let still = drape.still(&view, &[[180, 90, 60]], None).expect("a picture");
    (sample.counts, reach * scale, still)
}

/// Distance of a pixel's middle from the middle of the picture, pixels.
fn out(still: &Still, i: usize) -> f32 {
    let [wide, tall] = still.size.map(|s| s as usize);
    let (x, y) = ((i % wide) as f32 + 0.5, (i / wide) as f32 + 0.5);
    (x - 0.5 * wide as f32).hypot(y - 0.5 * tall as f32)
}

#[test]
fn a_circle_is_whole_and_as_large_as_it_lies() {
    for (rounds, scale) in [(3, 7.0), (9, 4.0), (20, 1.3)] {
        for quality in [Quality::Draft, Quality::Full] {
            let (_, radius, still) = circle(rounds, scale, quality);
            for (i, (pixel, seen)) in still.pixels.iter().zip(&still.map).enumerate() {
                let at = out(&still, i);
                // Corners of its polygon reach a little beyond the circle, its sides less far.
                if at < 0.94 * radius {
                    assert_eq!(pixel[3], 255, "{rounds} rounds: a hole at {at} of {radius}");
                    assert!(seen.round > 0 && seen.stitch > 0);
                } else if at > 1.06 * radius + 1.0 {
                    assert_eq!((pixel[3], *seen), (0, Seen::default()), "{at} of {radius}");
                }
                assert!(pixel[..3].iter().all(|c| *c <= pixel[3]), "premultiplied");
            }
        }
    }
}

#[test]
fn every_stitch_is_seen_in_its_round_and_as_far_out_as_it_lies() {
    let (counts, radius, still) = circle(8, 6.0, Quality::Draft);
    for (k, &count) in counts.iter().enumerate() {
        let round = k as u16 + 1;
        let of_round: Vec<(usize, &Seen)> =
            still.map.iter().enumerate().filter(|(_, seen)| seen.round == round).collect();
        let stitches: BTreeSet<u16> = of_round.iter().map(|(_, seen)| seen.stitch).collect();
        assert_eq!(stitches, (1..=count as u16).collect(), "round {round}");
        let (low, high) = (radius * k as f32 / 8.0, radius * (k + 1) as f32 / 8.0);
        let far = of_round.iter().filter(|(i, _)| {
            let at = out(&still, *i);
            at < 0.9 * low - 2.0 || at > 1.1 * high + 2.0
        });
        assert_eq!(far.count(), 0, "round {round}");
    }
}

#[test]
fn odd_places_draw_something_or_nothing_and_never_panic() {
    let gauge = Gauge::of_stitch(5.0, 5.0);
    let sample = SampleRule::Ball { middle: 14 }.at(gauge).expect("it can be worked");
    let relaxation = sample.relaxation(gauge).expect("a net");
    let net = relaxation.net();
    let cells = net.cells(|_| RoundLook { kind: Kind::Double, yarn: 7 });
    let mut chance = fastrand::Rng::with_seed(41);
    for i in 0..60 {
        let mut places: Vec<[f32; 3]> = net
            .closed(&relaxation.nodes())
            .into_iter()
            .map(|p| p.map(|v| (v + 40.0 * (2.0 * chance.f64() - 1.0)) as f32))
            .collect();
        match i % 4 {
            1 => places.iter_mut().for_each(|p| p[2] = 0.0),
            2 => places.fill([1.0; 3]),
            3 => places.truncate(places.len() / 2),
            _ => places[3] = [f32::NAN, f32::INFINITY, 0.0],
        }
        let drape = Drape::new(places, &cells, 5.0);
        let view = ReliefView {
            turn_deg: 10.0 * i as f32,
            tilt_deg: 180.0 * chance.f32() - 90.0,
            scale: 2.0,
            middle: [0.0; 3],
            size: [120, 90],
            quality: if i % 2 == 0 { Quality::Draft } else { Quality::Full },
        };
        let still = drape.still(&view, &[], Some((2, [255, 0, 0]))).expect("a picture");
        assert_eq!(still.pixels.len(), 120 * 90);
        let again = drape.still(&view, &[], Some((2, [255, 0, 0]))).expect("a picture");
        assert_eq!(still, again, "the same bytes");
    }
}
