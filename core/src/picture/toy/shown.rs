//! What the picture of a step shows: all that is there once it is done, and what it is about
//! in full while the rest steps back.

use super::seen::ToyThing;
use crate::picture::Rgb;
use crate::picture::relief::{Seen, Still};
use crate::toy::AssemblyStep;

/// How much of the ground lies over what steps back. By eye, no source.
const VEIL: f32 = 0.62;

/// What is there once a step is done, and what it was about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShownStep {
    /// The parts that are there, indices into the toy's.
    pub parts: Vec<usize>,
    /// The attachments that are there.
    pub attachments: Vec<usize>,
    /// The part that this step puts on.
    pub part: Option<usize>,
    /// The attachment that this step makes.
    pub attachment: Option<usize>,
}

impl ShownStep {
    /// Whether a thing that is seen is what the step is about; `part_of` tells the part of a
    /// pose.
    pub fn is_about(&self, thing: ToyThing, part_of: impl Fn(usize) -> Option<usize>) -> bool {
        match thing {
            ToyThing::Attachment(at) => self.attachment == Some(at),
            ToyThing::Pose(pose) => self.part.is_some() && part_of(pose) == self.part,
        }
    }
}

/// What each of `steps` shows, in their order: what was there before it stays.
pub fn shown_steps(steps: &[AssemblyStep]) -> Vec<ShownStep> {
    let (mut parts, mut attachments): (Vec<usize>, Vec<usize>) = (Vec::new(), Vec::new());
    let shown = steps.iter().map(|step| {
        for part in &step.parts {
            if !parts.contains(part) {
                parts.push(*part);
            }
        }
        attachments.extend(step.attachment);
        let part = step.parts.first().filter(|_| step.attachment.is_none()).copied();
        let (parts, attachments) = (parts.clone(), attachments.clone());
        ShownStep { parts, attachments, part, attachment: step.attachment }
    });
    shown.collect()
}

/// Lets all of `still` step back behind a veil of `ground` but what `is_lit`, and draws a line
/// of `ink` around that: who sees no colours still sees what is meant.
pub(crate) fn stand_out(
    still: &mut Still,
    is_lit: impl Fn(Seen) -> bool,
    ground: Rgb,
    ink: Rgb,
) {
    let lit: Vec<bool> = still.map.iter().map(|seen| is_lit(*seen)).collect();
    let veiled = |[r, g, b, a]: [u8; 4]| {
        let clear = f32::from(a) / 255.0;
        let mix = |c: u8, under: u8| {
            (f32::from(c) * (1.0 - VEIL) + f32::from(under) * VEIL * clear).round() as u8
        };
        [mix(r, ground[0]), mix(g, ground[1]), mix(b, ground[2]), a]
    };
    for (pixel, lit) in still.pixels.iter_mut().zip(&lit) {
        if !lit {
            *pixel = veiled(*pixel);
        }
    }
    rim(still, &lit, ink);
}

/// Lays the pixels of `own` from a picture `of` the same size over `still`, half seen, with a
/// line of `ink` around them.
pub(crate) fn lay_over(still: &mut Still, of: &Still, own: &[bool], ink: Rgb) {
    for ((pixel, over), own) in still.pixels.iter_mut().zip(&of.pixels).zip(own) {
        if *own {
            let mix =
                |i: usize| (u16::from(pixel[i]) + 3 * u16::from(over[i])).div_ceil(4) as u8;
            *pixel = [mix(0), mix(1), mix(2), mix(3)];
        }
    }
    rim(still, own, ink);
}

/// A line of `ink` around the pixels that are `lit`.
fn rim(still: &mut Still, lit: &[bool], ink: Rgb) {
    let [wide, tall] = still.size.map(|s| s as usize);
    // About a hundredth of the picture, so that it is as strong at any size.
    let deep = (wide.max(tall) / 110).max(1) as isize;
    let inside = |x: isize, y: isize| {
        let within = x >= 0 && y >= 0 && (x as usize) < wide && (y as usize) < tall;
        within && lit[y as usize * wide + x as usize]
    };
    for y in 0..tall {
        for x in 0..wide {
            let (x, y) = (x as isize, y as isize);
            let sides = [(deep, 0), (-deep, 0), (0, deep), (0, -deep)];
            // Outside of what is lit: small eyes keep all of their own pixels.
            let edge = !inside(x, y) && sides.iter().any(|(dx, dy)| inside(x + dx, y + dy));
            if edge {
                let at = y as usize * wide + x as usize;
                still.pixels[at] = [ink[0], ink[1], ink[2], 255];
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_lit_keeps_its_pixels_and_gets_a_line_around_it() {
        let seen = |part| Seen { part, ..Seen::default() };
        let mut still = Still {
            size: [5, 5],
            pixels: vec![[100, 100, 100, 255]; 25],
            map: vec![seen(1); 25],
        };
        still.map[12] = seen(2);
        stand_out(&mut still, |seen| seen.part == 2, [255; 3], [9, 9, 9]);
        assert_eq!(still.pixels[12], [100, 100, 100, 255]);
        for beside in [7, 11, 13, 17] {
            assert_eq!(still.pixels[beside], [9, 9, 9, 255]);
        }
        // 100 × 0.38 + 255 × 0.62.
        assert_eq!(still.pixels[0], [196, 196, 196, 255]);
    }
}
