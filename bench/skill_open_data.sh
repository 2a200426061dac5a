#!/usr/bin/env bash
# Forecasts held against the open records of real colonies; docs/skill.md shows what came out.
#   bench/skill_open_data.sh PROGRAM DATA FOLDER [MEMBERS]
# PROGRAM: a released beegarth. DATA: the folder with colony_mites_autumn.csv and splits_mites_honey_spring.csv (not part of
# the project; docs/skill.md says whose they are). FOLDER: where books and answers go; there must be none of that name yet.
set -euo pipefail
beegarth=$(realpath "$1")
data=$(realpath "$2")
folder=$3
members=${4:-512}
mkdir "$folder"
maps=$(dirname "$(realpath "$0")")/../maps

# The files name neither place nor year of the weather, so it is not theirs: monthly normals of a warm-temperate lowland, from
# memory, rounded, of no particular station. Month, low C, high C, rain mm, days with rain, wind m/s.
normals="1 2 14 120 9 3
2 4 16 125 9 3
3 7 20 135 9 3
4 11 25 110 8 3
5 16 29 100 8 2.5
6 20 32 105 9 2.5
7 22 33 130 11 2
8 21 33 100 9 2
9 18 30 90 7 2.5
10 12 25 80 6 2.5
11 6 19 105 7 2.5
12 3 15 125 9 3"

# held NAME MAP TODAY FIRST SITES...
held() {
  local name=$1 map=$2 today=$3 first=$4
  local book=$folder/$name.garth
  shift 4
  "$beegarth" new "$book" >/dev/null
  "$beegarth" import "$book" "$data/$map.csv" --map "$maps/$map.toml" >"$folder/$name-import.txt"
  for site in "$@"; do
    while read -r month low high rain days wind; do
      "$beegarth" enter "$book" normals "{\"site\":\"$site\",\"month\":$month,\"temperature_min_C\":$low,\"temperature_max_C\":$high,\"rain_mm\":$rain,\"rain_days\":$days,\"wind_m_s\":$wind}" \
        --date "$first" >/dev/null
    done <<<"$normals"
  done
  "$beegarth" skill "$book" --today "$today" --members "$members" --json >"$folder/$name.json"
  echo "== $name"
  "$beegarth" skill "$book" --today "$today" --members "$members" | tee "$folder/$name.txt"
}
held autumn colony_mites_autumn 2020-02-08 2019-09-18 autumn
held spring splits_mites_honey_spring 2022-07-02 2022-03-08 spring-yard1 spring-yard2 spring-yard3 spring-yard4
