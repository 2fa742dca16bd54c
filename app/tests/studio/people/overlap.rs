//! Words that run into one another, or out of the window: every stage, at several sizes of
//! window and text, with one piece or many, of few rounds or many.

use std::path::Path;

use egui::epaint::ClippedShape;
use egui::{Color32, Key, Modifiers, Rect, Shape, vec2};
use egui_kittest::Harness;
use plumpline::kit::words::Language;
use plumpline::window::Studio;
use plumpline_core::starter::Starter;
use plumpline_core::{Band, Gauge, Project, Yarn, file, plan};

use crate::bench::Bench;
use crate::hand::press;
use crate::wait::until_settled;

/// Words as they stand on the last frame.
#[derive(Debug, Clone)]
struct Set {
    rect: Rect,
    text: String,
}

/// What of the last frame is read: words that nothing was drawn over since.
fn set(shapes: &[ClippedShape]) -> Vec<Set> {
    fn gather(shape: &Shape, clip: Rect, list: &mut Vec<Set>) {
        match shape {
            Shape::Text(text) if text.angle == 0.0 => {
                let galley = &text.galley;
                let inks = galley.job.sections.iter().map(|section| section.format.color);
                if inks.clone().count() > 0 && inks.clone().all(|ink| ink.a() == 0) {
                    return; // A field whose words are drawn another way.
                }
                // Letters lie within the middle of their line.
                for row in &galley.rows {
                    let rect = row.rect().translate(text.pos.to_vec2());
                    let high = 0.22 * rect.height();
                    let rect = rect.shrink2(vec2(1.0, high)).intersect(clip);
                    if rect.is_positive() && !row.text().trim().is_empty() {
                        list.push(Set { rect, text: row.text() });
                    }
                }
            }
            Shape::Rect(plate) if plate.fill.a() > 240 => {
                let plate = plate.rect.intersect(clip);
                list.retain(|set| !plate.contains(set.rect.center()));
            }
            Shape::Vec(shapes) => shapes.iter().for_each(|s| gather(s, clip, list)),
            _ => {}
        }
    }
    let mut list = Vec::new();
    for clipped in shapes {
        gather(&clipped.shape, clipped.clip_rect, &mut list);
    }
    list
}

/// A project of so many pieces, each of about so many rounds, in three yarns.
fn project(pieces: usize, rounds: u32) -> Project {
    let usual = Starter::Ball.usual();
    let mut first = Starter::Ball.piece(&usual, Gauge::default()).expect("a ball");
    let along = f64::from(rounds) * 4.2 / usual.height_mm;
    first.outline = first.outline.scaled(along.min(1.0), along);
    let mut project = Project::of_piece(first.clone());
    project.title = "A lantern float".into();
    project.yarns = (0..3).map(Yarn::plain).collect();
    for yarn in &mut project.yarns {
        yarn.ball_grams = Some(50.0);
    }
    for i in 1..pieces {
        let mut piece = first.clone();
        piece.name = format!("Float {}", i + 1);
        project.insert(i, piece);
    }
    for piece in &mut project.pieces {
        let count = plan(piece).expect("a plan").rounds.len() as u32;
        let band = |share: u32, yarn| Band { from_round: 1 + count * share / 3, yarn };
        piece.bands = vec![band(1, 1), band(2, 2)];
    }
    project
}

fn opened_at(path: &Path, size: egui::Vec2) -> Bench<'static> {
    let path = path.to_owned();
    let mut bench = Harness::builder()
        .with_size(size)
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(move |cc| Studio::new(cc, Some(path)));
    until_settled(&mut bench);
    bench
}

/// Words that lie over others.
fn collisions(words: &[Set]) -> Vec<String> {
    let mut list = Vec::new();
    for (i, a) in words.iter().enumerate() {
        for b in &words[i + 1..] {
            let common = a.rect.intersect(b.rect);
            if common.width() > 2.0 && common.height() > 2.0 {
                list.push(format!("“{}” lies over “{}”", b.text, a.text));
            }
        }
    }
    list
}

/// What runs together at this place.
fn faults(bench: &Bench<'_>, at: &str, list: &mut Vec<String>) {
    let words = set(&bench.output().shapes);
    assert!(words.len() > 8, "{at}: nothing is written");
    list.extend(collisions(&words).into_iter().map(|fault| format!("{at}: {fault}")));
}

/// Goes to every stage of a project with so many pieces of so many rounds.
fn walk(pieces: usize, rounds: u32, language: Language, list: &mut Vec<String>) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("float.ron");
    file::save(&project(pieces, rounds), &path).expect("saved");
    let fine = &[100.0, 110.0, 125.0, 150.0, 200.0][..];
    let windows = [
        ((1024.0, 700.0), fine),
        ((1440.0, 900.0), fine),
        ((1920.0, 1080.0), &[100.0, 150.0, 200.0][..]),
        ((3840.0, 2160.0), &[200.0][..]),
    ];
    for ((width, height), sizes) in windows {
        for (i, &percent) in sizes.iter().enumerate() {
            let size = vec2(width, height) / (percent / 100.0);
            let mut bench = opened_at(&path, size);
            if language != Language::English {
                bench.state_mut().speak(language);
                until_settled(&mut bench);
            }
            if i % 2 == 1 {
                bench.key_press_modifiers(Modifiers::COMMAND, Key::D);
                bench.run();
            }
            for (stage, key) in [
                ("shape", Key::Num1),
                ("assembly", Key::Num2),
                ("sizes", Key::Num3),
                ("lesson", Key::Num5),
                ("proofread", Key::Num6),
                ("make", Key::Num7),
            ] {
                press(&mut bench, key);
                until_settled(&mut bench);
                let at = format!(
                    "{stage}, {pieces} pieces of {rounds} rounds, {width} × {height} at {percent} %"
                );
                faults(&bench, &at, list);
                if stage == "shape" {
                    press(&mut bench, Key::Home);
                    faults(&bench, &format!("{at}, a round in hand"), list);
                    press(&mut bench, Key::Escape);
                }
            }
        }
    }
}

#[test]
fn no_words_run_together() {
    let mut list = Vec::new();
    for (pieces, rounds) in [(1, 10), (1, 300), (3, 60), (12, 20)] {
        walk(pieces, rounds, Language::English, &mut list);
    }
    list.sort();
    list.dedup();
    assert!(list.is_empty(), "{} faults:\n{}", list.len(), list.join("\n"));
}

/// German words are longer, those that are drawn by hand too.
#[test]
fn no_german_words_run_together() {
    let mut list = Vec::new();
    for (pieces, rounds) in [(1, 40), (12, 20)] {
        walk(pieces, rounds, Language::German, &mut list);
    }
    list.sort();
    list.dedup();
    assert!(list.is_empty(), "{} faults:\n{}", list.len(), list.join("\n"));
}

/// The measure itself: it finds what runs together, and lets be what is covered.
#[test]
fn words_over_words_are_found() {
    let drawn = |covered: bool| {
        let mut bench = Harness::new_ui(move |ui| {
            ui.ctx().set_fonts(plumpline::kit::type_faces::definitions());
            let font = egui::FontId::proportional(14.0);
            let at = egui::pos2(20.0, 20.0);
            let left = egui::Align2::LEFT_TOP;
            ui.painter().text(at, left, "under", font.clone(), Color32::WHITE);
            if covered {
                let plate = Rect::from_min_size(at, vec2(60.0, 20.0));
                ui.painter().rect_filled(plate, 0.0, Color32::BLACK);
            }
            ui.painter().text(at + vec2(4.0, 0.0), left, "over", font, Color32::WHITE);
        });
        bench.run();
        collisions(&set(&bench.output().shapes))
    };
    assert_eq!(drawn(false), ["“over” lies over “under”"]);
    assert!(drawn(true).is_empty());
}
