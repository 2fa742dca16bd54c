//! The command line: the studio's work without a window, so that it can be scripted.
//!
//! Errors go to standard error in one line; the exit status is 2 for bad use, 1 for bad
//! input, and 3 where a pattern was proofread and does not add up.

mod assemble;
mod calibrate;
mod compare;
mod length;
mod lesson;
mod new;
mod out;
mod picture;
mod picture_toy;
mod proofread;
mod report;
mod resize;
mod rounds;
mod seams;
mod sheet;
mod sized;
mod testers;
mod trace;

use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

use out::complain;

/// Exit status for a command that was put wrongly.
const BAD_USE: u8 = 2;
/// Exit status for input that cannot be used.
const BAD_INPUT: u8 = 1;

/// Plumpline: drag a profile, get whole stitches for every round.
#[derive(Debug, Parser)]
#[command(name = "plumpline", version, args_conflicts_with_subcommands = true)]
struct CommandLine {
    #[command(subcommand)]
    verb: Option<Verb>,
    /// Project to open in the studio; without one the studio opens a sample.
    file: Option<PathBuf>,
}

#[derive(Debug, Subcommand)]
enum Verb {
    /// Make a project from a measured profile, a starter or a written pattern.
    New(new::New),
    /// Print how the parts of a toy go together, what it weighs, how it hangs and stands.
    Assemble(assemble::Assemble),
    /// Print what has changed since a pattern was published, as an errata paragraph.
    Compare(compare::CompareArgs),
    /// Learn a maker's cloth from what was measured on a finished piece.
    Calibrate(calibrate::Calibrate),
    /// Write the handouts of the lesson, why an increase bends cloth, as .pdf.
    Lesson(lesson::LessonArgs),
    /// Check a written pattern: what does not add up, where, and the likeliest mend.
    Proofread(proofread::ProofreadArgs),
    /// Plan a project anew at another size or gauge, or so that a piece meets another.
    Resize(resize::Resize),
    /// Print the rounds of a project.
    Rounds(rounds::RoundsArgs),
    /// Draw a piece as .svg or .png.
    Picture(picture::PictureArgs),
    /// Write a form for testers, or hold what they returned against the forecast.
    Testers(testers::TestersArgs),
    /// Make a project of a picture of a thing seen from the side.
    Trace(trace::TraceArgs),
    /// Write the pattern of a project as .pdf, .html, .md or .txt, a page of it as .png, or what
    /// is said of it as .srt or .vtt.
    Sheet(sheet::SheetArgs),
}

/// What the command line asks for.
pub enum CliEnd {
    /// Open the studio, on this file or on a sample.
    Studio(Option<PathBuf>),
    /// The work was done, or refused; leave with this status.
    Done(ExitCode),
}

/// Reads the command line `args` (the program's name first) and does what it asks, all but
/// opening the studio, which is left to the caller.
pub fn run(args: impl IntoIterator<Item = OsString>) -> CliEnd {
    let line = match CommandLine::try_parse_from(args) {
        Ok(line) => line,
        Err(error) => return CliEnd::Done(misused(&error)),
    };
    let done = match line.verb {
        None => return CliEnd::Studio(line.file),
        Some(Verb::New(new)) => new.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Assemble(assemble)) => assemble.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Compare(compare)) => compare.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Calibrate(calibrate)) => calibrate.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Lesson(lesson)) => lesson.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Proofread(proofread)) => proofread.run(),
        Some(Verb::Resize(resize)) => resize.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Rounds(rounds)) => rounds.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Picture(picture)) => picture.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Testers(testers)) => testers.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Trace(trace)) => trace.run().map(|()| ExitCode::SUCCESS),
        Some(Verb::Sheet(sheet)) => sheet.run().map(|()| ExitCode::SUCCESS),
    };
    CliEnd::Done(match done {
        Ok(status) => status,
        Err(error) => {
            complain(&format!("{error:#}"));
            ExitCode::from(BAD_INPUT)
        }
    })
}

/// Help and version go to standard output; anything else is bad use, told in one line.
fn misused(error: &clap::Error) -> ExitCode {
    if !error.use_stderr() {
        error.print().ok();
        return ExitCode::SUCCESS;
    }
    let text = error.to_string();
    let first = text.lines().next().unwrap_or_default();
    // A missing argument is named on the lines after the first.
    let named: Vec<&str> =
        text.lines().skip(1).take_while(|l| !l.trim().is_empty()).map(str::trim).collect();
    let line = format!("{first} {}", named.join(", "));
    complain(&format!("{}; see plumpline --help", line.trim_start_matches("error: ").trim()));
    ExitCode::from(BAD_USE)
}
