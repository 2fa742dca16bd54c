//! The forecast by a general-purpose minimiser, for comparison with the program's own: the
//! limited-memory BFGS method of the crate `argmin`, on the same energy from the same start.

use std::cell::Cell;
use std::time::{Duration, Instant};

use argmin::core::{
    CostFunction, Error, Executor, Gradient, IterState, KV, Problem, Solver, TerminationReason,
    TerminationStatus,
};
use argmin::solver::linesearch::MoreThuenteLineSearch;
use argmin::solver::quasinewton::LBFGS;
use plumpline_core::forecast::{Energy, Skin, settle};

use crate::fit_set::SHAPES;
use crate::shapes::whole_stitch_skin;

/// Pairs of steps and gradient changes that are remembered; 3 to 20 is usual (Nocedal and
/// Wright, Numerical Optimization, section 7.2).
const MEMORY: usize = 10;

/// Evaluations of the energy after which it gives up.
const MOST_EVALUATIONS: usize = 100_000;

type Line = MoreThuenteLineSearch<Vec<f64>, Vec<f64>, f64>;
type Iterate = IterState<Vec<f64>, Vec<f64>, (), (), (), f64>;

/// The energy of a skin as the minimiser asks for it.
struct Stretch<'a> {
    energy: Energy<'a>,
    evaluations: Cell<usize>,
}

impl CostFunction for Stretch<'_> {
    type Param = Vec<f64>;
    type Output = f64;

    fn cost(&self, x: &Self::Param) -> Result<f64, Error> {
        self.evaluations.set(self.evaluations.get() + 1);
        if self.evaluations.get() > MOST_EVALUATIONS {
            return Err(Error::msg("too many evaluations"));
        }
        Ok(self.energy.value(x))
    }
}

impl Gradient for Stretch<'_> {
    type Param = Vec<f64>;
    type Gradient = Vec<f64>;

    fn gradient(&self, x: &Self::Param) -> Result<Vec<f64>, Error> {
        let mut gradient = vec![0.0; x.len()];
        self.energy.value_and_gradient(x, &mut gradient);
        Ok(gradient)
    }
}

/// A solver that stops at the measure the forecast stops at: the largest entry of the
/// gradient, where `argmin` would take its length.
struct UntilFlat<S> {
    solver: S,
    tolerance: f64,
}

impl<O, S: Solver<O, Iterate>> Solver<O, Iterate> for UntilFlat<S> {
    fn name(&self) -> &str {
        self.solver.name()
    }

    fn init(
        &mut self,
        problem: &mut Problem<O>,
        state: Iterate,
    ) -> Result<(Iterate, Option<KV>), Error> {
        self.solver.init(problem, state)
    }

    fn next_iter(
        &mut self,
        problem: &mut Problem<O>,
        state: Iterate,
    ) -> Result<(Iterate, Option<KV>), Error> {
        self.solver.next_iter(problem, state)
    }

    fn terminate(&mut self, state: &Iterate) -> TerminationStatus {
        match state.get_gradient() {
            Some(gradient) if largest(gradient) <= self.tolerance => {
                TerminationStatus::Terminated(TerminationReason::SolverConverged)
            }
            _ => TerminationStatus::NotTerminated,
        }
    }
}

fn largest(gradient: &[f64]) -> f64 {
    gradient.iter().fold(0.0, |most, g| g.abs().max(most))
}

/// The unknowns of the forecast of `skin` at `pressure`, by L-BFGS from the slack shape to a
/// largest gradient entry of `tolerance` (Eθ·mm), or as near as its line search gets.
///
/// # Panics
/// If the minimiser refuses its settings, which no input can make it do.
pub fn lbfgs_forecast(skin: &Skin, pressure: f64, tolerance: f64) -> Vec<f64> {
    let energy = Energy::new(skin, pressure);
    let start = energy.flatten(&skin.slack_shape());
    // The energy has no lower bound far out, so the search must not run there.
    let line = Line::new().with_bounds(1e-10, 1.0).expect("these are bounds");
    let solver = LBFGS::new(line, MEMORY)
        .with_tolerance_grad(0.0)
        .and_then(|s| s.with_tolerance_cost(0.0))
        .expect("zero is a tolerance");
    let solver = UntilFlat { solver, tolerance };
    let mut result = Executor::new(Stretch { energy, evaluations: Cell::new(0) }, solver)
        .configure(|state| state.param(start))
        .ctrlc(false)
        .run()
        .expect("the energy never fails");
    result.state.take_best_param().expect("the start is a point at least")
}

/// The forecast of the fit set's pear in this many rounds of whole stitches: its skin and
/// pressure. What the two methods are compared on.
pub fn pear_skin(rounds: usize) -> (Skin, f64) {
    let pear = SHAPES.iter().find(|s| s.name == "pear").expect("the set has a pear");
    whole_stitch_skin(&pear.piece(0.0, 1.0), rounds)
}

/// How long one forecast takes by each method.
#[derive(Debug, Clone, Copy)]
pub struct Race {
    /// Rounds of the skin.
    pub rounds: usize,
    /// One forecast by the program's own Newton method.
    pub newton: Duration,
    /// One forecast by L-BFGS.
    pub lbfgs: Duration,
}

impl Race {
    /// How many times as long L-BFGS takes.
    pub fn ratio(&self) -> f64 {
        self.lbfgs.as_secs_f64() / self.newton.as_secs_f64()
    }
}

/// Times both methods on the pear in `rounds` rounds, from the slack shape to a largest
/// gradient entry of 1e-4 Eθ·mm, as the median of several interleaved goes.
pub fn race(rounds: usize) -> Race {
    const GOES: usize = 15;
    let (skin, pressure) = pear_skin(rounds);
    let timed = |run: &dyn Fn()| {
        let start = Instant::now();
        run();
        start.elapsed()
    };
    let (mut newton, mut lbfgs) = (Vec::new(), Vec::new());
    for _ in 0..GOES {
        newton.push(timed(&|| {
            std::hint::black_box(newton_forecast(&skin, pressure, 1e-4));
        }));
        lbfgs.push(timed(&|| {
            std::hint::black_box(lbfgs_forecast(&skin, pressure, 1e-4));
        }));
    }
    newton.sort();
    lbfgs.sort();
    Race { rounds, newton: newton[GOES / 2], lbfgs: lbfgs[GOES / 2] }
}

/// The unknowns of the forecast by the program's own method, from the slack shape.
pub fn newton_forecast(skin: &Skin, pressure: f64, tolerance: f64) -> Vec<f64> {
    let energy = Energy::new(skin, pressure);
    let start = energy.flatten(&skin.slack_shape());
    energy.flatten(&settle(&energy, &start, tolerance).nodes)
}
