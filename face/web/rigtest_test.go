package web_test

import (
	"aerosteep/record/holding"
	"fmt"
	"math"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"aerosteep/examples"
)

// pocketBrowser is a browser that remembers its cookies.
func pocketBrowser(t *testing.T) *http.Client {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	return &http.Client{Jar: jar}
}

// sendTest sends a form as a browser without script does, and follows.
func sendTest(t *testing.T, client *http.Client, server *httptest.Server, address string, fields url.Values) (int, string) {
	t.Helper()
	response, err := client.PostForm(server.URL+address, fields)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	var body strings.Builder
	if _, err := copyBody(&body, response); err != nil {
		t.Fatal(err)
	}
	return response.StatusCode, body.String()
}

func has(t *testing.T, body string, words ...string) {
	t.Helper()
	for _, w := range words {
		if !strings.Contains(body, w) {
			t.Errorf("the page lacks %q", w)
		}
	}
}

// The pump-off test of the contract's worked example, pasted without script,
// gives its uptake (16.071 mg/L/h, 15.604 to 16.539) and its kLa, is kept once,
// and is what the vessel rests on afterwards.
func TestAPumpOffTestIsWorkedOutAndKept(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	file, err := examples.ReadFile("examples/pump-off.csv")
	if err != nil {
		t.Fatal(err)
	}
	fields := url.Values{"vessel": {"Drum"}, "file": {string(file)}, "temp": {"20 C"}, "volume": {"150 L"}}
	status, body := sendTest(t, client, server, "/rig/pump-off", fields)
	if status != http.StatusOK {
		t.Fatalf("answers %d", status)
	}
	has(t, body, "16.1\u00a0mg/L/h", "15.6", "16.5", `data-key="kla_per_h"`, `name="keep"`)
	fields["keep"], fields["id"], fields["at"] = []string{"1"}, []string{"019e1e5a-0000-7000-8000-0000000000b2"}, []string{"2026-05-12T22:40:00Z"}
	for range 2 {
		if status, body = sendTest(t, client, server, "/rig/pump-off", fields); status != http.StatusOK {
			_, wrong, _ := strings.Cut(body, `id="mend">`)
			t.Fatalf("keeping answers %d: %s", status, wrong[:min(len(wrong), 400)])
		}
	}
	has(t, body, "Kept.", "kLa 15.1")
	rig, _ := fetch(t, server, "/rig?units=metric")
	has(t, rig, "measured: kLa 15.1", "takes up 16.1", "with 150")
	if n := strings.Count(rig, "takes up 16.1"); n != 1 {
		t.Errorf("a test sent twice stands %d times", n)
	}
}

// Readings as somebody types them: bare lines, a decimal comma, the second at
// which the air came back.
func TestReadingsAreTakenAsTyped(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	for typed, want := range map[string]int{
		"0 8,0\n30 7,8\n60 7,6\n90 7,4\n120 7,2":    http.StatusOK,
		"0,8.0\n30,7.8\n60,7.6\n90,7.4\n120,7.2":    http.StatusOK,
		"0; 8.0\n30; 7.8\n60; 7.6\n90; 7.4\n\n120;": http.StatusUnprocessableEntity,
		"0 8.0\n30 7.8":  http.StatusUnprocessableEntity, // too few
		"0 80\n30 78":    http.StatusUnprocessableEntity, // per cent, not mg/L
		"seconds,do\n0,": http.StatusUnprocessableEntity,
		"":               http.StatusUnprocessableEntity,
	} {
		status, body := sendTest(t, client, server, "/rig/pump-off", url.Values{"vessel": {"Drum"}, "file": {typed}})
		if status != want {
			t.Errorf("%q answers %d, want %d", typed, status, want)
		}
		if status == http.StatusOK && !strings.Contains(body, "up 24\u00a0mg/L/h") {
			t.Errorf("%q does not give 24 mg/L/h", typed)
		}
	}
	if status, _ := sendTest(t, client, server, "/rig/pump-off", url.Values{"vessel": {"Bathtub"}}); status != http.StatusNotFound {
		t.Errorf("a vessel that nobody has answers %d", status)
	}
}

// A two-litre jug filled in 14 s at 0.4 m gives about 9 L/min by volume over
// time (2 L / 14 s = 8.57 L/min as caught); it is kept for its pump.
func TestAJugTestIsKeptForItsPump(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	fields := url.Values{"pump": {"Pail pump"}, "jug": {"2 L"}, "filled": {"14 s"}, "depth": {"0.4 m"}, "temp": {"22 C"}}
	status, body := sendTest(t, client, server, "/rig/jug", fields)
	if status != http.StatusOK || !strings.Contains(body, `data-key="airflow_l_per_min"`) {
		t.Fatalf("answers %d", status)
	}
	fields.Set("keep", "1")
	if status, body = sendTest(t, client, server, "/rig/jug", fields); status != http.StatusOK {
		t.Fatalf("keeping answers %d", status)
	}
	has(t, body, "Kept.", "of free air")
	if rig, _ := fetch(t, server, "/rig"); !strings.Contains(rig, "of free air measured by jug") {
		t.Error("the rig does not show the test of its pump")
	}
	fields.Set("filled", "0.1 s")
	if status, _ = sendTest(t, client, server, "/rig/jug", fields); status != http.StatusUnprocessableEntity {
		t.Errorf("a jug filled in 0.1 s answers %d", status)
	}
}

// knapsackOf is the name of the knapsack of a holding.
func knapsackOf(t *testing.T, h *holding.Holding) string {
	t.Helper()
	file, err := h.File(0)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range file.Applicators {
		if a.Kind == "knapsack" {
			return a.Name
		}
	}
	t.Fatal("no knapsack")
	return ""
}

// A litre on 5 x 2 m is 0.1 L/m² (arithmetic), and the calibration stands with
// the applicator.
func TestCalibrationIsKept(t *testing.T) {
	server, h := groundServer(t)
	name := knapsackOf(t, h)
	page := server.URL + "/rig/calibrate"
	form := url.Values{"applicator": {name}, "caught": {"1 L"}, "test-length": {"5 m"}, "test-width": {"2 m"}}
	if _, body := sent(t, page, form); !strings.Contains(body, `data-key="mix_rate_l_per_ha"`) {
		t.Fatal("the worksheet does not answer")
	}
	form.Set("keep", "1")
	if status, _ := sent(t, page, form); status != http.StatusOK {
		t.Fatal(status)
	}
	tests := h.TestsOf("applicator", name)
	if len(tests) != 1 || tests[0].MixRate == nil || math.Abs(*tests[0].MixRate-0.1) > 1e-9 {
		t.Fatalf("%+v", tests)
	}
	if body, _ := fetch(t, server, "/rig"); !strings.Contains(body, "puts on") {
		t.Error("the rig does not tell of it")
	}
	for _, wrong := range []url.Values{{"applicator": {name}}, {"applicator": {name}, "caught": {"-1 L"}, "test-length": {"5 m"}, "test-width": {"2 m"}}} {
		if status, _ := sent(t, page, wrong); status != http.StatusUnprocessableEntity {
			t.Errorf("%v answers %d", wrong, status)
		}
	}
}

// One step at a time: what was told comes along, a wrong value stays at its
// step, and at the end the odd one of the three ways is named. 5940 x 0.4 /
// (6 x 20) = 19.8 gal/acre (Guide G1270A); 20 fl oz on 340.3125 sq ft are 20
// (AEX-520).
func TestCalibrationGoesStepByStep(t *testing.T) {
	server, h := groundServer(t)
	page := server.URL + "/rig/calibrate"
	form := url.Values{"applicator": {knapsackOf(t, h)}, "step": {"2"}, "caught": {"20 fl oz"}, "test-length": {"20 ft"}, "test-width": {"17.015625 ft"}}
	_, body := sent(t, page, form)
	has(t, body, "Step 2 of 3", "Second way", `<input type="hidden" name="caught" value="20 fl oz">`)
	form.Set("test-width", "wide")
	if status, body := sent(t, page, form); status != http.StatusUnprocessableEntity || !strings.Contains(body, "Step 1 of 3") {
		t.Errorf("a wrong side answers %d", status)
	}
	for key, value := range map[string]string{"step": "3", "test-width": "17.015625 ft", "nozzle-flow": "0.4 gal/min", "course": "88 ft", "course-time": "10 s", "spacing": "20 in"} {
		form.Set(key, value)
	}
	_, body = sent(t, page, form)
	see(t, body, "Step 3 of 3", "Walk or drive 204 ft")
	form.Set("step", "4")
	form.Set("course-caught", "40 fl oz")
	_, body = sent(t, page, form)
	has(t, body, "One way is out: catch over the 1/128 acre course", "What it came to")
}

// A knapsack that puts on half of what a bed is to have says so before the first
// load, with the ways back; without a calibration the stop asks for one.
func TestTheRunUsesTheCalibration(t *testing.T) {
	server, h := groundServer(t)
	name := knapsackOf(t, h)
	stop := func() string { page, _ := fetch(t, server, "/run/D-114?want=0"); return page }
	file, _ := h.File(0)
	want := file.Wants[0]
	bed, _ := file.Bed(want.Bed)
	tea, _ := want.TeaOn(bed)
	rate := tea.Litres() / want.Share().Fraction() / bed.Area.SquareMetres()
	if used := want.Applicator; used != name {
		t.Fatalf("the first want uses %q", used)
	}
	has(t, stop(), "Not calibrated", "/rig/calibrate?applicator=")
	form := url.Values{"applicator": {name}, "caught": {fmt.Sprintf("%g L", rate*5)}, "test-length": {"5 m"}, "test-width": {"2 m"}, "keep": {"1"}}
	if status, _ := sent(t, server.URL+"/rig/calibrate", form); status != http.StatusOK {
		t.Fatal(status)
	}
	has(t, stop(), "Go at 50 % of the pace", "or at 400 % of its pressure")
	form.Set("caught", fmt.Sprintf("%g L", rate*10))
	sent(t, server.URL+"/rig/calibrate", form)
	has(t, stop(), "on dose for this bed")
}
