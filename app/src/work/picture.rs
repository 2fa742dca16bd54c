//! The picture that is traced: chosen, read on a thread, kept as a texture.

use std::path::{Path, PathBuf};

use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use plumpline_core::disk;
use plumpline_core::piece::Picture;
use plumpline_trace::{Photo, picture};

use super::worker::{Newest, Ticket, Voice, Worker};

/// Endings of the files that can be traced.
pub(crate) const ENDINGS: [&str; 4] = ["png", "jpg", "jpeg", "webp"];
/// Longest side it is kept with, pixels: more than a board shows, and every screen takes it.
const KEPT_SIDE: u32 = 2048;

/// A picture to read: its path as the piece names it, and the folder it may count from.
#[derive(Debug, Clone, PartialEq, Eq)]
struct PictureWish {
    path: String,
    folder: Option<PathBuf>,
}

type Read = Result<ColorImage, String>;

/// How far the picture of the selected piece has been read.
pub struct Tracing {
    worker: Worker<Newest<PictureWish>, Read>,
    wanted: Option<PictureWish>,
    awaited: Option<Ticket>,
    read: Option<Result<TextureHandle, String>>,
}

impl Default for Tracing {
    fn default() -> Self {
        let work = || {
            |wish: PictureWish, voice: &Voice<'_, Newest<PictureWish>, Read>| {
                voice.say(read(&found(Path::new(&wish.path), wish.folder.as_deref())));
            }
        };
        Self { worker: Worker::new("picture", work), wanted: None, awaited: None, read: None }
    }
}

impl std::fmt::Debug for Tracing {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let read = self.read.as_ref().map(|r| r.as_ref().map(TextureHandle::size));
        f.debug_struct("Tracing").field("wanted", &self.wanted).field("read", &read).finish()
    }
}

impl Tracing {
    /// Reads the picture the selected piece names, unless it has been; takes what is read.
    /// Returns why it cannot be shown, when that has just come out.
    pub fn update(
        &mut self,
        ctx: &Context,
        picture: Option<&Picture>,
        project: Option<&Path>,
    ) -> Option<String> {
        let folder = project.and_then(Path::parent).map(Path::to_owned);
        let wanted = picture.map(|p| PictureWish { path: p.path.clone(), folder });
        if wanted != self.wanted {
            self.read = None;
            self.awaited = wanted.clone().map(|wish| self.worker.ask(ctx, wish));
            self.wanted = wanted;
        }
        let heard = self.worker.hear()?;
        let is_last = self.awaited.take_if(|ticket| *ticket == heard.to).is_some();
        let read = match heard.answer {
            Ok(_) if !is_last => return None, // The piece is another by now.
            Ok(read) => read,
            Err(broken) => Err(say!(
                "trouble-the-picture-could-not-be-read-broken",
                broken = broken.to_string()
            )),
        };
        if !is_last {
            return read.err();
        }
        let load = |image| ctx.load_texture("traced picture", image, TextureOptions::LINEAR);
        self.read = Some(read.map(load));
        self.error().map(str::to_owned)
    }

    /// The picture, once it is read.
    pub fn texture(&self) -> Option<&TextureHandle> {
        self.read.as_ref()?.as_ref().ok()
    }

    /// Its height over its width, once it is read.
    pub fn aspect(&self) -> Option<f64> {
        let [width, height] = self.texture()?.size();
        Some(height as f64 / width.max(1) as f64)
    }

    /// Why it cannot be shown, in one line.
    pub fn error(&self) -> Option<&str> {
        self.read.as_ref()?.as_ref().err().map(String::as_str)
    }
}

/// Where the file is: where the project says, counted from the project's folder, or else of
/// the same name beside the project, where it travels along. What names another machine is
/// looked for beside the project alone: to open somebody's file must call nobody.
pub(super) fn found(path: &Path, folder: Option<&Path>) -> PathBuf {
    let own = own_name(path);
    let calls = names_another_machine(path);
    let Some(folder) = folder else {
        return if calls { own.into() } else { path.to_owned() };
    };
    let beside = (!own.is_empty()).then(|| folder.join(&own));
    if calls {
        return beside.unwrap_or_else(|| folder.to_owned());
    }
    let named = folder.join(path);
    match beside {
        Some(beside) if !named.exists() && beside.exists() => beside,
        _ => named,
    }
}

/// The last part of a path of whatever system.
pub(crate) fn own_name(path: &Path) -> String {
    let text = path.to_string_lossy();
    text.rsplit(['/', '\\']).next().unwrap_or_default().to_owned()
}

/// Whether some system takes `path` for a place on another machine: a share or an address.
fn names_another_machine(path: &Path) -> bool {
    let text = path.to_string_lossy();
    let slash = |c: Option<char>| matches!(c, Some('/' | '\\'));
    let mut chars = text.chars();
    (slash(chars.next()) && slash(chars.next())) || text.contains("://")
}

/// A line about a file: which, what, the mend.
pub(crate) fn line(path: &Path, what: &str, mend: &str) -> String {
    // What decoders say may run over several lines.
    let what: Vec<&str> = what.split_whitespace().collect();
    format!("{}: {}; {mend}", path.display(), what.join(" "))
}

/// What `take` makes of the bytes of the file at `path`.
fn of_file<T>(
    path: &Path,
    take: impl FnOnce(&[u8]) -> plumpline_core::Result<T>,
) -> Result<T, String> {
    let bytes = disk::read(path, disk::LARGEST_PICTURE).map_err(|e| e.to_string())?;
    take(&bytes).map_err(|e| line(path, &e.what, &e.mend))
}

/// Width and height of the picture at `path` as it is seen, pixels.
///
/// # Errors
/// One line: the file, what is wrong with it, the mend.
pub(crate) fn size(path: &Path) -> Result<(u32, u32), String> {
    of_file(path, picture::size)
}

/// The picture at `path`, ready to be traced.
///
/// # Errors
/// One line: the file, what is wrong with it, the mend.
pub(crate) fn photo(path: &Path) -> Result<Photo, String> {
    of_file(path, Photo::decode)
}

/// The picture at `path`, upright and no larger than it can be shown.
fn read(path: &Path) -> Result<ColorImage, String> {
    let image = of_file(path, |bytes| picture::to_show(bytes, KEPT_SIDE))?;
    let size = [image.width() as usize, image.height() as usize];
    Ok(ColorImage::from_rgba_unmultiplied(size, image.as_raw()))
}

/// The picture at `path` as a PNG, no larger than it can be shown, with lines over it and
/// dots at places; both in pixels of the picture as it is seen.
///
/// # Errors
/// One line: the file, what is wrong with it, the mend.
pub(crate) fn laid_over(
    path: &Path,
    lines: &[Vec<(f64, f64)>],
    dots: &[(f64, f64)],
) -> Result<Vec<u8>, String> {
    use resvg::tiny_skia::{Color, FillRule, Paint, PathBuilder, Pixmap, Stroke, Transform};
    let (width, _) = size(path)?;
    let image = read(path)?;
    let [wide, high] = image.size.map(|side| side as u32);
    let no_picture =
        || line(path, say!("trouble-it-cannot-be-shown"), say!("trouble-choose-another"));
    let mut over = Pixmap::new(wide, high).ok_or_else(no_picture)?;
    for (to, from) in over.pixels_mut().iter_mut().zip(&image.pixels) {
        let [r, g, b, a] = from.to_array();
        // The colours are multiplied by their opacity already.
        let drawn = resvg::tiny_skia::PremultipliedColorU8::from_rgba(r, g, b, a);
        *to = drawn.ok_or_else(no_picture)?;
    }
    let scale = wide as f32 / width.max(1) as f32;
    let shown = |(x, y): (f64, f64)| (x as f32 * scale, y as f32 * scale);
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    let mut builder = PathBuilder::new();
    for points in lines {
        for (i, &point) in points.iter().enumerate() {
            let (x, y) = shown(point);
            if i == 0 { builder.move_to(x, y) } else { builder.line_to(x, y) }
        }
    }
    let thick = (wide.max(high) as f32 / 400.0).max(1.5);
    if let Some(drawn) = builder.finish() {
        // Dark beneath light, so that it is seen on any picture.
        for (width, grey) in [(2.2 * thick, 0), (thick, 255)] {
            paint.set_color(Color::from_rgba8(grey, grey, grey, 255));
            let stroke = Stroke { width, ..Stroke::default() };
            over.stroke_path(&drawn, &paint, &stroke, Transform::identity(), None);
        }
    }
    for &dot in dots {
        let (x, y) = shown(dot);
        for (radius, grey) in [(3.0 * thick, 0), (2.0 * thick, 255)] {
            paint.set_color(Color::from_rgba8(grey, grey, grey, 255));
            if let Some(circle) = PathBuilder::from_circle(x, y, radius) {
                over.fill_path(&circle, &paint, FillRule::Winding, Transform::identity(), None);
            }
        }
    }
    over.encode_png().map_err(|_| no_picture())
}

/// Whether a file's name is that of a picture.
pub(crate) fn is_picture(path: &Path) -> bool {
    let ending = path.extension().and_then(|e| e.to_str()).map(str::to_lowercase);
    ending.is_some_and(|e| ENDINGS.contains(&e.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn saved(folder: &Path, name: &str, width: u32, height: u32) -> PathBuf {
        let path = folder.join(name);
        let image = image::RgbImage::from_fn(width, height, |x, y| {
            image::Rgb([(x % 256) as u8, (y % 256) as u8, 90])
        });
        image.save(&path).expect("a picture is written");
        path
    }

    #[test]
    fn pictures_are_read_upright_and_no_larger_than_shown() {
        let folder = tempfile::tempdir().expect("a folder");
        for name in ["a.png", "a.jpg", "a.webp"] {
            let path = saved(folder.path(), name, 60, 90);
            assert_eq!(size(&path), Ok((60, 90)), "{name}");
            assert_eq!(read(&path).expect(name).size, [60, 90]);
        }
        let path = saved(folder.path(), "long.png", 4096, 64);
        assert_eq!(size(&path), Ok((4096, 64)));
        assert_eq!(read(&path).expect("it is read").size, [2048, 32]);
    }

    #[test]
    fn what_is_no_picture_is_told_in_one_line() {
        let folder = tempfile::tempdir().expect("a folder");
        let write = |name: &str, bytes: &[u8]| {
            let path = folder.path().join(name);
            std::fs::write(&path, bytes).expect("written");
            path
        };
        let whole = std::fs::read(saved(folder.path(), "whole.png", 40, 40)).expect("read");
        let broken = [
            folder.path().join("none.png"),
            folder.path().to_owned(),
            write("text.png", b"not a picture"),
            write("empty.jpg", b""),
            write("cut.png", &whole[..whole.len() / 2]),
            write("drawing.svg", b"<svg/>"),
        ];
        for path in broken {
            let error = read(&path).expect_err("no picture");
            assert_eq!(error.lines().count(), 1, "{error}");
            assert!(error.starts_with(&path.display().to_string()), "{error}");
            assert!(error.contains("; "), "it names a mend: {error}");
        }
        let wide = saved(folder.path(), "wide.png", picture::LONGEST_SIDE + 1, 1);
        assert!(size(&wide).is_err_and(|said| said.contains("at most")));
    }

    #[test]
    fn a_picture_that_moved_is_looked_for_beside_the_project() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = saved(folder.path(), "pear.png", 8, 8);
        let gone = Path::new("/nowhere/at/all/pear.png");
        assert_eq!(found(gone, Some(folder.path())), path);
        assert_eq!(found(Path::new("pear.png"), Some(folder.path())), path);
        assert_eq!(found(gone, None), gone);
    }
}
