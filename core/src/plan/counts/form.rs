//! Quadratic forms in whole stitches, and their Cholesky factors.

/// A misfit as a function of stitches added to each round: δᵀ B δ + 2 gᵀ δ + constant.
#[derive(Default)]
pub(super) struct Form {
    /// Rows of B from the diagonal on.
    upper: Vec<Vec<f64>>,
    /// g.
    slope: Vec<f64>,
}

impl Form {
    /// The form that is zero everywhere, of `n` rounds.
    pub(super) fn new(n: usize) -> Self {
        Self { upper: (0..n).map(|i| vec![0.0; n - i]).collect(), slope: vec![0.0; n] }
    }

    /// Adds (Σ gain·δ + off)².
    pub(super) fn add_square(&mut self, gain: &[f64], off: f64) {
        add_scaled(&mut self.slope, gain, off);
        for (i, row) in self.upper.iter_mut().enumerate() {
            add_scaled(row, &gain[i..], gain[i]);
        }
    }

    /// Adds weight·δ² + 2·slope·δ of one round.
    pub(super) fn add_own(&mut self, i: usize, weight: f64, slope: f64) {
        self.upper[i][0] += weight;
        self.slope[i] += slope;
    }

    /// Rows of Lᵀ with B = L Lᵀ, from the diagonal on, and y with L y = −g. `None` if the
    /// form is not positive definite.
    pub(super) fn factor(mut self) -> Option<(Vec<Vec<f64>>, Vec<f64>)> {
        let n = self.slope.len();
        let mut wanted = self.slope;
        wanted.iter_mut().for_each(|g| *g = -*g);
        for i in 0..n {
            let (done, rest) = self.upper.split_at_mut(i + 1);
            let row = &mut done[i];
            if row[0] <= 0.0 || !row[0].is_finite() {
                return None;
            }
            let pivot = row[0].sqrt();
            row.iter_mut().for_each(|v| *v /= pivot);
            for (ahead, below) in rest.iter_mut().enumerate() {
                add_scaled(below, &row[ahead + 1..], -row[ahead + 1]);
            }
            wanted[i] /= row[0];
            let y = wanted[i];
            add_scaled(&mut wanted[i + 1..], &row[1..], -y);
        }
        Some((self.upper, wanted))
    }
}

/// `to += scale · from`, element by element.
pub(super) fn add_scaled(to: &mut [f64], from: &[f64], scale: f64) {
    for (t, f) in to.iter_mut().zip(from) {
        *t += scale * f;
    }
}
