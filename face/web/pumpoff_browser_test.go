//go:build browser

package web_test

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The pump-off test by keys alone: the clock starts, readings are typed, the
// line grows, the answer comes, and a thumb that presses twice keeps it once.
func TestThePumpOffTestRunsInThePage(t *testing.T) {
	server := demoServer(t)
	ctx := tab(t)
	must(t, ctx, chromedp.EmulateViewport(390, 844))
	must(t, ctx, chromedp.Navigate(server.URL+"/rig/pump-off?vessel=Drum&units=metric&lang=en"))
	ready := `new Promise(r => { const look = () => document.querySelector("#stopwatch .big-clock") && document.querySelectorAll("#stopwatch button").length > 5 ? r(true) : setTimeout(look, 50); look(); })`
	ask[bool](t, ctx, ready)
	// A brew that takes up 24 mg/L/h falls 0.1 mg/L in 15 s. The page's clock is
	// set forward instead of waited for.
	said := ask[string](t, ctx, `(async () => {
		let ahead = 0;
		const before = performance.now.bind(performance);
		performance.now = () => before() + ahead;
		const watch = document.getElementById("stopwatch");
		const press = text => [...watch.querySelectorAll("button")].find(b => b.textContent.trim().startsWith(text)).click();
		press("The air is off");
		for (let i = 0; i < 9; i++) {
			for (const key of (8 - i * 0.1).toFixed(2)) press(key);
			press("Take");
			ahead += 15000;
		}
		press("The air is on");
		return document.getElementById("f-file").value;
	})()`)
	if lines := strings.Split(said, "\n"); len(lines) != 10 || lines[0] != "seconds;air;do_mg_per_l" || !strings.HasPrefix(lines[9], "120;0;7.2") {
		t.Fatalf("the readings stand as %q", said)
	}
	if drawn := ask[bool](t, ctx, `document.querySelector("#stopwatch svg path.line").getAttribute("d").split("L").length === 9`); !drawn {
		t.Error("the line does not have nine readings")
	}
	// Worked out by the server, as where the program has no engine.
	ask[bool](t, ctx, `(() => { document.querySelector("#pumpoff button[type=submit]:not([name])").click(); return true; })()`)
	result := `new Promise(r => { let n = 0; const look = () => { const o = document.querySelector("[data-key=our_mg_per_l_h]"); o || ++n > 100 ? r(o ? o.textContent : "") : setTimeout(look, 100); }; look(); })`
	time.Sleep(time.Second) // for the page to be the new one
	if got := ask[string](t, ctx, result); !strings.HasPrefix(got, "24") {
		t.Errorf("the answer is %q, want an uptake of 24 mg/L/h", got)
	}
	ask[bool](t, ctx, `(() => { const keep = document.querySelector("#keeping button"); keep.click(); keep.click(); return true; })()`)
	for range 60 {
		if page, _ := fetch(t, server, "/rig/pump-off?vessel=Drum&units=metric"); strings.Contains(page, "takes up 24") {
			time.Sleep(500 * time.Millisecond) // a second one would arrive by now
			page, _ = fetch(t, server, "/rig/pump-off?vessel=Drum&units=metric")
			if n := strings.Count(page, "takes up 24"); n != 1 {
				t.Errorf("the test was kept %d times", n)
			}
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
	t.Error("the test was not kept")
}
