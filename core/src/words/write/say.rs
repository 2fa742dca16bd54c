//! Sentences around the rounds, by their names in the words of a sheet.

use super::pen::{TextPen, Value};
use super::{Fill, Writer};

impl Writer<'_> {
    /// What is said under `name`, its terms filled in; nothing for a name that is not there.
    pub fn say(&self, name: &str) -> String {
        self.say_of(name, &[])
    }

    /// As [`Self::say`], with what stands for the names in braces.
    pub fn say_of(&self, name: &str, values: &[(&str, Fill<'_>)]) -> String {
        self.filled(self.sheet_words().get(name, self.lexicon()).unwrap_or_default(), values)
    }

    /// As [`Self::say_of`], for one or for several: `name.one`, `name.many`; `{n}` is the
    /// number.
    pub fn say_n(&self, name: &str, n: u32, values: &[(&str, Fill<'_>)]) -> String {
        let form = if n == 1 { "one" } else { "many" };
        let mut all = vec![("n", Fill::Number(n))];
        all.extend_from_slice(values);
        self.say_of(&format!("{name}.{form}"), &all)
    }

    /// Several things in a row: `a, b and c`.
    pub fn listed(&self, things: &[String]) -> String {
        match things.split_last() {
            None => String::new(),
            Some((last, [])) => last.clone(),
            Some((last, others)) => {
                format!("{} {} {last}", others.join(", "), self.say("and"))
            }
        }
    }

    /// A figure as the language writes it, with a comma where it has one for decimals.
    pub fn figure(&self, figure: &str) -> String {
        match self.phrases().decimal_comma {
            true => figure.replace('.', ","),
            false => figure.to_owned(),
        }
    }

    /// A whole sentence about `n` of `kind`, as the phrases have it.
    pub fn sentence(
        &self,
        phrase: &str,
        n: u32,
        kind: crate::words::tree::StitchKind,
    ) -> String {
        let word = Value::Words(self.lexicon().kind(kind).brief(1));
        let first = Value::Words(self.phrases().first_of(kind));
        let mut pen = TextPen::default();
        pen.fill(self, phrase, &[("n", Value::Number(n)), ("kind", word), ("first", first)]);
        // A sentence begins with a capital whatever term it begins with.
        pen.text
    }
}

/// `text` with its first letter as a capital.
pub fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_uppercase().collect::<String>());
    first.unwrap_or_default() + letters.as_str()
}
