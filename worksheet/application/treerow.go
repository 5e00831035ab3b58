package application

import (
	"slices"

	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var treeRowVolume = worksheet.Sheet{
	Name: "tree-row-volume", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "width", Kind: worksheet.Length, Required: true, Low: "0.1 m", High: "30 m"},
		{Flag: "height", Kind: worksheet.Length, Required: true, Low: "0.1 m", High: "30 m"},
		{Flag: "row-spacing", Kind: worksheet.Length, Required: true, Low: "0.1 m", High: "30 m"},
		{Flag: "shape", Kind: worksheet.Bare, Low: "0.1", High: "1", Default: "1"},
		{Flag: "carrier", Kind: worksheet.Fill, Low: "0 L/m3", Over: true},
		{Flag: "speed", Kind: worksheet.Speed, Low: "0 km/h", Over: true},
	}, dilutionInputs()),
	Example: `--width "10 ft" --height "8 ft" --row-spacing "18 ft" --speed "2.5 mph"`,
	Sources: []source.Source{source.LandersTRV},
	Shape:   treeRowAnswer{},
	Run:     runTreeRow,
}

type treeRowAnswer struct {
	Volume   float64  `json:"volume_m3_per_ha"`
	CubicFt  float64  `json:"volume_cu_ft_per_ac"`
	Low      float64  `json:"mix_rate_low_l_per_ha"`
	High     float64  `json:"mix_rate_high_l_per_ha"`
	LowGPA   float64  `json:"mix_rate_low_gpa"`
	HighGPA  float64  `json:"mix_rate_high_gpa"`
	FlowLow  *float64 `json:"flow_low_l_per_min"`
	FlowHigh *float64 `json:"flow_high_l_per_min"`
	TeaLow   *float64 `json:"tea_rate_low_l_per_ha"`
	TeaHigh  *float64 `json:"tea_rate_high_l_per_ha"`
	Words
}

func runTreeRow(f *worksheet.Form) (*worksheet.Result, error) {
	d, err := readDilution(f)
	if err != nil {
		return nil, err
	}
	row := spray.Row{Width: f.Length("width"), Height: f.Length("height"), Spacing: f.Length("row-spacing"), Shape: f.Number("shape")}
	canopy, err := row.TreeRowVolume()
	if err != nil {
		return nil, refused(f, err)
	}
	least, most := spray.UsualCarrier()
	if f.Has("carrier") {
		least = quantity.Fill(f.Number("carrier"))
		most = least
	}
	low, high := canopy.Wetting(least), canopy.Wetting(most)
	answer := treeRowAnswer{
		Volume: canopy.CubicMetresPerHectare(), CubicFt: canopy.CubicFeetPerAcre(),
		Low: low.LitresPerHectare(), High: high.LitresPerHectare(), LowGPA: low.USGallonsPerAcre(), HighGPA: high.USGallonsPerAcre(),
		Words: words(d.share),
	}
	if f.Has("speed") {
		if err := rowFlow(f.Speed("speed"), row.Spacing, low, high, &answer); err != nil {
			return nil, refused(f, err)
		}
	}
	if d.share != nil {
		share := d.share.Fraction()
		answer.TeaLow, answer.TeaHigh = worksheet.Some(low.LitresPerHectare()*share), worksheet.Some(high.LitresPerHectare()*share)
	}
	r := &worksheet.Result{Answer: treeRowSentence(low, high), Data: answer, Basis: worksheet.Habit, Sources: f.Sheet.Sources}
	d.askTurned(r)
	r.Caution("application.air-blast")
	return r, nil
}

// rowFlow is the flow for both sides of one row: rate x speed x row spacing.
func rowFlow(speed quantity.Speed, spacing quantity.Length, low, high quantity.Dose, answer *treeRowAnswer) error {
	least, err := spray.FlowFor(low, speed, spacing)
	if err != nil {
		return err
	}
	most, err := spray.FlowFor(high, speed, spacing)
	answer.FlowLow, answer.FlowHigh = worksheet.Some(least.LitresPerMinute()), worksheet.Some(most.LitresPerMinute())
	return err
}

func treeRowSentence(low, high quantity.Dose) wording.Text {
	if low == high {
		return wording.Say("sheet.tree-row-volume.one", wording.Places{"rate": low})
	}
	return wording.Say("sheet.tree-row-volume.answer", wording.Places{"low": low, "high": high})
}
