//! The studio in a real window: real pointer events move a knot, and what the window then
//! shows, read off its clipboard, is what the saved file plans to; asked to close, it does.
//!
//! Needs Xvfb, xdotool and xclip, which `tests/run.sh` installs.

use std::io::Read as _;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use egui::{Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::window::Studio;
use plumpline::work::home::recovery;
use x11rb::protocol::xproto::{ClientMessageEvent, ConnectionExt as _, EventMask};

const PLUMPLINE: &str = env!("CARGO_BIN_EXE_plumpline");
const SIZE: (u32, u32) = (1440, 900);

/// A screen of its own and the studio on it; both end with the test.
struct Screen {
    display: String,
    children: Vec<Child>,
}

impl Screen {
    fn new() -> Self {
        let size = format!("{}x{}x24", SIZE.0, SIZE.1);
        // Without -noreset the server starts over whenever its last client leaves, as xdotool
        // does at every look, and drops a studio that is just coming.
        let mut xvfb = Command::new("Xvfb")
            .args(["-displayfd", "1", "-screen", "0", &size, "-nolisten", "tcp", "-noreset"])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("Xvfb is installed (bash tests/run.sh installs it)");
        let mut number = Vec::new();
        let mut out = xvfb.stdout.take().expect("its output is piped");
        let mut byte = [0];
        while out.read(&mut byte).is_ok_and(|n| n == 1) && byte[0] != b'\n' {
            number.push(byte[0]);
        }
        let display = format!(":{}", String::from_utf8(number).expect("a number"));
        Self { display, children: vec![xvfb] }
    }

    fn command(&self, program: &str) -> Command {
        let mut command = Command::new(program);
        command
            .env("DISPLAY", &self.display)
            .env("LIBGL_ALWAYS_SOFTWARE", "1")
            .env_remove("WAYLAND_DISPLAY");
        command
    }

    fn open(&mut self, project: &Path, home: &Path) -> String {
        let said = home.join("said.txt");
        let mut studio = self
            .command(PLUMPLINE)
            .arg(project)
            .env("HOME", home)
            .env("XDG_DATA_HOME", home)
            .env("XDG_CONFIG_HOME", home)
            .stderr(std::fs::File::create(&said).expect("a file for what it says"))
            .spawn()
            .expect("the studio starts");
        let id = studio.id().to_string();
        let window = wait_for("the window", || {
            if let Some(status) = studio.try_wait().expect("its state can be asked") {
                let said = std::fs::read_to_string(&said).unwrap_or_default();
                panic!("the studio ended before its window came, {status}: {said}");
            }
            let found = self.xdotool(&["search", "--onlyvisible", "--pid", &id]);
            found.lines().next().map(str::to_owned)
        });
        self.children.push(studio);
        let (width, height) = (SIZE.0.to_string(), SIZE.1.to_string());
        self.xdotool(&["windowsize", "--sync", &window, &width, &height]);
        self.xdotool(&["windowmove", &window, "0", "0"]);
        self.xdotool(&["windowfocus", &window]);
        window
    }

    fn xdotool(&self, args: &[&str]) -> String {
        let out = self.command("xdotool").args(args).output().expect("xdotool is installed");
        String::from_utf8_lossy(&out.stdout).into_owned()
    }

    /// Asks a window to close, as the desktop does when its cross is clicked: by the message
    /// WM_DELETE_WINDOW (Inter-Client Communication Conventions Manual 4.2.8.1).
    fn ask_to_close(&self, window: &str) {
        let window: u32 = window.trim().parse().expect("the number of a window");
        let (server, _) = x11rb::connect(Some(&self.display)).expect("the screen answers");
        let atom = |name: &[u8]| {
            let asked = server.intern_atom(false, name).expect("the screen is asked");
            asked.reply().expect("it answers").atom
        };
        let data = [atom(b"WM_DELETE_WINDOW"), x11rb::CURRENT_TIME, 0, 0, 0];
        let message = ClientMessageEvent::new(32, window, atom(b"WM_PROTOCOLS"), data);
        let sent = server.send_event(false, window, EventMask::NO_EVENT, message);
        sent.expect("the message goes out").check().expect("the window gets it");
    }

    fn point(&self, at: Pos2) {
        let (x, y) = (at.x.round().to_string(), at.y.round().to_string());
        self.xdotool(&["mousemove", "--sync", &x, &y]);
        pause();
    }

    fn click(&self, at: Pos2) {
        self.point(at);
        self.xdotool(&["click", "1"]);
        pause();
    }

    /// Drags the knot of `places` out of its place, as a hand does.
    fn drag_the_knot(&self, places: &Places) {
        self.point(places.knot);
        self.xdotool(&["mousedown", "1"]);
        for step in 1..=8 {
            self.point(places.knot + vec2(3.0, -1.0) * step as f32);
        }
        self.xdotool(&["mouseup", "1"]);
        pause();
    }

    /// The whole pattern as the window has it, by its own Copy button.
    fn copied(&self, places: &Places) -> String {
        // What was copied before must not be taken for what is copied now.
        let mut emptied = self.command("xclip");
        emptied.args(["-i", "-selection", "clipboard"]).stdin(Stdio::null());
        emptied.stdout(Stdio::null()).stderr(Stdio::null());
        assert!(emptied.status().is_ok_and(|status| status.success()), "xclip is installed");
        let text = wait_for("the copied pattern", || {
            // A window that has only just come may miss the first click.
            self.click(places.sheet);
            self.click(places.copy);
            let clip = ["-o", "-selection", "clipboard"];
            let out = self.command("xclip").args(clip).output().expect("xclip is installed");
            let text = String::from_utf8_lossy(&out.stdout).into_owned();
            text.contains("Rnd 1").then_some(text)
        });
        self.click(places.shape);
        text
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        for child in self.children.iter_mut().rev() {
            child.kill().ok();
            child.wait().ok();
        }
    }
}

fn pause() {
    std::thread::sleep(Duration::from_millis(120));
}

fn wait_for<T>(what: &str, mut look: impl FnMut() -> Option<T>) -> T {
    let begin = Instant::now();
    loop {
        if let Some(found) = look() {
            return found;
        }
        assert!(begin.elapsed() < Duration::from_secs(40), "{what} did not come");
        std::thread::sleep(Duration::from_millis(150));
    }
}

/// Where things are in a window of this size: found by name in the same studio without one.
struct Places {
    knot: Pos2,
    sheet: Pos2,
    shape: Pos2,
    copy: Pos2,
}

fn places(project: &Path) -> Places {
    let project = project.to_owned();
    let mut bench = Harness::builder()
        .with_size(vec2(SIZE.0 as f32, SIZE.1 as f32))
        .with_max_steps(60)
        .build_eframe(move |cc| Studio::new(cc, Some(project)));
    bench.run();
    let place =
        |bench: &Harness<'_, Studio>, name: &str| bench.get_by_label(name).rect().center();
    let (knot, sheet, shape) =
        (place(&bench, "Knot 5"), place(&bench, "Sheet"), place(&bench, "Shape"));
    bench.get_by_label("Sheet").click();
    bench.run();
    Places { knot, sheet, shape, copy: place(&bench, "Copy") }
}

/// Somebody who is past the first steps: they would take room at the window's foot.
fn past_the_first_steps(folder: &Path) {
    let home = folder.join("plumpline");
    std::fs::create_dir(&home).expect("a folder");
    std::fs::write(home.join("desk.ron"), "()").expect("written");
}

fn plumpline(args: &[&str]) -> String {
    let out = Command::new(PLUMPLINE).args(args).output().expect("it runs");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    String::from_utf8(out.stdout).expect("it prints text")
}

fn report(project: &str) -> serde_json::Value {
    let json = plumpline(&["rounds", "--json", project]);
    let report: serde_json::Value = serde_json::from_str(&json).expect("it prints JSON");
    report["pieces"][0].clone()
}

#[test]
fn a_dragged_neck_is_saved_its_text_makes_that_float_and_the_window_closes() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("float.ron");
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects/float.ron");
    std::fs::copy(sample, &file).expect("the sample is there");
    let path = file.to_str().expect("a plain path");
    let (places, before) = (places(&file), report(path));

    past_the_first_steps(folder.path());
    let mut screen = Screen::new();
    let window = screen.open(&file, folder.path());
    let text_before = screen.copied(&places);

    screen.drag_the_knot(&places);
    let text_after = screen.copied(&places);
    let saved_before = std::fs::read(&file).expect("it is there");
    screen.xdotool(&["key", "ctrl+s"]);
    wait_for("the saved file", || {
        std::fs::read(&file).ok().filter(|now| *now != saved_before && !now.is_empty())
    });

    // Counts, wording, forecast and figures all changed …
    let after = report(path);
    let column = |report: &serde_json::Value, name: &str| -> Vec<serde_json::Value> {
        let rounds = report["rounds"].as_array().expect("rounds");
        rounds.iter().map(|round| round[name].clone()).collect()
    };
    assert_ne!(column(&before, "count"), column(&after, "count"));
    assert_ne!(column(&before, "text"), column(&after, "text"));
    for figure in ["outline_mm", "forecast_mm", "width_mm", "fit", "yarn", "stuffing"] {
        assert_ne!(before[figure], after[figure], "{figure} did not follow the hand");
    }
    assert_ne!(text_before, text_after);
    // … and the window shows what the saved file plans to, to the letter.
    let printed = folder.path().join("sheet.txt");
    plumpline(&["sheet", path, "-o", printed.to_str().expect("a plain path")]);
    let printed = std::fs::read_to_string(printed).expect("it was written");
    assert_eq!(text_after.trim_end(), printed.trim_end());
    for (count, text) in column(&after, "count").iter().zip(column(&after, "text")) {
        let line = format!("{} [{count}]", text.as_str().expect("words"));
        let flowed = printed.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flowed.contains(&line), "the sheet lacks “{line}”");
    }
    let high = after["height_mm"].as_f64().expect("a number") / 10.0;
    assert!(printed.contains(&format!("{high:.1} cm high")), "the size is not on the sheet");

    // Nothing is unsaved, so that the window closes without a question, and the studio ends.
    screen.ask_to_close(&window);
    let studio = screen.children.last_mut().expect("the studio");
    let status = wait_for("the end of the studio", || studio.try_wait().expect("its state"));
    assert!(status.success(), "{status}");
}

/// A bare machine lacks what nobody installs, and the window does not open there.
#[test]
fn the_window_opens_no_library_that_its_packages_do_not_bring() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let script = root.join("tests/window_libraries.sh");
    let compared = |system: &Path| {
        let mut bash = Command::new("bash");
        let out = bash.arg(&script).arg(PLUMPLINE).arg(system).output().expect("bash runs");
        (out.status.success(), String::from_utf8_lossy(&out.stdout).into_owned())
    };
    let system = root.join("app/system.sh");
    let (content, said) = compared(&system);
    assert!(content, "{said}");
    // With a package left out, the script says which library is then missing.
    if Path::new("/var/lib/dpkg/status").exists() {
        let folder = tempfile::tempdir().expect("a folder");
        let short = folder.path().join("system.sh");
        let text = std::fs::read_to_string(system).expect("it is there");
        std::fs::write(&short, text.replace("libxcursor1", "")).expect("written");
        let (content, said) = compared(&short);
        assert!(!content && said.contains("libXcursor.so.1"), "{said}");
    }
}

/// Ended by the session, it asks nothing and loses nothing: the recovery copy has the drag.
#[test]
fn a_session_that_ends_leaves_what_is_not_saved_in_the_recovery_copy() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("float.ron");
    let sample = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects/float.ron");
    std::fs::copy(sample, &file).expect("the sample is there");
    let was = plumpline_core::file::load(&file).expect("it loads");
    let places = places(&file);
    past_the_first_steps(folder.path());
    let mut screen = Screen::new();
    screen.open(&file, folder.path());
    screen.drag_the_knot(&places);
    let studio = screen.children.last_mut().expect("the studio");
    // The shell's own: a bare machine has no program of that name.
    let ask = ["-c", "kill -TERM \"$0\"", &studio.id().to_string()];
    let ended = Command::new("sh").args(ask).status();
    assert!(ended.is_ok_and(|status| status.success()), "it is asked to end");
    let status = wait_for("the end", || studio.try_wait().expect("its state can be asked"));
    assert!(status.success(), "{status}");
    let now = plumpline_core::file::load(&file).expect("it loads");
    assert_eq!(now, was, "nobody saved");
    let copies = folder.path().join("plumpline/recovery");
    let kept = std::fs::read_dir(copies).expect("the folder of copies").flatten();
    let mut kept = kept.filter_map(|entry| recovery::read(&entry.path()));
    let (kept, of) = kept.next().expect("a copy");
    assert_ne!(kept.pieces[0].outline, was.pieces[0].outline, "the drag is kept");
    assert_eq!(of.as_deref(), Some(file.as_path()));
}
