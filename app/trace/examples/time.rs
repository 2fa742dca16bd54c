//! Prints how long pictures of twelve megapixels take, from the bytes of the file to the
//! outline: `cargo run --release -p plumpline-trace --example time`.

#[expect(dead_code, reason = "the tests use the rest of it")]
#[path = "../tests/support/mod.rs"]
mod support;

use std::time::Instant;

use plumpline_trace::{Photo, TraceWish, trace};
use support::{Chance, Conditions, draw, shapes};

fn main() {
    let mut chance = Chance(3);
    for (i, shape) in shapes(1).iter().enumerate().filter(|(i, _)| [1, 8, 17].contains(i)) {
        let conditions = Conditions {
            noise: 5.0,
            blur: 2.0,
            tilt: 9.0,
            gradient: 0.15,
            jpeg: Some(85),
            shadow: i == 8,
            ..Conditions::default()
        };
        // So high that the whole is about twelve megapixels.
        let tall = (12e6 / (1.32 * 1.32 * 2.0 * shape.widest() * 1.15)).sqrt();
        let file = draw(shape, tall, &conditions, &mut chance);
        for _ in 0..3 {
            let start = Instant::now();
            let picture = Photo::decode(&file).expect("a picture");
            let decoded = start.elapsed();
            let traced =
                trace(&picture, &TraceWish::of_height(90.0), &|_| true).expect("traced");
            let (width, height) = picture.size;
            println!(
                "{}, {:.1} megapixels, {} kB: read in {:.0} ms, all in {:.0} ms, {} knots{}",
                shape.name,
                f64::from(width) * f64::from(height) * 1e-6,
                file.len() >> 10,
                decoded.as_secs_f64() * 1e3,
                start.elapsed().as_secs_f64() * 1e3,
                traced.outline.knots.len(),
                if traced.report.shadow { ", a shadow left out" } else { "" }
            );
        }
    }
}
