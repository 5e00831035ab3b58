// Package report makes the papers and files that leave the program: plans,
// calendars and sheets.
package report

import (
	"aerosteep/job/plan"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/hygiene"
)

// bedVerdict is one entry of a plan's hygiene, as `check` gives its beds.
type bedVerdict struct {
	Bed   string  `json:"bed"`
	Batch *string `json:"batch"`
	hygiene.Ruling
}

// PlanJSON is a plan as every face answers it: one object on one line.
func PlanJSON(p *plan.Plan, reader wording.Reader) ([]byte, error) {
	full := *p
	full.Hygiene = []any{}
	for _, v := range p.Verdicts {
		shown, err := worksheet.Tree(bedVerdict{v.Bed, v.Batch, hygiene.RulingOf(v.Verdict)}, reader)
		if err != nil {
			return nil, err
		}
		full.Hygiene = append(full.Hygiene, shown)
	}
	if len(p.Verdicts) > 0 {
		full.Cautions = append(append([]string(nil), p.Cautions...), worksheet.Sentences(hygiene.Cautions(), reader)...)
		full.Sources = withSources(p.Sources, hygiene.Sources())
	}
	return worksheet.Plainly(full)
}

func withSources(have, more []source.Source) []source.Source {
	all := append([]source.Source(nil), have...)
	for _, s := range more {
		known := false
		for _, h := range have {
			known = known || h.Key == s.Key
		}
		if !known {
			all = append(all, s)
		}
	}
	return all
}
