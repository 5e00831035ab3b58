package web_test

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// The bacterial starter for five gallons, as in the worked call of the recipe
// contract: 568 g of compost, 1467 mg/L of oxygen demand.
func TestARecipeIsScaledComparedAndPrinted(t *testing.T) {
	server := demoServer(t)
	list, _ := fetch(t, server, "/recipes?volume=5+gal&units=us")
	for _, want := range []string{"/recipes/bacterial", "/recipes/Leafy", "/recipes/Fruit%20set", "1467\u00a0mg/L", "USD"} {
		if !strings.Contains(list, want) {
			t.Errorf("the recipes do not say %s", want)
		}
	}
	if strings.Index(list, "/recipes/unfed") > strings.Index(list, "/recipes/bacterial") {
		t.Error("the recipe that asks least of the air does not stand first")
	}
	one, _ := fetch(t, server, "/recipes/bacterial?volume=5+gal")
	for _, want := range []string{"568", "1 qt", "0.169", `data-key="regrowth"`, "/recipes/bacterial%20unfed", "dose-chart.pdf"} {
		if !strings.Contains(one, want) {
			t.Errorf("the recipe does not say %s", want)
		}
	}
	paper, kind := fetch(t, server, "/recipes/Fruit%20set/dose-chart.pdf")
	if kind != "application/pdf" || !strings.HasPrefix(paper, "%PDF-") {
		t.Errorf("the dose chart is %s", kind)
	}
	response, err := http.Get(server.URL + "/recipes/bacterial?volume=5+kg")
	if err != nil {
		t.Fatal(err)
	}
	response.Body.Close()
	if response.StatusCode != http.StatusUnprocessableEntity {
		t.Errorf("5 kg of water answers %d", response.StatusCode)
	}
}

// A worksheet that is asked for the holding's recipe knows it: 2 kg of compost
// in 100 L are 20 g/L.
func TestWorksheetsKnowTheHoldingsRecipes(t *testing.T) {
	body, _ := fetch(t, demoServer(t), "/worksheets/scale?recipe=leafy&volume=50+L&units=metric")
	if !strings.Contains(body, "Leafy") || !strings.Contains(body, "20.0") && !strings.Contains(body, "20\u00a0g/L") {
		t.Error("leafy is not known to the worksheet")
	}
}

// Published individuals data (NIST/SEMATECH 6.3.2.2, flow rates) kept as
// counts of ten batches: on a chart of log10 none of them is odd.
func TestCountsAreChartedBatchToBatch(t *testing.T) {
	h := demoHolding(t)
	form, _ := holding.FormOf("count")
	for i, value := range []string{"49.6", "47.6", "49.9", "51.3", "47.8", "51.2", "52.6", "52.4", "53.6", "52.1"} {
		entry, err := h.Compose(form, worksheet.Values{"batch": {"D-114"}, "bacteria": {value}}, holding.Made{At: demoHour.Add(time.Duration(i-20) * time.Minute)})
		if err != nil {
			t.Fatal(err)
		}
		if results, err := h.Store(context.Background(), entry); err != nil || results[0].Outcome == journal.Refused {
			t.Fatal(err, results)
		}
	}
	server := serve(t, h)
	body, _ := fetch(t, server, "/records/counts?what=bacteria")
	for _, want := range []string{`data-key="mean"`, `data-key="upper"`, `role="img"`, "52.6"} {
		if !strings.Contains(body, want) {
			t.Errorf("the chart lacks %s", want)
		}
	}
	if few, _ := fetch(t, server, "/records/counts?what=ciliates"); strings.Contains(few, `data-key="mean"`) {
		t.Error("no ciliate was counted and there is a chart")
	}
}

// "I don't know" is an answer: the lot is put aside, and the longest check,
// the bean test of three weeks, says until when.
func TestACompostOfUnknownOriginIsPutAside(t *testing.T) {
	server := demoServer(t)
	unknown, _ := fetch(t, server, "/records/compost")
	if n := strings.Count(unknown, `class="note care"`); n != 4 || !strings.Contains(unknown, "21") {
		t.Errorf("an unknown lot lacks %d checks", n)
	}
	all := url.Values{"smell": {"passed"}, "conductivity": {"passed"}, "heating-record": {"passed"}, "bioassay": {"passed"}}
	if known, _ := fetch(t, server, "/records/compost?"+all.Encode()); strings.Contains(known, `class="note care"`) {
		t.Error("a lot with all its papers still lacks one")
	}
}
