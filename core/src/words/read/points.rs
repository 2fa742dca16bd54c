//! Points that end no sentence.

use super::token::{Say, Tok, Token};

/// Takes out points that end no sentence: of an abbreviation (“2 st., sc”), of a German
/// ordinal (“jede 2. M”), and the dash of “6-inc”.
pub(super) fn drop_points(tokens: &mut Vec<Token>, text: &str, ordinal_point: bool) {
    let small = |t: &Token| {
        text.get(t.at()).and_then(|w| w.chars().next()).is_some_and(char::is_lowercase)
    };
    let mut kept: Vec<Token> = Vec::with_capacity(tokens.len());
    // Whether anything was worked so far.
    let mut works = false;
    for (i, &this) in tokens.iter().enumerate() {
        let ahead = |n: usize| tokens.get(i + n).map(|t| t.tok);
        let ordinal = match ahead(1) {
            Some(Tok::Stitch | Tok::Kind(_) | Tok::Chain | Tok::Increase(_)) => true,
            Some(Tok::Comma | Tok::Say(Say::Then)) => {
                matches!((ahead(2), ahead(3)), (Some(Tok::Number(_)), Some(Tok::Stop)))
            }
            _ => false,
        };
        let after = tokens.get(i + 1);
        let place_alone = !works;
        works |= this.tok.is_work();
        let before = kept.last_mut();
        match (before, this.tok, after) {
            (Some(before), Tok::Stop, Some(after))
                if ordinal_point && this.glued && !after.glued && ordinal =>
            {
                if let Tok::Number(n) = before.tok {
                    *before = before.meaning(Tok::Ordinal(n));
                    continue;
                }
            }
            (Some(before), Tok::Stop, Some(after))
                if this.glued
                    && matches!(
                        before.tok,
                        Tok::Stitch
                            | Tok::Kind(_)
                            | Tok::Chain
                            | Tok::Increase(_)
                            | Tok::Decrease(..)
                            | Tok::Say(Say::Repeat)
                    )
                    && (small(after)
                        || matches!(
                            after.tok,
                            Tok::Comma | Tok::Close | Tok::Star | Tok::Times
                        )) =>
            {
                continue;
            }
            // “in jede M. 2 feste M.”: the place comes first.
            (Some(before), Tok::Stop, Some(after))
                if ordinal_point
                    && this.glued
                    && matches!(before.tok, Tok::InEach | Tok::Stitch)
                    && matches!(after.tok, Tok::Number(_))
                    && matches!(ahead(2), Some(Tok::Kind(_)))
                    && place_alone =>
            {
                continue;
            }
            (Some(before), Tok::Dash, Some(after))
                if this.glued
                    && after.glued
                    && matches!(before.tok, Tok::Number(_))
                    && matches!(
                        after.tok,
                        Tok::Increase(_) | Tok::Decrease(..) | Tok::Times
                    ) =>
            {
                continue;
            }
            _ => {}
        }
        kept.push(this);
    }
    *tokens = kept;
}
