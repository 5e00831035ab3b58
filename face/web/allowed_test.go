package web_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/record/holding"
	"aerosteep/worksheet"
)

// forgetful is the demo in which nobody has said whether the ground is
// certified organic, nor how the compost was treated.
func forgetful(t *testing.T) (*holding.Holding, *httptest.Server) {
	t.Helper()
	h := demoHolding(t)
	for _, answer := range [][3]string{{"animal_origin", "hygiene", "yes"}, {"organic", "hygiene", "unknown"}, {"treatment", "hygiene", "unknown"}} {
		tell(t, h, answer)
	}
	return h, serve(t, h)
}

func tell(t *testing.T, h *holding.Holding, answer [3]string) {
	t.Helper()
	e, err := h.Answer(factNamed(t, answer[0]), answer[1], answer[2], holding.Made{At: demoHour})
	if err == nil {
		_, err = h.Store(context.Background(), e)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func TestWhereItMayGoStandsWithItsParagraph(t *testing.T) {
	h, server := forgetful(t)
	body, _ := fetch(t, server, "/batches/D-114/allowed?lang=en")
	for _, part := range []string{"Kale, east, batch D-114", "Produce rule", "Organic rules", "CFR", "Nobody here knows", "not legal advice", "Legionella"} {
		if !strings.Contains(body, part) {
			t.Errorf("the page lacks %q", part)
		}
	}
	if strings.Contains(body, "batch C-031") {
		t.Error("the page of one batch shows another")
	}
	tell(t, h, [3]string{"covered", "bed:Kale, east", "yes"})
	if again, _ := fetch(t, server, "/batches/D-114/allowed?lang=en"); again == body {
		t.Error("an answer changes nothing")
	}
}

// A question that is answered is asked no more, by whatever way it came.
func TestOneAnswerServesEveryBed(t *testing.T) {
	h := demoHolding(t)
	tell(t, h, [3]string{"animal_origin", "hygiene", "yes"})
	tell(t, h, [3]string{"process_record", "hygiene", "unknown"})
	tell(t, h, [3]string{"organic", "hygiene", "yes"})
	server := serve(t, h)
	body, _ := fetch(t, server, "/ground/question?lang=en")
	if strings.Contains(body, `value="process_record"`) {
		t.Error("what nobody knows is asked again")
	}
	letter, _ := fetch(t, server, "/records/letter?to=supplier&lang=en")
	if !strings.Contains(letter, "record of time, temperature and turns") || !strings.Contains(letter, "signature") {
		t.Error("what nobody knows stands in no letter to the supplier")
	}
	client := &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	send := func(value string) int {
		response, err := client.PostForm(server.URL+"/ground/question", url.Values{"fact": {"process_record"}, "value": {value}, "for": {"hygiene"}, "by": {"M.R."}})
		if err != nil {
			t.Fatal(err)
		}
		response.Body.Close()
		return response.StatusCode
	}
	if status := send("perhaps"); status != http.StatusUnprocessableEntity {
		t.Errorf("perhaps answers %d", status)
	}
	if status := send("yes"); status != http.StatusSeeOther {
		t.Fatalf("yes answers %d", status)
	}
	if letter, _ := fetch(t, server, "/records/letter?to=supplier&lang=en"); strings.Contains(letter, "record of time, temperature and turns") {
		t.Error("an answered question still stands in the letter")
	}
}

// 120 days after 12 May is 9 September; the card says so in both languages.
func TestTheCardAtTheBed(t *testing.T) {
	h := demoHolding(t)
	for _, answer := range [][3]string{{"animal_origin", "hygiene", "yes"}, {"treatment", "hygiene", "none"}, {"organic", "hygiene", "yes"}} {
		tell(t, h, answer)
	}
	form, _ := holding.FormOf("applied")
	e, err := h.Compose(form, worksheet.Values{"bed": {"Strawberries"}, "batch": {"D-114"}, "method": {"drench"}}, holding.Made{At: demoHour.Add(-time.Hour)})
	if err == nil {
		_, err = h.Store(context.Background(), e)
	}
	if err != nil {
		t.Fatal(err)
	}
	server := serve(t, h)
	body, _ := fetch(t, server, "/ground/stake?bed=Strawberries")
	for _, part := range []string{"Do not pick before", "No coseche antes del", `lang="es"`} {
		if !strings.Contains(body, part) {
			t.Errorf("the card lacks %q: %s", part, body)
		}
	}
	if today, _ := fetch(t, server, "/?lang=en"); !strings.Contains(today, "Do not pick yet") {
		t.Error("Today does not warn before the first allowed pick")
	}
}

func factNamed(t *testing.T, name string) hygiene.Fact {
	t.Helper()
	fact, known := hygiene.FactNamed(name)
	if !known {
		t.Fatalf("no fact %s", name)
	}
	return fact
}
