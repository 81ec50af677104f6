#!/bin/sh
# Times whole processes from a cold start: the demonstration, a study of 120 units with 1,200 captures (by the
# offset, by the weighted mean, and that at 48 bands per octave), a study of 300 units of one kind, and a catalogue
# of 10,000 graphs. Prints seconds and peak memory; needs GNU time and Python 3.
set -eu
home=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

"$home/twinrig" demo --out "$work/warm" >/dev/null
"$home/twinrig" simulate --out "$work/study" --seed 1 --units 40 --seatings 5 --points 480 --one-side \
  --catalogue 40 >/dev/null
python3 - "$work/study" <<'PY'
import csv, pathlib, sys
folder = pathlib.Path(sys.argv[1])
with open(folder / "catalogue.csv", newline="") as f:
    rows = [r for r in csv.reader(line for line in f if not line.startswith("#"))]
head, graphs = rows[0], rows[1:]
with open(folder / "large.csv", "w", newline="") as f:
    out = csv.writer(f, lineterminator="\n")
    out.writerow(head)
    for k in range(10_000):
        row = list(graphs[k % len(graphs)])
        row[0] = f"graph {k}"
        out.writerow(row)
PY

measure() {
  name=$1
  shift
  /usr/bin/time -f "$name: %e s, %M kB" "$@" >/dev/null
}
measure "demonstration" "$home/twinrig" demo --out "$work/demo"
cp -r "$work/study" "$work/offset"
echo "model: offset" >> "$work/offset/study.yaml"
cp -r "$work/study" "$work/fine"
sed -i "/^bands:/d" "$work/fine/study.yaml"
echo "bands: { per_octave: 48, from_hz: 20, to_hz: 20000 }" >> "$work/fine/study.yaml"
"$home/twinrig" simulate --out "$work/many" --seed 2 --units 300 --kinds in-ear --seatings 2 --points 240 \
  --one-side >/dev/null
measure "study of 120 units, 1,200 captures, offset" "$home/twinrig" study "$work/offset" --out "$work/results-offset"
measure "study of 120 units, 1,200 captures, average" "$home/twinrig" study "$work/study" --out "$work/results"
measure "the same, 48 bands per octave" "$home/twinrig" study "$work/fine" --out "$work/results-fine"
measure "study of 300 units of one kind, average" "$home/twinrig" study "$work/many" --out "$work/results-many"
measure "catalogue of 10,000 graphs" "$home/twinrig" translate "$work/results/translation.json" \
  --catalogue "$work/study/large.csv" --out "$work/catalogue"
