#!/bin/sh
# The integrator of the living model against SUNDIALS CVODE on the same system at
# the same accuracy, both in this run, by the best of the processor's own times
# for a brew of 72 h. Needs Debian's libsundials-dev and gcc. Fails where CVODE
# takes less than five times as long, or where the hourly oxygen is off by more
# than 0.1 mg/L (root mean square) from CVODE's at a tolerance of 1e-11.
set -eu
cd "$(dirname "$0")/.."

folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
gcc -O3 -march=native -o "$folder/cvode" bench/cvode.c -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lsundials_generic -lm
ours=$(AEROSTEEP_JUDGED="$folder/brews" go test ./job/forecast -run '^$' -bench '^BenchmarkJudged$' -benchtime 100x |
	awk '/^BenchmarkJudged/ { for (i = 2; i <= NF; i++) if ($i == "best-ns") print $(i - 1) }')
"$folder/cvode" "$folder/brews" | awk -v ours="$ours" '{
	printf "one brew over 72 h: %.1f us here (off by %s mg/L), %.1f us CVODE at %s (off by %s mg/L), ratio %.1f (at least 5)\n", ours / 1e3, $1, $4 / 1e3, $3, $2, $4 / ours
	exit $4 / ours < 5 || $1 > 0.1
}'
