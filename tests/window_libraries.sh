#!/usr/bin/env bash
# Compares the shared libraries that the studio needs with the packages that app/system.sh
# installs: those it is linked with, and those it opens by name at run time, which stand in
# the program as text. One line for each that no package brings; exit status 1 then.
# Usage: window_libraries.sh PLUMPLINE [SYSTEM_SH]
set -euo pipefail
plumpline=$1
system=${2:-$(dirname "$0")/../app/system.sh}
source "$system"

opened=$(grep -aoE 'lib[A-Za-z0-9_+-]+\.so\.[0-9]+' "$plumpline" | sort -u)
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
declare -A brought=()
wanted=("${WINDOW_PACKAGES[@]}")
while read -r package; do wanted+=("$package"); done < <(
  dpkg-query -W -f='${Package} ${Essential} ${Priority}\n' | awk '$2 == "yes" || $3 == "required" {print $1}'
)
while [ ${#wanted[@]} -gt 0 ]; do
  package=${wanted[-1]}
  unset 'wanted[-1]'
  [ -n "${brought[$package]:-}" ] && continue
  brought[$package]=yes
  while read -r needed; do
    [ -n "$needed" ] && wanted+=("$needed")
  done < <(dpkg-query -W -f='${Pre-Depends}, ${Depends}\n' "$package" 2>/dev/null |
    tr ',|' '\n\n' | sed -E 's/^ *//; s/[ :(].*//' | sort -u)
done

lacking=0
for name in $(sort -u <<<"$opened"$'\n'"$linked"); do
  owner=$(dpkg-query -S "*/$name" 2>/dev/null | sed -nE 's/^([a-z0-9.+-]+)(:[a-z0-9]+)?: .*/\1/p' | sort -u)
  found=
  for package in $owner; do [ -n "${brought[$package]:-}" ] && found=$package; done
  if [ -z "$found" ]; then
    echo "$name: no package in WINDOW_PACKAGES of app/system.sh brings it (it is in: ${owner:-no package that is installed})"
    lacking=1
  fi
done
exit $lacking
