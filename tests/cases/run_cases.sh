#!/usr/bin/env bash
# Text cases: every tests/cases/*.case holds commands and what they must print. They are part of the manual.
#
#   # a comment
#   $ beegarth COMMAND ...        run in an empty folder; a pipe or redirection is allowed
#   > exit 3                      the exit code, where it is not 0
#   expected output, line by line, standard error after standard output; a line may end in ... to match any rest,
#   and a line that is only ... matches any number of lines
set -uo pipefail
program=$(realpath "$1")
cases=$(realpath "$(dirname "$0")")
repo=$(realpath "$cases/../..")

run_case() {
  local file=$1 name folder line command="" expected="" code=0 step=0 bad=0
  name=$(basename "$file" .case)
  folder=$(mktemp -d)
  flush() {
    [ -n "$command" ] || return 0
    step=$((step + 1))
    (cd "$folder" && PATH="$(dirname "$program"):$PATH" REPO="$repo" bash -c "$command" >out.txt 2>err.txt; echo $? >code.txt)
    cat "$folder/out.txt" "$folder/err.txt" >"$folder/all.txt"
    printf '%s' "$expected" >"$folder/expected.txt"
    if [ "$(cat "$folder/code.txt")" != "$code" ] || ! awk -f "$cases/matches.awk" "$folder/expected.txt" "$folder/all.txt"; then
      echo "FAIL $name step $step: $command"
      echo "  exit $(cat "$folder/code.txt"), expected $code; it printed:"
      sed 's/^/  | /' "$folder/all.txt" | head -40
      bad=1
    else
      echo "ok $name step $step"
    fi
    command=""; expected=""; code=0
  }
  while IFS= read -r line || [ -n "$line" ]; do
    case "$line" in
      '#'*) ;;
      '$ '*) flush; command=${line#'$ '} ;;
      '> exit '*) code=${line#'> exit '} ;;
      *) [ -n "$command" ] && [ -n "$line" ] && expected+="$line"$'\n' ;;
    esac
  done <"$file"
  flush
  rm -rf "$folder"
}

# What README.md shows is held to what comes: its commands with their output, in a case of their own.
from_readme() {
  printf '%s\n' '$ mkdir build' '$ beegarth demo build/demo.garth' '...'
  awk '/^    \$ build\/release\/beegarth/ { shown = 1; sub(/build\/release\/beegarth/, "beegarth") }
       !/^    / && !/^$/ { shown = 0 }
       shown { print substr($0, 5) }' "$repo/README.md"
}

export -f run_case
export program cases repo
# Two at a time; what one says comes out in one piece, in the order of their names.
said=$(mktemp -d) || exit 1
readme=$(mktemp -d)/readme.case || exit 1
from_readme >"$readme"
printf '%s\n' "$cases"/*.case "$readme" | said=$said xargs -P 2 -I{} bash -c 'run_case "{}" >"$said/$(basename "{}")"'
cat "$said"/*
rm -rf "$said" "$(dirname "$readme")"
