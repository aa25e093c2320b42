#!/bin/sh
# Kills batch and watch with signal 9 at random moments, while projects change under them, and looks after each kill: every file in the
# folder of packets holds the bytes of one version of its project, whole, and no packet that was once there is lost. Each tenth round is
# let go to its end: then every packet is the newest, and no temporary file is left.
# It goes on until so many were killed at work; one that had ended before counts for nothing.
#   tests/slow/kill-nine.sh [PROGRAM] [KILLS]      (300 take five to ten minutes)
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
program=${1:-$top/build/gownsheaf}
kills=${2:-300}
projects=12
room=$(mktemp -d "${TMPDIR:-/tmp}/gownsheaf-kill-XXXXXX")
trap 'rm -rf "$room"' EXIT
mkdir "$room/in" "$room/out" "$room/known"
below() { n=$(od -An -N4 -tu4 /dev/urandom); echo $((n % $1)); }

# project N VERSION: the file, and beforehand what each of its outputs must hold
project() {
  printf 'gownsheaf: 1\ntitle: Skirt %s, plan %s\nworn on: 2027-08-21\ntoday: 2027-03-0%s\n' "$1" "$2" "$2"
  printf 'cloths: { linen: { kind: dress linen, width: 140 cm, bought: [3 m] } }\n'
  printf 'pieces: [{ piece: breadth, part of: skirt, make: %s, from: [linen], cut width: 60 cm, cut length: 95 cm }]\n' "$2"
  printf 'work: { hours a week: 5 }\nprint: { sheets: pin-up }\n'
}
for n in $(seq $projects); do
  for v in 1 2 3; do
    project "$n" "$v" > "$room/p$n.yaml"
    "$program" packet "$room/p$n.yaml" -q -o "$room/known/p$n.pdf" --effort quick > /dev/null
    for ending in pdf figures.json work.ics; do sha256sum < "$room/known/p$n.$ending" >> "$room/sums.p$n.$ending"; done
  done
done
write() { project "$1" "$2" > "$room/in/.new"; mv "$room/in/.new" "$room/in/p$1.yaml"; echo "$2" > "$room/version.$1"; }
whole() {  # every output is one that is known
  for file in "$room"/out/p*; do
    [ -e "$file" ] || continue
    name=$(basename "$file")
    grep -qx "$(sha256sum < "$file")" "$room/sums.$name" || { echo "round $1: $name is no version of its packet" >&2; cp "$file" /tmp/; exit 1; }
  done
  for file in $(cat "$room/seen"); do
    [ -e "$room/out/$file" ] || { echo "round $1: $file is lost" >&2; exit 1; }
  done
  (cd "$room/out" && ls | grep '^p.*pdf$' || true) > "$room/seen"
}
newest() {  # after a pass that was let go to its end
  for n in $(seq $projects); do
    want=$(sed -n "$(cat "$room/version.$n")p" "$room/sums.p$n.pdf")
    [ "$(sha256sum < "$room/out/p$n.pdf")" = "$want" ] || { echo "round $1: p$n is not the newest" >&2; exit 1; }
  done
  left=$(find "$room/out" -name '.gownsheaf-*' | wc -l)
  [ "$left" = 0 ] || { echo "round $1: $left temporary files are left" >&2; exit 1; }
}
: > "$room/seen"
for n in $(seq $projects); do write "$n" 1; done
killed_at_work=0 temporaries=0 round=0
while [ "$killed_at_work" -lt "$kills" ]; do
  round=$((round + 1))
  for n in $(seq $projects); do [ "$(below 2)" = 0 ] || write "$n" $(($(below 3) + 1)); done
  if [ $((round % 2)) = 0 ]; then
    "$program" batch "$room/in" --out "$room/out" --effort quick --jobs 2 > /dev/null 2>&1 &
  else
    "$program" watch "$room/in" --out "$room/out" --effort quick --jobs 2 --settle 20 > /dev/null 2>&1 &
  fi
  pid=$!
  sleep "0.$(printf %03d "$(below 300)")"
  if [ $((round % 2)) = 1 ]; then
    for n in $(seq $projects); do [ "$(below 3)" != 0 ] || write "$n" $(($(below 3) + 1)); done
    sleep "0.$(printf %03d "$(below 300)")"
  fi
  kill -9 $pid 2>/dev/null && killed_at_work=$((killed_at_work + 1)) || true
  wait $pid 2>/dev/null || true
  temporaries=$((temporaries + $(find "$room/out" -name '.gownsheaf-*' | wc -l)))
  whole "$round"
  if [ $((round % 10)) = 0 ]; then
    "$program" batch "$room/in" --out "$room/out" --effort quick > /dev/null
    newest "$round"
    whole "$round"
  fi
done
echo "$round rounds, $killed_at_work killed at work, $temporaries temporary files left by them and cleared: no packet partial, none lost."
