//! Text from 80 to 200 %, in every language: words of controls stay within them.

use egui::{Rect, Shape};
use plumpline::kit::words::Language;

use super::controls::Control;
use super::places::{self, Visit};

/// Words in a control that are somebody's own, or a sample of a long line which is whole on
/// hover, and may be cut.
const OWN: [&str; 8] =
    ["Piece ", "Yarn ", "Gauge of ", "Open ", "Take ", "Project name", "Step ", "plain-words"];

/// Words as they were drawn.
struct Words {
    rect: Rect,
    /// Whether they were cut short.
    cut: bool,
    /// Whether they are in sight: rows that are scrolled away lie under other things.
    seen: bool,
    text: String,
}

/// The words drawn on the last frame; of a card or a menu only those drawn after its ground.
fn words(visit: &Visit<'_>) -> Vec<Words> {
    fn gather(shape: &Shape, clip: Rect, list: &mut Vec<Words>) {
        match shape {
            Shape::Text(text) if text.angle == 0.0 => {
                let rect = text.galley.rect.translate(text.pos.to_vec2());
                list.push(Words {
                    rect,
                    cut: text.galley.elided,
                    seen: clip.contains(rect.center()),
                    text: text.galley.text().to_owned(),
                });
            }
            Shape::Vec(shapes) => shapes.iter().for_each(|s| gather(s, clip, list)),
            _ => {}
        }
    }
    let shapes = &visit.bench.output().shapes;
    let all = visit.list.iter().fold(Rect::NOTHING, |all, c| all.union(c.seen));
    let is_ground = |shape: &Shape| match shape {
        Shape::Rect(rect) => rect.rect.expand(1.0).contains_rect(all),
        Shape::Vec(shapes) => shapes.iter().any(
            |s| matches!(s, Shape::Rect(rect) if rect.rect.expand(1.0).contains_rect(all)),
        ),
        _ => false,
    };
    let ground = shapes.iter().rposition(|clipped| is_ground(&clipped.shape));
    let from = ground.filter(|_| visit.over).unwrap_or(0);
    let mut list = Vec::new();
    for clipped in &shapes[from..] {
        gather(&clipped.shape, clipped.clip_rect, &mut list);
    }
    list
}

fn is_own(control: &Control) -> bool {
    OWN.iter().any(|own| control.name.starts_with(own))
}

fn fits(control: &Control, words: &[Words], at: &str, faults: &mut Vec<String>) {
    use egui::accesskit::Role;
    let has_words = matches!(
        control.role,
        Role::Button | Role::Tab | Role::RadioButton | Role::CheckBox | Role::MenuItem
    );
    if !has_words || !control.is_whole() {
        return;
    }
    for word in words.iter().filter(|word| word.seen) {
        let inside = control.rect.contains(word.rect.center());
        if inside && (word.cut || !control.rect.expand(1.5).contains_rect(word.rect)) {
            faults.push(format!("{at}: “{}” does not fit “{}”", word.text, control.name));
        }
    }
}

/// A window of these many pixels under this size of text. Every place is opened by its English
/// names; another language takes effect there at once.
fn read(width: f32, height: f32, percent: f32, language: Language) {
    let mut faults = Vec::new();
    let scale = percent / 100.0;
    let mut seen = 0;
    places::each(width / scale, height / scale, |mut visit| {
        let own: Vec<u64> = visit.list.iter().filter(|c| is_own(c)).map(|c| c.id).collect();
        if language != Language::English {
            visit.bench.state_mut().speak(language);
            visit.bench.step();
            visit.list = visit.again();
        }
        visit.bench.step();
        let words = words(&visit);
        seen += words.len();
        let list = visit.again();
        for control in list.iter().filter(|c| !own.contains(&c.id) && !is_own(c)) {
            fits(control, &words, &format!("{} at {percent} %", visit.name), &mut faults);
        }
    });
    assert!(seen > 300, "{seen} words at {percent} %: places did not open");
    faults.sort();
    faults.dedup();
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn words_of_controls_fit_at_every_size_of_text() {
    for percent in [80.0, 100.0, 150.0, 200.0] {
        read(1024.0, 700.0, percent, Language::English);
    }
}

#[test]
fn german_words_of_controls_fit_too() {
    for percent in [100.0, 150.0] {
        read(1024.0, 700.0, percent, Language::German);
    }
}
