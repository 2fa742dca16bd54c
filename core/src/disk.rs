//! Reading and writing files, with limits: all I/O of the product goes through here.
//!
//! What is read is a plain file no larger than its kind may be; nothing here waits for a pipe
//! or reads a device. What is written replaces the old file in one step.

use std::fs::{self, File};
use std::io::{self, Read, Write as _};
use std::path::{Path, PathBuf};

use crate::error::{Error, Result};

/// The largest project file, bytes.
pub const LARGEST_PROJECT: u64 = 8 << 20;
/// The largest written pattern, bytes: some five hundred pages of text.
pub const LARGEST_PATTERN: u64 = 2 << 20;
/// The largest file of another kind that a written pattern is read from, bytes: with pictures.
pub const LARGEST_DOCUMENT: u64 = 32 << 20;
/// The largest measured profile, bytes.
pub const LARGEST_PROFILE: u64 = 4 << 20;
/// The largest drawing of a profile, bytes.
pub const LARGEST_DRAWING: u64 = 16 << 20;
/// The largest mesh of a solid, bytes.
pub const LARGEST_SOLID: u64 = 256 << 20;
/// The largest picture, bytes.
pub const LARGEST_PICTURE: u64 = 64 << 20;
/// The largest gauge book, bytes.
pub const LARGEST_BOOK: u64 = 4 << 20;

/// How many links may stand one behind another, as the system has it (`path_resolution(7)`).
const MOST_LINKS: usize = 40;

/// The bytes of the plain file at `path`.
///
/// # Errors
/// One line: no such file, a folder, pipe or device, more than `largest` bytes, no leave to
/// read it.
pub fn read(path: &Path, largest: u64) -> Result<Vec<u8>> {
    let file = path.display().to_string();
    let about = fs::metadata(path).map_err(|e| unreadable(&file, &e))?;
    if !about.is_file() {
        return Err(Error::new(file, kind_of(&about), "choose a plain file"));
    }
    let open = open_at_once(path).map_err(|e| unreadable(&file, &e))?;
    // Another thing may have taken the file's place since.
    let about = open.metadata().map_err(|e| unreadable(&file, &e))?;
    if !about.is_file() {
        return Err(Error::new(file, kind_of(&about), "choose a plain file"));
    }
    read_from(open, &file, largest)
}

/// Something that lies in a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FolderEntry {
    /// Its name.
    pub name: String,
    /// Whether it is a folder itself.
    pub is_folder: bool,
}

/// Most entries of a folder that are told: more than anybody looks through.
const MOST_ENTRIES: usize = 4000;

/// What lies in the folder at `path`: folders first, then plain files, each by name. What is
/// hidden, what has a name that is no text, pipes and devices are left out.
///
/// # Errors
/// One line: no such folder, no leave to look into it.
pub fn folder(path: &Path) -> Result<Vec<FolderEntry>> {
    let name = path.display().to_string();
    let entries = fs::read_dir(path).map_err(|e| unreadable(&name, &e))?;
    let told = |entry: io::Result<fs::DirEntry>| {
        let entry = entry.ok()?;
        let name = entry.file_name().into_string().ok()?;
        // A link is what it leads to.
        let about = fs::metadata(entry.path()).ok()?;
        let seen = !name.starts_with('.') && (about.is_dir() || about.is_file());
        seen.then(|| FolderEntry { name, is_folder: about.is_dir() })
    };
    let mut list: Vec<FolderEntry> = entries.filter_map(told).take(MOST_ENTRIES).collect();
    list.sort_by_key(|entry| (!entry.is_folder, entry.name.to_lowercase()));
    Ok(list)
}

/// Opens what is at `path` to read it, waiting for nobody where it has become a pipe.
fn open_at_once(path: &Path) -> io::Result<File> {
    let mut options = fs::OpenOptions::new();
    options.read(true);
    #[cfg(target_os = "linux")]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        // O_NONBLOCK of Linux on both processors that are built for; asm-generic/fcntl.h.
        options.custom_flags(0o4000);
    }
    options.open(path)
}

/// All the bytes of `source`, which errors call `name`.
///
/// # Errors
/// One line: more than `largest` bytes, or what the system says.
pub fn read_from(source: impl Read, name: &str, largest: u64) -> Result<Vec<u8>> {
    let mut bytes = Vec::new();
    // One byte more than may be there tells whether there is more; a length that the system
    // told beforehand may be wrong.
    source.take(largest + 1).read_to_end(&mut bytes).map_err(|e| unreadable(name, &e))?;
    if bytes.len() as u64 > largest {
        let what = format!("it is larger than {}", size_in_words(largest));
        return Err(Error::new(name, what, "choose a smaller file"));
    }
    Ok(bytes)
}

/// The text of the plain file at `path`, without the mark of its byte order.
///
/// # Errors
/// As [`read`], and for what is not UTF-8.
pub fn read_text(path: &Path, largest: u64) -> Result<String> {
    let bytes = read(path, largest)?;
    let text = String::from_utf8(bytes).map_err(|_| {
        Error::new(path.display().to_string(), "it is not text", "check the name")
    })?;
    Ok(match text.strip_prefix('\u{feff}') {
        Some(rest) => rest.to_owned(),
        None => text,
    })
}

/// Writes `bytes` at `path`, as [`replace`] does.
///
/// # Errors
/// One line; the file at `path` is then as it was.
pub fn write(path: &Path, bytes: &[u8]) -> Result<()> {
    replace(path, bytes).map_err(|e| {
        let what = match e.kind() {
            io::ErrorKind::InvalidInput | io::ErrorKind::ReadOnlyFilesystem => e.to_string(),
            _ => format!("it cannot be written ({e})"),
        };
        Error::new(path.display().to_string(), what, "check the folder or choose another")
    })
}

/// How the names of files begin and end that are written beside what they will replace.
const TORN: (&str, &str) = (".plumpline-", ".tmp");

/// Files beside others that are older than this belong to no save under way, s.
const TORN_AFTER_S: u64 = 600;

/// Removes from `folder` what saves that were cut short left there. What cannot be removed, or
/// may still be written, stays: nothing depends on it.
pub fn sweep(folder: &Path) {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    for entry in entries {
        let name = entry.file_name();
        let is_torn =
            name.to_str().is_some_and(|n| n.starts_with(TORN.0) && n.ends_with(TORN.1));
        let age = || entry.metadata().ok()?.modified().ok()?.elapsed().ok();
        if is_torn && age().is_some_and(|age| age.as_secs() > TORN_AFTER_S) {
            fs::remove_file(entry.path()).ok();
        }
    }
}

/// Replaces the file at `path` by `bytes` in one step: whoever reads it, whenever the power
/// fails, finds the old file or the new one, whole. A link keeps pointing at the file it
/// stands for, and that file keeps its permissions.
///
/// # Errors
/// Whatever the system says, and for what is no plain file or is read-only; the file at `path`
/// is then as it was.
pub fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    if is_read_only(path) {
        return Err(io::Error::new(io::ErrorKind::ReadOnlyFilesystem, "it is read-only"));
    }
    replace_read_only(path, bytes)
}

/// Whether a plain file stands at `path` that is marked as not to be changed.
pub fn is_read_only(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|about| about.is_file() && about.permissions().readonly())
}

/// The same as [`replace`], though the file may be read-only, which it stays: for whoever was
/// asked.
///
/// # Errors
/// Whatever the system says, and for what is no plain file.
pub fn replace_read_only(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let target = destination(path)?;
    let existing = match fs::metadata(&target) {
        Ok(about) if !about.is_file() => {
            return Err(io::Error::new(io::ErrorKind::InvalidInput, kind_of(&about)));
        }
        Ok(about) => Some(about.permissions()),
        Err(_) => None,
    };
    let folder = folder_of(&target);
    let mut builder = tempfile::Builder::new();
    builder.prefix(TORN.0).suffix(TORN.1);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        builder.permissions(fs::Permissions::from_mode(0o666)); // The umask still applies.
    }
    let mut beside = builder.tempfile_in(&folder)?;
    beside.write_all(bytes)?;
    if let Some(permissions) = existing {
        beside.as_file().set_permissions(permissions)?;
    }
    beside.as_file().sync_all()?;
    beside.persist(&target).map_err(|e| e.error)?;
    // The rename itself must reach the disk too; not every system lets a folder be opened.
    if let Ok(folder) = File::open(&folder) {
        folder.sync_all().ok();
    }
    Ok(())
}

/// How long a turn is waited for, s: whoever has it writes one small file.
const TURN_AFTER_S: u64 = 10;
/// Between two looks whether it is our turn.
const BETWEEN_LOOKS: std::time::Duration = std::time::Duration::from_millis(5);
const LOOKS: u64 = 1000 * TURN_AFTER_S / 5;

/// A turn at changing a file: as long as it lasts, others who ask for one wait.
#[derive(Debug)]
pub struct Turn {
    /// The folder, open and locked; the system lets go of it however the program ends.
    _folder: Option<File>,
}

/// Waits for a turn at changing the file at `path`, for whoever reads it, changes what it read
/// and writes that. The folder is what is locked: the file itself is another after each
/// [`replace`], and a file for the lock alone would be left behind.
///
/// # Errors
/// One line, where there is no such folder, or another program keeps it to itself without
/// end. A system without locks gives the turn at once.
pub fn turn(path: &Path) -> Result<Turn> {
    let shown = path.display().to_string();
    let target = destination(path).map_err(|e| unreadable(&shown, &e))?;
    let folder = folder_of(&target);
    if cfg!(not(unix)) {
        return Ok(Turn { _folder: None }); // A folder is no file there.
    }
    let folder = File::open(folder).map_err(|e| unreadable(&shown, &e))?;
    for _ in 0..LOOKS {
        match folder.try_lock() {
            Ok(()) => return Ok(Turn { _folder: Some(folder) }),
            Err(fs::TryLockError::WouldBlock) => std::thread::sleep(BETWEEN_LOOKS),
            Err(fs::TryLockError::Error(e)) if e.kind() == io::ErrorKind::Unsupported => {
                return Ok(Turn { _folder: None });
            }
            Err(fs::TryLockError::Error(e)) => return Err(unreadable(&shown, &e)),
        }
    }
    let what = format!("another program has held its folder for {TURN_AFTER_S} s");
    Err(Error::new(shown, what, "try again, or end that program"))
}

/// The folder that the file at `path` is in.
fn folder_of(path: &Path) -> PathBuf {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent.to_owned(),
        _ => PathBuf::from("."),
    }
}

/// The file that `path` stands for once its links are followed, whether it is there or not.
fn destination(path: &Path) -> io::Result<PathBuf> {
    let mut at = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&at) {
            Ok(to) => at = at.parent().map_or(to.clone(), |folder| folder.join(&to)),
            Err(_) => return Ok(at),
        }
    }
    Err(io::Error::new(io::ErrorKind::InvalidInput, "its links run in a circle"))
}

/// What a thing in a folder is, if it is no plain file.
fn kind_of(about: &fs::Metadata) -> &'static str {
    if about.is_dir() { "it is a folder" } else { "it is a pipe or a device, not a file" }
}

fn unreadable(file: &str, error: &io::Error) -> Error {
    let what = match error.kind() {
        io::ErrorKind::NotFound => "there is no such file".to_owned(),
        _ => format!("it cannot be read ({error})"),
    };
    Error::new(file, what, "check the name")
}

/// `bytes` in MB, or kB where that is less than one.
fn size_in_words(bytes: u64) -> String {
    if bytes >= 1 << 20 { format!("{} MB", bytes >> 20) } else { format!("{} kB", bytes >> 10) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_read_up_to_its_limit_and_never_beyond() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("a.txt");
        fs::write(&path, "\u{feff}pear").expect("written");
        assert_eq!(read_text(&path, 7), Ok("pear".to_owned()));
        let error = read(&path, 6).expect_err("too large").to_string();
        assert!(error.contains("larger") && error.lines().count() == 1, "{error}");
        // A source without an end.
        let error = read_from(io::repeat(7), "zeros", 1 << 20).expect_err("too large");
        assert!(error.what.contains("1 MB"), "{error}");
        let error = read(folder.path(), 9).expect_err("a folder");
        assert!(error.what.contains("folder"), "{error}");
    }

    #[test]
    fn what_torn_saves_left_is_swept_and_nothing_else() {
        let folder = tempfile::tempdir().expect("a folder");
        let names = [".plumpline-old.tmp", ".plumpline-new.tmp", "float.ron", "notes.tmp"];
        let long_ago =
            std::time::SystemTime::now() - std::time::Duration::from_secs(2 * TORN_AFTER_S);
        for name in names {
            let file = File::create(folder.path().join(name)).expect("made");
            if name != ".plumpline-new.tmp" {
                file.set_modified(long_ago).expect("its time is set");
            }
        }
        sweep(folder.path());
        let left = names.map(|name| folder.path().join(name).exists());
        assert_eq!(left, [false, true, true, true], "one that is young may be under way");
    }

    #[cfg(unix)]
    #[test]
    fn devices_and_pipes_are_neither_read_nor_replaced() {
        use std::os::unix::fs::FileTypeExt as _;
        let folder = tempfile::tempdir().expect("a folder");
        let pipe = folder.path().join("pipe");
        let made = std::process::Command::new("mkfifo").arg(&pipe).status();
        assert!(made.is_ok_and(|s| s.success()), "a pipe");
        let link = folder.path().join("link");
        std::os::unix::fs::symlink(&pipe, &link).expect("a link");
        for path in [Path::new("/dev/zero"), &pipe, &link] {
            let error = read(path, 9).expect_err("no file").to_string();
            assert!(error.contains("device"), "{error}");
            let error = write(path, b"x").expect_err("no file").to_string();
            assert!(error.contains("device"), "{error}");
        }
        assert!(fs::metadata(&pipe).expect("it is there").file_type().is_fifo());
        assert!(fs::symlink_metadata(&link).expect("it is there").is_symlink());
    }

    #[cfg(unix)]
    #[test]
    fn links_are_followed_and_permissions_kept() {
        use std::os::unix::fs::{PermissionsExt as _, symlink};
        let folder = tempfile::tempdir().expect("a folder");
        let at = |name: &str| folder.path().join(name);
        // To a file that is there, by way of another link, and to one that is not.
        fs::write(at("real"), "old").expect("written");
        fs::set_permissions(at("real"), fs::Permissions::from_mode(0o640)).expect("set");
        symlink("real", at("one")).expect("a link");
        symlink("one", at("two")).expect("a link");
        symlink("yet to come", at("dangling")).expect("a link");
        for (name, stands_for) in [("two", "real"), ("dangling", "yet to come")] {
            write(&at(name), b"new").expect("written");
            assert!(fs::symlink_metadata(at(name)).expect("there").is_symlink(), "{name}");
            assert_eq!(fs::read(at(stands_for)).expect("there"), b"new");
        }
        let mode = fs::metadata(at("real")).expect("there").permissions().mode();
        assert_eq!(mode & 0o777, 0o640);
        symlink("round", at("about")).expect("a link");
        symlink("about", at("round")).expect("a link");
        assert!(write(&at("round"), b"x").is_err());
        // What is read-only stays as it is.
        fs::set_permissions(at("real"), fs::Permissions::from_mode(0o440)).expect("set");
        let error = write(&at("real"), b"newer").expect_err("read-only").to_string();
        assert!(error.contains("read-only") && is_read_only(&at("two")), "{error}");
        assert_eq!(fs::read(at("real")).expect("there"), b"new");
        // Unless it was asked about.
        replace_read_only(&at("two"), b"asked").expect("written");
        assert_eq!(fs::read(at("real")).expect("there"), b"asked");
        assert!(is_read_only(&at("real")) && !is_read_only(&at("dangling")));
        assert_eq!(fs::read_dir(folder.path()).expect("reads").count(), 7, "nothing is left");
    }
}
