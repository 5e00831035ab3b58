package report_test

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"aerosteep/record/holding"
	"aerosteep/record/report"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// A folder holds all that lies behind its subject, down from a lot and up from a
// bed or a crop, with the gaps of every paper first.
func TestFolderHoldsWhatLiesBehind(t *testing.T) {
	h, ids := shelf(t)
	given := worksheet.Values{"what": {"supplier"}, "lot": {"W-7"}}
	if _, err := h.Attach(context.Background(), "w7.pdf", []byte("paper"), given, holding.Made{At: shelfHour, By: "A.T."}); err != nil {
		t.Fatal(err)
	}
	all := []string{"Trace of lot W-7", "Brew record: D-114", "Application record: Kale, east"}
	for name, more := range map[string][]string{
		"lot:W-7":        {"supplier's record | W-7 | w7.pdf"},
		"bed:Kale, east": {"Incident record", "w7.pdf"},
		"crop:kale":      {"Incident record"},
		"season:2026":    {"Incident record", "Cleaning log 2026", "Looking back on 2026", "w7.pdf"},
	} {
		says(t, h, "folder", name, all...)
		says(t, h, "folder", name, more...)
	}
	text := spoken(made(t, h, "folder", "season:2026"))
	if !strings.Contains(text, "Incident record: How far to a ditch") || !strings.Contains(text, short(ids["incident"])) {
		t.Errorf("the gaps or the numbers of its papers are not told:\n%s", text)
	}
	for _, wrong := range []string{"", "lot", "lot:", "lot:Nobody", "bed:Nowhere", "crop:rice", "year:2026", "season:soon"} {
		if _, err := report.NewDesk(h, shelfHour).Make(context.Background(), "folder", wrong); err == nil {
			t.Errorf("a folder about %q is made", wrong)
		}
	}
}

// The index names the pages on which the papers begin, and every page says which
// of how many it is: counted in the printed file.
func TestFolderIsOneFile(t *testing.T) {
	h, _ := shelf(t)
	p := made(t, h, "folder", "season:2026")
	for _, print := range []func(wording.Reader) ([]byte, error){p.PDF, p.BothPDF} {
		text, err := print(wording.Reader{Language: wording.English, Units: wording.Metric})
		if err != nil {
			t.Fatal(err)
		}
		again, _ := print(wording.Reader{Language: wording.English, Units: wording.Metric})
		inside := len(p.Tables[0].Rows)
		if pages := bytes.Count(text, []byte("/Type /Page\n")); pages < inside+1 || !bytes.Equal(text, again) {
			t.Errorf("%d pages for %d papers and an index", pages, inside)
		}
	}
}

func short(id string) string { return id[len(id)-8:] }
