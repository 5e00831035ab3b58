package application

import (
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

const mostNozzles = 200

var nozzles = worksheet.Sheet{
	Name: "nozzles", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "flows", Kind: worksheet.Flow, List: true, Low: "0 L/min"},
		{Flag: "caught", Kind: worksheet.Volume, List: true, Low: "0 L"},
		{Flag: "time", Kind: worksheet.Span, Low: "0 s", Over: true},
		{Flag: "rated", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
		{Flag: "wear-limit", Kind: worksheet.Bare, Low: "1", High: "50", Default: "10"},
		{Flag: "even-limit", Kind: worksheet.Bare, Low: "1", High: "50", Default: "5"},
	},
	Example: `--flows "0.80, 0.82, 0.79, 0.91 L/min" --rated "0.80 L/min"`,
	Sources: []source.Source{source.NozzleWear, source.AlbertaAgdex606},
	Shape:   nozzlesAnswer{},
	Run:     runNozzles,
}

type nozzlesAnswer struct {
	Nozzles []nozzleRow `json:"nozzles"`
	Mean    float64     `json:"mean_l_per_min"`
	CV      *float64    `json:"cv_percent"`
	Spread  float64     `json:"spread_percent"`
	Replace []int       `json:"replace"`
	Recheck []int       `json:"recheck"`
	Even    bool        `json:"even"`
}

type nozzleRow struct {
	N         int      `json:"n"`
	Flow      float64  `json:"flow_l_per_min"`
	OverRated *float64 `json:"over_rated_percent"`
	OffMean   float64  `json:"off_mean_percent"`
	Verdict   string   `json:"verdict"`
}

func runNozzles(f *worksheet.Form) (*worksheet.Result, error) {
	flows, err := readFlows(f)
	if err != nil {
		return nil, err
	}
	limits := spray.Limits{Wear: f.Number("wear-limit"), Even: f.Number("even-limit")}
	test, err := spray.Judge(flows, given[quantity.Flow](f, "rated"), limits)
	if err != nil {
		return nil, refused(f, err)
	}
	answer := nozzlesAnswer{
		Mean: test.Mean.LitresPerMinute(), CV: test.CV, Spread: test.Spread,
		Replace: test.Numbers(spray.Replace), Recheck: test.Numbers(spray.Recheck), Even: test.Even,
	}
	for _, n := range test.Nozzles {
		answer.Nozzles = append(answer.Nozzles, nozzleRow{n.Number, n.Flow.LitresPerMinute(), n.OverRated, n.OffMean, string(n.Verdict)})
	}
	return &worksheet.Result{Answer: nozzlesSentence(test, answer), Data: answer, Basis: worksheet.Habit, Sources: f.Sheet.Sources}, nil
}

// readFlows reads flows, or what was caught in a time.
func readFlows(f *worksheet.Form) ([]quantity.Flow, error) {
	flag, err := f.OneOf("flows", "caught")
	if err != nil {
		return nil, err
	}
	if err := f.Together("caught", "time"); err != nil {
		return nil, err
	}
	numbers := f.Numbers(flag)
	if len(numbers) > mostNozzles {
		return nil, f.Refuse(flag, "application.many-nozzles", wording.Places{"n": len(numbers)})
	}
	flows := make([]quantity.Flow, len(numbers))
	for i, v := range numbers {
		if flag == "caught" {
			v = quantity.Volume(v).Litres() / f.Span("time").Minutes()
		}
		flows[i] = quantity.Flow(v)
	}
	return flows, nil
}

func nozzlesSentence(test spray.Evenness, answer nozzlesAnswer) wording.Text {
	places := wording.Places{
		"mean": test.Mean, "spread": quantity.Percent(test.Spread), "n": len(test.Nozzles),
		"replace": numbersOrNone(answer.Replace), "recheck": numbersOrNone(answer.Recheck),
	}
	switch {
	case len(answer.Replace)+len(answer.Recheck) > 0:
		return wording.Say("sheet.nozzles.answer", places)
	case test.Even:
		return wording.Say("sheet.nozzles.even", places)
	}
	return wording.Say("sheet.nozzles.uneven", places)
}

func numbersOrNone(numbers []int) wording.Text {
	if len(numbers) == 0 {
		return wording.Say("application.none")
	}
	return wording.Say("application.numbers", wording.Places{"list": numberList(numbers)})
}
