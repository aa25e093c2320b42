#!/bin/sh
# 200 projects of strangers among 20 good ones, through the program itself: 20 are made, 200 told, time and memory stay under the
# ceilings; and under strace: every file that is opened lies in the folder of projects, in that of packets, among the fonts, the
# templates or the program's own shared libraries (and the system is asked for the number of processors). Needs strace and root (for a device; a pipe stands in without).
#   tests/slow/hostile.sh [BUILD]
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
build=${1:-$top/build}
room=$(mktemp -d "${TMPDIR:-/tmp}/gownsheaf-hostile-XXXXXX")
trap 'rm -rf "$room"' EXIT
mkdir "$room/in"
GOWNSHEAF_FILL="$room/in" "$build/tests/service_test" "[fill]" > /dev/null
begun=$(date +%s)
"$build/gownsheaf" batch "$room/in" --out "$room/out" --time-limit 20 --memory-limit 256 > "$room/told" 2> "$room/messages" || [ $? = 1 ]
took=$(($(date +%s) - begun))
tail -n 1 "$room/told"
[ "$(tail -n 1 "$room/told")" = "220 projects: 20 made, 0 current, 200 failed." ]
[ "$(grep -c '^failed' "$room/told")" = 200 ]
if grep -q 'fault of the program' "$room/told"; then grep 'fault of the program' "$room/told"; exit 1; fi
echo "in $took s, each under 20 s and 256 MiB of address space"

rm -r "$room/out"
strace -f -y -qq -e trace=%file,openat,openat2,execve,connect,socket -o "$room/trace" \
  "$build/gownsheaf" batch "$room/in" --out "$room/out" --jobs 1 > /dev/null 2>&1 || true
# What was opened, as whole paths: `fd</path>` comes from -y, whether named relative to a folder or not.
grep -E 'open(at2?)?\(' "$room/trace" | grep -v ' = -1 ' | sed -nE 's/.* = [0-9]+<([^>]*)>.*/\1/p' | sort -u > "$room/opened"
templates=$("$build/gownsheaf" batch --help | sed -nE 's/.*--templates TEXT \[(.*)\].*/\1/p')
outside=$(grep -vE "^($room$|$room/in|$room/out|${templates:-$top/packet-templates}|/usr/share/fonts|/proc/[0-9]+/task$|/etc/ld.so.cache$|/sys/devices/system/cpu/online$|/(usr/)?lib/.*\.so[.0-9]*$|$build/gownsheaf$)" "$room/opened" || true)
[ -z "$outside" ] || { echo "opened outside:"; echo "$outside"; exit 1; } >&2
if grep -E 'execve\(' "$room/trace" | sed 1d | grep -q .; then echo "something was run" >&2; exit 1; fi
if grep -qE '(socket|connect)\(' "$room/trace"; then echo "the network was asked for" >&2; exit 1; fi
echo "$(wc -l < "$room/opened") files and folders opened, none outside; nothing run, no socket."
