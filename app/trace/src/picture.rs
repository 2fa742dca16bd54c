//! A picture file as pixels: read within limits, upright, and reduced to what tracing needs.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits, imageops};
use plumpline_core::{Error, Result};

/// Longest side of a picture that is read, pixels.
pub const LONGEST_SIDE: u32 = 16_384;
/// Shortest side of a picture that can be traced, pixels.
pub const SHORTEST_SIDE: u32 = 16;
/// Most memory one picture may take while it is read, bytes.
const MOST_MEMORY: u64 = 512 << 20;
/// No file is packed more tightly than this: what claims to be is not believed.
const TIGHTEST: u64 = 4096;
/// Below this a claim costs too little to be doubted, bytes.
const TRIFLE: u64 = 16 << 20;
/// Longest side tracing works on, pixels: edges are found to half a pixel, which is then a
/// twentieth of a percent.
const WORK_SIDE: u32 = 1000;
/// Pictures smaller than this are enlarged to it, so that edges fall between their pixels.
const LEAST_WORK_SIDE: u32 = 700;

/// A picture as it is seen, reduced (or enlarged) for work.
#[derive(Debug, Clone)]
pub struct Photo {
    /// Size of the whole picture as it is seen, pixels.
    pub size: (u32, u32),
    /// What is worked on.
    pub(crate) raster: Raster,
}

/// Colours and opacity, row by row from the upper left.
#[derive(Debug, Clone)]
pub(crate) struct Raster {
    pub(crate) width: usize,
    pub(crate) height: usize,
    /// Red, green and blue, 0 … 255, laid on white where the picture is clear.
    pub(crate) colours: Vec<[f32; 3]>,
    /// Opacity, where the picture has any that is not full.
    pub(crate) opacity: Option<Vec<u8>>,
    /// How many of its pixels one of the picture has become; at least 1.
    pub(crate) enlarged: f32,
}

impl Raster {
    /// Width and height, pixels.
    pub(crate) fn size(&self) -> (usize, usize) {
        (self.width, self.height)
    }
}

impl Photo {
    /// The picture in a file's `bytes`: PNG, JPEG or WebP, of an animated one its first frame.
    ///
    /// # Errors
    /// One line for what is no such picture, is broken, is too small to trace, or claims more
    /// pixels than are read: that is found out before their memory is taken.
    pub fn decode(bytes: &[u8]) -> Result<Self> {
        let Opened { decoder, orientation } = opened(bytes)?;
        let image = DynamicImage::from_decoder(decoder).map_err(unreadable)?;
        let (width, height) = (image.width(), image.height());
        if width.min(height) < SHORTEST_SIDE {
            let what = format!("it is {width} × {height} pixels");
            let mend = format!("choose one of at least {SHORTEST_SIDE} a side");
            return Err(Error::new("picture", what, mend));
        }
        let mut small = at_work_size(image);
        if small.width().min(small.height()) < SHORTEST_SIDE {
            let what = format!("it is {width} × {height} pixels, which is too slender");
            return Err(Error::new("picture", what, "leave more around the thing"));
        }
        small.apply_orientation(orientation);
        let size = seen((width, height), orientation);
        Ok(Self { size, raster: raster(&small.into_rgba8(), size) })
    }

    /// The picture of so many pixels, each red, green, blue and opacity.
    ///
    /// # Errors
    /// One line where the number of bytes is not four a pixel, or a side is too short.
    pub fn from_rgba(width: u32, height: u32, pixels: Vec<u8>) -> Result<Self> {
        let whole = image::RgbaImage::from_raw(width, height, pixels)
            .filter(|_| width.min(height) >= SHORTEST_SIDE)
            .ok_or_else(|| Error::new("picture", "its pixels are none", "choose another"))?;
        let small = at_work_size(DynamicImage::ImageRgba8(whole));
        let size = (width, height);
        Ok(Self { size, raster: raster(&small.into_rgba8(), size) })
    }

    /// Pixels of the whole picture to one that is worked on.
    pub(crate) fn reduction(&self) -> f64 {
        f64::from(self.size.0.max(self.size.1))
            / self.raster.width.max(self.raster.height) as f64
    }
}

/// Width and height of the picture in a file's `bytes` as it is seen, pixels; its pixels are
/// not read.
///
/// # Errors
/// As [`Photo::decode`].
pub fn size(bytes: &[u8]) -> Result<(u32, u32)> {
    let Opened { decoder, orientation } = opened(bytes)?;
    Ok(seen(decoder.dimensions(), orientation))
}

/// The picture in a file's `bytes` to be shown: upright, and reduced so that no side is longer
/// than `longest` pixels.
///
/// # Errors
/// As [`Photo::decode`].
pub fn to_show(bytes: &[u8], longest: u32) -> Result<image::RgbaImage> {
    let Opened { decoder, orientation } = opened(bytes)?;
    let mut image = DynamicImage::from_decoder(decoder).map_err(unreadable)?;
    if image.width().max(image.height()) > longest {
        image = image.thumbnail(longest, longest);
    }
    image.apply_orientation(orientation);
    Ok(image.into_rgba8())
}

/// A picture as a file to be printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintFile {
    /// A JPEG, or a PNG where some of it is clear.
    pub bytes: Vec<u8>,
    /// Width and height, pixels.
    pub size: [u32; 2],
}

/// How closely a photograph is kept, of 100: at this its file is a tenth of its pixels, and on
/// paper nobody tells the two apart.
const QUALITY: u8 = 84;

/// The picture in a file's `bytes` to be printed: upright, and no side longer than `longest`
/// pixels. Whatever else stood in the file, such as where it was taken, is left behind.
///
/// # Errors
/// As [`Photo::decode`].
pub fn to_print(bytes: &[u8], longest: u32) -> Result<PrintFile> {
    let Opened { decoder, orientation } = opened(bytes)?;
    let mut image = DynamicImage::from_decoder(decoder).map_err(unreadable)?;
    if image.width().max(image.height()) > longest {
        image = image.resize(longest, longest, imageops::FilterType::Triangle);
    }
    image.apply_orientation(orientation);
    let size = [image.width(), image.height()];
    let rgba = image.into_rgba8();
    let mut file = Cursor::new(Vec::new());
    let clear = rgba.pixels().any(|pixel| pixel.0[3] < 255);
    let written = match clear {
        true => rgba.write_to(&mut file, ImageFormat::Png),
        false => {
            let opaque = DynamicImage::ImageRgba8(rgba).into_rgb8();
            opaque.write_with_encoder(JpegEncoder::new_with_quality(&mut file, QUALITY))
        }
    };
    written.map_err(unreadable)?;
    Ok(PrintFile { bytes: file.into_inner(), size })
}

/// The size of a picture as it is seen.
fn seen((width, height): (u32, u32), orientation: Orientation) -> (u32, u32) {
    use Orientation::{Rotate90, Rotate90FlipH, Rotate270, Rotate270FlipH};
    let lies = matches!(orientation, Rotate90 | Rotate270 | Rotate90FlipH | Rotate270FlipH);
    if lies { (height, width) } else { (width, height) }
}

/// A picture file of which no pixel has been read yet.
struct Opened<D> {
    decoder: D,
    /// How the picture is turned.
    orientation: Orientation,
}

/// The picture file in `bytes`, if it is one within limits.
fn opened(bytes: &[u8]) -> Result<Opened<impl ImageDecoder>> {
    let no_picture =
        |what: &str| Error::new("picture", what, "choose a PNG, JPEG or WebP file");
    if bytes.is_empty() {
        return Err(no_picture("the file is empty"));
    }
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|e| no_picture(&format!("it cannot be read ({e})")))?;
    match reader.format() {
        Some(ImageFormat::Png | ImageFormat::Jpeg | ImageFormat::WebP) => {}
        Some(other) => {
            let name = other.extensions_str().first().map_or("other", |e| e).to_uppercase();
            return Err(no_picture(&format!("it is a {name} file, which is not read")));
        }
        None => return Err(no_picture("it is no picture that is known")),
    }
    let mut limits = Limits::default();
    limits.max_image_width = Some(LONGEST_SIDE);
    limits.max_image_height = Some(LONGEST_SIDE);
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(unreadable)?;
    let (width, height) = decoder.dimensions();
    let claimed = decoder.total_bytes();
    if width.max(height) > LONGEST_SIDE || claimed > MOST_MEMORY {
        let what = format!("it is {width} × {height} pixels, which is more than is read");
        return Err(Error::new("picture", what, smaller()));
    }
    if claimed > TRIFLE && claimed / TIGHTEST > bytes.len() as u64 {
        let what = format!("it claims {width} × {height} pixels and holds none of them");
        return Err(Error::new("picture", what, "save it anew or choose another"));
    }
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    Ok(Opened { decoder, orientation })
}

/// What can be done about too many pixels.
fn smaller() -> String {
    let millions = MOST_MEMORY / 4_000_000;
    format!(
        "make it smaller: at most {LONGEST_SIDE} pixels a side and {millions} million in all"
    )
}

fn unreadable(error: image::ImageError) -> Error {
    match error {
        image::ImageError::Limits(_) => {
            Error::new("picture", "it has more pixels than are read", smaller())
        }
        error => {
            // What decoders say may run over several lines.
            let text = error.to_string();
            let said: Vec<&str> = text.split_whitespace().collect();
            let what = format!("it is broken ({})", said.join(" "));
            Error::new("picture", what, "save it anew or choose another")
        }
    }
}

/// The same picture at the size it is worked on.
fn at_work_size(image: DynamicImage) -> DynamicImage {
    let longest = image.width().max(image.height());
    if longest > WORK_SIDE {
        image.thumbnail(WORK_SIDE, WORK_SIDE)
    } else if longest < LEAST_WORK_SIDE {
        image.resize(LEAST_WORK_SIDE, LEAST_WORK_SIDE, imageops::FilterType::Triangle)
    } else {
        image
    }
}

fn raster(image: &image::RgbaImage, whole: (u32, u32)) -> Raster {
    let on_white = |p: &image::Rgba<u8>| {
        let [r, g, b, a] = p.0.map(f32::from);
        [r, g, b].map(|c| 255.0 + (c - 255.0) * a / 255.0)
    };
    let colours = image.pixels().map(on_white).collect();
    let clear = image.pixels().any(|p| p.0[3] < 250);
    let opacity = clear.then(|| image.pixels().map(|p| p.0[3]).collect());
    Raster {
        width: image.width() as usize,
        height: image.height() as usize,
        colours,
        opacity,
        enlarged: (image.height() as f32 / whole.1.max(1) as f32).max(1.0),
    }
}
