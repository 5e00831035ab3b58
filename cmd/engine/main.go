//go:build js && wasm

// Command engine is everything up to the worksheets, for the browser: the page
// asks it when there is no signal, and it answers with the server's digits.
package main

import (
	"encoding/json"
	"syscall/js"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

func main() {
	js.Global().Set("aerosteepEngine", js.ValueOf(map[string]any{
		"calc": js.FuncOf(func(_ js.Value, args []js.Value) any {
			return calc(args[0].String(), args[1].String(), args[2].String(), args[3].String())
		}),
		"offBed": js.FuncOf(func(_ js.Value, args []js.Value) any {
			return offBed(args[0].String(), args[1].Float(), args[2].Float(), args[3].Float(), args[4].String(), args[5].String())
		}),
		"plan": js.FuncOf(func(_ js.Value, args []js.Value) any {
			return planHere(args[0].String(), args[1].String(), args[2].String(), args[3].String(), args[4].String(), args[5].String())
		}),
		"forecast": js.FuncOf(func(_ js.Value, args []js.Value) any {
			return foresee(args[0].String(), args[1].String(), args[2].String(), args[3].String(), args[4].String())
		}),
	}))
	select {}
}

// answer is what a page shows of a worksheet.
type answer struct {
	Answer   string           `json:"answer,omitempty"`
	Notes    []string         `json:"notes,omitempty"`
	Lines    []worksheet.Line `json:"lines,omitempty"`
	Grids    []worksheet.Grid `json:"grids,omitempty"`
	Cautions []string         `json:"cautions,omitempty"`
	Data     json.RawMessage  `json:"data,omitempty"` // as every face answers it
	Faults   []fault.Report   `json:"faults,omitempty"`
}

// calc runs a worksheet on the values of its form: an object of flags, each
// with the list of texts that were given.
func calc(name, values, language, units string) string {
	reader := wording.Reader{Language: wording.Language(language), Units: wording.Units(units)}
	out, err := json.Marshal(work(name, values, reader))
	if err != nil {
		return `{"faults":[{"what":"` + err.Error() + `"}]}`
	}
	return string(out)
}

func work(name, values string, reader wording.Reader) answer {
	sheet, known := catalog.Find(name)
	given := worksheet.Values{}
	if !known || json.Unmarshal([]byte(values), &given) != nil {
		return answer{Faults: []fault.Report{{What: name}}}
	}
	for flag, texts := range given {
		if in, known := sheet.Input(flag); known && len(texts) == 1 && in.Untouched(texts[0]) {
			delete(given, flag)
		}
	}
	form, err := worksheet.Read(sheet, given, nil)
	if err != nil {
		return refused(err, reader)
	}
	form.Units = reader.Units
	result, err := sheet.Run(form)
	if err != nil {
		return refused(err, reader)
	}
	lines, grids, err := result.Figures(reader)
	if err != nil {
		return refused(err, reader)
	}
	data, err := result.JSON(reader)
	if err != nil {
		return refused(err, reader)
	}
	return answer{
		Data: data, Answer: result.Answer.For(reader), Notes: worksheet.Sentences(result.Notes, reader),
		Lines: lines, Grids: grids, Cautions: worksheet.Sentences(result.Cautions, reader),
	}
}

func refused(err error, reader wording.Reader) answer {
	faults := fault.Of(err)
	if len(faults) == 0 {
		return answer{Faults: []fault.Report{{What: err.Error()}}}
	}
	var a answer
	for _, f := range faults {
		a.Faults = append(a.Faults, f.For(reader))
	}
	return a
}
