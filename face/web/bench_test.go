package web_test

import (
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"strings"
	"testing"
)

// pressed is a tally as the keys make it: so many of a group in each field.
func pressed(key string, counts ...int) string {
	var keys strings.Builder
	for _, n := range counts {
		keys.WriteString(strings.Repeat(key, n) + "|")
	}
	return keys.String()
}

func postBench(t *testing.T, fields url.Values) (int, string) {
	t.Helper()
	return post(t, &http.Client{}, demoServer(t).URL+"/batches/D-114/bench", fields)
}

// phone is a browser that has looked at a page before.
func phone(t *testing.T, address string) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	client := &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	response, err := client.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	response.Body.Close()
	return client
}

func post(t *testing.T, client *http.Client, address string, fields url.Values) (int, string) {
	t.Helper()
	response, err := client.PostForm(address, fields)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	body := new(strings.Builder)
	if _, err := copyBody(body, response); err != nil {
		t.Fatal(err)
	}
	return response.StatusCode, body.String()
}

// slide is how the clumped count of Elliott's kind was looked at.
func slide(fields url.Values) url.Values {
	for flag, text := range map[string]string{"field-diameter": "0.45 mm", "coverslip-side": "22 mm", "drop-volume": "0.02 mL", "dilution": "10"} {
		fields.Set(flag, text)
	}
	return fields
}

// The bench gives the numbers of the worksheet: ten fields with a range by
// Student's t, worked by hand from the counts (8 368 799 per mL, 633 646 to
// 16 103 952).
func TestTheBenchCountsWithoutScript(t *testing.T) {
	keys := pressed("b", 3, 0, 14, 1, 0, 9, 2, 0, 21, 5)
	_, body := postBench(t, slide(url.Values{"tally": {keys}, "press": {"b"}, "look": {"b"}}))
	for _, want := range []string{
		`value="` + keys + `b"`,        // the key is added
		`data-here="b">1<`, "Field 11", // to the field being counted
		"8 370 000", "634 000", // the estimate takes only fields that are done
		"3,0,14,1,0,9,2,0,21,5", "±20", // and says how many more
	} {
		if !strings.Contains(body, want) {
			t.Errorf("the bench does not say %s", want)
		}
	}
	_, body = postBench(t, slide(url.Values{"tally": {"bb|b"}, "press": {"undo"}, "look": {"b"}}))
	if !strings.Contains(body, `value="bb|"`) {
		t.Error("undo does not take the last key back")
	}
	if strings.Contains(body, `value="c" aria-keyshortcuts`) {
		t.Error("a group that is not looked for has a key")
	}
}

// A saved count is an entry of the batch with its numbers and the counts that
// they were made of; strands come out as a length (ten fields on a square grid
// of 0.1 mm: 8.2944 m/mL by Newman's π/4).
func TestTheBenchSavesACount(t *testing.T) {
	server := demoServer(t)
	address := server.URL + "/batches/D-114/bench"
	client := phone(t, address)
	strands := url.Values{
		"tally": {pressed("s", 5, 0, 3, 8, 2, 0, 4, 6, 1, 3)}, "press": {"save"}, "look": {"s"}, "grid": {"0.1 mm"},
		"field-diameter": {"0.5 mm"}, "coverslip-side": {"18 mm"}, "drop-volume": {"0.05 mL"},
		"id": {"019e1e5a-0000-7000-8000-000000000077"}, "at": {"2026-05-12T22:40:00Z"},
	}
	for range 2 { // handed over twice, kept once
		if status, body := post(t, client, address, strands); status != http.StatusSeeOther {
			t.Fatalf("saving answers %d: %s", status, body)
		}
	}
	body, _ := fetch(t, server, "/batches/D-114")
	if n := strings.Count(body, "8.294"); n != 1 {
		t.Errorf("the length of hyphae stands %d times in the record of the batch", n)
	}
	if !strings.Contains(body, "hyphae 5,0,3,8,2,0,4,6,1,3") {
		t.Error("the counts of each field are not in the record")
	}
}

func TestTheBenchRefusesWhatIsNoCount(t *testing.T) {
	for name, fields := range map[string]url.Values{
		"no field":                  slide(url.Values{"tally": {""}, "press": {"save"}, "look": {"b"}}),
		"no group":                  slide(url.Values{"tally": {"bb|"}, "press": {"save"}}),
		"field wider than the slip": {"tally": {"bb|"}, "press": {"save"}, "look": {"b"}, "field-diameter": {"30 mm"}, "coverslip-side": {"22 mm"}, "drop-volume": {"0.02 mL"}},
		"a drop in metres":          {"tally": {"bb|"}, "press": {"save"}, "look": {"b"}, "field-diameter": {"0.4 mm"}, "coverslip-side": {"22 mm"}, "drop-volume": {"2 m"}},
	} {
		if status, body := postBench(t, fields); status != http.StatusUnprocessableEntity || !strings.Contains(body, `role="alert"`) {
			t.Errorf("%s answers %d", name, status)
		}
	}
}
