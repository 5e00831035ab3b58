package hygiene

import (
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var membraneFilter = worksheet.Sheet{
	Name:  "membrane-filter",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "counts", Kind: worksheet.Text, Required: true},
		{Flag: "filtered", Kind: worksheet.SmallVolume, Required: true, List: true, Low: "0 mL", Over: true},
		{Flag: "rule", Kind: worksheet.Choice, Choices: []string{"all", "20-80", "20-60"}, Default: "all"},
		{Flag: "verified", Kind: worksheet.Bare, Low: "0", High: "1", Over: true, Default: "1"},
		{Flag: "limit", Kind: worksheet.Bare, Low: "0", Over: true},
	},
	Example: "--counts '38, 4' --filtered '10 mL, 1 mL'",
	Sources: []source.Source{source.USGSField71, source.Garwood1936},
	Shape:   filtered{},
	Run:     runMembraneFilter,
}

type filtered struct {
	Per100ML     worksheet.Estimate `json:"cfu_per_100_ml"`
	Relation     string             `json:"relation"`
	Reported     float64            `json:"reported_cfu_per_100_ml"`
	Filters      []filterUse        `json:"filters"`
	AgainstLimit *string            `json:"against_limit"`
}

type filterUse struct {
	Filter     int     `json:"filter"`
	FilteredML float64 `json:"filtered_ml"`
	Count      *int    `json:"count"`
	Used       bool    `json:"used"`
	Why        string  `json:"why"`
}

func runMembraneFilter(f *worksheet.Form) (*worksheet.Result, error) {
	counts, err := readCounts("counts", f.Text("counts"), f.Text("counts"))
	if err != nil {
		return nil, err
	}
	volumes := f.Numbers("filtered")
	if len(counts) != len(volumes) {
		return nil, differentLengths("filtered", f.Text("filtered"), "counts", "filtered", len(counts), len(volumes))
	}
	filters := make([]counting.Filter, len(counts))
	for i := range filters {
		filters[i] = counting.Filter{FilteredML: volumes[i] * 1000, Count: counts[i]}
	}
	c := counting.CountFilters(filters, ranges[f.Text("rule")], f.Number("verified"))
	data := filtered{Per100ML: limits(c.Per100ML, c.Low95, c.High95), Relation: string(c.Relation), Reported: c.Reported}
	for i, u := range c.Filters {
		data.Filters = append(data.Filters, filterUse{i + 1, u.FilteredML, countOf(u.Count), u.Used, u.Why})
	}
	if f.Has("limit") {
		data.AgainstLimit = worksheet.Some(string(c.Against(f.Number("limit"))))
	}
	return filterResult(f, data), nil
}

func filterResult(f *worksheet.Form, data filtered) *worksheet.Result {
	places := wording.Places{"reported": data.Reported}
	if data.Per100ML.Low95 != nil {
		places["low"], places["high"] = *data.Per100ML.Low95, *data.Per100ML.High95
	}
	result := &worksheet.Result{
		Answer: wording.Say("sheet.membrane-filter.answer."+relationWord[data.Relation], places),
		Data:   data, Basis: worksheet.Standard,
		Sources: []source.Source{source.USGSField71, source.Garwood1936},
	}
	if data.AgainstLimit != nil {
		result.Notes = append(result.Notes, wording.Say("sheet.membrane-filter."+*data.AgainstLimit, wording.Places{"limit": f.Number("limit")}))
	}
	result.Caution("hygiene.caution.test")
	return result
}
