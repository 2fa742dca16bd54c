//! Back to front, in two passes: stitches fall into buckets of depth far finer than one of
//! them, which is all that painting needs and takes no comparisons.

/// Buckets: on a body of 400 mm one holds a tenth of a millimetre.
const BUCKETS: usize = 4096;

/// The order in which `depths` are painted, farthest first; equal ones keep their order.
pub(super) fn back_to_front(depths: &[f32]) -> Vec<u32> {
    let (low, high) = depths
        .iter()
        .fold((f32::INFINITY, f32::NEG_INFINITY), |(l, h), &d| (l.min(d), h.max(d)));
    let fine = (BUCKETS - 1) as f32 / (high - low).max(1e-6);
    let bucket = |depth: f32| (((depth - low) * fine) as usize).min(BUCKETS - 1);
    let mut begins = vec![0_u32; BUCKETS + 1];
    for &depth in depths {
        begins[bucket(depth) + 1] += 1;
    }
    for i in 1..begins.len() {
        begins[i] += begins[i - 1];
    }
    let mut order = vec![0; depths.len()];
    for (i, &depth) in (0..).zip(depths) {
        let place = &mut begins[bucket(depth)];
        order[*place as usize] = i;
        *place += 1;
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_farthest_comes_first() {
        let depths: Vec<f32> = (0..5000).map(|i| ((i * 7919) % 5003) as f32 * 0.08).collect();
        let order = back_to_front(&depths);
        let mut seen = order.clone();
        seen.sort_unstable();
        assert!(seen.iter().copied().eq(0..5000), "each once");
        let fine = 400.3 / 4095.0;
        for pair in order.windows(2) {
            let (far, near) = (depths[pair[0] as usize], depths[pair[1] as usize]);
            assert!(far <= near + fine, "{far} before {near}");
        }
        assert!(back_to_front(&[]).is_empty());
    }
}
