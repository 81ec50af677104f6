#!/bin/sh
# Runs twinrig.cmd under Wine with a stand-in for Java that prints its arguments, and looks at what came. Fails when a
# step fails; takes some ten seconds, most of it for Wine to set up. Needs Debian's wine64 and wine.
# Not seen by it: exit statuses of Java, which Wine does not pass on from a program that is not for Windows.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
if ! command -v wine >/dev/null; then
  echo "try-cmd.sh: there is no Wine here; install Debian's packages wine and wine64" >&2
  exit 1
fi
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
WINEPREFIX=$work/prefix WINEDEBUG=-all DISPLAY=
export WINEPREFIX WINEDEBUG DISPLAY
unset JAVA_HOME TWINRIG_JAVA_OPTIONS

home="$work/a checkout"
mkdir -p "$home/src/main/launcher" "$work/jdk/bin" "$work/maven"
cp "$root/twinrig.cmd" "$home"
cp "$root/src/main/launcher/compiler-directives.json" "$home/src/main/launcher"
cat >"$work/jdk/bin/java.exe" <<'STUB'
#!/bin/sh
printf '[%s]\n' "$@"
STUB
chmod +x "$work/jdk/bin/java.exe"
windows() { printf 'Z:%s' "$1" | tr / '\\'; }

# run ARGUMENTS: what the launcher says, and its exit status in the last line.
run() {
  printf '@echo off\r\ncall "%s\\twinrig.cmd" %s\r\necho status %%ERRORLEVEL%%\r\n' "$(windows "$home")" "$1" >"$work/try.cmd"
  timeout 120 wine cmd /c "$(windows "$work/try.cmd")" 2>&1 | tr -d '\r'
}
# expect WHAT TEXT LINE...: the text has these lines.
expect() {
  what=$1 text=$2
  shift 2
  for line in "$@"; do
    if ! printf '%s\n' "$text" | grep -qxF -- "$line"; then
      printf 'try-cmd.sh: %s: there is no line "%s" in:\n%s\n' "$what" "$line" "$text" >&2
      exit 1
    fi
  done
  echo "$what: as it should be"
}

wine cmd /c "exit 0" >/dev/null 2>&1
text=$(run --version)
expect "no Java" "$text" "twinrig: there is no Java here; install a JDK 17 or newer, or set JAVA_HOME " "status 1"

WINEPATH=$(windows "$work/jdk/bin")
export WINEPATH
text=$(run --version)
expect "no Maven" "$text" \
  "twinrig: the program is not built and there is no Maven here; install Maven 3.8 or newer " "status 1"

WINEPATH="$WINEPATH;$(windows "$work/maven")"
printf '@echo off\r\necho it does not compile\r\nexit /b 1\r\n' >"$work/maven/mvn.cmd"
text=$(run --version)
expect "a build that fails" "$text" "Building twinrig; this is done once and takes a few minutes. " "it does not compile" \
  "status 1"

printf '@echo off\r\nset "GOAL=%%~4"\r\necho jar>"%%GOAL:~17%%\\twinrig.jar"\r\n' >"$work/maven/mvn.cmd"
text=$(run --version)
expect "a build" "$text" "Building twinrig; this is done once and takes a few minutes. " "[--version]"

text=$(run '--version')
expect "a short command" "$text" "[-XX:TieredStopAtLevel=1]" "[-Dtwinrig.home=$(windows "$home")\\.]" \
  "[$(windows "$home")\\.launcher\\$(tr -d '\r\n' <"$home/.launcher/current")\\twinrig.jar]" "[--version]"
text=$(run 'simulate --out "two words"')
expect "a command that estimates" "$text" "[-XX:+UnlockDiagnosticVMOptions]" "[simulate]" "[two words]" \
  "[-XX:CompilerDirectivesFile=$(windows "$home")\\src\\main\\launcher\\compiler-directives.json]"

JAVA_HOME=$(windows "$work/jdk") TWINRIG_JAVA_OPTIONS="-Xmx2g -Dx=y" WINEPATH=
export JAVA_HOME TWINRIG_JAVA_OPTIONS WINEPATH
text=$(run study)
expect "JAVA_HOME and TWINRIG_JAVA_OPTIONS" "$text" "[-Xmx400m]" "[-Xmx2g]" "[-Dx=y]" "[study]"
echo "twinrig.cmd does what it should."
