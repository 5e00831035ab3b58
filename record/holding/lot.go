package holding

import (
	"encoding/json"
	"slices"
	"strings"
	"time"

	"aerosteep/job/bench"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
)

// LotOf is the lot that an entry names, "" where it names none.
func LotOf(k journal.Kept) string {
	var body struct {
		Lot string `json:"lot"`
	}
	_ = json.Unmarshal(k.Body, &body) // a lot of another type is none
	return body.Lot
}

// lotForm is what is known of a lot of compost: the facts of hygiene that it
// carries, and the papers and tests by which it is accepted. Each is said once;
// what is said later counts over what was said before.
func lotForm() *Form {
	fields := []field{needed(text("lot", "")), text("ingredient", "ingredient"), text("supplier", "supplier")}
	for _, fact := range hygiene.OfCompost() {
		fields = append(fields, choice(strings.ReplaceAll(fact.String(), "_", "-"), fact.String(), fact.Values()...))
	}
	for _, paper := range LotPapers {
		fields = append(fields, choice("paper-"+string(paper), paperKey(paper), "passed", "failed"))
	}
	return form("lot", journal.Test, "holding.log.lot.nothing", []string{"lot"}, append(fields, text("text", "text"))...)
}

// LotPapers are the papers and tests of a lot, the quickest to have first.
var LotPapers = []bench.Paper{bench.Smell, bench.Salts, bench.HeatingRecord, bench.Bioassay}

func paperKey(p bench.Paper) string {
	return "paper_" + strings.ReplaceAll(string(p), "-", "_")
}

// Lot is a lot of compost with what is known of it.
type Lot struct {
	Name                 string
	Ingredient, Supplier string
	Facts                hygiene.Words
	Papers               bench.Lot
	Said                 time.Time // when something was last said of it
}

// Paper is how a lot did by a paper or test: "passed", "failed", or "" where
// nobody said.
func (l Lot) Paper(p bench.Paper) string {
	switch {
	case l.Papers.Passed[p]:
		return "passed"
	case l.Papers.Failed[p]:
		return "failed"
	}
	return ""
}

// Lots are all lots that something was said of, or that stock came in of, in the
// order in which they were first heard of.
func (h *Holding) Lots() []Lot {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.state.lots()
}

// Lot finds a lot by its name.
func (h *Holding) Lot(name string) (Lot, bool) {
	for _, l := range h.Lots() {
		if l.Name == name {
			return l, true
		}
	}
	return Lot{}, false
}

func (s *state) lots() []Lot {
	var lots []Lot
	for _, subject := range s.subjects("lot") {
		lots = append(lots, s.lot(subject))
	}
	s.eachMove(func(m move) {
		if m.Lot == "" || slices.ContainsFunc(lots, func(l Lot) bool { return l.Name == m.Lot }) {
			return
		}
		lots = append(lots, Lot{Name: m.Lot, Ingredient: m.Ingredient, Supplier: m.Supplier, Facts: hygiene.Words{}, Said: m.at})
	})
	return lots
}

// lot lays what was said of a lot over one another.
func (s *state) lot(subject string) Lot {
	_, name, _ := strings.Cut(subject, ":")
	l := Lot{Name: name, Facts: hygiene.Words{}, Papers: bench.Lot{Passed: map[bench.Paper]bool{}, Failed: map[bench.Paper]bool{}}}
	for _, t := range s.standing(subject, journal.Test) {
		var said map[string]any
		_ = json.Unmarshal(t.Body, &said) // what is of another type was not said
		l.Said = t.At
		l.hear(said)
	}
	return l
}

func (l *Lot) hear(said map[string]any) {
	word := func(key string, into *string) {
		if text, is := said[key].(string); is && text != "" {
			*into = text
		}
	}
	word("ingredient", &l.Ingredient)
	word("supplier", &l.Supplier)
	for _, fact := range hygiene.OfCompost() {
		if text, is := said[fact.String()].(string); is && text != "" {
			l.Facts[fact.String()] = text
		}
	}
	for _, paper := range LotPapers {
		if text, is := said[paperKey(paper)].(string); is {
			l.Papers.Passed[paper], l.Papers.Failed[paper] = text == "passed", text == "failed"
		}
	}
}

// move is a movement of stock.
type move struct {
	Lot        string `json:"lot"`
	Batch      string `json:"batch"`
	Ingredient string `json:"-"`
	Supplier   string `json:"supplier"`
	at         time.Time
}

// eachMove goes through the movements of stock that name a lot.
func (s *state) eachMove(take func(move)) {
	for _, table := range []string{"ingredient", "batch"} {
		for _, subject := range s.subjects(table) {
			for _, t := range s.standing(subject, journal.Stock) {
				m := move{at: t.At}
				_ = json.Unmarshal(t.Body, &m) // what is of another type was not said
				_, name, _ := strings.Cut(subject, ":")
				if table == "batch" {
					m.Batch = name
				} else {
					m.Ingredient = name
				}
				take(m)
			}
		}
	}
}

// BatchesOfLot are the batches that a lot went into, each once.
func (h *Holding) BatchesOfLot(name string) []string {
	h.mu.Lock()
	defer h.mu.Unlock()
	var batches []string
	h.state.eachMove(func(m move) {
		if m.Lot == name && m.Batch != "" && !slices.Contains(batches, m.Batch) {
			batches = append(batches, m.Batch)
		}
	})
	return batches
}

// withLots hands each batch the facts of the lots that went into it, the
// strictest of a blend; what the file says of the batch itself counts first.
func (h *Holding) withLots(file *jobfile.File) {
	h.mu.Lock()
	defer h.mu.Unlock()
	into := map[string][]hygiene.Words{}
	facts := map[string]hygiene.Words{}
	for _, l := range h.state.lots() {
		facts[l.Name] = l.Facts
	}
	h.state.eachMove(func(m move) {
		if m.Batch != "" && m.Lot != "" {
			into[m.Batch] = append(into[m.Batch], facts[m.Lot])
		}
	})
	for i := range file.Batches {
		handOn(&file.Batches[i], hygiene.Blended(into[file.Batches[i].Name]...))
	}
}

func handOn(b *jobfile.Batch, blend hygiene.Words) {
	for name, word := range blend {
		if _, said := b.Facts[name]; said {
			continue
		}
		if b.Facts == nil {
			b.Facts = jobfile.Facts{}
		}
		b.Facts[name] = word
	}
}
