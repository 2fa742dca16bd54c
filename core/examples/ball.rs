//! Plans a ball and prints how to work it.
//!
//! `cargo run -p plumpline-core --example ball -- 80` for one of 80 mm.

use plumpline_core::Extent;
use plumpline_core::words::Writer;
use plumpline_core::{Gauge, Knot, Outline, Piece, plan, words};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let across = std::env::args().nth(1).map_or(Ok(60.0), |wanted| wanted.parse::<f64>())?;
    // A sphere through five places of its meridian.
    let knots = (0..=4).map(|i| {
        let (sin, cos) = (f64::from(i) * std::f64::consts::FRAC_PI_4).sin_cos();
        let on_the_axis = i % 4 == 0;
        let radius = if on_the_axis { 0.0 } else { 0.5 * across * sin };
        Knot::new(radius, 0.5 * across * (1.0 - cos))
    });
    let outline = Outline::new(knots.collect())?;
    // 22 stitches and 24 rounds to 10 cm.
    let piece = Piece::new("Ball", outline, Gauge::per(22.0, 24.0, 100.0));
    let plan = plan(&piece)?;
    let words = words(&plan, &piece, &Writer::bench());

    for line in &words.lines {
        println!("{}: {} [{}]", line.heading, line.text, line.count);
        for stop in words.stuffing.iter().filter(|stop| stop.after == line.last) {
            println!("{}", stop.text);
        }
    }
    for line in &words.closing {
        println!("{line}");
    }
    let Extent { height, width } = plan.size_mm;
    println!("Stuffed it is {height:.0} mm high and {width:.0} mm wide.");
    for warning in &plan.warnings {
        println!("{}", warning.sentence());
    }
    Ok(())
}
