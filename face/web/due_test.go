package web_test

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/worksheet"
)

// A bed with a rhythm is overdue by as many days as it is, and one touch puts
// its want into the plan, as it was wanted last.
func TestDueBedsBecomeWants(t *testing.T) {
	server, h := groundServer(t)
	text := `[holding]
zone = "America/Los_Angeles"
[[bed]]
name = "Herbs"
area = "20 m2"
every = "14 d"
[[want]]
bed = "Herbs"
method = "drench"
at = 2026-05-20T07:00:00-07:00
tea_rate = "0.5 L/m2"
`
	file, problems := jobfile.Read([]byte(text), "herbs.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(context.Background(), file, holding.Made{At: juneMorning, By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	form, _ := holding.FormOf("applied")
	e, err := h.Compose(form, worksheet.Values{"bed": {"Herbs"}, "tea": {"10 L"}}, holding.Made{At: juneMorning.AddDate(0, 0, -17)})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := h.Store(context.Background(), e); err != nil {
		t.Fatal(err)
	}
	body, _ := fetch(t, server, "/ground")
	if !strings.Contains(strings.ReplaceAll(body, "\u00a0", " "), "Overdue by 3 days") {
		t.Fatal("17 days after the last tea, every 14 days, is not overdue by 3")
	}
	if status, _ := sent(t, server.URL+"/ground", url.Values{}); status != http.StatusOK {
		t.Fatal(status)
	}
	now, err := h.File(jobfile.Whole)
	if err != nil {
		t.Fatal(err)
	}
	made := now.Wants[len(now.Wants)-1]
	for _, w := range now.Wants {
		if w.Bed == "Herbs" && w.At.After(juneMorning) {
			made = w
		}
	}
	if made.Bed != "Herbs" || made.TeaRate == nil || made.At.Before(juneMorning.Add(36*time.Hour)) {
		t.Errorf("%+v", made)
	}
	if body, _ := fetch(t, server, "/ground"); !strings.Contains(body, "In the plan.") || strings.Contains(body, "into the plan</button>") {
		t.Error("what is in the plan is offered again")
	}
}
