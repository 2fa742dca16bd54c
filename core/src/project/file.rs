//! Project files: RON text with a format version, written so that a crash loses nothing: at
//! any moment the name holds either the old project or the new one, whole.

use std::path::Path;

use ron::error::SpannedError;
use ron::ser::PrettyConfig;
use serde::{Deserialize, Serialize};

use crate::disk;
use crate::error::{Error, Result};
use crate::piece::PieceId;
use crate::project::{FORMAT_VERSION, Project};

/// The first version whose pieces have ids; before it their places were what they were known
/// by.
const IDS_SINCE: u32 = 4;

/// What stands in the file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Saved<P> {
    format_version: u32,
    project: P,
}

/// The first thing read: enough to tell a file of a later version from a broken one.
#[derive(Deserialize)]
struct Header {
    format_version: u32,
}

/// The project in the file at `path`, checked.
///
/// # Errors
/// One line that names the file, and for trouble inside it the line and the field: a file
/// that cannot be read, is not a project, is cut short, comes from a later version, or
/// holds numbers no piece can have.
pub fn load(path: &Path) -> Result<Project> {
    let text = disk::read_text(path, disk::LARGEST_PROJECT)?;
    parse(&text).map_err(|e| e.within(&path.display().to_string()))
}

/// The project in `text`, checked; errors name the line.
///
/// # Errors
/// As [`load`], without the file's name.
pub fn parse(text: &str) -> Result<Project> {
    let header: std::result::Result<Header, _> = ron::from_str(text);
    if let Ok(Header { format_version }) = header
        && format_version > FORMAT_VERSION
    {
        return Err(Error::new(
            format!(
                "line {}, format_version",
                line_of_key(text, "format_version").unwrap_or(1)
            ),
            format!(
                "version {format_version} is newer than this program, which reads {FORMAT_VERSION}"
            ),
            "open it with a newer Plumpline",
        ));
    }
    let mut saved: Saved<Project> = ron::from_str(text).map_err(|e| misread(text, &e))?;
    if saved.format_version < IDS_SINCE {
        for (number, piece) in (0..).zip(&mut saved.project.pieces) {
            piece.id = PieceId::new(number);
        }
    }
    if saved.format_version == 0 {
        return Err(Error::new(
            format!(
                "line {}, format_version",
                line_of_key(text, "format_version").unwrap_or(1)
            ),
            "version 0 never existed",
            format!("write {FORMAT_VERSION}"),
        ));
    }
    saved.project.validate().map_err(|e| match line_of(text, &e) {
        Some(line) => e.within(&format!("line {line}")),
        None => e,
    })?;
    Ok(saved.project)
}

/// The text of a project file.
///
/// # Errors
/// If the project would not load again: nothing is ever saved that cannot be opened.
pub fn write(project: &Project) -> Result<String> {
    project.validate()?;
    let saved = Saved { format_version: FORMAT_VERSION, project };
    let style = PrettyConfig::new().depth_limit(5).indentor("  ");
    let text = ron::ser::to_string_pretty(&saved, style).map(|text| text + "\n");
    let text = text.map_err(|e| {
        Error::new("project", format!("it cannot be written ({e})"), "report this")
    })?;
    if text.len() as u64 > disk::LARGEST_PROJECT {
        let what = format!("it comes to more than {} MB", disk::LARGEST_PROJECT >> 20);
        return Err(Error::new("project", what, "save its pieces in several projects"));
    }
    Ok(text)
}

/// Saves `project` at `path`: written to a temporary file beside it, flushed, renamed.
///
/// # Errors
/// Names the file and what stopped it; the file at `path` is then as it was.
pub fn save(project: &Project, path: &Path) -> Result<()> {
    let text = write(project)?;
    disk::replace(path, text.as_bytes()).map_err(|e| unsaved(path, &e.to_string()))
}

/// The same, though the file at `path` is read-only, which it stays: for whoever was asked.
///
/// # Errors
/// As [`save`].
pub fn save_read_only(project: &Project, path: &Path) -> Result<()> {
    let text = write(project)?;
    disk::replace_read_only(path, text.as_bytes()).map_err(|e| unsaved(path, &e.to_string()))
}

fn unsaved(path: &Path, why: &str) -> Error {
    Error::new(
        path.display().to_string(),
        format!("it could not be saved ({why})"),
        "check the folder and its free space, or save elsewhere",
    )
}

/// What came of saving over a file that others may have changed.
#[derive(Debug, Clone, PartialEq)]
pub enum SavedOver {
    /// The project stands in the file.
    Saved,
    /// The file holds something else than what was known of it, and was left as it is: the
    /// project in it, or none where it holds no project that can be read.
    Changed(Option<Box<Project>>),
}

/// Saves `project` at `path` if that still holds one of the projects `known`, or this one
/// already, or nothing at all.
///
/// # Errors
/// As [`save`].
pub fn save_over(project: &Project, path: &Path, known: &[&Project]) -> Result<SavedOver> {
    // From here to the end nobody who asks for a turn changes the file.
    let _turn = disk::turn(path).map_err(|e| unsaved(path, &e.what))?;
    match standing(path) {
        Some(Some(theirs)) if theirs != *project && !known.contains(&&theirs) => {
            Ok(SavedOver::Changed(Some(Box::new(theirs))))
        }
        Some(None) => Ok(SavedOver::Changed(None)),
        _ => save(project, path).map(|()| SavedOver::Saved),
    }
}

/// Saves how far the making of `project` is at `path`, as [`save_over`] does. Progress that
/// others made on the same design since gives way; a design that is none of the `known` ones
/// is left as it is.
///
/// # Errors
/// As [`save`].
pub fn save_making(project: &Project, path: &Path, known: &[&Project]) -> Result<SavedOver> {
    let _turn = disk::turn(path).map_err(|e| unsaved(path, &e.what))?;
    let same = |theirs: &Project| {
        let unmade = |of: &Project| Project { making: of.making.clone(), ..theirs.clone() };
        known.iter().chain([&project]).any(|known| unmade(known) == **known)
    };
    match standing(path) {
        Some(Some(theirs)) if !same(&theirs) => Ok(SavedOver::Changed(Some(Box::new(theirs)))),
        Some(None) => Ok(SavedOver::Changed(None)),
        _ => save(project, path).map(|()| SavedOver::Saved),
    }
}

/// What stands at `path`: nothing, something that is no project, or a project.
fn standing(path: &Path) -> Option<Option<Project>> {
    std::fs::symlink_metadata(path).ok().map(|_| load(path).ok())
}

/// An error of the RON reader, in one line.
fn misread(text: &str, error: &SpannedError) -> Error {
    let line = error.span.start.line;
    // The field being read: the last name before the place where reading stopped.
    let read: String = text.lines().take(line).collect::<Vec<_>>().join("\n");
    let column = error.span.start.col.saturating_sub(1);
    let last_line = read.lines().last().unwrap_or_default();
    let before: String = last_line.chars().take(column).collect();
    let field = [before.as_str(), last_line]
        .iter()
        .find_map(|part| part.rsplit(':').nth(1))
        .and_then(|name| name.rsplit(|c: char| !(c.is_alphanumeric() || c == '_')).next())
        .filter(|name| !name.is_empty());
    let what = error.code.to_string().replace('\n', " ");
    let cut_short = matches!(
        error.code,
        ron::Error::Eof
            | ron::Error::ExpectedStructLikeEnd
            | ron::Error::ExpectedArrayEnd
            | ron::Error::ExpectedMapEnd
            | ron::Error::ExpectedStringEnd
    );
    let mend = if cut_short {
        "the file may be cut short: open an older copy"
    } else {
        "mend that line or open another copy"
    };
    let place = match field {
        Some(field) => format!("line {line}, {field}"),
        None => format!("line {line}"),
    };
    Error::new(place, what, mend)
}

/// The line of the number that `error` is about, counted from 1.
fn line_of(text: &str, error: &Error) -> Option<usize> {
    let field = error.place.rsplit([',', '.']).next()?.trim();
    let wanted = error.number();
    let value_after = |line: &str| -> Option<f64> {
        let rest = line.split_once(&format!("{field}:"))?.1.trim();
        rest.trim_matches(['(', ')', ',', ' ']).split(',').next()?.trim().parse().ok()
    };
    let same = |a: f64, b: f64| a == b || (a.is_nan() && b.is_nan());
    let exact = wanted.and_then(|wanted| {
        text.lines().position(|line| value_after(line).is_some_and(|v| same(v, wanted)))
    });
    // Several fields may stand on one line, or the trouble be between fields: fall back to
    // the innermost name of the place that the file knows.
    let by_value = || {
        let wanted = wanted?;
        text.lines().position(|line| {
            line.contains(&format!("{field}:"))
                && line
                    .split(|c: char| !(c.is_alphanumeric() || "+-.".contains(c)))
                    .any(|word| word.parse::<f64>().is_ok_and(|v| same(v, wanted)))
        })
    };
    let by_name = || error.place.rsplit([',', '.']).find_map(|w| line_of_key(text, w.trim()));
    exact.or_else(by_value).map(|i| i + 1).or_else(by_name)
}

fn line_of_key(text: &str, key: &str) -> Option<usize> {
    let key = key.split_whitespace().next().filter(|k| !k.is_empty())?;
    text.lines()
        .position(|line| line.trim_start().starts_with(&format!("{key}:")))
        .map(|i| i + 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Gauge, Knot, Outline, Piece, YarnFace};

    fn project() -> Project {
        let outline = Outline {
            knots: vec![Knot::new(0.0, 0.0), Knot::new(40.0, 40.0), Knot::new(0.0, 80.0)],
        };
        Project::of_piece(Piece::new("Ball", outline, Gauge::default()))
    }

    #[test]
    fn what_is_saved_loads_equal() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("ball.ron");
        save(&project(), &path).expect("saves");
        assert_eq!(load(&path).expect("loads"), project());
        save(&project(), &path).expect("saves over itself");
        let names: Vec<_> = std::fs::read_dir(folder.path()).expect("reads").collect();
        assert_eq!(names.len(), 1, "nothing is left beside the file");
    }

    #[test]
    fn what_another_program_wrote_is_not_saved_over() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("ball.ron");
        let known = project();
        let mine = Project { title: "Mine".into(), ..known.clone() };
        let theirs = Project { title: "Theirs".into(), ..known.clone() };
        let mut worked = known.clone();
        worked.making.at.push(crate::making::Progress::new(PieceId::default(), 1));
        // Nothing there, then what is known.
        assert_eq!(save_over(&known, &path, &[&known]), Ok(SavedOver::Saved));
        assert_eq!(save_over(&mine, &path, &[&known]), Ok(SavedOver::Saved));
        assert_eq!(load(&path), Ok(mine.clone()));
        // Another design, and what cannot be read.
        save(&theirs, &path).expect("saved");
        let changed = Ok(SavedOver::Changed(Some(Box::new(theirs.clone()))));
        assert_eq!(save_over(&mine, &path, &[&known]), changed);
        assert_eq!(save_making(&worked, &path, &[&known]), changed);
        assert_eq!(load(&path), Ok(theirs));
        std::fs::write(&path, "half a fi").expect("written");
        assert_eq!(save_over(&mine, &path, &[&known]), Ok(SavedOver::Changed(None)));
        assert_eq!(save_making(&worked, &path, &[&known]), Ok(SavedOver::Changed(None)));
        assert_eq!(std::fs::read_to_string(&path).expect("it is there"), "half a fi");
        // What stands there already is no change.
        save(&mine, &path).expect("saved");
        assert_eq!(save_over(&mine, &path, &[&known]), Ok(SavedOver::Saved));
        // Another's progress is no other design.
        save(&worked, &path).expect("saved");
        assert_eq!(save_making(&known, &path, &[&known]), Ok(SavedOver::Saved));
        assert_eq!(load(&path), Ok(known));
    }

    #[test]
    fn bad_numbers_name_their_line_and_field() {
        let mut project = project();
        project.pieces[0].simplicity = Some(0.5);
        let text = write(&project).expect("writes");
        for (field, bad) in [
            ("stitches", "0.0"),
            ("stitches", "-3.0"),
            ("stitches", "NaN"),
            ("along_mm", "1e99"),
            ("simplicity", "Some(2.0"),
            ("firmness", "0.5"),
            ("radius_mm", "-1.0"),
            ("height_mm", "inf"),
            ("metres_per_100g", "0.0"),
        ] {
            let at = text.find(&format!("{field}:")).expect("the field is written");
            let end = at + text[at..].find([',', ')', '\n']).expect("a line ends");
            let broken = format!("{}{field}: {bad}{}", &text[..at], &text[end..]);
            let error = parse(&broken).expect_err("refused").to_string();
            let line = text[..at].lines().count();
            assert!(error.contains(&format!("line {line},")), "{field} {bad}: {error}");
            assert!(error.contains(field), "{field} {bad}: {error}");
            assert_eq!(error.lines().count(), 1);
        }
    }

    #[test]
    fn a_file_cut_anywhere_is_refused_in_one_line() {
        let text = write(&project()).expect("writes");
        for end in (0..text.len() - 2).filter(|&i| text.is_char_boundary(i)) {
            let error = parse(&text[..end]).expect_err("a cut file").to_string();
            assert!(error.starts_with("line ") && error.lines().count() == 1, "{error}");
        }
    }

    #[test]
    fn the_words_are_saved_and_older_files_have_the_studios_own() {
        let mut project = project();
        project.wording.lexicon = "de".into();
        project.wording.style = "stars".into();
        let text = write(&project).expect("writes");
        assert_eq!(parse(&text).expect("reads"), project);
        let start = text.find("    wording:").expect("the choice is written");
        let end = start + text[start..].find("),").expect("it ends") + 2;
        let older = format!("{}{}", &text[..start], &text[end..]);
        let read = parse(&older).expect("a file without the choice");
        assert_eq!(read.wording, crate::WordingChoice::default());
        let wrong = text.replace("\"stars\"", "\"frills\"");
        let error = parse(&wrong).expect_err("no such style").to_string();
        assert!(error.contains("style") && error.contains("frills"), "{error}");
        assert_eq!(error.lines().count(), 1);
    }

    #[test]
    fn yarns_say_what_they_look_like_and_older_ones_are_smooth() {
        let mut project = project();
        let older = write(&project).expect("writes");
        assert!(!older.contains("face:"), "what every yarn has need not be said: {older}");
        assert_eq!(parse(&older).expect("reads").yarns[0].face, YarnFace::Smooth);
        for face in YarnFace::ALL {
            project.yarns[0].face = face;
            let text = write(&project).expect("writes");
            assert_eq!(parse(&text).expect("reads"), project);
        }
        let text = write(&project).expect("writes").replace("Chenille", "Velvet");
        let error = parse(&text).expect_err("no such face").to_string();
        assert!(error.contains("face") && error.contains("Velvet"), "{error}");
    }

    #[test]
    fn a_file_from_the_future_says_so() {
        let error = parse("(format_version: 7, project: (petals: [1, \"x\"]), more: {1: 2})")
            .expect_err("a newer file");
        assert!(error.what.contains("version 7"), "{error}");
    }
}
