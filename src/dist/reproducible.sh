#!/bin/sh
# Builds the last commit twice, in clean clones in different folders, with another umask, time zone and locale, and
# compares what comes out byte for byte: the jar, the list of what it is made of, the archive and the Debian package.
# Fails when any differs. Takes some three minutes on two idle cores.
set -eu
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
    TZ=$3 LC_ALL=$4 mvn -q -B -Pdist -Dmaven.test.skip=true -Dspotless.check.skip=true package >"$1.log" 2>&1
  ) || {
    tail -n 20 "$1.log" >&2
    exit 1
  }
}
build "$work/one" 022 UTC C.UTF-8
build "$work/another/folder with a longer name" 077 Pacific/Chatham de_DE.UTF-8

one=$work/one/target/dist
another="$work/another/folder with a longer name/target/dist"
if cmp "$one/SHA256SUMS" "$another/SHA256SUMS"; then
  cat "$one/SHA256SUMS"
  echo "Both builds gave the same bytes."
else
  diff "$one/SHA256SUMS" "$another/SHA256SUMS" || true
  if [ -n "${KEEP:-}" ]; then cp -r "$work" "$KEEP"; fi
  echo "reproducible.sh: the builds differ; KEEP=DIR keeps both" >&2
  exit 1
fi
