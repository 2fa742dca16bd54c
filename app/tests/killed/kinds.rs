//! Every kind of file that the product writes, in two versions that differ throughout.
//!
//! What writes them is this program run anew: with a folder and a kind in its environment it
//! saves once, or without end until it is killed.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use plumpline::document::Document;
use plumpline::work::home::recovery;
use plumpline::work::sheet_file::Form;
use plumpline_core::calibrate::{Entry, GaugeBook};
use plumpline_core::file::SavedOver;
use plumpline_core::sheet::sheet_with;
use plumpline_core::{PieceId, Project, disk, file};

/// Names the folder to save in.
const FOLDER: &str = "PLUMPLINE_TEST_SAVES_IN";
/// Names the kind to save, once; without it all are saved without end.
const KIND: &str = "PLUMPLINE_TEST_SAVES_KIND";

/// A kind of file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A project saved where another may have changed it.
    Project,
    /// A project saved although its file is read-only.
    ReadOnly,
    /// A step of the making.
    Making,
    /// A recovery copy.
    Recovery,
    /// The gauge book.
    Book,
    /// A sheet.
    Sheet,
    /// A picture, or any other file that is made of a project; a written pattern; what the
    /// studio remembers.
    Small,
}

impl Kind {
    pub(crate) const ALL: [Self; 7] = [
        Self::Project,
        Self::ReadOnly,
        Self::Making,
        Self::Recovery,
        Self::Book,
        Self::Sheet,
        Self::Small,
    ];

    pub(crate) fn file(self, folder: &Path) -> PathBuf {
        folder.join(match self {
            Self::Project => "float.ron",
            Self::ReadOnly => "kept.ron",
            Self::Making => "made.ron",
            Self::Recovery => "1.ron",
            Self::Book => "gauges.ron",
            Self::Sheet => "float.html",
            Self::Small => "desk.ron",
        })
    }

    /// Puts what is written as it is in `folder`, and the first version of this kind.
    pub(crate) fn prepare(self, folder: &Path) {
        for (i, project) in versions().iter().enumerate() {
            let bytes = match self {
                Self::Sheet => {
                    let sheet = sheet_with(project, Default::default()).expect("a sheet");
                    Form::Html.file(&sheet, Default::default(), 1).expect("a page").0
                }
                Self::Small => vec![b'a' + i as u8; 300 + 5000 * i],
                _ => continue,
            };
            std::fs::write(self.whole(folder, i), bytes).expect("written");
        }
        self.save(folder, 0).expect("the first version");
        if self == Self::ReadOnly {
            let mut plain = std::fs::metadata(self.file(folder)).expect("there").permissions();
            plain.set_readonly(true);
            std::fs::set_permissions(self.file(folder), plain).expect("marked");
        }
    }

    fn whole(self, folder: &Path, version: usize) -> PathBuf {
        folder.join(format!("{self:?}.{version}.whole"))
    }

    /// Saves a version as the product does.
    pub(crate) fn save(self, folder: &Path, version: usize) -> Result<(), String> {
        let path = self.file(folder);
        let both = versions();
        let known: Vec<&Project> = both.iter().collect();
        let project = &both[version];
        let done = match self {
            Self::Project => file::save_over(project, &path, &known).map(settled),
            Self::ReadOnly => file::save_read_only(project, &path),
            Self::Making => {
                file::save_making(&made(version), &path, &[&made(0), &made(1)]).map(settled)
            }
            Self::Recovery => return recovery::write(&path, project, Some(&path)),
            Self::Book => {
                let write = || {
                    let _turn = disk::turn(&path)?;
                    disk::write(&path, book(version).write()?.as_bytes())
                };
                write()
            }
            Self::Sheet | Self::Small => {
                let bytes = std::fs::read(self.whole(folder, version)).expect("prepared");
                disk::write(&path, &bytes)
            }
        };
        done.map_err(|e| e.to_string())
    }

    /// Which version stands in the file, whole.
    ///
    /// # Panics
    /// Where neither does.
    pub(crate) fn standing(self, folder: &Path) -> usize {
        let path = self.file(folder);
        let load =
            |path: &Path| file::load(path).unwrap_or_else(|e| panic!("{self:?} is torn: {e}"));
        let found = match self {
            Self::Project | Self::ReadOnly => {
                let project = load(&path);
                versions().iter().position(|version| *version == project)
            }
            Self::Making => {
                let project = load(&path);
                [0, 1].into_iter().find(|version| made(*version) == project)
            }
            Self::Recovery => {
                let (project, of) = recovery::read(&path).expect("the copy is whole");
                assert_eq!(of.as_deref(), Some(path.as_path()));
                versions().iter().position(|version| *version == project)
            }
            Self::Book => {
                let text = disk::read_text(&path, disk::LARGEST_BOOK).expect("text");
                let found = GaugeBook::parse(&text).expect("the book is whole");
                [0, 1].into_iter().find(|version| book(*version) == found)
            }
            Self::Sheet | Self::Small => {
                let found = std::fs::read(&path).expect("it is there");
                let is = |version: &usize| {
                    std::fs::read(self.whole(folder, *version)).expect("prepared") == found
                };
                [0, 1].into_iter().find(is)
            }
        };
        found.unwrap_or_else(|| panic!("{self:?}: neither version, nothing between"))
    }
}

fn settled(saved: SavedOver) {
    assert_eq!(saved, SavedOver::Saved, "it was known");
}

/// Two projects whose files differ throughout.
fn versions() -> [Project; 2] {
    let first = Document::sample().project().clone();
    let mut second = first.clone();
    second.title = "The other version".into();
    second.notes = "Longer than the first by a good deal. ".repeat(400);
    let piece = &mut second.pieces[0];
    piece.outline = piece.outline.scaled(1.5, 1.25);
    [first, second]
}

/// A project as it is made: one design, so many rounds.
fn made(version: usize) -> Project {
    let mut project = versions()[0].clone();
    project.making.begin(PieceId::new(0), None, 1).round = 3 + 4 * version as u32;
    project
}

fn book(version: usize) -> GaugeBook {
    let mut book = GaugeBook::default();
    for hand in 0..(1 + 30 * version) {
        let project = &versions()[0];
        let piece = &project.pieces[0];
        book.put(Entry {
            yarn: "Moor".into(),
            hook_mm: 3.0,
            maker: format!("hand {hand}"),
            gauge: plumpline_core::Gauge { hook_mm: 3.0, ..piece.gauge },
            firmness: piece.firmness,
            stiffness_along: 1.0,
            yarn_per_stitch: 9.5,
            date: "3 March".into(),
            uncertainty: [0.0; 5],
        })
        .expect("entered");
    }
    book
}

/// This program, to save the second version of this kind in `folder` when it is run.
pub(crate) fn saver(kind: Kind, folder: &Path) -> Command {
    let mut command = all_saver(folder);
    command.env(KIND, format!("{kind:?}"));
    command
}

/// This program, to save both versions of all kinds without end when it is run, each in the
/// folder below `folder` that has its name.
pub(crate) fn all_saver(folder: &Path) -> Command {
    let mut command = Command::new(std::env::current_exe().expect("this program"));
    command
        .args(["kinds::saves_when_asked", "--exact", "--nocapture", "--test-threads=1"])
        .env(FOLDER, folder)
        .stdin(Stdio::null())
        .stderr(Stdio::null());
    command
}

/// Does nothing as a test; asked by the environment, saves.
#[test]
fn saves_when_asked() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let folder = Path::new(&folder);
    if let Ok(asked) = std::env::var(KIND) {
        let kind = Kind::ALL.into_iter().find(|kind| format!("{kind:?}") == asked);
        return match kind.expect("a kind that there is").save(folder, 1) {
            Ok(()) => println!("\nsaved"),
            Err(why) => println!("\nrefused {why}"),
        };
    }
    // All at once, so that a kill falls upon each wherever it is.
    std::thread::scope(|threads| {
        for kind in Kind::ALL {
            let own = folder.join(format!("{kind:?}"));
            threads.spawn(move || {
                loop {
                    for version in [1, 0] {
                        kind.save(&own, version).expect("saved");
                    }
                }
            });
        }
        println!("ready");
    });
}
