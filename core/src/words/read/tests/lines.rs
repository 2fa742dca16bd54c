//! Lines that run on, what stands between rounds, what cannot be read, and places.

use super::{all_read, us};
use crate::words::read::{TermsWish, read};
use crate::words::tree::{Line, Op};

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
        ("R4: sc 3, inc\nR5: repeat Rnd 3", "4: sc3 inc\n5: “repeat Rnd 3”"),
    ];
    all_read(us, &cases);
}

#[test]
fn to_last_is_read_only_where_what_follows_takes_so_many() {
    let text = "Rnd 9: sc in each st to last 3 sts, dec";
    let reading = read(text, TermsWish::Lexicon("en-us"));
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
        let reading = read(text, TermsWish::Lexicon("en-us"));
        let places = reading.unread.iter().map(|at| text[at.clone()].to_owned());
        (us(text), places.collect::<Vec<_>>())
    };
    let one = |tree: &str, place: &str| (tree.to_owned(), vec![place.to_owned()]);
    assert_eq!(unread("R3: wobble, sc 3 (4)"), one("3: “wobble” sc3 =4", "wobble"));
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
    let reading = read(text, TermsWish::Lexicon("en-us"));
    assert_eq!(us(text), "1: ring:6sc\n2: (inc)~");
    assert_eq!(reading.rows_as_rounds.first(), Some(&(18..23)));
    assert_eq!(us("Row 2: sc 3, turn"), "UNREAD Row 2: sc 3, turn");
}

#[test]
fn places_are_bytes_of_the_text() {
    let text = "\u{feff}Ｒ３ – (sc\u{a0}2, inc) × 6\r\n (24)";
    let reading = read(text, TermsWish::Lexicon("en-us"));
    let Line::Rounds(rounds) = &reading.pattern.lines[0].it else { panic!("a round") };
    assert_eq!(&text[reading.pattern.lines[0].at.clone()], text.trim_start_matches('\u{feff}'));
    assert_eq!(&text[rounds.work[0].at.clone()], "(sc\u{a0}2, inc) × 6");
    let Op::Group { body, .. } = &rounds.work[0].it else { panic!("a group") };
    assert_eq!(&text[body[0].at.clone()], "sc\u{a0}2");
    assert_eq!(&text[body[1].at.clone()], "inc");
    let stated = rounds.stated.as_ref().expect("a count is stated");
    assert_eq!(&text[stated.at.clone()], "24");
}

#[test]
fn what_a_text_carries_beside_its_words() {
    let cases = [
        // Emphasis.
        (
            "- **R1** – 6 sc in mr → **6**\n- **R2** – inc every st → **12**",
            "1: ring:6sc =6\n2: (inc)~ =12",
        ),
        // Times before the lines.
        (
            "00:40 Round 1: 6 sc in mr (6)\n01:35 Round 2: inc x 6 (12)\n02:20 Round 3: sc (12)",
            "1: ring:6sc =6\n2: (inc)6 =12\n3: (sc1)~ =12",
        ),
        // A word broken at the end of a line.
        ("Rnd 9: sc next 2 sts to-\ngether around (6)", "9: (dec)~ =6"),
        // A word of the writer's own for a round.
        (
            "Lap 1: 6 sc in mr (6)\nLap 2: inc x 6 (12)\nLaps 3 to 5: sc around\n\
             Lap 6: dec x 6 (6)",
            "1: ring:6sc =6\n2: (inc)6 =12\n3-5: (sc1)~\n6: (dec)6 =6",
        ),
        // Numbers of a list that run on in one line.
        ("1) 6 sc in mr 2) inc x 6 3) (sc, inc) x 6", "1: ring:6sc\n2: (inc)6\n3: (sc1 inc)6"),
        // The dash before the work is no range where the numbers say so.
        ("RND 1—6 SC IN RING\nRND 2—INC AROUND", "1: ring:6sc\n2: (inc)~"),
        (
            "Rnd 1: 6 sc in mr\nRnd 2 thru 4: sc\nRnd 5: inc x 6",
            "1: ring:6sc\n2-4: (sc1)~\n5: (inc)6",
        ),
    ];
    all_read(us, &cases);
}

#[test]
fn numerals_of_rounds_are_read_where_they_count_on() {
    let german = |text: &str| super::in_terms(text, "de");
    let cases = [(
        "I. Runde: 6 fM in den Fadenring\nII. Runde: 2 fM in jede M\n\
         III. bis V. Runde: 1 fM in jede M\nVI. Runde: wie V.",
        "1: ring:6sc\n2: (inc)~\n3-5: (sc1)~\n6: (sc1)~",
    )];
    all_read(german, &cases);
}

#[test]
fn a_mistyped_word_is_read_as_the_one_meant_and_told() {
    let text = "Rnd 1: 6 sc in mr\nRnd 2: inc in each st (12)\nRnd 3: (sc in next st, 2 sc in \
                ncxt st) x 6 (18)\nRnd 4: sc in next 3 sts, sc in each st to end (18)";
    let reading = read(text, TermsWish::Infer);
    let meant: Vec<&str> = reading.misspelt.iter().map(|(_, word)| word.as_str()).collect();
    assert_eq!(meant, ["next"]);
    assert_eq!(us(text).lines().nth(2), Some("3: (sc1 inc)6 =18"));
}
