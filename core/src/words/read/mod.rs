//! Reading anyone's written pattern into the tree.
//!
//! The steps, a file each: characters fold into [`lexemes`]; [`terms`] finds out which
//! lexicon they are of; by its [`words`] and the text's own [`glossary`] they become
//! [`tokens`]; [`lines`] finds what belongs to one [`heading`], and [`layers`] takes off what
//! stands beside the work. A grammar reads the work as it stands ([`round`], with [`groups`],
//! [`stitch`], [`place`], [`doing`], [`count`] and [`settle`], all over [`input`]); [`readings`] lists what else it
//! may mean, and the [`judge`] takes the reading that the sums of the neighbours bear out.
//! [`legend`] and [`pieces`] tell what the other lines are.
//!
//! What cannot be read is kept as text and listed; the rest is read all the same. Every
//! token is looked at a bounded number of times, so that time is linear in the text.

mod again;
mod bare;
mod choose;
mod count;
mod count_words;
mod doing;
mod draft;
mod enumerated;
mod fits;
mod gist;
mod glossary;
mod groups;
mod heading;
mod heading_bare;
mod heading_range;
mod input;
mod judge;
mod layers;
mod legend;
mod lexemes;
mod lines;
mod markup;
mod meaning;
mod misspelt;
mod of_counts;
mod op_list;
mod paragraph;
mod pieces;
mod place;
mod points;
mod reader;
mod readings;
mod rewordings;
mod ring;
mod roman;
mod round;
mod round_words;
mod sayings;
mod settle;
mod stitch;
mod terms;
#[cfg(test)]
mod tests;
mod token;
mod tokens;
mod understanding;
mod words;

use std::collections::BTreeMap;

use self::pieces::name_pieces;
use self::reader::Reader;
use self::token::{Say, Tok, Token};
use self::words::{Glossary, Vocabulary};
use super::tree::{Decrease, Pattern, Span, StitchKind};

pub use self::sayings::Saying;
pub use self::terms::{TermsFound, TermsWish};
pub use self::understanding::{Inferred, Learnt, Sure, Understanding};

/// A text, read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// What it says.
    pub pattern: Pattern,
    /// Code of the lexicon that it was read in.
    pub lexicon: &'static str,
    /// How that lexicon is known.
    pub terms: TermsFound,
    /// Places that were kept as text because they could not be read, in order.
    pub unread: Vec<Span>,
    /// How each line of rounds was understood, by its place in the pattern's lines.
    pub understood: BTreeMap<usize, Understanding>,
    /// Words that no list explains, and what the sums say they mean.
    pub learnt: Vec<(String, Learnt)>,
    /// Words of it that look mistyped, and the word that each was read as.
    pub misspelt: Vec<(Span, String)>,
    /// What a person said that words of it mean.
    pub said: Vec<Saying>,
    /// Headings that say “row” and were read as rounds, because the text works in rounds.
    pub rows_as_rounds: Vec<Span>,
}

impl Reading {
    /// How the round at `at` was understood, if it is work of one.
    fn round_at(&self, at: &Span) -> Option<&Understanding> {
        let index = self.pattern.lines.partition_point(|l| l.at.end <= at.start);
        self.understood.get(&index).filter(|u| u.work.start <= at.start && at.end <= u.work.end)
    }

    /// Those of `slips` that stand in rounds with words not understood.
    fn misread(&self, slips: &[misspelt::Meant]) -> Vec<misspelt::Meant> {
        let within = |at: &Span| self.round_at(at).is_some() && !self.is_clear(at);
        slips.iter().filter(|(at, _)| within(at)).cloned().collect()
    }

    /// Whether the round at `at` was read to the last word.
    fn is_clear(&self, at: &Span) -> bool {
        let lost = [Inferred::Remark, Inferred::Sums, Inferred::Counts];
        self.round_at(at).is_some_and(|u| {
            u.sure != Sure::Unread && !lost.iter().any(|i| u.inferred.contains(i))
        })
    }
}

/// Reads `text`, whatever it holds; what is no pattern comes out as notes. Places are bytes
/// of `text`. Time and memory are linear in its length.
///
/// ```
/// use plumpline_core::words::Line;
/// use plumpline_core::words::read::{TermsWish, read};
/// use plumpline_core::words::tally::tally;
///
/// let reading = read("Rnd 7: (sc 4, inc) x 6 (36)", TermsWish::Infer);
/// let Line::Rounds(round) = &reading.pattern.lines[0].it else { panic!("it is a round") };
/// assert_eq!(round.first, 7);
/// let sum = tally(&round.work, Some(30)).expect("it adds up");
/// assert_eq!((sum.taken, sum.left), (30, 36));
/// ```
pub fn read(text: &str, wish: TermsWish<'_>) -> Reading {
    read_with(text, wish, &[])
}

/// As [`read`], with what a person says that words of the text mean.
pub fn read_with(text: &str, wish: TermsWish<'_>, sayings: &[Saying]) -> Reading {
    let lexemes = sayings::with_sayings(lexemes::lexemes(text), sayings);
    let lexemes = markup::without_markup(lexemes);
    let (lexicon, terms) = terms::find(&lexemes, wish);
    let words = Vocabulary::of(lexicon);
    let lexemes = markup::rejoined(lexemes, words);
    let lexemes = roman::with_numbers(text, lexemes, words);
    let slips = misspelt::slips(&lexemes, words);
    let mut reading = read_lexemes(text, &lexemes, words);
    // A word that looks mistyped and was not understood is read as the one meant, where the
    // round is understood so to the last word.
    let doubted = reading.misread(&slips);
    if !doubted.is_empty() {
        let meant = read_lexemes(text, &misspelt::mended(&lexemes, &doubted), words);
        let clear: Vec<_> = doubted.into_iter().filter(|(at, _)| meant.is_clear(at)).collect();
        if !clear.is_empty() {
            reading = read_lexemes(text, &misspelt::mended(&lexemes, &clear), words);
            reading.misspelt = clear;
        }
    }
    Reading { lexicon, terms, said: sayings.to_vec(), ..reading }
}

/// Reads the lexemes of `text` with the words of one lexicon.
fn read_lexemes(text: &str, lexemes: &[lexemes::Lexeme<'_>], words: &Vocabulary) -> Reading {
    let as_tokens = |own: &Glossary| enumerated::parted(tokens::tokens(lexemes, words, own));
    let mut tokens = as_tokens(&Glossary::default());
    let mut own = glossary::glossary(&lines::lines(&tokens, text), lexemes);
    glossary::letter_codes(text, lexemes, &mut own);
    if !own.is_empty() {
        tokens = as_tokens(&own);
    }
    if round_words::learn(text, &tokens, lexemes, &mut own) {
        tokens = as_tokens(&own);
    }
    if count_words::learn(&tokens, lexemes, &mut own) {
        tokens = as_tokens(&own);
    }
    let mut pass = Pass::of(text, &tokens, words);
    let mut learnt = Vec::new();
    // A word that no list explains means what makes the sums come out, if it does so in
    // several rounds.
    for word in unknown_words(&pass, lexemes, &tokens) {
        let unread = pass.lost_rounds();
        let tried = [
            Tok::Increase(StitchKind::Single),
            Tok::Decrease(StitchKind::Single, Decrease::Plain),
            Tok::Say(Say::Together),
            Tok::Kind(StitchKind::Single),
        ]
        .into_iter()
        .map(|tok| {
            let mut more = own.clone();
            more.add([word.as_str()], tok);
            let pass = Pass::of(text, &as_tokens(&more), words);
            (pass.lost_rounds(), tok, more, pass)
        })
        .min_by_key(|tried| tried.0);
        if let Some((left, tok, more, better)) = tried
            && left + 2 <= unread
        {
            (own, pass) = (more, better);
            learnt.push((word, Learnt::of(tok)));
        }
    }
    let Pass { judged, rows_as_rounds } = pass;
    Reading {
        pattern: Pattern { lines: judged.lines },
        lexicon: terms::US,
        terms: TermsFound::Wished,
        unread: judged.unread,
        understood: judged.understood,
        learnt,
        misspelt: Vec::new(),
        said: Vec::new(),
        rows_as_rounds,
    }
}

/// “6 sc in 2nd ch”: so many stitches in one chain begin a round, not a row.
fn into_one_chain(tokens: &[Token]) -> bool {
    let nth =
        |pair: &[Token]| matches!((pair[0].tok, pair[1].tok), (Tok::Ordinal(_), Tok::Chain));
    // “in die 2. Lm”
    let pointed = |three: &[Token]| {
        matches!(
            (three[0].tok, three[1].tok, three[2].tok),
            (Tok::Number(_), Tok::Stop, Tok::Chain)
        )
    };
    matches!((tokens[0].tok, tokens[1].tok), (Tok::Number(4..), Tok::Kind(_)))
        && (tokens[2..].windows(2).any(nth) || tokens[2..].windows(3).any(pointed))
}

/// Unknown words that are tried, at most.
const MOST_TRIED: usize = 3;
/// Longer texts are taken as they stand.
const MOST_LEXEMES: usize = 12_000;

/// A text, read once with what its words are taken to mean.
struct Pass {
    judged: judge::Judged,
    rows_as_rounds: Vec<Span>,
}

impl Pass {
    fn of(text: &str, tokens: &[Token], words: &Vocabulary) -> Self {
        let any = |want: &dyn Fn(Tok) -> bool| tokens.iter().any(|t| want(t.tok));
        // What is shaped and never turned goes round.
        let shaped = any(&|t| {
            matches!(
                t,
                Tok::Increase(_) | Tok::Decrease(..) | Tok::Say(Say::Together | Say::Doubled)
            )
        });
        let in_rounds = any(&|t| matches!(t, Tok::Ring | Tok::Round))
            || tokens.windows(6).any(into_one_chain)
            || shaped && !any(&|t| t == Tok::Turn);
        let ordinal_point = words.ordinal_point;
        let mut reader = Reader { text, in_rounds, ordinal_point, ..Reader::default() };
        let mut lines = lines::lines(tokens, text);
        lines::unhead_strays(&mut lines);
        let numbered = lines.iter().filter(|l| l.heading.is_some_and(|h| h.numbered)).count();
        reader.prose = numbered < 2;
        for line in lines {
            reader.line(&line);
        }
        reader.drop_stray_headings();
        reader.stretch_headings();
        reader.quiet_lists();
        name_pieces(&mut reader.entries);
        let judged = judge::judge(&mut reader.entries, text);
        Self { judged, rows_as_rounds: reader.rows_as_rounds }
    }

    /// Rounds that were not read, or whose sums do not come out as they were.
    fn lost_rounds(&self) -> usize {
        let not_understood = |u: &&Understanding| {
            u.sure == Sure::Unread || u.inferred.contains(&Inferred::Counts)
        };
        self.judged.understood.values().filter(not_understood).count() + self.judged.disputed
    }
}

/// Short words without a meaning that stand in two unread rounds or more, commonest first.
fn unknown_words(
    pass: &Pass,
    lexemes: &[lexemes::Lexeme<'_>],
    tokens: &[Token],
) -> Vec<String> {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    if lexemes.len() > MOST_LEXEMES {
        return Vec::new();
    }
    let unread = pass.judged.understood.values().filter(|u| {
        u.sure == Sure::Unread
            || u.inferred.contains(&Inferred::Counts)
            || u.inferred.contains(&Inferred::Sums)
    });
    for understood in unread {
        let at = &understood.work;
        let from = tokens.partition_point(|t| t.at().start < at.start);
        let inside = tokens[from..].iter().take_while(|t| t.at().end <= at.end);
        let mut here: Vec<&str> = Vec::new();
        for token in inside.filter(|t| t.tok == Tok::Unknown) {
            if let Some(lexeme) = lexemes::within(lexemes, &token.at()).first()
                && lexeme.shape == lexemes::LexemeKind::Word
                && lexeme.text.chars().count() <= LONGEST_SHORT
            {
                here.push(lexeme.text.as_ref());
            }
        }
        here.sort_unstable();
        here.dedup();
        for word in here {
            *seen.entry(word).or_default() += 1;
        }
    }
    let mut often: Vec<(&str, usize)> = seen.into_iter().filter(|(_, n)| *n > 1).collect();
    often.sort_by_key(|(_, n)| std::cmp::Reverse(*n));
    often.into_iter().take(MOST_TRIED).map(|(word, _)| word.to_owned()).collect()
}

/// Letters of the longest short form that nobody explains.
const LONGEST_SHORT: usize = 8;
