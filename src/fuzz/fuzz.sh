#!/bin/sh
# Gives every reader files that a coverage-guided search makes up, for so many seconds each, and keeps what
# the search learns in target/fuzz for the next time. Ends with 1 when a reader failed on one of them; the file
# lies in target/fuzz/READER/found.
#
# Usage: fuzz.sh SECONDS CLASSPATH [READER...]
set -eu
seconds=$1
classpath=$2
shift 2
[ $# -gt 0 ] || set -- CAPTURE SOUND YAML TABLE TRANSLATION
status=0
for reader in "$@"; do
  folder=$(echo "$reader" | tr '[:upper:]' '[:lower:]')
  work=target/fuzz/$folder
  mkdir -p "$work/corpus" "$work/found"
  temp=$(mktemp -d)
  seeds=src/test/resources/hostile/$folder
  case $reader in
    CAPTURE) seeds="$seeds src/test/resources/intake/spoiled" ;;
    SOUND) seeds="$seeds src/test/resources/reference/wav" ;;
  esac
  echo "fuzz: $reader, $seconds s"
  # shellcheck disable=SC2086
  java -Xmx400m -Djava.io.tmpdir="$temp" -cp "$classpath" com.code_intelligence.jazzer.Jazzer \
    --target_class=org.twinrig.hostile.FuzzedReader --target_args="$reader" \
    --instrumentation_includes='org.twinrig.**:com.fasterxml.jackson.core.**:org.snakeyaml.**:de.siegmar.**' \
    --custom_hook_excludes='**' --disabled_hooks='com.code_intelligence.**' \
    --reproducer_path="$work/found" --keep_going="${TWINRIG_KEEP_GOING:-1}" \
    -max_total_time="$seconds" -timeout=300 -rss_limit_mb=1500 -max_len="${TWINRIG_MAX_LEN:-16384}" -print_final_stats=1 \
    -artifact_prefix="$work/found/" "$work/corpus" $seeds 2>"$work/log" || status=1
  grep -aE "^(==|#[0-9]+.*DONE|stat::|SUMMARY)" "$work/log" || tail -n 5 "$work/log"
  rm -rf "$temp"
done
exit $status
