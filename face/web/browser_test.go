//go:build browser

package web_test

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// One browser for all tests of this file, a tab for each.
var browser context.Context

func TestMain(m *testing.M) {
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-sync", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	browser, _ = chromedp.NewContext(ctx)
	if err := chromedp.Do(browser); err != nil {
		fmt.Fprintln(os.Stderr, "the browser does not start:", err)
		os.Exit(1)
	}
	status := m.Run()
	stop()
	os.Exit(status)
}

// tab opens a tab that closes with the test and fails it on a console error.
func tab(t *testing.T) context.Context {
	t.Helper()
	ctx, closeTab := chromedp.NewContext(browser)
	ctx, stop := context.WithTimeout(ctx, 15*time.Minute)
	t.Cleanup(func() { stop(); closeTab() })
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	messages := chromedp.Console(ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.Type == "error" || m.Type == chromedp.ConsoleException {
				t.Errorf("console: %s", m.Text)
			}
		}
	}()
	return ctx
}

// sizes are the phone and the desk.
var sizes = map[string][2]int64{"phone": {390, 844}, "desk": {1280, 800}}

// views are the ways in which every page is looked at: each size, look and
// language with each other kind at least once. The tokens' contrast in every
// look is held by a test of its own.
var views = []struct{ size, look, language string }{
	{"phone", "light", "en"}, {"phone", "dark", "en"}, {"phone", "night", "en"}, {"desk", "light", "es"}, {"desk", "night", "en"},
}

// TestPagesHoldTogether looks at every page at both sizes in every look: no
// console error, nothing sideways, axe finds nothing, targets large enough.
func TestPagesHoldTogether(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join("testdata", "axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	server := demoServer(t)
	for _, v := range views {
		t.Run(strings.Join([]string{v.size, v.look, v.language}, "-"), func(t *testing.T) {
			ctx := tab(t)
			must(t, ctx, chromedp.EmulateViewport(sizes[v.size][0], sizes[v.size][1]))
			must(t, ctx, chromedp.Navigate(server.URL+"/worksheets?look="+v.look+"&lang="+v.language))
			for _, address := range addresses(t, server, v.look == "light") {
				must(t, ctx, chromedp.Navigate(server.URL+address))
				inspect(t, ctx, address, string(axe))
			}
		})
	}
}

func must(t *testing.T, ctx context.Context, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(ctx, steps...); err != nil {
		t.Fatal(err)
	}
}

func ask[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatalf("%v\n%.200s", err, script)
	}
	return value
}

func inspect(t *testing.T, ctx context.Context, address, axe string) {
	t.Helper()
	if wide := ask[int](t, ctx, `document.documentElement.scrollWidth - document.documentElement.clientWidth`); wide > 0 {
		t.Errorf("%s: %d px sideways", address, wide)
	}
	if small := ask[string](t, ctx, smallTargets); small != "" {
		t.Errorf("%s: targets under 48 px: %s", address, small)
	}
	if styled := ask[int](t, ctx, `document.querySelectorAll("[style]:not(html)").length && [...document.querySelectorAll("[style]")].filter(e => e.getAttribute("style") && !window.styledByScript).length`); styled > 0 {
		t.Errorf("%s: %d style attributes, which the content policy blocks", address, styled)
	}
	ask[bool](t, ctx, axe+"; true")
	found := ask[string](t, ctx, `axe.run({runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then(r => JSON.stringify(r.violations.map(v => ({id: v.id, help: v.help, nodes: v.nodes.map(n => n.html.slice(0, 160))}))))`)
	var violations []struct {
		ID, Help string
		Nodes    []string
	}
	if err := json.Unmarshal([]byte(found), &violations); err != nil {
		t.Fatal(err)
	}
	for _, v := range violations {
		t.Errorf("%s: axe %s: %s: %s", address, v.ID, v.Help, strings.Join(v.Nodes, " | "))
	}
}

// smallTargets names what can be pressed and is under 48 px, apart from links
// in running text and controls whose row is the target.
const smallTargets = `[...document.querySelectorAll("a, button, input, select, textarea, summary")].filter(e => {
	if (e.closest(".unseen, .skip") || e.disabled || e.type === "hidden") return false;
	if (e.matches("p a:not(.act):not(.bare-button), li a:not(.row):not(.act), td a, small a, dd a") && getComputedStyle(e).display === "inline") return false;
	if (e.matches("input[type=radio], input[type=checkbox]") && e.closest("label")) e = e.closest("label");
	const r = e.getBoundingClientRect();
	return r.width > 0 && (r.height < 47.5 || r.width < 47.5);
}).map(e => e.outerHTML.slice(0, 90) + " " + Math.round(e.getBoundingClientRect().width) + "x" + Math.round(e.getBoundingClientRect().height)).join("; ")`

// addresses follows every link from Today to the pages of the house. The
// worksheets are all made by one page: three of them stand for the others
// where only the look changes.
func addresses(t *testing.T, server *httptest.Server, all bool) []string {
	t.Helper()
	found := crawl(t, server, "/")
	if all {
		return found
	}
	sheets := 0
	return slices.DeleteFunc(found, func(address string) bool {
		if strings.HasPrefix(address, "/worksheets/") {
			sheets++
		}
		return strings.HasPrefix(address, "/worksheets/") && sheets > 3
	})
}
