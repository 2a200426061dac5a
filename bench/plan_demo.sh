#!/usr/bin/env bash
# How long `plan` on the demo book takes and how much memory: five runs at the usual 512 members a colony.
# Build first (./run --build). Prints wall and processor seconds and the peak of memory, the quickest run last.
set -euo pipefail
cd "$(dirname "$0")/.."
beegarth=build/release/beegarth
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
"$beegarth" demo "$folder/demo.garth" >/dev/null
for _ in 1 2 3 4 5; do
  python3 - "$beegarth" "$folder/demo.garth" <<'PY'
import resource, subprocess, sys, time
start = time.monotonic()
subprocess.run([sys.argv[1], "plan", sys.argv[2]], check=True, stdout=subprocess.DEVNULL)
wall = time.monotonic() - start
used = resource.getrusage(resource.RUSAGE_CHILDREN)
print(f"{wall:.2f} s wall, {used.ru_utime + used.ru_stime:.2f} s of the processors, {used.ru_maxrss / 1024:.0f} MB")
PY
done | sort -rn
