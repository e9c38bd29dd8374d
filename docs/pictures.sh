#!/bin/sh
# Makes the pictures of the readme again from the program itself, so that they never age.
# Needs rsvg-convert (librsvg2-bin) and, for the lettering, fonts-routed-gothic.
#   sh docs/pictures.sh build/dryfit/stowpath
set -eu
program=${1:?"name the program: sh docs/pictures.sh build/dryfit/stowpath"}
here=$(dirname "$0")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
"$program" dryfit "$here/../scenes/demo.yaml" --quiet -o "$work/dry-fit.svg" || [ $? -eq 1 ]
rsvg-convert -w 1600 "$work/dry-fit.svg" -o "$here/dry-fit.png"
