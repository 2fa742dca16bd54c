//! Every form that the reader has to read, against a short notation of the tree.

use super::{TermsFound, Wish, read};
use crate::cloth::Loop;
use crate::pattern::tree::{Decrease, Line, Op, Placed, Rounds, StitchKind, Times};

/// The tree in short: `sc3` three plain stitches, `inc` and `dec` the shapings of single
/// crochet, `(…)6` a group, `(…)~` a group worked around, `blo{…}` a loop.
pub(super) fn short(ops: &[Placed<Op>]) -> String {
    let kind = |kind: StitchKind| match kind {
        StitchKind::Slip => "ss",
        StitchKind::Single => "sc",
        StitchKind::HalfDouble => "hdc",
        StitchKind::Double => "dc",
        StitchKind::Treble => "tr",
    };
    let one = |op: &Op| match op {
        Op::Each { kind: k, count } => format!("{}{count}", kind(*k)),
        Op::Into { kind: StitchKind::Single, many: 2 } => "inc".into(),
        Op::Into { kind: k, many } => format!("{many}{}in1", kind(*k)),
        Op::Together { kind: StitchKind::Single, many: 2, how } => match how {
            Decrease::Plain => "dec".into(),
            Decrease::Invisible => "invdec".into(),
        },
        Op::Together { kind: k, many, .. } => format!("{}{many}tog", kind(*k)),
        Op::Group { body, times: Times::In(n) } => format!("({}){n}", short(body)),
        Op::Group { body, times: Times::Around } => format!("({})~", short(body)),
        Op::Only { only: Loop::Front, body } => format!("flo{{{}}}", short(body)),
        Op::Only { only: Loop::Back, body } => format!("blo{{{}}}", short(body)),
        Op::Ring { kind: k, count } => format!("ring:{count}{}", kind(*k)),
        Op::IntoChain { kind: k, count, nth } => format!("ch[{nth}]:{count}{}", kind(*k)),
        Op::Chain(n) => format!("ch{n}"),
        Op::Skip(n) => format!("sk{n}"),
        Op::Join => "join".into(),
        Op::OtherSide => "other side".into(),
        Op::Turn => "turn".into(),
        Op::Marker => "marker".into(),
        Op::Colour(name) => format!("<{name}>"),
        Op::Stuff => "stuff".into(),
        Op::FastenOff => "off".into(),
        Op::Note(text) => format!("“{text}”"),
    };
    ops.iter().map(|op| one(&op.it)).collect::<Vec<_>>().join(" ")
}

pub(super) fn short_line(line: &Line) -> String {
    match line {
        Line::Piece(name) => format!("# {name}"),
        Line::Rounds(Rounds { first, last, work, stated }) => {
            let to = if first == last { String::new() } else { format!("-{last}") };
            let count = stated.as_ref().map_or(String::new(), |n| format!(" ={}", n.it));
            format!("{first}{to}: {}{count}", short(work))
        }
        Line::Do(work) => format!("do {}", short(work)),
        Line::Abbreviation { short, meaning } => format!("{short} := {meaning}"),
        Line::Note { text, unread: false } => format!("note {text}"),
        Line::Note { text, unread: true } => format!("UNREAD {text}"),
    }
}

fn in_terms(text: &str, code: &str) -> String {
    let reading = read(text, Wish::Lexicon(code));
    let lines: Vec<String> =
        reading.pattern.lines.iter().map(|line| short_line(&line.it)).collect();
    lines.join("\n")
}

pub(super) fn us(text: &str) -> String {
    in_terms(text, "en-us")
}

/// What `work` is read as in a round, in US terms.
fn round(work: &str) -> String {
    let read = us(&format!("Rnd 9: {work}"));
    read.strip_prefix("9: ").unwrap_or(&read).to_owned()
}

/// Asserts that every text reads as wanted, and names all that do not.
fn all_read(reads: impl Fn(&str) -> String, cases: &[(&str, &str)]) {
    let wrong: Vec<String> = cases
        .iter()
        .map(|&(text, want)| (text, want, reads(text)))
        .filter(|(_, want, got)| want != got)
        .map(|(text, want, got)| format!("{text}\n  wanted {want}\n  read   {got}"))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn headings() {
    let cases = [
        ("R3: sc 3", "3: sc3"),
        ("R3 : sc 3", "3: sc3"),
        ("Rnd 3. sc 3", "3: sc3"),
        ("Rnd. 3: sc 3", "3: sc3"),
        ("Round 3 – sc 3", "3: sc3"),
        ("Round three: sc 3", "3: sc3"),
        ("3rd round: sc 3", "3: sc3"),
        ("3) sc 3", "3: sc3"),
        ("3. sc 3", "3: sc3"),
        ("3: sc 3", "3: sc3"),
        ("Rnds 5-9: sc around", "5-9: (sc1)~"),
        ("Rnds 5 - 9: sc around", "5-9: (sc1)~"),
        ("Rounds 5 to 9: sc around", "5-9: (sc1)~"),
        ("Rounds 5 through 9: sc around", "5-9: (sc1)~"),
        ("5-9: sc around", "5-9: (sc1)~"),
        ("R5–R9: sc around", "5-9: (sc1)~"),
        ("R5 to R9: sc around", "5-9: (sc1)~"),
        ("Rnd 3) sc 3", "3: sc3"),
        ("Rnd 7, 8, 9: sc around", "7-9: (sc1)~"),
        ("Rnds 7 and 8: sc around", "7-8: (sc1)~"),
        ("Rnd 1 - 6 sc in mr", "1: ring:6sc"),
        ("Rnd 1: 6 sc in mr", "1: ring:6sc"),
        ("• Rnd 3: sc 3", "3: sc3"),
        ("▢ R3: sc 3", "3: sc3"),
        ("☐R3: sc 3", "3: sc3"),
        ("- [ ] R3: sc 3", "3: sc3"),
        ("* R3: sc 3", "3: sc3"),
        ("1. Rnd 3: sc 3", "3: sc3"),
        ("RND 3: SC 3, INC", "3: sc3 inc"),
        ("Ｒ３： ｓｃ ３", "3: sc3"),
        ("\u{feff}R3:\u{a0}sc\u{2009}3\r\nR4: inc", "3: sc3\n4: inc"),
        ("R3: sc 3 (3) R4: inc (6)", "3: sc3 =3\n4: inc =6"),
    ];
    all_read(us, &cases);
}

#[test]
fn counts() {
    let cases = [
        ("sc 3 (6)", "sc3 =6"),
        ("sc 3 [6]", "sc3 =6"),
        ("sc 3 {6}", "sc3 =6"),
        ("sc 3 <6>", "sc3 =6"),
        ("sc 3 = 6 sts", "sc3 =6"),
        ("sc 3 → 6", "sc3 =6"),
        ("sc 3. 6 stitches", "sc3 =6"),
        ("sc 3, 6 sts total", "sc3 =6"),
        ("sc 3 -18-", "sc3 =18"),
        ("sc 3 – 18 sts", "sc3 =18"),
        ("sc 3 (18 sts)", "sc3 =18"),
        ("sc 3 (18 sts total)", "sc3 =18"),
        ("sc 3, inc (18 sc)", "sc3 inc =18"),
        ("sc 3 (total: 18)", "sc3 =18"),
        ("sc 3. Total 18 sts.", "sc3 =18"),
        ("(sc, inc) x 6 (18).", "(sc1 inc)6 =18"),
        ("(sc 3)", "sc3"),
        ("(6 sc) in mr", "ring:6sc"),
    ];
    all_read(round, &cases);
    assert_eq!(us("Rnd 3 (18 sts): sc 3"), "3: sc3 =18");
    assert_eq!(us("Rnd 3 [18]: (sc, inc) x 6"), "3: (sc1 inc)6 =18");
}

#[test]
fn plain_stitches() {
    let cases = [
        ("sc 6", "sc6"),
        ("6 sc", "sc6"),
        ("6sc", "sc6"),
        ("sc in next 6 sts", "sc6"),
        ("sc in the next 6 stitches", "sc6"),
        ("sc in next 6", "sc6"),
        ("sc next 6 sts", "sc6"),
        ("sc 2 sts", "sc2"),
        ("1 sc in each of next 3 sts", "sc3"),
        ("sc in each of the next three sts", "sc3"),
        ("sc in next st", "sc1"),
        ("sc in next sc", "sc1"),
        ("single crochet in the next stitch", "sc1"),
        ("six sc", "sc6"),
        ("twenty-four sc", "sc24"),
        ("sc x 6", "sc6"),
        ("hdc 2, dc 3, tr 1", "hdc2 dc3 tr1"),
        ("sl st 2", "ss2"),
        ("sc around", "(sc1)~"),
        ("sc all around", "(sc1)~"),
        ("sc to end", "(sc1)~"),
        ("sc in each st", "(sc1)~"),
        ("sc in each st around", "(sc1)~"),
        ("1 sc in each stitch around", "(sc1)~"),
        ("sc in each sc around", "(sc1)~"),
        ("sc in every st", "(sc1)~"),
        ("sc even", "(sc1)~"),
        ("even", "(sc1)~"),
        ("work even", "(sc1)~"),
        ("sc in next st and in each of next 2 sts", "sc1 sc2"),
        ("sc 3; inc. dec then sc 1 and inc", "sc3 inc dec sc1 inc"),
        ("sc inc sc inc", "sc1 inc sc1 inc"),
        ("1 sc 1 inc 2 sc", "sc1 inc sc2"),
        ("skip 1 st, sc 3", "sk1 sc3"),
        ("sk next 2 sts", "sk2"),
    ];
    all_read(round, &cases);
}

#[test]
fn shaping() {
    let cases = [
        ("inc", "inc"),
        ("1 inc", "inc"),
        ("inc x 6", "(inc)6"),
        ("inc × 6", "(inc)6"),
        ("inc x6", "(inc)6"),
        ("6 inc", "(inc)6"),
        ("6 x inc", "(inc)6"),
        ("inc 6 times", "(inc)6"),
        ("inc six times", "(inc)6"),
        ("inc twice", "(inc)2"),
        ("inc x 1", "(inc)1"),
        ("inc around", "(inc)~"),
        ("inc in each st", "(inc)~"),
        ("inc in each st around", "(inc)~"),
        ("inc in every 3rd st", "(sc2 inc)~"),
        ("inc in next 3 sts", "(inc)3"),
        ("2 sc in next st", "inc"),
        ("sc twice in next st", "inc"),
        ("2 sc in same st", "inc"),
        ("3 sc in next st", "3scin1"),
        ("2 sc in next 3 sts", "(inc)3"),
        ("2 sc in each of next 3 sts", "(inc)3"),
        ("2 sc in each st around", "(inc)~"),
        ("2 sc in next st x 6", "(inc)6"),
        ("(sc, sc) in next st", "inc"),
        ("dec", "dec"),
        ("dec x 6", "(dec)6"),
        ("6 dec", "(dec)6"),
        ("dec around", "(dec)~"),
        ("dec over next 2 sts", "dec"),
        ("sc2tog", "dec"),
        ("sc 2 tog", "dec"),
        ("2 sc tog", "dec"),
        ("sc next 2 sts together", "dec"),
        ("sc3tog", "sc3tog"),
        ("sc2tog x 6", "(dec)6"),
        ("6 sc2tog", "(dec)6"),
        ("sc2tog around", "(dec)~"),
        ("sc2tog over next 2 sts", "dec"),
        ("invdec", "invdec"),
        ("inv dec x 6", "(invdec)6"),
        ("invisible decrease", "invdec"),
    ];
    all_read(round, &cases);
}

#[test]
fn the_kind_of_a_bare_shaping_is_that_of_its_neighbours() {
    assert_eq!(round("hdc 3, inc"), "hdc3 2hdcin1");
    assert_eq!(round("inc, hdc 3"), "2hdcin1 hdc3");
    assert_eq!(round("sc 1, inc, hdc 3, dec"), "sc1 inc hdc3 hdc2tog");
    assert_eq!(us("R1: 8 hdc in mr\nR2: inc x 8"), "1: ring:8hdc\n2: (2hdcin1)8");
    assert_eq!(
        us("R1: 8 hdc in mr\nR2: inc x 8\nR1: inc x 6"),
        "1: ring:8hdc\n2: (2hdcin1)8\n1: (inc)6"
    );
}

#[test]
fn repeats() {
    let cases = [
        ("(1 sc, inc) x 6", "(sc1 inc)6"),
        ("(sc, inc) x6", "(sc1 inc)6"),
        ("(sc, inc) * 6", "(sc1 inc)6"),
        ("(sc, inc)×6", "(sc1 inc)6"),
        ("(sc, inc) 6", "(sc1 inc)6"),
        ("[sc, inc] 6 times", "(sc1 inc)6"),
        ("[sc, inc] six times", "(sc1 inc)6"),
        ("[sc, inc] x 1", "(sc1 inc)1"),
        ("{sc, inc} twice", "(sc1 inc)2"),
        ("{[sc, inc] x 2, dec} x 3", "((sc1 inc)2 dec)3"),
        ("6x(sc, inc)", "(sc1 inc)6"),
        ("6 x [sc, inc]", "(sc1 inc)6"),
        ("6 times (sc, inc)", "(sc1 inc)6"),
        ("(sc, inc) around", "(sc1 inc)~"),
        ("(sc, inc) to end", "(sc1 inc)~"),
        ("(sc, inc), rep to end", "(sc1 inc)~"),
        ("(sc, inc) repeat 6 times", "(sc1 inc)6"),
        ("(sc, inc), repeat 5 more times", "(sc1 inc)6"),
        ("(sc, inc) once more", "(sc1 inc)2"),
        ("*sc 1, inc; rep from * 5 more times", "(sc1 inc)6"),
        ("*sc 1, inc; repeat from * five more times", "(sc1 inc)6"),
        ("*sc 1, inc, rep from * once more", "(sc1 inc)2"),
        ("*sc 1, inc; rep from * around", "(sc1 inc)~"),
        ("*sc 1, inc; rep from * to end", "(sc1 inc)~"),
        ("*sc 1, inc; rep from *", "(sc1 inc)~"),
        ("*sc, inc* x6", "(sc1 inc)6"),
        ("*sc, inc* 6 times", "(sc1 inc)6"),
        ("*sc, inc*, rep from * to * 5 more times", "(sc1 inc)6"),
        ("*sc, inc**; rep from * to ** 5 more times", "(sc1 inc)6"),
        ("*sc, inc, repeat 6 times", "(sc1 inc)6"),
        ("sc 2, *sc, inc* x 3, sc 1", "sc2 (sc1 inc)3 sc1"),
        ("sc, inc, repeat around", "(sc1 inc)~"),
        ("sc 3, (sc, inc) x 3, (dec, sc) x 2", "sc3 (sc1 inc)3 (dec sc1)2"),
        ("sc 3, (sc, inc), dec", "sc3 (sc1 inc)1 dec"),
        ("(sc, inc) for a total of 6 times", "(sc1 inc)6"),
    ];
    all_read(round, &cases);
}

#[test]
fn repeats_from_an_asterisk_count_as_the_stated_count_has_it() {
    // Five repeats after the first working make 18; six in all do as well.
    assert_eq!(round("*sc 1, inc; rep from * 5 times (18)"), "(sc1 inc)6 =18");
    assert_eq!(round("*sc 1, inc; rep from * 6 times (18)"), "(sc1 inc)6 =18");
    assert_eq!(round("*sc 1, inc; rep from * 5 times"), "(sc1 inc)6");
    assert_eq!(round("*sc 1, inc; rep from * 5 more times (15)"), "(sc1 inc)6 =15");
}

#[test]
fn beginnings_and_joins() {
    let cases = [
        ("6 sc in mr", "ring:6sc"),
        ("6 sc in a magic ring", "ring:6sc"),
        ("work 6 sc into magic circle (6)", "ring:6sc =6"),
        ("sc 6 in mr", "ring:6sc"),
        ("MR, 6 sc", "ring:6sc"),
        ("MR 6 (6)", "ring:6sc =6"),
        ("magic ring: 6 sc", "ring:6sc"),
        ("make a magic ring, ch 1, 6 sc in ring", "ch1 ring:6sc"),
        ("ch 2, 6 sc in 2nd ch from hook", "ch2 ch[2]:6sc"),
        ("ch 2, 6 sc in second ch from the hook", "ch2 ch[2]:6sc"),
        (
            "ch 6, sc in 2nd ch from hook, sc 3, 3 sc in last ch, then along the other side \
             of the chain sc 4",
            "ch6 ch[2]:1sc sc3 ch[0]:3sc other side sc4",
        ),
        ("ch 1, sc 6, join with sl st to first sc", "ch1 sc6 join"),
        ("ch 1, sc 6, join", "ch1 sc6 join"),
        ("ch 1, sc 6, sl st in first st", "ch1 sc6 join"),
        ("ch 1, sc 6, sl st to first sc to join", "ch1 sc6 join"),
        ("ch 1, (sc, inc) x 6, join, turn", "ch1 (sc1 inc)6 join turn"),
    ];
    all_read(round, &cases);
}

#[test]
fn loops_colours_and_remarks() {
    for (text, want) in [
        ("FLO: sc 3, inc", "flo{sc3 inc}"),
        ("in BLO, sc around", "blo{(sc1)~}"),
        ("sc around in BLO", "blo{(sc1)~}"),
        ("BLO sc around", "blo{(sc1)~}"),
        ("sc in BLO of each st around", "blo{(sc1)~}"),
        ("sc 3, inc, all in BLO", "blo{sc3 inc}"),
        ("Working in back loops only, sc 3, inc", "blo{sc3 inc}"),
        ("sc 2, FLO sc 3, inc", "sc2 flo{sc3} inc"),
        ("(BLO) sc 3", "blo{sc3}"),
        ("change to green, sc 3", "<green> sc3"),
        ("with yarn B, sc 3", "<B> sc3"),
        ("(in white) sc 3", "<white> sc3"),
        ("sc around in white", "(sc1)~ <white>"),
        ("sc 3, place marker", "sc3 marker"),
        ("sc 3 (do not join)", "sc3 “(do not join)”"),
        ("sc around. Do not join.", "(sc1)~ “Do not join”"),
        ("sc in each st to last 2 sts, dec", "(sc1)~ dec"),
        ("*sc 1, inc; rep from * to last st, sc 1", "(sc1 inc)~ sc1"),
        ("sc around (30 sts each round)", "(sc1)~ =30"),
    ] {
        let reading = read(&format!("Rnd 9: {text}"), Wish::Lexicon("en-us"));
        assert_eq!(round(text), want, "{text}");
        assert_eq!(reading.unread, [], "{text}");
    }
    assert_eq!(us("Rnd 5 (BLO): sc 3, inc"), "5: blo{sc3 inc}");
}

#[test]
fn lines_run_on() {
    let cases = [
        ("R3: *sc 1, inc;\nrep from * 5 more times\n(18)", "3: (sc1 inc)6 =18"),
        ("R3: (sc,\n  inc) x 6 (18)\nR4: sc around", "3: (sc1 inc)6 =18\n4: (sc1)~"),
        ("R3:\nsc 3, inc (5)\n", "3: sc3 inc =5"),
        ("R3: sc 3\nsc 2, inc (7)", "3: sc3 sc2 inc =7"),
        ("R3: sc 3 (3)\nFasten off, leaving a tail.", "3: sc3 =3\ndo off “leaving a tail”"),
        ("R3: sc 3.\nFO", "3: sc3\ndo off"),
        ("R3: sc 3\n\nSew on the ears.", "3: sc3\nnote Sew on the ears."),
        ("R3: sc 3 (3)\nStuff now.\nR4: dec", "3: sc3 =3\ndo stuff\n4: dec"),
        ("R1: 6 sc in mr (6)\ninc around (12)", "1: ring:6sc =6\n2: (inc)~ =12"),
    ];
    all_read(us, &cases);
}

#[test]
fn what_stands_between_rounds() {
    let cases = [
        ("sc = single crochet", "sc := single crochet"),
        ("inc: 2 sc in next st", "inc := 2 sc in next st"),
        ("sc - single crochet", "sc := single crochet"),
        ("single crochet (sc)", "sc := single crochet"),
        ("yo = yarn over", "yo := yarn over"),
        ("Abbreviations: sc = single crochet, ch = chain", "sc := single crochet\nch := chain"),
        ("sc2tog = single crochet 2 together", "sc2tog := single crochet 2 together"),
        ("FLO: front loop only", "FLO := front loop only"),
        (
            "MATERIALS\nyarn\nHEAD\nR1: 6 sc in mr",
            "note MATERIALS\nnote yarn\n# HEAD\n1: ring:6sc",
        ),
        ("Ear (make 2)\nR1: 6 sc in mr", "# Ear (make 2)\n1: ring:6sc"),
        ("Body:\nUse brown yarn.\nR1: 6 sc in mr", "# Body\nnote Use brown yarn.\n1: ring:6sc"),
        ("Small float\n\nR1: 6 sc in mr", "# Small float\n1: ring:6sc"),
        (
            "BODY (red)\nStart with care.\nR1: MR 6",
            "# BODY (red)\nnote Start with care.\n1: ring:6sc",
        ),
        ("Change to green.\nR4: sc 3", "do <green>\n4: sc3"),
        ("Ch 1.\nTurn.", "do ch1\ndo turn"),
        ("Sew the ears on.", "note Sew the ears on."),
        ("Gauge: 22 sc and 24 rounds to 10 cm.", "note Gauge: 22 sc and 24 rounds to 10 cm."),
        ("Hook 3.5 mm, 50 g of cotton.", "note Hook 3.5 mm, 50 g of cotton."),
        ("Rnd 3: as you like it", "UNREAD Rnd 3: as you like it"),
        ("Rnds 9-5: sc around", "UNREAD Rnds 9-5: sc around"),
    ];
    all_read(us, &cases);
}

#[test]
fn a_round_may_stand_for_another() {
    let cases = [
        ("R4: sc 3, inc\nR5: repeat Rnd 4 (6)", "4: sc3 inc\n5: sc3 inc =6"),
        ("R4-6: sc 3, inc\nR7: same as round 5", "4-6: sc3 inc\n7: sc3 inc"),
        ("R4: sc 3, inc\nR5: repeat Rnd 3", "4: sc3 inc\nUNREAD R5: repeat Rnd 3"),
    ];
    all_read(us, &cases);
}

#[test]
fn to_last_is_read_only_where_what_follows_takes_so_many() {
    let text = "Rnd 9: sc in each st to last 3 sts, dec";
    let reading = read(text, Wish::Lexicon("en-us"));
    assert_eq!(reading.unread.first(), Some(&(21..34)), "a stitch is left over");
}

#[test]
fn a_list_may_make_every_dec_invisible() {
    let text = "dec = invisible decrease\n\nR4: (sc, dec) x 6";
    assert_eq!(us(text), "dec := invisible decrease\n4: (sc1 invdec)6");
}

#[test]
fn what_cannot_be_read_is_kept_and_listed() {
    let unread = |text: &str| {
        let reading = read(text, Wish::Lexicon("en-us"));
        let places = reading.unread.iter().map(|at| text[at.clone()].to_owned());
        (us(text), places.collect::<Vec<_>>())
    };
    let one = |tree: &str, place: &str| (tree.to_owned(), vec![place.to_owned()]);
    assert_eq!(unread("R3: popcorn, sc 3 (4)"), one("3: “popcorn” sc3 =4", "popcorn"));
    assert_eq!(
        unread("R3: sc in the back post, inc"),
        one("3: “sc in the back post” inc", "sc in the back post")
    );
    assert_eq!(
        unread("R3: sc 99999999999, inc"),
        one("3: sc1 “99999999999” inc", "99999999999")
    );
    assert_eq!(unread("R3: (sc, inc x 6"), one("3: “(” sc1 (inc)6", "("));
    let deep = format!("R3: sc, {}sc, inc{}", "(".repeat(20), ")".repeat(20));
    assert_eq!(unread(&deep).1.len(), 1);
}

#[test]
fn rows_are_rounds_where_the_text_works_in_rounds() {
    let text = "Rnd 1: 6 sc in mr\nRow 2: inc around";
    let reading = read(text, Wish::Lexicon("en-us"));
    assert_eq!(us(text), "1: ring:6sc\n2: (inc)~");
    assert_eq!(reading.rows_as_rounds.first(), Some(&(18..23)));
    assert_eq!(us("Row 2: sc 3, turn"), "UNREAD Row 2: sc 3, turn");
}

#[test]
fn places_are_bytes_of_the_text() {
    let text = "\u{feff}Ｒ３ – (sc\u{a0}2, inc) × 6\r\n (24)";
    let reading = read(text, Wish::Lexicon("en-us"));
    let Line::Rounds(rounds) = &reading.pattern.lines[0].it else { panic!("a round") };
    assert_eq!(&text[reading.pattern.lines[0].at.clone()], text.trim_start_matches('\u{feff}'));
    assert_eq!(&text[rounds.work[0].at.clone()], "(sc\u{a0}2, inc) × 6");
    let Op::Group { body, .. } = &rounds.work[0].it else { panic!("a group") };
    assert_eq!(&text[body[0].at.clone()], "sc\u{a0}2");
    assert_eq!(&text[body[1].at.clone()], "inc");
    let stated = rounds.stated.as_ref().expect("a count is stated");
    assert_eq!(&text[stated.at.clone()], "24");
}

fn terms(text: &str) -> (&'static str, TermsFound) {
    let reading = read(text, Wish::Infer);
    (reading.lexicon, reading.terms)
}

fn because(found: &TermsFound) -> Vec<&str> {
    match found {
        TermsFound::Inferred { because } => because.iter().map(|b| b.it.as_str()).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn us_or_uk_terms_are_told_by_the_evidence() {
    let (code, found) = terms("R1: 6 sc in mr\nskip 1 st");
    assert_eq!((code, because(&found)), ("en-us", vec!["sc", "skip"]));
    let (code, found) = terms("R1: 6 dc in magic ring\nR2: htr 3");
    assert_eq!((code, because(&found)), ("en-uk", vec!["htr", "dc"]));
    // Six to a ring are so many as the short stitch takes.
    assert_eq!(terms("R1: 6 dc in magic ring").0, "en-uk");
    assert!(matches!(
        terms("R1: 12 dc in magic ring"),
        ("en-us", TermsFound::Undecided { read_as: "en-us", hangs_on }) if hangs_on.len() == 1
    ));
    let (code, found) = terms("Written in UK terms.\nR2: dc 6, tr 2");
    assert_eq!(code, "en-uk");
    let TermsFound::Said(said) = found else { panic!("it is said") };
    assert_eq!((said.it.as_str(), said.at), ("uk terms", 11..19));
    // A statement wins over one stray token.
    assert_eq!(terms("US terms.\nR2: sc 6, htr 2").0, "en-us");
    // One word each way decides nothing.
    assert!(matches!(terms("R2: sc 6, htr 2"), ("en-us", TermsFound::Undecided { .. })));
    let uk = "R1: 6 dc in magic ring (6)\nR2: 2 dc in next st, miss 1 st, htr 3";
    let reading = read(uk, Wish::Infer);
    assert_eq!(short_line(&reading.pattern.lines[0].it), "1: ring:6sc =6");
    assert_eq!(short_line(&reading.pattern.lines[1].it), "2: inc sk1 hdc3");
}

#[test]
fn other_languages_read_by_their_own_words() {
    let inferred = |text: &str| {
        let reading = read(text, Wish::Infer);
        let line = short_line(&reading.pattern.lines[0].it);
        format!("{} {line}", reading.lexicon)
    };
    let cases = [
        ("3. Rd: (1 fM, 1 M verdoppeln) 6x = 18 M", "de 3: (sc1 inc)6 =18"),
        ("3. Rd: jede 3. M verdoppeln (24)", "de 3: (sc2 inc)~ =24"),
        ("1. Rd: 6 fM in Fadenring (6)", "de 1: ring:6sc =6"),
        ("4. Rd: in jede M 1 fM (18)", "de 4: (sc1)~ =18"),
        ("5. Rd: (2 fM, 2 M zusammenhäkeln) x 6", "de 5: (sc2 dec)6"),
        ("3.–5. Rd: *1 fM, 1 M verdoppeln; ab * noch 5 x wiederholen", "de 3-5: (sc1 inc)6"),
        ("3. Rd: (1 f. M., 1 Zunahme) sechsmal", "de 3: (sc1 inc)6"),
        ("R3 : (1 ms, 1 aug) x 6 (18)", "fr 3: (sc1 inc)6 =18"),
        ("Tour 3 : *1 ms, 1 aug*, répéter 5 fois de plus (18)", "fr 3: (sc1 inc)6 =18"),
        (
            "Tour 3 : *1 ms, puis 2 ms dans la suivante* répéter de * à * 5 fois de plus",
            "fr 3: (sc1 inc)6",
        ),
        ("Rang 4 : *ms, aug* sur l'ensemble du rang (18)", "fr 4: (sc1 inc)~ =18"),
        ("Rang 1 : 6 ms dans un cercle magique", "fr 1: ring:6sc"),
        ("Tour 4 : 1 ms dans chaque maille (18)", "fr 4: (sc1)~ =18"),
        ("Tour 5 : 2 ms ensemble, 3 ms, 1 mc", "fr 5: dec sc3 ss1"),
        ("V3: (1 pb, 1 aum) x 6 (18)", "es 3: (sc1 inc)6 =18"),
        ("V3: (1 pb, aum) = 18 pb", "es 3: (sc1 inc)~ =18"),
        ("Vuelta 1: 6 pb en anillo mágico (6)", "es 1: ring:6sc =6"),
        ("V4: 1 pb en cada punto, repetir 2 veces", "es 4: ((sc1)~)2"),
        ("V5: (pb, dism) 6 veces", "es 5: (sc1 dec)6"),
    ];
    all_read(inferred, &cases);
}

#[test]
fn a_token_means_what_it_means_in_one_lexicon_only() {
    assert_eq!(in_terms("R2: dc 3, tr 2", "en-us"), "2: dc3 tr2");
    assert_eq!(in_terms("R2: dc 3, tr 2", "en-uk"), "2: sc3 dc2");
    assert_eq!(in_terms("R2 : 3 mc", "fr"), "2: ss3");
    assert_eq!(in_terms("R2: 6 sc in mc", "en-us"), "2: ring:6sc");
    assert_eq!(in_terms("V2: 3 pr", "es"), "2: ss3");
}
