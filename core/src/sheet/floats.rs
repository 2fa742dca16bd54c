//! What is told of strands of colour work.

use crate::piece::Yarn;
use crate::plan::Plan;
use crate::plan::colours::LONGEST_FLOAT;
use crate::plan::warning::Warning;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::Writer;

/// Strands of one yarn that lie loose too long.
pub(super) fn long_floats(
    plan: &Plan,
    here: &str,
    warning: &Warning,
    writer: &Writer<'_>,
) -> String {
    let of = plan.floats.iter().filter(|float| warning.rounds.contains(&float.round));
    let yarn = of.map(|float| float.yarn).next().unwrap_or(0);
    let longest = plan.floats.iter().filter(|float| float.yarn == yarn);
    let longest = longest.map(|float| float.stitches).max().unwrap_or(0);
    let letter = Yarn::letter(yarn);
    let values = [
        ("where", Words(here)),
        ("letter", Words(&letter)),
        ("n", Number(longest)),
        ("each", Number(LONGEST_FLOAT)),
    ];
    writer.say_of("long_float", &values)
}
