//! Several pieces: chips to take them in hand, and what can be done with one.

use crate::bench::{Bench, opened};
use crate::hand::{click, undo};
use egui::Key;
use egui_kittest::kittest::Queryable as _;
use plumpline_core::Project;

fn project<'a>(bench: &'a Bench<'_>) -> &'a Project {
    bench.state().document().project()
}

/// Opens the card of the piece in hand.
fn open(bench: &mut Bench<'_>) {
    let name = format!("Piece {}, selected", bench.state().document().piece().name);
    click(bench, &name);
}

#[test]
fn a_duplicate_is_a_piece_of_its_own_and_one_step() {
    let mut bench = opened(1440.0, 900.0);
    let before = project(&bench).clone();
    let first = before.pieces[0].name.clone();
    open(&mut bench);
    click(&mut bench, "Duplicate");
    assert_eq!(project(&bench).pieces.len(), 2);
    assert_eq!(bench.state().document().place(), 1, "the copy is in hand");
    open(&mut bench);
    click(&mut bench, "Make, more");
    assert_eq!(project(&bench).pieces[1].copies, 2);
    bench.key_press(Key::Escape);
    bench.run();
    click(&mut bench, &format!("Piece {first}"));
    assert_eq!(bench.state().document().place(), 0);
    undo(&mut bench);
    undo(&mut bench);
    assert_eq!(project(&bench), &before);
}

#[test]
fn the_only_piece_cannot_be_removed_and_others_can() {
    let mut bench = opened(1440.0, 900.0);
    open(&mut bench);
    click(&mut bench, "Remove");
    assert_eq!(project(&bench).pieces.len(), 1);
    click(&mut bench, "Add a ball");
    assert_eq!(project(&bench).pieces.len(), 2);
    assert!(bench.state().plan().is_some());
    open(&mut bench);
    click(&mut bench, "Remove");
    assert_eq!(project(&bench).pieces.len(), 1);
    assert_eq!(bench.state().document().history.undo_steps(), 2);
}

#[test]
fn where_chips_do_not_fit_the_card_lists_every_piece() {
    let mut bench = opened(1024.0, 700.0);
    for _ in 0..7 {
        open(&mut bench);
        click(&mut bench, "Add a ball");
    }
    assert!(bench.query_by_label("Piece Ball").is_none(), "no room for a chip each");
    open(&mut bench);
    click(&mut bench, "Ball 3");
    assert_eq!(bench.state().document().piece().name, "Ball 3");
}
