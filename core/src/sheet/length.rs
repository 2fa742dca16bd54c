//! Lengths and amounts in words, as the language of the sheet writes them.

use crate::words::write::Writer;

/// `11.1 cm (4 3/8 in)`; in languages whose makers know no inches `11,1 cm`.
pub(super) fn length(mm: f64, writer: &Writer<'_>) -> String {
    beside(&cm(mm, writer), &inches(mm), writer)
}

/// `10 cm (4 in)`: a length that stands for itself, without decimals.
pub(super) fn whole_length(mm: f64, writer: &Writer<'_>) -> String {
    beside(&format!("{:.0} cm", mm / 10.0), &format!("{:.0} in", mm / 25.4), writer)
}

fn beside(cm: &str, inches: &str, writer: &Writer<'_>) -> String {
    match knows_inches(writer) {
        true => format!("{cm} ({inches})"),
        false => cm.to_owned(),
    }
}

/// Whether makers of the language know inches.
pub(super) fn knows_inches(writer: &Writer<'_>) -> bool {
    writer.lexicon().code.starts_with("en")
}

/// `11.1 cm`.
pub(super) fn cm(mm: f64, writer: &Writer<'_>) -> String {
    writer.figure(&format!("{:.1} cm", mm / 10.0))
}

/// `6.1 mm`.
pub(super) fn millimetres(mm: f64, writer: &Writer<'_>) -> String {
    writer.figure(&format!("{mm:.1} mm"))
}

/// `4 3/8 in`, to the nearest eighth.
pub fn inches(mm: f64) -> String {
    let eighths = (mm / 25.4 * 8.0).round().max(0.0) as u64;
    let (whole, rest) = (eighths / 8, eighths % 8);
    let part = match rest {
        0 => "",
        1 => "1/8",
        2 => "1/4",
        3 => "3/8",
        4 => "1/2",
        5 => "5/8",
        6 => "3/4",
        _ => "7/8",
    };
    match (whole, part) {
        (_, "") => format!("{whole} in"),
        (0, _) => format!("{part} in"),
        _ => format!("{whole} {part} in"),
    }
}

/// Metres in yards: 1 yd is 0.9144 m exactly.
pub(super) fn yards(metres: f64) -> f64 {
    metres / 0.9144
}

/// A figure without needless decimals: `312`, `21.7`, `22`.
pub(super) fn number(value: f64, writer: &Writer<'_>) -> String {
    let rounded = (value * 10.0).round() / 10.0;
    if rounded.fract() == 0.0 || rounded >= 100.0 {
        format!("{rounded:.0}")
    } else {
        writer.figure(&format!("{rounded:.1}"))
    }
}

/// An estimated amount, to no more places than it deserves.
pub(super) fn amount(value: f64, writer: &Writer<'_>) -> String {
    if value >= 9.95 { format!("{value:.0}") } else { writer.figure(&format!("{value:.1}")) }
}

/// Working time: `32 min`, `2 h 05 min`.
pub(super) fn time(minutes: f64, writer: &Writer<'_>) -> String {
    use crate::words::write::Fill::Words;
    let minutes = minutes.round().max(1.0) as u64;
    let (hours, rest) = (minutes / 60, minutes % 60);
    match hours {
        0 => writer.say_of("minutes", &[("minutes", Words(&rest.to_string()))]),
        hours => {
            let (hours, rest) = (hours.to_string(), format!("{rest:02}"));
            writer.say_of("hours", &[("hours", Words(&hours)), ("minutes", Words(&rest))])
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::lexicon::by_code;
    use crate::words::write::HouseStyle;

    fn writer(code: &str) -> Writer<'static> {
        Writer::new(HouseStyle::bench(), by_code(code).expect("a built-in lexicon"))
    }

    #[test]
    fn inches_are_said_in_eighths() {
        assert_eq!(inches(25.4), "1 in");
        assert_eq!(inches(111.0), "4 3/8 in");
        assert_eq!(inches(3.2), "1/8 in");
        assert_eq!(inches(0.4), "0 in");
    }

    #[test]
    fn figures_are_written_as_the_language_writes_them() {
        assert_eq!(length(111.0, &writer("en-us")), "11.1 cm (4 3/8 in)");
        assert_eq!(length(111.0, &writer("de")), "11,1 cm");
        assert_eq!(whole_length(100.0, &writer("en-uk")), "10 cm (4 in)");
        assert_eq!(amount(4.93, &writer("fr")), "4,9");
        assert_eq!(time(32.4, &writer("en-us")), "32 min");
        assert_eq!(time(125.0, &writer("en-us")), "2 h 05 min");
    }
}
