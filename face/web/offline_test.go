//go:build browser

package web_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"net"
	"net/http"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"aerosteep/face/web"
	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// village is a server that loses its line and gets it back at the same address.
type village struct {
	t       *testing.T
	address string
	handler http.Handler
	server  *http.Server
}

func newVillage(t *testing.T, h *holding.Holding) *village {
	t.Helper()
	mux := http.NewServeMux()
	mux.Handle("/", web.New(h, func() time.Time { return demoHour }, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	mux.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte("ok")) })
	v := &village{t: t, address: "127.0.0.1:0", handler: mux}
	v.up()
	t.Cleanup(v.down)
	return v
}

func (v *village) up() {
	v.t.Helper()
	line, err := net.Listen("tcp", v.address)
	if err != nil {
		v.t.Fatal(err)
	}
	v.address = line.Addr().String()
	v.server = &http.Server{Handler: v.handler, ReadHeaderTimeout: 10 * time.Second}
	go func(s *http.Server) {
		if err := s.Serve(line); !errors.Is(err, http.ErrServerClosed) {
			v.t.Error(err)
		}
	}(v.server)
}

func (v *village) down() { _ = v.server.Close() }

// at is an address by the name under which browsers trust the machine itself.
func (v *village) at(path string) string {
	_, port, _ := net.SplitHostPort(v.address)
	return "http://localhost:" + port + path
}

// quiet opens a tab in which requests may fail, as they do without signal.
func quiet(t *testing.T) (context.Context, func()) {
	t.Helper()
	ctx, closeTab := chromedp.NewContext(browser)
	ctx, stop := context.WithTimeout(ctx, 4*time.Minute)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	return ctx, func() { closeTab(); stop() }
}

// until asks the page again and again whether something holds.
func until(t *testing.T, ctx context.Context, what, condition string) {
	t.Helper()
	for range 150 {
		if ask[bool](t, ctx, `(async () => Boolean(`+condition+`))().catch(() => false)`) {
			return
		}
		time.Sleep(200 * time.Millisecond)
	}
	t.Fatalf("%s: not within 30 s; the page says %.300q", what, ask[string](t, ctx, `document.body.innerText`))
}

// asked are the worksheets that a phone must answer alone, with the fields of
// one question each.
var asked = map[string]map[string]string{
	"saturation":   {"temp": "19C", "altitude": "640 m"},
	"dilute":       {"tea": "10 L", "water": "80 L"},
	"depletion":    {"do": "7.5 mg/L", "our": "20 mg/L/h", "limit": "2 mg/L"},
	"loads":        {"area": "1200 sq ft", "tea-rate": "20 gal/ac", "ratio": "1:8", "tank": "4"}, // a bare 4: the unit in the box
	"dechlorinate": {"volume": "150 L", "chloramine": "2 mg/L"},
}

// answered is what a page says of a worksheet: its sentence and each figure.
const answered = `document.querySelector("output.result .say")?.textContent + "; " + [...document.querySelectorAll(".figures dd")].map(e => e.dataset.key + "=" + e.textContent).join("; ")`

// TestThePhoneWorksWithoutTheServer walks through a morning without signal:
// what was seen opens, what was not says so, worksheets answer with the
// server's digits, and three readings are handed over once each, by themselves,
// after the tab was closed.
func TestThePhoneWorksWithoutTheServer(t *testing.T) {
	h := demoHolding(t)
	v := newVillage(t, h)
	ctx, closeTab := quiet(t)
	must(t, ctx, chromedp.Navigate(v.at("/batches/D-114?lang=en&units=us")))
	until(t, ctx, "the worker brings what the field needs",
		`document.documentElement.dataset.engine && await caches.match(document.documentElement.dataset.engine, {ignoreVary: true})`)
	must(t, ctx, chromedp.Navigate(v.at("/batches/D-114/log")))
	until(t, ctx, "the page for readings is kept", `await caches.match(location.href, {ignoreVary: true})`)
	answers := map[string]string{}
	for name, fields := range asked {
		must(t, ctx, chromedp.Navigate(v.at("/worksheets/"+name)))
		fillIn(t, ctx, "form[data-sheet]", fields)
		until(t, ctx, name+" is answered by the server", `document.querySelector("form[data-sheet]").dataset.asked !== "" && document.querySelector("output .say")`)
		answers[name] = ask[string](t, ctx, answered)
	}
	stood, err := h.Twin(context.Background(), "D-114", demoHour)
	if err != nil {
		t.Fatal(err)
	}
	before := len(readings(t, h))

	v.down()
	must(t, ctx, chromedp.Navigate(v.at("/batches/D-114")))
	until(t, ctx, "a page that was seen opens", `document.querySelector("h1").textContent.includes("D-114")`)
	must(t, ctx, chromedp.Navigate(v.at("/batches/C-031")))
	until(t, ctx, "a page that was never seen says so", `document.querySelector(".empty") && !document.body.innerText.includes("C-031")`)
	for name, fields := range asked {
		must(t, ctx, chromedp.Navigate(v.at("/worksheets/"+name)))
		fillIn(t, ctx, "form[data-sheet]", fields)
		until(t, ctx, name+" is answered in the page", `document.querySelector("output .say")`)
		if got := ask[string](t, ctx, answered); got != answers[name] {
			t.Errorf("%s answers %q in the page, the server %q", name, got, answers[name])
		}
	}
	for n, do := range []string{"7.71", "7.72", "7.73"} {
		must(t, ctx, chromedp.Navigate(v.at("/batches/D-114/log")))
		until(t, ctx, "the keys stand", `document.querySelector("#keypad .keys")`)
		fillIn(t, ctx, "form#log", map[string]string{"do": do})
		until(t, ctx, "the header counts", fmt.Sprintf(`location.pathname === "/batches/D-114" && document.getElementById("signal").textContent.includes("%d")`, n+1))
	}
	until(t, ctx, "the forecast moves on the phone", `document.querySelector("[data-carried]").dataset.minDo`)
	moved := ask[string](t, ctx, `document.querySelector("[data-carried]").dataset.minDo`)
	closeTab()

	v.up()
	ctx, closeTab = quiet(t)
	defer closeTab()
	must(t, ctx, chromedp.Navigate(v.at("/")))
	for range 100 {
		if len(readings(t, h)) >= before+3 {
			break
		}
		time.Sleep(200 * time.Millisecond)
	}
	time.Sleep(6 * time.Second) // past the next attempt, which must not send again
	kept := readings(t, h)[before:]
	if len(kept) != 3 {
		t.Fatalf("%d readings arrived, want 3", len(kept))
	}
	for n, e := range kept {
		if want := fmt.Sprintf("7.7%d", n+1); !strings.Contains(string(e.Body), want) {
			t.Errorf("reading %d is %s, want %s mg/L", n+1, e.Body, want)
		}
		if off := e.Time().Sub(demoHour); off < -time.Minute || off > 5*time.Minute {
			t.Errorf("reading %d is dated %s, the clock of the house was at %s", n+1, e.At, demoHour)
		}
	}
	phone, err := strconv.ParseFloat(moved, 64)
	if phone == stood.Forecast.MinDO.Median {
		t.Errorf("the lowest stays at %g though three readings wait", phone)
	}
	twin, trouble := h.Twin(context.Background(), "D-114", demoHour)
	if err != nil || trouble != nil || twin.Forecast.MinDO == nil || math.Abs(twin.Forecast.MinDO.Median-phone) > 0.3 {
		t.Errorf("the phone said lowest %s, the server says %+v (%v, %v)", moved, twin.Forecast.MinDO, err, trouble)
	}
	until(t, ctx, "nothing waits any more", `!document.getElementById("signal").textContent.includes("3")`)
}

// TestThePhonePlansWithoutTheServer: the plan page was seen once; with the server
// gone the phone plans what was wanted then, batch by batch and step by step as
// the server would, and says what is wrong with a job file that was typed.
func TestThePhonePlansWithoutTheServer(t *testing.T) {
	h := demoHolding(t)
	v := newVillage(t, h)
	ctx, closeTab := quiet(t)
	defer closeTab()
	must(t, ctx, chromedp.Navigate(v.at("/plan?lang=en&units=us")))
	until(t, ctx, "the worker brings what the field needs",
		`document.documentElement.dataset.engine && await caches.match(document.documentElement.dataset.engine, {ignoreVary: true})`)
	must(t, ctx, chromedp.Navigate(v.at("/plan")))
	until(t, ctx, "what is wanted is kept", `await caches.match("/plan/wanted", {ignoreVary: true})`)

	v.down()
	must(t, ctx, chromedp.Navigate(v.at("/plan")))
	const here = `document.querySelector("[data-here]")`
	until(t, ctx, "the page opens", here+` && !`+here+`.hidden`)
	ask[bool](t, ctx, `(`+here+`.closest("details").open = true, `+here+`.click(), true)`)
	until(t, ctx, "the phone plans", `document.querySelectorAll("#planned-here li").length > 0`)
	text, problems := jobfile.Compose(h.Parts())
	file, more := jobfile.Read(text, "job.toml", jobfile.Whole)
	if err := append(problems, more...).OrNil(); err != nil {
		t.Fatal(err)
	}
	made := plan.Make(plan.Input{File: file, Now: demoHour, Reader: wording.Reader{Language: wording.English, Units: wording.US}})
	steps := 0
	shown := strings.ReplaceAll(ask[string](t, ctx, `document.getElementById("planned-here").innerText`), "\u00a0", " ")
	for _, b := range made.Batches {
		steps += len(b.Steps)
		if !strings.Contains(shown, b.ID) {
			t.Errorf("the phone does not plan %s", b.ID)
		}
	}
	if got := ask[int](t, ctx, `document.querySelectorAll("#planned-here li").length`); got != steps {
		t.Errorf("%d steps on the phone, %d by the server", got, steps)
	}
	ask[bool](t, ctx, `(document.getElementById("f-job").value = "[[bed]]\nnaem = 'K'", `+here+`.click(), true)`)
	until(t, ctx, "a slip is told with its line", `document.getElementById("planned-here").innerText.includes("Line 2")`)
}

func readings(t *testing.T, h *holding.Holding) []journal.Entry {
	t.Helper()
	found, err := h.Journal().List(context.Background(), journal.Wanted{})
	if err != nil {
		t.Fatal(err)
	}
	var all []journal.Entry
	for _, k := range found {
		if k.Kind == "reading" && k.Subject == "batch:D-114" {
			all = append(all, k.Entry)
		}
	}
	return all
}

// fillIn types into a form and sends it.
func fillIn(t *testing.T, ctx context.Context, form string, fields map[string]string) {
	t.Helper()
	until(t, ctx, "the scripts stand", `document.documentElement.classList.contains("scripted")`)
	time.Sleep(300 * time.Millisecond) // until the form's own script came
	for name, value := range fields {
		ask[string](t, ctx, fmt.Sprintf(`document.querySelector(%q).elements[%q].value = %q`, form, name, value))
	}
	ask[bool](t, ctx, fmt.Sprintf(`(document.querySelector(%q).requestSubmit(), true)`, form))
}
