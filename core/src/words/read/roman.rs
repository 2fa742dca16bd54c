//! Roman numbers of rounds: “III. Runde:”, “Tour IV”, “VIII. bis XII. Runde”.

use std::borrow::Cow;

use super::lexemes::{Lexeme, LexemeKind};
use super::token::{Say, Tok};
use super::words::Vocabulary;

/// Letters of the longest numeral that is looked for: XXXVIII.
const LONGEST: usize = 7;
/// Rounds that have to count on before letters are taken for numerals.
const FEWEST: usize = 3;

/// The value of a numeral below 90 as it is written; none for other letters.
fn value(word: &str) -> Option<u32> {
    if word.is_empty() || word.len() > LONGEST {
        return None;
    }
    let digit = |c: char| match c {
        'I' => Some(1),
        'V' => Some(5),
        'X' => Some(10),
        'L' => Some(50),
        _ => None,
    };
    let digits: Vec<u32> = word.chars().map(digit).collect::<Option<_>>()?;
    let mut sum = 0;
    for (i, &one) in digits.iter().enumerate() {
        match digits.get(i + 1) {
            Some(&next) if next > one => sum -= i64::from(one),
            _ => sum += i64::from(one),
        }
    }
    let sum = u32::try_from(sum).ok()?;
    (written(sum) == word).then_some(sum)
}

fn written(mut n: u32) -> String {
    let mut text = String::new();
    for (value, sign) in
        [(50, "L"), (40, "XL"), (10, "X"), (9, "IX"), (5, "V"), (4, "IV"), (1, "I")]
    {
        while n >= value {
            text.push_str(sign);
            n -= value;
        }
    }
    text
}

/// `lexemes` with the numerals of rounds as numbers, where they count on from one.
pub(super) fn with_numbers<'t>(
    text: &str,
    lexemes: Vec<Lexeme<'t>>,
    words: &Vocabulary,
) -> Vec<Lexeme<'t>> {
    let numeral = |i: usize| {
        let lexeme = lexemes.get(i).filter(|l| l.shape == LexemeKind::Word)?;
        value(text.get(lexeme.at.clone())?)
    };
    let means = |i: usize| {
        let lexeme = lexemes.get(i..=i)?;
        words.longest(lexeme).map(|(tok, _)| tok)
    };
    let round = |i: usize| matches!(means(i), Some(Tok::Round | Tok::Say(Say::Row)));
    let sign = |i: usize| match lexemes.get(i).map(|l| l.shape) {
        Some(LexemeKind::Sign(sign)) => Some(sign),
        _ => None,
    };
    let point = |i: usize| usize::from(sign(i) == Some('.'));
    let reaches = |i: usize| {
        sign(i) == Some('-') || matches!(means(i), Some(Tok::Say(Say::To | Say::The)))
    };
    let begins = |i: usize| {
        let before = lexemes[..i]
            .iter()
            .rev()
            .find(|l| !matches!(l.shape, LexemeKind::Sign('•' | '-' | '*' | '(' | '[')));
        before.is_none_or(|l| l.shape == LexemeKind::Newline)
    };
    // Whether the numeral at `i` stands where the number of a round does.
    let heads = |i: usize| {
        let behind = i.checked_sub(1).is_some_and(|b| {
            round(b) || sign(b) == Some('.') && b.checked_sub(1).is_some_and(round)
        });
        let next = i + 1 + point(i + 1);
        let before = round(next);
        // “VIII. bis XII. Runde”
        let ranged =
            reaches(next) && numeral(next + 1).is_some() && round(next + 2 + point(next + 2));
        let listed = begins(i) && matches!(sign(i + 1), Some('.' | ')' | ':' | '-'));
        behind || before || ranged || listed
    };
    let found: Vec<usize> =
        (0..lexemes.len()).filter(|&i| numeral(i).is_some() && heads(i)).collect();
    let values: Vec<u32> = found.iter().filter_map(|&i| numeral(i)).collect();
    let counts = values.windows(FEWEST).any(|run| run == [1, 2, 3]);
    if !counts {
        return lexemes;
    }
    // “wie V.”, “Tours VI à IX”
    let named = |i: usize| {
        let of = |b: usize| {
            reaches(b) || matches!(means(b), Some(Tok::Say(Say::As | Say::Repeat | Say::From)))
        };
        numeral(i).is_some() && i.checked_sub(1).is_some_and(of)
    };
    let all: Vec<bool> =
        (0..lexemes.len()).map(|i| found.binary_search(&i).is_ok() || named(i)).collect();
    let numbers: Vec<Option<u32>> =
        all.into_iter().enumerate().map(|(i, is)| numeral(i).filter(|_| is)).collect();
    lexemes
        .into_iter()
        .zip(numbers)
        .map(|(lexeme, number)| match number {
            Some(n) => {
                Lexeme { shape: LexemeKind::Number, text: Cow::Owned(n.to_string()), ..lexeme }
            }
            None => lexeme,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::value;

    #[test]
    fn numerals_have_their_value_and_other_words_none() {
        let cases = [("I", 1), ("IV", 4), ("VIII", 8), ("XIV", 14), ("XXIX", 29), ("XL", 40)];
        for (word, n) in cases {
            assert_eq!(value(word), Some(n), "{word}");
        }
        for word in ["", "IIII", "VX", "IC", "Lm", "XA"] {
            assert_eq!(value(word), None, "{word}");
        }
    }
}
