//go:build browser

package web_test

import (
	"context"
	"net/http"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// order gives the browser an order.
func order[P, R any](t *testing.T, ctx context.Context, what cdp.Command[P, R], params P) {
	t.Helper()
	if _, err := chromedp.Call(ctx, what, params); err != nil {
		t.Fatal(err)
	}
}

// On a slow line (1.6 Mbit/s, 150 ms, a processor at a quarter of its speed) no
// page moves under the thumb while it comes: the sum of layout shifts stays under
// 0.01. When the first words stand is told, not judged: it is a time.
func TestPagesStandStillOnASlowLine(t *testing.T) {
	v := newVillage(t, demoHolding(t))
	warm, err := http.Get(v.at("/")) // as the server does for itself at its start
	if err != nil {
		t.Fatal(err)
	}
	warm.Body.Close()
	for _, path := range []string{"/", "/batches/D-114", "/batches/D-114/log", "/plan", "/ground", "/rig", "/records", "/school"} {
		ctx, closeTab := quiet(t)
		must(t, ctx, chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile))
		order(t, ctx, network.Enable, network.EnableParams{})
		order(t, ctx, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: true})
		order(t, ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
			MatchedNetworkConditions: []*network.Conditions{{Latency: 150, DownloadThroughput: 1.6e6 / 8, UploadThroughput: 750e3 / 8}},
		})
		order(t, ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4})
		must(t, ctx, chromedp.Navigate(v.at(path)))
		until(t, ctx, path+" is painted", `performance.getEntriesByName("first-contentful-paint").length > 0`)
		shift := ask[float64](t, ctx, `new Promise((done) => { let sum = 0; new PerformanceObserver((l) => { for (const e of l.getEntries()) sum += e.value; }).observe({type: "layout-shift", buffered: true}); setTimeout(() => done(sum), 1500); })`)
		first := ask[float64](t, ctx, `performance.getEntriesByName("first-contentful-paint")[0].startTime`)
		t.Logf("%s: first words after %.0f ms, shift %.4f", path, first, shift)
		if shift > 0.01 {
			t.Errorf("%s moves by %.3f while it comes", path, shift)
		}
		closeTab()
	}
}
