//! Pictures that go along with a project: what is saved names them by where they lie beside its
//! file, never by the folders of whoever saved it, which would tell their name and be nowhere
//! on another machine.

use std::path::Path;

use plumpline_core::{Project, disk, file};

use super::picture::{found, own_name};
use crate::document::from_root;

/// What became of the pictures of a project that is saved.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Carried {
    /// Names of pictures in the project as it was, and in the file.
    pub renamed: Vec<(String, String)>,
    /// What is now where that was not asked for, or why it could not be; a sentence each.
    pub told: Vec<String>,
}

/// Makes the pictures of `project`, whose names count from the folder of the file `from`, go
/// along with the file that is to be saved at `to`: those at or below its folder are named
/// from there, others are copied beside it. One that cannot be copied keeps its own name
/// alone, and is looked for beside the file; nobody's save fails for a picture.
pub(crate) fn carry(project: &mut Project, from: Option<&Path>, to: &Path) -> Carried {
    let mut carried = Carried::default();
    let from = from.and_then(Path::parent).map(from_root);
    let Some(to) = from_root(to).parent().map(Path::to_owned) else { return carried };
    for path in pictures_of(project) {
        let was = path.clone();
        let stays = Path::new(&was).is_relative() && from.as_ref() == Some(&to);
        let is = match carried.renamed.iter().find(|(old, _)| *old == was) {
            Some((_, is)) => is.clone(),
            None if stays => continue,
            None => {
                let source = from_root(&found(Path::new(&was), from.as_deref()));
                let (is, told) = beside(&source, &to);
                carried.told.extend(told);
                carried.renamed.push((was, is.clone()));
                is
            }
        };
        *path = is;
    }
    carried
}

/// The names of all files of pictures that `project` holds.
pub(crate) fn pictures_of(project: &mut Project) -> impl Iterator<Item = &mut String> {
    let traced = project.pieces.iter_mut().filter_map(|piece| piece.picture.as_mut());
    traced.map(|picture| &mut picture.path).chain(project.sheet.files_mut())
}

/// Saves `project`, of which the file `from` was read, at `to`, its pictures with it; returns
/// what is to be told of them.
///
/// # Errors
/// As [`file::save`].
pub(crate) fn save(
    mut project: Project,
    from: Option<&Path>,
    to: &Path,
) -> plumpline_core::Result<Vec<String>> {
    let carried = carry(&mut project, from, to);
    file::save(&project, to).map(|()| carried.told)
}

/// The name in `folder` of the picture at `source`, copied there if need be, and what is to be
/// told of that.
fn beside(source: &Path, folder: &Path) -> (String, Option<String>) {
    if let Ok(below) = source.strip_prefix(folder)
        && let Some(name) = below.to_str()
    {
        // A picture in a folder beside the project is found on every system by such a name.
        return (name.replace('\\', "/"), None);
    }
    let name = own_name(source);
    let copied = || -> plumpline_core::Result<String> {
        let bytes = disk::read(source, disk::LARGEST_PICTURE)?;
        let (name, is_there) = free_name(&name, folder, &bytes);
        if !is_there {
            disk::write(&folder.join(&name), &bytes)?;
        }
        Ok(name)
    };
    match copied() {
        Ok(copy) => {
            let told = say!("trouble-copy-is-copied-next-to-the-project-so", copy = copy);
            (copy, Some(told))
        }
        Err(error) => {
            let told =
                say!("trouble-the-picture-does-not-go-with-the", error = error.to_string());
            (name, Some(told))
        }
    }
}

/// A name like `name` for `bytes` in `folder`: one that is free, or that stands for those very
/// bytes already; and which of both.
fn free_name(name: &str, folder: &Path, bytes: &[u8]) -> (String, bool) {
    let (stem, ending) = match name.rsplit_once('.') {
        Some((stem, ending)) => (stem, format!(".{ending}")),
        None => (name, String::new()),
    };
    let numbered = |n: u32| match n {
        1 => name.to_owned(),
        n => format!("{stem} ({n}){ending}"),
    };
    for n in 1..1000 {
        let name = numbered(n);
        let path = folder.join(&name);
        if path.symlink_metadata().is_err() {
            return (name, false);
        }
        if disk::read(&path, disk::LARGEST_PICTURE).is_ok_and(|there| there == bytes) {
            return (name, true);
        }
    }
    (numbered(1000), false)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use plumpline_core::piece::Picture;

    /// A project with a picture of this name to trace.
    fn traced(name: &str) -> Project {
        let mut project = Document::blank().project().clone();
        project.pieces[0].picture = Some(Picture::new(name, (0.0, 20.0), 60.0));
        project
    }

    fn name_of(project: &Project) -> &str {
        project.pieces[0].picture.as_ref().map_or("", |picture| &picture.path)
    }

    #[test]
    fn a_saved_project_names_no_folder_of_whoever_saved_it() {
        let folder = tempfile::tempdir().expect("a folder");
        let [work, photos] = ["work", "photos"].map(|name| folder.path().join(name));
        std::fs::create_dir_all(work.join("below")).expect("a folder");
        std::fs::create_dir(&photos).expect("a folder");
        let to = work.join("pear.ron");
        for (place, kept) in [
            (work.join("pear.png"), "pear.png"),
            (work.join("below/pear.png"), "below/pear.png"),
            (photos.join("side.png"), "side.png"),
        ] {
            std::fs::write(&place, kept).expect("written");
            let mut project = traced(place.to_str().expect("text"));
            let carried = carry(&mut project, None, &to);
            assert_eq!(name_of(&project), kept);
            assert_eq!(carried.renamed, [(place.to_str().expect("text").into(), kept.into())]);
            assert_eq!(carried.told.is_empty(), kept != "side.png", "{carried:?}");
            file::save(&project, &to).expect("saved");
            let text = std::fs::read_to_string(&to).expect("it is there");
            assert!(!text.contains("photos") && !text.contains(work.to_str().expect("text")));
            assert_eq!(std::fs::read(work.join(kept)).expect("beside it"), kept.as_bytes());
            // Saved once more it stays as it is.
            assert_eq!(carry(&mut project, Some(&to), &to), Carried::default());
        }
    }

    #[test]
    fn photographs_and_a_logo_go_along_as_traced_pictures_do() {
        use plumpline_core::project::sheet_design::OwnPhoto;
        let folder = tempfile::tempdir().expect("a folder");
        let [work, photos] = ["work", "photos"].map(|name| folder.path().join(name));
        for folder in [&work, &photos] {
            std::fs::create_dir(folder).expect("a folder");
        }
        let away = |name: &str| {
            let path = photos.join(name);
            std::fs::write(&path, name).expect("written");
            path.to_str().expect("text").to_owned()
        };
        let mut project = Document::blank().project().clone();
        project.sheet.logo = Some(away("logo.png"));
        project.sheet.photos =
            vec![OwnPhoto { path: away("cover.jpg"), caption: String::new() }];
        let to = work.join("pear.ron");
        let carried = carry(&mut project, None, &to);
        assert_eq!(carried.renamed.len(), 2);
        file::save(&project, &to).expect("saved");
        let again = file::load(&to).expect("it opens").sheet;
        assert_eq!(again.logo.as_deref(), Some("logo.png"));
        assert_eq!(again.photos[0].path, "cover.jpg");
        assert!(work.join("logo.png").is_file() && work.join("cover.jpg").is_file());
    }

    #[test]
    fn a_copy_takes_the_place_of_nothing_and_is_made_once() {
        let folder = tempfile::tempdir().expect("a folder");
        let [work, photos] = ["work", "photos"].map(|name| folder.path().join(name));
        for folder in [&work, &photos] {
            std::fs::create_dir(folder).expect("a folder");
        }
        std::fs::write(work.join("pear.png"), "another").expect("written");
        let source = photos.join("pear.png");
        std::fs::write(&source, "mine").expect("written");
        for _ in 0..3 {
            let mut project = traced(source.to_str().expect("text"));
            carry(&mut project, None, &work.join("pear.ron"));
            assert_eq!(name_of(&project), "pear (2).png");
        }
        assert_eq!(std::fs::read(work.join("pear.png")).expect("there"), b"another");
        assert_eq!(std::fs::read(work.join("pear (2).png")).expect("there"), b"mine");
        assert_eq!(std::fs::read_dir(&work).expect("a folder").count(), 2);
        // Saved elsewhere, a name that counted from the old folder still finds its picture.
        let mut project = traced("pear (2).png");
        let away = photos.join("away.ron");
        let carried = carry(&mut project, Some(&work.join("pear.ron")), &away);
        assert_eq!(name_of(&project), "pear (2).png");
        assert_eq!(carried.told.len(), 1);
        assert_eq!(std::fs::read(photos.join("pear (2).png")).expect("there"), b"mine");
    }

    #[test]
    fn a_picture_that_is_gone_keeps_its_own_name_and_stops_no_save() {
        let folder = tempfile::tempdir().expect("a folder");
        let to = folder.path().join("pear.ron");
        for gone in
            ["/nowhere/at/all/pear.png", r"\\server\share\pear.png", "//server/pear.png"]
        {
            let mut project = traced(gone);
            let carried = carry(&mut project, None, &to);
            assert_eq!(name_of(&project), "pear.png");
            assert_eq!(carried.told.len(), 1, "{gone}: {carried:?}");
            assert_eq!(carried.told[0].lines().count(), 1);
        }
    }
}
