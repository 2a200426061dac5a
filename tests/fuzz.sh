#!/usr/bin/env bash
# Runs every fuzzer of the sanitizer build (cmake --preset asan) on its corpus: always the same inputs for a short while,
# or ($1 = yes) new ones for minutes.
set -uo pipefail
cd "$(dirname "$0")/.."
how=(-seed=7 -runs=12000)
[ "${1:-no}" = no ] || how=(-max_total_time=300)
for program in build/asan/fuzz/*_fuzz; do
  name=$(basename "$program" _fuzz)
  work=build/asan/found/$name
  [ "${1:-no}" != no ] || rm -rf "$work"
  mkdir -p "$work"
  if "$program" "${how[@]}" -timeout=10 -rss_limit_mb=2048 -artifact_prefix="$work/crash-" "$work" "fuzz/corpus/$name" >"$work.log" 2>&1; then
    echo "ok $name: $(grep -oE 'stat::number_of_executed_units: *[0-9]+|Done [0-9]+ runs' "$work.log" | tail -1)"
  else
    tail -40 "$work.log"
    echo "FAIL $name"
  fi
done
