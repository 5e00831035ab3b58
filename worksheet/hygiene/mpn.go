package hygiene

import (
	"math"

	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var mpn = worksheet.Sheet{
	Name:  "mpn",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "tubes", Kind: worksheet.Text, Required: true},
		{Flag: "volumes", Kind: worksheet.Text, Required: true},
		{Flag: "interval", Kind: worksheet.Choice, Choices: []string{string(counting.LogNormal), string(counting.LikelihoodRatio)}, Default: string(counting.LogNormal)},
	},
	Example: "--tubes '3/3, 1/3, 0/3' --volumes '0.1 mL, 0.01 mL, 0.001 mL'",
	Sources: mpnSources,
	Shape:   mostProbable{},
	Run:     runMPN,
}

var mpnSources = []source.Source{source.Jarvis2010, source.BAMAppendix2, source.Ridout1994, source.Blodgett2002}

type mostProbable struct {
	PerML        *worksheet.Estimate `json:"mpn_per_ml"`
	Per100ML     *worksheet.Estimate `json:"mpn_per_100_ml"`
	PerG         *worksheet.Estimate `json:"mpn_per_g"`
	Relation     string              `json:"relation"`
	Reported     string              `json:"reported"`
	ReportedUnit string              `json:"reported_unit"`
	SELog10      *float64            `json:"se_log10"`
	Rarity       float64             `json:"rarity"`
	Category     int                 `json:"category"`
	Trustworthy  bool                `json:"trustworthy"`
	Interval     string              `json:"interval"`
}

func runMPN(f *worksheet.Form) (*worksheet.Result, error) {
	levels, err := counting.ParseTubes("tubes", f.Text("tubes"))
	if err != nil {
		return nil, err
	}
	volumes, err := readAmounts("volumes", f.Text("volumes"))
	if err != nil {
		return nil, err
	}
	if len(levels) != len(volumes.values) {
		return nil, differentLengths("volumes", f.Text("volumes"), "tubes", "volumes", len(levels), len(volumes.values))
	}
	for i := range levels {
		levels[i].Amount = volumes.values[i]
	}
	m, err := counting.MostProbableNumber(levels, counting.Method(f.Text("interval")))
	if err != nil {
		return nil, err
	}
	data := mostProbableOf(m, levels, volumes.isMass)
	data.Interval = f.Text("interval")
	return mpnResult(data, m), nil
}

func mostProbableOf(m counting.MPN, levels []counting.Tubes, isMass bool) mostProbable {
	e := limits(m.Estimate, m.Low95, m.High95)
	data := mostProbable{Rarity: m.Rarity, Category: m.Category(), Trustworthy: m.Trustworthy()}
	if m.SELn != nil {
		data.SELog10 = worksheet.Some(*m.SELn / math.Ln10)
	}
	per := 1.0
	if isMass {
		data.PerG, data.ReportedUnit = &e, "per g"
	} else {
		per = 100
		data.PerML, data.Per100ML, data.ReportedUnit = &e, worksheet.Some(times(e, per)), "per 100 mL"
	}
	data.Relation, data.Reported = reportedMPN(m, levels, per)
	return data
}

// reportedMPN is how a laboratory writes the result: with all tubes alike, the
// number that one different tube of the smallest amount would give stands as
// the limit.
func reportedMPN(m counting.MPN, levels []counting.Tubes, per float64) (relation, text string) {
	switch m.Interval {
	case counting.AllNegative:
		return "<", "<" + counting.TwoFiguresText(per*oneOther(levels, +1, *m.High95))
	case counting.AllPositive:
		return ">", ">" + counting.TwoFiguresText(per*oneOther(levels, -1, *m.Low95))
	}
	return "=", counting.TwoFiguresText(per * *m.Estimate)
}

// oneOther is the estimate if one tube of the smallest amount were other than
// it was; with a single tube in all there is no such estimate and the exact
// limit stands in.
func oneOther(levels []counting.Tubes, by int, limit float64) float64 {
	changed := append([]counting.Tubes(nil), levels...)
	smallest := 0
	for i, l := range changed {
		if l.Amount < changed[smallest].Amount {
			smallest = i
		}
	}
	changed[smallest].Positive += by
	m, err := counting.MostProbableNumber(changed, counting.LogNormal)
	if err != nil || m.Estimate == nil || *m.Estimate == 0 {
		return limit
	}
	return *m.Estimate
}

func mpnResult(data mostProbable, m counting.MPN) *worksheet.Result {
	places := wording.Places{"reported": data.Reported, "unit": wording.Say("laboratory.unit." + data.ReportedUnit)}
	if m.Low95 != nil && m.High95 != nil {
		shown := data.PerG
		if shown == nil {
			shown = data.Per100ML
		}
		places["low"], places["high"] = *shown.Low95, *shown.High95
	}
	key := map[string]string{"=": "sheet.mpn.answer", "<": "sheet.mpn.answer.none", ">": "sheet.mpn.answer.all"}[data.Relation]
	result := &worksheet.Result{Answer: wording.Say(key, places), Data: data, Basis: worksheet.Standard, Sources: mpnSources}
	if !data.Trustworthy {
		result.Caution("laboratory.caution.rare")
	}
	result.Caution("laboratory.caution.tables")
	result.Caution("hygiene.caution.test")
	return result
}
