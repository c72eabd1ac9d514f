#!/usr/bin/env bash
# Installs everything and proves it, from a fresh clone to one last line: N passed, N failed.
set -euo pipefail
cd "$(dirname "$0")/.."

if ! npm ci --loglevel=error </dev/null; then
  echo 'npm ci could not install the packages, so nothing could be run.' >&2
  echo '0 passed, 1 failed'
  exit 1
fi

exec npm run --silent prove </dev/null
