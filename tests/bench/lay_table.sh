#!/bin/sh
# The whole table of densities: every instance, seeds 1 to N, at 2, 10 and 60 seconds and at `quick`; medians, as markdown.
#   tests/bench/lay_table.sh build/lay-bench FOLDER_OF_INSTANCES [seeds] [columns]
#   tests/bench/lay_table.sh build/lay-bench ../shared/data/strip-packing 5 "quick 2 10 60"
# CHECK=PROGRAM: is run as `python3 PROGRAM INSTANCE LAYOUT --tolerance-fraction 1e-5` on every layout.
# THREADS=1: on one core; seconds are counted as two cores' all the same.
# Five seeds of all columns take about an hour and a half of two cores.
set -eu
bench=$1 folder=$2 seeds=${3:-5} columns=${4:-quick 2 10 60}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
printf '| instance |'; for c in $columns; do printf ' %s |' "$c"; done; printf ' memory, MiB |\n'
printf '| --- |'; for c in $columns; do printf ' --- |'; done; printf ' --- |\n'
for name in albano dagli gardeyn0 gardeyn3 mao trousers home1 home3 home4 panels1 panels2; do
  instance=$folder/$name.json
  [ -f "$instance" ] || continue
  printf '| %s |' "$name"
  : > "$work/memory"
  for c in $columns; do
    case $c in quick|usual|patient) how="--effort $c" ;; *) how="--seconds $c" ;; esac
    : > "$work/densities"
    seed=1
    while [ "$seed" -le "$seeds" ]; do
      # shellcheck disable=SC2086
      "$bench" "$instance" $how --seed "$seed" --threads "${THREADS:-2}" --out "$work/lay.json" > "$work/line"
      sed 's/.*density \([0-9.]*\).*/\1/' "$work/line" >> "$work/densities"
      sed 's/.*memory \([0-9]*\) MiB.*/\1/' "$work/line" >> "$work/memory"
      if [ -n "${CHECK:-}" ] && ! python3 "$CHECK" "$instance" "$work/lay.json" --tolerance-fraction 1e-5 > "$work/checked" 2>&1; then
        failed=1
        echo "$name, $c, seed $seed: the layout is not valid" >&2
        cat "$work/checked" >&2
      fi
      seed=$((seed + 1))
    done
    sort -n "$work/densities" | awk '{ d[NR] = $1 } END { printf " %.2f |", NR % 2 ? d[(NR + 1) / 2] : (d[NR / 2] + d[NR / 2 + 1]) / 2 }'
  done
  printf ' %s |\n' "$(sort -n "$work/memory" | tail -1)"
done
exit $failed
