#!/usr/bin/env bash
# The same daily step in C++ (sixteen, eight or four lanes, and plain), vectorised NumPy and vectorised R, one after
# the other in one run on one core: prints times and ratios, and whether the mean courses agree, so that it is the
# same algorithm on every side. Needs python3-numpy and r-base-core. Build first:
#   cmake --preset release -DBEEGARTH_BENCH=ON && ninja -C build/release bench_colony_step
set -euo pipefail
cd "$(dirname "$0")"
bench=${1:-../build/release/bench/bench_colony_step}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
export OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1 PYTHONDONTWRITEBYTECODE=1
{
  taskset -c 0 "$bench" figures "$folder"
  taskset -c 0 /usr/bin/python3 colony_step.py "$folder"
  taskset -c 0 Rscript --vanilla colony_step.R "$folder"
  taskset -c 0 "$bench" figures "$folder"
} | tee "$folder/times.txt"
/usr/bin/python3 colony_agree.py "$folder"
