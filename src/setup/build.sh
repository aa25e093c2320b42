#!/bin/sh
# Configures and builds into build/ at the top of the repository. Arguments are handed to the build step.
# GOWNSHEAF_WERROR=1 turns warnings into errors (CI does).
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
werror=OFF
[ "${GOWNSHEAF_WERROR:-0}" = 1 ] && werror=ON
cmake -S "$top" -B "$top/build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DGOWNSHEAF_WERROR="$werror" \
  -DGOWNSHEAF_TOGETHER=ON >&2
cmake --build "$top/build" "$@" >&2
