package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// sheets lists the worksheets, as `calc --json` does.
func (a *API) sheets(w http.ResponseWriter, r *http.Request) {
	reader := a.reader(r, typed)
	type item struct {
		Name    string `json:"name"`
		Group   string `json:"group"`
		Purpose string `json:"purpose"`
	}
	items := []item{}
	for _, s := range catalog.All() {
		items = append(items, item{s.Name, string(s.Group), s.Purpose().For(reader)})
	}
	a.write(w, http.StatusOK, map[string]any{"worksheets": items})
}

// calc answers a worksheet, as `calc NAME --json` does.
func (a *API) calc(w http.ResponseWriter, r *http.Request) {
	sheet, known := catalog.Find(r.PathValue("name"))
	if !known {
		a.refuse(w, r, http.StatusNotFound, noSuch("worksheet", r.PathValue("name"), catalog.Names()))
		return
	}
	text, ok := a.body(w, r)
	if !ok {
		return
	}
	given, reader, status, err := readFlags(sheet, text, a.reader(r, typed))
	if err != nil {
		a.refuse(w, r, status, err)
		return
	}
	if a.holding != nil {
		a.holding.HandIn(sheet, given)
	}
	answer, err := answerOf(sheet, given, reader)
	if err != nil {
		a.refuse(w, r, http.StatusUnprocessableEntity, err)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(append(answer, '\n'))
}

func answerOf(sheet *worksheet.Sheet, given worksheet.Values, reader wording.Reader) ([]byte, error) {
	form, err := worksheet.Read(sheet, given, nil)
	if err != nil {
		return nil, err
	}
	form.Units = reader.Units
	result, err := sheet.Run(form)
	if err != nil {
		return nil, err
	}
	return result.JSON(reader)
}

// readFlags reads {flag: value}: texts, numbers, true for a flag without
// value, an array for a flag that was given twice. The flags that every verb
// takes set the reader.
func readFlags(sheet *worksheet.Sheet, text []byte, reader wording.Reader) (worksheet.Values, wording.Reader, int, error) {
	var object map[string]any
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	if err := decoder.Decode(&object); err != nil {
		var wrongType *json.UnmarshalTypeError
		if errors.As(err, &wrongType) {
			return nil, reader, http.StatusUnprocessableEntity, said("body", wrongType.Value, "api.not-an-object")
		}
		return nil, reader, http.StatusBadRequest, said("body", "", "api.not-json")
	}
	if decoder.More() || object == nil {
		return nil, reader, http.StatusBadRequest, said("body", "", "api.not-json")
	}
	given := worksheet.Values{}
	var faults fault.List
	for name, value := range object {
		flag := strings.ReplaceAll(name, "_", "-")
		texts, wrong := textsOf(flag, value)
		switch {
		case wrong == nil && flag == "units" && !has(sheet, flag):
			reader.Units, wrong = unitsOf(texts)
		case wrong == nil && flag == "lang" && !has(sheet, flag):
			reader.Language, wrong = languageOf(texts)
		case wrong == nil && flag == "json":
		case wrong == nil && writesFile(sheet, flag) || flag == "data":
			wrong = said(flag, "", "api.no-file-here", wording.Places{"flag": flag})
		case wrong == nil && len(texts) > 0:
			given[flag] = append(given[flag], texts...)
		}
		if wrong != nil {
			faults = append(faults, wrong)
		}
	}
	return given, reader, http.StatusUnprocessableEntity, faults.OrNil()
}

func has(sheet *worksheet.Sheet, flag string) bool { _, has := sheet.Input(flag); return has }

// writesFile tells whether a flag names a file to be written: no address of
// the server opens a path that a client names.
func writesFile(sheet *worksheet.Sheet, flag string) bool {
	in, known := sheet.Input(flag)
	return known && in.Kind == worksheet.OutFile || flag == "pdf" || flag == "ics"
}

func unitsOf(texts []string) (wording.Units, *fault.Fault) {
	if len(texts) == 1 && (texts[0] == string(wording.US) || texts[0] == string(wording.Metric)) {
		return wording.Units(texts[0]), nil
	}
	return wording.US, said("units", strings.Join(texts, ", "), "api.units")
}

func languageOf(texts []string) (wording.Language, *fault.Fault) {
	if len(texts) == 1 && (texts[0] == string(wording.English) || texts[0] == string(wording.Spanish)) {
		return wording.Language(texts[0]), nil
	}
	return wording.English, said("lang", strings.Join(texts, ", "), "api.lang")
}

// textsOf writes a value as it would be typed.
func textsOf(flag string, value any) ([]string, *fault.Fault) {
	switch v := value.(type) {
	case nil:
		return nil, nil
	case string:
		return []string{v}, nil
	case json.Number:
		return []string{v.String()}, nil
	case bool:
		return []string{fmt.Sprint(v)}, nil
	case []any:
		var all []string
		for _, item := range v {
			texts, wrong := textsOf(flag, item)
			if _, nested := item.([]any); nested || wrong != nil {
				return nil, said(flag, "", "api.value")
			}
			all = append(all, texts...)
		}
		return all, nil
	}
	return nil, said(flag, "", "api.value")
}
