package hygiene

import (
	"aerosteep/job/hygiene"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var pretest = worksheet.Sheet{
	Name:  "pretest",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "ecoli", Kind: worksheet.Text},
		{Flag: "enterococci", Kind: worksheet.Text},
	},
	Example: "--ecoli '100, 140'",
	Sources: []source.Source{source.NOSB2004},
	Shape:   pretested{},
	Run:     runPretest,
}

type pretested struct {
	Verdict     string   `json:"verdict"`
	Batches     int      `json:"batches"`
	EColi       *float64 `json:"mean_ecoli_per_100_ml"`
	Enterococci *float64 `json:"mean_enterococci_per_100_ml"`
}

func runPretest(f *worksheet.Form) (*worksheet.Result, error) {
	if len(f.Given("ecoli", "enterococci")) == 0 {
		return nil, wrong("ecoli", "", "laboratory.no-organism", "counting.finding.allowed")
	}
	r, err := readPretest(f)
	if err != nil {
		return nil, err
	}
	result := &worksheet.Result{
		Answer: wording.Say("sheet.pretest." + string(r.Verdict)),
		Data:   pretested{string(r.Verdict), r.Batches, r.EColi, r.Enterococci},
		Basis:  worksheet.Contested, Sources: []source.Source{source.NOSB2004},
	}
	result.Caution("laboratory.caution.pretest")
	result.Caution("hygiene.caution.law")
	result.Caution("hygiene.caution.test")
	return result, nil
}

func readPretest(f *worksheet.Form) (hygiene.PretestResult, error) {
	var none hygiene.PretestResult
	lists := map[string][]counting.Finding{}
	for _, flag := range f.Given("ecoli", "enterococci") {
		findings, err := wholeFindings(flag, f.Text(flag))
		if err != nil {
			return none, err
		}
		lists[flag] = findings
	}
	a, b := lists["ecoli"], lists["enterococci"]
	if len(a) > 0 && len(b) > 0 && len(a) != len(b) {
		return none, differentLengths("enterococci", f.Text("enterococci"), "ecoli", "enterococci", len(a), len(b))
	}
	return hygiene.JudgePretest(a, b), nil
}
