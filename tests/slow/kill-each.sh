#!/bin/sh
# Kills a batch with signal 9 at each write, flush, rename, removal and new folder of its own, one after the other (strace), where
# kill-nine.sh takes moments at random: after each, every file is whole, of the old or of the new version, and the next run makes the
# rest and leaves no temporary file. Needs strace.
#   tests/slow/kill-each.sh [PROGRAM]
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
program=${1:-$top/build/gownsheaf}
command -v strace > /dev/null || { echo "kill-each.sh: no strace here" >&2; exit 77; }
room=$(mktemp -d "${TMPDIR:-/tmp}/gownsheaf-kill-XXXXXX")
trap 'rm -rf "$room"' EXIT
mkdir -p "$room/known"
project() {  # VERSION
  printf 'gownsheaf: 1\ntitle: Skirt, plan %s\nworn on: 2027-08-21\ntoday: 2027-03-0%s\n' "$1" "$1"
  printf 'cloths: { linen: { kind: dress linen, width: 140 cm, bought: [3 m] } }\n'
  printf 'pieces: [{ piece: breadth, part of: skirt, make: %s, from: [linen], cut width: 60 cm, cut length: 95 cm }]\n' "$1"
  printf 'work: { hours a week: 5 }\nprint: { sheets: pin-up }\n'
}
for v in 1 2; do
  project "$v" > "$room/p.yaml"
  "$program" packet "$room/p.yaml" -q -o "$room/known/$v.pdf" --effort quick > /dev/null
done
# Not one of a pair is from another version than the rest of its kind: each file is known by itself.
known() { for v in 1 2; do cmp -s "$1" "$room/known/$v.$2" && return 0; done; echo "$what: $1 is no version" >&2; exit 1; }
moments=0
for old in no yes; do
  newest=1
  [ $old = no ] || newest=2
  for calls in write fsync rename mkdir unlink; do
    n=1
    while :; do
      what="$calls $n, an old packet: $old"
      rm -rf "$room/in" "$room/out"
      mkdir -p "$room/in/deep"
      project 1 > "$room/in/deep/p.yaml"
      if [ $old = yes ]; then
        "$program" batch "$room/in" --out "$room/out" --effort quick -q > /dev/null
        project 2 > "$room/in/deep/p.yaml"
      fi
      strace -f -qq -o "$room/trace" -e "trace=$calls" -e "inject=$calls:signal=SIGKILL:when=$n" \
        "$program" batch "$room/in" --out "$room/out" --effort quick --jobs 1 > /dev/null 2>&1 || true
      grep -q 'killed by SIGKILL' "$room/trace" || break
      moments=$((moments + 1))
      for ending in pdf figures.json work.ics; do
        file=$room/out/deep/p.$ending
        if [ -e "$file" ]; then known "$file" "$ending"; elif [ $old = yes ]; then echo "$what: $file is lost" >&2; exit 1; fi
      done
      "$program" batch "$room/in" --out "$room/out" --effort quick -q > /dev/null || { echo "$what: the next run failed" >&2; exit 1; }
      for ending in pdf figures.json work.ics; do
        cmp -s "$room/out/deep/p.$ending" "$room/known/$newest.$ending" || { echo "$what: p.$ending is not the newest" >&2; exit 1; }
      done
      [ -z "$(find "$room/out" -name '.gownsheaf-*')" ] || { echo "$what: temporary files are left" >&2; exit 1; }
      "$program" batch "$room/in" --out "$room/out" --effort quick -q | grep -q '0 made, 1 current' || { echo "$what: not current" >&2; exit 1; }
      n=$((n + 1))
    done
  done
done
[ "$moments" -gt 20 ] || { echo "only $moments moments" >&2; exit 1; }
echo "killed at $moments moments, one after the other: no file partial, none lost, each made whole by the next run."
