//! Prints the figures the README quotes: fit over the fit set.

use plumpline_core::counts;
use plumpline_core::plan;
use plumpline_tests::fit_set::SHAPES;

fn main() {
    for ease in std::env::var("EASES").unwrap().split(",").map(|v| v.parse::<f64>().unwrap()) {
        let mut sum = 0.0;
        let mut total = (0, 0, 0, 1.0f64);
        let mut most: f64 = 0.0;
        println!("ease {ease}");
        for s in &SHAPES {
            let piece = s.piece(ease, 1.0);
            let t = std::time::Instant::now();
            let p = plan(&piece).expect("plan");
            let dt = t.elapsed();
            let fit = p.fit.expect("fit");
            let profile = piece.outline.profile(400);
            let rot = counts::rule_of_thumb(&piece, &profile);
            let rest = plumpline_core::skin::RestSkin::of(
                &profile,
                0.08,
                &plumpline_core::forecast::Cloth::default(),
            );
            let rf = counts::fit_of(&piece, &profile, &rest, &rot);
            let shaping: Vec<_> = p
                .rounds
                .iter()
                .skip(1)
                .filter(|r| {
                    r.placement.number_of(plumpline_core::placement::Stitch::Plain) != r.count
                })
                .collect();
            let single = shaping.iter().filter(|r| r.placement.is_single_repeat()).count();
            total.0 += single;
            total.1 += shaping.len();
            total.2 += p.wording.lines.len();
            total.3 = total.3.min(single as f64 / shaping.len() as f64);
            sum += fit.rms_stitches;
            most = most.max(fit.rms_stitches);
            println!(
                "SH {} {} {}",
                s.name,
                (p.rounds.len() - shaping.len() + single) as f64 / p.rounds.len() as f64,
                fit.rms_stitches
            );
            println!(
                "{:10} rms {:.4} max {:.3} thumb {:.2} rounds {} knots {} solves {} {:?} lines {} warn {}",
                s.name,
                fit.rms_stitches,
                fit.max_stitches,
                rf.rms_stitches,
                p.rounds.len(),
                piece.outline.knots.len(),
                p.forecasts,
                dt,
                p.wording.lines.len(),
                p.warnings.len()
            );
            if std::env::args().count() > 1 {
                println!("{:?}", p.counts());
            }
        }
        println!(
            "mean {:.4} most {:.4} single {:.3} least {:.2} lines {}",
            sum / 10.0,
            most,
            total.0 as f64 / total.1 as f64,
            total.3,
            total.2
        );
    }
}
