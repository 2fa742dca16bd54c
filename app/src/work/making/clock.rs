//! The clock of the Make stage: how long ago the last step was. What of that counts as work
//! is the model's to say.

/// Time between steps.
#[derive(Debug, Default)]
pub(crate) struct Clock {
    /// When the last step was, or when work was taken up, s.
    last: Option<f64>,
}

impl Clock {
    /// Work goes on; it began now if it had not.
    pub(crate) fn run(&mut self, now: f64) {
        self.last.get_or_insert(now);
    }

    /// Nobody works: what goes by is not counted.
    pub(crate) fn stop(&mut self) {
        self.last = None;
    }

    /// Seconds since the last step.
    pub(crate) fn since(&self, now: f64) -> f64 {
        self.last.map_or(0.0, |last| (now - last).max(0.0))
    }

    /// A step; returns the seconds since the one before.
    pub(crate) fn step(&mut self, now: f64) -> f64 {
        let since = self.since(now);
        self.last = Some(now);
        since
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_time_at_work_goes_by() {
        let mut clock = Clock::default();
        assert!(clock.since(9.0) == 0.0);
        clock.run(10.0);
        clock.run(11.0);
        assert!((clock.step(14.0) - 4.0).abs() < 1e-9);
        assert!((clock.since(20.0) - 6.0).abs() < 1e-9);
        clock.stop();
        clock.run(100.0);
        assert!((clock.step(103.0) - 3.0).abs() < 1e-9);
        assert!(clock.step(90.0) == 0.0, "a clock set back takes nothing away");
    }
}
