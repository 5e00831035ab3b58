package hygiene

import (
	"strconv"
	"strings"

	"aerosteep/job/hygiene"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var samplingPlan = worksheet.Sheet{
	Name:  "sampling-plan",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "counts", Kind: worksheet.Text, Required: true},
		{Flag: "samples", Kind: worksheet.Whole, Low: "1", High: "1000", Default: "5"},
		{Flag: "allowed", Kind: worksheet.Whole, Low: "0", High: "1000", Default: "5"},
		{Flag: "lower", Kind: worksheet.Bare, Low: "0", Default: "0"},
		{Flag: "upper", Kind: worksheet.Bare, Low: "0", Default: "1000"},
		{Flag: "salmonella", Kind: worksheet.Text},
	},
	Example: "--counts '10,200,900,1000,5' --salmonella 0/5",
	Sources: []source.Source{source.EU20191009},
	Shape:   planned{},
	Run:     runSamplingPlan,
}

type planned struct {
	Verdict string       `json:"verdict"`
	Samples int          `json:"samples"`
	Between int          `json:"between"`
	Over    int          `json:"over"`
	Why     wording.Text `json:"why"`
}

func runSamplingPlan(f *worksheet.Form) (*worksheet.Result, error) {
	counts, err := planCounts(f)
	if err != nil {
		return nil, err
	}
	plan := hygiene.Plan{Samples: f.Int("samples"), Allowed: f.Int("allowed"), Lower: f.Number("lower"), Upper: f.Number("upper")}
	if plan.Lower > plan.Upper {
		return nil, wrong("lower", f.Text("lower"), "laboratory.plan.ends", "laboratory.plan.allowed", wording.Places{"lower": plan.Lower, "upper": plan.Upper})
	}
	if plan.Allowed > plan.Samples {
		return nil, wrong("allowed", f.Text("allowed"), "laboratory.plan.more", "laboratory.plan.allowed", wording.Places{"allowed": plan.Allowed, "samples": plan.Samples})
	}
	salmonella, err := readSalmonella(f)
	if err != nil {
		return nil, err
	}
	r := plan.Judge(counts, salmonella)
	why := wording.Say("sheet.sampling-plan.why."+r.Why, wording.Places{
		"over": r.Over, "between": r.Between, "allowed": plan.Allowed, "upper": plan.Upper, "samples": plan.Samples, "counts": len(counts),
	})
	result := &worksheet.Result{
		Answer: wording.Say("sheet.sampling-plan.answer."+string(r.Verdict), wording.Places{"why": why}),
		Data:   planned{string(r.Verdict), len(counts), r.Between, r.Over, why},
		Told:   []string{"why"}, Basis: worksheet.Standard, Sources: []source.Source{source.EU20191009},
	}
	if salmonella == nil {
		result.Caution("laboratory.caution.salmonella")
	}
	result.Caution("hygiene.caution.test")
	return result, nil
}

// planCounts reads the counts; "<10" counts as 10, and one above the range
// cannot be placed.
func planCounts(f *worksheet.Form) ([]float64, error) {
	findings, err := wholeFindings("counts", f.Text("counts"))
	if err != nil {
		return nil, err
	}
	counts := make([]float64, len(findings))
	for i, found := range findings {
		if found.Is == counting.MoreThan {
			return nil, wrong("counts", f.Text("counts"), "laboratory.plan.above", "laboratory.plan.counts")
		}
		counts[i] = found.Value
	}
	return counts, nil
}

// readSalmonella reads "0/5": positive of tested.
func readSalmonella(f *worksheet.Form) (*hygiene.Salmonella, error) {
	if !f.Has("salmonella") {
		return nil, nil
	}
	text := f.Text("salmonella")
	above, below, parted := strings.Cut(text, "/")
	positive, err1 := strconv.Atoi(strings.TrimSpace(above))
	tested, err2 := strconv.Atoi(strings.TrimSpace(below))
	if !parted || err1 != nil || err2 != nil || positive < 0 || tested < 1 || positive > tested {
		return nil, wrong("salmonella", text, "laboratory.salmonella", "laboratory.salmonella.allowed")
	}
	return &hygiene.Salmonella{Positive: positive, Tested: tested}, nil
}
