// Package units holds the worksheet that turns one unit into another.
package units

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// Sheets are the worksheets of this room.
func Sheets() []worksheet.Sheet { return []worksheet.Sheet{convert} }

var convert = worksheet.Sheet{
	Name:  "convert",
	Group: worksheet.Units,
	Inputs: []worksheet.Input{
		{Flag: "value", Kind: worksheet.Text, Required: true, Argument: true},
		{Flag: "to", Kind: worksheet.Text, Required: true},
		{Flag: "bulk-density", Kind: worksheet.Density, Low: "0 g/mL", Over: true},
		{Flag: "difference", Kind: worksheet.Switch},
	},
	Example: "'2 qt' --to mL",
	Sources: []source.Source{source.NISTSP811},
	Shape:   conversion{},
	Run:     runConvert,
}

// conversion is the answer of convert.
type conversion struct {
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	Kind   string  `json:"kind"`
	ReadAs string  `json:"read_as"`
}

func runConvert(f *worksheet.Form) (*worksheet.Result, error) {
	c, err := quantity.Convert(f.Text("value"), f.Text("to"), f.Density("bulk-density"), f.On("difference"))
	if err != nil {
		for _, wrong := range fault.Of(err) {
			if wrong.Field == "" {
				wrong.Field = "value"
			}
		}
		return nil, err
	}
	return &worksheet.Result{
		Answer: wording.Say("sheet.convert.answer", wording.Places{
			"read": c.Read.ReadAs, "value": wording.Verbatim(quantity.Digits(c.Value, 12)), "unit": c.Unit,
		}),
		Data:    conversion{c.Value, c.Unit, c.Kind, c.Read.ReadAs},
		Sources: []source.Source{source.NISTSP811},
	}, nil
}
