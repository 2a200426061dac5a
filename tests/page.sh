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
# Two files at a time; what one says comes out in one piece, in the order of their names.
browse() {
  local said
  said=$(mktemp -d)
  printf '%s\n' tests/browser/*.test.mjs |
    said=$said xargs -P 2 -I{} sh -c 'node --test-reporter=tap "{}" >"$said/$(basename "{}")" 2>&1' || failed=1
  cat "$said"/*
  rm -rf "$said"
}
browse

# The same against the program itself, serving the demo book.
program=build/release/beegarth
if [ -z "${BEEGARTH_URL:-}" ] && [ -x "$program" ]; then
  folder=$(mktemp -d)
  "$program" demo "$folder/demo.garth" >/dev/null
  "$program" serve "$folder/demo.garth" --members 128 --port 0 --json >"$folder/address" &
  server=$!
  trap 'kill "$server" 2>/dev/null; rm -rf "$folder"' EXIT
  for _ in $(seq 100); do [ -s "$folder/address" ] && break; sleep 0.1; done
  BEEGARTH_URL=$(sed -nE 's/.*"(http:[^"]*[0-9])\/?".*/\1/p' "$folder/address")
  export BEEGARTH_URL
  browse
fi
exit "$failed"
