//! Any pattern, written in every house style and every lexicon.

use std::collections::BTreeSet;

use plumpline_core::pattern::write::{Below, Writer, style, write, write_sizes};
use plumpline_core::pattern::{Lexicon, Line, Op, Pattern, Placed, Rounds, Times, lexicon};
use plumpline_tests::any_pattern::patterns;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// The abbreviations that a text lists at its head, and what follows the list.
fn listed<'t>(text: &'t str, lexicon: &Lexicon) -> (BTreeSet<&'t str>, &'t str) {
    let title = ["Abbreviations", "Abkürzungen", "Abréviations", "Abreviaturas"];
    let (head, body) = match title.iter().find_map(|t| text.split_once(&format!("\n{t}\n"))) {
        Some((_, after)) => after.split_once("\n\n").unwrap_or((after, "")),
        None => ("", text.split_once("\n\n").map_or("", |(_, body)| body)),
    };
    assert!(text.starts_with(&lexicon.name), "{text}");
    (head.lines().filter_map(|line| line.split(" = ").next()).collect(), body)
}

/// The words of a text, at whatever is neither a letter nor a digit.
fn words(text: &str) -> BTreeSet<String> {
    let parts = text.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty());
    parts.map(str::to_lowercase).collect()
}

/// Every short form of one word that the lexicon knows to print.
fn short_words(lexicon: &Lexicon) -> Vec<String> {
    let terms = [
        &lexicon.slip,
        &lexicon.single,
        &lexicon.half_double,
        &lexicon.double,
        &lexicon.treble,
        &lexicon.chain,
        &lexicon.increase,
        &lexicon.decrease,
        &lexicon.stitch,
        &lexicon.front_loop,
        &lexicon.back_loop,
        &lexicon.skip,
        &lexicon.round,
    ];
    let short = terms.iter().filter_map(|term| term.short.clone());
    short.filter(|short| !short.contains(' ')).collect()
}

/// The list at the head holds what the text uses, no more and no less.
fn abbreviations_are_those_used(text: &str, lexicon: &Lexicon) -> Result<(), String> {
    let (list, body) = listed(text, lexicon);
    let lower = body.to_lowercase();
    let said = words(body);
    for short in &list {
        let one_word = short.chars().all(char::is_alphanumeric);
        let low = short.to_lowercase();
        // The letter of a round stands before its number without a space.
        let letter = *short == "R" && said.iter().any(|w| w.starts_with('r'));
        if !letter && !(if one_word { said.contains(&low) } else { lower.contains(&low) }) {
            return Err(format!("“{short}” is listed and not used in\n{text}"));
        }
    }
    // “sl st” is one abbreviation, not two.
    let alone = body.replace("sl st", "").replace("Sl st", "");
    let said = words(&alone);
    for short in short_words(lexicon) {
        if said.contains(&short.to_lowercase()) && !list.contains(short.as_str()) {
            return Err(format!("“{short}” is used and not listed in\n{text}"));
        }
    }
    for word in said.iter().filter(|w| w.ends_with("tog")) {
        if !list.contains(word.as_str()) {
            return Err(format!("“{word}” is used and not listed in\n{text}"));
        }
    }
    Ok(())
}

/// Counts that stand in the text where the house puts them, round by round.
fn stated(pattern: &Pattern) -> Vec<u32> {
    let of = |line: &Placed<Line>| match &line.it {
        Line::Rounds(rounds) => rounds.stated.as_ref().map(|n| n.it),
        _ => None,
    };
    pattern.lines.iter().filter_map(of).collect()
}

/// `pattern` with every plain number scaled, as another size of it would have.
fn another_size(pattern: &Pattern, more: u32) -> Pattern {
    fn grow(work: &mut [Placed<Op>], more: u32) {
        for op in work {
            match &mut op.it {
                // One stitch, and one time more, are worded differently from several.
                Op::Each { count, .. } if *count > 1 => *count += more,
                Op::Group { body, times } => {
                    if let Times::In(n @ 3..) = times {
                        *n += more;
                    }
                    if *times != Times::Around {
                        grow(body, more);
                    }
                }
                Op::Only { body, .. } => grow(body, more),
                _ => {}
            }
        }
    }
    let mut pattern = pattern.clone();
    for line in &mut pattern.lines {
        if let Line::Rounds(rounds) = &mut line.it {
            grow(&mut rounds.work, more);
            if let Some(stated) = &mut rounds.stated {
                stated.it += more;
            }
        }
    }
    pattern
}

/// Takes the numbers of size `k` out of a text: “24 (30, 36)” is 24, 30 or 36.
fn project(text: &str, k: usize, sizes: usize) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(open) = rest.find(" (") {
        let (before, after) = rest.split_at(open);
        let close = after.find(')');
        let inner = close.map(|close| &after[2..close]);
        // A number, or a range of rounds.
        let number = |c: char| c.is_ascii_digit() || "–-".contains(c);
        let of_numbers = |part: &&str| !part.is_empty() && part.chars().all(number);
        let numbers: Option<Vec<&str>> = inner
            .and_then(|inner| inner.split(", ").map(|n| Some(n).filter(of_numbers)).collect());
        let led = before.ends_with(|c: char| c.is_ascii_digit());
        match (numbers, close) {
            (Some(numbers), Some(close)) if led && numbers.len() == sizes - 1 => {
                if k == 0 {
                    out.push_str(before);
                } else {
                    out.push_str(before.trim_end_matches(number));
                    out.push_str(numbers[k - 1]);
                }
                rest = &after[close + 1..];
            }
            _ => {
                out.push_str(before);
                out.push_str(" (");
                rest = &after[2..];
            }
        }
    }
    out + rest
}

/// The lines of a text below its head.
fn body_lines(text: &str, lexicon: &Lexicon) -> Vec<String> {
    listed(text, lexicon).1.lines().map(str::to_owned).collect()
}

fn config(seed: u64, cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_seed: RngSeed::Fixed(seed),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(config(0x7772_6974, 96))]

    /// Every style and lexicon writes it, says every count, and lists what it uses.
    #[test]
    fn every_house_writes_every_pattern(pattern in patterns()) {
        for lexicon in lexicon::all() {
            for style in style::all() {
                let text = write(&pattern, style, lexicon);
                let used = abbreviations_are_those_used(&text, lexicon);
                prop_assert!(used.is_ok(), "{}, {}: {:?}", style.name, lexicon.code, used);
                let writer = Writer::new(style, lexicon);
                for count in stated(&pattern) {
                    prop_assert!(text.contains(&writer.count(count)), "{} in\n{}", count, text);
                }
                let unchecked = text.contains(&writer.phrases().unchecked);
                prop_assert_eq!(unchecked, !lexicon.checked);
                let braces = style.brackets.iter().any(|pair| pair == "{}");
                prop_assert!(braces || !text.contains(['{', '}']), "{}", text);
            }
        }
    }

    /// The sizes of one pattern share every line; one size's numbers taken out of the text
    /// are the text of that size.
    #[test]
    fn one_size_taken_out_of_several_is_that_size(pattern in patterns()) {
        let sizes: Vec<Pattern> = (0..3).map(|more| another_size(&pattern, 10 * more)).collect();
        for style in style::all() {
            let lexicon = &lexicon::all()[0];
            let all = body_lines(&write_sizes(&sizes, style, lexicon), lexicon);
            let apart = all.iter().any(|line| line.starts_with("Size "));
            prop_assert!(!apart, "{}:\n{}", style.name, all.join("\n"));
            for (k, size) in sizes.iter().enumerate() {
                let alone = body_lines(&write(size, style, lexicon), lexicon);
                let taken: Vec<String> = all.iter().map(|line| project(line, k, 3)).collect();
                // A total is left out of all where one size cannot be counted.
                let shared = alone.len().min(taken.len());
                prop_assert_eq!(&taken[..shared], &alone[..shared], "{}, size {}", style.name, k);
            }
        }
    }

    /// Lines that differ in more than numbers stand apart, each size with its own, in order.
    #[test]
    fn sizes_that_differ_are_written_apart(one in patterns(), two in patterns()) {
        for style in style::all() {
            let lexicon = &lexicon::all()[0];
            let sizes = [one.clone(), two.clone()];
            let all = body_lines(&write_sizes(&sizes, style, lexicon), lexicon);
            for (k, size) in sizes.iter().enumerate() {
                let own = format!("Size {}: ", k + 1);
                let other = format!("Size {}: ", 2 - k);
                let taken: Vec<String> = all
                    .iter()
                    .filter(|line| !line.starts_with(&other))
                    .map(|line| match line.strip_prefix(&own) {
                        Some(line) => line.to_owned(),
                        None => project(line, k, 2),
                    })
                    .collect();
                let alone = body_lines(&write(size, style, lexicon), lexicon);
                let shared = alone.len().min(taken.len());
                prop_assert_eq!(&taken[..shared], &alone[..shared], "{}, size {}", style.name, k);
            }
        }
    }
}

/// US and UK texts of one pattern: the same but for the names of stitches.
#[test]
fn uk_terms_are_one_step_up() {
    use plumpline_core::pattern::StitchKind::{Double, HalfDouble, Single, Treble};
    let style = style::HouseStyle::bench();
    let said = |code: &str, kind| {
        let lexicon = lexicon::by_code(code).expect("a built-in lexicon");
        let work = [Placed::unread(Op::Each { kind, count: 4 })];
        Writer::new(style, lexicon).text(&work, Below::default())
    };
    for (kind, us, uk) in [
        (Single, "sc 4", "dc 4"),
        (HalfDouble, "hdc 4", "htr 4"),
        (Double, "dc 4", "tr 4"),
        (Treble, "tr 4", "dtr 4"),
    ] {
        assert_eq!((said("en-us", kind).as_str(), said("en-uk", kind).as_str()), (us, uk));
    }
}

/// Numbers that no pattern has, and depths that none needs, are written without trouble.
#[test]
fn any_numbers_are_written() {
    let kind = plumpline_core::pattern::StitchKind::Single;
    let deep = (0..40).fold(vec![Placed::unread(Op::Each { kind, count: 0 })], |body, n| {
        vec![Placed::unread(Op::Group { body, times: Times::In(n % 3) })]
    });
    let odd = [
        Op::Each { kind, count: u32::MAX },
        Op::Into { kind, many: 0 },
        Op::Together { kind, many: 0, how: plumpline_core::pattern::Decrease::Invisible },
        Op::IntoChain { kind, count: 0, nth: u32::MAX },
        Op::Skip(0),
        Op::Group { body: vec![], times: Times::Around },
        Op::Note("  {n} (50% off)\n".into()),
        Op::Colour(String::new()),
    ];
    let work: Vec<_> = deep.into_iter().chain(odd.map(Placed::unread)).collect();
    let rounds = |first, last, work| {
        Placed::unread(Line::Rounds(Rounds { first, last, work, stated: None }))
    };
    let growing = vec![
        Placed::unread(Op::Group {
            body: vec![Placed::unread(Op::Each { kind, count: 1 })],
            times: Times::Around,
        }),
        Placed::unread(Op::Into { kind, many: 2 }),
    ];
    let pattern = Pattern {
        lines: vec![
            rounds(1, u32::MAX, work.clone()),
            rounds(9, 3, work),
            rounds(0, u32::MAX, growing),
            rounds(u32::MAX, u32::MAX, vec![]),
            Placed::unread(Line::Piece("\t".into())),
            Placed::unread(Line::Note { text: String::new(), unread: true }),
        ],
    };
    for lexicon in lexicon::all() {
        for style in style::all() {
            assert!(write(&pattern, style, lexicon).lines().count() < 2000);
        }
    }
    assert_eq!(write_sizes(&[], &style::all()[0], &lexicon::all()[0]), "");
}
