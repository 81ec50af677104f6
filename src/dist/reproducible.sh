#!/bin/sh
# Builds the last commit twice, in clean clones in different folders, with another umask, time zone and locale, and
# compares what comes out byte for byte: the jar, the list of what it is made of, the archive and the Debian package.
# Fails when any differs. Takes some five minutes of processor time; with the word "jar", for the jar and its list
# alone, two. KEEP=DIR keeps both builds when they differ.
# Usage: reproducible.sh [jar]
set -eu
profile=-Pdist
[ "${1:-}" != jar ] || profile=-P-dist
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# build FOLDER UMASK ZONE LOCALE
build() {
  mkdir -p "$(dirname "$1")"
  (
    umask "$2"
    git clone -q "$root" "$1"
    cd "$1"
    TZ=$3 LC_ALL=$4 mvn -q -B $profile -Dmaven.test.skip=true -Dspotless.check.skip=true package >"$1.log" 2>&1
    if [ -d target/dist ]; then cd target/dist; else cd target; fi
    sha256sum twinrig*.* >"$1.sums"
  ) || {
    tail -n 20 "$1.log" >&2
    exit 1
  }
}
build "$work/one" 022 UTC C.UTF-8
build "$work/another/folder with a longer name" 077 Pacific/Chatham de_DE.UTF-8

one=$work/one.sums
another="$work/another/folder with a longer name.sums"
if cmp "$one" "$another"; then
  cat "$one"
  echo "Both builds gave the same bytes."
else
  diff "$one" "$another" || true
  if [ -n "${KEEP:-}" ]; then cp -r "$work" "$KEEP"; fi
  exit 1
fi
