//! Opens the studio, with the project named on the command line if there is one.

fn main() -> anyhow::Result<()> {
    plumpline::studio::run(std::env::args_os().nth(1).map(Into::into))
}
