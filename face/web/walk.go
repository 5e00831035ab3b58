package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/ground"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// walkView is the page on which a bed is walked: corners by the phone's
// position, typed, from a file, or in paces.
type walkView struct {
	Corners, Error   string
	Over, Long, Wide string
	Answer           string
	Lines            []worksheet.Line
	Cautions         []string
	JobLine          string
	Problems         []mend
	Unit             string
}

// walk shows the page and works out the area of what was walked.
func (s *Site) walk(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "ground")
	p.Back, p.BackTo = "/ground", p.Say("web.place.ground")
	p.Heading, p.Title = p.Say("web.walk.title"), p.Say("web.walk.title")
	view := &walkView{Unit: "m"}
	if p.Units == wording.US {
		view.Unit = "ft"
	}
	p.View = view
	status := http.StatusOK
	if r.Method == http.MethodPost {
		given, err := readSkyForm(w, r)
		if err != nil {
			http.Error(w, "too long", http.StatusRequestEntityTooLarge)
			return
		}
		if faults := view.take(p, r.PostForm, given); len(faults) > 0 {
			status = http.StatusUnprocessableEntity
			for _, f := range faults {
				view.Problems = append(view.Problems, mend{f.Field, p.wrong(f)})
			}
		}
	}
	s.show(w, status, "walk", p)
}

// take reads the form by whichever way was used: paces, a file, corners.
func (v *walkView) take(p *page, form url.Values, given skyGiven) fault.List {
	v.Corners, v.Error = form.Get("text"), form.Get("gps-error")
	v.Over, v.Long, v.Wide = form.Get("over"), form.Get("long"), form.Get("wide")
	if v.Over+v.Long+v.Wide != "" {
		return v.paces(p)
	}
	values := worksheet.Values{"shape": {"polygon"}}
	switch text := strings.TrimSpace(string(given.text)); {
	case strings.HasPrefix(text, "<"):
		corners, err := ground.ReadGPX(given.name, []byte(text))
		if err != nil {
			return fault.Of(err)
		}
		values["corners"] = []string{v.written(corners)}
	case strings.HasPrefix(text, "{"):
		field, _, err := ground.ReadGeoJSON(given.name, []byte(text))
		if err != nil {
			return fault.Of(err)
		}
		v.Answer = p.Say("web.walk.field", "area", both(p, field.Patch().Area), "n", field.Corners())
		return nil
	default:
		values["corners"] = []string{strings.Join(strings.FieldsFunc(text, func(c rune) bool { return c == ';' || c == '\n' || c == '\r' }), "; ")}
		corners, err := ground.ParseCorners(values["corners"][0])
		if err != nil {
			return fault.Of(err)
		}
		v.written(corners)
	}
	if e := strings.TrimSpace(v.Error); e != "" {
		if _, bare := quantity.Bare(e); bare == nil {
			e += " " + v.Unit
		}
		values["gps-error"] = []string{e}
	}
	return v.area(p, values)
}

// written puts corners into their box and into the line of a job file.
func (v *walkView) written(corners []ground.Corner) string {
	var box, line []string
	for _, c := range corners {
		box = append(box, fmt.Sprintf("%.7f,%.7f", c.Latitude, c.Longitude))
		line = append(line, fmt.Sprintf("[%.7f, %.7f]", c.Latitude, c.Longitude))
	}
	v.Corners, v.JobLine = strings.Join(box, ";\n"), "corners = ["+strings.Join(line, ", ")+"]"
	return strings.Join(box, "; ")
}

// area asks the worksheet, so that the page says what it says.
func (v *walkView) area(p *page, values worksheet.Values) fault.List {
	sheet, _ := catalog.Find("area")
	shown := &sheetView{Sheet: sheet}
	if faults := shown.answer(p, sheet, values); len(faults) > 0 {
		v.JobLine = ""
		return faults
	}
	v.Answer, v.Lines, v.Cautions = shown.Answer, shown.Lines, shown.Cautions
	return nil
}

// paces is a rectangle walked in paces, by the walker's own pace.
func (v *walkView) paces(p *page) fault.List {
	var counts [3]float64
	for i, text := range []string{v.Over, v.Long, v.Wide} {
		n, err := quantity.Bare(strings.TrimSpace(text))
		if err != nil || !(n > 0 && n <= 10_000) {
			return fault.List{{Field: []string{"over", "long", "wide"}[i], Given: text, What: wording.Say("web.walk.paces.wrong", wording.Places{"given": text}), Allowed: wording.Say("web.walk.paces.allowed")}}
		}
		counts[i] = n
	}
	long, wide := ground.Paced(counts[1], counts[0]), ground.Paced(counts[2], counts[0])
	v.Answer = p.Say("web.walk.paced", "area", both(p, ground.Rectangle(long, wide).Area), "long", both(p, long), "wide", both(p, wide))
	v.Cautions = []string{p.Say("web.walk.paces.good")}
	v.JobLine = fmt.Sprintf("area = \"%.1f m2\"", ground.Rectangle(long, wide).Area.SquareMetres())
	return nil
}
