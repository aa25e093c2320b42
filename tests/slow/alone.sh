#!/bin/sh
# Each source compiled by itself with warnings as errors: shows an include that only its neighbours in a compilation had. A quarter of an hour.
#   sh tests/slow/alone.sh FOLDER_FOR_WORK
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
work=$1
mkdir -p "$work"
cmake -S "$top" -B "$work" -G Ninja -DGOWNSHEAF_TOGETHER=OFF -DGOWNSHEAF_WERROR=ON -DGOWNSHEAF_TESTS=OFF -DCMAKE_BUILD_TYPE=None > "$work/configure.log"
ninja -C "$work" > "$work/build.log" || { tail -n 40 "$work/build.log" >&2; exit 1; }
echo "$(find "$work" -name '*.cpp.o' | wc -l) sources compiled alone"
