package web_test

import (
	"context"
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"aerosteep/record/holding"
)

// The phone asks once a day who holds it, with the initials as large buttons; it
// then speaks that person's language, goes back to where it was asked, and asks
// no more. It leads to no other site.
func TestThePhoneAsksWhoHoldsIt(t *testing.T) {
	server, h := groundServer(t)
	page, _ := fetch(t, server, "/")
	if strings.Contains(page, "Who holds the phone?") {
		t.Error("it asks where nobody is set up")
	}
	for _, body := range []string{`{"name": "R.K."}`, `{"name": "M.R.", "language": "es"}`} {
		e, err := h.Edit("person", "", json.RawMessage(body), holding.Made{At: juneMorning})
		if err == nil {
			_, err = h.Store(context.Background(), e)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	client := pocketBrowser(t)
	look := func(address string) string {
		response, err := client.Get(server.URL + address)
		if err != nil {
			t.Fatal(err)
		}
		defer response.Body.Close()
		var b strings.Builder
		_, _ = copyBody(&b, response)
		return b.String()
	}
	see(t, look("/"), "Who holds the phone?", `name="by" value="M.R."`)
	response, err := client.PostForm(server.URL+"/who", url.Values{"by": {"M.R."}, "back": {"/batches"}})
	if err != nil {
		t.Fatal(err)
	}
	response.Body.Close()
	if response.Request.URL.Path != "/batches" {
		t.Errorf("it leads to %s", response.Request.URL)
	}
	if page := look("/"); strings.Contains(page, `class="who"`) || !strings.Contains(page, `<html lang="es"`) {
		t.Error("it asks again, or does not speak the person's language")
	}
	for _, away := range []string{"https://example.org/", "//example.org", `/\example.org`} {
		response, err := client.PostForm(server.URL+"/who", url.Values{"by": {"M.R."}, "back": {away}})
		if err != nil || response.Request.URL.Host != strings.TrimPrefix(server.URL, "http://") {
			t.Errorf("%s leads to %v, %v", away, response.Request.URL, err)
		}
		response.Body.Close()
	}
}

// The next person finds state, last and next reading and what the one before
// says, on one page; Today shows the note for a day.
func TestHandover(t *testing.T) {
	server := demoServer(t)
	page, _ := fetch(t, server, "/handover")
	see(t, page, "D-114", "C-031", "Last reading", "Read again", "Who decides")
	note := url.Values{"text": {"Pump hums, watch it"}, "handover": {"yes"}, "by": {"R.K."}}
	if status, _ := sendForm(t, server, "/write/note", note); status != http.StatusOK {
		t.Fatalf("the note answers %d", status)
	}
	for _, address := range []string{"/handover", "/"} {
		page, _ = fetch(t, server, address)
		see(t, page, "Pump hums, watch it", "R.K.")
	}
}
