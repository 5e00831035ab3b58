package api

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/alexedwards/argon2id"

	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/worksheet/catalog"
)

var noon = time.Date(2026, 5, 13, 19, 0, 0, 0, time.UTC)

func standing() time.Time { return noon }

func newHolding(t testing.TB) *holding.Holding {
	t.Helper()
	h, err := holding.Open(context.Background(), t.TempDir(), journal.Means{Now: standing, Random: rand.NewChaCha8([32]byte{1})})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	return h
}

// client talks to a server behind its door.
type client struct {
	t       testing.TB
	server  *httptest.Server
	holding *holding.Holding
}

func serveTest(t testing.TB, password string) client {
	t.Helper()
	h := newHolding(t)
	a := New(h, standing, time.UTC, func(where string, err error) { t.Logf("%s: %v", where, err) })
	server := httptest.NewUnstartedServer(nil)
	door := &Door{Address: server.Listener.Addr().String(), Password: password}
	server.Config.Handler = door.Guard(a, Server{API: a}.mux())
	server.Start()
	t.Cleanup(server.Close)
	return client{t, server, h}
}

func (c client) do(method, path, body string, headers ...string) (int, string) {
	c.t.Helper()
	r, err := http.NewRequest(method, c.server.URL+path, strings.NewReader(body))
	if err != nil {
		c.t.Fatal(err)
	}
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
		}
		r.Header.Set(headers[i], headers[i+1])
	}
	answer, err := (&http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}).Do(r)
	if err != nil {
		c.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		c.t.Fatal(err)
	}
	return answer.StatusCode, string(text)
}

func (c client) want(status int, method, path, body string, headers ...string) map[string]any {
	c.t.Helper()
	got, text := c.do(method, path, body, headers...)
	if got != status {
		c.t.Errorf("%s %s %.60s: status %d, want %d: %.300s", method, path, body, got, status, text)
	}
	var object map[string]any
	if err := json.Unmarshal([]byte(text), &object); err != nil {
		c.t.Errorf("%s %s: no JSON object: %.300s", method, path, text)
	}
	if status >= 400 && status != http.StatusUnprocessableEntity && object["error"] == nil {
		c.t.Errorf("%s %s: no error in %s", method, path, text)
	}
	return object
}

func TestStatusOfEveryRefusal(t *testing.T) {
	c := serveTest(t, "")
	c.want(200, "POST", "/api/v1/calc/saturation", `{"temp":"67 °F"}`)
	c.want(400, "POST", "/api/v1/calc/saturation", `{"temp"`)
	c.want(400, "POST", "/api/v1/calc/saturation", ``)
	c.want(400, "POST", "/api/v1/calc/saturation", `{} {}`)
	c.want(422, "POST", "/api/v1/calc/saturation", `[]`)
	c.want(422, "POST", "/api/v1/calc/saturation", `{}`)
	c.want(422, "POST", "/api/v1/calc/saturation", `{"temp":"67"}`)
	c.want(422, "POST", "/api/v1/calc/saturation", `{"temp":{"c":19}}`)
	c.want(422, "POST", "/api/v1/calc/saturation", `{"temp":"19C","data":"/etc"}`)
	c.want(422, "POST", "/api/v1/calc/saturation", `{"temp":"19C","pdf":"/tmp/x.pdf"}`)
	c.want(404, "POST", "/api/v1/calc/saturaton", `{}`)
	c.want(405, "PUT", "/api/v1/calc/saturation", `{}`)
	c.want(405, "GET", "/api/v1/plan", ``)
	c.want(404, "GET", "/api/v1/nothing", ``)
	c.want(404, "GET", "/api/v1/batches/D-9/forecast", ``)
	c.want(422, "GET", "/api/v1/entries?since=yesterday", ``)
	c.want(413, "POST", "/api/v1/entries", `[`+strings.Repeat(" ", longestBody)+`]`)
	c.want(400, "POST", "/api/v1/plan", `[[vessel`)
	c.want(403, "GET", "/api/v1/batches", ``, "Host", "tea.example")
	c.want(403, "POST", "/api/v1/entries", `[]`, "Origin", "https://tea.example")
	c.want(403, "POST", "/api/v1/entries", `[]`, "Origin", "http://127.0.0.1:1")
	c.want(403, "POST", "/api/v1/entries", `[]`, "Origin", "null")
	c.want(403, "POST", "/api/v1/entries", `[]`, "Sec-Fetch-Site", "cross-site")
	c.want(200, "POST", "/api/v1/entries", `[]`, "Origin", c.server.URL, "Sec-Fetch-Site", "same-origin")
	c.want(200, "GET", "/healthz", ``)
	c.want(200, "GET", "/readyz", ``)
}

func TestHostsThatTheServerAnswersTo(t *testing.T) {
	for _, c := range []struct {
		address, host string
		ours          bool
	}{
		{"127.0.0.1:8417", "127.0.0.1:8417", true},
		{"127.0.0.1:8417", "localhost:8417", true},
		{"127.0.0.1:8417", "LOCALHOST:8417", true},
		{"127.0.0.1:8417", "[::1]:8417", true},
		{"127.0.0.1:8417", "localhost:80", false},
		{"127.0.0.1:8417", "localhost", false},
		{"127.0.0.1:8417", "192.0.2.7:8417", false},
		{"127.0.0.1:8417", "localhost.tea.example:8417", false},
		{"127.0.0.1:80", "localhost", true},
		{"192.0.2.7:8417", "192.0.2.7:8417", true},
		{"0.0.0.0:8417", "192.0.2.7:8417", true},
		{"[::]:8417", "192.0.2.7:8417", true},
		{":8417", "192.0.2.7:8417", true},
		{":8417", "tea.example:8417", false},
		{":8417", "shed.garden:8417", true},
		{"127.0.0.1:8417", "", false},
	} {
		door := &Door{Address: c.address, Names: []string{"shed.garden"}}
		if got := door.ourName(c.host); got != c.ours {
			t.Errorf("listening on %s, host %s: %v", c.address, c.host, got)
		}
	}
}

// Hyphen and underscore are alike, numbers and true are taken, and what every
// verb takes sets the reader.
func TestFlagsAsJSON(t *testing.T) {
	c := serveTest(t, "")
	a := c.want(200, "POST", "/api/v1/calc/saturation", `{"temp":"19.4C","sea-level-pressure":"30 inHg","altitude":"640 m"}`)
	b := c.want(200, "POST", "/api/v1/calc/saturation", `{"temp":"19,4 C","sea_level_pressure":"30 inHg","altitude":"640 m","units":"metric","json":true,"depth":null}`)
	if a["saturation_mg_per_l"] == nil || a["saturation_mg_per_l"] != b["saturation_mg_per_l"] {
		t.Errorf("%v and %v", a["saturation_mg_per_l"], b["saturation_mg_per_l"])
	}
	es := c.want(422, "POST", "/api/v1/calc/saturation?lang=es", `{"temp":"400C"}`)
	if text := fmt.Sprint(es["error"]); !strings.Contains(text, "una temperatura") {
		t.Errorf("not in Spanish: %s", text)
	}
}

func entry(n int, do float64) string {
	return fmt.Sprintf(`{"id":"018f3c2a-0000-7000-8000-%012x","kind":"reading","at":"2026-05-13T06:10:00-07:00","by":"R.K.","device":"phone-abcd","subject":"batch:D-114","body":{"do_mg_per_l":%g,"temp_c":19.2},"replaces":null}`, n, do)
}

func TestEntriesAreStoredOnce(t *testing.T) {
	c := serveTest(t, "")
	outcomes := func(answer map[string]any) string {
		var words []string
		for _, r := range answer["results"].([]any) {
			words = append(words, r.(map[string]any)["result"].(string))
		}
		return strings.Join(words, " ")
	}
	if got := outcomes(c.want(200, "POST", "/api/v1/entries", entry(1, 7.4))); got != "stored" {
		t.Error(got)
	}
	if got := outcomes(c.want(200, "POST", "/api/v1/entries", "["+entry(1, 7.4)+","+entry(2, 7)+"]")); got != "already-stored stored" {
		t.Error(got)
	}
	if got := outcomes(c.want(422, "POST", "/api/v1/entries", "["+entry(3, 7)+","+entry(1, 9)+`,{"kind":"moon"},5]`)); got != "stored refused refused refused" {
		t.Error(got)
	}
	chained := strings.Replace(entry(4, 7), `"replaces"`, `"journal":"018f3c2a-0000-7000-8000-000000000009","seq":1,"before":"`+strings.Repeat("0", 64)+`","replaces"`, 1)
	if got := outcomes(c.want(422, "POST", "/api/v1/entries", chained)); got != "refused" {
		t.Error(got)
	}
	list := c.want(200, "GET", "/api/v1/entries?since=2026-05-13T06:00:00-07:00", "")
	if n := len(list["entries"].([]any)); n != 3 {
		t.Errorf("%d entries are listed", n)
	}
}

// What the list answers can be sent back: it is already stored.
func TestListedEntriesCanBeSentBack(t *testing.T) {
	c := serveTest(t, "")
	c.want(200, "POST", "/api/v1/entries", entry(1, 7.4))
	listed := c.want(200, "GET", "/api/v1/entries", "")["entries"].([]any)[0].(map[string]any)
	delete(listed, "replaced_by")
	text, err := json.Marshal(listed)
	if err != nil {
		t.Fatal(err)
	}
	c.want(200, "POST", "/api/v1/entries", string(text))
}

const shed = `
[holding]
name = "Upper plots"
zone = "America/Los_Angeles"
[[site]]
name = "Yard"
latitude = 44.12
longitude = -123.05
[[bed]]
name = "Kale"
area = "100 sq ft"
[[vessel]]
name = "Pail"
full = "5 gal"
kla20 = "20 /h"
[[recipe]]
name = "Leafy"
for_volume = "4 gal"
items = [ { ingredient = "compost", amount = "2 qt" } ]
[[want]]
bed = "Kale"
method = "drench"
at = 2026-05-16T07:00:00-07:00
tea = "2 gal"
[[batch]]
name = "D 1/2"
vessel = "Pail"
recipe = "Leafy"
volume = "4 gal"
started_at = 2026-05-13T06:10:00-07:00
`

func TestPlanAndForecast(t *testing.T) {
	c := serveTest(t, "")
	made := c.want(200, "POST", "/api/v1/plan?now=2026-05-14T07:00:00-07:00", shed)
	if needs, _ := made["needs"].([]any); len(needs) != 1 || made["now"] != "2026-05-14T07:00:00-07:00" {
		t.Errorf("needs %v, now %v", made["needs"], made["now"])
	}
	bad := c.want(422, "POST", "/api/v1/plan", strings.Replace(shed, "full =", "ful =", 1))
	if problems, _ := bad["problems"].([]any); len(problems) == 0 {
		t.Errorf("no problems in %v", bad)
	}
	file, problems := jobfile.Read([]byte(shed), "a.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		t.Fatal(err)
	}
	if _, err := c.holding.Load(context.Background(), file, holding.Made{At: noon}); err != nil {
		t.Fatal(err)
	}
	batches := c.want(200, "GET", "/api/v1/batches", "")["batches"].([]any)
	if len(batches) != 1 || batches[0].(map[string]any)["name"] != "D 1/2" {
		t.Errorf("%v", batches)
	}
	path := "/api/v1/batches/" + url.PathEscape("D 1/2") + "/forecast?members=200&now=2026-05-13T12:00:00-07:00"
	if ahead := c.want(200, "GET", path, ""); ahead["chance_below_limit"] == nil || ahead["batch"] != "D 1/2" {
		t.Errorf("%v", ahead)
	}
	c.want(422, "GET", path+"&hours=-1", "")
}

func TestOpenAPIHasEveryWorksheet(t *testing.T) {
	c := serveTest(t, "")
	described := c.want(200, "GET", "/api/v1/openapi.json", "")
	if described["openapi"] != "3.1.0" {
		t.Errorf("version %v", described["openapi"])
	}
	paths := described["paths"].(map[string]any)
	for _, sheet := range catalog.All() {
		if paths["/api/v1/calc/"+sheet.Name] == nil {
			t.Errorf("%s is not described", sheet.Name)
		}
	}
	for address := range New(nil, standing, time.UTC, nil).addresses() {
		if address != "/metrics" && address != "/api/v1/openapi.json" && address != "/api/v1/calc/{name}" && paths[address] == nil {
			t.Errorf("%s is not described", address)
		}
	}
}

func TestMetricsEndAsOpenMetricsAsks(t *testing.T) {
	c := serveTest(t, "")
	if _, text := c.do("GET", "/metrics", ""); !strings.HasSuffix(text, "# EOF\n") || !strings.Contains(text, "aerosteep_journal_entries 0\n") {
		t.Error(text)
	}
}

func TestPasswordIsAsked(t *testing.T) {
	hash, err := argon2id.CreateHash("four words of ours", &argon2id.Params{Memory: 64, Iterations: 1, Parallelism: 1, SaltLength: 16, KeyLength: 16})
	if err != nil {
		t.Fatal(err)
	}
	c := serveTest(t, hash)
	c.want(401, "GET", "/api/v1/batches", "")
	c.want(200, "GET", "/healthz", "")
	if status, _ := c.do("GET", "/", "", "Accept", "text/html"); status != http.StatusSeeOther {
		t.Errorf("a page without session is answered %d", status)
	}
	form := func(password string) (int, string) {
		return c.do("POST", "/login", url.Values{"password": {password}}.Encode(), "Content-Type", "application/x-www-form-urlencoded")
	}
	if status, text := form("three words"); status != http.StatusForbidden || !strings.Contains(text, "aria-invalid") {
		t.Errorf("a wrong password is answered %d", status)
	}
	if status, _ := form("four words of ours"); status != http.StatusSeeOther {
		t.Errorf("the password is answered %d", status)
	}
	r, _ := http.NewRequest("GET", c.server.URL+"/api/v1/batches", nil)
	r.SetBasicAuth("anyone", "four words of ours")
	for range 2 {
		answer, err := http.DefaultClient.Do(r)
		if err != nil || answer.StatusCode != 200 {
			t.Fatalf("%v %v", answer, err)
		}
		answer.Body.Close()
	}
}

func TestServerStartsAndStops(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	address := make(chan string, 1)
	ended := make(chan error, 1)
	s := Server{Listen: "127.0.0.1:0", API: New(newHolding(t), standing, time.UTC, nil), Announce: func(a string) { address <- a }}
	go func() { ended <- s.Run(ctx) }()
	answer, err := http.Get(<-address + "/healthz")
	if err != nil || answer.StatusCode != 200 {
		t.Fatal(answer, err)
	}
	answer.Body.Close()
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(5 * time.Second):
		t.Error("it did not stop within 5 s")
	}
}

func TestAddressesThatAreRefused(t *testing.T) {
	for _, s := range []Server{
		{Listen: "8417"}, {Listen: "0.0.0.0:0"}, {Listen: ":0"}, {Listen: "tea.example:0"},
		{Listen: "127.0.0.1:0", Cert: "a.pem"}, {Listen: "127.0.0.1:0", Cert: "none.pem", Key: "none.key"},
	} {
		if err := s.Run(context.Background()); err == nil || len(err.Error()) == 0 {
			t.Errorf("%+v was accepted", s)
		}
	}
}

func FuzzCalc(f *testing.F) {
	f.Add("saturation", []byte(`{"temp":"19C","altitude":["1 m"]}`))
	f.Add("loads", []byte(`{"file":1e9,"lang":"es","units":[]}`))
	f.Fuzz(func(t *testing.T, name string, body []byte) {
		sheet, known := catalog.Find(name)
		if !known {
			return
		}
		given, reader, _, err := readFlags(sheet, body, typed)
		if err == nil {
			_, _ = answerOf(sheet, given, reader)
		}
	})
}
