//! A drawing: lines, ovals and words in millimetres on paper, for pictures that are read
//! rather than looked at.

use super::{Rgb, Writing};

/// What a line is drawn with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pen {
    /// Its colour.
    pub colour: Rgb,
    /// Its width, mm.
    pub width: f32,
    /// Length of a dash and of the gap after it, mm; none for an unbroken line.
    pub dash: Option<f32>,
}

impl Pen {
    /// An unbroken line.
    pub fn new(colour: Rgb, width: f32) -> Self {
        Self { colour, width, dash: None }
    }

    /// The same line in dashes.
    #[must_use]
    pub fn dashed(self, dash: f32) -> Self {
        Self { dash: Some(dash), ..self }
    }
}

/// One thing drawn. Places are mm, y down.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A line through places, or an area where it has a fill.
    Path {
        /// The places.
        points: Vec<[f32; 2]>,
        /// Whether it returns to its first place.
        closed: bool,
        /// What fills it.
        fill: Option<Rgb>,
        /// What draws its edge.
        pen: Option<Pen>,
    },
    /// An ellipse.
    Oval {
        /// Its middle.
        middle: [f32; 2],
        /// Half its width and half its height before it is turned.
        radii: [f32; 2],
        /// How far it is turned, degrees, clockwise on paper.
        turn_deg: f32,
        /// What fills it.
        fill: Option<Rgb>,
        /// What draws its edge.
        pen: Option<Pen>,
    },
    /// Words.
    Words {
        /// The words and the place of their middle, or of the middle of their start.
        writing: Writing,
        /// Whether they stand out.
        bold: bool,
        /// Whether they begin at their place rather than lie around it.
        from_start: bool,
    },
}

/// Shapes from back to front.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Drawing {
    /// The shapes.
    pub shapes: Vec<Shape>,
}

/// Width of a character of the sheet's face against its height, on average.
const CHARACTER: f32 = 0.54;

/// Width that words take, about, for type of this height.
pub(crate) fn width_of(text: &str, height: f32) -> f32 {
    CHARACTER * height * text.chars().count() as f32
}

impl Drawing {
    pub(crate) fn line(&mut self, points: impl Into<Vec<[f32; 2]>>, pen: Pen) {
        let points = points.into();
        self.shapes.push(Shape::Path { points, closed: false, fill: None, pen: Some(pen) });
    }

    pub(crate) fn area(
        &mut self,
        points: impl Into<Vec<[f32; 2]>>,
        fill: Option<Rgb>,
        pen: Option<Pen>,
    ) {
        self.shapes.push(Shape::Path { points: points.into(), closed: true, fill, pen });
    }

    pub(crate) fn circle(
        &mut self,
        middle: [f32; 2],
        radius: f32,
        fill: Option<Rgb>,
        pen: Option<Pen>,
    ) {
        let radii = [radius; 2];
        self.shapes.push(Shape::Oval { middle, radii, turn_deg: 0.0, fill, pen });
    }

    pub(crate) fn words(
        &mut self,
        text: impl Into<String>,
        at: [f32; 2],
        height: f32,
        colour: Rgb,
        bold: bool,
    ) {
        let writing = Writing { text: text.into(), at, height, colour, upright: false };
        self.shapes.push(Shape::Words { writing, bold, from_start: false });
    }

    /// Level words that begin at a place.
    pub(crate) fn words_from(
        &mut self,
        text: impl Into<String>,
        at: [f32; 2],
        height: f32,
        colour: Rgb,
        bold: bool,
    ) {
        let writing = Writing { text: text.into(), at, height, colour, upright: false };
        self.shapes.push(Shape::Words { writing, bold, from_start: true });
    }

    /// Puts `other` into this drawing, moved by `by`.
    pub(super) fn place(&mut self, other: &Self, by: [f32; 2]) {
        let moved = |at: [f32; 2]| [at[0] + by[0], at[1] + by[1]];
        self.shapes.extend(other.shapes.iter().cloned().map(|mut shape| {
            match &mut shape {
                Shape::Path { points, .. } => {
                    points.iter_mut().for_each(|p| *p = moved(*p));
                }
                Shape::Oval { middle, .. } => *middle = moved(*middle),
                Shape::Words { writing, .. } => writing.at = moved(writing.at),
            }
            shape
        }));
    }

    /// The smallest upright rectangle around it all, least corner first; a point at the
    /// origin for an empty drawing. Words are taken at their usual width.
    pub fn bounds(&self) -> [[f32; 2]; 2] {
        let mut low = [f32::INFINITY; 2];
        let mut high = [f32::NEG_INFINITY; 2];
        let mut hold = |at: [f32; 2], room: [f32; 2]| {
            for i in 0..2 {
                low[i] = low[i].min(at[i] - room[i]);
                high[i] = high[i].max(at[i] + room[i]);
            }
        };
        for shape in &self.shapes {
            match shape {
                Shape::Path { points, pen, .. } => {
                    let half = pen.map_or(0.0, |pen| 0.5 * pen.width);
                    points.iter().for_each(|&p| hold(p, [half; 2]));
                }
                Shape::Oval { middle, radii, turn_deg, pen, .. } => {
                    let (sin, cos) = turn_deg.to_radians().sin_cos();
                    let half = pen.map_or(0.0, |pen| 0.5 * pen.width);
                    let reach = |a: f32, b: f32| (radii[0] * a).hypot(radii[1] * b) + half;
                    hold(*middle, [reach(cos, sin), reach(sin, cos)]);
                }
                Shape::Words { writing, from_start, .. } => {
                    let long = 0.5 * width_of(&writing.text, writing.height);
                    let half = 0.5 * writing.height;
                    let room = if writing.upright { [half, long] } else { [long, half] };
                    let [x, y] = writing.at;
                    hold(if *from_start { [x + long, y] } else { [x, y] }, room);
                }
            }
        }
        if low[0] <= high[0] { [low, high] } else { [[0.0; 2]; 2] }
    }
}
