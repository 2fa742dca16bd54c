//! A drawn path of an SVG file as an outline.
//!
//! The path is one half of the profile. Its axis is a line of the drawing whose `id` is
//! `axis`; without one, the upright through both ends of the path where they lie above one
//! another, and else the upright through its leftmost or rightmost end, whichever it has. A
//! closed path is the shape seen from the side, its axis the upright through its middle.

use kurbo::{Affine, BezPath, ParamCurve as _, PathEl, Point};
use plumpline_core::outline::{LARGEST_MM, POLE_MM};
use plumpline_core::{Error, Result, Rz};
use roxmltree::{Document, Node, ParsingOptions};

use crate::line::{self, FittedLine};

/// Millimetres of a user unit where the drawing says nothing else: CSS has 96 to the inch.
const USER_MM: f64 = 25.4 / 96.0;
/// Places a curve of the path is sampled at.
const STEPS: u32 = 64;
/// Most segments of a path.
const MOST_SEGMENTS: usize = 20_000;
/// Most nodes of a drawing that is read.
const MOST_NODES: u32 = 200_000;
/// Ends this near one another across the axis, as a share of the size, lie above one another.
const ABOVE: f64 = 0.01;

/// The outline along the first path of the drawing, or the one whose `id` is `profile`. Its
/// height is `height_mm` where that is given, else what the drawing's own units say. The
/// working starts where the path does.
///
/// # Errors
/// One line: what is no SVG, no path, a path that cannot be read (with its place), an axis
/// that is not told, or whatever [`line::fit`] refuses.
pub fn read(text: &str, height_mm: Option<f64>, tolerance_mm: f64) -> Result<FittedLine> {
    let options = ParsingOptions { nodes_limit: MOST_NODES, ..ParsingOptions::default() };
    let drawing = Document::parse_with_options(text, options).map_err(|e| {
        let at = e.pos();
        let what = format!("it is no drawing that can be read ({e})");
        Error::new(format!("line {}, column {}", at.row, at.col), what, "save it anew as SVG")
    })?;
    let root = drawing.root_element();
    if root.tag_name().name() != "svg" {
        return Err(Error::new("drawing", "it is no SVG", "choose an SVG file"));
    }
    let paths = || drawing.descendants().filter(|n| n.tag_name().name() == "path");
    let node = paths()
        .find(|n| n.attribute("id") == Some("profile"))
        .or_else(|| paths().find(|n| n.attribute("id") != Some("axis")))
        .ok_or_else(|| {
            let mend = "draw the profile as one path, from end to end";
            Error::new("drawing", "it has no path", mend)
        })?;
    let path = path(&drawing, node)?;
    let axis = axis(&drawing)?;
    let places = places(&path)?;
    let points = about_the_axis(&places, closed(&path), axis)?;
    let high = |points: &[Rz]| {
        let low = points.iter().fold(f64::INFINITY, |low, p| p.z.min(low));
        points.iter().fold(f64::NEG_INFINITY, |high, p| p.z.max(high)) - low
    };
    let tall = high(&points);
    let scale = match height_mm {
        Some(mm) if tall > 0.0 => mm / tall,
        Some(_) => return Err(Error::new("path", "it has no height", "draw it upright")),
        None => user_mm(root),
    };
    let points = standing(&points, scale);
    if points.iter().any(|p| p.r > LARGEST_MM || p.z.abs() > LARGEST_MM) {
        return Err(Error::new("path", "it is larger than 3 m", "give its height"));
    }
    line::fit(&points, tolerance_mm, 0.0)
}

/// The path of a node with every transform above it.
fn path(drawing: &Document<'_>, node: Node<'_, '_>) -> Result<BezPath> {
    let data = node.attribute("d").unwrap_or_default();
    let at = drawing.text_pos_at(node.range().start);
    let place = format!("line {}, path", at.row);
    let mut path = BezPath::from_svg(data)
        .map_err(|e| Error::new(&place, format!("it cannot be read ({e})"), "draw it anew"))?;
    if path.elements().len() > MOST_SEGMENTS {
        let what = format!("it has more than {MOST_SEGMENTS} pieces");
        return Err(Error::new(&place, what, "simplify it"));
    }
    path.apply_affine(placed(drawing, node)?);
    Ok(path)
}

/// From a node's own coordinates to those of the drawing.
fn placed(drawing: &Document<'_>, node: Node<'_, '_>) -> Result<Affine> {
    let mut all = Affine::IDENTITY;
    for above in node.ancestors().filter(|n| n.is_element()) {
        if let Some(text) = above.attribute("transform") {
            let at = drawing.text_pos_at(above.range().start);
            let unread = || {
                let what = format!("its transform “{text}” is not read");
                Error::new(format!("line {}", at.row), what, "remove it in the drawing program")
            };
            all = transform(text).ok_or_else(unread)? * all;
        }
    }
    Ok(all)
}

/// What a `transform` does: any of its functions, one after another.
fn transform(text: &str) -> Option<Affine> {
    let mut all = Affine::IDENTITY;
    let mut rest = text.trim();
    while !rest.is_empty() {
        let (name, after) = rest.split_once('(')?;
        let (inside, after) = after.split_once(')')?;
        rest = after.trim_start_matches([',', ' ', '\n', '\t', '\r']);
        let numbers = inside.split([',', ' ', '\n', '\t', '\r']).filter(|n| !n.is_empty());
        let v: Vec<f64> = numbers.map(|n| n.parse().ok()).collect::<Option<_>>()?;
        all *= match (name.trim(), v.as_slice()) {
            ("matrix", &[a, b, c, d, e, f]) => Affine::new([a, b, c, d, e, f]),
            ("translate", &[x]) => Affine::translate((x, 0.0)),
            ("translate", &[x, y]) => Affine::translate((x, y)),
            ("scale", &[s]) => Affine::scale(s),
            ("scale", &[x, y]) => Affine::scale_non_uniform(x, y),
            ("rotate", &[turn]) => Affine::rotate(turn.to_radians()),
            ("rotate", &[turn, x, y]) => Affine::rotate_about(turn.to_radians(), (x, y)),
            ("skewX", &[turn]) => Affine::skew(turn.to_radians().tan(), 0.0),
            ("skewY", &[turn]) => Affine::skew(0.0, turn.to_radians().tan()),
            _ => return None,
        };
    }
    all.is_finite().then_some(all)
}

/// The line that is named the axis, if the drawing has one.
fn axis(drawing: &Document<'_>) -> Result<Option<(Point, Point)>> {
    let named = drawing.descendants().find(|n| n.attribute("id") == Some("axis"));
    let Some(node) = named else { return Ok(None) };
    let ends = match node.tag_name().name() {
        "line" => {
            let of = |name: &str| {
                node.attribute(name).and_then(|v| v.trim().parse().ok()).unwrap_or(0.0)
            };
            let place = placed(drawing, node)?;
            Some([("x1", "y1"), ("x2", "y2")].map(|(x, y)| place * Point::new(of(x), of(y))))
        }
        "path" => {
            let path = path(drawing, node)?;
            let first = path.segments().next().map(|s| s.start());
            first.zip(path.segments().last().map(|s| s.end())).map(|(a, b)| [a, b])
        }
        _ => None,
    };
    match ends {
        Some([a, b]) if a.distance(b) > 0.0 && a.is_finite() && b.is_finite() => {
            Ok(Some((a, b)))
        }
        _ => Err(Error::new("axis", "it is no line", "draw it as a straight line")),
    }
}

fn closed(path: &BezPath) -> bool {
    path.elements().iter().any(|e| matches!(e, PathEl::ClosePath))
}

/// Places along the first piece of the path.
fn places(path: &BezPath) -> Result<Vec<Point>> {
    let mut places: Vec<Point> = Vec::new();
    for segment in path.segments() {
        if let Some(last) = places.last()
            && last.distance(segment.start()) > 1e-9
        {
            break; // Another piece of the path begins.
        }
        let straight = matches!(segment, kurbo::PathSeg::Line(_));
        let steps = if straight { 1 } else { STEPS };
        if places.is_empty() {
            places.push(segment.start());
        }
        places.extend((1..=steps).map(|i| segment.eval(f64::from(i) / f64::from(steps))));
    }
    places.dedup_by(|a, b| a.distance(*b) < 1e-12);
    if places.len() < 2 || places.iter().any(|p| !p.is_finite()) {
        return Err(Error::new("path", "it has no length", "draw the profile from end to end"));
    }
    Ok(places)
}

/// The profile about its axis, in units of the drawing.
fn about_the_axis(
    places: &[Point],
    closed: bool,
    axis: Option<(Point, Point)>,
) -> Result<Vec<Rz>> {
    let bounds = places
        .iter()
        .fold(kurbo::Rect::from_points(places[0], places[0]), |bounds, &p| bounds.union_pt(p));
    let (first, last) = (places[0], places[places.len() - 1]);
    let near = ABOVE * bounds.width().max(bounds.height());
    let (from, to) = match axis {
        Some(axis) => axis,
        None => {
            let x = if closed {
                0.5 * (bounds.x0 + bounds.x1)
            } else if (first.x - last.x).abs() <= near {
                0.5 * (first.x + last.x)
            } else if [first, last].iter().any(|p| p.x - bounds.x0 <= near) {
                bounds.x0
            } else if [first, last].iter().any(|p| bounds.x1 - p.x <= near) {
                bounds.x1
            } else {
                let mend = "draw the axis as a line whose id is axis";
                return Err(Error::new("path", "where its axis is cannot be told", mend));
            };
            (Point::new(x, bounds.y0), Point::new(x, bounds.y1.max(bounds.y0 + 1.0)))
        }
    };
    let along = (to - from).normalize();
    let measured: Vec<Rz> =
        places.iter().map(|&p| Rz::new(along.cross(p - from), along.dot(p - from))).collect();
    if closed {
        return side(&measured);
    }
    let (left, right) = measured
        .iter()
        .fold((0.0_f64, 0.0_f64), |(left, right), p| (left.max(p.r), right.max(-p.r)));
    if left.min(right) > near {
        let mend = "draw one half, or the axis as a line whose id is axis";
        return Err(Error::new("path", "it lies on both sides of its axis", mend));
    }
    Ok(measured.into_iter().map(|p| Rz::new(p.r.abs(), p.z)).collect())
}

/// The mean of both sides of a closed path, from its top down.
fn side(around: &[Rz]) -> Result<Vec<Rz>> {
    const ROWS: u32 = 1500;
    let low = around.iter().fold(f64::INFINITY, |low, p| p.z.min(low));
    let high = around.iter().fold(f64::NEG_INFINITY, |high, p| p.z.max(high));
    let mut points = vec![Rz::new(0.0, low)];
    for i in 1..ROWS {
        // Closer together at the ends, which are often round.
        let turn = std::f64::consts::PI * f64::from(i) / f64::from(ROWS);
        let z = low + (high - low) * 0.5 * (1.0 - turn.cos());
        let crossings =
            around.iter().zip(around.iter().cycle().skip(1)).filter_map(|(a, b)| {
                let spans = (a.z <= z) != (b.z <= z);
                spans.then(|| a.r + (z - a.z) / (b.z - a.z) * (b.r - a.r))
            });
        let (left, right) = crossings
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, r), x| (x.min(l), x.max(r)));
        if right > left {
            points.push(Rz::new(0.5 * (right - left), z));
        }
    }
    points.push(Rz::new(0.0, high));
    if points.len() < 10 {
        return Err(Error::new("path", "it encloses nothing", "draw the shape as one path"));
    }
    Ok(points)
}

/// The profile in mm with its start at height 0 and heights growing away from it; ends that
/// all but touch the axis are poles.
fn standing(points: &[Rz], scale: f64) -> Vec<Rz> {
    let (first, last) = (points[0], points[points.len() - 1]);
    let sign = if last.z < first.z { -1.0 } else { 1.0 };
    let widest = points.iter().fold(0.0_f64, |widest, p| p.r.max(widest));
    let pole = (ABOVE * widest * scale).max(POLE_MM);
    let end = points.len() - 1;
    let place = |(i, p): (usize, &Rz)| {
        let r = p.r * scale;
        let at_an_end = i == 0 || i == end;
        Rz::new(if at_an_end && r <= pole { 0.0 } else { r }, sign * (p.z - first.z) * scale)
    };
    points.iter().enumerate().map(place).collect()
}

/// Millimetres of a user unit, by the drawing's width (or height) and its view box.
fn user_mm(root: Node<'_, '_>) -> f64 {
    let unit = |text: &str| -> Option<f64> {
        let text = text.trim();
        let ends = text.find(|c: char| c.is_alphabetic() || c == '%').unwrap_or(text.len());
        let number: f64 = text[..ends].trim().parse().ok()?;
        let mm = match &text[ends..] {
            "mm" => 1.0,
            "cm" => 10.0,
            "in" => 25.4,
            "pt" => 25.4 / 72.0,
            "pc" => 25.4 / 6.0,
            "" | "px" => USER_MM,
            _ => return None,
        };
        Some(number * mm)
    };
    let of_the_box = || {
        let numbers = root.attribute("viewBox")?.split([',', ' ']).filter(|n| !n.is_empty());
        let view: Vec<f64> = numbers.map(|n| n.parse().ok()).collect::<Option<_>>()?;
        let size = |name: &str, i: usize| Some(unit(root.attribute(name)?)? / view.get(i)?);
        size("width", 2).or_else(|| size("height", 3))
    };
    of_the_box().filter(|mm| mm.is_finite() && *mm > 0.0).unwrap_or(USER_MM)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn svg(size: &str, body: &str) -> String {
        format!("<svg xmlns=\"http://www.w3.org/2000/svg\" {size}>{body}</svg>")
    }

    const HALF: &str = "<path d=\"M 50 10 A 40 40 0 0 1 50 90\"/>";

    fn is_a_ball(fitted: &FittedLine, radius: f64) {
        let profile = fitted.outline.profile(400);
        for station in &profile.stations {
            let off = station.at.r.hypot(station.at.z - radius) - radius;
            assert!(off.abs() < 0.15, "{off} at {:?}", station.at);
        }
        assert!(fitted.outline.knots.len() <= 8, "{:?}", fitted.outline);
        assert!(fitted.outline.starts_closed() && fitted.outline.finishes_closed());
    }

    #[test]
    fn a_half_circle_is_a_ball_in_the_units_of_the_drawing() {
        let sizes = "width=\"100mm\" height=\"100mm\" viewBox=\"0 0 100 100\"";
        is_a_ball(&read(&svg(sizes, HALF), None, 0.1).expect("a ball"), 40.0);
        is_a_ball(&read(&svg("", HALF), Some(60.0), 0.1).expect("a ball"), 30.0);
        let in_pixels = read(&svg("", HALF), None, 0.1).expect("a ball");
        let tall = in_pixels.outline.profile(400).height_mm();
        assert!((tall - 80.0 * USER_MM).abs() < 0.1, "{tall}");
    }

    #[test]
    fn transforms_axes_and_closed_paths_are_read() {
        let turned = format!(
            "<g transform=\"translate(3,4) rotate(90 50 50) scale(2)\">{HALF}\
            <line id=\"axis\" x1=\"50\" y1=\"0\" x2=\"50\" y2=\"100\"/></g>"
        );
        is_a_ball(&read(&svg("", &turned), Some(80.0), 0.1).expect("a ball"), 40.0);
        let whole = "<path d=\"M 50 10 A 40 40 0 0 1 50 90 A 40 40 0 0 1 50 10 Z\"/>";
        is_a_ball(&read(&svg("", whole), Some(80.0), 0.1).expect("a ball"), 40.0);
    }

    #[test]
    fn an_open_end_stays_open_and_corners_stay() {
        let cup = "<path d=\"M 0 0 L 30 0 L 40 60\"/>";
        let fitted = read(&svg("", cup), Some(60.0), 0.1).expect("a cup");
        assert!(fitted.outline.starts_closed() && !fitted.outline.finishes_closed());
        assert_eq!(fitted.outline.knots.len(), 3, "{:?}", fitted.outline);
        assert!((fitted.outline.knots[2].radius_mm - 40.0).abs() < 1e-6);
    }

    #[test]
    fn what_cannot_be_read_is_told_in_one_line() {
        let broken = [
            "",
            "<svg",
            "<html/>",
            "<svg xmlns=\"http://www.w3.org/2000/svg\"/>",
            &svg("", "<path d=\"M 0 0 L\"/>"),
            &svg("", "<path d=\"M 0 0\"/>"),
            &svg("", "<path d=\"\"/>"),
            &svg("", "<path transform=\"spin(4)\" d=\"M 0 0 L 9 9\"/>"),
            &svg("", "<path d=\"M 5 0 L 0 5 L 10 7 L 6 20\"/>"),
            &svg("", "<path d=\"M 0 0 L 1e308 1e308 L -1e308 3\"/>"),
            &svg("", "<path d=\"M 0 0 L NaN 4\"/>"),
        ];
        for text in broken {
            let said = read(text, Some(50.0), 0.1).expect_err(text).to_string();
            assert_eq!(said.lines().count(), 1, "{said}");
        }
    }
}
