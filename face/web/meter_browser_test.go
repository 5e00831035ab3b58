//go:build browser

package web_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// The page of the meter, before and after a check, holds what every page
// promises.
func TestTheMeterPageHoldsTogether(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join("testdata", "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	server := demoServer(t)
	ctx := tab(t)
	must(t, ctx, chromedp.EmulateViewport(320, 800))
	for _, look := range []string{"?lang=en&look=light", "?lang=es&look=night"} {
		must(t, ctx, chromedp.Navigate(server.URL+"/rig/meter"+look))
		inspect(t, ctx, "the meter "+look, string(axe))
	}
	ask[bool](t, ctx, `(() => { document.getElementById("f-temp").value = "20 C"; document.getElementById("f-reading").value = "8.7 mg/L"; document.querySelector("main form").requestSubmit(); return true; })()`)
	time.Sleep(time.Second) // for the answer's page to come
	if verdict := ask[string](t, ctx, `document.querySelector("[data-key=verdict]").textContent`); verdict == "" {
		t.Error("the check has no verdict")
	}
	inspect(t, ctx, "a meter that was checked", string(axe))
	must(t, ctx, chromedp.Navigate(server.URL+"/batches/D-114"))
	inspect(t, ctx, "a batch without a check of its meter", string(axe))
}
