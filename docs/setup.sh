#!/bin/sh
# Installs what Stowpath needs to build and to pass its tests on Debian 12, from Debian's own packages.
# With the word `bench` after it, also what the benchmarks (preset `release`) measure themselves against; with `fuzz`, also
# the runtime of the fuzz targets (preset `fuzz`).
# Runs with or without sudo, as often as you like: what is already there is left alone.
set -eu

packages="g++ cmake ninja-build libyaml-cpp-dev libbox2d-dev catch2 libcli11-dev nlohmann-json3-dev pkg-config libcairo2-dev libfreetype-dev libwebp-dev fonts-routed-gothic fonts-dejavu-core libsfml-dev libimgui-dev libgl-dev libx11-dev xvfb xauth xdotool imagemagick libfcl-dev libchipmunk-dev python3-jsonschema python3-numpy python3-yaml clang"
if [ "${1:-}" = bench ]; then
  packages="$packages libbenchmark-dev"
elif [ "${1:-}" = fuzz ]; then
  packages="$packages libclang-rt-14-dev"
elif [ -n "${1:-}" ]; then
  echo "setup: \"$1\" is not known: write nothing, bench or fuzz" >&2
  exit 2
fi

missing=""
for package in $packages; do
  state=$(dpkg-query -W -f='${Status}' "$package" 2>/dev/null || true)
  [ "$state" = "install ok installed" ] || missing="$missing $package"
done
if [ -z "$missing" ]; then
  echo "setup: everything needed is installed"
  exit 0
fi

if [ "$(id -u)" -eq 0 ]; then
  as_root=""
elif command -v sudo >/dev/null 2>&1; then
  as_root="sudo"
else
  echo "setup: these packages are missing:$missing" >&2
  echo "setup: run this script as root, or install them yourself:  apt-get install$missing" >&2
  exit 1
fi

export DEBIAN_FRONTEND=noninteractive
$as_root apt-get update -q
# shellcheck disable=SC2086  # one word a package is what is wanted
$as_root apt-get install -y -q --no-install-recommends $missing
