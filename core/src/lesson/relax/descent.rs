//! Downhill: steps of the limited-memory BFGS method (Nocedal and Wright, *Numerical
//! Optimization*, 2nd ed. 2006, chapter 7) that start from springs at rest.
//!
//! The springs alone make a matrix that never changes and is factored once; what they do not
//! know (how far cloth has turned, what bends, what presses) the method learns from the last
//! steps. Newton's own matrix of 20,000 stitches would take seconds to factor, each step.

use std::collections::VecDeque;

use super::energy::{Forces, NetEnergy};
use super::factor::SparseFactor;
use crate::lesson::space::{V3, dot, length, plus};

/// Steps that are remembered.
const MEMORY: usize = 8;

/// Most halvings of a step before the shape counts as stuck.
const HALVINGS: usize = 24;

/// One step that was taken: how far, and how the gradient changed.
#[derive(Debug, Clone)]
struct Past {
    step: Vec<V3>,
    change: Vec<V3>,
    inverse: f64,
}

/// A walk downhill and where it is.
#[derive(Debug, Clone)]
pub(super) struct Walk {
    pub(super) x: Vec<V3>,
    pub(super) energy: NetEnergy,
    gradient: Vec<V3>,
    past: VecDeque<Past>,
}

impl Walk {
    pub(super) fn new(forces: &mut Forces, x: Vec<V3>) -> Self {
        let mut gradient = vec![[0.0; 3]; x.len()];
        let energy = forces.value_and_gradient(&x, &mut gradient);
        Self { x, energy, gradient, past: VecDeque::new() }
    }

    /// Takes one step, no node further than `longest` mm; how far the one that moved most did,
    /// mm, or `None` where no step leads down any more.
    pub(super) fn step(
        &mut self,
        forces: &mut Forces,
        factor: &mut SparseFactor,
        longest: f64,
    ) -> Option<f64> {
        loop {
            let (direction, slope) = self.direction(factor);
            if slope < 0.0
                && let Some(moved) = self.along(&direction, slope, forces, longest)
            {
                return Some(moved);
            }
            if self.past.is_empty() {
                return None;
            }
            // What was learned led astray.
            self.past.clear();
        }
    }

    /// Where to go, and how steep it is that way.
    fn direction(&self, factor: &mut SparseFactor) -> (Vec<V3>, f64) {
        let mut d: Vec<V3> = self.gradient.iter().map(|g| g.map(|v| -v)).collect();
        let mut shares = [0.0; MEMORY];
        for (past, share) in self.past.iter().zip(&mut shares).rev() {
            *share = past.inverse * product(&past.step, &d);
            add_scaled(&mut d, &past.change, -*share);
        }
        factor.solve(&mut d);
        for (past, share) in self.past.iter().zip(&shares) {
            let back = past.inverse * product(&past.change, &d);
            add_scaled(&mut d, &past.step, share - back);
        }
        let slope = product(&d, &self.gradient);
        (d, slope)
    }

    fn along(
        &mut self,
        direction: &[V3],
        slope: f64,
        forces: &mut Forces,
        longest: f64,
    ) -> Option<f64> {
        let most = direction.iter().map(|&d| length(d)).fold(0.0, f64::max);
        let mut share = if most > longest { longest / most } else { 1.0 };
        let before = self.energy.total();
        let mut gradient = vec![[0.0; 3]; self.x.len()];
        for _ in 0..HALVINGS {
            let pairs = self.x.iter().zip(direction);
            let x: Vec<V3> = pairs.map(|(&x, &d)| plus(x, d, share)).collect();
            let energy = forces.value_and_gradient(&x, &mut gradient);
            let gained = energy.total() - before;
            if gained <= 1e-4 * share * slope {
                self.remember(direction, share, &gradient);
                (self.x, self.gradient, self.energy) = (x, gradient, energy);
                return Some(share * most);
            }
            // The lowest place of the parabola through what is known.
            let lowest = -0.5 * slope * share * share / (gained - slope * share);
            share = if lowest.is_finite() {
                lowest.clamp(0.1 * share, 0.5 * share)
            } else {
                0.5 * share
            };
        }
        None
    }

    fn remember(&mut self, direction: &[V3], share: f64, gradient: &[V3]) {
        let step: Vec<V3> = direction.iter().map(|d| d.map(|v| share * v)).collect();
        let pairs = gradient.iter().zip(&self.gradient);
        let change: Vec<V3> =
            pairs.map(|(new, old)| std::array::from_fn(|i| new[i] - old[i])).collect();
        let curved = product(&step, &change);
        // A step over ground that bends down teaches nothing.
        if curved <= 1e-10 * (product(&step, &step) * product(&change, &change)).sqrt() {
            return;
        }
        if self.past.len() == MEMORY {
            self.past.pop_front();
        }
        self.past.push_back(Past { step, change, inverse: 1.0 / curved });
    }

    /// The largest force on a node, Eθ·mm.
    pub(super) fn residual(&self) -> f64 {
        self.gradient.iter().map(|&g| length(g)).fold(0.0, f64::max)
    }
}

fn product(a: &[V3], b: &[V3]) -> f64 {
    a.iter().zip(b).map(|(&a, &b)| dot(a, b)).sum()
}

fn add_scaled(a: &mut [V3], b: &[V3], by: f64) {
    for (a, &b) in a.iter_mut().zip(b) {
        *a = plus(*a, b, by);
    }
}
