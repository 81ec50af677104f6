#!/bin/sh
# Packs target/twinrig.jar together with the parts of Java it needs, so that it runs where there is no Java:
#   target/dist/twinrig/                          the program's folder; start it with target/dist/twinrig/twinrig
#   target/dist/twinrig-VERSION-linux-ARCH.tar.gz the same, packed
#   target/dist/twinrig_VERSION_ARCH.deb          a Debian package; needs dpkg-deb and dpkg-shlibdeps (dpkg-dev)
#   target/dist/SHA256SUMS                        of these, the jar and the list of what it is made of
# Usage: package.sh VERSION TIME, as in pom.xml; "mvn -Pdist package" calls it. The same sources, Java and Debian
# give the same bytes.
set -eu
version=$1
time=$2
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
java_home=${JAVA_HOME:-$(dirname "$(dirname "$(readlink -f "$(command -v jlink)")")")}
dist=$root/target/dist
image=$dist/twinrig
SOURCE_DATE_EPOCH=$(date -u -d "$time" +%s)
export SOURCE_DATE_EPOCH LC_ALL=C TZ=UTC DPKG_DEB_THREADS_MAX=1 # more threads would cut xz data elsewhere
umask 022

for tool in jdeps jlink; do
  if [ ! -x "$java_home/bin/$tool" ]; then
    echo "package.sh: $java_home/bin/$tool is not here; set JAVA_HOME to a JDK 17" >&2
    exit 1
  fi
done
for tool in dpkg-deb dpkg-shlibdeps; do
  if ! command -v "$tool" >/dev/null; then
    echo "package.sh: $tool is not here; install Debian's package dpkg-dev" >&2
    exit 1
  fi
done
rm -rf "$dist"
mkdir -p "$image"

# Java: what the classes refer to, found by jdeps, and nothing that needs a screen or a sound card.
modules=$("$java_home/bin/jdeps" --print-module-deps --ignore-missing-deps --multi-release 17 "$root/target/twinrig.jar")
"$java_home/bin/jlink" --add-modules "$modules" --strip-java-debug-attributes --no-header-files --no-man-pages \
  --output "$image/runtime"
for library in awt_xawt jawt splashscreen jsound; do
  rm -f "$image/runtime/lib/lib$library.so"
done
rm -f "$image/runtime/bin/keytool"

# The program and its demonstration.
cp "$root/twinrig" "$root/target/twinrig.jar" "$root/src/main/launcher/compiler-directives.json" "$root/LICENSE" "$image"
mkdir -p "$image/studies/plate-to-head" "$image/man/man1"
cp "$root/studies/plate-to-head/study.yaml" "$image/studies/plate-to-head"
cp -r "$root/demo-data" "$image"
gzip -9nc "$here/twinrig.1" >"$image/man/man1/twinrig.1.gz"
unzip -p "$image/twinrig.jar" META-INF/THIRD-PARTY.txt >"$image/THIRD-PARTY.txt"

# Which classes the demonstration loads; from this list the class-data archive is made where the program is
# installed, because Java 17 ties an archive to the path of the jar. One processor and the order of
# names: the list comes out the same each time.
trial=$(mktemp -d)
"$image/runtime/bin/java" -XX:DumpLoadedClassList="$trial/classes" -XX:ActiveProcessorCount=1 -XX:TieredStopAtLevel=1 -XX:+UseSerialGC \
  -Djava.awt.headless=true "-Dtwinrig.home=$image" -jar "$image/twinrig.jar" demo --out "$trial/out" >/dev/null
grep -v '^#' "$trial/classes" | sort -u >"$image/classes.lst"
rm -rf "$trial"

chmod -R u=rwX,go=rX "$image"
find "$dist" -exec touch -h -d "@$SOURCE_DATE_EPOCH" {} +
arch=$(dpkg --print-architecture)
tar -C "$dist" --sort=name --owner=0 --group=0 --numeric-owner --format=ustar -cf - twinrig |
  gzip -9n >"$dist/twinrig-$version-linux-$arch.tar.gz"

# The Debian package. A snapshot comes before its release.
debian_version=$(printf '%s' "$version" | sed 's/-SNAPSHOT/~snapshot/')
stage=$dist/stage
mkdir -p "$stage/usr/lib" "$stage/usr/bin" "$stage/usr/share/man/man1" "$stage/usr/share/doc/twinrig" "$stage/DEBIAN" \
  "$stage/usr/share/lintian/overrides"
cp -a "$image" "$stage/usr/lib/twinrig"
rm -r "$stage/usr/lib/twinrig/man" "$stage/usr/lib/twinrig/LICENSE"
mv "$stage/usr/lib/twinrig/THIRD-PARTY.txt" "$stage/usr/share/doc/twinrig"
ln -s ../lib/twinrig/twinrig "$stage/usr/bin/twinrig"
cp "$image/man/man1/twinrig.1.gz" "$stage/usr/share/man/man1"
cp "$here/debian/copyright" "$stage/usr/share/doc/twinrig"
cp "$here/debian/lintian-overrides" "$stage/usr/share/lintian/overrides/twinrig"
gzip -9nc "$root/CHANGELOG.md" >"$stage/usr/share/doc/twinrig/NEWS.gz"
maintainer=$(sed -n 's/^Maintainer: //p' "$here/debian/control")
printf 'twinrig (%s) unstable; urgency=medium\n\n  * What has changed stands in NEWS.gz.\n\n -- %s  %s\n' \
  "$debian_version" "$maintainer" "$(date -uR -d "$time")" | gzip -9n >"$stage/usr/share/doc/twinrig/changelog.gz"
cp "$here/debian/postinst" "$here/debian/prerm" "$stage/DEBIAN"
chmod 755 "$stage/DEBIAN/postinst" "$stage/DEBIAN/prerm"

# Libraries that Java is linked to; fontconfig's is opened by name only, and without a font nothing can be drawn.
work=$(mktemp -d)
mkdir "$work/debian"
printf 'Source: twinrig\n\nPackage: twinrig\nArchitecture: any\n' >"$work/debian/control"
libraries=$(cd "$work" && find "$image/runtime" -name '*.so' | sort |
  xargs -d '\n' dpkg-shlibdeps -O -l"$image/runtime/lib" -l"$image/runtime/lib/server" "$image/runtime/bin/java" \
    2>"$work/warnings" | sed -n 's/^shlibs:Depends=//p')
if [ -z "$libraries" ]; then
  cat "$work/warnings" >&2
  echo "package.sh: the libraries that Java is linked to were not found" >&2
  exit 1
fi
rm -rf "$work"
sed -e "s/@VERSION@/$debian_version/" -e "s/@ARCH@/$arch/" -e "s/@LIBRARIES@/$libraries/" \
  -e "s/@SIZE@/$(find "$stage/usr" -type f -printf '%s\n' | awk '{ k += int(($1 + 1023) / 1024) } END { print k }')/" \
  "$here/debian/control" >"$stage/DEBIAN/control"
(cd "$stage" && find usr -type f | sort | xargs -d '\n' md5sum) >"$stage/DEBIAN/md5sums"
chmod -R u=rwX,go=rX "$stage"
find "$stage" -exec touch -h -d "@$SOURCE_DATE_EPOCH" {} +
dpkg-deb --root-owner-group -Zxz --build "$stage" "$dist/twinrig_${debian_version}_$arch.deb" >/dev/null
rm -rf "$stage"

cp "$root/target/twinrig.jar" "$dist/twinrig-$version.jar"
cp "$root/target/twinrig-sbom.json" "$dist/twinrig-$version-sbom.json"
(cd "$dist" && sha256sum ./*.jar ./*.json ./*.deb ./*.tar.gz | sed 's, \./, ,') >"$dist/SHA256SUMS"
cat "$dist/SHA256SUMS"
