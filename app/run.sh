#!/usr/bin/env bash
# Opens the studio on the sample float (or on the file given). Without a display it writes
# the sample's rounds and text sheet instead and says where.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")
source "$here/system.sh"

need_rust
project=${1:-$root/sample-projects/float.ron}
if [ -z "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  cargo build --release --quiet --manifest-path "$root/Cargo.toml" -p plumpline
  out=$(mktemp -d -t plumpline-float.XXXXXX)
  plumpline=$root/target/release/plumpline
  "$plumpline" rounds "$project" >"$out/rounds.txt"
  "$plumpline" sheet "$project" -o "$out/sheet.txt"
  echo "There is no display, so the studio cannot open. The sample's rounds and sheet are in $out:"
  ls "$out"
  exit 0
fi
need_packages "${WINDOW_PACKAGES[@]}" || echo "Trying to open the studio all the same." >&2
exec cargo run --release --manifest-path "$root/Cargo.toml" -p plumpline -- "$project"
