#!/bin/sh
# Installs the Debian packages that the named lists hold, and nothing when all are there (then no network is needed).
#   sh src/setup/install.sh build run test
# Root installs directly; others through sudo, for apt alone; without sudo the line to run is printed, exit 3.
set -eu
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)
[ $# -gt 0 ] || { echo "usage: install.sh LIST...   (build, run, test)" >&2; exit 2; }

missing=
for list in "$@"; do
  file="$here/packages-$list.txt"
  [ -f "$file" ] || { echo "install.sh: no such list: $list" >&2; exit 2; }
  for package in $(sed 's/#.*//' "$file"); do
    state=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
    [ "$state" = installed ] || missing="$missing $package"
  done
done
[ -n "$missing" ] || exit 0

if [ "$(id -u)" = 0 ]; then
  as_root=
elif command -v sudo >/dev/null 2>&1; then
  as_root=sudo
else
  echo "These packages are missing and this user may not install them. As root, run:" >&2
  echo "  apt-get update && apt-get install -y --no-install-recommends$missing" >&2
  exit 3
fi
echo "Installing:$missing" >&2
$as_root apt-get -q update >&2
$as_root env DEBIAN_FRONTEND=noninteractive apt-get -q install -y --no-install-recommends $missing >&2
