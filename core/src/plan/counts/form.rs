//! Quadratic forms in whole stitches, and their Cholesky factors.

/// A misfit as a function of stitches added to each round: δᵀ B δ + 2 gᵀ δ + constant.
#[derive(Clone, Default)]
pub(super) struct Quadratic {
    /// Rows of B from the diagonal on, as far as the band goes.
    upper: Vec<Vec<f64>>,
    /// g.
    slope: Vec<f64>,
    constant: f64,
}

/// Rounds further apart than this are taken not to know of each other: a stitch is felt over
/// R√ε, a few rounds.
pub(super) const BAND: usize = 64;

impl Quadratic {
    /// The form that is zero everywhere, of `n` rounds.
    pub(super) fn new(n: usize) -> Self {
        let upper = (0..n).map(|i| vec![0.0; (n - i).min(BAND)]).collect();
        Self { upper, slope: vec![0.0; n], constant: 0.0 }
    }

    /// Adds (Σ gain·δ + off)², where `gain` begins with round index `first` and is at most
    /// [`BAND`] long.
    pub(super) fn add_square(&mut self, first: usize, gain: &[f64], off: f64) {
        self.constant += off * off;
        add_scaled(&mut self.slope[first..], gain, off);
        for (i, row) in self.upper[first..first + gain.len()].iter_mut().enumerate() {
            add_scaled(row, &gain[i..], gain[i]);
        }
    }

    /// Adds weight·(δ + off)² of one round.
    pub(super) fn add_own(&mut self, i: usize, weight: f64, off: f64) {
        self.upper[i][0] += weight;
        self.slope[i] += weight * off;
        self.constant += weight * off * off;
    }

    /// Adds what no stitch changes.
    pub(super) fn add_constant(&mut self, constant: f64) {
        self.constant += constant;
    }

    /// The form as a sum of squares. `None` if it is not positive definite.
    pub(super) fn factor(mut self) -> Option<Factored> {
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
            let ahead = row.len() - 1;
            for (j, below) in rest[..ahead].iter_mut().enumerate() {
                add_scaled(below, &row[j + 1..], -row[j + 1]);
            }
            wanted[i] /= row[0];
            let y = wanted[i];
            add_scaled(&mut wanted[i + 1..], &row[1..], -y);
        }
        let constant = self.constant - wanted.iter().map(|y| y * y).sum::<f64>();
        Some(Factored { upper: self.upper, wanted, constant })
    }
}

/// A form as Σ (Lᵀδ − y)² + constant.
pub(super) struct Factored {
    /// Rows of Lᵀ with B = L Lᵀ, from the diagonal on, as far as the band goes.
    pub(super) upper: Vec<Vec<f64>>,
    /// y, with L y = −g.
    pub(super) wanted: Vec<f64>,
    /// What is left at the best real δ.
    pub(super) constant: f64,
}

impl Factored {
    /// The δ, not whole, where the form is least.
    pub(super) fn least(&self) -> Vec<f64> {
        let mut step = self.wanted.clone();
        for i in (0..step.len()).rev() {
            let row = &self.upper[i];
            let later: f64 = row[1..].iter().zip(&step[i + 1..]).map(|(u, s)| u * s).sum();
            step[i] = (step[i] - later) / row[0];
        }
        step
    }
}

/// `to += scale · from`, element by element.
pub(super) fn add_scaled(to: &mut [f64], from: &[f64], scale: f64) {
    for (t, f) in to.iter_mut().zip(from) {
        *t += scale * f;
    }
}
