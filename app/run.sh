#!/usr/bin/env bash
# Opens the studio on the sample float (or on the file given). Without a display it writes
# the sample's rounds and text sheet instead and says where.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")
source "$here/system.sh"

need_rust
project=${1:-$root/sample-projects/float.ron}
plumpline=$root/target/studio/plumpline
window=${DISPLAY:-}${WAYLAND_DISPLAY:-}
if [ -n "$window" ]; then
  need_packages "${WINDOW_PACKAGES[@]}" || true # Perhaps the window opens all the same.
fi

need_crates "$root"
[ -x "$plumpline" ] ||
  echo "Building the studio: several minutes, this once." >&2
# The profile is quick to build; packages are built with --release.
cargo build --profile studio --locked --manifest-path "$root/Cargo.toml" -p plumpline ||
  { echo "The studio could not be built; what is wrong is said above." >&2 && exit 1; }

if [ -z "$window" ]; then
  out=$(mktemp -d -t plumpline-float.XXXXXX)
  "$plumpline" rounds "$project" >"$out/rounds.txt"
  "$plumpline" sheet "$project" -o "$out/sheet.txt"
  echo "There is no display, so the studio cannot open; read $out/rounds.txt and $out/sheet.txt instead."
  exit 0
fi
exec "$plumpline" "$project"
