//! Photo files of every kind: each gives a result or one clear line.

use std::io::Cursor;

use image::{DynamicImage, ImageFormat, Rgb, Rgba};
use plumpline_trace::{
    Doubt, Halt, Photo, Scale, Stroke, Trace, TraceGround, TraceWish, picture, trace,
};

fn traced(file: &[u8], wish: &TraceWish) -> Result<Trace, Halt> {
    trace(&Photo::decode(file)?, wish, &|_| true)
}

/// An egg 80 pixels high and 48 wide on a picture of 96 × 128.
fn is_the_egg(file: &[u8], name: &str) {
    let traced =
        traced(file, &TraceWish::of_height(80.0)).unwrap_or_else(|e| panic!("{name}: {e}"));
    let wide = traced.report.width_mm;
    assert!((wide - 48.0).abs() < 1.5, "{name}: {wide} mm wide");
    assert!(traced.report.symmetry > 0.97, "{name}: {}", traced.report.symmetry);
    assert!(traced.report.tilt_degrees.abs() < 2.0, "{name}: {}", traced.report.tilt_degrees);
    assert_eq!(traced.report.doubts, vec![], "{name}");
}

fn said(file: &[u8]) -> String {
    let line = traced(file, &TraceWish::of_height(80.0)).expect_err("refused").to_string();
    assert_eq!(line.lines().count(), 1, "{line}");
    assert!(line.starts_with("picture: ") && line.contains("; "), "{line}");
    line
}

fn written(image: &DynamicImage, format: ImageFormat) -> Vec<u8> {
    let mut file = Cursor::new(Vec::new());
    image.write_to(&mut file, format).expect("written");
    file.into_inner()
}

fn on_egg(x: u32, y: u32) -> bool {
    let (u, v) = ((f64::from(x) + 0.5 - 48.0) / 24.0, (f64::from(y) + 0.5 - 64.0) / 40.0);
    u * u + v * v < 1.0
}

#[test]
fn pictures_of_every_kind_are_traced() {
    is_the_egg(include_bytes!("pictures/cmyk.jpg"), "CMYK");
    is_the_egg(include_bytes!("pictures/animated.webp"), "the first frame of a WebP");
    is_the_egg(include_bytes!("pictures/animated.png"), "the first frame of a PNG");
    is_the_egg(include_bytes!("pictures/sideways.jpg"), "lying on its side");
    let deep = image::ImageBuffer::from_fn(96, 128, |x, y| {
        if on_egg(x, y) { Rgb([9000_u16, 40000, 12000]) } else { Rgb([60000, 59000, 60500]) }
    });
    is_the_egg(&written(&DynamicImage::ImageRgb16(deep), ImageFormat::Png), "16 bits");
    let grey = image::GrayImage::from_fn(96, 128, |x, y| {
        image::Luma([if on_egg(x, y) { 40 } else { 220 }])
    });
    is_the_egg(&written(&DynamicImage::ImageLuma8(grey), ImageFormat::Png), "grey");
    let clear = image::RgbaImage::from_fn(96, 128, |x, y| {
        // What shines through is of many colours, and clear.
        let a = if on_egg(x, y) { 255 } else { 0 };
        Rgba([(7 * x) as u8, (11 * y) as u8, (3 * x * y) as u8, a])
    });
    is_the_egg(&written(&DynamicImage::ImageRgba8(clear), ImageFormat::Png), "cut out");
}

#[test]
fn what_cannot_be_traced_is_told_in_one_line() {
    assert!(said(b"").contains("empty"));
    assert!(said(b"not a picture").contains("no picture"));
    assert!(said(include_bytes!("pictures/animated.gif")).contains("GIF"));
    let whole = include_bytes!("pictures/animated.png");
    said(&whole[..whole.len() / 3]);
    let jpeg = include_bytes!("pictures/cmyk.jpg");
    said(&jpeg[..40]);
    let plain = |width, height| {
        let image = image::RgbImage::from_pixel(width, height, Rgb([90, 120, 200]));
        written(&DynamicImage::ImageRgb8(image), ImageFormat::Png)
    };
    assert!(said(&plain(200, 300)).contains("nothing in it stands out"));
    assert!(said(&plain(9, 300)).contains("9 × 300"));
    assert!(said(&plain(plumpline_trace::picture::LONGEST_SIDE + 1, 20)).contains("at most"));
}

/// A kilobyte that claims to be as large as that.
fn claiming(width: u32, height: u32) -> Vec<u8> {
    fn chunk(out: &mut Vec<u8>, kind: &[u8; 4], data: &[u8]) {
        out.extend((data.len() as u32).to_be_bytes());
        out.extend(kind);
        out.extend(data);
        let mut crc = u32::MAX;
        for &byte in kind.iter().chain(data) {
            crc ^= u32::from(byte);
            for _ in 0..8 {
                crc = if crc & 1 == 1 { (crc >> 1) ^ 0xedb8_8320 } else { crc >> 1 };
            }
        }
        out.extend((!crc).to_be_bytes());
    }
    let mut out = b"\x89PNG\r\n\x1a\n".to_vec();
    let mut header = width.to_be_bytes().to_vec();
    header.extend(height.to_be_bytes());
    header.extend([8, 6, 0, 0, 0]);
    chunk(&mut out, b"IHDR", &header);
    chunk(&mut out, b"IDAT", &[0x5a; 900]);
    chunk(&mut out, b"IEND", &[]);
    out
}

#[test]
fn a_lying_size_is_refused_before_its_memory_is_taken() {
    // 30,000 × 30,000 pixels would be 3.6 GB, and 9000 × 9000 are within the bounds of size.
    assert!(said(&claiming(30_000, 30_000)).contains("at most"));
    assert!(said(&claiming(9000, 9000)).contains("holds none of them"));
    assert!(said(&claiming(u32::MAX >> 1, u32::MAX >> 1)).contains("picture"));
    said(&claiming(0, 0));
}

#[test]
fn slender_pictures_are_refused_and_none_is_too_small_to_look_at() {
    for (width, height) in [(16_000, 16), (16, 9000)] {
        let image = image::GrayImage::from_fn(width, height, |x, y| {
            image::Luma([if x * height / width == y { 20 } else { 220 }])
        });
        let file = written(&DynamicImage::ImageLuma8(image), ImageFormat::Png);
        assert!(said(&file).contains("too slender"));
    }
}

#[test]
fn a_picture_is_shown_upright_and_no_larger_than_asked() {
    let file = include_bytes!("pictures/sideways.jpg");
    assert_eq!(picture::size(file), Ok((96, 128)));
    for (longest, shown) in [(500, (96, 128)), (64, (48, 64))] {
        let image = picture::to_show(file, longest).expect("a picture");
        assert_eq!(image.dimensions(), shown);
        let [wide, high] = [image.width(), image.height()];
        assert!(image.get_pixel(wide / 2, high / 2).0[0] < image.get_pixel(1, 1).0[0]);
    }
    assert!(picture::size(&claiming(30_000, 30_000)).is_err());
    assert!(picture::to_show(&claiming(9000, 9000), 100).is_err());
}

/// Photographs and drawings of things that are not turned: none goes without a word.
#[test]
fn a_horse_and_a_cup_from_above_are_told_of() {
    let horse = include_bytes!("pictures/horse.png");
    if let Ok(traced) = traced(horse, &TraceWish::of_height(80.0)) {
        let report = traced.report;
        assert!(report.symmetry < 0.9 && !report.doubts.is_empty(), "{:?}", report.doubts);
    }
    let cup = include_bytes!("pictures/coffee.jpg");
    assert!(said(cup).contains("draw a rectangle"), "it stands on wood");
    // The saucer by itself, which is seen from above: an ellipse within the rectangle.
    let wish = TraceWish {
        ground: TraceGround::Marked {
            frame: Some([(36.0, 6.0), (294.0, 240.0)]),
            strokes: vec![Stroke {
                thing: true,
                points: vec![(70.0, 150.0), (120.0, 205.0), (200.0, 215.0), (265.0, 160.0)],
                radius: 8.0,
            }],
        },
        ..TraceWish::of_height(80.0)
    };
    let report = traced(cup, &wish).expect("traced").report;
    assert!(report.doubts.contains(&Doubt::CutByThePicture), "{:?}", report.doubts);
}

/// Many colours everywhere, the egg of another few.
fn busy() -> Vec<u8> {
    let image = image::RgbImage::from_fn(192, 256, |x, y| {
        let noise = ((x * 7919 + y * 104_729) ^ (x * y)) % 40;
        let tile = (x / 24 + y / 24) % 3;
        let n = noise as u8;
        if on_egg(x / 2, y / 2) {
            Rgb([200 + n / 2, 90 + n, 40])
        } else {
            [Rgb([30 + n, 60, 120 + n]), Rgb([90, 140 + n, 90]), Rgb([60, 60 + n, 60])]
                [tile as usize]
        }
    });
    written(&DynamicImage::ImageRgb8(image), ImageFormat::Png)
}

#[test]
fn a_busy_background_wants_a_rectangle_or_strokes() {
    let file = busy();
    assert!(said(&file).contains("draw a rectangle"));
    let stroke = |thing, points| Stroke { thing, points, radius: 6.0 };
    let rectangle = Some([(38.0, 38.0), (154.0, 218.0)]);
    let strokes = vec![
        stroke(true, vec![(96.0, 80.0), (96.0, 180.0)]),
        stroke(false, vec![(10.0, 10.0), (180.0, 10.0), (180.0, 245.0), (10.0, 245.0)]),
    ];
    for (frame, strokes) in
        [(rectangle, vec![]), (None, strokes.clone()), (rectangle, strokes.clone())]
    {
        let wish = TraceWish {
            ground: TraceGround::Marked { frame, strokes },
            ..TraceWish::of_height(80.0)
        };
        let traced = traced(&file, &wish).expect("traced");
        let wide = traced.report.width_mm;
        assert!((wide - 48.0).abs() < 1.5, "{wide} mm wide");
        assert!(traced.report.doubts.is_empty(), "{:?}", traced.report.doubts);
    }
}

#[test]
fn marks_that_cannot_be_are_refused_or_do_no_harm() {
    let file = busy();
    let marked = |frame, strokes| TraceWish {
        ground: TraceGround::Marked { frame, strokes },
        ..TraceWish::of_height(80.0)
    };
    let far = 1e300;
    let line = |points: Vec<(f64, f64)>, thing| vec![Stroke { thing, points, radius: far }];
    let wishes = [
        marked(Some([(0.0, 0.0), (192.0, 256.0)]), vec![]),
        marked(Some([(f64::NAN, 0.0), (5.0, f64::INFINITY)]), vec![]),
        marked(Some([(50.0, 50.0), (50.0, 50.0)]), vec![]),
        marked(None, line(vec![(0.0, 0.0)], false)),
        marked(None, line(vec![(far, -far), (f64::NAN, 3.0)], true)),
        marked(None, line(vec![], true)),
    ];
    for wish in wishes {
        if let Err(halt) = traced(&file, &wish) {
            assert_eq!(halt.to_string().lines().count(), 1, "{halt}");
        }
    }
}

#[test]
fn wishes_that_cannot_be_are_refused() {
    let file = include_bytes!("pictures/animated.png");
    let height = TraceWish::of_height(80.0);
    let known = |to, mm| TraceWish {
        scale: Scale::Known { from: (10.0, 10.0), to, mm },
        ..height.clone()
    };
    for wish in [
        TraceWish::of_height(f64::NAN),
        TraceWish::of_height(0.0),
        TraceWish::of_height(1e9),
        TraceWish { tolerance_mm: Some(-1.0), ..height.clone() },
        known((10.0, 10.0), 5.0),
        known((f64::NAN, 10.0), 5.0),
        known((12.0, 10.0), 3000.0),
    ] {
        let halt = traced(file, &wish).expect_err("refused");
        assert!(matches!(halt, Halt::Refused(_)), "{wish:?}");
    }
    let traced = traced(file, &known((10.0, 90.0), 40.0)).expect("traced");
    assert!((traced.report.height_mm - 40.5).abs() < 1.0);
}

#[test]
fn work_stops_wherever_it_is_told_to() {
    let picture = Photo::decode(include_bytes!("pictures/animated.png")).expect("a picture");
    let steps = std::cell::Cell::new(0);
    let count = |_: f32| {
        steps.set(steps.get() + 1);
        true
    };
    trace(&picture, &TraceWish::of_height(80.0), &count).expect("traced");
    for stop in 0..steps.get() {
        let left = std::cell::Cell::new(stop);
        let until = |share: f32| {
            assert!((0.0..=1.0).contains(&share));
            left.set(left.get() - 1);
            left.get() >= 0
        };
        let halt = trace(&picture, &TraceWish::of_height(80.0), &until).expect_err("stopped");
        assert_eq!(halt, Halt::Stopped, "after {stop}");
    }
}
