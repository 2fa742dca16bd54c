//! The dynamic programme against an exhaustive search of the same objective.

use plumpline_core::counts::rules::GaveWay;
use plumpline_core::counts::{Rounds, Targets};
use plumpline_core::{Face, Firmness, Gauge, Knot, Outline, Piece, Rules};
use plumpline_tests::any::rest_of;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// How far from the ideal a count is looked for, as the programme does.
const STRAY: f64 = 8.0;

/// Fewer squared stitches than this are rounding.
const ROUNDING: f64 = 1e-9;

prop_compose! {
    /// Up to eight rounds of at most twenty stitches, either end closed or open.
    fn small_outlines()(
        radii in prop::collection::vec(3.0..30.0_f64, 2..=5),
        steps in prop::collection::vec(6.0..25.0_f64, 4),
        closed in any::<(bool, bool)>(),
        corner in prop::bool::weighted(0.2),
    ) -> Option<Outline> {
        let last = radii.len() - 1;
        let mut z = 0.0;
        let knots = radii.iter().enumerate().map(|(i, &r)| {
            z += if i > 0 { steps[i - 1] } else { 0.0 };
            let pole = (i == 0 && closed.0) || (i == last && closed.1);
            Knot { corner: i == 0 && corner, ..Knot::new(if pole { 0.0 } else { r }, z) }
        });
        Outline::new(knots.collect()).ok()
    }
}

prop_compose! {
    fn some_rules()(
        ring in prop::option::weighted(0.2, 3_u32..10),
        last in prop::option::weighted(0.2, 3_u32..10),
        smallest_neck in 3_u32..8,
        multiple_of in prop_oneof![3 => Just(1), 2 => 2_u32..5],
        largest_change in prop::option::weighted(0.4, 1_u32..7),
        symmetric in prop::bool::weighted(0.0),
        plain_together in any::<bool>(),
    ) -> Rules {
        Rules {
            ring, last, smallest_neck, multiple_of, largest_change, symmetric, plain_together,
            ..Rules::default()
        }
    }
}

prop_compose! {
    /// A small piece, every rule that the programme knows, and its number of rounds.
    fn small_pieces()(
        outline in small_outlines().prop_filter_map("no outline", |outline| outline),
        rounds in 2_usize..=8,
        rules in some_rules(),
        pins in prop::collection::btree_map(1_u32..9, 3_u32..24, 0..3),
        face in prop::option::weighted(0.3, (1_u32..8, 0_u32..3)),
        ease in prop_oneof![Just(0.0), Just(1.0), 0.0..1.0_f64],
        firmness in 0.01..0.12_f64,
        height in 6.0..12.0_f64,
    ) -> (Piece, usize) {
        let mut piece = Piece::new("small", outline, Gauge::of_stitch(10.0, height));
        piece.firmness = Firmness(firmness);
        piece.ease = ease;
        piece.rules = rules;
        piece.pins = pins;
        piece.faces = face
            .map(|(from_round, more)| Face { from_round, to_round: from_round + more })
            .into_iter()
            .collect();
        (piece, rounds)
    }
}

fn targets_of(piece: &Piece, rounds: usize) -> Targets {
    Targets::new(piece, &piece.outline.profile(400), &rest_of(piece), rounds)
}

/// Every count vector within reach of the ideal, but for beginnings that already cost more
/// than the best whole vector found: costs of rounds are never negative and add up.
struct Search<'a> {
    /// What whole vectors are judged by.
    rounds: &'a Rounds,
    /// What beginnings are judged by: the same without symmetry, which needs the whole.
    beginnings: &'a Rounds,
    ideal: &'a [f64],
    pins: &'a std::collections::BTreeMap<u32, u32>,
    symmetric: bool,
    /// Least misfit of the rounds after each.
    ahead: Vec<f64>,
    best: f64,
    counts: Vec<u32>,
    found: Option<Vec<u32>>,
}

impl<'a> Search<'a> {
    fn new(
        rounds: &'a Rounds,
        beginnings: &'a Rounds,
        targets: &'a Targets,
        piece: &'a Piece,
    ) -> Self {
        let mut search = Self {
            rounds,
            beginnings,
            ideal: &targets.ideal,
            pins: &piece.pins,
            symmetric: piece.rules.symmetric,
            ahead: vec![0.0; targets.rounds() + 1],
            best: f64::INFINITY,
            counts: Vec::new(),
            found: None,
        };
        for k in (1..=targets.rounds()).rev() {
            let least =
                search.reach(k).map(|n| rounds.misfit(k, n)).fold(f64::INFINITY, f64::min);
            search.ahead[k - 1] = search.ahead[k] + least;
        }
        search
    }

    /// Counts of round `k` within reach: near the ideal, or what it is pinned to.
    fn reach(&self, k: usize) -> impl Iterator<Item = u32> + use<> {
        let ideal = self.ideal[k - 1];
        let (low, high) = ((ideal - STRAY).floor().max(1.0), (ideal + STRAY).ceil().max(9.0));
        let (low, high) = (low as u32, high as u32);
        let pin = self.pins.get(&(k as u32)).copied();
        (low..=high).chain(pin.filter(move |pin| !(low..=high).contains(pin)))
    }

    /// The least cost below `bound`, if there is one.
    fn least_below(mut self, bound: f64) -> Option<(f64, Vec<u32>)> {
        self.best = bound;
        self.go_on();
        self.found.map(|counts| (self.best, counts))
    }

    fn go_on(&mut self) {
        let k = self.counts.len() + 1;
        if k > self.ideal.len() {
            let cost = self.rounds.cost(&self.counts);
            if cost < self.best {
                self.best = cost;
                self.found = Some(self.counts.clone());
            }
            return;
        }
        let mirror = self.ideal.len() - k;
        let mirrored = self.symmetric && mirror >= 1 && mirror < k;
        let held = mirrored.then(|| self.counts[mirror - 1]);
        for count in self.reach(k).filter(|&n| held.is_none_or(|held| held == n)) {
            self.counts.push(count);
            if self.beginnings.cost(&self.counts) + self.ahead[k] < self.best {
                self.go_on();
            }
            self.counts.pop();
        }
    }
}

fn without_symmetry(piece: &Piece) -> Piece {
    let mut piece = piece.clone();
    piece.rules.symmetric = false;
    piece
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 256,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x0070_726f),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// No counts within reach cost less than the programme's, under the rules it kept.
    #[test]
    fn nothing_within_reach_costs_less((piece, rounds) in small_pieces()) {
        let targets = targets_of(&piece, rounds);
        let mut programme = Rounds::new(&piece, targets.clone());
        let (counts, gave_way) = programme.solve();
        let cost = programme.cost(&counts);
        prop_assert!(cost.is_finite(), "{counts:?} break a rule, {gave_way:?}");
        let search = Search::new(&programme, &programme, &targets, &piece);
        let cheaper = search.least_below(cost - ROUNDING);
        prop_assert!(cheaper.is_none(), "{cost} {counts:?}, but {cheaper:?}");
    }

    /// A rule gives way only where no counts within reach keep them all.
    #[test]
    fn rules_give_way_only_where_they_must((piece, rounds) in small_pieces()) {
        let targets = targets_of(&piece, rounds);
        let strict = Rounds::new(&piece, targets.clone());
        let (counts, gave_way) = Rounds::new(&piece, targets.clone()).solve();
        let search = Search::new(&strict, &strict, &targets, &piece);
        let kept = if gave_way.is_empty() {
            Some((strict.cost(&counts), counts))
        } else {
            search.least_below(f64::INFINITY)
        };
        prop_assert_eq!(kept.is_some(), gave_way.is_empty(), "{:?}, but {:?}", gave_way, kept);
    }

    /// The same of symmetric pieces: as cheap as any, to the price of the half that follows
    /// the other.
    #[test]
    fn nothing_symmetric_costs_less((piece, rounds) in small_pieces()) {
        let mut piece = piece;
        piece.rules.symmetric = true;
        let targets = targets_of(&piece, rounds);
        let mut programme = Rounds::new(&piece, targets.clone());
        let (counts, gave_way) = programme.solve();
        let cost = programme.cost(&counts);
        prop_assert!(cost.is_finite(), "{counts:?} break a rule, {gave_way:?}");
        let gave_up = gave_way.contains(&GaveWay::Symmetry);
        prop_assume!(gave_way.is_empty());
        let free = Rounds::new(&without_symmetry(&piece), targets.clone());
        let mut search = Search::new(&programme, &free, &targets, &piece);
        search.symmetric = !gave_up;
        let cheaper = search.least_below(cost - ROUNDING);
        prop_assert!(cheaper.is_none(), "{cost} {counts:?}, but {cheaper:?}");
    }
}
