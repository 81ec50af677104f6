#!/bin/sh
# Installs target/dist/twinrig_*.deb in a bare Debian without Java and runs it there; then runs the same jar here with
# the JDK and compares the results. All tables must have the same bytes; pictures that differ are named. Fails when a
# step fails. Takes two to four minutes and needs root, Debian's package debootstrap, and its archive.
# Usage: try-in-clean-root.sh [KEEP_DIR]: results are kept there, to be looked at.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
deb=$(ls "$root"/target/dist/twinrig_*.deb) || {
  echo "try-in-clean-root.sh: there is no package; make it with: mvn -Pdist -DskipTests package" >&2
  exit 1
}
if ! command -v debootstrap >/dev/null || [ "$(id -u)" != 0 ]; then
  echo "try-in-clean-root.sh: this needs root and Debian's package debootstrap" >&2
  exit 1
fi
. /etc/os-release
work=$(mktemp -d)
bare=$work/root
clean() {
  for place in proc dev/null; do
    if mountpoint -q "$bare/$place"; then umount "$bare/$place"; fi
  done
  rm -rf --one-file-system "$work"
}
trap clean EXIT
trap 'exit 1' INT TERM
step() { printf '\n== %s\n' "$1"; }
inside() { chroot "$bare" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root DEBIAN_FRONTEND=noninteractive LC_ALL=C "$@"; }

step "a bare $PRETTY_NAME"
debootstrap --variant=minbase "$VERSION_CODENAME" "$bare" >"$work/debootstrap.log" 2>&1 || {
  tail -n 20 "$work/debootstrap.log" >&2
  exit 1
}
# It reaches the archive the way this machine does.
for settings in /etc/resolv.conf /etc/hosts /etc/apt/apt.conf /etc/apt/apt.conf.d /etc/apt/sources.list.d/debian.sources; do
  if [ -e "$settings" ]; then cp -rL "$settings" "$bare$(dirname "$settings")/"; fi
done
if [ -e "$bare/etc/apt/sources.list.d/debian.sources" ]; then rm -f "$bare/etc/apt/sources.list"; fi
mount -t proc proc "$bare/proc"
touch "$bare/dev/null"
if ! [ -c "$bare/dev/null" ]; then mount --bind /dev/null "$bare/dev/null"; fi
if inside sh -c 'command -v java'; then
  echo "there is a Java in the bare system already" >&2
  exit 1
fi

step "apt-get install"
cp "$deb" "$bare/tmp/"
inside apt-get update -qq
inside apt-get install -y -qq --no-install-recommends "/tmp/$(basename "$deb")" >"$work/apt.log" 2>&1 || {
  tail -n 20 "$work/apt.log" >&2
  exit 1
}
grep -c '^Unpacking' "$work/apt.log" | sed 's/$/ packages unpacked, twinrig among them/'
inside test -s /usr/lib/twinrig/twinrig.jsa
inside test -s /usr/share/doc/twinrig/copyright
inside test -s /usr/share/doc/twinrig/THIRD-PARTY.txt

# Everything below runs as somebody who may not write where the program is installed.
inside useradd --create-home guest
guest() { inside setpriv --reuid=guest --regid=guest --clear-groups env HOME=/home/guest "$@"; }
step "twinrig --version"
guest twinrig --version
guest env TWINRIG_JAVA_OPTIONS=-Xlog:class+load twinrig --version |
  grep 'org.twinrig.cli.Main source: shared objects file' >/dev/null || {
  echo "the class-data archive is not used" >&2
  exit 1
}

step "twinrig demo"
guest twinrig demo --out /home/guest/demo
guest sh -c 'cd && twinrig demo --quiet >/dev/null && test -s out/demo/study/report.html'
step "twinrig study"
guest twinrig study /usr/lib/twinrig/studies/plate-to-head --out /home/guest/study --quiet
step "the other commands"
guest sh -ec 'cd
  twinrig simulate --out made --seed 1 --units 6 --seatings 2 --kinds in-ear --quiet
  first=$(ls made/captures/*/* made/captures/* 2>/dev/null | grep "[.]" | head -n 1)
  twinrig inspect "$first"
  twinrig study made --out made-study --quiet
  twinrig plan made --out made-plan --quiet
  twinrig explain made --out made-explain.html --quiet
  twinrig translate demo/study/translation.json --catalogue /usr/lib/twinrig/demo-data/plate-to-head/catalogue.csv --out translated --figures --quiet
  TWINRIG_JAVA_OPTIONS=-Xlog:gc+init twinrig study made --out made-again --quiet | grep "Heap Max Capacity: 400M"
  TWINRIG_JAVA_OPTIONS="-Xmx2g -Xlog:gc+init" twinrig study made --out made-again --quiet | grep "Heap Max Capacity: 2G"
' >"$work/commands.txt" 2>&1 || {
  cat "$work/commands.txt" >&2
  exit 1
}
tail -n 3 "$work/commands.txt"
step "the workbench answers"
guest sh -ec 'cd; twinrig workbench made >workbench.txt 2>&1 & echo $! >workbench.pid'
page=
for _ in $(seq 60); do
  address=$(grep -o 'http://127[^ ]*' "$bare/home/guest/workbench.txt" | head -n 1) || true
  if [ -n "$address" ]; then
    page=$(curl -sL --noproxy '*' --max-time 20 --cookie "" "$address" | grep -o '<h1>.*</h1>') && break
  fi
  sleep 1
done
kill "$(cat "$bare/home/guest/workbench.pid")"
test -n "$page"
echo "$page"
test -z "$(find "$bare/usr/lib/twinrig" -newer "$bare/usr/lib/twinrig/twinrig.jsa" -type f)"

step "the same jar with the JDK here"
java -Xmx400m -Djava.awt.headless=true "-Dtwinrig.home=$root" -jar "$root/target/twinrig.jar" demo --out "$work/here" --quiet
there=$bare/home/guest/demo
(cd "$there" && find . -type f ! -name run.json ! -name manifest.sha256 | sort) >"$work/files"
(cd "$work/here" && find . -type f ! -name run.json ! -name manifest.sha256 | sort) | cmp - "$work/files"
wrong=0
while read -r file; do
  if ! cmp -s "$there/$file" "$work/here/$file"; then
    case $file in
      *.png | *.svg | *.html) echo "picture or page that differs: $file" ;;
      *)
        echo "differs: $file" >&2
        wrong=1
        ;;
    esac
  fi
done <"$work/files"
[ "$wrong" = 0 ]
echo "$(grep -c 'csv$' "$work/files") tables and all else but what is named above have the same bytes"
if [ $# -gt 0 ]; then
  mkdir -p "$1"
  cp -r "$there" "$1/bare"
  cp -r "$work/here" "$1/jdk"
fi

step "remove"
inside apt-get purge -y -qq twinrig >/dev/null 2>&1
if [ -e "$bare/usr/lib/twinrig" ] || [ -e "$bare/usr/bin/twinrig" ]; then
  find "$bare/usr/lib/twinrig" >&2
  exit 1
fi
printf '\nThe package installs, runs without Java, and gives the results of the JDK.\n'
