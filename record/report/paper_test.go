package report_test

import (
	"bytes"
	"context"
	"crypto/rand"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"aerosteep/examples"
	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/record/report"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// shelfHour is an afternoon of Tern Hollow's week.
var shelfHour = time.Date(2026, 5, 12, 22, 45, 0, 0, time.UTC)

// shelf is Tern Hollow with a lot that went into a batch, on a bed and to a
// neighbour; logged ids are by word.
func shelf(t *testing.T) (*holding.Holding, map[string]string) {
	t.Helper()
	ctx := context.Background()
	h, err := holding.Open(ctx, t.TempDir(), journal.Means{Now: func() time.Time { return shelfHour }, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	text, err := examples.ReadFile("examples/ternhollow/week.toml")
	if err != nil {
		t.Fatal(err)
	}
	file, problems := jobfile.Read(text, "week.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(ctx, file, holding.Made{At: shelfHour, By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	ids := map[string]string{}
	log := func(word string, at time.Time, given worksheet.Values) {
		form, _ := holding.FormOf(word)
		e, err := h.Compose(form, given, holding.Made{At: at, By: "A.T."})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := h.Store(ctx, e); err != nil {
			t.Fatal(err)
		}
		ids[word] = e.ID
	}
	log("stock", shelfHour.Add(-72*time.Hour), worksheet.Values{"ingredient": {"compost"}, "received": {"100 kg"}, "lot": {"W-7"}, "supplier": {"own heap 3"}})
	log("stock", shelfHour.Add(-20*time.Hour), worksheet.Values{"ingredient": {"compost"}, "used": {"3 kg"}, "lot": {"W-7"}, "batch": {"D-114"}})
	log("reading", shelfHour.Add(-3*time.Hour), worksheet.Values{"batch": {"D-114"}, "do": {"8.1 mg/L"}, "temp": {"15 C"}})
	log("applied", shelfHour, worksheet.Values{"bed": {"Kale, east"}, "batch": {"D-114"}, "method": {"foliar"}, "tea": {"60 L"}, "text": {"Prevents mildew"}})
	log("cleaned", shelfHour, worksheet.Values{"vessel": {"Drum"}, "agent": {"hydrogen peroxide"}, "dwell": {"10 min"}})
	log("incident", shelfHour, worksheet.Values{"text": {"Hose came off"}, "bed": {"Kale, east"}, "volume": {"20 L"}})
	log("stock", shelfHour, worksheet.Values{"batch": {"D-114"}, "volume": {"5 gal"}, "receiver": {"N.B."}})
	log("end", shelfHour, worksheet.Values{"batch": {"D-114"}, "outcome": {"failed"}, "cause": {"pump stopped"}})
	return h, ids
}

func made(t *testing.T, h *holding.Holding, kind, name string) *report.Paper {
	t.Helper()
	p, err := report.NewDesk(h, shelfHour).Make(context.Background(), kind, name)
	if err != nil {
		t.Fatalf("%s: %v", kind, err)
	}
	return p
}

func names(ids map[string]string) map[string]string {
	return map[string]string{
		"brew": "D-114", "label": "C-031", "application": ids["applied"], "visit": "2026-05-12", "cleaning": "2026",
		"incident": ids["incident"], "trace": "W-7", "recall": "W-7", "season": "2026",
		"stock": "now", "crew": "now", "notice": "Kale, east", "folder": "lot:W-7",
	}
}

// Every paper prints the same twice, in both languages, and is data as well.
func TestPapersPrintTheSameTwice(t *testing.T) {
	h, ids := shelf(t)
	for kind, name := range names(ids) {
		for _, r := range []wording.Reader{{Language: wording.English, Units: wording.US}, {Language: wording.Spanish, Units: wording.Metric}} {
			first, err := made(t, h, kind, name).PDF(r)
			if err != nil {
				t.Fatalf("%s: %v", kind, err)
			}
			second, err := made(t, h, kind, name).PDF(r)
			if err != nil || !bytes.Equal(first, second) {
				t.Errorf("%s: two prints differ (%v)", kind, err)
			}
			if pages := bytes.Count(first, []byte("/Type /Page\n")); !bytes.HasPrefix(first, []byte("%PDF-")) || pages != 1 && kind != "folder" {
				t.Errorf("%s: %d pages", kind, pages)
			}
			text, err := made(t, h, kind, name).JSON(r)
			if err != nil || !json.Valid(text) || strings.Contains(string(text), `"Key"`) {
				t.Errorf("%s: %v %s", kind, err, text)
			}
		}
	}
}

// spoken is all of a paper in English and metric units.
func spoken(p *report.Paper) string {
	r := wording.Reader{Language: wording.English, Units: wording.Metric}
	text := p.Title.For(r) + "\n" + p.Lede.For(r) + "\n"
	for _, m := range append(p.Missing, p.Cautions...) {
		text += m.For(r) + "\n"
	}
	for _, f := range p.Facts {
		text += report.Label(f.Key, r) + ": " + report.Spoken(f.Key, f.Value, r) + "\n"
	}
	for _, table := range p.Tables {
		_, rows := table.Words(r)
		for _, cells := range rows {
			text += strings.Join(cells, " | ") + "\n"
		}
	}
	return text
}

// What an inspector asks for stands on the paper, and what is missing first.
func TestPapersSayWhatIsKnownAndWhatIsMissing(t *testing.T) {
	h, ids := shelf(t)
	for kind, wants := range map[string][]string{
		"brew":        {"Drum", "Leafy", "W-7", "failed", "pump stopped", "8.10\u00a0mg/L", "The lot of molasses in D-114 is not written down", "No cleaning of Drum before the start", "written down 3 h later"},
		"label":       {"Use by", "600\u00a0L", "Not on leaves or parts that will be eaten"},
		"application": {"Home field (44.1200, -123.0500)", "kale", "60\u00a0L (15.9\u00a0gal)", "lot: W-7", "no wind or no direction", "2026-05-12 15:45 \u221207:00"},
		"visit":       {"Kale, east", "“Prevents”", "“mildew”", "promises nothing"},
		"cleaning":    {"Drum", "hydrogen peroxide", "No cleaning of Pail is written down in 2026"},
		"incident":    {"Hose came off", "20\u00a0L", "Who was told: not written down"},
		"trace":       {"1 batch, 1 bed, 1 delivery to others", "own heap 3", "D-114", "Kale, east", "N.B."},
		"recall":      {"Do not use what you still have", "N.B."},
		"season":      {"failed or thrown away: 1", "pump stopped | 1"},
	} {
		text := spoken(made(t, h, kind, names(ids)[kind]))
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in\n%s", kind, want, text)
			}
		}
	}
}

func TestPapersThatCannotBe(t *testing.T) {
	h, _ := shelf(t)
	for kind, name := range map[string]string{"brew": "D-115", "application": "7", "visit": "May", "season": "12", "trace": "X", "cleaning": "", "broom": "2026", "label": ""} {
		if _, err := report.NewDesk(h, shelfHour).Make(context.Background(), kind, name); len(fault.Of(err)) != 1 {
			t.Errorf("%s %q: %v", kind, name, err)
		}
	}
}

// 7 U.S.C. 136(u): what is said to prevent, destroy, repel or mitigate a pest
// is a pesticide. Neutral words pass, curing compost too.
func TestClaims(t *testing.T) {
	for text, n := range map[string]int{
		"Prevents mildew and kills aphids": 3, "Previene enfermedades": 2, "100% safe, pathogen-free": 1,
		"60 L of compost tea on kale, well cured compost": 0, "60 L de té de compost en col, mata por mata": 0, "": 0,
	} {
		if got := report.Claims(text); len(got) != n {
			t.Errorf("%q: %v", text, got)
		}
	}
}

func FuzzClaims(f *testing.F) {
	f.Add("Prevents mildew")
	f.Add("Previene el tizón")
	f.Fuzz(func(t *testing.T, text string) {
		for _, c := range report.Claims(text) {
			if !strings.Contains(text, c.Word) {
				t.Errorf("%q is not in %q", c.Word, text)
			}
		}
	})
}

func TestRemark(t *testing.T) {
	english := wording.Reader{Language: wording.English, Units: wording.US}
	for wait, want := range map[time.Duration]string{3 * time.Hour: "written down 3 h later", 20 * time.Minute: "written down 20 min later", -time.Hour: "written down 60 min before it happened: a clock was wrong"} {
		if got := report.Spoken("remark", report.Remark(shelfHour, shelfHour.Add(wait)), english); got != want {
			t.Errorf("%v: %q", wait, got)
		}
	}
	if report.Remark(shelfHour, shelfHour.Add(15*time.Minute)) != nil {
		t.Error("a quarter of an hour is said to be late")
	}
}
