//! The designer's own pictures on the pages: the logo, the cover, rows of photographs.

use std::collections::BTreeMap;

use plumpline_core::sheet::{Sheet, SheetPhoto};
use serde_json::{Value, json};
use typst::foundations::Bytes;

/// Most room of a logo, of the cover of a single piece and of several, mm.
const LOGO: [f32; 2] = [34.0, 16.0];
const COVER_OF_ONE: [f32; 2] = [84.0, 112.0];
const COVER: [f32; 2] = [64.0, 84.0];
/// Height that rows of photographs are near to, and the most they have, mm.
const ROW: f32 = 58.0;
const TALLEST: f32 = 84.0;
/// Between two photographs of a row, mm.
const GAP: f32 = 4.0;

/// Puts the pictures into `files` and says in `data` where they stand, on pages with so much
/// room across, mm.
pub(crate) fn own_pictures(
    sheet: &Sheet,
    room: f32,
    data: &mut Value,
    files: &mut BTreeMap<String, Bytes>,
) {
    let mut put = |name: &str, photo: &SheetPhoto, wide: f32, alt: &str| {
        let ending = if photo.is_png() { "png" } else { "jpg" };
        let file = format!("/{name}.{ending}");
        files.insert(file.clone(), Bytes::new(photo.bytes.to_vec()));
        let alt = if photo.caption.is_empty() { alt } else { &photo.caption };
        json!({ "file": file, "alt": alt, "caption": photo.caption, "wide": wide })
    };
    let logo = sheet
        .logo
        .as_ref()
        .map(|logo| put("logo", logo, fitted(logo, LOGO), sheet.label("logo_picture")));
    let named = |number: usize| sheet.label_of("photo_picture", "n", &number.to_string());
    let field = if sheet.pieces.len() == 1 { COVER_OF_ONE } else { COVER };
    let cover =
        sheet.photos.first().map(|photo| put("photo1", photo, fitted(photo, field), &named(1)));
    let others: Vec<(usize, &SheetPhoto)> = (1..).zip(&sheet.photos).skip(1).collect();
    let laid: Vec<Value> = in_rows(&others, room)
        .into_iter()
        .map(|(row, tall)| {
            let one = |(number, photo): &(usize, &SheetPhoto)| {
                put(&format!("photo{number}"), photo, tall * aspect(photo), &named(*number))
            };
            row.iter().map(one).collect()
        })
        .collect();
    data["logo"] = json!(logo);
    data["cover"] = json!(cover);
    data["photos"] = json!(laid);
}

/// Width over height.
fn aspect(photo: &SheetPhoto) -> f32 {
    (photo.size[0] as f32 / photo.size[1].max(1) as f32).clamp(0.05, 20.0)
}

/// Width within the field, mm.
fn fitted(photo: &SheetPhoto, field: [f32; 2]) -> f32 {
    field[0].min(field[1] * aspect(photo))
}

/// Rows of photographs as wide as there is room, each with its height.
fn in_rows<'p>(
    photos: &'p [(usize, &'p SheetPhoto)],
    room: f32,
) -> Vec<(&'p [(usize, &'p SheetPhoto)], f32)> {
    let tall = |row: &[(usize, &SheetPhoto)]| {
        let aspects: f32 = row.iter().map(|(_, photo)| aspect(photo)).sum();
        (room - GAP * (row.len() - 1) as f32) / aspects
    };
    let mut rows = Vec::new();
    let mut rest = photos;
    while !rest.is_empty() {
        // As many as bring the row nearest to the height wanted.
        let nearest = (1..=rest.len().min(6)).min_by(|&a, &b| {
            let off = |n: usize| (tall(&rest[..n]).max(1.0) / ROW).ln().abs();
            off(a).total_cmp(&off(b))
        });
        let (row, after) = rest.split_at(nearest.unwrap_or(1));
        rows.push((row, tall(row).min(TALLEST)));
        rest = after;
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_as_wide_as_the_page_and_near_one_height() {
        let photo = |wide, tall| SheetPhoto {
            caption: String::new(),
            bytes: Vec::new().into(),
            size: [wide, tall],
        };
        let photos = [photo(300, 200), photo(200, 300), photo(300, 200), photo(900, 100)];
        let numbered: Vec<(usize, &SheetPhoto)> = (1..).zip(&photos).collect();
        let rows = in_rows(&numbered, 178.0);
        assert_eq!(rows.iter().map(|(row, _)| row.len()).sum::<usize>(), 4);
        for (row, tall) in rows {
            let wide: f32 = row.iter().map(|(_, p)| tall * aspect(p)).sum();
            let wide = wide + GAP * (row.len() - 1) as f32;
            assert!(wide <= 178.1 && tall <= TALLEST, "{wide} {tall}");
        }
    }
}
