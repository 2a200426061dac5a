#!/usr/bin/env bash
# Builds every fuzzer with clang's libFuzzer and runs each on its corpus for a short while ($1 = yes: for minutes).
set -uo pipefail
cd "$(dirname "$0")/.."
seconds=12
[ "${1:-no}" = no ] || seconds=300
{ cmake --preset fuzz && ninja -C build/fuzz; } >build/build-fuzz.log 2>&1 || { tail -40 build/build-fuzz.log; echo "FAIL the fuzzers do not build"; exit 0; }
for program in build/fuzz/fuzz/*_fuzz; do
  name=$(basename "$program" _fuzz)
  work=build/fuzz/found/$name
  mkdir -p "$work"
  if "$program" -max_total_time=$seconds -timeout=10 -rss_limit_mb=2048 -artifact_prefix="$work/crash-" "$work" "fuzz/corpus/$name" >"$work.log" 2>&1; then
    echo "ok $name: $(grep -oE 'stat::number_of_executed_units: *[0-9]+|Done [0-9]+ runs' "$work.log" | tail -1)"
  else
    tail -40 "$work.log"
    echo "FAIL $name"
  fi
done
