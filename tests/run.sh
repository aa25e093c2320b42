#!/bin/sh
# Installs what is missing, builds everything, runs the fast tests. Arguments go to ctest (-R pleats, -L slow …).
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/src/setup/install.sh" build run test
sh "$top/src/setup/build.sh"
if [ $# -eq 0 ]; then set -- -L fast; fi
cd "$top/build"
exec ctest --output-on-failure --no-tests=error -j "$(nproc)" "$@"
