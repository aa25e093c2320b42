#!/bin/sh
# A batch by two workers, and a packet whose lays are searched by two threads, under the thread sanitizer: no report. Ten to twenty minutes.
#   sh tests/slow/threads.sh FOLDER_FOR_WORK
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
work=$1
rm -rf "$work/in" "$work/out" "$work"/report*
mkdir -p "$work/in"
cmake -S "$top" -B "$work/build" -G Ninja -DCMAKE_BUILD_TYPE=None -DGOWNSHEAF_TOGETHER=ON -DGOWNSHEAF_TESTS=OFF \
  "-DCMAKE_CXX_FLAGS=-O1 -g1 -fsanitize=thread -DGOWNSHEAF_SANITIZED" > "$work/configure.log"
ninja -C "$work/build" gownsheaf > "$work/build.log"
for example in linen-skirt bell-ringers-waistcoat ferry-keepers-spencer millrace-corset; do cp -r "$top/examples/$example" "$work/in/"; done
for i in $(seq 20); do sed "s/^title: .*/title: Skirt $i/" "$top/examples/linen-skirt/project.yaml" > "$work/in/s$i.yaml"; done
printf 'gownsheaf: 1\nsleevs: 2\n' > "$work/in/bad.yaml"
# Where addresses are laid out at random in more bits than it knows, the sanitizer does not start.
run() { TSAN_OPTIONS="log_path=$work/report" setarch -R "$work/build/gownsheaf" "$@"; }
run batch "$work/in" --out "$work/out" --jobs 2 --effort quick --time-limit 3600 -q > "$work/told" 2>&1 || true
tail -n 1 "$work/told"
run packet "$top/examples/lamplighter-jacket/project.yaml" --threads 2 --effort quick -o "$work/jacket.pdf" -q > /dev/null 2>&1
grep -q '"made": 24,' "$work/out/batch.json" || { echo "not all were made" >&2; exit 1; }
if ls "$work"/report* 2> /dev/null; then exit 1; fi
echo "no report of the thread sanitizer: 24 packets by two workers, one by two threads"
