//! Symmetric banded matrices of half-bandwidth 3 and their LDLᵀ factors.
//!
//! Node k meets only node k ± 1 and each node has two unknowns, so this is all the forecast
//! ever needs: factor and solve are linear in the number of rounds.

/// Lower half of a symmetric matrix: `columns[j][i]` is the entry at row `j + i`, column `j`.
#[derive(Debug, Clone, Default)]
pub(crate) struct Banded {
    pub(crate) columns: Vec<[f64; 4]>,
}

impl Banded {
    /// Zeroes the matrix and gives it `n` rows.
    pub(crate) fn reset(&mut self, n: usize) {
        self.columns.clear();
        self.columns.resize(n, [0.0; 4]);
    }

    /// Adds `value` at row `i`, column `j`, and its mirror; `|i − j| ≤ 3`.
    pub(crate) fn add(&mut self, i: usize, j: usize, value: f64) {
        let (row, column) = if i >= j { (i, j) } else { (j, i) };
        self.columns[column][row - column] += value;
    }

    /// Makes row and column `i` those of the identity, so that unknown `i` stays put.
    pub(crate) fn hold(&mut self, i: usize) {
        self.columns[i] = [1.0, 0.0, 0.0, 0.0];
        for back in 1..=3.min(i) {
            self.columns[i - back][back] = 0.0;
        }
    }

    /// Factors the matrix plus `shift` times the identity into `factor`; false, with the
    /// factor unusable, if that sum is not positive definite.
    pub(crate) fn factor(&self, shift: f64, factor: &mut Factor) -> bool {
        let columns = &mut factor.columns;
        columns.clone_from(&self.columns);
        let n = columns.len();
        for j in 0..n {
            let [a0, a1, a2, a3] = columns[j];
            let d = a0 + shift;
            if d <= 1e-14 * (a0.abs() + shift) || !d.is_finite() {
                return false;
            }
            let (l1, l2, l3) = (a1 / d, a2 / d, a3 / d);
            columns[j] = [d, l1, l2, l3];
            if let Some(c) = columns.get_mut(j + 1) {
                c[0] -= l1 * a1;
                c[1] -= l2 * a1;
                c[2] -= l3 * a1;
            }
            if let Some(c) = columns.get_mut(j + 2) {
                c[0] -= l2 * a2;
                c[1] -= l3 * a2;
            }
            if let Some(c) = columns.get_mut(j + 3) {
                c[0] -= l3 * a3;
            }
        }
        true
    }
}

/// A factor L D Lᵀ: each column holds the pivot and the three entries of L below it.
#[derive(Debug, Clone, Default)]
pub(crate) struct Factor {
    columns: Vec<[f64; 4]>,
}

impl Factor {
    /// Solves in place for the right-hand side `x`.
    pub(crate) fn solve(&self, x: &mut [f64]) {
        let mut lanes: Vec<[f64; 1]> = x.iter().map(|&v| [v]).collect();
        self.solve_lanes(0, &mut lanes);
        for (x, [v]) in x.iter_mut().zip(lanes) {
            *x = v;
        }
    }

    /// Solves in place for several right-hand sides side by side (one a lane), whose entries
    /// before `first` are all zero: the forward sweep may then begin there. The sweeps are
    /// chains of dependent steps, so lanes cost next to nothing.
    pub(crate) fn solve_lanes<const L: usize>(&self, first: usize, x: &mut [[f64; L]]) {
        let n = self.columns.len();
        for j in first..n {
            let [d, below @ ..] = self.columns[j];
            let (done, rest) = x.split_at_mut(j + 1);
            let v = done[j];
            for (target, l) in rest.iter_mut().zip(below) {
                for (t, v) in target.iter_mut().zip(v) {
                    *t -= l * v;
                }
            }
            done[j] = v.map(|v| v / d);
        }
        for j in (0..n).rev() {
            let [_, below @ ..] = self.columns[j];
            let (done, rest) = x.split_at_mut(j + 1);
            for (source, l) in rest.iter().zip(below) {
                for (t, s) in done[j].iter_mut().zip(source) {
                    *t -= l * s;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_what_it_factors() {
        let n = 9;
        let mut matrix = Banded::default();
        matrix.reset(n);
        for i in 0..n {
            matrix.add(i, i, 10.0 + i as f64);
            for back in 1..=3.min(i) {
                matrix.add(i, i - back, 1.0 / (back as f64 + i as f64));
            }
        }
        let wanted: Vec<f64> = (0..n).map(|i| (i as f64 * 0.7).sin()).collect();
        let entry = |i: usize, j: usize| {
            let (row, column) = if i >= j { (i, j) } else { (j, i) };
            if row - column > 3 { 0.0 } else { matrix.columns[column][row - column] }
        };
        let mut x: Vec<f64> =
            (0..n).map(|i| (0..n).map(|j| entry(i, j) * wanted[j]).sum()).collect();
        let mut factor = Factor::default();
        assert!(matrix.factor(0.0, &mut factor));
        factor.solve(&mut x);
        for (got, want) in x.iter().zip(&wanted) {
            assert!((got - want).abs() < 1e-12, "{got} against {want}");
        }
    }

    #[test]
    fn refuses_an_indefinite_matrix_until_it_is_shifted() {
        let mut matrix = Banded::default();
        matrix.reset(2);
        matrix.add(0, 0, 1.0);
        matrix.add(1, 1, 1.0);
        matrix.add(1, 0, 2.0);
        let mut factor = Factor::default();
        assert!(!matrix.factor(0.0, &mut factor));
        assert!(matrix.factor(1.5, &mut factor));
    }
}
