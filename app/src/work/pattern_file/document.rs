//! Words of a word processor's file (Office Open XML, ECMA-376): a ZIP archive with the text
//! in `word/document.xml`.

use std::collections::BTreeMap;

use anyhow::{Context as _, anyhow};
use roxmltree::{Document, Node, ParsingOptions};

use super::archive::Archive;
use super::lines::Lines;

/// Elements in one part.
const MOST_NODES: u32 = 2_000_000;

/// Lists deeper than this are no list.
const DEEPEST: usize = 16;

/// The words of the file, a line a paragraph or row.
///
/// # Errors
/// In one line: it is no such file, is broken, or unpacks to more than a pattern ever does.
pub(super) fn text(bytes: &[u8]) -> anyhow::Result<String> {
    let broken = || anyhow!(say!("file-no-docx"));
    let archive = Archive::new(bytes).with_context(broken)?;
    let main = archive.text("word/document.xml")?.with_context(broken)?;
    let lists = archive.text("word/numbering.xml")?;
    let options = || ParsingOptions { nodes_limit: MOST_NODES, ..ParsingOptions::default() };
    let main = Document::parse_with_options(&main, options()).map_err(|_| broken())?;
    let lists = lists.as_ref().and_then(|l| Document::parse_with_options(l, options()).ok());
    let lists = lists.map_or_else(Numbering::default, |lists| Numbering::of(&lists));
    Ok(words(&main, lists))
}

/// Which levels of which lists are counted.
#[derive(Debug, Default)]
struct Numbering {
    /// By list and level: whether it counts in figures, and where it starts.
    counted: BTreeMap<(String, usize), u32>,
    /// How far each has counted.
    now: BTreeMap<(String, usize), u32>,
}

impl Numbering {
    fn of(document: &Document<'_>) -> Self {
        let mut kinds: BTreeMap<(String, usize), u32> = BTreeMap::new();
        let named = |name: &'static str| {
            document.descendants().filter(move |n| n.tag_name().name() == name)
        };
        for list in named("abstractNum") {
            let id = value(list, "abstractNumId").unwrap_or_default();
            for level in list.children().filter(|n| n.tag_name().name() == "lvl") {
                let inner = |name| child(level, name).and_then(|n| value(n, "val"));
                let depth = value(level, "ilvl").and_then(|n| n.parse().ok()).unwrap_or(0);
                if inner("numFmt") == Some("decimal") && depth < DEEPEST {
                    let start = inner("start").and_then(|n| n.parse().ok()).unwrap_or(1);
                    kinds.insert((id.to_owned(), depth), start);
                }
            }
        }
        let mut made = Self::default();
        for list in named("num") {
            let (Some(id), Some(kind)) = (
                value(list, "numId"),
                child(list, "abstractNumId").and_then(|n| value(n, "val")),
            ) else {
                continue;
            };
            for depth in 0..DEEPEST {
                if let Some(&start) = kinds.get(&(kind.to_owned(), depth)) {
                    made.counted.insert((id.to_owned(), depth), start);
                }
            }
        }
        made
    }

    /// The number of the next item of list `id`, where it is counted.
    fn next(&mut self, id: &str, depth: usize) -> Option<u32> {
        let key = (id.to_owned(), depth);
        let start = *self.counted.get(&key)?;
        // What lies deeper counts anew.
        self.now.retain(|(list, level), _| list != id || *level <= depth);
        let n = self.now.get(&key).map_or(start, |n| n.saturating_add(1));
        self.now.insert(key, n);
        Some(n)
    }
}

/// An attribute by its local name.
fn value<'a>(node: Node<'a, '_>, name: &str) -> Option<&'a str> {
    node.attributes().find(|a| a.name() == name).map(|a| a.value())
}

fn child<'a, 'd>(node: Node<'a, 'd>, name: &str) -> Option<Node<'a, 'd>> {
    node.children().find(|n| n.tag_name().name() == name)
}

fn words(document: &Document<'_>, mut lists: Numbering) -> String {
    let mut lines = Lines::default();
    for node in document.descendants() {
        let name = node.tag_name().name();
        // What was taken out, and what stands there for older programs.
        let dropped = |n: Node<'_, '_>| matches!(n.tag_name().name(), "del" | "Fallback");
        match name {
            "p" => {
                // A paragraph in a cell goes on in its row.
                let in_cell = node.parent().is_some_and(|n| n.tag_name().name() == "tc");
                let first =
                    node.prev_sibling_element().is_none_or(|n| n.tag_name().name() == "tcPr");
                let row = node.parent().and_then(|n| n.prev_sibling_element());
                let first_cell = row.is_none_or(|n| n.tag_name().name() != "tc");
                if in_cell && first && !first_cell {
                    lines.gap();
                } else {
                    lines.end();
                }
                let listed = child(node, "pPr").and_then(|n| child(n, "numPr"));
                let inner =
                    |name| listed.and_then(|n| child(n, name)).and_then(|n| value(n, "val"));
                if let Some(id) = inner("numId").filter(|_| has_words(node)) {
                    let depth = inner("ilvl").and_then(|n| n.parse().ok()).unwrap_or(0);
                    if let Some(n) = lists.next(id, depth) {
                        lines.words(&format!("{n}. "));
                    }
                }
            }
            "t" if !node.ancestors().take(8).any(dropped) => {
                lines.words(node.text().unwrap_or_default());
            }
            "tab" if node.parent().is_some_and(|n| n.tag_name().name() == "r") => lines.gap(),
            "br" | "cr" => lines.end(),
            "noBreakHyphen" => lines.words("-"),
            _ => {}
        }
    }
    lines.done()
}

fn has_words(paragraph: Node<'_, '_>) -> bool {
    paragraph.descendants().any(|n| n.tag_name().name() == "t")
}

#[cfg(test)]
mod tests {
    use super::super::archive::tests::packed;
    use super::*;

    const W: &str = "xmlns:w='http://schemas.openxmlformats.org/wordprocessingml/2006/main'";

    #[test]
    fn paragraphs_rows_and_counted_lists_are_lines() {
        let item = |words: &str| {
            format!(
                "<w:p><w:pPr><w:numPr><w:ilvl w:val='0'/><w:numId w:val='7'/></w:numPr></w:pPr>\
                 <w:r><w:t>{words}</w:t></w:r></w:p>"
            )
        };
        let main = format!(
            "<w:document {W}><w:body><w:p><w:r><w:t>Peb</w:t></w:r><w:r><w:t>ble</w:t></w:r></w:p>\
             {}{}<w:tbl><w:tr><w:tc><w:p><w:r><w:t>Rnd 3</w:t></w:r></w:p></w:tc><w:tc><w:tcPr/>\
             <w:p><w:r><w:t>(sc, inc) x 6</w:t><w:tab/><w:t>(18)</w:t></w:r></w:p></w:tc></w:tr>\
             </w:tbl><w:p><w:del><w:r><w:t>old</w:t></w:r></w:del><w:r><w:t>Stuff</w:t><w:br/>\
             <w:t>it.</w:t></w:r></w:p></w:body></w:document>",
            item("6 sc in ring (6)"),
            item("inc x 6 (12)"),
        );
        let lists = format!(
            "<w:numbering {W}><w:abstractNum w:abstractNumId='1'><w:lvl w:ilvl='0'>\
             <w:start w:val='1'/><w:numFmt w:val='decimal'/></w:lvl></w:abstractNum>\
             <w:num w:numId='7'><w:abstractNumId w:val='1'/></w:num></w:numbering>"
        );
        let file =
            packed(&[("word/document.xml", &main), ("word/numbering.xml", &lists)], true);
        let words = "Pebble\n1. 6 sc in ring (6)\n2. inc x 6 (12)\nRnd 3 (sc, inc) x 6 (18)\n\
                     Stuff\nit.\n";
        assert_eq!(text(&file).expect("it is read"), words);
    }

    #[test]
    fn what_is_broken_is_refused_in_one_line() {
        let whole = packed(&[("word/document.xml", "<w:document/>")], false);
        let (none, cut) = (packed(&[("other.xml", "<a/>")], true), &whole[..whole.len() / 2]);
        let bad = packed(&[("word/document.xml", "<w:document><w:p></w:document>")], true);
        for file in [&none[..], cut, &bad] {
            let refused = text(file).expect_err("it is broken").to_string();
            assert!(!refused.contains('\n'), "{refused}");
        }
    }
}
