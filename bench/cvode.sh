#!/bin/sh
# The integrator of the living model against SUNDIALS CVODE on the same system at
# the same accuracy, both in this run, by the processor's own time for each brew
# of 72 h. Needs Debian's libsundials-dev and gcc. Fails where CVODE takes less
# than five times as long.
set -eu
cd "$(dirname "$0")/.."

folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
gcc -O3 -march=native -o "$folder/cvode" bench/cvode.c -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lsundials_generic -lm
ours=$(AEROSTEEP_JUDGED="$folder/brews" go test ./job/forecast -run '^$' -bench '^BenchmarkJudged$' -benchtime 20000x |
	awk '/^BenchmarkJudged/ { print $3 }')
"$folder/cvode" "$folder/brews" | awk -v ours="$ours" '{
	printf "one brew over 72 h: %.1f us here (off by %s mg/L), %.1f us CVODE at %s (off by %s mg/L), ratio %.1f (at least 5)\n", ours / 1e3, $1, $4 / 1e3, $3, $2, $4 / ours
	exit $4 / ours < 5
}'
