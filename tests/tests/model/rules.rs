//! Every rule a person can set: the plan keeps it, or says by name that it gave way.

use plumpline_core::pattern::write::Writer;
use plumpline_core::warning::WarningKind;
use plumpline_core::{
    Face, Gauge, Hand, Kind, KindFrom, Loop, Outline, Piece, Plan, Rules, Working, plan, words,
};
use plumpline_tests::any::{any_piece, knots, rest_of};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

const REFUSED: &str = "a valid outline of 2 to 300 rounds";

fn config(seed: u64, cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(seed),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

fn says(plan: &Plan, kind: WarningKind) -> bool {
    plan.warnings.iter().any(|warning| warning.kind == kind)
}

/// Counts with what each round is worked on; `None` in a ring.
fn steps(plan: &Plan) -> Vec<(u32, Option<u32>, u32)> {
    let below = std::iter::once(plan.chain).chain(plan.rounds.iter().map(|r| Some(r.count)));
    (1..).zip(below).zip(&plan.rounds).map(|((k, b), r)| (k, b, r.count)).collect()
}

/// Rounds free of pins of their own and of the round they are worked on, which may force them.
fn unforced(piece: &Piece, k: u32) -> bool {
    !piece.pins.contains_key(&k) && !piece.pins.contains_key(&k.saturating_sub(1))
}

fn gathered(piece: &Piece, plan: &Plan, k: u32) -> bool {
    piece.outline.finishes_closed() && k as usize == plan.rounds.len()
}

fn in_ring(piece: &Piece, k: u32) -> bool {
    k == 1 && piece.outline.starts_closed()
}

/// Which rules `plan` breaks without saying so.
fn broken(piece: &Piece, plan: &Plan) -> Vec<String> {
    let rules = &piece.rules;
    let counts = plan.counts();
    let mut broken = Vec::new();
    for (&k, &wanted) in &piece.pins {
        let met = counts.get(k as usize - 1) == Some(&wanted);
        let named =
            plan.warnings.iter().any(|w| w.kind == WarningKind::Pin && w.rounds == [k, k]);
        if met == named {
            broken.push(format!("pin {wanted} in {k}, met {met}, warned {named}"));
        }
    }
    for (k, below, count) in steps(plan) {
        let (ring, gathered) = (in_ring(piece, k), gathered(piece, plan, k));
        let pinned = piece.pins.contains_key(&k);
        let change = below.map_or(0, |below| below.abs_diff(count));
        let forced = !unforced(piece, k);
        let in_face = piece.faces.iter().any(|f| (f.from_round..=f.to_round).contains(&k));
        if in_face && change > 0 && !forced && !gathered && !says(plan, WarningKind::Change) {
            broken.push(format!("face round {k} changes by {change}"));
        }
        let most = rules.largest_change.unwrap_or(u32::MAX);
        if change > most && !forced && !gathered && !says(plan, WarningKind::Change) {
            broken.push(format!("round {k} changes by {change}, largest {most}"));
        }
        let free = ring || gathered || pinned;
        if !free && count % rules.multiple_of != 0 && !says(plan, WarningKind::Multiples) {
            broken.push(format!("round {k}: {count}, multiples of {}", rules.multiple_of));
        }
        if !free && count < rules.smallest_neck && !says(plan, WarningKind::Ends) {
            broken.push(format!("round {k}: {count}, neck {}", rules.smallest_neck));
        }
        let held = if ring {
            rules.ring
        } else if gathered {
            rules.last
        } else {
            None
        };
        if held.is_some_and(|held| held != count) && !pinned && !says(plan, WarningKind::Ends) {
            broken.push(format!("round {k}: {count}, held at {held:?}"));
        }
        // A limb as narrow as its close is drawn shut plain.
        let wanted = (k as usize).checked_sub(2).map(|i| plan.ideal[i]);
        let narrow = || wanted.is_some_and(|wanted| wanted < f64::from(count) + 0.5);
        let fine = below.is_none_or(|below| below > count || below == count && narrow());
        if gathered && !fine && !forced && !says(plan, WarningKind::Ends) {
            broken.push(format!("the gathered round has {count} on {below:?}"));
        }
    }
    if rules.symmetric && !says(plan, WarningKind::Symmetry) {
        // The chain, where there is one, is the mirror of the last round.
        let all: Vec<u32> = plan.chain.into_iter().chain(counts).collect();
        for (one, other) in all.iter().zip(all.iter().rev()) {
            if one != other {
                broken.push(format!("{one} where its mirror has {other}"));
            }
        }
    }
    broken
}

prop_compose! {
    fn rules()(
        ring in prop::option::weighted(0.3, 3_u32..14),
        last in prop::option::weighted(0.3, 3_u32..14),
        smallest_neck in prop_oneof![Just(4), 3_u32..16],
        multiple_of in prop_oneof![Just(1), 2_u32..9],
        largest_change in prop::option::weighted(0.4, 1_u32..12),
        symmetric in prop::bool::weighted(0.3),
        plain_together in any::<bool>(),
    ) -> Rules {
        Rules {
            ring, last, smallest_neck, multiple_of, largest_change, symmetric, plain_together,
            ..Rules::default()
        }
    }
}

prop_compose! {
    /// Faces and pins anywhere, beyond the end too; pins near and far from what would be.
    fn ruled()(
        piece in any_piece(),
        rules in rules(),
        pins in prop::collection::vec((0.0..1.2_f64, 0.4..2.5_f64), 0..4),
        faces in prop::collection::vec((0.0..1.1_f64, 1_u32..6), 0..3),
    ) -> Piece {
        let mut piece = piece;
        let rest = rest_of(&piece);
        let length = rest.length_mm();
        let rounds = length / piece.gauge.round_height_mm();
        let round = |at: f64| (at * rounds).ceil().max(1.0) as u32;
        for (at, times) in pins {
            let ideal = rest.around_at(&[(at * length).min(length)])[0];
            let pin = (times * ideal / piece.gauge.stitch_width_mm()).round().max(3.0) as u32;
            piece.pins.insert(round(at), pin);
        }
        piece.faces = faces
            .iter()
            .map(|&(at, long)| Face { from_round: round(at), to_round: round(at) + long })
            .collect();
        piece.rules = rules;
        piece
    }
}

proptest! {
    #![proptest_config(config(0x7275_6c65, 256))]

    /// All rules at once, as they come.
    #[test]
    fn rules_are_kept_or_named(piece in ruled()) {
        let plan = plan(&piece).expect(REFUSED);
        let broken = broken(&piece, &plan);
        prop_assert!(broken.is_empty(), "{:?} in {:?}: {:?}", broken, plan.counts(), plan.warnings);
    }
}

proptest! {
    #![proptest_config(config(0x6f6e_6521, 192))]

    /// One rule at a time, where nothing else stands in its way.
    #[test]
    fn a_rule_by_itself_is_kept_or_named(piece in ruled(), which in 0_usize..8) {
        let mut one = piece.clone();
        one.rules = Rules::default();
        one.pins.clear();
        one.faces.clear();
        match which {
            0 => one.rules.ring = piece.rules.ring,
            1 => one.rules.last = piece.rules.last,
            2 => one.rules.smallest_neck = piece.rules.smallest_neck,
            3 => one.rules.multiple_of = piece.rules.multiple_of,
            4 => one.rules.largest_change = piece.rules.largest_change,
            5 => one.rules.symmetric = true,
            6 => one.pins = piece.pins,
            _ => one.faces = piece.faces,
        }
        let plan = plan(&one).expect(REFUSED);
        let broken = broken(&one, &plan);
        prop_assert!(broken.is_empty(), "{:?} in {:?}: {:?}", broken, plan.counts(), plan.warnings);
    }
}

proptest! {
    #![proptest_config(config(0x6861_6e64, 64))]

    /// How rounds are joined and which hand holds the hook are matters of words.
    #[test]
    fn joining_and_the_hand_change_no_counts(piece in any_piece(), chain_counts in any::<bool>()) {
        let spiral = plan(&piece).expect(REFUSED);
        let mut other = piece.clone();
        other.working = Working::Joined { chain_counts };
        other.hand = Hand::Left;
        let joined = plan(&other).expect(REFUSED);
        prop_assert_eq!(spiral.counts(), joined.counts());
        let opening = |plan, piece| words(plan, piece, &Writer::bench()).opening;
        prop_assert_ne!(opening(&spiral, &piece), opening(&joined, &other));
        prop_assert_eq!(spiral.forecast, joined.forecast);
    }

    /// A round worked into one loop is as high as any until its height is known.
    #[test]
    fn loops_change_nothing_but_by_their_height(
        piece in any_piece(),
        rounds in prop::collection::btree_set(1_u32..80, 1..6),
        front in any::<bool>(),
    ) {
        let both = plan(&piece).expect(REFUSED);
        let only = if front { Loop::Front } else { Loop::Back };
        let mut one = piece;
        one.loops = rounds.iter().map(|&round| (round, only)).collect();
        for height in [None, Some(1.0)] {
            one.swatches.loop_only_height = height;
            let one = plan(&one).expect(REFUSED);
            prop_assert_eq!(both.counts(), one.counts());
            prop_assert_eq!(&both.forecast, &one.forecast);
        }
        // All of them a third higher: as many fewer.
        let every = both.rounds.len() as u32 + 3;
        one.loops = (1..=every).map(|round| (round, only)).collect();
        one.swatches.loop_only_height = Some(4.0 / 3.0);
        let Ok(higher) = plan(&one) else { return Ok(()) }; // Fewer than two rounds are left.
        let wanted = 0.75 * rest_of(&one).length_mm() / one.gauge.round_height_mm();
        prop_assert!((higher.rounds.len() as f64 - wanted).abs() <= 1.5, "{}", wanted);
    }

    /// A swatch in half double crochet says how high and wide its rounds are.
    #[test]
    fn taller_stitches_make_fewer_rounds(
        piece in any_piece(),
        taller in 1.2..2.0_f64,
        wider in 0.9..1.2_f64,
    ) {
        let (width, height) = (piece.gauge.stitch_width_mm(), piece.gauge.round_height_mm());
        let single = plan(&piece).expect(REFUSED);
        let mut half = piece;
        half.kinds = vec![KindFrom { from_round: 1, kind: Kind::HalfDouble }];
        half.swatches.half_double = Some(Gauge::of_stitch(width * wider, height * taller));
        let Ok(tall) = plan(&half) else { return Ok(()) }; // Fewer than two rounds are left.
        let wanted = rest_of(&half).length_mm() / height;
        prop_assert!((single.rounds.len() as f64 - wanted).abs() <= 1.5, "{}", wanted);
        prop_assert!((tall.rounds.len() as f64 - wanted / taller).abs() <= 1.5, "{}", wanted);
        prop_assert!(tall.rounds.iter().all(|round| round.kind == Kind::HalfDouble));
        let most = |ideal: &[f64]| ideal.iter().fold(0.0_f64, |most, n| most.max(*n));
        // Only where rounds are many is the widest place met by either.
        if tall.rounds.len() > 30 {
            let ratio = most(&single.ideal) / most(&tall.ideal);
            prop_assert!((ratio / wider - 1.0).abs() < 0.1, "{} for {}", ratio, wider);
        }
    }

    /// Cards lie between a knot and the next, so the last knot has none.
    #[test]
    fn worked_from_the_other_end_and_back_an_outline_is_itself(
        knots in knots(),
        cards in prop::collection::vec(any::<bool>(), 10),
    ) {
        let mut knots = knots;
        let last = knots.len() - 1;
        for (knot, &card) in knots[..last].iter_mut().zip(&cards) {
            knot.card = card;
        }
        let outline = Outline { knots };
        let back = outline.reversed().reversed();
        prop_assert_eq!(back.knots.len(), outline.knots.len());
        for (one, two) in outline.knots.iter().zip(&back.knots) {
            prop_assert!(one.place().distance(two.place()) < 1e-9);
            prop_assert_eq!(
                (one.corner, one.hold, one.card),
                (two.corner, two.hold, two.card)
            );
        }
        let (there, ours) = (outline.reversed(), &outline.knots);
        for (one, two) in ours.iter().zip(there.knots.iter().rev()) {
            prop_assert_eq!((one.radius_mm, one.corner), (two.radius_mm, two.corner));
        }
        let turned: Vec<bool> = there.knots[..last].iter().rev().map(|k| k.card).collect();
        let laid: Vec<bool> = ours[..last].iter().map(|k| k.card).collect();
        prop_assert_eq!(turned, laid);
    }
}
