#!/bin/sh
# The container as docs/compose.yaml runs it: read-only root, no network, no capability, user 10001. A project that comes is made, a
# faulty one is told, what lies outside cannot be written, and SIGTERM ends the service with 0.
#   sh tests/slow/container.sh [IMAGE]     ENGINE=podman or docker; without IMAGE it is built first
# Where no engine is installed it says so and exits 77.
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
engine=${ENGINE:-podman}
command -v "$engine" > /dev/null || { echo "container.sh: no $engine here" >&2; exit 77; }
image=${1:-}
if [ -z "$image" ]; then
  image=gownsheaf
  "$engine" build -t "$image" "$top" > /dev/null
fi
room=$(mktemp -d "${TMPDIR:-/tmp}/gownsheaf-container-XXXXXX")
name=gownsheaf-tried-$$
finish() { "$engine" rm -f "$name" > /dev/null 2>&1 || true; rm -rf "$room"; }
trap finish EXIT
mkdir "$room/in" "$room/out"
chmod 755 "$room"
chown 10001:10001 "$room/out"
failed=0
check() { if eval "$2"; then echo "ok      $1"; else echo "FAILED  $1"; failed=1; fi; }
soon() { n=0; until eval "$1"; do n=$((n + 1)); [ "$n" -lt 300 ] || return 1; sleep 0.1; done; }

# shellcheck disable=SC2086
"$engine" run -d --name "$name" --read-only --network none --user 10001:10001 --cap-drop ALL --security-opt no-new-privileges ${ENGINE_OPTIONS:-} \
  -v "$room/in:/in:ro" -v "$room/out:/out" "$image" watch /in --out /out --health /out/.health.json > /dev/null
check "the health file comes" 'soon "grep -q watching $room/out/.health.json 2> /dev/null"'
cp "$top/examples/linen-skirt/project.yaml" "$room/in/.skirt"
mv "$room/in/.skirt" "$room/in/skirt.yaml"
printf 'gownsheaf: 1\ntitle: Torn\nsleevs: 3\n' > "$room/in/torn.yaml"
check "a project that comes is made" 'soon "test -s $room/out/skirt.pdf"'
check "a faulty one is told beside" 'soon "grep -q sleevs $room/out/torn.problems.txt 2> /dev/null"'
check "what is made belongs to user 10001" '[ "$(stat -c %u "$room/out/skirt.pdf")" = 10001 ]'
check "the program is process 1" '[ "$("$engine" exec "$name" cat /proc/1/comm)" = gownsheaf ]'
check "the root cannot be written" '! "$engine" exec "$name" sh -c "echo x > /usr/local/x" 2> /dev/null'
check "nor the folder of projects" '! "$engine" exec "$name" sh -c "echo x > /in/x" 2> /dev/null'
check "there is no network" '[ "$("$engine" exec "$name" sh -c "tail -n +3 /proc/net/dev | grep -cv lo:")" = 0 ]'
check "no capability is left" '"$engine" exec "$name" grep -q "^CapEff:.0000000000000000$" /proc/1/status'
"$engine" stop -t 60 "$name" > /dev/null
check "SIGTERM ends it with 0" '[ "$("$engine" inspect -f "{{.State.ExitCode}}" "$name")" = 0 ]'
check "its last word is stopped" 'grep -q stopped "$room/out/.health.json"'
[ "$failed" = 0 ] && "$engine" run --rm --read-only --network none --user 10001:10001 --cap-drop ALL ${ENGINE_OPTIONS:-} -v "$room/in:/in:ro" -v "$room/out:/out" \
  "$image" batch /in --out /out -q > "$room/told" 2>&1 || true
check "batch finds the one current and the other faulty" 'grep -q "2 projects: 0 made, 1 current, 1 failed" "$room/told"'
exit $failed
