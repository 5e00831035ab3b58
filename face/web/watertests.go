package web

import (
	"slices"
	"strings"
	"time"

	"aerosteep/quantity"
	"aerosteep/record/holding"
)

// waterTest is the last test of the water of one place, with its age.
type waterTest struct {
	Place, Line, Age string
	Old              bool
}

// waterTests are the last test of each place, the newest first.
func (s *Site) waterTests(p *page, now time.Time) []waterTest {
	if s.Holding == nil {
		return nil
	}
	tests := s.Holding.WaterTests()
	slices.SortStableFunc(tests, func(a, b holding.WaterTest) int { return b.At.Compare(a.At) })
	var all []waterTest
	for _, t := range tests {
		all = append(all, p.waterTest(t, now))
	}
	return all
}

func (p *page) waterTest(t holding.WaterTest, now time.Time) waterTest {
	days := int(now.Sub(t.At).Hours() / 24)
	row := waterTest{Place: t.Place, Age: p.Say("web.water.age", "n", days), Old: now.Sub(t.At) > holding.WaterServesFor}
	if row.Place == "" {
		row.Place = p.Say("web.water.own")
	}
	var parts []string
	if t.Total != nil {
		parts = append(parts, p.totalChlorine(t))
	}
	if t.Free != nil {
		parts = append(parts, p.Say("web.water.free", "value", quantity.MilligramsPerLitre(*t.Free)))
	}
	if t.EColi != nil {
		parts = append(parts, p.Say("web.water.ecoli", "value", *t.EColi))
	}
	if t.ReadFrom != "" {
		parts = append(parts, choiceWord(p, "read-from", t.ReadFrom))
	}
	row.Line = strings.Join(parts, "; ")
	return row
}

// totalChlorine is one reading, or between which a strip was read.
func (p *page) totalChlorine(t holding.WaterTest) string {
	high := quantity.MilligramsPerLitre(*t.Total)
	if t.From != nil && *t.From < *t.Total {
		return p.Say("web.water.chlorine.between", "low", quantity.MilligramsPerLitre(*t.From), "high", high)
	}
	return p.Say("web.water.chlorine", "value", high)
}
