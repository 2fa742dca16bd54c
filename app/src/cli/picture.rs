//! `plumpline picture`: a piece drawn as an SVG or PNG file.

use std::path::PathBuf;

use anyhow::{anyhow, bail, ensure};
use clap::{Args, ValueEnum};
use plumpline_core::Extent;
use plumpline_core::picture::chart::{ChartLook, chart_page, charts};
use plumpline_core::picture::relief::{Quality, Relief, ReliefScene, ReliefView, Still};
use plumpline_core::picture::svg::{self, Frame, svg};
use plumpline_core::picture::{Rgb, Scene, Viewpoint, outline};
use plumpline_core::{Piece, Plan, Project, Yarn, disk, file, plan};

use super::picture_toy::{ToySight, toy_still};
use super::sheet::ChartSymbol;
use crate::kit::type_faces;
use crate::work::still::still;

/// Least and greatest width of a picture, pixels.
const WIDTHS: std::ops::RangeInclusive<u32> = 16..=8000;
/// Most pixels of a PNG: beyond this it takes more memory than a picture is worth.
const MOST_PIXELS: u64 = 120_000_000;
/// Room around the piece, as a part of the width.
const MARGIN: f32 = 0.04;

/// Families of the words, first choice first.
const FONTS: &str = "Nunito Sans, sans-serif";

/// Arguments of `plumpline picture`.
#[derive(Debug, Args)]
pub(super) struct PictureArgs {
    /// Project file.
    project: PathBuf,
    /// What to draw.
    #[arg(long, value_enum)]
    view: PictureView,
    /// File to write; its ending, .svg or .png, decides the form.
    #[arg(short, long)]
    output: PathBuf,
    /// The piece of this name; the first one if not said.
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// How far the body is turned about its axis, degrees.
    #[arg(long, default_value_t = Viewpoint::default().turn_deg, allow_negative_numbers = true)]
    turn: f32,
    /// How far it is seen from above, degrees, −90 to 90.
    #[arg(long, default_value_t = Viewpoint::default().tilt_deg, allow_negative_numbers = true)]
    tilt: f32,
    /// Width of the picture, pixels.
    #[arg(long, default_value_t = 1200)]
    width: u32,
    /// Take away the half that faces the viewer at turn 0.
    #[arg(long)]
    cutaway: bool,
    /// How far the parts of a toy are drawn apart, 0 to 1.
    #[arg(long, default_value_t = 0.0)]
    apart: f64,
    /// Ground of the picture.
    #[arg(long, value_enum, default_value_t = Backdrop::None)]
    background: Backdrop,
    /// Symbol for single crochet in a chart.
    #[arg(long, value_enum, default_value_t = ChartSymbol::Cross)]
    chart: ChartSymbol,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum PictureView {
    /// The stuffed body, stitch by stitch.
    Body,
    /// The profile with its measures.
    Outline,
    /// The rounds in the trade's symbols.
    Chart,
    /// The whole toy, its parts in their places.
    Toy,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Backdrop {
    /// Clear.
    None,
    /// White.
    White,
}

impl PictureArgs {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.output.display();
        let png = match self.output.extension().and_then(|e| e.to_str()) {
            Some("svg") => false,
            Some("png") => true,
            _ => bail!("{shown}: the ending is not known; end the name in .svg or .png"),
        };
        self.check()?;
        let project = file::load(&self.project)?;
        let bytes = match self.view {
            PictureView::Toy => self.toy(&project, png)?,
            PictureView::Body | PictureView::Outline | PictureView::Chart => {
                self.of_piece(&project, png)?
            }
        };
        Ok(disk::write(&self.output, &bytes)?)
    }

    /// The picture of one piece.
    fn of_piece(&self, project: &Project, png: bool) -> anyhow::Result<Vec<u8>> {
        let piece = self.piece_of(project)?;
        let plan = plan(piece)
            .map_err(|e| anyhow!("{}, piece “{}”, {e}", self.project.display(), piece.name))?;
        let text = match self.view {
            PictureView::Outline => self.outline(project, piece, &plan),
            PictureView::Chart => self.chart(project, piece, &plan)?,
            PictureView::Body | PictureView::Toy => {
                return self.body(project, piece, &plan, png);
            }
        };
        if png { rasterised(&text) } else { Ok(text.into_bytes()) }
    }

    fn check(&self) -> anyhow::Result<()> {
        let (least, most) = (WIDTHS.start(), WIDTHS.end());
        ensure!(
            WIDTHS.contains(&self.width),
            "--width: {} is out of range; give a number from {least} to {most}",
            self.width
        );
        ensure!(
            self.turn.is_finite() && self.turn.abs() <= 36_000.0,
            "--turn: {} is out of range; give degrees from -36000 to 36000",
            self.turn
        );
        ensure!(
            self.tilt.is_finite() && self.tilt.abs() <= 90.0,
            "--tilt: {} is out of range; give degrees from -90 to 90",
            self.tilt
        );
        ensure!(
            (0.0..=1.0).contains(&self.apart),
            "--apart: {} is out of range; give a number from 0 to 1",
            self.apart
        );
        Ok(())
    }

    /// The whole toy, as wide as was asked for.
    fn toy(&self, project: &Project, png: bool) -> anyhow::Result<Vec<u8>> {
        let sight = ToySight {
            turn_deg: self.turn,
            tilt_deg: self.tilt,
            apart: self.apart,
            width: self.width,
            margin: MARGIN * self.width as f32,
        };
        let still = toy_still(project, &sight)
            .map_err(|e| anyhow!("{}: {e}", self.project.display()))?;
        if png {
            return Ok(still.png(self.ground())?);
        }
        let title = format!("{}: the whole toy", project.title);
        let count = project.toy.parts.len();
        let description = format!("A crocheted toy of {count} parts, put together.");
        let frame = self.frame(&title, &description);
        Ok(svg::still(&still, &still.png(None)?, &frame).into_bytes())
    }

    fn piece_of<'a>(&self, project: &'a Project) -> anyhow::Result<&'a Piece> {
        let Some(name) = &self.piece else {
            return project.pieces.first().ok_or_else(|| anyhow!("there is no piece"));
        };
        project.pieces.iter().find(|p| p.name == *name).ok_or_else(|| {
            let names: Vec<&str> = project.pieces.iter().map(|p| p.name.as_str()).collect();
            anyhow!(
                "{}: there is no piece “{name}”; the pieces are {}",
                self.project.display(),
                names.join(", ")
            )
        })
    }

    fn ground(&self) -> Option<Rgb> {
        (self.background == Backdrop::White).then_some([255; 3])
    }

    /// The body, as wide as was asked for.
    fn body(
        &self,
        project: &Project,
        piece: &Piece,
        plan: &Plan,
        png: bool,
    ) -> anyhow::Result<Vec<u8>> {
        let colours = project.colours();
        let relief = Relief::new(piece, plan).in_yarns(&project.faces());
        let margin = MARGIN * self.width as f32;
        let [low, high] = relief.bounds(self.turn, self.tilt);
        let across = (2.0 * high[0].max(-low[0])).max(1e-3);
        let look = Viewpoint {
            turn_deg: self.turn,
            tilt_deg: self.tilt,
            scale: (self.width as f32 - 2.0 * margin) / across,
            cutaway: self.cutaway,
            lit: None,
        };
        let around = ReliefView::around(&relief, &look, margin, Quality::Full);
        let view = ReliefView { size: [self.width, around.size[1]], ..around };
        let parts = [relief.as_in(&look, &colours)];
        let still: Still =
            still(&ReliefScene::new(&parts, &view)).map_err(|e| anyhow!("--width: {e}"))?;
        if png {
            return Ok(still.png(self.ground())?);
        }
        let (title, description) = described(piece, plan, "stuffed, stitch by stitch");
        let frame = self.frame(&title, &description);
        Ok(svg::still(&still, &still.png(None)?, &frame).into_bytes())
    }

    /// The side profile with its measures as SVG, as wide as was asked for.
    fn outline(&self, project: &Project, piece: &Piece, plan: &Plan) -> String {
        let colours = project.colours();
        let room = self.width as f32 * (1.0 - 2.0 * MARGIN);
        let scene = fitted(room, |scale| outline::scene(plan, scale, &colours));
        let (title, description) = described(piece, plan, "side profile");
        svg(&scene, &self.frame(&title, &description))
    }

    fn frame<'a>(&self, title: &'a str, description: &'a str) -> Frame<'a> {
        let margin = MARGIN * self.width as f32;
        Frame { title, description, margin, background: self.ground(), fonts: FONTS, ids: "" }
    }
}

/// A title and a sentence on a picture of a piece.
fn described(piece: &Piece, plan: &Plan, what: &str) -> (String, String) {
    let Extent { height: tall, width: wide } = plan.size_mm;
    let description = format!(
        "A crocheted piece of {} rounds and {} stitches, {tall:.0} mm high and {wide:.0} mm \
         wide when stuffed.",
        plan.rounds.len(),
        plan.estimate.stitches
    );
    (format!("{}: {what}", piece.name), description)
}

impl PictureArgs {
    /// The charts of the piece with their key, as wide as was asked for.
    fn chart(&self, project: &Project, piece: &Piece, plan: &Plan) -> anyhow::Result<String> {
        let yarns: Vec<(String, Rgb)> =
            (0..).map(Yarn::letter).zip(project.yarns.iter().map(|y| y.colour)).collect();
        let writer = project.wording.writer()?;
        let look = ChartLook { single: self.chart.into(), yarns: &yarns, writer: &writer };
        let all = charts(piece, plan, &look);
        ensure!(
            !all.charts.is_empty(),
            "{}, piece “{}”: {}",
            self.project.display(),
            piece.name,
            all.said().collect::<Vec<_>>().join(" ")
        );
        let title = format!("{}: round chart", piece.name);
        let frame = Frame {
            title: &title,
            description: &all.said().collect::<Vec<_>>().join(" "),
            margin: 4.0,
            background: (self.background == Backdrop::White).then_some([255; 3]),
            fonts: FONTS,
            ids: "",
        };
        Ok(svg::drawing(&chart_page(&all), &frame, Some(self.width as f32)))
    }
}

/// The scene at the scale at which it is `room` pixels wide. What does not scale with the
/// piece, such as type, takes a second look.
fn fitted(room: f32, at: impl Fn(f32) -> Scene) -> Scene {
    let mut scale = 4.0;
    let mut scene = at(scale);
    for _ in 0..3 {
        let [low, high] = scene.bounds();
        let width = (high[0] - low[0]).max(1e-3);
        scale *= room / width;
        scene = at(scale);
    }
    scene
}

/// An SVG's pixels as a PNG file.
fn rasterised(text: &str) -> anyhow::Result<Vec<u8>> {
    use resvg::{tiny_skia, usvg};
    let mut options = usvg::Options::default();
    let faces = options.fontdb_mut();
    for file in [type_faces::REGULAR_FILE, type_faces::BOLD_FILE] {
        faces.load_font_data(file.to_vec());
    }
    // The file's own family name carries its weight; the words ask for the plain one.
    let family = faces.faces().next().and_then(|face| face.families.first());
    if let Some((name, _)) = family.cloned() {
        faces.set_sans_serif_family(name);
    }
    let tree = usvg::Tree::from_str(text, &options)?;
    let size = tree.size().to_int_size();
    ensure!(
        u64::from(size.width()) * u64::from(size.height()) <= MOST_PIXELS,
        "--width: the picture would be {} pixels high; make it narrower",
        size.height()
    );
    let mut pixels = tiny_skia::Pixmap::new(size.width(), size.height())
        .ok_or_else(|| anyhow!("--width: the picture is too large; make it smaller"))?;
    resvg::render(&tree, tiny_skia::Transform::identity(), &mut pixels.as_mut());
    Ok(pixels.encode_png()?)
}
