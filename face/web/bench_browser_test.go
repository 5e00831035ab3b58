//go:build browser

package web_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The bench counts by keys and by thumb without a round trip, takes back,
// keeps what was counted over a reload, and saves.
func TestTheBenchCountsInThePage(t *testing.T) {
	server := demoServer(t)
	ctx := tab(t)
	must(t, ctx, chromedp.EmulateViewport(390, 844))
	must(t, ctx, chromedp.Navigate(server.URL+"/batches/D-114/bench"))
	for flag, text := range map[string]string{"field-diameter": "0.45 mm", "coverslip-side": "22 mm", "drop-volume": "0.02 mL"} {
		ask[string](t, ctx, `document.getElementById("f-`+flag+`").value = "`+text+`"`)
	}
	ready := `new Promise(r => { const look = () => document.querySelector("#bench-said") && document.documentElement.classList.contains("scripted") ? setTimeout(() => r(true), 400) : setTimeout(look, 50); look(); })`
	ask[bool](t, ctx, ready)
	press := `const tap = k => document.querySelector("button[name=press][value='" + k + "']").click();`
	got := ask[string](t, ctx, `(() => {`+press+` for (const k of ["b", "b", "c", "|", "b", "n", "undo"]) tap(k);
		for (const key of ["s", "s", "Backspace"]) document.body.dispatchEvent(new KeyboardEvent("keydown", {key, bubbles: true}));
		return document.getElementById("f-tally").value; })()`)
	if got != "bbc|bs" {
		t.Errorf("the keys were counted as %q, want bbc|bs", got)
	}
	wait := `new Promise(r => { let n = 0; const look = () => { const text = document.querySelector("#estimates [data-group=b]").textContent; /per mL/.test(text) || ++n > 60 ? r(text) : setTimeout(look, 50); }; look(); })`
	if said := ask[string](t, ctx, wait); !strings.Contains(said, "2 counted in 1 field") {
		t.Errorf("the estimate says %q", said)
	}
	must(t, ctx, chromedp.Navigate(server.URL+"/batches/D-114/bench"))
	ask[bool](t, ctx, ready)
	if kept := ask[string](t, ctx, `document.getElementById("f-tally").value`); kept != "bbc|bs" {
		t.Errorf("after a reload the page has %q", kept)
	}
	ask[bool](t, ctx, `(() => {`+press+` tap("save"); return true; })()`)
	for range 50 {
		if body, _ := fetch(t, server, "/batches/D-114"); strings.Contains(body, "bacteria 2,1") {
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
	t.Error("the count is not in the record of the batch")
}

// The pages of recipes, counts and compost hold what every page promises.
func TestRecipePagesHoldTogether(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join("testdata", "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	server := demoServer(t)
	ctx := tab(t)
	for _, width := range []int64{320, 1280} {
		must(t, ctx, chromedp.EmulateViewport(width, 800))
		for _, look := range []string{"light", "night"} {
			for _, address := range []string{"/recipes", "/recipes/bacterial", "/recipes/Leafy", "/records/counts", "/records/compost", "/batches/D-114/bench", "/rig", "/batches", "/records"} {
				must(t, ctx, chromedp.Navigate(server.URL+address+"?look="+look+"&lang=es"))
				inspect(t, ctx, address+" "+look, string(axe))
			}
		}
	}
}
