#!/usr/bin/env bash
# Sourced by app/run.sh and tests/run.sh: Rust and the system libraries they need.

# Packages of Debian and Ubuntu that the studio's window loads at run time.
WINDOW_PACKAGES=(libxkbcommon-x11-0 libgl1 libegl1 libgl1-mesa-dri)

# Stops with one line unless Rust 1.95 or newer is there.
need_rust() {
  if ! command -v cargo >/dev/null 2>&1 && [ -x "$HOME/.cargo/bin/cargo" ]; then
    PATH="$HOME/.cargo/bin:$PATH"
  fi
  if ! command -v cargo >/dev/null 2>&1; then
    echo "Rust is missing: install it from https://rustup.rs, then run this again." >&2
    exit 1
  fi
  local version
  version=$(rustc --version | sed -E 's/^rustc ([0-9]+)\.([0-9]+).*/\1 \2/')
  read -r major minor <<<"$version"
  if [ "$major" -eq 1 ] && [ "$minor" -lt 95 ]; then
    echo "Rust $major.$minor is too old: run 'rustup update' for 1.95 or newer." >&2
    exit 1
  fi
  if ! command -v cc >/dev/null 2>&1; then
    need_packages build-essential
  fi
}

# Installs the packages given that are not there yet, or says exactly what to install.
# Returns 1 if some are still missing.
need_packages() {
  command -v dpkg-query >/dev/null 2>&1 || return 0 # Another system: its own libraries may do.
  local missing=() package
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    if command -v sudo >/dev/null 2>&1 && sudo -n true 2>/dev/null; then
      as_root=(sudo -n)
    else
      echo "Please install: sudo apt-get install ${missing[*]}" >&2
      return 1
    fi
  fi
  echo "Installing ${missing[*]} …" >&2
  if ! { "${as_root[@]}" apt-get update -qq &&
    DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}"; } >&2; then
    echo "Please install: apt-get install ${missing[*]}" >&2
    return 1
  fi
}
