//! Text put together from the pieces of a document.

/// Text put together piece by piece: blanks run together, lines are trimmed, and no more than
/// one blank line stands between two others.
#[derive(Debug, Default)]
pub(super) struct Lines {
    text: String,
    /// Line ends that wait for more text.
    ends: usize,
    blank: bool,
}

impl Lines {
    /// Takes `words` on, their line ends as blanks.
    pub(super) fn words(&mut self, words: &str) {
        for c in words.chars() {
            self.put(if c.is_whitespace() && c != '\u{a0}' { ' ' } else { c });
        }
    }

    fn put(&mut self, c: char) {
        if c == ' ' || c == '\u{a0}' {
            self.blank = true;
            return;
        }
        if self.ends > 0 && !self.text.is_empty() {
            for _ in 0..self.ends.min(2) {
                self.text.push('\n');
            }
        } else if self.blank && !self.text.is_empty() {
            self.text.push(' ');
        }
        (self.ends, self.blank) = (0, false);
        self.text.push(c);
    }

    /// Ends the line.
    pub(super) fn end(&mut self) {
        self.ends += 1;
        self.blank = false;
    }

    /// Ends the line, if anything stands in it.
    pub(super) fn fresh(&mut self) {
        if self.ends == 0 {
            self.end();
        }
    }

    /// A gap within a line, as between the cells of a table.
    pub(super) fn gap(&mut self) {
        self.blank = true;
    }

    pub(super) fn done(mut self) -> String {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        self.text
    }
}
