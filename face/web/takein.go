package web

import (
	"io"
	"net/http"
	"net/url"
	"strings"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/intake"
	"aerosteep/record/report"
)

// takeInView is the page that takes a logger's file in.
type takeInView struct {
	Batch, Logger, By string
	Faults            []string
	Columns           []mappedColumn // to be mapped; none before a file was looked at
	Text              string         // of a file short enough to be sent along again
	Again             bool           // it is not: it has to be chosen once more
	Orders            []option
	Told              []string // what became of it
}

// mappedColumn is a column with what it may be.
type mappedColumn struct {
	N       int
	Name    string
	Choices []option
}

// longestLogger is how much a logger may have written: over a million rows.
const longestLogger = 64 << 20

// longestAlong is how much of a file goes along in the form while its columns are
// mapped; a longer one is chosen again.
const longestAlong = 1 << 20

// columnChoices are what a column can be, with its unit.
var columnChoices = []string{"", "at", "date", "time", "do mg/L", "do %", "temp °C", "temp °F", "ph", "ec uS/cm", "ec mS/cm"}

// loggerFile takes the readings of a logger in for a batch.
func (s *Site) loggerFile(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if s.Holding == nil || s.Holding.KnowsBatch(name) != nil {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "batches")
	p.Task, p.Back, p.BackTo = true, "/batches/"+url.PathEscape(name), name
	p.Heading, p.Title, p.Under = p.Say("web.takein.title"), p.Say("web.takein.title"), name
	view := &takeInView{Batch: name, By: kept(r, "by")}
	p.View = view
	status := http.StatusOK
	if r.Method == http.MethodPost {
		r.Body = http.MaxBytesReader(w, r.Body, longestLogger)
		text, ok := loggerText(r)
		view.Logger = strings.TrimSpace(r.FormValue("logger"))
		if !ok {
			view.Faults = []string{p.Say("web.safe.no-file")}
		} else {
			s.takeLogger(w, r, p, view, text)
		}
		if len(view.Faults) > 0 {
			status, p.Title = http.StatusUnprocessableEntity, p.Say("web.error.title", "title", p.Title)
		}
	}
	s.show(w, status, "takein", p)
}

// loggerText is the file, or what came along in its place.
func loggerText(r *http.Request) ([]byte, bool) {
	if file, _, err := r.FormFile("file"); err == nil {
		defer file.Close()
		text, err := io.ReadAll(file)
		return text, err == nil && len(text) > 0
	}
	text := r.FormValue("text")
	return []byte(text), text != ""
}

// takeLogger stores the readings, or asks what the columns are.
func (s *Site) takeLogger(w http.ResponseWriter, r *http.Request, p *page, view *takeInView, text []byte) {
	m, known, err := s.Holding.MappingOf(view.Logger, text)
	said := false
	if err == nil {
		m, said = mappingSaid(r, m)
		made := holding.Made{At: s.now(), By: s.initials(w, r), Device: s.device(w, r)}
		var done *holding.TakenIn
		if done, err = s.Holding.TakeIn(r.Context(), view.Batch, text, m, made); err == nil {
			view.tell(p, done)
			if view.Logger != "" && (!known || said) {
				err = s.Holding.Remember(r.Context(), view.Logger, done.Mapping, made)
			}
		}
	}
	if err == nil {
		return
	}
	view.Told = nil
	for _, wrong := range fault.Of(err) {
		view.Faults = append(view.Faults, p.wrong(wrong))
	}
	if len(view.Faults) == 0 {
		s.log("logger's file", err)
		view.Faults = []string{p.Say("web.takein.broken")}
	}
	view.ask(p, m, text)
}

// mappingSaid is the mapping as the form has it; false where the form has none.
func mappingSaid(r *http.Request, m intake.Mapping) (intake.Mapping, bool) {
	names, kinds := r.Form["column"], r.Form["is"]
	if len(names) == 0 || len(names) != len(kinds) {
		return m, false
	}
	m.Order, m.Columns = intake.Order(r.FormValue("order")), nil
	for i, name := range names {
		key, unit, _ := strings.Cut(kinds[i], " ")
		m.Columns = append(m.Columns, intake.Column{Name: name, Key: key, Unit: unit})
	}
	return m, true
}

// ask fills in what each column is thought to be.
func (v *takeInView) ask(p *page, m intake.Mapping, text []byte) {
	for n, c := range m.Columns {
		column := mappedColumn{N: n, Name: c.Name}
		is := strings.TrimSpace(c.Key + " " + c.Unit)
		for _, choice := range columnChoices {
			label := p.Say("web.takein.nothing")
			if choice != "" {
				key, unit, _ := strings.Cut(choice, " ")
				label = strings.TrimSpace(p.Say("web.takein.key."+key) + " " + unit)
			}
			column.Choices = append(column.Choices, option{choice, label, choice == is})
		}
		v.Columns = append(v.Columns, column)
	}
	for _, order := range []intake.Order{intake.Either, intake.Day, intake.Month} {
		v.Orders = append(v.Orders, option{string(order), p.Say("web.takein.order." + string(order)), order == m.Order})
	}
	if len(text) <= longestAlong {
		v.Text = string(text)
	} else {
		v.Again = true
	}
}

// tell says what became of the file.
func (v *takeInView) tell(p *page, done *holding.TakenIn) {
	say := func(key string, pairs ...any) { v.Told = append(v.Told, p.Say("intake.told."+key, pairs...)) }
	now := p.Site.now()
	say("sum", "rows", done.Rows, "stored", done.New, "already", done.Already)
	if done.Doubles+done.Turned > 0 {
		say("doubles", "doubles", done.Doubles, "turned", done.Turned)
	}
	for i, g := range done.Gaps {
		if i < mostTold {
			say("gap", "from", p.When(g.From.In(now.Location()), now), "until", p.When(g.Until.In(now.Location()), now), "minutes", int(g.Until.Sub(g.From).Minutes()))
		}
	}
	for i, l := range done.Skipped {
		if i < mostTold {
			say("skipped", "line", l.Line, "why", l.Why)
		}
	}
	if n := max(0, len(done.Gaps)-mostTold) + max(0, len(done.Skipped)-mostTold); n > 0 {
		say("more", "n", n)
	}
}

// mostTold are the gaps and lines that are told one by one.
const mostTold = 10

// readingsFile hands all readings of a batch out, in the form in which the
// program reads such a file again.
func (s *Site) readingsFile(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if s.Holding == nil || s.Holding.KnowsBatch(name) != nil {
		s.nothingHere(w, r)
		return
	}
	text, err := report.NewDesk(s.Holding, s.now()).ReadingsCSV(r.Context(), name)
	s.handOut(w, "text/csv; charset=utf-8", "readings.csv", text, err)
}
