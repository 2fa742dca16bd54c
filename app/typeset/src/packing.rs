//! Charts shared out over the width of a page.

use plumpline_core::picture::chart::LEAST_SCALE;

/// A row of pictures, all at one scale.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row {
    /// Which pictures, in order.
    pub(crate) items: std::ops::Range<usize>,
    /// What they are reduced by.
    pub(crate) scale: f32,
}

/// Puts pictures of these sizes, mm, into rows of `room` by at most `height`, in order: as
/// many in a row as can be read.
pub(crate) fn rows(sizes: &[[f32; 2]], room: f32, gap: f32, height: f32) -> Vec<Row> {
    let fit = |items: &[[f32; 2]]| {
        let wide: f32 = items.iter().map(|s| s[0]).sum();
        let tall = items.iter().map(|s| s[1]).fold(0.0, f32::max);
        let free = room - gap * items.len().saturating_sub(1) as f32;
        (free / wide.max(1e-3)).min(height / tall.max(1e-3)).min(1.0)
    };
    let mut rows = Vec::new();
    let mut from = 0;
    while from < sizes.len() {
        let more = (from + 2..=sizes.len())
            .take_while(|&to| fit(&sizes[from..to]) >= LEAST_SCALE)
            .last();
        let to = more.unwrap_or(from + 1);
        rows.push(Row { items: from..to, scale: fit(&sizes[from..to]) });
        from = to;
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn charts_share_a_row_while_they_can_be_read() {
        let sizes = [[76.0, 80.0], [130.0, 134.0], [200.0, 200.0], [40.0, 40.0]];
        let rows = rows(&sizes, 178.0, 8.0, 230.0);
        let items: Vec<_> = rows.iter().map(|r| r.items.clone()).collect();
        assert_eq!(items, [0..2, 2..3, 3..4]);
        assert!(rows.iter().all(|r| r.scale >= LEAST_SCALE && r.scale <= 1.0), "{rows:?}");
    }
}
