#!/usr/bin/env bash
# clang-format and clang-tidy over our sources. Sources that are compiled alike are read together, sixteen at a time, because
# most of the time goes into what they all include; a group with something to say is read again by halves.
# What did not change (text, headers, rules) is not read again.
# The analyzer that follows every path takes two thirds of the time: with $1 = yes only.
set -uo pipefail
cd "$(dirname "$0")/.."
mkdir -p build/tidy
left_out=-clang-analyzer-*
[ "${1:-no}" = no ] || left_out=
rules=$(echo "$left_out" | cat - .clang-tidy .clang-format src/*/*.hpp src/*/*/*.hpp src/*/*/*/*.hpp | sha256sum)

# What GCC alone understands of the flags.
gcc_alone='-fno-tree-pre\|-fno-gcse'

# check FLAGS SOURCE...: one line a source
check() {
  local flags=$1 stamp together log half
  shift
  stamp=build/tidy/$(echo "$rules" | cat - "$flags" "$@" | sha256sum | cut -c1-40)
  if [ -f "$stamp" ]; then printf 'ok %s (unchanged)\n' "$@"; return; fi
  together=$stamp.cpp
  printf "#include \"$PWD/%s\"  // NOLINT\n" "$@" >"$together"
  log=$(clang-tidy-14 -quiet --config-file=.clang-tidy --checks="$left_out" --header-filter='(src|tests)/.*\.[ch]pp$' \
    "$together" -- $(sed "s/$gcc_alone//g" "$flags") -Wno-unknown-warning-option 2>/dev/null)
  if [ $? -eq 0 ] && [ -z "$(echo "$log" | grep -E '(warning|error):')" ]; then
    touch "$stamp"
    printf 'ok %s\n' "$@"
  elif [ $# -gt 1 ]; then
    half=$(($# / 2))
    check "$flags" "${@:1:half}"
    check "$flags" "${@:half+1}"
  else
    printf 'FAIL %s\n' "$@"
    echo "$log"
  fi
  rm -f "$together"
}
export -f check
export rules left_out gcc_alone

# What each source is compiled with; the tests' own build compiles several together.
cmake --preset release -B build/each -DBEEGARTH_TESTS=ON -DBEEGARTH_UNIT_TESTS=OFF -DBEEGARTH_TOGETHER=OFF >build/tidy/configure.log 2>&1 ||
  { echo "FAIL configure"; tail -5 build/tidy/configure.log; }
unformatted=$(git ls-files '*.cpp' '*.hpp' | xargs clang-format-14 --dry-run --Werror 2>&1 | grep -E 'error:' | cut -d: -f1 | sort -u)
if [ -n "$unformatted" ]; then echo "FAIL clang-format: $unformatted"; else echo "ok clang-format"; fi
node tests/tidy_groups.mjs build/each/compile_commands.json build/tidy 16 | xargs -P 2 -L1 bash -c 'check "$@"' check
