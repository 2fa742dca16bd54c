//! Averages over squares, in time that does not depend on their size.

/// The mean of `values` over the square of `radius` pixels about every pixel, as far as that
/// lies in the picture.
pub(super) fn mean(values: &[f32], size: (usize, usize), radius: usize) -> Vec<f32> {
    let alone: Vec<[f32; 1]> = values.iter().map(|&value| [value]).collect();
    means(&alone, size, radius).into_iter().map(|[mean]| mean).collect()
}

/// The same of several numbers a pixel at once, which costs hardly more than of one.
pub(super) fn means<const N: usize>(
    values: &[[f32; N]],
    (width, height): (usize, usize),
    radius: usize,
) -> Vec<[f32; N]> {
    let mut across = vec![[0.0_f32; N]; values.len()];
    let shares = shares(width, radius);
    for (row, out) in values.chunks_exact(width).zip(across.chunks_exact_mut(width)) {
        slide(row, out, radius, &shares);
    }
    // Down the columns with a sum a column, row by row: memory is walked in its own order.
    let mut out = vec![[0.0_f32; N]; values.len()];
    let mut sums = vec![[0.0_f64; N]; width];
    let shares = self::shares(height, radius);
    for y in 0..height + radius {
        if y < height {
            add(&mut sums, &across[y * width..(y + 1) * width], 1.0);
        }
        if y > 2 * radius {
            let gone = y - 2 * radius - 1;
            add(&mut sums, &across[gone * width..(gone + 1) * width], -1.0);
        }
        if y >= radius {
            let share = shares[y - radius];
            let at = (y - radius) * width;
            for (to, sum) in out[at..at + width].iter_mut().zip(&sums) {
                *to = sum.map(|sum| (sum * share) as f32);
            }
        }
    }
    out
}

/// One over how many of `length` places lie within `radius` of each.
fn shares(length: usize, radius: usize) -> Vec<f64> {
    let count = |i: usize| (i + radius).min(length - 1) - i.saturating_sub(radius) + 1;
    (0..length).map(|i| 1.0 / count(i) as f64).collect()
}

fn add<const N: usize>(sums: &mut [[f64; N]], row: &[[f32; N]], sign: f64) {
    for (sum, value) in sums.iter_mut().zip(row) {
        for (sum, &value) in sum.iter_mut().zip(value) {
            *sum += sign * f64::from(value);
        }
    }
}

fn slide<const N: usize>(
    row: &[[f32; N]],
    out: &mut [[f32; N]],
    radius: usize,
    shares: &[f64],
) {
    let length = row.len();
    let mut sum = [0.0_f64; N];
    let change = |i: usize, sign: f64, sum: &mut [f64; N]| {
        for (sum, &value) in sum.iter_mut().zip(&row[i]) {
            *sum += sign * f64::from(value);
        }
    };
    for i in 0..length + radius {
        if i < length {
            change(i, 1.0, &mut sum);
        }
        if i > 2 * radius {
            change(i - 2 * radius - 1, -1.0, &mut sum);
        }
        if i >= radius {
            out[i - radius] = sum.map(|sum| (sum * shares[i - radius]) as f32);
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
    let once = means(colours, size, radius);
    let twice = means(&once, size, radius);
    means(&twice, size, radius)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn several_numbers_at_once_are_as_each_alone() {
        let size = (11, 8);
        let values: Vec<[f32; 2]> =
            (0..88).map(|i| [((i * 31) % 17) as f32, ((i * 53) % 23) as f32]).collect();
        let both = means(&values, size, 2);
        for channel in [0, 1] {
            let alone: Vec<f32> = values.iter().map(|value| value[channel]).collect();
            let found: Vec<f32> = both.iter().map(|mean| mean[channel]).collect();
            assert_eq!(mean(&alone, size, 2), found);
        }
    }

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
