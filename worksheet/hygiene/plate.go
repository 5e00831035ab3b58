package hygiene

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var plate = worksheet.Sheet{
	Name:  "plate",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "counts", Kind: worksheet.Text, Required: true},
		{Flag: "dilutions", Kind: worksheet.Text, Required: true},
		{Flag: "plated", Kind: worksheet.SmallVolume, Required: true, Low: "0 mL", Over: true},
		{Flag: "rule", Kind: worksheet.Choice, Choices: []string{"25-250", "30-300", "10-300", "all"}, Default: "25-250"},
		{Flag: "interval", Kind: worksheet.Choice, Choices: []string{string(counting.ExactInterval), string(counting.NormalInterval)}, Default: string(counting.ExactInterval)},
		{Flag: "reproducibility", Kind: worksheet.Bare, Low: "0", High: "2"},
	},
	Example: "--counts '232,244;33,28' --dilutions '1e-2,1e-3' --plated '1 mL'",
	Sources: plateSources,
	Shape:   plated{},
	Run:     runPlate,
}

var plateSources = []source.Source{source.BAMChapter3, source.ISO7218, source.Garwood1936, source.ISOTS19036}

type plated struct {
	PerML       worksheet.Estimate `json:"cfu_per_ml"`
	Relation    string             `json:"relation"`
	Reported    float64            `json:"reported_cfu_per_ml"`
	Rule        string             `json:"rule"`
	Colonies    *int               `json:"colonies"`
	Examined    *float64           `json:"volume_examined_ml"`
	Plates      []plateUse         `json:"plates"`
	Uncertainty *float64           `json:"expanded_uncertainty_log10"`
}

type plateUse struct {
	Level    int     `json:"level"`
	Dilution float64 `json:"dilution"`
	Count    *int    `json:"count"`
	Used     bool    `json:"used"`
	Why      string  `json:"why"`
}

func runPlate(f *worksheet.Form) (*worksheet.Result, error) {
	plates, err := readPlates(f)
	if err != nil {
		return nil, err
	}
	c := counting.CountPlates(plates, f.Volume("plated").Millilitres(), ranges[f.Text("rule")], counting.PlateInterval(f.Text("interval")))
	data := plated{
		PerML: limits(c.PerML, c.Low95, c.High95), Relation: string(c.Relation), Reported: c.ReportedPerML,
		Rule: f.Text("rule"), Colonies: c.Colonies, Examined: c.ExaminedML,
	}
	for _, p := range c.Plates {
		data.Plates = append(data.Plates, plateUse{p.Level, p.Dilution, countOf(p.Count), p.Used, p.Why})
	}
	if f.Has("reproducibility") && c.Colonies != nil && *c.Colonies > 0 {
		data.Uncertainty = worksheet.Some(counting.ExpandedUncertainty(f.Number("reproducibility"), *c.Colonies))
	}
	return plateResult(data), nil
}

func countOf(count int) *int {
	if count == counting.TooMany {
		return nil
	}
	return &count
}

// readPlates reads the levels, parted by semicolons, with their dilutions.
func readPlates(f *worksheet.Form) ([]counting.Plate, error) {
	dilutions, err := readDilutions(f.Text("dilutions"))
	if err != nil {
		return nil, err
	}
	levels := strings.Split(f.Text("counts"), ";")
	if len(levels) != len(dilutions) {
		return nil, differentLengths("dilutions", f.Text("dilutions"), "counts", "dilutions", len(levels), len(dilutions))
	}
	var plates []counting.Plate
	for i, level := range levels {
		counts, err := readCounts("counts", f.Text("counts"), level)
		if err != nil {
			return nil, err
		}
		for _, n := range counts {
			plates = append(plates, counting.Plate{Level: i + 1, Dilution: dilutions[i], Count: n})
		}
	}
	return plates, nil
}

// readDilutions reads fractions over 0 up to 1, all different.
func readDilutions(text string) ([]float64, error) {
	const allowed = "laboratory.dilutions.allowed"
	var values []float64
	for _, item := range strings.Split(text, ",") {
		item = strings.TrimSpace(item)
		if strings.Contains(item, ":") {
			return nil, wrong("dilutions", text, "laboratory.dilutions.ratio", allowed, wording.Places{"item": item})
		}
		v, err := quantity.Bare(item)
		if err != nil {
			w := fault.Of(err)[0]
			w.Field, w.Given, w.Allowed = "dilutions", text, wording.Say(allowed)
			return nil, w
		}
		if !(v > 0 && v <= 1) {
			return nil, wrong("dilutions", text, "worksheet.outside", allowed, wording.Places{"given": item})
		}
		for _, other := range values {
			if other == v {
				return nil, wrong("dilutions", text, "laboratory.dilutions.twice", allowed, wording.Places{"item": item})
			}
		}
		values = append(values, v)
	}
	return values, nil
}

func plateResult(data plated) *worksheet.Result {
	places := wording.Places{"reported": data.Reported}
	if data.PerML.Low95 != nil {
		places["low"], places["high"] = *data.PerML.Low95, *data.PerML.High95
	}
	result := &worksheet.Result{
		Answer: wording.Say("sheet.plate.answer."+relationWord[data.Relation], places),
		Data:   data, Basis: worksheet.Standard, Sources: plateSources,
	}
	result.Caution("laboratory.caution.rule")
	result.Caution("hygiene.caution.test")
	return result
}

// relationWord names a relation in the key of a sentence.
var relationWord = map[string]string{"=": "is", "<": "below", ">": "above", "~": "about"}
