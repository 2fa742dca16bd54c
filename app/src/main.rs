//! `plumpline`: the studio, or with a verb the same work without a window.

use std::process::ExitCode;

use plumpline::cli::{self, CliEnd};
use plumpline::window;

fn main() -> ExitCode {
    match cli::run(std::env::args_os()) {
        CliEnd::Done(status) => status,
        CliEnd::Studio(open) => match window::run(open) {
            Ok(()) => ExitCode::SUCCESS,
            Err(error) => {
                eprintln!("plumpline: {}", plumpline_core::plain(&error.to_string(), 2000));
                ExitCode::FAILURE
            }
        },
    }
}
