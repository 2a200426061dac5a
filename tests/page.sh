#!/usr/bin/env bash
# The page's own checks, as TAP: types, then the answers and the browser. Build the page first (./run --build).
# BEEGARTH_URL=http://127.0.0.1:PORT runs them against a program that is serving a book, instead of invented answers.
set -uo pipefail
cd "$(dirname "$0")/.."

failed=0
# step NAME COMMAND...: one line of TAP, and the command's words where it failed
step() {
  local name=$1 words
  shift
  if words=$("$@" 2>&1); then
    echo "ok - $name"
  else
    echo "not ok - $name"
    echo "$words" | tail -40 | sed 's/^/  /'
    echo "  ..."
    failed=1
  fi
}

step "the page's types and markup, without a warning" npm --prefix web run --silent check
for file in tests/browser/*.test.mjs; do
  node --test-reporter=tap "$file" || failed=1
done
exit "$failed"
