#!/usr/bin/env bash
# The studio's own figures: milliseconds to the first frame (median of five starts), resident
# memory five seconds after opening, and processor ticks over ten idle seconds.
# Usage: studio_figures.sh PLUMPLINE PROJECT
set -euo pipefail
plumpline=$1
project=$2
home=$(mktemp -d)
Xvfb -displayfd 9 -screen 0 1440x900x24 -nolisten tcp -noreset 9>"$home/display" 2>/dev/null &
xvfb=$!
trap 'kill $xvfb 2>/dev/null; rm -rf "$home"' EXIT
until [ -s "$home/display" ]; do sleep 0.1; done
export DISPLAY=:$(cat "$home/display") LIBGL_ALWAYS_SOFTWARE=1 HOME=$home PLUMPLINE_TRACE=1
unset WAYLAND_DISPLAY

first_frame() {
  "$plumpline" "$project" 2>"$home/trace" &
  local studio=$!
  until grep -q 'first frame' "$home/trace"; do sleep 0.05; done
  kill $studio
  wait $studio 2>/dev/null || true
  sed -n 's/.*first frame after \([0-9]*\) ms.*/\1/p' "$home/trace"
}

first_frame >/dev/null # Warms the cache.
times=$(for _ in 1 2 3 4 5; do first_frame; done | sort -n)
echo "first frame: $(sed -n 3p <<<"$times") ms (median of $(tr '\n' ' ' <<<"$times"))"

"$plumpline" "$project" 2>/dev/null &
studio=$!
sleep 5
echo "resident memory after 5 s: $(awk '/VmRSS/ {print int($2 / 1024)}' /proc/$studio/status) MB"
ticks() { awk '{print $14 + $15}' /proc/$studio/stat; }
before=$(ticks)
sleep 10
echo "processor ticks over 10 s idle: $(($(ticks) - before))"
kill $studio
