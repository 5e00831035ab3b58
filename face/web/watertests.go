package web

import (
	"encoding/json"
	"net/http"
	"sort"
	"time"

	"aerosteep/quantity"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// waterTest is the last test of the water of one place, with its age.
type waterTest struct {
	Place, Line, Age string
	Old              bool
	at               time.Time
}

// testedWater is what a test entry says of water.
type testedWater struct {
	Place    string   `json:"place"`
	Chlorine *float64 `json:"total_chlorine_mg_per_l"`
	EColi    *float64 `json:"ecoli_per_100_ml"`
}

// oldTest is when a test of water no longer says much: supplies change with
// the season (common practice).
const oldTest = 90 * 24 * time.Hour

// yearsOfTests is how far back tests are looked for.
const yearsOfTests = 2

// waterTests are the last test of each place, the newest first.
func (s *Site) waterTests(p *page, r *http.Request, now time.Time) []waterTest {
	if s.Holding == nil {
		return nil
	}
	entries, err := s.Holding.Entries(r.Context(), "", now.AddDate(-yearsOfTests, 0, 0))
	if err != nil {
		s.log("water tests", err)
		return nil
	}
	last := map[string]waterTest{}
	for _, e := range entries {
		var said testedWater
		if what, _ := e.About(); e.ReplacedBy != nil || e.Kind != journal.Test || what == "batch" || json.Unmarshal(e.Body, &said) != nil {
			continue
		}
		if said.Chlorine == nil && said.EColi == nil {
			continue
		}
		if said.Place == "" {
			if _, said.Place = e.About(); said.Place == "" {
				said.Place = p.Say("web.water.own")
			}
		}
		last[said.Place] = p.waterTest(said, e.Time(), now)
	}
	var all []waterTest
	for _, test := range last {
		all = append(all, test)
	}
	sort.Slice(all, func(i, j int) bool { return all[i].at.After(all[j].at) })
	return all
}

func (p *page) waterTest(said testedWater, at, now time.Time) waterTest {
	days := int(now.Sub(at).Hours() / 24)
	test := waterTest{Place: said.Place, Age: p.Say("web.water.age", "n", days), Old: now.Sub(at) > oldTest, at: at}
	if said.Chlorine != nil {
		test.Line = p.Say("web.water.chlorine", "value", quantity.MilligramsPerLitre(*said.Chlorine))
	}
	if said.EColi != nil {
		if test.Line != "" {
			test.Line += "; "
		}
		test.Line += p.Text(wording.Say("web.water.ecoli", wording.Places{"value": *said.EColi}))
	}
	return test
}
