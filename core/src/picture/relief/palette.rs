//! A still in few colours: a file a third as large, for where a page shows it small.
//!
//! Colours are parted at their means, again and again, where most is lost by taking them for
//! one (after the median cut of Heckbert, Computer Graphics 16, 1982).

use std::collections::BTreeMap;

/// Most colours of a palette: what a byte can tell.
const MOST: usize = 256;
/// Bits of a channel that tell colours apart to begin with.
const BITS: u32 = 6;

/// Pixels by the number of their colour.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Palette {
    /// Premultiplied RGBA.
    pub(super) colours: Vec<[u8; 4]>,
    pub(super) pixels: Vec<u8>,
}

/// Colours that are as good as one, and how many pixels have them.
#[derive(Debug, Clone, Copy)]
struct Alike {
    key: u32,
    mean: [f32; 4],
    many: f32,
}

/// A run of [`Alike`]s that shares a colour, and what is lost by that.
#[derive(Debug, Clone, Copy)]
struct Lot {
    from: usize,
    to: usize,
    /// The channel in which they differ most.
    channel: usize,
    lost: f32,
}

/// `pixels`, premultiplied RGBA, in at most 256 colours.
pub(super) fn palette(pixels: &[[u8; 4]]) -> Palette {
    let key = |pixel: &[u8; 4]| {
        pixel.iter().fold(0, |key, &c| (key << BITS) | (u32::from(c) >> (8 - BITS)))
    };
    let mut sums: BTreeMap<u32, ([u64; 4], u64)> = BTreeMap::new();
    for pixel in pixels {
        let (sum, many) = sums.entry(key(pixel)).or_default();
        *sum = [0, 1, 2, 3].map(|c| sum[c] + u64::from(pixel[c]));
        *many += 1;
    }
    let mut all: Vec<Alike> = sums
        .into_iter()
        .map(|(key, (sum, many))| Alike {
            key,
            mean: sum.map(|s| s as f32 / many as f32),
            many: many as f32,
        })
        .collect();
    let mut lots: Vec<Lot> =
        if all.is_empty() { Vec::new() } else { vec![Lot::of(&all, 0, all.len())] };
    while lots.len() < MOST {
        let worst = (0..lots.len()).max_by(|&a, &b| lots[a].lost.total_cmp(&lots[b].lost));
        let Some(worst) = worst.filter(|&i| lots[i].lost > 0.0) else { break };
        let Lot { from, to, channel, .. } = lots[worst];
        let (_, mean) = Lot::middle(&all[from..to]);
        all[from..to].sort_by(|a, b| {
            a.mean[channel].total_cmp(&b.mean[channel]).then(a.key.cmp(&b.key))
        });
        let below = all[from..to].iter().filter(|a| a.mean[channel] < mean[channel]).count();
        let cut = from + below.clamp(1, to - from - 1);
        lots[worst] = Lot::of(&all, from, cut);
        lots.push(Lot::of(&all, cut, to));
    }
    let mut numbers: BTreeMap<u32, u8> = BTreeMap::new();
    let mut colours = Vec::with_capacity(lots.len());
    for (number, lot) in lots.iter().enumerate() {
        let own = &all[lot.from..lot.to];
        let (_, mean) = Lot::middle(own);
        colours.push(mean.map(|c| (c + 0.5).clamp(0.0, 255.0) as u8));
        numbers.extend(own.iter().map(|alike| (alike.key, number as u8)));
    }
    let number = |pixel: &[u8; 4]| numbers.get(&key(pixel)).copied().unwrap_or_default();
    Palette { colours, pixels: pixels.iter().map(number).collect() }
}

impl Lot {
    fn middle(of: &[Alike]) -> (f32, [f32; 4]) {
        let many: f32 = of.iter().map(|a| a.many).sum();
        let sum = |c: usize| of.iter().map(|a| a.many * a.mean[c]).sum::<f32>();
        (many, [0, 1, 2, 3].map(|c| sum(c) / many.max(1.0)))
    }

    fn of(all: &[Alike], from: usize, to: usize) -> Self {
        let own = &all[from..to];
        let (_, mean) = Self::middle(own);
        let lost = [0, 1, 2, 3].map(|c| {
            let off = |a: &Alike| a.many * (a.mean[c] - mean[c]) * (a.mean[c] - mean[c]);
            own.iter().map(off).sum::<f32>()
        });
        let channel = (0..4).max_by(|&a, &b| lost[a].total_cmp(&lost[b])).unwrap_or(0);
        let lost = if own.len() > 1 { lost[channel] } else { 0.0 };
        Self { from, to, channel, lost }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn few_colours_stay_what_they_are() {
        let pixels: Vec<[u8; 4]> =
            (0..600_u32).map(|i| [0, (i % 50) as u8 * 5, 40, 255]).collect();
        let Palette { colours, pixels: numbers } = palette(&pixels);
        assert_eq!(colours.len(), 50);
        for (pixel, number) in pixels.iter().zip(&numbers) {
            assert_eq!(colours[usize::from(*number)], *pixel);
        }
        assert_eq!(palette(&[]).colours.len(), 0);
    }

    #[test]
    fn many_colours_come_close() {
        // A slope in two channels over clear ground: 2,501 colours.
        let slope = |i: u32| [(i % 50 * 5) as u8, (i / 50 * 5) as u8, 90, 255];
        let pixels: Vec<[u8; 4]> = (0..2500).map(slope).chain([[0; 4]]).collect();
        let Palette { colours, pixels: numbers } = palette(&pixels);
        assert_eq!(colours.len(), 256);
        let off = |(pixel, number): (&[u8; 4], &u8)| {
            let own = colours[usize::from(*number)];
            (0..4).map(|c| own[c].abs_diff(pixel[c])).max().unwrap_or(0)
        };
        // A lot is about 16 × 16 of 255: from its mean to its corner.
        let most = pixels.iter().zip(&numbers).map(off).max().unwrap_or(0);
        assert!(most <= 16, "{most}");
        assert_eq!(colours[usize::from(numbers[2500])], [0; 4]);
    }
}
