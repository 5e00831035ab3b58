package plan_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
)

func BenchmarkTernHollowsWeek(b *testing.B) {
	file, problems := jobfile.Read([]byte(ternHollow(b, "week.toml")), "week.toml", jobfile.Whole)
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	now := time.Date(2026, 5, 11, 15, 0, 0, 0, time.UTC)
	for b.Loop() {
		plan.Make(plan.Input{File: file, Now: now, Reader: file.Holding.Reader})
	}
}

// manyWants is 200 wants, 8 vessels, 14 days.
func manyWants() string {
	var b strings.Builder
	b.WriteString("[holding]\nzone = \"America/Los_Angeles\"\n[[site]]\nname = \"Farm\"\nlatitude = 44\nlongitude = -123\naltitude = \"200 m\"\n")
	b.WriteString("[[pump]]\nname = \"P\"\ncurve = \"220 L/min@0 kPa, 110 L/min@20 kPa, 0 L/min@32 kPa\"\nbubbles = \"fine\"\ntube_bore = \"25 mm\"\ntube_length = \"3 m\"\n")
	for i := range 8 {
		fmt.Fprintf(&b, "[[vessel]]\nname = \"V%d\"\nfull = \"%d L\"\ndepth = \"0.8 m\"\npump = \"P\"\n", i, 200+100*i)
	}
	b.WriteString("[water]\nsource = \"well\"\ntemperature = \"16 C\"\n")
	for i := range 200 {
		fmt.Fprintf(&b, "[[bed]]\nname = \"B%d\"\narea = \"%d m2\"\n", i, 50+i)
		recipe := []string{"unfed", "castings", "fungal", "bacterial"}[i%4]
		fmt.Fprintf(&b, "[[want]]\nbed = \"B%d\"\nmethod = \"drench\"\nat = 2026-05-%02dT%02d:00:00\ntea_rate = \"0.2 L/m2\"\nrecipe = \"%s\"\n", i, 4+i%14, 6+i%3*4, recipe)
	}
	return b.String()
}

func BenchmarkTwoHundredWants(b *testing.B) {
	file, problems := jobfile.Read([]byte(manyWants()), "many.toml", jobfile.Whole)
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	now := time.Date(2026, 5, 1, 15, 0, 0, 0, time.UTC)
	for b.Loop() {
		plan.Make(plan.Input{File: file, Now: now, Reader: file.Holding.Reader})
	}
}
