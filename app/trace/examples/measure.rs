//! Prints how near traced outlines come to the truth: `measure FIRST LAST` for seeds from
//! FIRST up to LAST, each forty shapes under conditions by chance, and the names of the worst;
//! `measure odd FIRST LAST` the same of shapes with handles and ears that are cut off;
//! `measure time` how long pictures of twelve megapixels take.

#[path = "../tests/support/mod.rs"]
mod support;

use std::time::Instant;

use plumpline_trace::{Photo, TraceWish, trace};
use support::{Chance, Conditions, OddShape, draw, off_mm, shapes};

/// The picture with the traced line over it.
fn laid_over(file: &[u8], line: Option<&[Vec<(f64, f64)>; 2]>) -> image::RgbImage {
    let mut picture = image::load_from_memory(file).expect("a picture").into_rgb8();
    for pair in line.iter().flat_map(|sides| sides.iter()).flat_map(|side| side.windows(2)) {
        for i in 0..20 {
            let t = f64::from(i) / 20.0;
            let (x, y) = (
                pair[0].0 + t * (pair[1].0 - pair[0].0),
                pair[0].1 + t * (pair[1].1 - pair[0].1),
            );
            let (x, y) = (x.max(0.0) as u32, y.max(0.0) as u32);
            if x < picture.width() && y < picture.height() {
                picture.put_pixel(x, y, image::Rgb([255, 0, 255]));
            }
        }
    }
    picture
}

fn main() {
    let seed = |i: usize| std::env::args().nth(i).and_then(|a| a.parse().ok());
    match std::env::args().nth(1).as_deref() {
        Some("time") => return times(),
        Some("odd") => return odd(seed(2).unwrap_or(1), seed(3).unwrap_or(1)),
        _ => {}
    }
    let (first, last) = (seed(1).unwrap_or(1), seed(2).unwrap_or(1));
    let keep = std::env::args().nth(3);
    let (mut all, mut near, mut silent, mut refused, mut doubted) = (0, 0, 0, 0, 0);
    let mut sum_knots = 0;
    for seed in first..=last {
        for (i, shape) in shapes(seed).iter().enumerate() {
            let mut chance = Chance(seed * 1000 + i as u64);
            let conditions = Conditions::by_chance(&mut chance);
            let tall = chance.between(240.0, 800.0);
            let file = draw(shape, tall, &conditions, &mut chance);
            let height = 100.0;
            all += 1;
            let traced = Photo::decode(&file)
                .map_err(Into::into)
                .and_then(|picture| trace(&picture, &TraceWish::of_height(height), &|_| true));
            let line = traced.as_ref().ok().map(|t| t.report.line.clone());
            let said = match traced {
                Err(halt) => {
                    refused += 1;
                    format!("refused: {halt}")
                }
                Ok(traced) => {
                    sum_knots += traced.outline.knots.len();
                    let off = off_mm(&traced.outline, shape, height);
                    let doubts = &traced.report.doubts;
                    near += usize::from(off <= 0.5);
                    silent += usize::from(off > 0.5 && doubts.is_empty());
                    doubted += usize::from(off <= 0.5 && !doubts.is_empty());
                    let tilt = traced.report.tilt_degrees - conditions.tilt;
                    if off <= 0.5 && doubts.is_empty() {
                        continue;
                    }
                    format!(
                        "{off:.2} % off, tilt {tilt:+.1}°, shadow {} for {}, {doubts:?}",
                        traced.report.shadow, conditions.shadow
                    )
                }
            };
            println!("seed {seed} {i}, {}, {tall:.0} px: {said}", shape.name);
            println!("    {conditions:?}");
            if let Some(folder) = &keep {
                laid_over(&file, line.as_ref())
                    .save(format!("{folder}/{seed}-{i}.png"))
                    .expect("saved");
            }
        }
    }
    let share = |n: usize| 100.0 * n as f64 / all as f64;
    println!(
        "{all} pictures: {:.1} % within 0.5 % of the height, {:.1} % refused, {:.1} % further \
         off without a doubt, {:.1} % doubted needlessly; {:.1} knots a shape",
        share(near),
        share(refused),
        share(silent),
        share(doubted),
        sum_knots as f64 / (all - refused).max(1) as f64
    );
}

/// Prints how near outlines come whose handles and ears were cut off.
fn odd(first: u64, last: u64) {
    use OddShape::{Ear, Ears, Feet, Handle, Handles};
    for odd in [Handle, Handles, Ear, Ears, Feet] {
        let (mut all, mut near, mut silent, mut unseen) = (0, 0, 0, 0);
        for seed in first..=last {
            for (i, shape) in shapes(seed).iter().enumerate().step_by(3) {
                let mut chance = Chance(seed * 1000 + i as u64);
                let tilt = chance.between(-20.0, 20.0);
                let noise = chance.between(0.0, 6.0);
                let shadow = chance.between(0.0, 1.0) < 0.5;
                let conditions =
                    Conditions { odd, tilt, noise, shadow, ..Conditions::default() };
                let file = draw(shape, 420.0, &conditions, &mut chance);
                let wish = TraceWish { cut: true, ..TraceWish::of_height(100.0) };
                let traced = Photo::decode(&file)
                    .map_err(Into::into)
                    .and_then(|p| trace(&p, &wish, &|_| true));
                let Ok(traced) = traced else { continue };
                let off = off_mm(&traced.outline, shape, 100.0);
                all += 1;
                near += usize::from(off <= 1.0);
                unseen += usize::from(traced.report.odd.is_empty());
                if off > 1.0 && traced.report.doubts.is_empty() {
                    silent += 1;
                    println!("seed {seed} {i}, {}, {odd:?}: {off:.2} %", shape.name);
                }
            }
        }
        let share = |n: usize| 100.0 * n as f64 / f64::from(all.max(1) as u32);
        println!(
            "{odd:?}: {all} pictures, {:.1} % within 1 % of the height, {:.1} % further off \
             without a doubt, {:.1} % of which nothing was seen",
            share(near),
            share(silent),
            share(unseen)
        );
    }
}

/// Time of the processor that this thread has taken, ms, where the system tells: it does not
/// grow while other programs have their turn.
fn spent_ms() -> f64 {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    let ns: Option<f64> = told.split_whitespace().next().and_then(|ns| ns.parse().ok());
    ns.map_or(f64::NAN, |ns| 1e-6 * ns)
}

/// Prints how long pictures of twelve megapixels take, from the bytes of the file to the outline.
fn times() {
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
            let (start, before) = (Instant::now(), spent_ms());
            let picture = Photo::decode(&file).expect("a picture");
            let decoded = spent_ms() - before;
            let traced =
                trace(&picture, &TraceWish::of_height(90.0), &|_| true).expect("traced");
            let (width, height) = picture.size;
            println!(
                "{}, {:.1} megapixels, {} kB: read in {:.0} ms, all in {:.0} ms of one core \
                 ({:.0} ms by the clock), {} knots{}",
                shape.name,
                f64::from(width) * f64::from(height) * 1e-6,
                file.len() >> 10,
                decoded,
                spent_ms() - before,
                start.elapsed().as_secs_f64() * 1e3,
                traced.outline.knots.len(),
                if traced.report.shadow { ", a shadow left out" } else { "" }
            );
        }
    }
}
