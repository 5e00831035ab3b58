package web

import (
	"net/http"
	"net/url"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// sheetView is one worksheet with what was typed and what came of it.
type sheetView struct {
	Sheet    *worksheet.Sheet
	Group    string
	Method   string // GET where the result has an address, POST where a file's text goes along
	Fields   []field
	Faults   []mend
	Asked    bool
	AskedAs  string // the query that the answer belongs to
	Answer   string
	Notes    []string
	Lines    []worksheet.Line
	Grids    []worksheet.Grid
	Cautions []string
	Sources  []source.Source
	Basis    string
	Range    string
	Formula  string
	With     []worksheet.Line // what the answer was worked out with
	Plot     *plotView
}

// field is one input of the form.
type field struct {
	Name, Label, Hint, Unit, Value string
	Error, Meant                   string
	Kind                           string // text | choice | switch | file
	Choices                        []option
	Required, On, Decimal          bool
}

type option struct {
	Value, Label string
	Chosen       bool
}

// mend is one line of the list of what is wrong.
type mend struct{ Field, Text string }

// worksheet shows a sheet's form and, when something was asked, the answer. A
// form that fails comes back with what was typed.
func (s *Site) worksheet(w http.ResponseWriter, r *http.Request) {
	sheet, known := catalog.Find(r.PathValue("name"))
	if !known {
		s.nothingHere(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 8<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := &page{visitor: s.visitor(w, r), Place: "rig", Back: "/worksheets"}
	p.Heading = sheetTitle(p, sheet)
	p.Title, p.Under, p.BackTo = p.Heading, p.Say("web.worksheet.kicker"), p.Say("web.worksheets.title")
	view := &sheetView{Sheet: sheet, Method: "get", Group: sheet.Group.Title().For(p.Reader), Range: sheet.Range().For(p.Reader), Formula: sheet.Formula().For(p.Reader), Sources: sheet.Sources}
	given, asked := formValues(sheet, r.Form, p)
	if s.Holding != nil {
		s.Holding.HandIn(sheet, given)
	}
	var faults fault.List
	if view.Asked = asked; asked {
		view.AskedAs = "?" + r.URL.RawQuery
		faults = view.answer(p, sheet, given)
	}
	view.fields(p, sheet, r.Form, faults)
	status := http.StatusOK
	if len(faults) > 0 {
		status = http.StatusUnprocessableEntity
		p.Title = p.Say("web.error.title", "title", p.Title)
	}
	p.View = view
	s.show(w, status, "worksheet", p)
}

// formValues takes the sheet's inputs from a form: an empty field was not
// given, and a bare number takes the unit that stands in its box.
func formValues(sheet *worksheet.Sheet, form url.Values, p *page) (worksheet.Values, bool) {
	given, asked := worksheet.Values{}, form.Has("ask")
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		for _, text := range texts(in, form) {
			if text = strings.TrimSpace(text); text == "" || in.Untouched(text) {
				continue
			}
			asked = true
			given[in.Flag] = append(given[in.Flag], withBoxUnit(in, text, p))
		}
	}
	return given, asked
}

// texts are the values of a field; one that may repeat has a line each.
func texts(in *worksheet.Input, form url.Values) []string {
	values := form[in.Flag]
	if in.Repeat && len(values) == 1 {
		return strings.Split(values[0], "\n")
	}
	return values
}

func withBoxUnit(in *worksheet.Input, text string, p *page) string {
	unit := boxUnit(in, p)
	if unit == "" || !in.Kind.Numeric() {
		return text
	}
	if in.List {
		items := worksheet.SplitList(text)
		if _, err := quantity.Bare(items[len(items)-1]); err == nil {
			return text + " " + unit
		}
		return text
	}
	if _, err := quantity.Bare(text); err == nil {
		return text + " " + unit
	}
	return text
}

func boxUnit(in *worksheet.Input, p *page) string {
	if p.Units == "us" {
		return in.Kind.US
	}
	return in.Kind.Metric
}

// answer runs the sheet and fills the view; it returns what is wrong.
func (v *sheetView) answer(p *page, sheet *worksheet.Sheet, given worksheet.Values) fault.List {
	form, err := worksheet.Read(sheet, given, nil)
	var result *worksheet.Result
	if err == nil {
		form.Units = p.Units
		result, err = sheet.Run(form)
	}
	if err != nil {
		faults := fault.Of(err)
		if len(faults) == 0 {
			faults = fault.List{{What: verbatim(err)}}
		}
		for _, f := range faults {
			v.Faults = append(v.Faults, mend{f.Field, faultText(p, sheet, f)})
		}
		return faults
	}
	v.fill(p, result)
	v.with(p, sheet, given)
	return nil
}

// with lists the inputs that the answer was worked out with: what was typed, and
// what stands where nothing was.
func (v *sheetView) with(p *page, sheet *worksheet.Sheet, given worksheet.Values) {
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		line := worksheet.Line{Key: in.Flag, Label: in.Label(sheet.Name).For(p.Reader), Value: strings.Join(given[in.Flag], ", ")}
		if line.Value == "" && in.Default != "" {
			line.Value = in.Default + " (" + p.Say("web.working.usual") + ")"
		}
		if in.Kind == worksheet.File || in.Kind == worksheet.FileOrName && strings.Contains(line.Value, "\n") {
			line.Value = p.Say("web.working.file", "n", strings.Count(line.Value, "\n")+1)
		}
		if line.Value != "" {
			v.With = append(v.With, line)
		}
	}
}

func (v *sheetView) fill(p *page, result *worksheet.Result) {
	v.Answer = result.Answer.For(p.Reader)
	v.Notes = worksheet.Sentences(result.Notes, p.Reader)
	v.Cautions = worksheet.Sentences(result.Cautions, p.Reader)
	v.Lines, v.Grids, _ = result.Figures(p.Reader)
	if len(result.Sources) > 0 {
		v.Sources = result.Sources
	}
	if result.Basis != "" {
		v.Basis = p.Say("web.basis." + string(result.Basis))
	}
	if result.Plot != nil {
		v.Plot = drawPlot(p, result.Plot)
	}
}

// faultText is a fault as one sentence with the name of its field.
func faultText(p *page, sheet *worksheet.Sheet, f *fault.Fault) string {
	text := f.What.For(p.Reader)
	if in, known := sheet.Input(f.Field); known {
		text = in.Label(sheet.Name).For(p.Reader) + ": " + text
	}
	for _, more := range []string{f.Allowed.For(p.Reader), f.Advice.For(p.Reader)} {
		if more != "" {
			text += ". " + strings.ToUpper(more[:1]) + more[1:]
		}
	}
	return text + "."
}

func (v *sheetView) fields(p *page, sheet *worksheet.Sheet, form url.Values, faults fault.List) {
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		if in.Kind == worksheet.OutFile {
			continue
		}
		f := field{
			Name: in.Flag, Label: in.Label(sheet.Name).For(p.Reader), Hint: in.Allowed().For(p.Reader),
			Value: strings.Join(form[in.Flag], "\n"), Kind: "text", Unit: boxUnit(in, p), Required: in.Required,
			Decimal: in.Kind.Numeric() && !in.List,
		}
		if in.Kind == worksheet.Text {
			f.Hint = ""
		}
		if in.Default != "" {
			f.Hint += p.Say("web.field.default", "default", in.Default)
		}
		f.shape(in, p)
		if f.Kind == "file" || in.Repeat {
			v.Method = "post"
		}
		for _, wrong := range faults {
			if wrong.Field == in.Flag {
				f.Error = faultText(p, sheet, wrong)
			}
		}
		v.Fields = append(v.Fields, f)
	}
}

// shape gives the field the control that its kind wants.
func (f *field) shape(in *worksheet.Input, p *page) {
	switch {
	case in.Kind == worksheet.Choice && !in.List:
		f.Kind = "choice"
		for _, c := range in.Choices {
			f.Choices = append(f.Choices, option{c, choiceWord(p, in.Flag, c), f.Value == c || f.Value == "" && in.Default == c})
		}
	case in.Kind == worksheet.Switch:
		f.Kind, f.On = "switch", f.Value == "true" || f.Value == "on"
	case in.Kind == worksheet.File || in.Repeat:
		f.Kind = "file"
	}
}
