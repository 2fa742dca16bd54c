//! A letter typed while a menu is open takes the keyboard to the next line of it that begins
//! with that letter; round the end it goes on with the first.

use egui::{Context, Event, Id, Response};

/// What has been seen of an open menu in this pass.
#[derive(Debug, Clone, Copy)]
struct LetterHunt {
    /// The pass it belongs to.
    pass: u64,
    /// The first line that begins so.
    first: Option<Id>,
    /// Whether the line with the keyboard has gone by.
    passed: bool,
    /// The first one after that.
    after: Option<Id>,
}

fn id() -> Id {
    Id::unique("letters of a menu")
}

/// The letter that was typed, where nobody writes.
fn typed(ctx: &Context) -> Option<char> {
    if ctx.text_edit_focused() {
        return None;
    }
    ctx.input(|i| {
        i.events.iter().find_map(|event| match event {
            Event::Text(text) => {
                let mut letters = text.chars();
                let letter = letters.next().filter(|c| c.is_alphanumeric())?;
                letters.next().is_none().then(|| letter.to_lowercase().next())?
            }
            _ => None,
        })
    })
}

/// Notes a line of a menu, in the order of its lines.
pub fn line(response: &Response, words: &str) {
    let ctx = &response.ctx;
    let Some(letter) = typed(ctx) else { return };
    let pass = ctx.cumulative_pass_nr();
    let fresh = LetterHunt { pass, first: None, passed: false, after: None };
    let mut hunt = ctx.data(|d| d.get_temp::<LetterHunt>(id())).unwrap_or(fresh);
    if hunt.pass != pass {
        hunt = fresh;
    }
    let begins = words.chars().flat_map(char::to_lowercase).next() == Some(letter);
    if begins && response.enabled() {
        hunt.first = hunt.first.or(Some(response.id));
        if hunt.passed {
            hunt.after = hunt.after.or(Some(response.id));
        }
    }
    hunt.passed |= response.has_focus();
    ctx.data_mut(|d| d.insert_temp(id(), hunt));
}

/// Notes a line of a menu, and hands it back.
pub fn noted(response: Response, words: &str) -> Response {
    line(&response, words);
    response
}

/// Once all is drawn: the keyboard goes where the letter says.
pub fn settle(ctx: &Context) {
    let Some(hunt) = ctx.data(|d| d.get_temp::<LetterHunt>(id())) else { return };
    ctx.data_mut(|d| d.remove::<LetterHunt>(id()));
    if let Some(line) =
        hunt.after.or(hunt.first).filter(|_| hunt.pass == ctx.cumulative_pass_nr())
    {
        ctx.memory_mut(|m| m.request_focus(line));
    }
}
