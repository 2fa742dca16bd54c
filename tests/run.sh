#!/usr/bin/env bash
# Installs what the tests need and runs them all: format, lints, tests and the real window.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"
source app/system.sh

need_rust
# A window without a screen, a hand to drag with, a clipboard to read from; others' eyes on a
# PDF; a renderer that draws the same picture everywhere, for the pictures of the stages.
need_packages "${WINDOW_PACKAGES[@]}" xvfb xdotool xclip qpdf poppler-utils libvulkan1 mesa-vulkan-drivers
need_crates "$root"
# Without that renderer, its absence is loud.
export WGPU_BACKEND=vulkan
cargo fmt --all --check
cargo clippy --workspace --all-targets --locked -- -D warnings
cargo test --workspace --locked
