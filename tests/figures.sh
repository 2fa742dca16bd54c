#!/usr/bin/env bash
# Prints every figure the README quotes: fit, simplicity, how rounds and texts read, plan and
# frame times, and the studio's own.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"
source app/system.sh
need_rust
need_packages "${WINDOW_PACKAGES[@]}" xvfb xdotool

# One set of features for all, or every crate is built twice.
cargo build --release --locked --workspace
grep -m 1 'model name' /proc/cpuinfo | sed 's/.*: /Processor: /'
echo
target/release/figures
echo
target/release/reading
echo
cargo bench --locked --workspace --bench plan --bench words --bench frame --bench body --bench sheet \
    2>/dev/null
echo
echo "The studio on the float, software renderer, window of 1440 × 900"
bash tests/studio_figures.sh target/release/plumpline sample-projects/float.ron
