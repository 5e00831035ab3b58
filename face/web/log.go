package web

import (
	"context"
	"fmt"
	"net/http"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// logView is the page for a wet thumb: the number huge, keys under it.
type logView struct {
	Batch     string
	Last      string
	Doubted   string // the newest reading, where it is kept but not believed
	Bar       *oxygenBar
	Hold      string // mg/L, plain, for the page's own check
	Limit     string
	Expected  string
	Low, High string // of the forecast for now
	Fields    []field
	Faults    []mend
	Meter     bool
	Smells    []option
	TempUnit  string
	By        string
	Saved     string
	Seen      []option // when the air was last seen on, as the event that says so
}

// logFields are what the page asks for, in order.
var logFields = []string{"do", "temp", "ph", "ec", "smell", "to-rim", "note"}

// logReading shows the page and takes what was typed on it.
func (s *Site) logReading(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	if _, known := s.Holding.Batch(name); !known {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "batches")
	now := s.now()
	p.Task, p.Back, p.BackTo = true, "/batches/"+name, name
	p.Heading, p.Title, p.Under = name, p.Say("web.log.title", "name", name), p.Date(now)+" "+p.Clock(now)
	device := s.device(w, r) // named at the first look, so that a reading sent twice is one
	view := &logView{Batch: name, Meter: true, TempUnit: temperatureUnit(p), Seen: seenOn(p, now)}
	p.View = view
	status := http.StatusOK
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	var faults fault.List
	if r.Method == http.MethodPost {
		if faults = s.keepReading(r, p, holding.Made{At: now, By: s.initials(w, r), Device: device}, name); faults == nil {
			http.Redirect(w, r, "/batches/"+name+"#kept", http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
	}
	s.fillLog(p, view, r, faults, now)
	s.show(w, status, "log", p)
}

// keepReading stores what was typed as an entry; nil says that it is on disk.
func (s *Site) keepReading(r *http.Request, p *page, made holding.Made, name string) fault.List {
	return s.keepForm(r, p, "reading", worksheet.Values{"batch": {name}}, made)
}

func (s *Site) fillLog(p *page, view *logView, r *http.Request, faults fault.List, now time.Time) {
	form, _ := holding.FormOf("reading")
	for _, flag := range logFields {
		in, _ := form.Sheet.Input(flag)
		f := field{Name: flag, Label: in.Label(form.Sheet.Name).For(p.Reader), Hint: in.Allowed().For(p.Reader), Value: r.PostForm.Get(flag), Kind: "text", Unit: boxUnit(in, p), Decimal: in.Kind.Numeric()}
		f.shape(in, p)
		for _, wrong := range faults {
			if wrong.Field == flag {
				f.Error = faultText(p, form.Sheet, wrong)
			}
		}
		view.Fields = append(view.Fields, f)
	}
	for _, wrong := range faults {
		view.Faults = append(view.Faults, mend{wrong.Field, faultText(p, form.Sheet, wrong)})
	}
	view.By = kept(r, "by")
	twin, err := s.twin(r.Context(), view.Batch, now)
	if err != nil {
		return
	}
	f := twin.Forecast
	view.Meter = twin.Meter
	view.Hold, view.Limit = plain(heldNow(f)), plain(f.Limit)
	view.Expected, view.Low, view.High = plain(f.State.DO.Median), plain(f.State.DO.Low95), plain(f.State.DO.High95)
	view.Bar = drawOxygenBar(p, f.State.DO.Median, f.Limit, heldNow(f), nil, nil)
	if last := lastOxygen(twin); last != nil {
		view.Last = p.Say("web.log.last", "do", p.oneDecimal(last.MgPerL), "clock", p.When(last.At.In(now.Location()), now))
	}
	if all := twin.Oxygen(); len(all) > 0 && all[len(all)-1].Doubted {
		newest := all[len(all)-1]
		view.Doubted = p.Say("web.log.doubted", "do", p.oneDecimal(newest.MgPerL), "clock", p.When(newest.At.In(now.Location()), now))
	}
}

func plain(v float64) string { return quantity.Digits(v, 3) }

// store keeps one entry; nil says that it is on disk.
func (s *Site) store(ctx context.Context, e journal.Entry) error {
	results, err := s.Holding.Store(ctx, e)
	if err == nil && results[0].Outcome == journal.Refused {
		err = results[0].Why
	}
	return err
}

// seenOn are the moments at which the air may last have been seen on: since the
// last reading, or so many hours ago.
func seenOn(p *page, now time.Time) []option {
	choices := []option{{Value: "found-off", Label: p.Say("web.log.seen.reading"), Chosen: true}}
	for _, hours := range []int{1, 2, 4, 6, 8, 12} {
		at := now.Add(-time.Duration(hours) * time.Hour)
		choices = append(choices, option{Value: fmt.Sprintf("found-off %d h", hours), Label: p.Say("web.log.seen.hours", "n", hours, "clock", p.Clock(at))})
	}
	return choices
}
