#!/bin/sh
# The README's two commands from nothing: a bare Debian 12 root, a clone of HEAD, both commands with their times.
# Needs root, debootstrap and the network; takes some ten minutes. sh tests/run.sh -L slow
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd)
[ "$(id -u)" = 0 ] || { echo "clean-root.sh: must be run as root" >&2; exit 1; }
root=$(mktemp -d "${TMPDIR:-/tmp}/gownsheaf-root-XXXXXX")
finish() { umount "$root/proc" 2>/dev/null || true; rm -rf --one-file-system "$root"; }
trap finish EXIT
debootstrap --variant=minbase bookworm "$root" "${GOWNSHEAF_DEBIAN:-http://deb.debian.org/debian}" >/dev/null
cp /etc/resolv.conf "$root/etc/resolv.conf"
mount -t proc proc "$root/proc"
git -C "$top" archive --prefix=gownsheaf/ HEAD | tar -x -C "$root"
for command in examples/first-packet.sh tests/run.sh; do
  echo "== sh $command"
  begun=$(date +%s)
  chroot "$root" /bin/sh -c "cd /gownsheaf && sh $command" 2>"$root/log" | tail -n 3 || { tail -n 20 "$root/log" >&2; exit 1; }
  echo "== $(($(date +%s) - begun)) s"
done
