//! The dynamic programme: the whole stitches nearest the ideal that keep to every rule.
//!
//! It minimises Σ (N_k − n_k)² plus the price of each round, over all counts within ±8 of
//! the ideal (further where a pin forces it). State: the count of a round, and whether the
//! round was plain where that is charged; the rules tie only neighbours, so the answer is
//! exact. Where the piece is to be symmetric the same runs over its first half.

use super::rounds::Rounds;
use super::rules::GaveWay;

impl Rounds {
    /// The best counts, and which rules had to give way for there to be any. Those rules are
    /// dropped from `self` too.
    pub fn solve(&mut self) -> (Vec<u32>, Vec<GaveWay>) {
        let mut gave_way = Vec::new();
        loop {
            if let Some(counts) = self.best() {
                return (counts, gave_way);
            }
            gave_way.extend(self.give_way());
        }
    }

    fn best(&self) -> Option<Vec<u32>> {
        let free = self.free_rounds();
        let mut table: Vec<Vec<Reached>> = Vec::with_capacity(free + 1);
        for k in 1..=free {
            let before = table.last();
            let mut here: Vec<Reached> = Vec::new();
            for count in self.range(k).filter(|&c| self.allows_both(k, c)) {
                let own = self.misfit(k, count)
                    + self.mirror(k).map_or(0.0, |m| self.misfit(m, count));
                // In a symmetric piece the last round follows the mirror of the first.
                let end = if self.is_symmetric() && k == 1 {
                    self.cheapest_last(count).map(|(cost, _)| cost)
                } else {
                    Some(0.0)
                };
                let Some(end) = end else { continue };
                self.reach(k, count, own + end, before, &mut here);
            }
            if here.is_empty() {
                return None;
            }
            here.sort_by(|a, b| a.cost.total_cmp(&b.cost));
            table.push(here);
        }
        if !self.is_symmetric() {
            self.reach_last(&mut table);
        }
        let mut at = table
            .last()?
            .iter()
            .enumerate()
            .min_by(|a, b| a.1.cost.total_cmp(&b.1.cost))
            .map(|(i, _)| i)?;
        let mut counts = vec![0; table.len()];
        for (k, row) in table.iter().enumerate().rev() {
            counts[k] = row[at].count;
            at = row[at].from;
        }
        if self.is_symmetric() { self.unfold(&counts) } else { Some(counts) }
    }

    /// Adds the cheapest ways to round `k` of `count`: one, or one plain and one not where
    /// changes between the two are charged.
    fn reach(
        &self,
        k: usize,
        count: u32,
        own: f64,
        before: Option<&Vec<Reached>>,
        here: &mut Vec<Reached>,
    ) {
        let Some(before) = before else {
            if let Some(price) = self.first_price(count) {
                let plain = self.targets.start.joined() == Some(count);
                here.push(Reached { count, plain, cost: own + price, from: 0 });
            }
            return;
        };
        let mut best: [Option<Reached>; 2] = [None, None];
        let minds_switches = self.minds_switches();
        for (from, b) in before.iter().enumerate() {
            let plain = b.count == count;
            let slot = &mut best[usize::from(plain && minds_switches)];
            if slot.is_some_and(|s| b.cost >= s.cost) {
                if minds_switches {
                    continue;
                }
                break; // Cheapest first, and a price is never negative.
            }
            if !self.allows_both_steps(k, b.count, count) {
                continue;
            }
            let price = self.price(k, Some(b.count), count)
                + self.switch(k - 1, b.plain, plain)
                + self.mirrored(k, b, count, plain);
            let cost = b.cost + price;
            if slot.is_none_or(|s| cost < s.cost) {
                *slot = Some(Reached { count, plain, cost, from });
            }
        }
        here.extend(best.into_iter().flatten().map(|r| Reached { cost: r.cost + own, ..r }));
    }

    /// What the other half of a symmetric piece pays for its image of round `k`.
    fn mirrored(&self, k: usize, below: &Reached, count: u32, plain: bool) -> f64 {
        let back = self.targets.rounds() - k + 1;
        if !self.is_symmetric() || back == k {
            return 0.0;
        }
        let image = self.price(back, Some(count), below.count);
        let mut switches = self.switch(k - 1, below.plain, plain);
        if back == k + 2 {
            // Two rounds alike meet in the middle, the second of them plain.
            switches += self.switch(k, plain, true) + self.switch(k + 1, true, plain);
        }
        image + switches
    }

    /// The last round, gathered or held, after all the others; the table is left empty where
    /// it cannot be reached.
    fn reach_last(&self, table: &mut Vec<Vec<Reached>>) {
        let k = self.targets.rounds();
        let mut here = Vec::new();
        for count in self.range(k).filter(|&c| self.allows(k, c)) {
            self.reach(k, count, self.misfit(k, count), table.last(), &mut here);
        }
        table.push(here);
    }

    /// A whole symmetric piece from its first half.
    pub(super) fn unfold(&self, half: &[u32]) -> Option<Vec<u32>> {
        let rounds = self.targets.rounds();
        let mut counts = vec![0; rounds];
        for (i, &count) in half.iter().enumerate() {
            counts[i] = count;
            if let Some(m) = self.mirror(i + 1) {
                counts[m - 1] = count;
            }
        }
        counts[rounds - 1] = self.cheapest_last(counts[rounds - 2])?.1;
        Some(counts)
    }

    /// The cheapest last round on `below`, misfit and price together, and its count.
    fn cheapest_last(&self, below: u32) -> Option<(f64, u32)> {
        let k = self.targets.rounds();
        self.range(k)
            .filter(|&count| self.allows(k, count) && self.allows_step(k, below, count))
            .map(|count| (self.misfit(k, count) + self.price(k, Some(below), count), count))
            .min_by(|a, b| a.0.total_cmp(&b.0))
    }
}

/// The cheapest way to a count of a round.
#[derive(Debug, Clone, Copy)]
struct Reached {
    count: u32,
    /// Whether the round is plain.
    plain: bool,
    cost: f64,
    /// Index of the way to the round below.
    from: usize,
}
