//! Every control has a name of its own, can be hit, and lies where it can be seen.

use egui::{Pos2, Rect, vec2};

use super::controls::{Control, all, focus, met};
use super::places::{self, Visit};

/// Least side of what can be hit, points: WCAG 2.2, success criterion 2.5.8.
const HIT: f32 = 24.0;

/// Controls that lie as close as the rounds do, and those of full size that do the same to the
/// one in hand (2.5.8 calls them equivalent).
const CLOSE: [(&str, [&str; 2]); 2] = [
    ("Round ", ["Previous round", "Next round"]),
    ("End of round ", ["One stitch more", "One stitch fewer"]),
];

fn equivalents(control: &Control) -> Option<[&'static str; 2]> {
    let number = |rest: &str| rest.starts_with(|c: char| c.is_ascii_digit());
    let is = |kind: &str| control.name.strip_prefix(kind).is_some_and(number);
    CLOSE.iter().find(|(kind, _)| is(kind)).map(|(_, names)| *names)
}

/// Whether what can be hit of `control` is large enough, or stands in for something that is.
fn size(visit: &Visit<'_>, control: &Control, faults: &mut Vec<String>) {
    let rect = control.rect;
    if rect.width() >= HIT - 0.01 && rect.height() >= HIT - 0.01 {
        return;
    }
    let said = || format!("{}: “{}” is {:?}", visit.name, control.name, rect.size());
    let Some(names) = equivalents(control) else {
        faults.push(said());
        return;
    };
    let kind = |c: &&Control| equivalents(c) == Some(names) && c.id != control.id;
    for other in visit.list.iter().filter(kind) {
        let common = other.rect.intersect(rect);
        if common.width() > 0.5 && common.height() > 0.5 {
            faults.push(format!("{} and lies over “{}”", said(), other.name));
        }
    }
}

/// Places on a control where a hand may come down.
fn spots(rect: Rect) -> impl Iterator<Item = Pos2> {
    let shares = [(0.5, 0.5), (0.2, 0.5), (0.8, 0.5), (0.5, 0.2), (0.5, 0.8), (0.1, 0.1)];
    shares.into_iter().map(move |(x, y)| rect.min + vec2(x, y) * rect.size())
}

fn covered(visit: &Visit<'_>, control: &Control, faults: &mut Vec<String>) {
    // A board is what its parts lie on.
    if control.role == egui::accesskit::Role::Canvas {
        return;
    }
    let free = |at: Pos2| met(&visit.list, at).is_some_and(|c| c.id == control.id);
    if !spots(control.seen).any(free) {
        let by = met(&visit.list, control.seen.center()).map_or("", |c| c.name.as_str());
        faults.push(format!("{}: “{}” is covered by “{by}”", visit.name, control.name));
    }
}

/// What is partly out of sight comes into sight as the keyboard reaches it.
fn sight(visit: &mut Visit<'_>, window: Rect, faults: &mut Vec<String>) {
    for control in visit.list.clone() {
        let inside = window.expand(0.5).contains_rect(control.seen);
        if control.seen.is_positive() && !inside {
            faults.push(format!("{}: “{}” leaves the window", visit.name, control.name));
        }
        let reached = control.focusable && control.enabled;
        if control.is_whole() || !reached || control.role == egui::accesskit::Role::Canvas {
            continue;
        }
        if !focus(&visit.bench, &control) {
            continue;
        }
        // Areas in one another take turns.
        for _ in 0..16 {
            visit.bench.step();
        }
        let now = all(&visit.bench).into_iter().find(|c| c.id == control.id);
        let shown = now.as_ref().is_some_and(|c| {
            let big = c.rect.width() > c.seen.width().max(200.0)
                || c.rect.height() > c.seen.height().max(100.0);
            window.expand(0.5).contains_rect(c.seen) && (c.is_whole() || big)
        });
        if !shown {
            faults.push(format!(
                "{}: “{}” stays out of sight: {:?} of {:?}",
                visit.name,
                control.name,
                now.as_ref().map(|c| c.seen),
                now.as_ref().map(|c| c.rect)
            ));
        }
    }
}

fn walk(width: f32, height: f32) {
    let mut faults = Vec::new();
    let mut seen = 0;
    let window = Rect::from_min_size(Pos2::ZERO, vec2(width, height));
    places::each(width, height, |mut visit| {
        seen += visit.list.len();
        let mut names: Vec<&str> = Vec::new();
        for control in &visit.list {
            if control.name.trim().is_empty() {
                faults.push(format!("{}: no name, {:?}", visit.name, control));
                continue;
            }
            if names.contains(&control.name.as_str()) {
                faults.push(format!("{}: two are called “{}”", visit.name, control.name));
            }
            names.push(&control.name);
            size(&visit, control, &mut faults);
            if control.seen.is_positive() && control.is_whole() {
                covered(&visit, control, &mut faults);
            }
            if let Some(names) = equivalents(control)
                && visit.name.contains("round in hand")
            {
                for name in names {
                    let large = |c: &&Control| {
                        c.name == name && c.rect.width() >= HIT && c.rect.height() >= HIT
                    };
                    if visit.list.iter().find(large).is_none() {
                        faults.push(format!("{}: no “{name}” of full size", visit.name));
                    }
                }
            }
        }
        sight(&mut visit, window, &mut faults);
    });
    assert!(seen > 600, "{seen} controls only: places did not open");
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn everything_can_be_named_hit_and_seen_in_the_smallest_window() {
    walk(1024.0, 700.0);
}

#[test]
fn everything_can_be_named_hit_and_seen_in_a_usual_window() {
    walk(1440.0, 900.0);
}

/// Text at 200 % in the smallest window leaves a window of half the size in points.
#[test]
fn everything_can_be_named_hit_and_seen_at_the_largest_text() {
    walk(512.0, 350.0);
}

#[test]
fn everything_can_be_named_hit_and_seen_at_half_as_large_again() {
    walk(683.0, 467.0);
}
