//! What is drawn of a piece on its sheet.

use super::length::{cm, inches, knows_inches};
use crate::error::Result;
use crate::extent::Extent;
use crate::picture::chart::{ChartLook, Charts, SingleSymbol, charts};
use crate::picture::relief::{Relief, Still};
use crate::picture::schematic::schematic;
use crate::picture::svg::{self, Frame};
use crate::picture::{Drawing, Rgb, Viewpoint};
use crate::piece::Piece;
use crate::piece::Yarn;
use crate::plan::Plan;
use crate::project::Project;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::Writer;

/// Families of the words in pictures, first choice first.
pub(super) const FONTS: &str = "Nunito Sans, sans-serif";

/// The pictures of a piece.
#[derive(Debug, Clone)]
pub struct Pictures {
    /// The stuffed body.
    pub body: Relief,
    /// Colours of the yarns.
    pub colours: Vec<Rgb>,
    /// Its measures.
    pub schematic: Drawing,
    /// Its rounds in symbols.
    pub charts: Charts,
    /// What the body picture shows, for those who cannot see it.
    pub described: String,
}

impl Pictures {
    pub(super) fn of(
        project: &Project,
        piece: &Piece,
        plan: &Plan,
        single: SingleSymbol,
        writer: &Writer<'_>,
    ) -> Self {
        let yarns: Vec<(String, Rgb)> =
            (0..).map(Yarn::letter).zip(project.yarns.iter().map(|y| y.colour)).collect();
        let length = |mm: f64| match knows_inches(writer) {
            true => format!("{} / {}", cm(mm, writer), inches(mm)),
            false => cm(mm, writer),
        };
        let Extent { height: tall, width: wide } = plan.size_mm;
        Self {
            body: Relief::new(piece, plan).in_yarns(&project.faces()),
            colours: yarns.iter().map(|(_, colour)| *colour).collect(),
            schematic: schematic(plan, &yarns, [34.0, 50.0], length, writer),
            charts: charts(piece, plan, &ChartLook { single, yarns: &yarns, writer }),
            described: writer.say_of(
                "body_picture",
                &[
                    ("rounds", Number(plan.rounds.len() as u32)),
                    ("tall", Words(&cm(tall, writer))),
                    ("wide", Words(&cm(wide, writer))),
                ],
            ),
        }
    }

    /// How the body is looked at on a sheet, at `scale` pixels a millimetre.
    pub fn look(scale: f32) -> Viewpoint {
        Viewpoint { scale, ..Viewpoint::default() }
    }

    /// The body at `scale` pixels a millimetre, `margin` pixels all around.
    ///
    /// # Errors
    /// For a picture of too many pixels, see [`Still::blank`].
    pub fn body_still(&self, scale: f32, margin: f32) -> Result<Still> {
        self.body.still(&Self::look(scale), &self.colours, margin)
    }

    /// The body as SVG, `pixels` wide or high, whichever is more; ids in it begin with `ids`.
    ///
    /// # Errors
    /// As [`Self::body_still`].
    pub fn body_svg(&self, pixels: f32, ids: &str) -> Result<String> {
        let margin = 4.0;
        let [low, high] =
            self.body.bounds(Viewpoint::default().turn_deg, Viewpoint::default().tilt_deg);
        let longest = (high[0] - low[0]).max(high[1] - low[1]).max(1e-3);
        let still = self.body_still((pixels - 2.0 * margin) / longest, margin)?;
        let frame = Frame {
            title: "Body",
            description: &self.described,
            margin,
            background: None,
            fonts: FONTS,
            ids,
        };
        Ok(svg::still(&still, &still.small_png()?, &frame))
    }
}

/// A drawing of a sheet as SVG; ids in it begin with `ids`.
pub fn drawing_svg(drawing: &Drawing, title: &str, description: &str, ids: &str) -> String {
    let frame = Frame { title, description, margin: 0.6, background: None, fonts: FONTS, ids };
    svg::drawing(drawing, &frame, None)
}
