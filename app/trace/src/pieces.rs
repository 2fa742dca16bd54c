//! The pieces of a set of pixels: which of them hang together.
//!
//! Rows are taken as runs, and runs that touch those of the row above are joined, so that the
//! work grows with the length of the edges and not with the area.

/// Pixels beside one another in a row, all of them of the set.
#[derive(Debug, Clone, Copy)]
struct PixelRun {
    /// Place of the first, and of what follows the last, in the picture.
    from: usize,
    to: usize,
}

/// The pieces, numbered from 0 in the order of their first pixels.
#[derive(Debug)]
pub(crate) struct Pieces {
    runs: Vec<PixelRun>,
    /// The piece of every run.
    of: Vec<usize>,
    /// How many pixels each piece has.
    pub(crate) areas: Vec<usize>,
}

impl Pieces {
    /// The pieces of the pixels that are `inside`, row by row in `bits`. Inside, pixels hang
    /// together by their sides alone, and outside by corners too, so that no line of pixels
    /// both joins and divides.
    pub(crate) fn of(bits: &[bool], width: usize, inside: bool) -> Self {
        let reach = usize::from(!inside);
        let mut runs: Vec<PixelRun> = Vec::new();
        let mut roots: Vec<usize> = Vec::new();
        let mut above = 0;
        for (y, row) in bits.chunks_exact(width.max(1)).enumerate() {
            let begun = runs.len();
            runs_of(row, y * width, inside, &mut runs);
            roots.extend(begun..runs.len());
            for r in begun..runs.len() {
                // As they would lie in the row above.
                let (from, to) = (runs[r].from, runs[r].to);
                while above < begun && runs[above].to + width + reach <= from {
                    above += 1;
                }
                let mut k = above;
                while k < begun && runs[k].from + width < to + reach {
                    join(&mut roots, r, k);
                    k += 1;
                }
            }
            above = begun;
        }
        Self::numbered(runs, roots)
    }

    fn numbered(runs: Vec<PixelRun>, mut roots: Vec<usize>) -> Self {
        let (mut of, mut areas): (Vec<usize>, Vec<usize>) = (Vec::new(), Vec::new());
        for (r, run) in runs.iter().enumerate() {
            let root = root(&mut roots, r);
            // A root is the first run of its piece, so its number is known by now.
            let piece = if root == r { areas.len() } else { of[root] };
            if root == r {
                areas.push(0);
            }
            areas[piece] += run.to - run.from;
            of.push(piece);
        }
        Self { runs, of, areas }
    }

    /// Whether each of `count` pixels belongs to a piece that `holds`.
    pub(crate) fn taken(&self, count: usize, holds: impl Fn(usize) -> bool) -> Vec<bool> {
        let mut bits = vec![false; count];
        for (run, _) in self.runs.iter().zip(&self.of).filter(|(_, piece)| holds(**piece)) {
            bits[run.from..run.to].fill(true);
        }
        bits
    }

    /// Whether each piece reaches the border of a picture of this size.
    pub(crate) fn at_border(&self, (width, height): (usize, usize)) -> Vec<bool> {
        let mut reaches = vec![false; self.areas.len()];
        for (run, &piece) in self.runs.iter().zip(&self.of) {
            let (first, last) = (run.from % width, (run.to - 1) % width);
            let row = run.from / width;
            let there = row == 0 || row + 1 == height || first == 0 || last + 1 == width;
            reaches[piece] |= there;
        }
        reaches
    }
}

fn runs_of(row: &[bool], at: usize, inside: bool, runs: &mut Vec<PixelRun>) {
    let mut x = 0;
    while let Some(skipped) = row[x..].iter().position(|&bit| bit == inside) {
        let from = x + skipped;
        let long = row[from..].iter().position(|&bit| bit != inside);
        x = long.map_or(row.len(), |long| from + long);
        runs.push(PixelRun { from: at + from, to: at + x });
    }
}

/// The first run of the piece that run `r` belongs to.
fn root(roots: &mut [usize], mut r: usize) -> usize {
    while roots[r] != r {
        roots[r] = roots[roots[r]];
        r = roots[r];
    }
    r
}

fn join(roots: &mut [usize], a: usize, b: usize) {
    let (a, b) = (root(roots, a), root(roots, b));
    roots[a.max(b)] = a.min(b);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bits(rows: &[&str]) -> (Vec<bool>, usize) {
        let bits = rows.iter().flat_map(|row| row.bytes().map(|b| b == b'#')).collect();
        (bits, rows[0].len())
    }

    /// The pieces by walking from pixel to pixel.
    fn walked(bits: &[bool], width: usize, inside: bool) -> Vec<usize> {
        let mut seen = vec![false; bits.len()];
        let mut areas = Vec::new();
        for start in 0..bits.len() {
            if bits[start] != inside || seen[start] {
                continue;
            }
            seen[start] = true;
            let (mut area, mut shore) = (0, vec![start]);
            while let Some(i) = shore.pop() {
                area += 1;
                let (x, y) = ((i % width) as isize, (i / width) as isize);
                for (dx, dy) in (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (dx, dy))) {
                    let (u, v) = (x + dx, y + dy);
                    let within = u >= 0 && v >= 0 && (u as usize) < width;
                    let j = (v * width as isize + u) as usize;
                    let joined = !inside || dx == 0 || dy == 0;
                    if within && j < bits.len() && joined && bits[j] == inside && !seen[j] {
                        seen[j] = true;
                        shore.push(j);
                    }
                }
            }
            areas.push(area);
        }
        areas
    }

    #[test]
    fn pieces_are_those_that_can_be_walked() {
        let mut chance = 7_u32;
        for side in [1, 2, 5, 17] {
            for _ in 0..50 {
                let bits: Vec<bool> = (0..side * 13)
                    .map(|_| {
                        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                        chance >> 31 == 1
                    })
                    .collect();
                for inside in [true, false] {
                    let pieces = Pieces::of(&bits, side, inside);
                    assert_eq!(pieces.areas, walked(&bits, side, inside), "{bits:?}");
                    let all = pieces.taken(bits.len(), |_| true);
                    assert!(
                        all.iter().zip(&bits).all(|(taken, &bit)| *taken == (bit == inside))
                    );
                }
            }
        }
    }

    #[test]
    fn corners_join_outside_alone_and_borders_are_known() {
        let (bits, width) = bits(&["#....", ".##..", ".#.#.", ".##..", "....."]);
        assert_eq!(Pieces::of(&bits, width, true).areas, vec![1, 5, 1]);
        let outside = Pieces::of(&bits, width, false);
        assert_eq!(outside.areas, vec![18]);
        let inside = Pieces::of(&bits, width, true).at_border((width, 5));
        assert_eq!(inside, vec![true, false, false]);
    }
}
