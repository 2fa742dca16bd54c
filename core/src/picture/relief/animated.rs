//! Several stills as one animated picture.

use super::still::Still;
use crate::error::{Error, Result};

/// An animated PNG (PNG, third edition, W3C 2025) of `stills`, all of one size, that plays
/// without end; each stands for `each_ms`. A program that knows no animation shows the first.
///
/// # Errors
/// For no still, stills without pixels, and stills of different sizes.
pub fn animated_png(stills: &[Still], each_ms: u16) -> Result<Vec<u8>> {
    let refused =
        |e: png::EncodingError| Error::new("picture", e.to_string(), "make it larger");
    let Some(first) = stills.first() else {
        return Err(Error::new(
            "picture",
            "there is nothing to show",
            "give one still at least",
        ));
    };
    let [wide, tall] = first.size;
    if stills.iter().any(|still| still.size != first.size) {
        let what = "its stills differ in size";
        return Err(Error::new("picture", what, "draw them all as large as one another"));
    }
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, wide, tall);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::Balanced);
    encoder.set_animated(stills.len() as u32, 0).map_err(refused)?;
    encoder.set_frame_delay(each_ms, 1000).map_err(refused)?;
    let mut writer = encoder.write_header().map_err(refused)?;
    for still in stills {
        writer.write_image_data(&still.straight()).map_err(refused)?;
    }
    writer.finish().map_err(refused)?;
    Ok(file)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::picture::relief::Seen;

    fn plain(size: [u32; 2], shade: u8) -> Still {
        let many = (size[0] * size[1]) as usize;
        Still { size, pixels: vec![[shade, 0, 0, 255]; many], map: vec![Seen::default(); many] }
    }

    #[test]
    fn every_still_is_one_picture_of_it_in_order() {
        let stills = [plain([4, 3], 10), plain([4, 3], 200), plain([4, 3], 90)];
        let file = animated_png(&stills, 80).expect("a file");
        let mut reader =
            png::Decoder::new(std::io::Cursor::new(&file)).read_info().expect("a picture");
        let control = reader.info().animation_control().expect("it is animated");
        assert_eq!((control.num_frames, control.num_plays), (3, 0));
        for still in &stills {
            let mut pixels = vec![0; 4 * 12];
            reader.next_frame(&mut pixels).expect("a picture");
            assert_eq!(pixels, still.straight());
        }
        assert!(animated_png(&[], 80).is_err());
        assert!(animated_png(&[plain([4, 3], 1), plain([3, 4], 1)], 80).is_err());
    }
}
