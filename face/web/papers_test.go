package web_test

import (
	"bytes"
	"io"
	"mime/multipart"
	"net/http"
	"strings"
	"testing"

	"aerosteep/record/holding"
	"aerosteep/worksheet"
)

// Each paper is reached from Records, prints and is data.
func TestPapersAreReachedFromRecords(t *testing.T) {
	h := demoHolding(t)
	for word, given := range map[string]worksheet.Values{
		"applied":  {"bed": {"Kale, east"}, "batch": {"D-114"}, "tea": {"60 L"}},
		"incident": {"text": {"Hose came off"}, "bed": {"Kale, east"}},
		"stock":    {"ingredient": {"compost"}, "used": {"3 kg"}, "lot": {"W 7/a"}, "batch": {"D-114"}},
	} {
		form, _ := holding.FormOf(word)
		e, err := h.Compose(form, given, holding.Made{At: demoHour, By: "A.T."})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := h.Store(t.Context(), e); err != nil {
			t.Fatal(err)
		}
	}
	server := serve(t, h)
	body, _ := fetch(t, server, "/records")
	met := map[string]bool{}
	for _, m := range hrefs.FindAllStringSubmatch(body, -1) {
		kind, is := strings.CutPrefix(m[1], "/records/")
		kind, name, named := strings.Cut(kind, "/")
		if !is || !named || met[kind] {
			continue
		}
		met[kind] = true
		if page, _ := fetch(t, server, m[1]); !strings.Contains(page, "<h1>") {
			t.Errorf("%s %s is no page", kind, name)
		}
		for as, begins := range map[string]string{"pdf": "%PDF-", "json": "{"} {
			if got, _ := fetch(t, server, m[1]+"?as="+as); !strings.HasPrefix(got, begins) {
				t.Errorf("%s as %s: %.40q", m[1], as, got)
			}
		}
	}
	for _, kind := range []string{"brew", "label", "application", "visit", "cleaning", "incident", "trace", "recall", "season"} {
		if !met[kind] {
			t.Errorf("no %s is offered", kind)
		}
	}
}

func TestTheLogbookIsSearched(t *testing.T) {
	server := demoServer(t)
	found, _ := fetch(t, server, "/records?q=lively+bubbles")
	if !strings.Contains(found, "lively bubbles") || strings.Contains(found, "earthy") {
		t.Error("the search does not part the lines")
	}
	if none, _ := fetch(t, server, "/records?q=zzz"); !strings.Contains(none, "zzz") || strings.Contains(none, `class="entry-line"`) {
		t.Error("what is not there is found")
	}
}

// upload posts a file to Records.
func upload(t *testing.T, address string, content []byte) (status int, body string) {
	t.Helper()
	var form bytes.Buffer
	writer := multipart.NewWriter(&form)
	part, err := writer.CreateFormFile("file", "it")
	if err != nil {
		t.Fatal(err)
	}
	_, _ = part.Write(content)
	writer.Close()
	response, err := http.Post(address+"/records", writer.FormDataContentType(), &form)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	if err != nil {
		t.Fatal(err)
	}
	return response.StatusCode, string(text)
}

// A backup made with the button restores an empty holding, and no other; an
// export is taken in once.
func TestBackupAndRestoreInTheBrowser(t *testing.T) {
	server := demoServer(t)
	if page, _ := fetch(t, server, "/records"); !strings.Contains(page, "No backup was ever made.") {
		t.Error("the missing backup is not said")
	}
	response, err := http.Post(server.URL+"/records?do=backup", "", nil)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	backup, err := io.ReadAll(response.Body)
	if err != nil || !strings.HasPrefix(string(backup), "SQLite format 3") {
		t.Fatalf("%v %.20q", err, backup)
	}
	if page, _ := fetch(t, server, "/records"); strings.Contains(page, "No backup was ever made.") {
		t.Error("the backup is not remembered")
	}
	empty := emptyServer(t)
	if status, body := upload(t, empty.URL, backup); status != http.StatusOK || !strings.Contains(body, "D-114") {
		t.Errorf("restoring an empty holding answers %d", status)
	}
	if status, _ := upload(t, empty.URL, backup); status != http.StatusUnprocessableEntity {
		t.Errorf("a holding that is not empty is replaced: %d", status)
	}
	lines, _ := fetch(t, server, "/records/export")
	if status, body := upload(t, server.URL, []byte(lines)); status != http.StatusOK || !strings.Contains(body, "0 stored") {
		t.Errorf("taking in what is known answers %d", status)
	}
	if status, _ := upload(t, emptyServer(t).URL, []byte(pail(t))); status != http.StatusOK {
		t.Errorf("a job file answers %d", status)
	}
	if status, _ := upload(t, server.URL, []byte("not a file of ours")); status != http.StatusUnprocessableEntity {
		t.Errorf("nonsense answers %d", status)
	}
}

func TestThePlanIsACalendarAndSheets(t *testing.T) {
	server := demoServer(t)
	if feed, kind := fetch(t, server, "/plan.ics"); !strings.HasPrefix(feed, "BEGIN:VCALENDAR") || !strings.HasPrefix(kind, "text/calendar") {
		t.Errorf("%s %.40q", kind, feed)
	}
	if sheets, _ := fetch(t, server, "/plan.pdf"); !strings.HasPrefix(sheets, "%PDF-") {
		t.Errorf("%.40q", sheets)
	}
}
