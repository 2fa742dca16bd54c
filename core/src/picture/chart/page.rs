//! All charts of a piece and their key as one drawing.

use super::symbols::INK;
use super::{Chart, Charts};
use crate::picture::drawing::{Drawing, width_of};

/// Widest row of charts, mm.
const WIDEST: f32 = 270.0;
/// Between charts, and between entries of the key, mm.
const GAP: f32 = 9.0;
/// Heights of titles and of the key's words, mm.
const TITLE: f32 = 4.0;
const WORDS: f32 = 3.2;

/// The charts side by side, each under its title, with their key below.
pub fn chart_page(all: &Charts) -> Drawing {
    let mut page = Drawing::default();
    let mut from = 0;
    let mut top = 0.0;
    while from < all.charts.len() {
        let mut wide = 0.0;
        let row: Vec<&Chart> = all.charts[from..]
            .iter()
            .take_while(|chart| {
                let first = wide == 0.0;
                wide += size(chart)[0] + GAP;
                first || wide <= WIDEST
            })
            .collect();
        from += row.len();
        top += row_of(&mut page, &row, top);
    }
    key(&mut page, all, top);
    page
}

/// Room a chart takes, its title counted in.
fn size(chart: &Chart) -> [f32; 2] {
    let [wide, tall] = chart.size_mm();
    [wide.max(width_of(&titled(chart), TITLE)), tall]
}

fn titled(chart: &Chart) -> String {
    format!("{}: {}", chart.title, chart.caption)
}

/// One row of charts from `top` on. Its height.
fn row_of(page: &mut Drawing, row: &[&Chart], top: f32) -> f32 {
    let tallest = row.iter().map(|c| size(c)[1]).fold(0.0, f32::max);
    let mut left = 0.0;
    for chart in row {
        let [low, high] = chart.drawing.bounds();
        let [wide, _] = size(chart);
        let middle = left + 0.5 * wide;
        page.words(titled(chart), [middle, top + 0.5 * TITLE], TITLE, INK, true);
        let x = middle - 0.5 * (low[0] + high[0]);
        page.place(&chart.drawing, [x, top + 2.0 * TITLE - low[1]]);
        left += wide + GAP;
    }
    tallest + 2.0 * TITLE + GAP
}

fn key(page: &mut Drawing, all: &Charts, top: f32) {
    let [low, high] = page.bounds();
    let room = (high[0] - low[0]).max(80.0);
    let (mut left, mut y) = (low[0], top + WORDS);
    for entry in &all.key {
        let words = width_of(&entry.text, WORDS);
        let wide = 6.0 + words + GAP;
        if left > low[0] && left + wide > low[0] + room + GAP {
            (left, y) = (low[0], y + 2.0 * WORDS);
        }
        page.place(&entry.drawing, [left + 2.0, y]);
        page.words_from(entry.text.clone(), [left + 5.0, y], WORDS, INK, false);
        left += wide;
    }
}
