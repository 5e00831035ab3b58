package hygiene

import (
	"aerosteep/job/hygiene"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var compostProcess = worksheet.Sheet{
	Name:  "compost-process",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "method", Kind: worksheet.Choice, Choices: hygiene.HeapMethods, Unknown: true},
		{Flag: "lowest-temp", Kind: worksheet.Temperature, Low: "0 °C", High: "100 °C", Unknown: true},
		{Flag: "highest-temp", Kind: worksheet.Temperature, Low: "0 °C", High: "100 °C", Unknown: true},
		{Flag: "days", Kind: worksheet.Bare, Low: "0", High: "1000", Unknown: true},
		yesNoInput("consecutive"),
		{Flag: "turns", Kind: worksheet.Whole, Low: "0", High: "1000", Unknown: true},
		yesNoInput("cured"),
		{Flag: "cn", Kind: worksheet.Bare, Low: "5", High: "200", Unknown: true},
		yesNoInput("all-heated"),
	},
	Example: "--method windrow --lowest-temp 131F --highest-temp 160F --days 15 --turns 4 --cn 30 --cured yes",
	Sources: []source.Source{source.CFR7Part205, source.NOP5021, source.CFR21Part112, source.EU20191009},
	Shape:   processes{},
	Run:     runCompostProcess,
}

type processes struct {
	NOP     process `json:"nop"`
	NOP5021 process `json:"nop_5021"`
	FDA     process `json:"fda_b"`
	EU      process `json:"eu_cmc3"`
}

type process struct {
	Meets   string   `json:"meets"`
	Lacking []string `json:"lacking"`
	Missing []string `json:"missing"`
	Rule    string   `json:"rule"`
}

func runCompostProcess(f *worksheet.Form) (*worksheet.Result, error) {
	h := hygiene.Heap{
		Method: f.Text("method"), Days: given(f, "days"), Consecutive: answered(f, "consecutive"),
		Cured: answered(f, "cured"), CarbonNitrogen: given(f, "cn"), AllHeated: answered(f, "all-heated"),
	}
	if f.Has("lowest-temp") {
		h.Lowest = worksheet.Some(f.Temperature("lowest-temp"))
	}
	if f.Has("highest-temp") {
		h.Highest = worksheet.Some(f.Temperature("highest-temp"))
	}
	if f.Has("turns") {
		h.Turns = worksheet.Some(f.Int("turns"))
	}
	if h.Lowest != nil && h.Highest != nil && *h.Highest < *h.Lowest-1e-9 {
		return nil, f.Advise("highest-temp", "laboratory.highest-below", "laboratory.highest-below.advice", wording.Places{"lowest": *h.Lowest})
	}
	v := hygiene.JudgeProcess(h)
	result := &worksheet.Result{
		Answer: wording.Say("sheet.compost-process.answer", wording.Places{
			"nop": meets(v.NOP), "nop5021": meets(v.NOP5021), "fda": meets(v.FDA), "eu": meets(v.EU),
		}),
		Data:    processes{shown(v.NOP), shown(v.NOP5021), shown(v.FDA), shown(v.EU)},
		Basis:   worksheet.Standard,
		Sources: []source.Source{source.CFR7Part205, source.NOP5021, source.CFR21Part112, source.EU20191009},
	}
	result.Caution("laboratory.caution.summary")
	result.Caution("hygiene.caution.law")
	return result, nil
}

func shown(v hygiene.ProcessVerdict) process {
	return process{string(v.Meets), v.Lacking, v.Missing, v.Rule}
}

func meets(v hygiene.ProcessVerdict) wording.Text {
	return wording.Say("sheet.compost-process." + string(v.Meets))
}
