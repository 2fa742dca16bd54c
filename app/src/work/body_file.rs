//! The body as a picture file: as it is turned now, or turning once around.

use plumpline_core::picture::relief::{
    Quality, Relief, ReliefScene, ReliefView, Still, animated_png,
};
use plumpline_core::picture::{Rgb, Viewpoint};
use plumpline_core::{Piece, YarnFace, plan};

use super::still::still;
use crate::view::Turned;

/// Pixels along the longer side of a picture, and of one that turns.
const LONG: f32 = 2000.0;
const LONG_TURNING: f32 = 480.0;
/// Pictures of a turn, and how long each stands, ms: once around in four seconds.
const FRAMES: u32 = 48;
const EACH_MS: u16 = 83;
/// Room around the body, as a part of its longer side.
const MARGIN: f32 = 0.03;

/// A body to draw.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyFile {
    /// The piece.
    pub piece: Piece,
    /// Colours by yarn.
    pub colours: Vec<Rgb>,
    /// What the yarns look like.
    pub faces: Vec<YarnFace>,
    /// How it is turned.
    pub turned: Turned,
    /// Whether it turns once around.
    pub turns: bool,
}

impl BodyFile {
    /// The PNG file, on a clear ground; one that turns is an animated PNG, which every browser
    /// plays and every other program shows the first picture of.
    ///
    /// # Errors
    /// One line, where the piece cannot be planned.
    pub fn png(&self) -> Result<Vec<u8>, String> {
        let plan = plan(&self.piece).map_err(|e| e.to_string())?;
        let relief = Relief::new(&self.piece, &plan).in_yarns(&self.faces);
        if self.turns {
            return self.turning(&relief);
        }
        let view = self.view(&relief, LONG, 0.0);
        self.still(&relief, &view)?.png(None).map_err(|e| e.to_string())
    }

    fn view(&self, relief: &Relief, long: f32, more_deg: f32) -> ReliefView {
        let Turned { turn_deg, tilt_deg, .. } = self.turned;
        let turn_deg = turn_deg + more_deg;
        let look = |scale| Viewpoint { turn_deg, tilt_deg, scale, ..Viewpoint::default() };
        let [low, high] = relief.bounds(turn_deg, tilt_deg);
        let longest = (0..2).map(|i| high[i].max(-low[i])).fold(1e-3, f32::max);
        let margin = MARGIN * long;
        let scale = (0.5 * long - margin) / longest;
        ReliefView::around(relief, &look(scale), margin, Quality::Full)
    }

    fn still(&self, relief: &Relief, view: &ReliefView) -> Result<Still, String> {
        let look =
            Viewpoint { cutaway: self.turned.cutaway, lit: None, ..Viewpoint::default() };
        let parts = [relief.as_in(&look, &self.colours)];
        still(&ReliefScene::new(&parts, view)).map_err(|e| e.to_string())
    }

    fn turning(&self, relief: &Relief) -> Result<Vec<u8>, String> {
        // An oval is wider from one side than from another: all pictures take the largest.
        let views: Vec<ReliefView> = (0..FRAMES)
            .map(|i| self.view(relief, LONG_TURNING, 360.0 * i as f32 / FRAMES as f32))
            .collect();
        let scale = views.iter().map(|view| view.scale).fold(f32::INFINITY, f32::min);
        let size = [0, 1].map(|i| views.iter().map(|v| v.size[i]).max().unwrap_or(1));
        let still = |view| self.still(relief, &ReliefView { scale, size, ..view });
        let stills: Vec<Still> = views.into_iter().map(still).collect::<Result<_, _>>()?;
        animated_png(&stills, EACH_MS).map_err(|e| e.to_string())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    #[test]
    fn a_body_is_written_as_it_stands_or_turning_once_around() {
        let piece = Document::blank().piece().clone();
        let turned = Turned { turn_deg: 200.0, tilt_deg: 30.0, ..Turned::default() };
        let picture = |turns| BodyFile {
            piece: piece.clone(),
            colours: vec![[90, 120, 60]],
            faces: Vec::new(),
            turned,
            turns,
        };
        let (turning, still) = (picture(true).png(), picture(false).png());
        let (turning, still) = (turning.expect("a file"), still.expect("a file"));
        // The chunk that makes a PNG an animated one, and its number of pictures.
        let control = turning.windows(4).position(|name| name == b"acTL").expect("animated");
        assert_eq!(turning[control + 4..control + 8], FRAMES.to_be_bytes());
        assert!(!still.windows(4).any(|name| name == b"acTL"));
        let side = |file: &[u8], at: usize| {
            u32::from_be_bytes([file[at], file[at + 1], file[at + 2], file[at + 3]])
        };
        assert!(side(&still, 16).max(side(&still, 20)) >= LONG as u32);
        assert!(side(&turning, 16).max(side(&turning, 20)) >= LONG_TURNING as u32);
    }
}
