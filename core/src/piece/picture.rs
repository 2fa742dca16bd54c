//! A reference picture under the outline board: which file, and where it lies. The file
//! itself stays where it is; a project without it loses nothing.

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};
use crate::extent::Bounds;
use crate::piece::outline::LARGEST_MM;

/// Least and greatest width of a picture, mm.
pub const PICTURE_WIDTH_MM: Bounds = Bounds::new(1.0, 4.0 * LARGEST_MM);

/// A picture that is traced.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Picture {
    /// Where the file is; a relative path counts from the folder of the project.
    pub path: String,
    /// Its middle across the axis, mm; positive to the right.
    pub across_mm: f64,
    /// Its middle along the axis, in working order, mm.
    pub along_mm: f64,
    /// Its width, mm; its height follows from the file.
    pub width_mm: f64,
    /// 0 invisible … 1 as it is.
    #[serde(default = "default_opacity")]
    pub opacity: f64,
    /// The two ends of a length that is known, as shares of the width from the left edge and
    /// of the height from the upper.
    #[serde(default = "default_ruler")]
    pub ruler: [(f64, f64); 2],
    /// Whether it is safe from being moved.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub locked: bool,
    /// Whether it is out of sight.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub hidden: bool,
}

fn default_opacity() -> f64 {
    0.6
}

fn default_ruler() -> [(f64, f64); 2] {
    [(0.5, 0.1), (0.5, 0.9)]
}

impl Picture {
    /// The picture in the file at `path`, its middle at `(across, along)`, this wide, mm.
    pub fn new(path: impl Into<String>, (across, along): (f64, f64), width_mm: f64) -> Self {
        Self {
            path: path.into(),
            across_mm: across,
            along_mm: along,
            width_mm: PICTURE_WIDTH_MM.nearest(width_mm),
            opacity: default_opacity(),
            ruler: default_ruler(),
            locked: false,
            hidden: false,
        }
    }

    /// Where a share of the picture lies, mm across and along; `aspect` is its height over
    /// its width.
    pub fn place(&self, share: (f64, f64), aspect: f64) -> (f64, f64) {
        (
            self.across_mm + (share.0 - 0.5) * self.width_mm,
            self.along_mm + (share.1 - 0.5) * self.width_mm * aspect,
        )
    }

    /// The share of the picture at a place, mm; the inverse of [`Self::place`], kept on the
    /// picture.
    pub fn share(&self, place: (f64, f64), aspect: f64) -> (f64, f64) {
        let share = |off: f64, size: f64| (off / size.max(1e-9) + 0.5).clamp(0.0, 1.0);
        (
            share(place.0 - self.across_mm, self.width_mm),
            share(place.1 - self.along_mm, self.width_mm * aspect),
        )
    }

    /// Distance between the two ends of the known length as the picture lies now, mm.
    pub fn ruler_mm(&self, aspect: f64) -> f64 {
        let [a, b] = self.ruler.map(|end| self.place(end, aspect));
        (a.0 - b.0).hypot(a.1 - b.1)
    }

    /// Moves and widens it with an outline that is scaled by `scale`.
    pub(crate) fn scale(&mut self, scale: f64) {
        self.across_mm *= scale;
        self.along_mm *= scale;
        let Bounds { low: least, high: most } = PICTURE_WIDTH_MM;
        self.width_mm = (scale * self.width_mm).clamp(least, most);
    }

    /// The picture scaled so that its known length is `mm`. The middle of that length stays
    /// where it is. `None` where both ends coincide or the picture would come out of range.
    #[must_use]
    pub fn with_ruler(&self, mm: f64, aspect: f64) -> Option<Self> {
        let width_mm = self.width_mm * mm / self.ruler_mm(aspect);
        if !PICTURE_WIDTH_MM.contains(width_mm) {
            return None;
        }
        let middle = |p: &Self| {
            let [a, b] = p.ruler.map(|end| p.place(end, aspect));
            (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1))
        };
        let mut scaled = Self { width_mm, ..self.clone() };
        let (was, is) = (middle(self), middle(&scaled));
        scaled.across_mm += was.0 - is.0;
        scaled.along_mm += was.1 - is.1;
        scaled.validate().ok().map(|()| scaled)
    }

    /// Refuses numbers no picture can have.
    ///
    /// # Errors
    /// Names the first field that is out of range, and the mend.
    pub fn validate(&self) -> Result<()> {
        if self.path.trim().is_empty() {
            return Err(Error::new("picture, path", "it is empty", "name a file"));
        }
        let far = 4.0 * LARGEST_MM;
        within("picture, across_mm", self.across_mm, -far, far, "mm")?;
        within("picture, along_mm", self.along_mm, -far, far, "mm")?;
        let Bounds { low: least, high: most } = PICTURE_WIDTH_MM;
        within("picture, width_mm", self.width_mm, least, most, "mm")?;
        within("picture, opacity", self.opacity, 0.0, 1.0, "")?;
        for (x, y) in self.ruler {
            within("picture, ruler", x, 0.0, 1.0, "")?;
            within("picture, ruler", y, 0.0, 1.0, "")?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_known_length_scales_the_picture_about_its_own_middle() {
        let mut picture = Picture::new("pear.png", (4.0, 50.0), 80.0);
        picture.ruler = [(0.25, 0.2), (0.75, 0.2)];
        let aspect = 1.5;
        assert!((picture.ruler_mm(aspect) - 40.0).abs() < 1e-9);
        let scaled = picture.with_ruler(100.0, aspect).expect("it fits");
        assert!((scaled.ruler_mm(aspect) - 100.0).abs() < 1e-9);
        assert!((scaled.width_mm - 200.0).abs() < 1e-9);
        let middle = |p: &Picture| p.place((0.5, 0.2), aspect);
        let (was, is) = (middle(&picture), middle(&scaled));
        assert!((was.0 - is.0).abs() < 1e-9 && (was.1 - is.1).abs() < 1e-9);
    }

    #[test]
    fn a_project_without_a_picture_says_nothing_of_one() {
        use crate::{Gauge, Knot, Outline, Piece, Project, file};
        let knots = vec![Knot::new(0.0, 0.0), Knot::new(20.0, 20.0), Knot::new(0.0, 40.0)];
        let mut project =
            Project::of_piece(Piece::new("Ball", Outline { knots }, Gauge::default()));
        let plain = file::write(&project).expect("it is written");
        assert!(!plain.contains("picture"));
        project.pieces[0].picture = Some(Picture::new("pear.png", (1.0, 20.0), 30.0));
        let traced = file::write(&project).expect("it is written");
        assert_eq!(file::parse(&traced).expect("it is read"), project);
        assert_eq!(file::parse(&plain).expect("it is read").pieces[0].picture, None);
    }

    #[test]
    fn ends_that_coincide_scale_nothing() {
        let mut picture = Picture::new("pear.png", (0.0, 0.0), 80.0);
        picture.ruler = [(0.5, 0.5); 2];
        assert_eq!(picture.with_ruler(30.0, 1.0), None);
    }

    #[test]
    fn shares_and_places_are_inverse() {
        let picture = Picture::new("pear.png", (-3.0, 20.0), 60.0);
        let share = (0.2, 0.85);
        let back = picture.share(picture.place(share, 0.7), 0.7);
        assert!((back.0 - share.0).abs() < 1e-12 && (back.1 - share.1).abs() < 1e-12);
    }

    #[test]
    fn numbers_that_are_none_are_refused() {
        let sound = Picture::new("pear.png", (0.0, 0.0), 60.0);
        assert!(sound.validate().is_ok());
        for broken in [
            Picture { width_mm: f64::NAN, ..sound.clone() },
            Picture { across_mm: f64::INFINITY, ..sound.clone() },
            Picture { opacity: 1.5, ..sound.clone() },
            Picture { path: " ".into(), ..sound.clone() },
            Picture { ruler: [(0.0, 2.0); 2], ..sound.clone() },
        ] {
            assert!(broken.validate().is_err(), "{broken:?}");
        }
    }
}
