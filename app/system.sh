#!/usr/bin/env bash
# Sourced by app/run.sh and tests/run.sh: Rust, its crates and the system libraries they need.

# Packages of Debian and Ubuntu that the studio opens at run time: X11 and its cursors and
# input, the keyboard, OpenGL, Wayland, the file dialogs of the desktop, and its faces.
# tests/window_libraries.sh compares them with what the program opens.
WINDOW_PACKAGES=(
  libx11-6 libx11-xcb1 libxcursor1 libxi6 libxrender1
  libxkbcommon0 libxkbcommon-x11-0
  libgl1 libegl1 libgl1-mesa-dri
  libwayland-client0 libwayland-egl1
  libdbus-1-3 libfontconfig1
)

# Stops with one line unless Rust 1.95 or newer is there, and something that links.
need_rust() {
  if ! command -v cargo >/dev/null 2>&1 && [ -x "$HOME/.cargo/bin/cargo" ]; then
    PATH="$HOME/.cargo/bin:$PATH"
  fi
  if ! command -v cargo >/dev/null 2>&1; then
    echo "Rust is missing: install it from https://rustup.rs, then run this again." >&2
    exit 1
  fi
  local version major minor
  version=$(rustc --version 2>/dev/null | sed -nE 's/^rustc ([0-9]+)\.([0-9]+).*/\1 \2/p')
  if [ -z "$version" ]; then
    echo "Rust does not start: run 'rustup default stable', then run this again." >&2
    exit 1
  fi
  read -r major minor <<<"$version"
  if [ "$major" -eq 1 ] && [ "$minor" -lt 95 ]; then
    echo "Rust $major.$minor is too old: run 'rustup update' for 1.95 or newer." >&2
    exit 1
  fi
  if ! command -v cc >/dev/null 2>&1; then
    need_packages build-essential || exit 1
  fi
}

# Stops with one line unless the crates that the lock file of the folder $1 names are there or
# can be had. What runs on this system is fetched, nothing else.
need_crates() {
  local host said
  host=$(rustc -vV | sed -n 's/^host: //p')
  cargo fetch --quiet --locked --offline --target "$host" --manifest-path "$1/Cargo.toml" 2>/dev/null &&
    return 0
  echo "Downloading the crates that the program is built from …" >&2
  said=$(cargo fetch --quiet --locked --target "$host" --manifest-path "$1/Cargo.toml" 2>&1) && return 0
  said=$(grep -v '^ *$' <<<"$said" | tail -n 1 | sed 's/^ *//')
  echo "The crates cannot be downloaded; connect to the network, then run this again. (${said:-cargo fetch failed})" >&2
  exit 1
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
      echo "Packages are missing; install them with: sudo apt-get install ${missing[*]}" >&2
      return 1
    fi
  fi
  echo "Installing ${missing[*]} …" >&2
  # What apt says is many lines, and of use to nobody whose network is down.
  if ! { "${as_root[@]}" apt-get update -qq &&
    DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}"; } >/dev/null 2>&1; then
    echo "Packages cannot be installed (is there a network?); install them with: apt-get install ${missing[*]}" >&2
    return 1
  fi
}
