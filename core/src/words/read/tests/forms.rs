//! Headings, counts, stitches, repeats, and what stands beside them in a round.

use super::{all_read, round, us};
use crate::words::read::{TermsWish, read};

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
        ("R3: sc 3 (3) R4: inc (6)", "3: sc3 =3\n4: (inc)~ =6"),
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
        let reading = read(&format!("Rnd 9: {text}"), TermsWish::Lexicon("en-us"));
        assert_eq!(round(text), want, "{text}");
        assert_eq!(reading.unread, [], "{text}");
    }
    assert_eq!(us("Rnd 5 (BLO): sc 3, inc"), "5: blo{sc3 inc}");
}
