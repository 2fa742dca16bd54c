//! Kept corpora, and bytes made of them by chance, always the same.

use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::time::{Duration, Instant};

use plumpline_tests::corpus::clean;
use plumpline_tests::mutate::Mutator;
use plumpline_tests::planted::planted;

/// Numbers that a reader may trip over.
const NUMBERS: [&str; 18] = [
    "0",
    "-0.0",
    "1",
    "2",
    "3",
    "0.05",
    "1e-300",
    "1e308",
    "-1e308",
    "1e999",
    "NaN",
    "inf",
    "4294967295",
    "4294967296",
    "20000",
    "3000",
    "1200",
    "-7",
];

/// No case takes as long, however slow the machine: what does has no end.
const LONGEST: Duration = Duration::from_secs(60);

/// The seeds of a target.
pub(crate) fn seeds(target: &str) -> Vec<Vec<u8>> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let files = |folder: PathBuf| -> Vec<Vec<u8>> {
        let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
        let mut paths: Vec<PathBuf> = entries.map(|entry| entry.path()).collect();
        paths.sort();
        paths.iter().filter_map(|path| std::fs::read(path).ok()).collect()
    };
    let mut seeds = files(root.join("corpus/fuzz").join(target));
    match target {
        "project" => {
            seeds.extend(files(root.join("../sample-projects")));
            seeds.extend(
                (1..=3).flat_map(|v| files(root.join(format!("projects/version-{v}")))),
            );
        }
        "pattern" => {
            seeds.extend(clean().into_iter().map(|pattern| pattern.text.as_bytes().to_vec()));
            seeds.extend(planted().into_iter().map(|case| case.text.into_bytes()));
        }
        _ => {}
    }
    assert!(!seeds.is_empty(), "{target} has no corpus");
    seeds
}

/// Makes bytes of a corpus; equal seeds make equal bytes.
pub(crate) struct Spoiler {
    chance: fastrand::Rng,
    texts: Mutator,
    seeds: Vec<Vec<u8>>,
}

impl Spoiler {
    pub(crate) fn new(seeds: Vec<Vec<u8>>, seed: u64) -> Self {
        let chance = fastrand::Rng::with_seed(seed);
        Self { chance, texts: Mutator::new(seed), seeds }
    }

    /// One of the seeds, spoilt.
    pub(crate) fn next(&mut self) -> Vec<u8> {
        let [one, other] = [(); 2].map(|()| self.chance.usize(..self.seeds.len()));
        let (one, other) = (self.seeds[one].clone(), self.seeds[other].clone());
        match (std::str::from_utf8(&one), std::str::from_utf8(&other)) {
            (Ok(text), Ok(other)) if !text.is_empty() => match self.chance.u8(..4) {
                0 => self.texts.mutate(text, other).into_bytes(),
                1 => self.bytes(one, other.as_bytes()),
                // Sound but for its numbers, it comes furthest.
                _ => (0..=self.chance.u8(..3))
                    .fold(text.to_owned(), |text, _| self.renumbered(&text))
                    .into_bytes(),
            },
            _ => self.bytes(one, &other),
        }
    }

    /// One number of a text for another.
    fn renumbered(&mut self, text: &str) -> String {
        let digit = |c: char| c.is_ascii_digit() || c == '.';
        let starts: Vec<usize> = text
            .char_indices()
            .filter(|&(i, c)| c.is_ascii_digit() && !text[..i].ends_with(digit))
            .map(|(i, _)| i)
            .collect();
        let Some(&at) = self.chance.choice(&starts) else { return text.to_owned() };
        let end = text[at..].find(|c| !digit(c)).map_or(text.len(), |n| at + n);
        let new = match self.chance.u8(..3) {
            0 => NUMBERS[self.chance.usize(..NUMBERS.len())].to_owned(),
            1 => format!("{:.2}", 100.0 * self.chance.f64()),
            _ => self.chance.u32(..60).to_string(),
        };
        format!("{}{new}{}", &text[..at], &text[end..])
    }

    /// Bits turned, bytes put in, left out, or taken from another.
    fn bytes(&mut self, mut bytes: Vec<u8>, other: &[u8]) -> Vec<u8> {
        for _ in 0..=self.chance.u8(..8) {
            let at = self.chance.usize(..=bytes.len());
            match self.chance.u8(..5) {
                0 if at < bytes.len() => bytes[at] ^= 1 << self.chance.u8(..8),
                1 => bytes.insert(at, self.chance.u8(..)),
                2 if at < bytes.len() => {
                    bytes.remove(at);
                }
                3 => {
                    let from = self.chance.usize(..=other.len());
                    bytes.truncate(at);
                    bytes.extend(&other[from..]);
                }
                _ => bytes.extend((0..6).map(|_| self.chance.u8(..))),
            }
        }
        bytes
    }
}

/// Which case is under way and since when, for whoever watches that each has an end.
pub(crate) struct Watched {
    now: Mutex<(Instant, Vec<u8>)>,
}

impl Watched {
    /// Watches from a thread of its own; what takes too long ends the program.
    pub(crate) fn begin() -> &'static Self {
        let watched: &'static Self =
            Box::leak(Box::new(Self { now: Mutex::new((Instant::now(), Vec::new())) }));
        let watch = move || {
            loop {
                std::thread::sleep(Duration::from_secs(1));
                let (since, bytes) = watched.now.lock().expect("whole").clone();
                if since.elapsed() > LONGEST {
                    let place = std::env::temp_dir().join("plumpline-without-end");
                    std::fs::write(&place, bytes).ok();
                    println!("what is kept in {} has no end", place.display());
                    std::process::exit(3);
                }
            }
        };
        let thread = std::thread::Builder::new().name("watch".into());
        thread.spawn(watch).expect("a thread to watch from");
        watched
    }

    /// Begins with these bytes; returns how long those before took.
    pub(crate) fn next(&self, bytes: &[u8]) -> Duration {
        let mut now = self.now.lock().expect("whole");
        let took = now.0.elapsed();
        *now = (Instant::now(), bytes.to_vec());
        took
    }
}

/// The most memory this process ever had in use, MB, where the system tells (`proc(5)`).
pub(crate) fn most_memory_mb() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    Some(line.split_whitespace().nth(1)?.parse::<u64>().ok()? / 1024)
}
