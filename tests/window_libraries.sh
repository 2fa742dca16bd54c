#!/usr/bin/env bash
# Compares the shared libraries that the studio needs with the packages that app/system.sh
# installs: those it is linked with, and those it opens by name at run time, which stand in
# the program as text. One line for each that no package brings; exit status 1 then.
# Usage: window_libraries.sh PLUMPLINE [SYSTEM_SH]
set -euo pipefail
plumpline=$1
system=${2:-$(dirname "$0")/../app/system.sh}
source "$system"

# A name is short: what runs into it from before is other text of the program. The renderer of
# the picture tests looks for Vulkan, and is in a build of the whole workspace.
opened=$(grep -aoE 'lib[A-Za-z0-9_+-]{1,20}\.so\.[0-9]+' "$plumpline" | grep -vx 'libvulkan.so.1' | sort -u)
linked=$(ldd "$plumpline" | sed -nE 's/^\s*(lib\S+\.so\.[0-9]+).*/\1/p')
# Or else the names are no longer found where this looks for them.
for name in libX11.so.6 libEGL.so.1 libxkbcommon.so.0; do
  grep -qx "$name" <<<"$opened" || { echo "$name is not among what $plumpline opens"; exit 1; }
done

if ! command -v dpkg-query >/dev/null 2>&1; then
  # Another system, whose packages have other names: its libraries must be there at least.
  lacking=0
  for name in $opened $linked; do
    /sbin/ldconfig -p | grep -qF "$name" || { echo "$name is not on this system"; lacking=1; }
  done
  exit $lacking
fi

# What the packages bring with all that they depend on; a bare system has what is essential.
brought=$(
  { printf 'wanted %s\n' "${WINDOW_PACKAGES[@]}"
    dpkg-query -W -f='${Package}\t${Essential}\t${Priority}\t${Pre-Depends}, ${Depends}\n'; } | awk -F '\t' '
    /^wanted / { want[substr($0, 8)]; next }
    { needs[$1] = $4; if ($2 == "yes" || $3 == "required") want[$1] }
    function bring(package, list, n, i) {
      if (package in brought || !(package in needs)) return
      brought[package]
      n = split(needs[package], list, /[,|]/)
      for (i = 1; i <= n; i++) { sub(/^ */, "", list[i]); sub(/[ :(].*/, "", list[i]); bring(list[i]) }
    }
    END { for (package in want) bring(package); for (package in brought) print package }'
)

names=$(sort -u <<<"$opened"$'\n'"$linked")
# Each library and the package it is in: "libxi6:amd64: /usr/lib/…/libXi.so.6".
owners=$(sed 's|^|*/|' <<<"$names" | xargs dpkg-query -S 2>/dev/null || true)
lacking=0
for name in $names; do
  owner=$(grep -F "/$name" <<<"$owners" | grep -E "/${name//./\\.}\$" | sed -E 's/[:,].*//' | sort -u || true)
  if [ -z "$owner" ] || ! grep -qxF "$owner" <<<"$brought"; then
    echo "$name: no package in WINDOW_PACKAGES of app/system.sh brings it (it is in: ${owner:-no package that is installed})"
    lacking=1
  fi
done
exit $lacking
