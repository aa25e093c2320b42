#!/bin/sh
# The table of docs/performance.md in one command: a packet against libharu alone drawing the same marks, 1,000 small projects by one and
# by two workers, a pass in which all is current, from rename to packet in a watched folder, and memory.
#   tests/bench/table.sh [BUILD] [PROJECTS]
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
build=${1:-$top/build}
many=${2:-1000}
ninja -C "$build" gownsheaf times measured > /dev/null
program=$build/gownsheaf measured=$build/tests/measured
room=$(mktemp -d "${TMPDIR:-/tmp}/gownsheaf-bench-XXXXXX")
watcher=
finish() { [ -z "$watcher" ] || kill "$watcher" 2>/dev/null || true; rm -rf "$room"; }
trap finish EXIT
row() { printf '| %-62s | %-36s |\n' "$1" "$2"; }
small() {
  printf 'gownsheaf: 1\ntitle: Skirt %s\ncloths: { linen: { kind: dress linen, width: 140 cm, bought: [3 m] } }\n' "$1"
  printf 'pieces: [{ piece: breadth, part of: skirt, make: 1, from: [linen], cut width: 100 cm, cut length: 95 cm }]\nprint: { sheets: pin-up }\n'
}
# took WHAT: wall, cpu and memory of the last command, from its last line of errors
wall() { tail -n 1 "$room/took" | cut -d' ' -f1; }
cpu() { tail -n 1 "$room/took" | cut -d' ' -f2; }
memory() { tail -n 1 "$room/took" | cut -d' ' -f3; }
over() { awk -v a="$1" -v b="$2" 'BEGIN { printf "%.2f", a / b }'; }

row "load of the machine before, $(nproc) processors" "$(cut -d' ' -f1 /proc/loadavg)"
"$build/tests/times" > "$room/times"
for example in wool-day-dress regatta-petticoat linen-skirt; do
  packet=$(sed -n "s/^$example packet .* \([0-9.]*\) ms of the processor.*/\1/p" "$room/times")
  alone=$(sed -n "s/^$example libharu alone .* \([0-9.]*\) ms of the processor.*/\1/p" "$room/times")
  ratio=$(sed -n "s/^$example ratio *\([0-9.]*\) times.*/\1/p" "$room/times")
  pages=$(sed -n "s/^$example ratio .*, \([0-9]*\) pages/\1/p" "$room/times")
  kept=$(sed -n "s/^$example lays kept .* \([0-9.]*\) ms of the processor.*/\1/p" "$room/times")
  row "$example: the command, lays searched ($pages pages)" "$packet ms of the processor"
  row "$example: a packet without the search" "$kept ms of the processor"
  row "$example: libharu alone, the same marks" "$alone ms; the packet is $ratio x"
done

mkdir "$room/in"
for i in $(seq "$many"); do small "$i" > "$room/in/p$i.yaml"; done
for jobs in 1 2; do
  sync
  "$measured" "$program" batch "$room/in" --out "$room/out$jobs" --jobs $jobs -q > /dev/null 2> "$room/took"
  [ $jobs = 1 ] && one=$(wall)
  row "$many small projects, $jobs at once" "$(wall) ms, $(cpu) ms of processors"
done
row "throughput of 2 over 1" "$(over "$one" "$(wall)") x"
row "largest process of it" "$(memory) MiB"
"$measured" "$program" batch "$room/in" --out "$room/out2" -q > /dev/null 2> "$room/took"
row "the same, all current" "$(wall) ms, $(cpu) ms of processors"

mkdir "$room/watched"
for settle in 400 50; do
  rm -rf "$room/packets"
  "$program" watch "$room/watched" --out "$room/packets" --settle $settle --health "$room/health" > /dev/null 2>&1 &
  watcher=$!
  while ! grep -q watching "$room/health" 2>/dev/null; do sleep 0.05; done
  : > "$room/latencies"
  for i in $(seq 15); do
    small "w$i" > "$room/next"
    begun=$(date +%s%N)
    mv "$room/next" "$room/watched/w$settle-$i.yaml"
    while [ ! -e "$room/packets/w$settle-$i.pdf" ]; do sleep 0.005; done
    echo $((($(date +%s%N) - begun) / 1000000)) >> "$room/latencies"
  done
  kill $watcher
  wait $watcher || true
  watcher=
  rm -f "$room/health"
  row "from rename to packet, settling $settle ms: median of 15, most" "$(sort -n "$room/latencies" | sed -n 8p) ms, $(sort -n "$room/latencies" | tail -n 1) ms"
done

for example in wool-day-dress millrace-corset lamplighter-jacket; do
  "$measured" "$program" packet "$top/examples/$example/project.yaml" --effort quick -q -o "$room/x.pdf" > /dev/null 2> "$room/took"
  row "$example: memory of one packet" "$(memory) MiB"
done
