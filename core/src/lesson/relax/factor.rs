//! The Cholesky factor of a sparse matrix that is the same for x, y and z.
//!
//! Row by row, each by the tree of what it depends on (the up-looking method of Davis, *Direct
//! Methods for Sparse Linear Systems*, SIAM 2006, chapter 4; from memory).

use crate::lesson::space::V3;

/// A symmetric matrix by what joins its unknowns.
#[derive(Debug, Clone, Default)]
pub(super) struct Couplings {
    /// For each unknown its stiffness by itself.
    diagonal: Vec<f64>,
    /// Of each unknown, those of larger and of smaller index it is joined to, each once.
    joined: Vec<Vec<(u32, f64)>>,
}

impl Couplings {
    /// `n` unknowns, each held by `anchor` by itself.
    pub(super) fn new(n: usize, anchor: f64) -> Self {
        Self { diagonal: vec![anchor; n], joined: vec![Vec::new(); n] }
    }

    /// Joins `a` and `b` by a spring of `stiffness`.
    pub(super) fn join(&mut self, a: u32, b: u32, stiffness: f64) {
        if a == b {
            return;
        }
        for (i, j) in [(a, b), (b, a)] {
            self.diagonal[i as usize] += stiffness;
            let row = &mut self.joined[i as usize];
            match row.iter_mut().find(|(n, _)| *n == j) {
                Some((_, value)) => *value -= stiffness,
                None => row.push((j, -stiffness)),
            }
        }
    }

    /// Holds `a` by itself.
    pub(super) fn anchor(&mut self, a: u32, stiffness: f64) {
        self.diagonal[a as usize] += stiffness;
    }

    /// Whom each unknown is joined to.
    pub(super) fn neighbours(&self) -> Vec<Vec<u32>> {
        self.joined.iter().map(|row| row.iter().map(|&(i, _)| i).collect()).collect()
    }
}

/// L of `P A Pᵀ = L Lᵀ`, by columns.
#[derive(Debug, Clone)]
pub(super) struct SparseFactor {
    /// Unknown of each row.
    order: Vec<u32>,
    /// Where each column begins; its pivot comes first.
    starts: Vec<usize>,
    rows: Vec<u32>,
    values: Vec<f64>,
    work: Vec<V3>,
}

impl SparseFactor {
    /// The factor of `matrix`, eliminated in `order`. The matrix must be positive definite, as
    /// every sum of springs and anchors is.
    pub(super) fn of(matrix: &Couplings, order: Vec<u32>) -> Self {
        let n = order.len();
        let mut place = vec![0_u32; n];
        for (k, &i) in order.iter().enumerate() {
            place[i as usize] = k as u32;
        }
        // Row k: what it is joined to among the rows before it.
        let rows: Vec<Vec<(usize, f64)>> = order
            .iter()
            .enumerate()
            .map(|(k, &i)| {
                let joined = matrix.joined[i as usize].iter();
                let placed = joined.map(|&(j, value)| (place[j as usize] as usize, value));
                placed.filter(|&(j, _)| j < k).collect()
            })
            .collect();
        let parents = tree(&rows);
        let mut reach = RowReach::new(n);
        let mut lengths = vec![1_usize; n];
        for (k, row) in rows.iter().enumerate() {
            for &i in reach.of(row, k, &parents) {
                lengths[i] += 1;
            }
        }
        let mut starts = Vec::with_capacity(n + 1);
        starts.push(0);
        for length in &lengths {
            starts.push(starts[starts.len() - 1] + length);
        }
        let filled = starts[n];
        let mut factor = Self {
            order,
            starts,
            rows: vec![0; filled],
            values: vec![0.0; filled],
            work: vec![[0.0; 3]; n],
        };
        let mut ends: Vec<usize> = factor.starts[..n].to_vec();
        let mut x = vec![0.0; n];
        for (k, row) in rows.iter().enumerate() {
            for &(i, value) in row {
                x[i] = value;
            }
            let mut pivot = matrix.diagonal[factor.order[k] as usize];
            for &i in reach.of(row, k, &parents) {
                let start = factor.starts[i];
                let value = x[i] / factor.values[start];
                x[i] = 0.0;
                for p in start + 1..ends[i] {
                    x[factor.rows[p] as usize] -= factor.values[p] * value;
                }
                pivot -= value * value;
                factor.put(ends[i], k, value);
                ends[i] += 1;
            }
            factor.put(ends[k], k, pivot.max(f64::MIN_POSITIVE).sqrt());
            ends[k] += 1;
        }
        factor
    }

    fn put(&mut self, at: usize, row: usize, value: f64) {
        self.rows[at] = row as u32;
        self.values[at] = value;
    }

    /// Solves in place for the right-hand sides `x`: three at once.
    pub(super) fn solve(&mut self, x: &mut [V3]) {
        let n = self.order.len();
        for (w, &i) in self.work.iter_mut().zip(&self.order) {
            *w = x[i as usize];
        }
        for j in 0..n {
            let (start, end) = (self.starts[j], self.starts[j + 1]);
            let v = self.work[j].map(|v| v / self.values[start]);
            self.work[j] = v;
            let below = self.rows[start + 1..end].iter().zip(&self.values[start + 1..end]);
            for (&row, &l) in below {
                let target = &mut self.work[row as usize];
                for (t, v) in target.iter_mut().zip(v) {
                    *t -= l * v;
                }
            }
        }
        for j in (0..n).rev() {
            let (start, end) = (self.starts[j], self.starts[j + 1]);
            let mut v = self.work[j];
            let below = self.rows[start + 1..end].iter().zip(&self.values[start + 1..end]);
            for (&row, &l) in below {
                for (v, s) in v.iter_mut().zip(self.work[row as usize]) {
                    *v -= l * s;
                }
            }
            self.work[j] = v.map(|v| v / self.values[start]);
        }
        for (w, &i) in self.work.iter().zip(&self.order) {
            x[i as usize] = *w;
        }
    }
}

/// The elimination tree: of each row the next that it has a say in; itself at a root.
fn tree(rows: &[Vec<(usize, f64)>]) -> Vec<usize> {
    let mut parents: Vec<usize> = (0..rows.len()).collect();
    let mut shortcut: Vec<usize> = (0..rows.len()).collect();
    for (k, row) in rows.iter().enumerate() {
        for &(i, _) in row {
            let mut at = i;
            while at != k {
                let next = shortcut[at];
                shortcut[at] = k;
                if next == at {
                    parents[at] = k;
                    break;
                }
                at = next;
            }
        }
    }
    parents
}

/// Finds the columns that have a say in a row.
struct RowReach {
    seen: Vec<usize>,
    found: Vec<usize>,
}

impl RowReach {
    fn new(n: usize) -> Self {
        Self { seen: vec![usize::MAX; n], found: Vec::new() }
    }

    /// Columns that row `k` meets, each after those it depends on.
    fn of(&mut self, row: &[(usize, f64)], k: usize, parents: &[usize]) -> &[usize] {
        self.found.clear();
        self.seen[k] = k;
        for &(i, _) in row {
            let mut at = i;
            while self.seen[at] != k {
                self.seen[at] = k;
                self.found.push(at);
                at = parents[at];
            }
        }
        // Parents have larger indices than what depends on them.
        self.found.sort_unstable();
        &self.found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_what_it_factors() {
        let n = 40_u32;
        let mut matrix = Couplings::new(n as usize, 0.01);
        for i in 0..n {
            matrix.join(i, (i + 1) % n, 1.0 + f64::from(i % 3));
            matrix.join(i, (i * 7 + 3) % n, 0.5);
        }
        matrix.anchor(3, 2.0);
        let wanted: Vec<V3> =
            (0..n).map(|i| [0.3, 1.1, 1.7].map(|s| (f64::from(i) * s).sin())).collect();
        let mut x: Vec<V3> = (0..n as usize)
            .map(|i| {
                std::array::from_fn(|axis| {
                    let joined = matrix.joined[i].iter();
                    let sum: f64 = joined.map(|&(j, v)| v * wanted[j as usize][axis]).sum();
                    sum + matrix.diagonal[i] * wanted[i][axis]
                })
            })
            .collect();
        // Any order will do.
        let order = (0..n).map(|i| (i * 11) % n).collect();
        let mut factor = SparseFactor::of(&matrix, order);
        factor.solve(&mut x);
        for (got, want) in x.iter().zip(&wanted) {
            for axis in 0..3 {
                assert!((got[axis] - want[axis]).abs() < 1e-11, "{got:?} against {want:?}");
            }
        }
    }
}
