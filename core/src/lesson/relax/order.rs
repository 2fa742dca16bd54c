//! The order in which the nodes of a net are eliminated: halves first, then what joins them
//! (nested dissection: George, *Nested Dissection of a Regular Finite Element Mesh*, SIAM J.
//! Numer. Anal. 10, 1973). A factor then fills in by about n log n.

use crate::lesson::net::Net;

/// Parts of at most so many nodes are taken as they come.
const SMALL: usize = 24;

/// Nodes in the order of elimination. `neighbours` are those of each node, all of them.
pub(super) fn dissected(net: &Net, neighbours: &[Vec<u32>]) -> Vec<u32> {
    let mut places = vec![[0.0; 2]; net.len()];
    let mut along = 0.0;
    for ring in net.rings() {
        along += ring.height_mm;
        for j in 0..ring.count {
            let turn = (ring.turn + j as f64 / ring.count as f64).rem_euclid(1.0);
            places[ring.first + j] = [along, turn * ring.around_mm()];
        }
    }
    // Cutting by turns, not by millimetres, keeps a cut straight from end to end.
    let turns: Vec<f64> = net
        .rings()
        .iter()
        .flat_map(|ring| {
            (0..ring.count).map(|j| (ring.turn + j as f64 / ring.count as f64).rem_euclid(1.0))
        })
        .collect();
    let mut sides = Sides { places, turns, neighbours, side: vec![0; net.len()], mark: 0 };
    let mut order = Vec::with_capacity(net.len());
    let all = (0..net.len() as u32).collect();
    sides.dissect(all, &mut order);
    order
}

struct Sides<'a> {
    /// How far along, and how far around, mm.
    places: Vec<[f64; 2]>,
    turns: Vec<f64>,
    neighbours: &'a [Vec<u32>],
    /// The last cut whose far side each node was on.
    side: Vec<u32>,
    mark: u32,
}

impl Sides<'_> {
    fn dissect(&mut self, nodes: Vec<u32>, order: &mut Vec<u32>) {
        if nodes.len() <= SMALL {
            order.extend(nodes);
            return;
        }
        let long = self.is_long(&nodes);
        let key = |i: u32| {
            if long { self.places[i as usize][0] } else { self.turns[i as usize] }
        };
        let mut keyed: Vec<(f64, u32)> = nodes.iter().map(|&i| (key(i), i)).collect();
        keyed.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let half = keyed.len() / 2;
        self.mark += 1;
        for &(_, i) in &keyed[half..] {
            self.side[i as usize] = self.mark;
        }
        let beyond = |i: u32| {
            let across = |&n: &u32| self.side[n as usize] == self.mark;
            self.neighbours[i as usize].iter().any(across)
        };
        let (cut, near): (Vec<u32>, Vec<u32>) =
            keyed[..half].iter().map(|&(_, i)| i).partition(|&i| beyond(i));
        let far: Vec<u32> = keyed[half..].iter().map(|&(_, i)| i).collect();
        drop(nodes);
        self.dissect(near, order);
        self.dissect(far, order);
        order.extend(cut);
    }

    /// Whether `nodes` reach further along than around.
    fn is_long(&self, nodes: &[u32]) -> bool {
        let span = |axis: usize| {
            let of = |i: &u32| self.places[*i as usize][axis];
            let low = nodes.iter().map(of).fold(f64::INFINITY, f64::min);
            nodes.iter().map(of).fold(f64::NEG_INFINITY, f64::max) - low
        };
        span(0) > span(1)
    }
}
