package web

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"sort"
	"strings"
	"time"

	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// recordsView is the logbook, newest first.
type recordsView struct {
	Lines  []logLine
	Total  int
	Query  string
	Papers []paperLink
	Safe   *keeping
}

// records shows what was written down.
func (s *Site) records(w http.ResponseWriter, r *http.Request) {
	s.showRecords(w, r, http.StatusOK, s.page(w, r, "records"), "", "")
}

// mostSearched is how far back the logbook is searched.
const mostSearched = 20_000

// showRecords shows the page, with what was done a moment ago or what was wrong
// with it.
func (s *Site) showRecords(w http.ResponseWriter, r *http.Request, status int, p *page, done, wrong string) {
	p.Heading, p.Title = p.Say("web.place.records"), p.Say("web.place.records")
	view := &recordsView{Query: strings.TrimSpace(r.URL.Query().Get("q"))}
	p.View = view
	if s.Holding != nil {
		most := 200
		if view.Query != "" {
			most = mostSearched
		}
		view.Lines, view.Total = s.entries(p, journal.Wanted{}, s.now(), most)
		if view.Query != "" {
			view.Lines = matching(view.Lines, view.Query)
			view.Lines = view.Lines[:min(len(view.Lines), 200)]
		}
		view.Papers = s.papers(p, r)
		safe := s.keeping(p, r)
		safe.Done, safe.Wrong = done, wrong
		view.Safe = &safe
	}
	s.show(w, status, "records", p)
}

// history is what was written down about a batch, newest first.
func (s *Site) history(p *page, name string, now time.Time) []logLine {
	lines, _ := s.entries(p, journal.Wanted{Subject: "batch:" + name}, now, 60)
	return lines
}

// entries are the latest lines of the journal as a person reads them.
func (s *Site) entries(p *page, wanted journal.Wanted, now time.Time, most int) ([]logLine, int) {
	wanted.Newest = most
	kept, err := s.Holding.Journal().List(context.Background(), wanted)
	if err != nil {
		s.log("entries", err)
		return nil, 0
	}
	var lines []logLine
	for i := len(kept) - 1; i >= 0; i-- {
		lines = append(lines, p.logLine(kept[i], now))
	}
	total, err := s.Holding.Journal().Size(context.Background())
	if err != nil {
		s.log("size of the journal", err)
	}
	return lines, int(total)
}

func (p *page) logLine(e journal.Kept, now time.Time) logLine {
	at, _ := time.Parse(time.RFC3339, e.At)
	line := logLine{When: p.When(at.In(now.Location()), now), By: e.By}
	_, about, _ := strings.Cut(e.Subject, ":")
	line.What = strings.TrimSpace(choiceWord(p, "entry", e.Kind) + " " + about)
	if said := p.saying(e.Body); said != "" && e.Kind != journal.Setup {
		line.What += ": " + said
	}
	if e.ReplacedBy != nil {
		line.What += " " + p.Say("web.records.replaced")
	}
	return line
}

// saying is an entry's body in words: each key with its value and unit.
func (p *page) saying(body json.RawMessage) string {
	var values map[string]any
	if json.Unmarshal(body, &values) != nil {
		return ""
	}
	keys := make([]string, 0, len(values))
	for k := range values {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	var parts []string
	for _, k := range keys {
		switch v := values[k].(type) {
		case float64:
			parts = append(parts, worksheet.Speak(k, v).Speak(p.Reader))
		case string:
			parts = append(parts, choiceWord(p, k, v))
		case bool:
			parts = append(parts, fmt.Sprint(v))
		}
	}
	return strings.Join(parts, ", ")
}
