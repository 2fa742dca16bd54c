//! The house styles and lexicons, and the traps of the trade's words.

use super::pen::TERMS;
use super::*;
use crate::piece::cloth::Loop;
use crate::words::lexicon::{self, Term};
use crate::words::{Decrease, Line, Pattern, StitchKind, Times};

const SC: StitchKind = StitchKind::Single;

fn ops<const N: usize>(ops: [Op; N]) -> Vec<Placed<Op>> {
    ops.into_iter().map(Placed::unread).collect()
}

fn each(count: u32) -> Op {
    Op::Each { kind: SC, count }
}

fn inc() -> Op {
    Op::Into { kind: SC, many: 2 }
}

fn dec(how: Decrease) -> Op {
    Op::Together { kind: SC, many: 2, how }
}

fn group<const N: usize>(times: Times, body: [Op; N]) -> Op {
    Op::Group { body: ops(body), times }
}

fn writer(style: &str, code: &str) -> Writer<'static> {
    let style = HouseStyle::by_name(style).expect("a built-in style");
    Writer::new(style, lexicon::by_code(code).expect("a built-in lexicon"))
}

fn said<const N: usize>(style: &str, code: &str, work: [Op; N]) -> String {
    let below = Below { count: Some(24), ..Below::default() };
    writer(style, code).text(&ops(work), below)
}

fn pattern(rounds: impl IntoIterator<Item = (u32, Vec<Placed<Op>>, u32)>) -> Pattern {
    let line = |(number, work, count)| {
        let stated = Some(Placed::unread(count));
        Placed::unread(Line::Rounds(Rounds { first: number, last: number, work, stated }))
    };
    Pattern { lines: rounds.into_iter().map(line).collect() }
}

fn terms(lexicon: &Lexicon) -> [&Term; 18] {
    [
        &lexicon.slip,
        &lexicon.single,
        &lexicon.half_double,
        &lexicon.double,
        &lexicon.treble,
        &lexicon.chain,
        &lexicon.increase,
        &lexicon.decrease,
        &lexicon.invisible_decrease,
        &lexicon.ring,
        &lexicon.round,
        &lexicon.stitch,
        &lexicon.front_loop,
        &lexicon.back_loop,
        &lexicon.skip,
        &lexicon.turn,
        &lexicon.join,
        &lexicon.fasten_off,
    ]
}

#[test]
fn every_lexicon_and_style_has_its_own_name() {
    assert!(style::all().len() >= 12);
    for (i, style) in style::all().iter().enumerate() {
        assert!(style::all()[..i].iter().all(|other| other.name != style.name));
        assert!(style.brackets.iter().all(|pair| pair.chars().count() == 2), "{}", style.name);
    }
    let codes: Vec<&str> = lexicon::all().iter().map(|l| l.code.as_str()).collect();
    assert_eq!(codes, ["en-us", "en-uk", "de", "fr", "es", "es-419"]);
    assert!(lexicon::by_code("nl").is_none());
}

/// Styles differ: no two write one round, its heading and its count alike.
#[test]
fn no_two_styles_write_alike() {
    let nested = group(Times::In(2), [group(Times::In(3), [each(2), inc()]), each(4), each(1)]);
    let shaping = group(Times::In(6), [dec(Decrease::Plain)]);
    let rounds = [
        (1, ops([nested]), 30),
        (2, ops([group(Times::In(6), [each(1), inc()])]), 36),
        (3, ops([shaping]), 30),
        (4, ops([group(Times::Around, [each(1)])]), 30),
        (5, ops([group(Times::Around, [each(1)])]), 30),
    ];
    let texts: std::collections::BTreeSet<String> = style::all()
        .iter()
        .map(|style| write(&pattern(rounds.clone()), style, &lexicon::all()[0]))
        .collect();
    assert_eq!(texts.len(), style::all().len());
}

#[test]
fn houses_write_a_repeat_each_in_its_way() {
    let repeat = || [group(Times::In(6), [each(2), inc()])];
    for (style, text) in [
        ("bench", "(sc 2, inc) × 6"),
        ("brackets", "[sc 2, inc] 6 times"),
        ("stars", "*2 sc, inc; rep from * 5 more times"),
        ("plain-words", "*Sc in next 2 sts, 2 sc in next st; rep from * 5 more times"),
        ("compact", "(2 sc, inc) x6"),
        ("curly", "{sc 2, inc} * 6"),
    ] {
        assert_eq!(said(style, "en-us", repeat()), text, "{style}");
    }
    let nested = || [group(Times::In(2), [group(Times::In(3), [each(2), inc()]), each(4)])];
    assert_eq!(said("bench", "en-us", nested()), "[(sc 2, inc) × 3, sc 4] × 2");
    assert_eq!(said("brackets", "en-us", nested()), "[{sc 2, inc} 3 times, sc 4] 2 times");
    assert_eq!(
        said("stars", "en-us", nested()),
        "*(2 sc, inc) x 3, 4 sc; rep from * 1 more time"
    );
}

#[test]
fn plain_rounds_runs_and_beginnings() {
    let even = || [group(Times::Around, [each(1)])];
    assert_eq!(said("bench", "en-us", even()), "sc in each st");
    assert_eq!(said("compact", "en-us", even()), "sc around");
    assert_eq!(said("counted", "en-us", even()), "24 sc");
    let run = || [group(Times::In(6), [inc()])];
    assert_eq!(said("bench", "en-us", run()), "inc × 6");
    assert_eq!(said("numbers", "en-us", run()), "6 inc");
    assert_eq!(said("teaching", "en-us", run()), "2 sc in each of next 6 sts");
    let ring = Op::Ring { kind: SC, count: 6 };
    assert_eq!(said("bench", "en-us", [ring]), "6 sc in magic ring");
    let nth = |nth| Op::IntoChain { kind: SC, count: 3, nth };
    let oval = || [nth(2), each(5), nth(0), Op::OtherSide, each(5)];
    assert_eq!(
        said("bench", "en-us", oval()),
        "3 sc in 2nd ch from hook, sc 5, 3 sc in last ch, then along the other side of the \
         chain sc 5"
    );
}

#[test]
fn one_loop_is_said_of_the_line_or_of_the_item() {
    let only = |body| Op::Only { only: Loop::Back, body };
    let even = ops([group(Times::Around, [each(1)])]);
    assert_eq!(said("bench", "en-us", [only(even)]), "BLO: sc in each st");
    assert_eq!(said("bench", "en-us", [only(ops([each(3)])), inc()]), "BLO sc 3, inc");
    assert_eq!(
        said("bench", "en-us", [only(ops([each(3), inc()])), each(2)]),
        "BLO (sc 3, inc), sc 2"
    );
}

#[test]
fn a_bare_increase_is_written_only_where_its_kind_is_understood() {
    let hdc = StitchKind::HalfDouble;
    let increases =
        [Op::Group { body: ops([Op::Into { kind: hdc, many: 2 }]), times: Times::In(6) }];
    let text = |below| writer("bench", "en-us").text(&ops(increases.clone()), below);
    assert_eq!(text(Below::default()), "2 hdc in each of next 6 sts");
    assert_eq!(text(Below { kind: Some(hdc), count: None }), "inc × 6");
    let mixed = [each(2), Op::Into { kind: hdc, many: 2 }, inc()];
    assert_eq!(said("bench", "en-us", mixed), "sc 2, 2 hdc in next st, 2 sc in next st");
}

/// Repeats counted on from the first working say one less; all others say the total.
#[test]
fn a_repeat_from_an_asterisk_counts_on() {
    let repeat = || [group(Times::In(6), [each(2), inc()])];
    assert!(said("stars", "en-us", repeat()).ends_with("5 more times"));
    assert!(said("stars", "de", repeat()).ends_with("noch 5 x wiederholen"));
    assert!(said("stars", "fr", repeat()).ends_with("5 fois de plus"));
    assert!(said("stars", "es", repeat()).ends_with("* 6 veces"));
    assert!(said("bench", "fr", repeat()).ends_with(" × 6"));
    let two = [group(Times::In(2), [each(2), inc()]), group(Times::In(3), [each(1), inc()])];
    assert!(!said("stars", "en-us", two).contains('*'), "two asterisks would be in doubt");
}

/// Terms that were only remembered, not seen in any text: none may be printed.
#[test]
fn no_term_from_memory_is_printed() {
    let from_memory: [(&str, &[&str]); 6] = [
        ("en-us", &["inv dec", "invdec", "leave an opening"]),
        ("en-uk", &["inv dec", "invdec"]),
        ("de", &["zun", "unsichtbare Abnahme", "wdh", "R", "überspringen", "Öffnung lassen"]),
        ("fr", &["dim inv", "CM", "AM", "T"]),
        (
            "es",
            &[
                "mp",
                "mpa",
                "dis",
                "dim",
                "R",
                "p",
                "hebra delantera",
                "hebra trasera",
                "FLO",
                "BLO",
                "dejar una abertura",
            ],
        ),
        ("es-419", &["mp", "mpa", "mv", "v", "dis", "dim", "R", "p", "FLO", "BLO"]),
    ];
    for (code, banned) in from_memory {
        let lexicon = lexicon::by_code(code).expect("a built-in lexicon");
        for term in terms(lexicon) {
            for form in [term.short.as_deref(), Some(&term.one), Some(&term.many)] {
                let printed = form.unwrap_or_default();
                assert!(!banned.contains(&printed), "{code}: {printed}");
            }
        }
        if !lexicon.checked {
            assert_eq!(Phrases::of(lexicon).letter, None, "a letter for rounds is from memory");
        }
    }
}

/// An abbreviation seen in one text only gives way to the words.
#[test]
fn abbreviations_seen_once_are_read_but_not_printed() {
    for (code, once) in [
        ("de", ["hSt", "Ktm", "verd", "Abn", "MR"]),
        ("fr", ["dbr", "demi-b", "R", "RNG", "st"]),
        ("es", ["pr", "pe", "pd", "pad", "V"]),
    ] {
        let lexicon = lexicon::by_code(code).expect("a built-in lexicon");
        for term in terms(lexicon) {
            assert!(
                term.short.as_deref().is_none_or(|s| !once.contains(&s)),
                "{code}: {term:?}"
            );
        }
    }
}

/// One printed form has one meaning in its lexicon.
#[test]
fn no_two_terms_of_a_lexicon_are_printed_alike() {
    for lexicon in lexicon::all() {
        let forms: Vec<Vec<&str>> = terms(lexicon)
            .iter()
            .map(|t| t.short.as_deref().into_iter().chain([t.one.as_str(), &t.many]).collect())
            .collect();
        for (i, one) in forms.iter().enumerate() {
            for other in &forms[..i] {
                assert!(one.iter().all(|f| !other.contains(f)), "{}: {one:?}", lexicon.code);
            }
        }
    }
}

/// Words that mean one thing to some readers and another to others are not printed.
#[test]
fn words_with_two_meanings_are_not_printed() {
    let rounds = [
        (1, ops([Op::Ring { kind: SC, count: 6 }]), 6),
        (2, ops([group(Times::Around, [inc()])]), 12),
        (3, ops([group(Times::In(6), [each(1), inc()]), Op::Join]), 18),
        (4, ops([Op::Each { kind: StitchKind::Slip, count: 3 }, each(13), Op::Skip(2)]), 16),
        (5, ops([group(Times::In(8), [dec(Decrease::Plain)])]), 8),
        (6, ops([Op::Each { kind: StitchKind::Treble, count: 8 }]), 8),
    ];
    let pattern = pattern(rounds);
    for (code, banned) in [
        // Tokens of US terms, in a text in UK terms.
        ("en-uk", &["sc", "hdc", "skip", "sk", "gauge", "sc2tog"][..]),
        // St is a kind of stitch to some; Kettenmasche is an old chain.
        ("de", &["St", "st", "Kettenmasche", "MR"]),
        // MC is a magic circle elsewhere; rang is a row as well.
        ("fr", &["MC", "rang", "rangs", "dbr", "ch"]),
        // medio punto is one kind in one country, another in the next.
        ("es", &["medio", "media", "dim", "pr"]),
    ] {
        let lexicon = lexicon::by_code(code).expect("a built-in lexicon");
        for style in style::all() {
            let text = write(&pattern, style, lexicon);
            for word in text.split(|c: char| !c.is_alphanumeric()) {
                assert!(!banned.contains(&word), "{}, {code}: {word} in\n{text}", style.name);
            }
        }
    }
}

#[test]
fn an_invisible_decrease_is_explained_once_and_only_where_used() {
    let with = |how| {
        pattern([
            (1, ops([group(Times::In(6), [each(2), dec(how)])]), 18),
            (2, ops([group(Times::In(6), [each(1), dec(how)])]), 12),
        ])
    };
    for lexicon in lexicon::all() {
        let meaning = &Phrases::of(lexicon).invisible_means;
        for style in style::all() {
            let text = write(&with(Decrease::Invisible), style, lexicon);
            assert_eq!(text.matches(meaning.as_str()).count(), 1, "{text}");
            let plain = write(&with(Decrease::Plain), style, lexicon);
            assert!(!plain.contains(meaning.as_str()), "{plain}");
        }
    }
}

#[test]
fn a_german_number_comes_before_its_word() {
    assert_eq!(writer("bench", "de").heading(3, 3), "3. Rd:");
    assert_eq!(writer("small", "de").heading(3, 5), "3.–5. Rd:");
    assert_eq!(writer("numbers", "de").heading(3, 3), "3.");
    assert_eq!(writer("compact", "de").heading(3, 3), "3. Rd:");
    assert_eq!(writer("compact", "en-us").heading(3, 5), "R3-5:");
    assert_eq!(writer("bench", "en-us").heading(3, 5), "Rnds 3–5:");
    assert_eq!(writer("small", "en-us").heading(3, 3), "rnd 3:");
    assert_eq!(writer("ledger", "fr").heading(3, 3), "Tour 3.");
    assert_eq!(writer("roomy", "es").heading(2, 4), "Vueltas 2–4:");
}

/// No phrase or style asks for a word that nothing fills in.
#[test]
fn every_name_in_braces_is_known() {
    let values = [
        "n", "many", "kind", "nth", "first", "last", "dash", "round", "loop", "colour", "total",
    ];
    let files = [
        include_str!("../../../../assets/words/phrases/en.ron"),
        include_str!("../../../../assets/words/phrases/de.ron"),
        include_str!("../../../../assets/words/phrases/fr.ron"),
        include_str!("../../../../assets/words/phrases/es.ron"),
        include_str!("../../../../assets/words/phrases/es-419.ron"),
    ];
    let body = "body";
    for file in files {
        for part in file.split('{').skip(1) {
            let name = part.split('}').next().unwrap_or_default();
            assert!(values.contains(&name) || TERMS.contains(&name) || name == body, "{name}");
        }
    }
    for style in style::all() {
        for part in style.count.split('{').chain(style.times.split('{')) {
            if let Some((name, _)) = part.split_once('}') {
                assert!(name == "n" || TERMS.contains(&name), "{}: {name}", style.name);
            }
        }
    }
}

#[test]
fn a_whole_text() {
    let lines = [
        Line::Piece("Lantern".into()),
        Line::Rounds(Rounds {
            first: 1,
            last: 1,
            work: ops([Op::Ring { kind: SC, count: 6 }]),
            stated: Some(Placed::unread(6)),
        }),
        Line::Rounds(Rounds {
            first: 2,
            last: 2,
            work: ops([group(Times::In(6), [inc()])]),
            stated: Some(Placed::unread(12)),
        }),
        Line::Rounds(Rounds {
            first: 3,
            last: 4,
            work: ops([group(Times::Around, [each(1)])]),
            stated: Some(Placed::unread(12)),
        }),
        Line::Do(ops([Op::Stuff])),
        Line::Note { text: "Wish it a sc of luck.".into(), unread: false },
        Line::Do(ops([Op::FastenOff])),
    ];
    let pattern = Pattern { lines: lines.into_iter().map(Placed::unread).collect() };
    let text = write(&pattern, HouseStyle::bench(), &lexicon::all()[0]);
    assert_eq!(
        text,
        "English (US terms)\n\nAbbreviations\nRnd = round\nRnds = rounds\nst = stitch\n\
         sc = single crochet\ninc = increase: 2 stitches worked in the next stitch\n\n\
         Lantern\nRnd 1: 6 sc in magic ring [6]\nRnd 2: inc × 6 [12]\n\
         Rnds 3–4: sc in each st [12]\nStuff.\nWish it a sc of luck.\nFasten off.\n\n\
         42 stitches in all.\n"
    );
}

#[test]
fn sizes_share_their_lines_where_the_words_agree() {
    let size = |n: u32| {
        let plain = ops([group(Times::Around, [each(1)])]);
        let mut rounds = vec![
            (1, ops([Op::Ring { kind: SC, count: 6 }]), 6),
            (2, ops([group(Times::In(6), [inc()])]), 12),
        ];
        rounds.extend(
            (3..3 + n).map(|k| (k, ops([group(Times::In(6), [each(k - 1), inc()])]), 6 * k)),
        );
        rounds.extend((0..n).map(|k| (3 + n + k, plain.clone(), 6 * (2 + n))));
        rounds.push((3 + 2 * n, ops([group(Times::In(6), [dec(Decrease::Plain)])]), 6));
        pattern(rounds)
    };
    let text = write_sizes(&[size(2), size(3)], HouseStyle::bench(), &lexicon::all()[0]);
    let body = text.split_once("Rnd 1").map_or("", |(_, body)| body);
    assert_eq!(
        format!("Rnd 1{body}"),
        "Rnd 1: 6 sc in magic ring [6]\nRnd 2: inc × 6 [12]\nRnd 3: (sc 2, inc) × 6 [18]\n\
         Rnd 4: (sc 3, inc) × 6 [24]\nSize 2: Rnd 5: (sc 4, inc) × 6 [30]\n\
         Rnds 5–6 (6–8): sc in each st [24 (30)]\nRnd 7 (9): dec × 6 [6]\n\n\
         138 (222) stitches in all.\n"
    );
}
