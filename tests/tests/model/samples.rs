//! Every sample opens, plans, prints and survives being saved.

use std::path::{Path, PathBuf};

use plumpline_core::warning::WarningKind;
use plumpline_core::{file, plan, sheet};

fn samples() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let entries = std::fs::read_dir(folder).expect("the samples are there");
    let mut paths: Vec<PathBuf> = entries.map(|e| e.expect("an entry").path()).collect();
    paths.sort();
    paths
}

#[test]
fn every_sample_loads_saves_and_loads_equal() {
    let folder = tempfile::tempdir().expect("a folder");
    let samples = samples();
    assert!(samples.len() >= 3, "{samples:?}");
    for path in samples {
        let project = file::load(&path).expect("it loads");
        let copy = folder.path().join(path.file_name().expect("a name"));
        file::save(&project, &copy).expect("it saves");
        assert_eq!(file::load(&copy).expect("the copy loads"), project, "{}", path.display());
    }
}

#[test]
fn every_sample_is_worth_making() {
    for path in samples() {
        let name = path.display();
        let project = file::load(&path).expect("it loads");
        for piece in &project.pieces {
            let plan = plan(piece).expect("it plans");
            assert!(plan.rounds.len() >= 10, "{name}: {} rounds", plan.rounds.len());
            let fit = plan.fit.expect("it has an outline");
            // The mushroom's free rim is there to show what cloth cannot do.
            let shows_misfit = plan.warnings.iter().any(|w| w.kind == WarningKind::Corner);
            assert!(fit.rms_stitches < 0.15 || shows_misfit, "{name}: {fit:?}");
        }
        let text = sheet::text(&project).expect("it prints");
        let markdown = sheet::markdown(&project).expect("it prints");
        assert!(text.lines().all(|line| line.chars().count() <= 78), "{name}: too wide");
        assert!(
            text.contains("Before you give it away")
                && markdown.contains("Before you give it away"),
            "{name}"
        );
    }
}
