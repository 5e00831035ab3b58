package web

import (
	"encoding/csv"
	"encoding/json"
	"net/http"
	"strconv"
	"strings"

	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// countsView is the control chart of what was counted, batch to batch.
type countsView struct {
	Kinds    []countKind
	Say      string
	Plot     *plotView
	Lines    []worksheet.Line
	Grids    []worksheet.Grid
	Cautions []string
	Rows     []countRow
}

type countKind struct {
	Name, Link string
	Chosen     bool
}

type countRow struct{ When, Batch, Value string }

// countKeys are what may be charted, by the key of the entry's body.
var countKeys = []struct{ group, key string }{
	{"bacteria", "bacteria_per_ml"}, {"hyphae", "hyphae_m_per_ml"}, {"flagellates", "flagellates_per_ml"},
	{"amoebae", "amoebae_per_ml"}, {"ciliates", "ciliates_per_ml"}, {"nematodes", "nematodes_per_ml"},
}

// fewestCharted is how many counts a control chart takes.
const fewestCharted = 5

// counts shows whether a batch is odd or the batches drift.
func (s *Site) counts(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	p.Heading, p.Title = p.Say("web.counts.title"), p.Say("web.counts.title")
	p.Back, p.BackTo = "/records", p.Say("web.place.records")
	view := &countsView{}
	p.View = view
	chosen := countKeys[0]
	for _, k := range countKeys {
		if r.URL.Query().Get("what") == k.group {
			chosen = k
		}
	}
	for _, k := range countKeys {
		view.Kinds = append(view.Kinds, countKind{p.Say("web.bench.group." + k.group), "/records/counts?what=" + k.group, k == chosen})
	}
	if s.Holding != nil {
		view.chart(p, s, chosen.group, chosen.key, r)
	}
	s.show(w, http.StatusOK, "counts", p)
}

func (v *countsView) chart(p *page, s *Site, group, key string, r *http.Request) {
	entries, err := s.Holding.Journal().List(r.Context(), journal.Wanted{Kinds: []string{journal.Count}})
	if err != nil {
		s.log("counts", err)
		return
	}
	var file strings.Builder
	rows := csv.NewWriter(&file)
	_ = rows.Write([]string{"batch", "value"}) // a builder takes everything
	zeros := false
	for _, e := range entries {
		var body map[string]any
		if e.ReplacedBy != nil || json.Unmarshal(e.Body, &body) != nil {
			continue
		}
		value, counted := body[key].(float64)
		if !counted {
			continue
		}
		_, batch := e.About()
		zeros = zeros || value <= 0
		_ = rows.Write([]string{batch, strconv.FormatFloat(value, 'g', -1, 64)})
		v.Rows = append(v.Rows, countRow{p.When(e.Time().In(s.now().Location()), s.now()), batch, worksheet.Speak(key, value).Speak(p.Reader)})
	}
	rows.Flush()
	if len(v.Rows) < fewestCharted {
		v.Say = p.Say("web.counts.few", "n", len(v.Rows), "what", p.Say("web.bench.group."+group))
		return
	}
	values := worksheet.Values{"file": {file.String()}, "rules": {"all"}}
	if !zeros { // a logarithm needs something seen; otherwise the counts as they are
		values["log10"] = []string{"true"}
	}
	v.judge(p, s, values)
}

func (v *countsView) judge(p *page, s *Site, values worksheet.Values) {
	result, err := ask("control-chart", values, p)
	if err != nil {
		v.Say = s.reason(p, err)
		return
	}
	v.Say = result.Answer.For(p.Reader)
	v.Lines, v.Grids, _ = result.Figures(p.Reader)
	v.Cautions = worksheet.Sentences(result.Cautions, p.Reader)
	if result.Plot != nil {
		v.Plot = drawPlot(p, result.Plot)
	}
}
