//! The fit against brute force: every point against every segment, every shift.

use plumpline_core::plan;
use plumpline_tests::fit_set::SHAPES;
use plumpline_tests::measure::brute_rms;

#[test]
fn over_the_fit_set_the_measure_is_exact() {
    for shape in &SHAPES {
        let plan = plan(&shape.piece(0.3, 1.0)).expect("the set can be planned");
        let fit = plan.fit.expect("it has an outline").rms_stitches;
        let (brute, _) = brute_rms(&plan.forecast, &plan.outline);
        let brute = brute / plan.stitch_mm.0;
        assert!((fit - brute).abs() < 1e-3, "{}: {fit}, by brute force {brute}", shape.name);
    }
}
