//! The project: what a person saves. Pieces, the yarns they share, and who made them.

pub mod another_yarn;
pub mod calibrate;
pub mod companion;
pub mod file;
pub mod given;
pub mod making;
pub(crate) mod seam;
pub mod shape;
pub mod sheet_design;
pub mod sizes;
pub mod testers;
pub mod toy;

use serde::{Deserialize, Serialize};

use crate::error::{Error, LONGEST_NAME, LONGEST_TEXT, Result, no_longer, within};
use crate::piece::size::SizeBy;
use crate::piece::{Piece, PieceId, Yarn, YarnFace};
use crate::project::making::progress::Making;
use crate::project::seam::Seam;
use crate::project::sheet_design::SheetDesign;
use crate::project::toy::Toy;
use crate::project::toy::part::Part;
use crate::words::lexicon;
use crate::words::write::{HouseStyle, Writer, style};

/// The version of project files this program writes, and the newest it reads.
pub const FORMAT_VERSION: u32 = 6;

/// The words a project is written in: a lexicon and a house style, by code and name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WordingChoice {
    /// Code of the lexicon: `en-us`, `en-uk`, `de`, `fr`, `es`, `es-419`.
    pub lexicon: String,
    /// Name of the house style.
    pub style: String,
}

impl Default for WordingChoice {
    /// The studio's own words.
    fn default() -> Self {
        let writer = Writer::bench();
        Self { lexicon: writer.lexicon().code.clone(), style: writer.style().name.clone() }
    }
}

impl WordingChoice {
    /// A writer of this choice.
    ///
    /// # Errors
    /// Where there is no such lexicon or style; lists those there are.
    pub fn writer(&self) -> Result<Writer<'static>> {
        let known = |names: Vec<&str>| format!("choose one of {}", names.join(", "));
        let lexicon = lexicon::by_code(&self.lexicon).ok_or_else(|| {
            let codes = lexicon::all().iter().map(|l| l.code.as_str()).collect();
            let what = format!("there are no words called “{}”", self.lexicon);
            Error::new("wording, lexicon", what, known(codes))
        })?;
        let style = HouseStyle::by_name(&self.style).ok_or_else(|| {
            let names = style::all().iter().map(|s| s.name.as_str()).collect();
            let what = format!("there is no house style called “{}”", self.style);
            Error::new("wording, style", what, known(names))
        })?;
        Ok(Writer::new(style, lexicon))
    }
}

/// Everything that is saved in one file. Nothing derived is in it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Project {
    /// What the project is called.
    pub title: String,
    /// Who designed it; printed on the sheet when not empty.
    #[serde(default)]
    pub designer: String,
    /// Free notes; printed on the sheet when not empty.
    #[serde(default)]
    pub notes: String,
    /// Under which terms the sheet may be used, in one line; printed when not empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub licence: String,
    /// Which version of the pattern it is, and of which day: `2, 28 November 2026`; printed
    /// when not empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub version: String,
    /// How the pieces are put together; printed on the sheet when not empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub assembly: String,
    /// What the designer adds to the sheet in pictures, and how it is arranged.
    #[serde(default, skip_serializing_if = "SheetDesign::is_usual")]
    pub sheet: SheetDesign,
    /// The words the pattern is written in.
    #[serde(default)]
    pub wording: WordingChoice,
    /// The yarns, in the order of their letters; at least one.
    pub yarns: Vec<Yarn>,
    /// The pieces; at least one.
    pub pieces: Vec<Piece>,
    /// How far the making of them is.
    #[serde(default, skip_serializing_if = "Making::is_empty")]
    pub making: Making,
    /// Where pieces meet.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seams: Vec<Seam>,
    /// How the pieces make one toy.
    #[serde(default, skip_serializing_if = "Toy::is_empty")]
    pub toy: Toy,
}

impl Project {
    /// Whether a piece is stuffed: one that no part of the toy is, or some part that has
    /// stuffing in it.
    pub fn stuffs(&self, piece: PieceId) -> bool {
        let mut parts =
            self.toy.parts.iter().filter(|part| part.piece() == Some(piece)).peekable();
        parts.peek().is_none() || parts.any(Part::is_stuffed)
    }

    /// A project of one piece in one plain yarn, named after the piece.
    pub fn of_piece(piece: Piece) -> Self {
        Self {
            title: piece.name.clone(),
            designer: String::new(),
            notes: String::new(),
            licence: String::new(),
            version: String::new(),
            assembly: String::new(),
            sheet: SheetDesign::default(),
            wording: WordingChoice::default(),
            yarns: vec![Yarn::plain(0)],
            pieces: vec![piece],
            making: Making::default(),
            seams: Vec::new(),
            toy: Toy::default(),
        }
    }

    /// Puts `piece` in at `index`, or at the end where there are fewer, under an id of its own.
    pub fn insert(&mut self, index: usize, piece: Piece) -> PieceId {
        let id = PieceId::free(self.pieces.iter().map(|piece| piece.id));
        self.pieces.insert(index.min(self.pieces.len()), Piece { id, ..piece });
        id
    }

    /// Puts `piece` in after the others, under an id of its own.
    pub fn add(&mut self, piece: Piece) -> PieceId {
        self.insert(self.pieces.len(), piece)
    }

    /// Takes out a piece with all that speaks of it: its seams, sizes that meet it, its parts
    /// of the toy and how far its making is.
    pub fn remove(&mut self, id: PieceId) {
        self.pieces.retain(|piece| piece.id != id);
        self.seams.retain(|seam| !seam.touches(id));
        for piece in &mut self.pieces {
            piece.sizes.retain(|size| size.by != SizeBy::Meet { companion: id });
        }
        self.toy.piece_removed(id);
        self.making.at.retain(|progress| progress.piece != id);
    }

    /// Where the piece stands among the others; none where it is not there.
    pub fn position(&self, id: PieceId) -> Option<usize> {
        self.pieces.iter().position(|piece| piece.id == id)
    }

    /// The piece; none where it is not there.
    pub fn piece(&self, id: PieceId) -> Option<&Piece> {
        self.pieces.iter().find(|piece| piece.id == id)
    }

    /// The piece, to be changed.
    pub fn piece_mut(&mut self, id: PieceId) -> Option<&mut Piece> {
        self.pieces.iter_mut().find(|piece| piece.id == id)
    }

    /// What the piece is called; nothing where it is not there.
    pub fn name_of(&self, id: PieceId) -> &str {
        self.piece(id).map_or("", |piece| &piece.name)
    }

    /// The colours of the yarns, in their order.
    pub fn colours(&self) -> Vec<[u8; 3]> {
        self.yarns.iter().map(|yarn| yarn.colour).collect()
    }

    /// What the yarns look like close by, in their order.
    pub fn faces(&self) -> Vec<YarnFace> {
        self.yarns.iter().map(|yarn| yarn.face).collect()
    }

    /// The piece, where what speaks of it needs it.
    ///
    /// # Errors
    /// Where it is not there; names those there are.
    pub(crate) fn needed(&self, id: PieceId) -> Result<&Piece> {
        self.piece(id).ok_or_else(|| id.missing(self.pieces.iter().map(|piece| piece.id)))
    }

    /// Refuses a project that cannot be planned.
    ///
    /// # Errors
    /// Names the first field at fault, from the outside in, and the mend.
    pub fn validate(&self) -> Result<()> {
        self.no_text_without_end()?;
        self.wording.writer()?;
        self.sheet.validate()?;
        if self.yarns.is_empty() || self.yarns.len() > 260 {
            return Err(Error::new(
                "yarns",
                format!("{} yarns", self.yarns.len()),
                "list 1 to 260",
            ));
        }
        if self.pieces.is_empty() || self.pieces.len() > 200 {
            return Err(Error::new(
                "pieces",
                format!("{} pieces", self.pieces.len()),
                "list 1 to 200",
            ));
        }
        for (i, yarn) in self.yarns.iter().enumerate() {
            let place = format!("yarn {}, metres_per_100g", Yarn::letter(i));
            within(&place, yarn.metres_per_100g, 1.0, 20_000.0, "m")?;
            if let Some(grams) = yarn.ball_grams {
                let place = format!("yarn {}, ball_grams", Yarn::letter(i));
                within(&place, grams, 1.0, 5000.0, "g")?;
            }
        }
        for piece in &self.pieces {
            let name = format!("piece “{}”", piece.name);
            piece.validate().map_err(|e| e.within(&name))?;
            if let Some(band) = piece.bands.iter().find(|b| b.yarn >= self.yarns.len()) {
                return Err(Error::new(
                    format!("{name}, bands, round {}", band.from_round),
                    format!("there is no yarn {}", band.yarn),
                    format!("the last yarn is {}", self.yarns.len() - 1),
                ));
            }
            let painted = piece.paint.yarns();
            if let Some(yarn) = painted.into_iter().find(|&yarn| yarn >= self.yarns.len()) {
                return Err(Error::new(
                    format!("{name}, paint"),
                    format!("there is no yarn {yarn}"),
                    format!("the last yarn is {}", self.yarns.len() - 1),
                ));
            }
        }
        self.no_two_of_one_id()?;
        self.making.validate(&self.pieces)?;
        seam::validate(&self.pieces, &self.seams)?;
        toy::validate(&self.toy, &self.pieces)?;
        toy::validate_embroidery(&self.toy, self.yarns.len())
    }

    fn no_two_of_one_id(&self) -> Result<()> {
        for (i, piece) in self.pieces.iter().enumerate() {
            if let Some(other) = self.pieces[..i].iter().find(|other| other.id == piece.id) {
                return Err(Error::new(
                    format!("piece “{}”, id", piece.name),
                    format!("“{}” has the id {} too", other.name, piece.id),
                    "give each piece an id of its own",
                ));
            }
        }
        Ok(())
    }

    /// Refuses names and texts that nobody types: what lays them out takes its time over each
    /// character, and every error quotes them.
    fn no_text_without_end(&self) -> Result<()> {
        no_longer("title", &self.title, LONGEST_NAME)?;
        no_longer("designer", &self.designer, LONGEST_NAME)?;
        no_longer("licence", &self.licence, LONGEST_TEXT)?;
        no_longer("version", &self.version, LONGEST_NAME)?;
        no_longer("notes", &self.notes, LONGEST_TEXT)?;
        no_longer("assembly", &self.assembly, LONGEST_TEXT)?;
        for (i, yarn) in self.yarns.iter().enumerate() {
            let place = format!("yarn {}, name", Yarn::letter(i));
            no_longer(&place, &yarn.name, LONGEST_NAME)?;
            let place = format!("yarn {}, brand", Yarn::letter(i));
            no_longer(&place, &yarn.brand, LONGEST_NAME)?;
        }
        for (i, piece) in self.pieces.iter().enumerate() {
            no_longer(&format!("piece {}, name", i + 1), &piece.name, LONGEST_NAME)?;
            for size in &piece.sizes {
                no_longer(&format!("piece {}, sizes", i + 1), &size.name, LONGEST_NAME)?;
            }
        }
        Ok(())
    }
}
