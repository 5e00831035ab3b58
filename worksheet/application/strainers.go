package application

import (
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var strainers = worksheet.Sheet{
	Name: "strainers", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "chain", Kind: worksheet.Text, Required: true},
		{Flag: "orifice", Kind: worksheet.SmallLength, Low: "0.05 mm", High: "20 mm"},
		{Flag: "nozzle-flow", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
		{Flag: "pressure", Kind: worksheet.Pressure, Low: "0 kPa", Over: true},
		{Flag: "discharge-coefficient", Kind: worksheet.Bare, Low: "0.5", High: "1", Default: "0.9"},
	},
	Example: `--chain "400 um, 50 mesh, 80 mesh" --nozzle-flow "0.8 L/min" --pressure "3 bar"`,
	Sources: []source.Source{source.ASTME11, source.OrificeLaw, source.CommonPractice},
	Shape:   strainersAnswer{},
	Run:     runStrainers,
}

type strainersAnswer struct {
	Stages  []stageRow `json:"stages"`
	Orifice *float64   `json:"orifice_um"`
	LastTo  *float64   `json:"last_to_orifice"`
	Low     *float64   `json:"advised_last_low_um"`
	High    *float64   `json:"advised_last_high_um"`
	Finest  float64    `json:"finest_um"`
	Fungal  string     `json:"fungal_strands"`
	OK      bool       `json:"chain_ok"`
}

type stageRow struct {
	N       int     `json:"n"`
	Given   string  `json:"given"`
	Opening float64 `json:"opening_um"`
	Sieve   *int    `json:"sieve_no"`
	Verdict string  `json:"verdict"`
}

const mostScreens = 10

func runStrainers(f *worksheet.Form) (*worksheet.Result, error) {
	screens, err := readChain(f)
	if err != nil {
		return nil, err
	}
	orifice, err := readOrifice(f)
	if err != nil {
		return nil, refused(f, err)
	}
	chain := application.JudgeChain(screens, orifice)
	r := &worksheet.Result{Answer: chainSentence(chain, orifice), Data: chainFigures(chain, orifice), Basis: worksheet.Habit, Sources: f.Sheet.Sources}
	if !chain.PassesFungi {
		r.Caution("application.strands", wording.Places{"finest": chain.Finest})
	}
	if chain.SmallOrifice {
		r.Caution("application.small-orifice", wording.Places{"orifice": *orifice, "least": application.SmallestOpen})
	}
	return r, nil
}

func readChain(f *worksheet.Form) ([]application.Screen, error) {
	items := worksheet.SplitList(f.Text("chain"))
	if len(items) > mostScreens {
		return nil, f.Refuse("chain", "application.screen.many", wording.Places{"n": len(items)})
	}
	var screens []application.Screen
	for _, item := range items {
		if item == "" {
			return nil, f.Refuse("chain", "worksheet.empty-item")
		}
		screen, err := application.ParseScreen(item)
		if err != nil {
			return nil, err
		}
		screens = append(screens, screen)
	}
	return screens, nil
}

// readOrifice takes the smallest passage as it was measured, else from the
// nozzle's flow and pressure; nil where neither is known.
func readOrifice(f *worksheet.Form) (*quantity.Length, error) {
	if err := f.Together("nozzle-flow", "pressure"); err != nil {
		return nil, err
	}
	measured := given[quantity.Length](f, "orifice")
	if !f.Has("nozzle-flow") {
		if f.Has("discharge-coefficient") {
			return nil, f.Refuse("nozzle-flow", "worksheet.together", wording.Places{"missing": "--nozzle-flow", "given": "--discharge-coefficient"})
		}
		return measured, nil
	}
	computed, err := spray.Orifice(f.Flow("nozzle-flow"), f.Pressure("pressure"), f.Number("discharge-coefficient"))
	if err != nil || measured == nil {
		return &computed, err
	}
	if !application.Agree(measured.Metres(), computed.Metres(), application.MeasuredAgree) {
		return nil, f.Advise("orifice", "application.disagree", "application.disagree.advice", wording.Places{
			"first": "--orifice", "second": "--nozzle-flow, --pressure", "a": *measured, "b": computed,
		})
	}
	return measured, nil
}

func chainFigures(c application.Chain, orifice *quantity.Length) strainersAnswer {
	answer := strainersAnswer{
		Orifice: in(orifice, quantity.Length.Micrometres), LastTo: c.LastTo,
		Low: in(c.AdvisedLow, quantity.Length.Micrometres), High: in(c.AdvisedHigh, quantity.Length.Micrometres),
		Finest: c.Finest.Micrometres(), Fungal: "pass", OK: c.OK,
	}
	if !c.PassesFungi {
		answer.Fungal = "held-back"
	}
	for i, s := range c.Stages {
		row := stageRow{N: i + 1, Given: s.Given, Opening: s.Opening.Micrometres(), Verdict: string(s.Verdict)}
		if number := s.Sieve; number > 0 {
			row.Sieve = &number
		}
		answer.Stages = append(answer.Stages, row)
	}
	return answer
}

func chainSentence(c application.Chain, orifice *quantity.Length) wording.Text {
	last := c.Stages[len(c.Stages)-1]
	for i, s := range c.Stages {
		switch s.Verdict {
		case application.NotFiner:
			return wording.Say("sheet.strainers.not-finer", wording.Places{"n": i + 1, "given": s.Given, "before": c.Stages[i-1].Given})
		case application.PassesTooMuch:
			return wording.Say("sheet.strainers.passes", wording.Places{"given": s.Given, "opening": s.Opening, "orifice": *orifice})
		}
	}
	if orifice == nil {
		return wording.Say("sheet.strainers.fine", wording.Places{"opening": last.Opening})
	}
	return wording.Say("sheet.strainers.answer", wording.Places{"opening": last.Opening, "orifice": *orifice})
}
