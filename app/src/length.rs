//! Lengths as people type them: `12cm`, `120 mm`, `4.5in`.

/// A length in mm. Without a unit a number is mm.
///
/// # Errors
/// One line that says what was read, for clap to show.
pub(crate) fn parse_mm(text: &str) -> Result<f64, String> {
    let text = text.trim().to_lowercase();
    let split = text.find(|c: char| c.is_alphabetic() || c == '"').unwrap_or(text.len());
    let (number, unit) = text.split_at(split);
    let scale = match unit.trim() {
        "" | "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        "in" | "\"" | "inch" | "inches" => 25.4,
        other => return Err(format!("“{other}” is no unit; use mm, cm, m or in")),
    };
    match number.trim().replace(',', ".").parse::<f64>() {
        Ok(value) if value.is_finite() && value > 0.0 => Ok(value * scale),
        _ => Err(format!("“{text}” is no length; write it like 10cm")),
    }
}

#[cfg(test)]
mod tests {
    use super::parse_mm;

    #[test]
    fn lengths_in_every_unit() {
        assert_eq!(parse_mm("10cm"), Ok(100.0));
        assert_eq!(parse_mm(" 4 in "), Ok(101.6));
        assert_eq!(parse_mm("7,5 mm"), Ok(7.5));
        assert_eq!(parse_mm("110"), Ok(110.0));
        assert_eq!(parse_mm("2 IN"), Ok(50.8));
        assert_eq!(parse_mm("1.2 m"), Ok(1200.0));
        assert!(parse_mm("a lot").is_err() && parse_mm("0").is_err());
        assert!(parse_mm("-3cm").is_err() && parse_mm("3 ells").is_err());
        assert!(parse_mm("NaN").is_err());
    }
}
