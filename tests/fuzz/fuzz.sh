#!/bin/sh
# Builds the fuzzers with Clang (apt-get install clang) and runs one, or all, on the project's own files.
#   sh tests/fuzz/fuzz.sh FOLDER_FOR_WORK [SECONDS [TARGET...]]
# What it finds lies in FOLDER_FOR_WORK/found; make it small (fuzz-TARGET -minimize_crash=1), mend the program, and keep it as
# tests/fuzz/kept/TARGET-WHAT.input, which the tests replay.
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
work=$1 seconds=${2:-1800}
mkdir -p "$work"
[ $# -ge 2 ] && shift 2 || shift 1
[ $# -gt 0 ] || set -- yaml check svg templates quantities
cmake -S "$top" -B "$work/build" -G Ninja -DCMAKE_CXX_COMPILER="${CXX:-clang++}" -DCMAKE_BUILD_TYPE=None -DGOWNSHEAF_FUZZ=ON \
  -DGOWNSHEAF_TOGETHER=ON > "$work/configure.log"
cmake --build "$work/build" --target $(for t in "$@"; do echo "fuzz-$t"; done) > "$work/build.log"
# The words of the project file and of templates, for all who read YAML.
sed -n 's/^| `\([^`]*\)`.*/\1/p' "$top/docs/project-file.md" | tr '/' '\n' | grep -E '^[a-z][a-z -]*$' | sort -u | sed 's/.*/"&: "/' > "$work/words"
for word in path d rect circle ellipse polygon polyline points line use href g transform matrix rotate scale skewX translate viewBox style class \
  display:none visibility hidden id width height fill-rule evenodd mm cm in pt px; do echo "\"$word\""; done > "$work/svg-words"
mkdir -p "$work/found"
status=0
for t in "$@"; do
  mkdir -p "$work/seeds/$t" "$work/corpus/$t"
  words=$work/words
  [ "$t" = svg ] && words=$work/svg-words
  longest=20000
  [ "$t" = quantities ] && longest=200  # each line is read in 16 ways
  case $t in
    yaml | check) for f in "$top"/examples/*/project.yaml "$top"/tests/check/*.yaml; do cp "$f" "$work/seeds/$t/$(echo "$f" | sha256sum | cut -c1-16)"; done ;;
    svg) for f in "$top"/examples/*/*.svg; do cp "$f" "$work/seeds/$t/$(echo "$f" | sha256sum | cut -c1-16)"; done ;;
    templates) cp "$top"/packet-templates/*.yaml "$work/seeds/$t/" ;;
    quantities) grep -ohE '[0-9][0-9 /.]*(in|yd|cm|mm|m|%|lb|oz|h|min)[^,}]*' "$top"/examples/*/project.yaml | sort -u | split -l 1 -a 4 - "$work/seeds/$t/" ;;
  esac
  "$work/build/fuzz-$t" -max_total_time="$seconds" -max_len="$longest" -timeout=20 -rss_limit_mb=2048 -dict="$words" \
    -artifact_prefix="$work/found/$t-" -print_final_stats=1 "$work/corpus/$t" "$work/seeds/$t" > "$work/$t.log" 2>&1 || status=1
  echo "$t: $(grep -E 'stat::number_of_executed_units' "$work/$t.log" | sed 's/.*: *//') runs, $(find "$work/found" -name "$t-*" | wc -l) found"
done
exit $status
