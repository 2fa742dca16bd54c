//! Averages over squares, in time that does not depend on their size.

/// The mean of `values` over the square of `radius` pixels about every pixel, as far as that
/// lies in the picture.
pub(super) fn mean(values: &[f32], (width, height): (usize, usize), radius: usize) -> Vec<f32> {
    let mut across = vec![0.0_f32; values.len()];
    for (row, out) in values.chunks_exact(width).zip(across.chunks_exact_mut(width)) {
        slide(width, radius, |x| f64::from(row[x]), |x, mean| out[x] = mean as f32);
    }
    // Down the columns with a sum a column, row by row: memory is walked in its own order.
    let mut out = vec![0.0_f32; values.len()];
    let mut sums = vec![0.0_f64; width];
    let mut rows = 0;
    for y in 0..height + radius {
        if y < height {
            rows += 1;
            add(&mut sums, &across[y * width..(y + 1) * width], 1.0);
        }
        if y > 2 * radius {
            let gone = y - 2 * radius - 1;
            rows -= 1;
            add(&mut sums, &across[gone * width..(gone + 1) * width], -1.0);
        }
        if y >= radius {
            let at = (y - radius) * width;
            for (to, sum) in out[at..at + width].iter_mut().zip(&sums) {
                *to = (sum / f64::from(rows)) as f32;
            }
        }
    }
    out
}

fn add(sums: &mut [f64], row: &[f32], sign: f64) {
    for (sum, &value) in sums.iter_mut().zip(row) {
        *sum += sign * f64::from(value);
    }
}

fn slide(
    length: usize,
    radius: usize,
    value: impl Fn(usize) -> f64,
    mut put: impl FnMut(usize, f64),
) {
    let (mut sum, mut count) = (0.0, 0_u32);
    for i in 0..length + radius {
        if i < length {
            sum += value(i);
            count += 1;
        }
        if i > 2 * radius {
            sum -= value(i - 2 * radius - 1);
            count -= 1;
        }
        if i >= radius {
            put(i - radius, sum / f64::from(count));
        }
    }
}

/// The colours, each averaged over `radius` pixels three times over: all but a Gaussian of
/// standard deviation √(radius (radius + 1)).
pub(super) fn colours(
    colours: &[[f32; 3]],
    size: (usize, usize),
    radius: usize,
) -> Vec<[f32; 3]> {
    let channel = |c: usize| {
        let mut values: Vec<f32> = colours.iter().map(|p| p[c]).collect();
        for _ in 0..3 {
            values = mean(&values, size, radius);
        }
        values
    };
    let [r, g, b] = [0, 1, 2].map(channel);
    (0..r.len()).map(|i| [r[i], g[i], b[i]]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn means_agree_with_their_definition() {
        let (width, height) = (9, 7);
        let values: Vec<f32> = (0..63).map(|i| ((i * 37) % 19) as f32).collect();
        for radius in [0, 1, 3, 12] {
            let means = mean(&values, (width, height), radius);
            for y in 0..height {
                for x in 0..width {
                    let (mut sum, mut count) = (0.0, 0.0);
                    for v in y.saturating_sub(radius)..=(y + radius).min(height - 1) {
                        for u in x.saturating_sub(radius)..=(x + radius).min(width - 1) {
                            sum += f64::from(values[v * width + u]);
                            count += 1.0;
                        }
                    }
                    let off = f64::from(means[y * width + x]) - sum / count;
                    assert!(off.abs() < 1e-4, "radius {radius} at {x}, {y}: {off}");
                }
            }
        }
    }
}
