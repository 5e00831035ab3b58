#!/bin/sh
# Saturation over a million values against GSW's compiled O2sol_SP_pt on an
# array of the same length, both in this run, by the processor's own time. Needs Debian's python3-gsw.
# Fails where the ratio is over 1.1.
set -eu
cd "$(dirname "$0")/.."

gsw=$(/usr/bin/python3 - <<'PY'
import time
import numpy, gsw
n = 1_000_000
i = numpy.arange(n)
t, s = 40 * i / n, 35 * (i % 1000) / 1000
best = 1e9
for _ in range(40):
    start = time.process_time()
    gsw.O2sol_SP_pt(s, t)
    best = min(best, time.process_time() - start)
print(int(best * 1e9))
PY
)
ours=$(go test ./science/oxygen -run '^$' -bench '^BenchmarkSaturationMillion$' -benchtime 40x |
	awk '/^BenchmarkSaturationMillion/ { for (i = 2; i <= NF; i++) if ($i == "best-ns") print $(i - 1) }')
awk -v ours="$ours" -v gsw="$gsw" 'BEGIN {
	ratio = ours / gsw
	printf "saturation, a million values: %.1f ms here, %.1f ms GSW, ratio %.2f (at most 1.1)\n", ours / 1e6, gsw / 1e6, ratio
	exit ratio > 1.1
}'
