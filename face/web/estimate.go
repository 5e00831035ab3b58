package web

import (
	"strconv"

	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// estimate is what the fields so far say about one group.
type estimate struct {
	Key, Name string
	Counts    string // "12,15,9"
	Say       string // the number with its range
	More      string // how many fields more for a range that is narrow enough
}

// wantedWithin is how narrow a count is wanted, in percent of its mean: the
// usual aim at the bench (common practice).
const wantedWithin = "20"

// estimate asks the worksheets about one group's finished fields.
func (p *page) estimate(g group, seen tally, scope microscope) estimate {
	counts := seen.counts(g)
	e := estimate{Key: g.key, Name: p.Say("web.bench.group." + g.name), Counts: listed(counts)}
	switch {
	case len(counts) == 0:
		e.Say = p.Say("web.bench.no-field")
	case !scope.ready():
		e.Say = p.Say("web.bench.no-microscope", "total", sum(counts), "fields", len(counts))
	case g.sheet == "hyphae" && scope["grid"] == "":
		e.Say = p.Say("web.bench.no-grid", "total", sum(counts), "fields", len(counts))
	default:
		e.Say = answerOf(g.sheet, g.values(seen, scope), p)
	}
	if len(counts) >= 2 && sum(counts) > 0 {
		e.More = answerOf("fields-needed", worksheet.Values{"counts": {listed(counts)}, "within": {wantedWithin}}, p)
	}
	return e
}

// values are what the group's worksheet is asked.
func (g group) values(seen tally, scope microscope) worksheet.Values {
	values := worksheet.Values{g.flag: {listed(seen.counts(g))}}
	for _, f := range scopeFlags {
		if text := scope[f.flag]; text != "" && (f.flag != "grid" || g.sheet == "hyphae") {
			values[f.flag] = []string{text}
		}
	}
	return values
}

// ask runs a worksheet for a page.
func ask(name string, values worksheet.Values, p *page) (*worksheet.Result, error) {
	sheet, _ := catalog.Find(name)
	form, err := worksheet.Read(sheet, values, nil)
	if err != nil {
		return nil, err
	}
	form.Units = p.Units
	return sheet.Run(form)
}

// answerOf is a worksheet's sentence, or why it has none.
func answerOf(name string, values worksheet.Values, p *page) string {
	result, err := ask(name, values, p)
	if err != nil {
		sheet, _ := catalog.Find(name)
		said := ""
		for _, f := range faultsOf(err) {
			said += faultText(p, sheet, f) + " "
		}
		return said
	}
	return result.Answer.For(p.Reader)
}

// middle is the number of a count's estimate, as it is written in the record.
func middle(result *worksheet.Result, p *page) (string, bool) {
	tree, err := worksheet.Tree(result.Data, p.Reader)
	object, _ := tree.(worksheet.Object)
	if err != nil || object == nil {
		return "", false
	}
	for _, key := range []string{"per_ml", "length_m_per_ml"} {
		found, _ := object.Get(key)
		inner, isRange := found.(worksheet.Object)
		if !isRange {
			continue
		}
		value, _ := inner.Get("estimate")
		if n, isNumber := value.(float64); isNumber {
			return strconv.FormatFloat(n, 'f', -1, 64), true
		}
	}
	return "", false
}
