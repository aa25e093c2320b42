#!/bin/sh
# From a bare machine to a bound packet: installs what is missing, builds, makes the packet of one example.
# The last line printed is the path of the PDF.
#   sh examples/first-packet.sh [PROJECT.yaml] [PACKET.pdf]
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/src/setup/install.sh" build run
sh "$top/src/setup/build.sh" --target gownsheaf
project=${1:-$top/examples/wool-day-dress/project.yaml}
packet=${2:-$top/build/packets/wool-day-dress.pdf}
mkdir -p "$(dirname -- "$packet")"
"$top/build/gownsheaf" packet "$project" -o "$packet" >/dev/null
echo "$packet"
