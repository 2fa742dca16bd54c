//! A script laid out: as a text to read from, and as captions.

use std::fmt::Write as _;

use super::{Script, ScriptLine, ScriptPace};

/// Most characters in a row of a caption, and rows in one: what stands on a picture without
/// covering it. Common practice, no source.
const ROW: usize = 42;
const ROWS: usize = 2;

/// The script as a text: for each line when it begins, how long it stands and what to say.
pub fn script(script: &Script, pace: ScriptPace) -> String {
    let [said, worked] = &script.takes;
    let takes = if pace == ScriptPace::Said { said } else { worked };
    let mut out = format!("{}\n{takes}\n", plain(&script.title));
    if !script.unchecked.is_empty() {
        out.push_str(&format!("{}\n", script.unchecked));
    }
    out.push('\n');
    let mut at = 0.0;
    for line in &script.lines {
        // Writing to a String cannot fail.
        let seconds = line.seconds(pace);
        writeln!(out, "{} ({seconds:.0} s)  {}", clock(at), plain(&line.text)).ok();
        at += seconds;
    }
    out
}

/// The script as captions in the SubRip form (.srt).
pub fn captions_srt(script: &Script, pace: ScriptPace) -> String {
    let mut out = String::new();
    for (n, cue) in (1..).zip(cues(script, pace)) {
        let (from, to) = (stamp(cue.from, ','), stamp(cue.to, ','));
        writeln!(out, "{n}\n{from} --> {to}\n{}\n", cue.rows.join("\n")).ok();
    }
    out
}

/// The script as captions in the W3C's WebVTT form (.vtt).
pub fn captions_vtt(script: &Script, pace: ScriptPace) -> String {
    let mut out = "WEBVTT\n\n".to_owned();
    for (n, cue) in (1..).zip(cues(script, pace)) {
        let (from, to) = (stamp(cue.from, '.'), stamp(cue.to, '.'));
        // Only these are markup there (WebVTT: The Web Video Text Tracks Format, 3.1).
        let escape =
            |row: &String| row.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
        let rows: Vec<String> = cue.rows.iter().map(escape).collect();
        writeln!(out, "{n}\n{from} --> {to}\n{}\n", rows.join("\n")).ok();
    }
    out
}

/// What stands on the picture at once.
struct CaptionCue {
    from: f64,
    to: f64,
    rows: Vec<String>,
}

/// A long line is shown in parts, each as long as its share of the words.
fn cues(script: &Script, pace: ScriptPace) -> Vec<CaptionCue> {
    let mut cues = Vec::new();
    let mut at = 0.0;
    for line in &script.lines {
        let rows = rows(line);
        let length: usize = rows.iter().map(|row| row.chars().count()).sum();
        for part in rows.chunks(ROWS) {
            let own: usize = part.iter().map(|row| row.chars().count()).sum();
            let to = at + line.seconds(pace) * own as f64 / length.max(1) as f64;
            cues.push(CaptionCue { from: at, to, rows: part.to_vec() });
            at = to;
        }
    }
    cues
}

/// The words of a line in rows. “-->” would be read as a time.
fn rows(line: &ScriptLine) -> Vec<String> {
    let mut rows = vec![String::new()];
    for word in plain(&line.text).replace("-->", "→").split(' ').filter(|w| !w.is_empty()) {
        let row = rows.last_mut().map_or(0, |row| row.chars().count());
        if row > 0 && row + 1 + word.chars().count() > ROW {
            rows.push(String::new());
        }
        if let Some(row) = rows.last_mut() {
            if !row.is_empty() {
                row.push(' ');
            }
            row.push_str(word);
        }
    }
    rows
}

/// A text on one line, whatever a name in it holds.
fn plain(text: &str) -> String {
    text.chars().filter(|&c| !crate::error::is_unseen(c)).collect()
}

/// `02:05`, or `1:02:05` from an hour on.
fn clock(seconds: f64) -> String {
    let all = seconds.round().max(0.0) as u64;
    let (hours, minutes, rest) = (all / 3600, all / 60 % 60, all % 60);
    match hours {
        0 => format!("{minutes:02}:{rest:02}"),
        _ => format!("{hours}:{minutes:02}:{rest:02}"),
    }
}

/// `00:02:05.250`, with the sign that the form has before milliseconds.
fn stamp(seconds: f64, point: char) -> String {
    let ms = (seconds * 1000.0).round().max(0.0) as u64;
    let (h, m, s, rest) = (ms / 3_600_000, ms / 60_000 % 60, ms / 1000 % 60, ms % 1000);
    format!("{h:02}:{m:02}:{s:02}{point}{rest:03}")
}
