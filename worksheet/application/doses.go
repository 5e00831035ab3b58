package application

import (
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var doses = worksheet.Sheet{
	Name: "doses", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "use", Kind: worksheet.Choice, Choices: application.Uses()},
		{Flag: "height", Kind: worksheet.Length, Low: "0.1 m", High: "30 m"},
		{Flag: "area", Kind: worksheet.Area, Low: "0 m2", Over: true},
	},
	Example: `--use foliar --height "18 ft"`,
	Sources: []source.Source{source.CommonPractice, source.BuildingSoils, source.GreensTrial},
	Shape:   dosesAnswer{},
	Run:     runDoses,
}

type dosesAnswer struct {
	Rows []doseRow `json:"rows"`
}

type doseRow struct {
	Use    string   `json:"use"`
	Low    float64  `json:"tea_rate_low_l_per_ha"`
	High   float64  `json:"tea_rate_high_l_per_ha"`
	Canopy float64  `json:"canopy_factor"`
	TeaLow *float64 `json:"tea_low_l"`
	TeaTop *float64 `json:"tea_high_l"`
	Basis  string   `json:"basis"`
	Source string   `json:"source"`
}

func runDoses(f *worksheet.Form) (*worksheet.Result, error) {
	table := application.CustomaryDoses
	if f.Has("use") {
		one, err := application.DoseFor(f.Text("use"))
		if err != nil {
			return nil, err
		}
		table = []application.CustomaryDose{one}
	}
	answer := dosesAnswer{}
	for _, d := range table {
		answer.Rows = append(answer.Rows, doseLine(d, f.Length("height"), given[quantity.Area](f, "area")))
	}
	r := &worksheet.Result{Answer: dosesSentence(answer.Rows), Data: answer, Basis: worksheet.Habit, Sources: doseSources(table)}
	r.Caution("application.no-standard", wording.Places{"low": quantity.USGallonsPerAcre(1), "high": application.HighestTeaRate})
	return r, nil
}

func doseLine(d application.CustomaryDose, height quantity.Length, ground *quantity.Area) doseRow {
	factor := d.CanopyFactor(height)
	low, high := d.Low*quantity.Dose(factor), d.High*quantity.Dose(factor)
	row := doseRow{
		Use: d.Use, Low: low.LitresPerHectare(), High: high.LitresPerHectare(), Canopy: factor,
		Basis: string(worksheet.Habit), Source: d.Source.Title,
	}
	if d.Measured {
		row.Basis = string(worksheet.Measured)
	}
	if ground != nil {
		row.TeaLow = worksheet.Some(spread(low, *ground).Litres())
		row.TeaTop = worksheet.Some(spread(high, *ground).Litres())
	}
	return row
}

func dosesSentence(rows []doseRow) wording.Text {
	if len(rows) > 1 {
		return wording.Say("sheet.doses.answer", wording.Places{"n": len(rows)})
	}
	low, high := quantity.LitresPerHectare(rows[0].Low), quantity.LitresPerHectare(rows[0].High)
	use := wording.Say("application.use." + rows[0].Use)
	if rows[0].Low == rows[0].High {
		return wording.Say("sheet.doses.one", wording.Places{"use": use, "rate": low})
	}
	return wording.Say("sheet.doses.between", wording.Places{"use": use, "low": low, "high": high})
}

func doseSources(table []application.CustomaryDose) []source.Source {
	var sources []source.Source
	seen := map[string]bool{}
	for _, d := range table {
		if !seen[d.Source.Key] {
			seen[d.Source.Key] = true
			sources = append(sources, d.Source)
		}
	}
	return sources
}
