#!/bin/sh
# Makes sure that Chromium is there for the end-to-end tests. Installs Debian's package when run as root.
set -eu

if [ -x "${CHROMIUM:-}" ] || command -v chromium >/dev/null; then
  exit 0
fi

if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
  export DEBIAN_FRONTEND=noninteractive
  apt-get update
  apt-get install --yes --no-install-recommends chromium
  exit 0
fi

echo 'The end-to-end tests need Chromium, on the PATH under the name chromium.' >&2
echo 'On Debian: sudo apt-get install chromium. Elsewhere: set CHROMIUM to the path of the program.' >&2
exit 1
