//! A view of a toy with the names of its parts beside it, each with a line to the part.

use super::seen::ToyThing;
use crate::picture::Rgb;
use crate::picture::drawing::{Drawing, Pen, width_of};
use crate::picture::relief::Still;

/// Height of the names, mm: 7 points.
const TYPE: f32 = 2.5;
/// Between two names, one under the other, mm.
const LEAD: f32 = 4.2;
/// Widest column of names, as a share of the field: longer ones are cut.
const WIDEST: f32 = 0.3;
const INK: Rgb = [38, 36, 33];
const PAPER: Rgb = [255, 255, 255];

/// A name and the place it points at, mm from the left and from the top of the field.
#[derive(Debug, Clone, PartialEq)]
pub struct CallOut {
    /// The name.
    pub name: String,
    /// The place.
    pub at: [f32; 2],
}

/// The place of each thing that has a name: the pixel of its copy seen largest that lies
/// nearest to the middle of that copy, `scale` pixels a millimetre. Nothing is told of what is
/// hidden, nor of less than a few pixels of it.
pub(crate) fn call_outs(
    still: &Still,
    things: &[ToyThing],
    name_of: impl Fn(ToyThing) -> Option<(usize, String)>,
    scale: f32,
) -> Vec<CallOut> {
    const LEAST: usize = 6;
    let wide = (still.size[0] as usize).max(1);
    let places: Vec<Vec<[f32; 2]>> = {
        let mut places = vec![Vec::new(); things.len()];
        for (i, seen) in still.map.iter().enumerate() {
            if let Some(of) =
                usize::from(seen.part).checked_sub(1).and_then(|t| places.get_mut(t))
            {
                of.push([(i % wide) as f32 + 0.5, (i / wide) as f32 + 0.5]);
            }
        }
        places
    };
    // Several rods are one cord, several copies one part.
    let mut largest: Vec<(usize, String, usize)> = Vec::new();
    for (index, &thing) in things.iter().enumerate() {
        let Some((id, name)) = name_of(thing) else { continue };
        if places[index].len() < LEAST {
            continue;
        }
        match largest.iter_mut().find(|(of, ..)| *of == id) {
            Some(kept) if places[kept.2].len() < places[index].len() => kept.2 = index,
            Some(_) => {}
            None => largest.push((id, name, index)),
        }
    }
    let called = largest.into_iter().filter_map(|(_, name, index)| {
        let of = &places[index];
        let mean = |i: usize| of.iter().map(|p| p[i]).sum::<f32>() / of.len() as f32;
        let (x, y) = (mean(0), mean(1));
        let off = |p: &[f32; 2]| (p[0] - x).powi(2) + (p[1] - y).powi(2);
        let at = of.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
        Some(CallOut { name, at: at.map(|c| c / scale) })
    });
    called.collect()
}

/// How wide the columns of `names` are either side of a field so wide, mm.
pub(crate) fn column_mm<'a>(names: impl Iterator<Item = &'a str>, field: f32) -> f32 {
    let widest = names.map(|name| width_of(name, TYPE)).fold(0.0, f32::max);
    (widest + 1.5).min(WIDEST * field)
}

/// The names beside the picture, in columns `column` wide at both sides of the `field`, mm:
/// each on its place's side, in the order of the places, none over another.
pub(crate) fn lettered(called: &[CallOut], field: [f32; 2], column: f32) -> Drawing {
    let mut drawing = Drawing::default();
    // Just as large as the field.
    let [wide, tall] = field;
    drawing.area([[0.0, 0.0], [wide, 0.0], [wide, tall], [0.0, tall]], None, None);
    let room = ((tall / LEAD) as usize).max(1);
    let mut sides: [Vec<&CallOut>; 2] = [Vec::new(), Vec::new()];
    let mut by_x: Vec<&CallOut> = called.iter().collect();
    by_x.sort_by(|a, b| a.at[0].total_cmp(&b.at[0]));
    for out in by_x {
        let left = out.at[0] < 0.5 * wide - 1e-3;
        let side = usize::from(!left);
        // What is in the middle goes where there are fewer.
        let middle = (out.at[0] - 0.5 * wide).abs() < 0.06 * wide;
        let fewer = usize::from(sides[1].len() < sides[0].len());
        sides[if middle { fewer } else { side }].push(out);
    }
    for (side, outs) in sides.iter_mut().enumerate() {
        outs.sort_by(|a, b| a.at[1].total_cmp(&b.at[1]));
        outs.truncate(room);
        let levels = apart(&outs.iter().map(|out| out.at[1]).collect::<Vec<_>>(), tall);
        for (out, level) in outs.iter().zip(levels) {
            let name = cut(&out.name, column);
            let long = width_of(&name, TYPE);
            let (from, edge) = match side {
                0 => ((column - 1.0 - long).max(0.0), column - 0.4),
                _ => (wide - column + 1.0, wide - column + 0.4),
            };
            let line = [[edge, level], out.at];
            drawing.line(line, Pen::new(PAPER, 0.7));
            drawing.line(line, Pen::new(INK, 0.25));
            drawing.circle(out.at, 0.75, Some(INK), Some(Pen::new(PAPER, 0.35)));
            drawing.words_from(name, [from, level], TYPE, INK, false);
        }
    }
    drawing
}

/// Levels near `wanted`, which are in order, each at least a line under the one before, all
/// within a field so high.
fn apart(wanted: &[f32], tall: f32) -> Vec<f32> {
    let half = 0.5 * LEAD;
    let mut levels: Vec<f32> = wanted.to_vec();
    let mut least = half;
    for level in &mut levels {
        *level = level.max(least);
        least = *level + LEAD;
    }
    let mut most = tall - half;
    for level in levels.iter_mut().rev() {
        *level = level.min(most);
        most = *level - LEAD;
    }
    levels
}

/// A name as wide as a column, cut where it is longer.
fn cut(name: &str, column: f32) -> String {
    if width_of(name, TYPE) <= column - 1.0 {
        return name.to_owned();
    }
    let mut kept: Vec<char> = name.chars().collect();
    while kept.len() > 1 && width_of(&String::from_iter(&kept), TYPE) > column - 2.0 {
        kept.pop();
    }
    format!("{}…", String::from_iter(kept).trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_stand_apart_in_order_and_within_the_field() {
        for wanted in [vec![10.0, 10.1, 10.2], vec![0.0, 1.0], vec![39.0, 40.0, 40.0], vec![]] {
            let levels = apart(&wanted, 40.0);
            assert!(levels.windows(2).all(|w| w[1] - w[0] >= LEAD - 1e-4), "{levels:?}");
            assert!(levels.iter().all(|&y| (0.0..=40.0).contains(&y)), "{levels:?}");
        }
        // Where there is room nothing is moved.
        assert_eq!(apart(&[8.0, 20.0], 40.0), [8.0, 20.0]);
    }

    #[test]
    fn long_names_are_cut_to_their_column() {
        let long = "the long knitted tail of a seven-headed thing";
        assert!(width_of(&cut(long, 20.0), TYPE) <= 20.0);
        assert_eq!(cut("Ear", 20.0), "Ear");
    }
}
