//! Outlines from a formula: any expression of the radius, and the dome of a superellipse.

use std::ops::Range;

use exmex::{Express as _, FlatEx};
use plumpline_core::outline::LARGEST_MM;
use plumpline_core::{Error, Knot, Outline, Result, Rz};

use crate::line::{self, FittedLine};

/// Longest formula, in characters.
const LONGEST: usize = 400;
/// Places it is worked out at.
const PLACES: u32 = 1500;
/// Names that may stand in a formula beside the variables.
const FUNCTIONS: [&str; 16] = [
    "sin", "cos", "tan", "asin", "acos", "atan", "sinh", "cosh", "tanh", "sqrt", "exp", "ln",
    "log10", "abs", "floor", "round",
];
const CONSTANTS: [&str; 2] = ["pi", "e"];
/// What varies: the height above the start in mm, and its share of the whole, 0 … 1.
const VARIABLES: [&str; 3] = ["z", "t", "h"];

/// Why a formula makes no outline, and where in it or along it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{error}")]
pub struct FormulaFault {
    /// One line: where, what is wrong, the mend.
    pub error: Error,
    /// Where that is.
    pub place: FormulaPlace,
}

/// Where a formula is at fault.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FormulaPlace {
    /// In these of its characters, counted from 0; an empty range at its end is where
    /// something is missing.
    Letters(Range<usize>),
    /// At this share of the height, thousandths: it can be read, but has no radius there.
    Height(u16),
    /// As a whole, or not in the formula at all but in the height.
    Whole,
}

impl FormulaFault {
    fn letters(at: Range<usize>, what: impl Into<String>, mend: impl Into<String>) -> Self {
        let place = format!("formula, character {}", at.start + 1);
        let error = Error::new(place, what, mend);
        Self { error, place: FormulaPlace::Letters(at) }
    }
}

/// What reading a formula gives, or why it gives nothing.
pub type FormulaRead<T> = std::result::Result<T, FormulaFault>;

impl From<Error> for FormulaFault {
    fn from(error: Error) -> Self {
        Self { error, place: FormulaPlace::Whole }
    }
}

/// The outline of height `height_mm` whose radius in mm is what `formula` says: of `z`, the
/// height above the start in mm, of `t`, its share of the whole (0 … 1), and of `h`, the
/// whole height in mm. Ends where the radius is nothing are poles, others open.
///
/// # Errors
/// One line with the place in the formula (its character, counted from 1) that cannot be
/// read; the height at which the radius cannot be; and whatever [`line::fit`] refuses.
pub fn outline(formula: &str, height_mm: f64, tolerance_mm: f64) -> FormulaRead<FittedLine> {
    if !(1.0..=LARGEST_MM).contains(&height_mm) {
        let what = format!("{height_mm} mm is out of range");
        return Err(Error::new("height", what, "give a number from 1 to 3000 mm").into());
    }
    let plain = look_over(formula)?;
    let read: FlatEx<f64> = exmex::parse(&plain).map_err(|e| {
        let what = format!("“{formula}” cannot be read ({})", e.msg());
        Error::new("formula", what, "write it like 30*sin(pi*t)")
    })?;
    let names: Vec<String> = read.var_names().to_vec();
    let radius = |t: f64| -> Option<f64> {
        let of = |name: &String| match name.as_str() {
            "z" => t * height_mm,
            "h" => height_mm,
            "e" => std::f64::consts::E,
            _ => t,
        };
        let values: Vec<f64> = names.iter().map(of).collect();
        read.eval(&values).ok().filter(|r| r.is_finite())
    };
    let mut points = Vec::with_capacity(PLACES as usize + 1);
    for i in 0..=PLACES {
        // Closer together at the ends, which are often round.
        let t = 0.5 * (1.0 - (std::f64::consts::PI * f64::from(i) / f64::from(PLACES)).cos());
        let no_radius = |what: &str, mend: &str| FormulaFault {
            error: Error::new(format!("formula, at z = {:.1} mm", t * height_mm), what, mend),
            place: FormulaPlace::Height((1000.0 * t).round() as u16),
        };
        let r = radius(t).ok_or_else(|| {
            no_radius("the radius is no number", "change it so that it has one everywhere")
        })?;
        let at_an_end = i == 0 || i == PLACES;
        // Sines of whole turns are not quite nothing.
        let r = if at_an_end && r.abs() < 1e-6 * height_mm { 0.0 } else { r };
        if r < 0.0 || (!at_an_end && r <= 1e-9 * height_mm) {
            let mend = "change it so that it is above 0 between the ends";
            return Err(no_radius(&format!("the radius is {r:.2} mm"), mend));
        }
        if r > LARGEST_MM {
            let mend = format!("change it so that it is at most {LARGEST_MM} mm");
            return Err(no_radius(&format!("the radius is {:.1} m", 1e-3 * r), &mend));
        }
        points.push(Rz::new(r, t * height_mm));
    }
    Ok(line::fit(&points, tolerance_mm, 0.0)?)
}

/// The formula as the evaluator wants it; what no formula can have is refused at its place.
///
/// The evaluator's signs bind more tightly than its powers, so that -t^2 would be (-t)^2: a
/// minus in front is written (0-1)* instead, which is right wherever a term may begin.
fn look_over(formula: &str) -> FormulaRead<String> {
    let letters: Vec<char> = formula.chars().collect();
    let fault =
        |at: Range<usize>, what: String, mend: &str| Err(FormulaFault::letters(at, what, mend));
    if letters.iter().all(|c| c.is_whitespace()) {
        let error = Error::new("formula", "it is empty", "write it like 30*sin(pi*t)");
        return Err(FormulaFault { error, place: FormulaPlace::Letters(0..0) });
    }
    if letters.len() > LONGEST {
        let what = format!("it is longer than {LONGEST} characters");
        let error = Error::new("formula", what, "shorten it");
        return Err(FormulaFault {
            error,
            place: FormulaPlace::Letters(LONGEST..letters.len()),
        });
    }
    let mut open = Vec::new();
    let mut plain = String::new();
    let mut before = ' ';
    let mut i = 0;
    // Whether a value has just ended, so that what combines or closes may follow.
    let mut after_value = false;
    while i < letters.len() {
        let c = letters[i];
        let from = i;
        i += 1;
        match c {
            c if c.is_whitespace() => {
                plain.push(' ');
                continue;
            }
            '0'..='9' | '.' => {
                while i < letters.len() && (letters[i].is_ascii_digit() || letters[i] == '.') {
                    i += 1;
                }
                let number: String = letters[from..i].iter().collect();
                if number.parse::<f64>().is_err() {
                    let what = format!("“{number}” is no number");
                    return fault(from..i, what, "write it with one point");
                }
                value(after_value, from..i, &number)?;
                plain.push_str(&number);
                after_value = true;
            }
            c if c.is_alphabetic() => {
                while i < letters.len() && letters[i].is_alphanumeric() {
                    i += 1;
                }
                let name: String = letters[from..i].iter().collect::<String>().to_lowercase();
                value(after_value, from..i, &name)?;
                let function = FUNCTIONS.contains(&name.as_str());
                if !function
                    && !VARIABLES.contains(&name.as_str())
                    && !CONSTANTS.contains(&name.as_str())
                {
                    let mend = format!(
                        "use {}, {} or functions such as sin, sqrt and abs",
                        VARIABLES.join(", "),
                        CONSTANTS[0]
                    );
                    return fault(from..i, format!("“{name}” is not known"), &mend);
                }
                let next = letters[i..].iter().find(|c| !c.is_whitespace());
                if function && next != Some(&'(') {
                    let what = format!("{name} has nothing to work on");
                    return fault(from..i, what, &format!("write {name}(…)"));
                }
                plain.push_str(if name == "pi" { "PI" } else { &name });
                after_value = !function;
            }
            '(' => {
                value(after_value && !is_call(&letters, from), from..i, "(")?;
                open.push(from);
                plain.push('(');
                after_value = false;
            }
            ')' => {
                if open.pop().is_none() || !after_value {
                    let what = "a bracket closes that was not opened, or holds nothing".into();
                    return fault(from..i, what, "look at the brackets");
                }
                plain.push(')');
                after_value = true;
            }
            '-' | '+' if !after_value => {
                if matches!(before, '*' | '/' | '^') {
                    let what = format!("a sign follows “{before}”");
                    return fault(from..i, what, "put it in brackets, as in 2^(-t)");
                }
                plain.push_str(if c == '-' { "(0-1)*" } else { "" });
            }
            '+' | '-' | '*' | '/' | '^' => {
                if !after_value {
                    let what = format!("“{c}” has nothing before it");
                    return fault(from..i, what, "write a number or a name there");
                }
                plain.push(c);
                after_value = false;
            }
            other => {
                let what = format!("“{other}” is not read");
                return fault(from..i, what, "use + - * / ^ and brackets");
            }
        }
        before = c;
    }
    if let Some(&from) = open.last() {
        return fault(from..from + 1, "this bracket is not closed".into(), "close it");
    }
    if !after_value {
        let what = "it ends where a number or a name should follow".into();
        return fault(letters.len()..letters.len(), what, "write the rest");
    }
    Ok(plain)
}

fn is_call(letters: &[char], bracket: usize) -> bool {
    letters[..bracket]
        .iter()
        .rev()
        .find(|c| !c.is_whitespace())
        .is_some_and(|c| c.is_alphabetic())
}

fn value(after_value: bool, at: Range<usize>, what: &str) -> FormulaRead<()> {
    if after_value {
        let what = format!("“{what}” follows without + - * / or ^");
        return Err(FormulaFault::letters(at, what, "write what joins them, such as 2*t"));
    }
    Ok(())
}

/// A dome: one quarter of the superellipse (r/R)^n + (z/h)^n = 1 turned about its axis, from
/// its pole to a flat base that a card insert holds; `exponent` 2 is half a ball or an
/// ellipsoid, 1 a cone, larger ones are boxier.
///
/// # Errors
/// Names the dimension that is out of range, and its range.
pub fn dome(
    height_mm: f64,
    width_mm: f64,
    exponent: f64,
    tolerance_mm: f64,
) -> Result<FittedLine> {
    let within = |place: &str, value: f64, low: f64, high: f64| {
        if (low..=high).contains(&value) {
            return Ok(());
        }
        let what = format!("{value} is out of range");
        Err(Error::new(place, what, format!("give a number from {low} to {high}")))
    };
    within("dome, height", height_mm, 15.0, 1000.0)?;
    within("dome, width", width_mm, 15.0, 1000.0)?;
    within("dome, exponent", exponent, 0.8, 12.0)?;
    let power = 2.0 / exponent;
    let place = |i: u32| {
        let turn = std::f64::consts::FRAC_PI_2 * f64::from(i) / f64::from(PLACES);
        let across = if i == 0 { 0.0 } else { turn.sin().powf(power) };
        let up = if i == PLACES { 0.0 } else { turn.cos().powf(power) };
        Rz::new(0.5 * width_mm * across, height_mm * (1.0 - up))
    };
    let points: Vec<Rz> = (0..=PLACES).map(place).collect();
    let mut fitted = line::fit(&points, tolerance_mm, 0.0)?;
    let mut knots = fitted.outline.knots;
    if let Some(rim) = knots.last_mut() {
        *rim = Knot { card: true, ..Knot::corner(rim.radius_mm, rim.height_mm) };
    }
    knots.push(Knot::new(0.0, height_mm));
    fitted.outline = Outline::new(knots)?;
    Ok(fitted)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn formulas_are_worked_out_by_share_and_by_height() {
        for formula in ["30*sin(pi*t)", "30 * SIN(PI * z / h)", "+30*sin(pi*t)^1"] {
            let fitted = outline(formula, 80.0, 0.1).expect(formula);
            assert!(fitted.outline.starts_closed() && fitted.outline.finishes_closed());
            assert!((fitted.outline.profile(400).widest_mm() - 30.0).abs() < 0.15);
            assert!(fitted.furthest_mm < 0.15, "{fitted:?}");
        }
        // Next to an end the radius is all but nothing.
        let drop = outline("30*sin(pi*t)*(1.2-t/2)", 80.0, 0.1).expect("a drop").outline;
        assert!(drop.starts_closed() && drop.finishes_closed());
        let open = outline("20+z/4", 80.0, 0.1).expect("an open one");
        assert_eq!(open.outline.knots.len(), 2, "{:?}", open.outline);
        let usual = outline("40-(t*6)^2+2^3^1", 50.0, 0.1).expect("precedence");
        assert!((usual.outline.knots[0].radius_mm - 48.0).abs() < 0.05);
        let nested = outline("40+2^(-(1-t))*(-(-4))-exp(0)", 50.0, 0.1).expect("brackets");
        assert!((nested.outline.knots[0].radius_mm - 41.0).abs() < 0.05);
        let signs = outline("40+-t^2*4", 50.0, 0.1).expect("a sign");
        assert!((signs.outline.knots.last().expect("a knot").radius_mm - 36.0).abs() < 0.05);
    }

    #[test]
    fn the_place_of_the_fault_is_told() {
        let said = |formula: &str| outline(formula, 80.0, 0.1).expect_err(formula).to_string();
        for (formula, place) in [
            ("30*sine(t)", "character 4"),
            ("30*sin(pi*t", "character 7"),
            ("30*sin(pi*t))", "character 13"),
            ("30**t", "character 4"),
            ("30 t", "character 4"),
            ("30*", "character 4"),
            ("3..0", "character 1"),
            ("30*sin t", "character 4"),
            ("30$", "character 3"),
            ("()", "character 2"),
            ("2^-t", "character 3"),
            ("10-z", "at z = "),
            ("1/t", "at z = 0.0 mm"),
            ("sqrt(t-0.5)", "at z = 0.0 mm"),
        ] {
            let line = said(formula);
            assert!(line.contains(place) && line.lines().count() == 1, "{formula}: {line}");
        }
        let place = |formula: &str| outline(formula, 80.0, 0.1).expect_err(formula).place;
        assert_eq!(place("30*sine(t)"), FormulaPlace::Letters(3..7));
        assert_eq!(place("ä*t"), FormulaPlace::Letters(0..1), "characters, not bytes");
        assert_eq!(place("30*"), FormulaPlace::Letters(3..3), "what is missing at the end");
        assert_eq!(place("40-z"), FormulaPlace::Height(500));
        assert_eq!(place("9000"), FormulaPlace::Height(0));
        assert!(said("  ").contains("empty"));
        assert!(said(&"1+".repeat(300)).contains("longer"));
        assert!(outline("30", f64::NAN, 0.1).is_err());
    }

    #[test]
    fn a_superellipse_is_as_high_and_wide_as_asked_and_keeps_to_its_equation() {
        for exponent in [1.0, 2.0, 2.5, 4.0] {
            let fitted = dome(50.0, 90.0, exponent, 0.1).expect("a dome");
            let curve = fitted.outline.profile(800);
            for station in curve.stations.iter().filter(|st| st.at.z < 49.0) {
                let (r, up) = (station.at.r / 45.0, (50.0 - station.at.z) / 50.0);
                let sum = r.powf(exponent) + up.powf(exponent);
                assert!((sum - 1.0).abs() < 0.03, "{exponent}: {sum} at {:?}", station.at);
            }
            assert!((curve.widest_mm() - 45.0).abs() < 0.2);
            assert!(fitted.outline.finishes_closed());
        }
        assert!(dome(50.0, 90.0, f64::NAN, 0.1).is_err());
        assert!(dome(5.0, 90.0, 2.0, 0.1).is_err());
    }
}
