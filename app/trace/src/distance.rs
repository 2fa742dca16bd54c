//! How far every pixel of a set lies from the nearest that is not of it, and the other way
//! round, exactly and in time that grows with the number of pixels (Meijster, Roerdink and
//! Hesselink, “A general algorithm for computing distance transforms in linear time”, 2000).

/// For every pixel, the square of the distance of its middle from the middle of the nearest
/// pixel whose bit differs; (width + height)² where there is none.
pub(crate) fn squared(bits: &[bool], (width, height): (usize, usize)) -> Vec<i32> {
    let none = (width + height) as i32;
    let along_columns = along_columns(bits, width, none);
    let mut out = vec![0_i32; bits.len()];
    let mut hull = Hull { sources: Vec::with_capacity(width), from: Vec::with_capacity(width) };
    let rows = bits.chunks_exact(width.max(1)).zip(along_columns.chunks_exact(width.max(1)));
    for ((row, columns), out) in rows.zip(out.chunks_exact_mut(width.max(1))) {
        for kind in [false, true] {
            // Pixels of one kind look for the nearest of the other.
            if row.contains(&!kind) {
                hull.row(row, columns, kind, out);
            }
        }
    }
    out
}

/// Distance of every pixel from the nearest in its column whose bit differs.
fn along_columns(bits: &[bool], width: usize, none: i32) -> Vec<i32> {
    let mut off = vec![none; bits.len()];
    let height = bits.len() / width.max(1);
    for y in 1..height {
        let (above, below) = off.split_at_mut(y * width);
        let (upper, lower) = bits.split_at(y * width);
        let (above, upper) = (&above[(y - 1) * width..], &upper[(y - 1) * width..]);
        step(&mut below[..width], above, (&lower[..width], upper), none);
    }
    for y in (1..height).rev() {
        let (above, below) = off.split_at_mut(y * width);
        let (upper, lower) = bits.split_at(y * width);
        let (above, upper) = (&mut above[(y - 1) * width..], &upper[(y - 1) * width..]);
        step(above, &below[..width], (upper, &lower[..width]), none);
    }
    off
}

/// From the row `from` to the next one, `to`, whose bits are the latter and the former.
fn step(to: &mut [i32], from: &[i32], (here, there): (&[bool], &[bool]), none: i32) {
    for (((to, from), here), there) in to.iter_mut().zip(from).zip(here).zip(there) {
        let by_way = if here == there { (from + 1).min(none) } else { 1 };
        *to = by_way.min(*to);
    }
}

/// The parabolas over a row of which none lies below them: a column each, with its square
/// distance as the height of the vertex.
struct Hull {
    sources: Vec<(i32, i32)>,
    /// From which column on each is the lowest.
    from: Vec<i32>,
}

impl Hull {
    /// Square distances of the pixels of a row that are not of `kind` from the nearest of it.
    fn row(&mut self, row: &[bool], columns: &[i32], kind: bool, out: &mut [i32]) {
        self.sources.clear();
        self.from.clear();
        let width = row.len();
        for x in 0..width {
            let ends = x == 0 || x + 1 == width || row[x - 1] != kind || row[x + 1] != kind;
            match row[x] == kind {
                // Nobody outside a run is nearer to its inside than to its ends.
                true if ends => self.add(x as i32, 0, width as i32),
                true => {}
                false => self.add(x as i32, columns[x] * columns[x], width as i32),
            }
        }
        let mut k = self.sources.len();
        for x in (0..width).rev() {
            while k > 1 && self.from[k - 1] > x as i32 {
                k -= 1;
            }
            if row[x] != kind {
                out[x] = at(self.sources[k - 1], x as i32);
            }
        }
    }

    fn add(&mut self, x: i32, height: i32, width: i32) {
        let new = (x, height);
        while let (Some(&last), Some(&from)) = (self.sources.last(), self.from.last()) {
            if at(last, from) <= at(new, from) {
                // The first column in which the new one is lower; it is the further right.
                let (u, h) = last;
                let begins = 1 + (x * x - u * u + height - h) / (2 * (x - u));
                if begins < width {
                    self.sources.push(new);
                    self.from.push(begins);
                }
                return;
            }
            self.sources.pop();
            self.from.pop();
        }
        self.sources.push(new);
        self.from.push(0);
    }
}

fn at((x, height): (i32, i32), column: i32) -> i32 {
    (column - x) * (column - x) + height
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_are_those_of_every_pair_of_pixels() {
        let mut chance = 3_u32;
        for (width, height) in [(1, 1), (1, 9), (9, 1), (8, 6), (23, 17)] {
            for rare in 0..12 {
                let bits: Vec<bool> = (0..width * height)
                    .map(|_| {
                        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                        chance >> 24 < 1 << (rare % 8)
                    })
                    .collect();
                let found = squared(&bits, (width, height));
                let none = (width + height).pow(2) as i32;
                for i in 0..bits.len() {
                    let off = |j: usize| {
                        let across = (i % width).abs_diff(j % width);
                        (across.pow(2) + (i / width).abs_diff(j / width).pow(2)) as i32
                    };
                    let others = (0..bits.len()).filter(|&j| bits[j] != bits[i]);
                    let nearest = others.map(off).min().unwrap_or(none);
                    assert_eq!(found[i], nearest, "{i} of {width} × {height}: {bits:?}");
                }
            }
        }
    }
}
