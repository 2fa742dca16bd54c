//! The designer's own pictures, and which sections the sheet has, in which order.

use std::path::Path;

use egui::{Rect, TextEdit, Ui, pos2, vec2};
use plumpline_core::project::sheet_design::{
    LONGEST_CAPTION, SheetDesign, SheetDetail, SheetSection,
};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, SheetCommand};
use crate::document::edit::Edit;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::work::picture::own_name;

/// Side of a small button, points.
const BUTTON: f32 = 26.0;

/// Draws the rows.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let mut design = bench.document.project().sheet.clone();
    form::heading(ui, say!("arrange-pictures-of-your-own"));
    logo(ui, bench, &mut design, actions);
    photos(ui, bench, &mut design, actions);
    form::heading(ui, say!("arrange-sections"));
    sections(ui, &mut design);
    form::remark(ui, say!("arrange-where-cautions-stand"));
    for detail in SheetDetail::ALL {
        let drawn = !design.left_out.contains(&detail);
        let (name, why) = detail_words(detail);
        if let Some(on) = form::tick(ui, name, why, drawn) {
            design.draw(detail, on);
        }
    }
    let now = &bench.document.project().sheet;
    if design != *now {
        let typed = without_captions(&design) == without_captions(now);
        actions.edit(Edit::SheetDesign { design, typed });
    }
}

fn without_captions(design: &SheetDesign) -> SheetDesign {
    let mut design = design.clone();
    for photo in &mut design.photos {
        photo.caption.clear();
    }
    design
}

/// Small buttons at the right end of a row, from right to left; returns which was clicked.
fn small(ui: &Ui, row: Rect, of: &str, buttons: &[(Icon, &str, bool)]) -> Option<usize> {
    let mut clicked = None;
    let mut right = row.right();
    for (i, (icon, what, enabled)) in buttons.iter().enumerate() {
        let corner = pos2(right - BUTTON, row.center().y - 0.5 * BUTTON);
        let place = Rect::from_min_size(corner, vec2(BUTTON, BUTTON));
        let name = format!("{what}: {of}");
        let button = controls::button(ui, place, ButtonFace::Icon(*icon), &name, *enabled);
        if button.on_hover_text(*what).clicked() {
            clicked = Some(i);
        }
        right -= BUTTON + 4.0;
    }
    clicked
}

/// Most characters of a file's name that a row has room for.
const NAME: usize = 18;

/// The name of a file, cut short where it is long.
fn file_name(path: &str) -> String {
    let name = own_name(Path::new(path));
    match name.char_indices().nth(NAME) {
        Some((cut, _)) => format!("{}…", &name[..cut]),
        None => name,
    }
}

fn logo(ui: &mut Ui, bench: &Bench<'_>, design: &mut SheetDesign, actions: &mut Actions) {
    if let Some(path) = design.logo.clone() {
        let name = say!("arrange-logo-name", name = file_name(&path));
        let row = form::row(ui, &name, say!("arrange-logo-place"));
        let remove = (Icon::Close, say!("arrange-remove"), true);
        if small(ui, row, say!("arrange-logo"), &[remove]).is_some() {
            design.logo = None;
        }
    } else {
        form::command(ui, bench, Command::Sheet(SheetCommand::ChooseLogo), actions);
    }
}

fn photos(ui: &mut Ui, bench: &Bench<'_>, design: &mut SheetDesign, actions: &mut Actions) {
    let last = design.photos.len().saturating_sub(1);
    let mut done = None;
    for (i, photo) in design.photos.iter_mut().enumerate() {
        let name = file_name(&photo.path);
        let title = if i == 0 { say!("arrange-cover-name", name = name) } else { name };
        let why = match i {
            0 => say!("arrange-cover-place"),
            _ => say!("arrange-a-photograph"),
        };
        let row = form::row(ui, &title, why);
        let buttons = [
            (Icon::Close, say!("arrange-remove"), true),
            (Icon::Down, say!("arrange-later"), i < last),
            (Icon::Up, say!("arrange-earlier"), i > 0),
        ];
        let known = say!("arrange-photograph-n", n = i + 1);
        done = small(ui, row, &known, &buttons).map(|button| (i, button)).or(done);
        let width = ui.available_width();
        let edit = TextEdit::singleline(&mut photo.caption)
            .char_limit(LONGEST_CAPTION)
            .desired_width(width)
            .hint_text(say!("arrange-what-stands-under-it"));
        ui.add(edit).accessible_name(say!("arrange-caption-of-photograph", n = i + 1));
    }
    match done {
        Some((i, 0)) => {
            design.photos.remove(i);
        }
        Some((i, 1)) if i < last => design.photos.swap(i, i + 1),
        Some((i, 2)) if i > 0 => design.photos.swap(i, i - 1),
        _ => {}
    }
    form::command(ui, bench, Command::Sheet(SheetCommand::AddPhoto), actions);
}

fn sections(ui: &mut Ui, design: &mut SheetDesign) {
    let shown = design.sections.clone();
    let others = SheetSection::ALL.into_iter().filter(|section| !shown.contains(section));
    for section in shown.iter().copied().chain(others) {
        let (name, why) = section_words(section);
        let row = form::row(ui, name, why);
        let place = shown.iter().position(|&other| other == section);
        let on = place.is_some();
        let leave = match (on, section.is_needed()) {
            (_, true) => (Icon::Close, say!("arrange-leave-out"), false),
            (true, _) => (Icon::Close, say!("arrange-leave-out"), true),
            (false, _) => (Icon::More, say!("arrange-show"), true),
        };
        let down = place.is_some_and(|place| place + 1 < shown.len());
        let up = place.is_some_and(|place| place > 0);
        let buttons = [
            leave,
            (Icon::Down, say!("arrange-later"), down),
            (Icon::Up, say!("arrange-earlier"), up),
        ];
        match small(ui, row, name, &buttons) {
            Some(0) => design.show(section, !on),
            Some(1) => design.shift(section, true),
            Some(2) => design.shift(section, false),
            _ => {}
        }
    }
}

fn section_words(section: SheetSection) -> (&'static str, &'static str) {
    match section {
        SheetSection::Photos => (say!("arrange-photos"), say!("arrange-photos-why")),
        SheetSection::Words => (say!("arrange-words"), say!("arrange-words-why")),
        SheetSection::Pieces => (say!("arrange-pieces"), say!("arrange-pieces-why")),
        SheetSection::Assembly => (say!("arrange-assembly"), say!("arrange-assembly-why")),
        SheetSection::Cautions => (say!("arrange-cautions"), say!("arrange-cautions-why")),
        SheetSection::Changes => (say!("arrange-changes"), say!("arrange-changes-why")),
        SheetSection::Tester => (say!("arrange-tester"), say!("arrange-tester-why")),
    }
}

fn detail_words(detail: SheetDetail) -> (&'static str, &'static str) {
    match detail {
        SheetDetail::Bodies => (say!("arrange-bodies"), say!("arrange-bodies-why")),
        SheetDetail::Measures => (say!("arrange-measures"), say!("arrange-measures-why")),
        SheetDetail::Charts => (say!("arrange-charts"), say!("arrange-charts-why")),
    }
}
