package hygiene_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/internal/published"
	"aerosteep/job/hygiene"
	"aerosteep/quantity"
	"aerosteep/science/counting"
)

func heapOf(r published.Row) hygiene.Heap {
	lowest, highest := quantity.Celsius(r.Float("lowest_temperature_C")), quantity.Celsius(r.Float("highest_temperature_C"))
	days, turns, cn := r.Float("days_at_temperature"), int(r.Float("turns")), r.Float("initial_C_to_N")
	consecutive, cured, mixed := r.Text("days_consecutive") == "yes", r.Text("cured") == "yes", true
	h := hygiene.Heap{Method: "other", Lowest: &lowest, Highest: &highest, Days: &days, Consecutive: &consecutive, Turns: &turns, CarbonNitrogen: &cn, AllHeated: &mixed}
	if r.Has("cured") {
		h.Cured = &cured
	}
	switch method := r.Text("method"); {
	case method == "in-vessel", method == "windrow":
		h.Method = method
	case strings.HasPrefix(method, "static"):
		h.Method = "static-pile"
	case strings.HasPrefix(method, "turned"):
		h.Method = "windrow"
	}
	return h
}

// TestProcessesMatchPublished: NOP, NOP 5021, FDA and EU, as each row cites.
func TestProcessesMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "compost-process.csv") {
		t.Run(row.Text("case"), func(t *testing.T) {
			v := hygiene.JudgeProcess(heapOf(row))
			got := map[string]hygiene.ProcessVerdict{"NOP": v.NOP, "NOP 5021": v.NOP5021, "FDA 112.54(b)": v.FDA, "EU CMC 3": v.EU}[row.Text("rule_set")]
			want := hygiene.MeetsYes
			if strings.HasPrefix(row.Text("expected"), "does not meet") {
				want = hygiene.MeetsNo
			}
			if got.Meets != want {
				t.Errorf("%s (%v %v), published %q\n  source: %s", got.Meets, got.Lacking, got.Missing, row.Text("expected"), row.Text("source"))
			}
		})
	}
}

func TestProcessUnknownMethod(t *testing.T) {
	cold, days := quantity.Celsius(50), 2.0
	v := hygiene.JudgeProcess(hygiene.Heap{Lowest: &cold, Days: &days})
	if v.NOP.Meets != hygiene.MeetsNo || strings.Join(v.NOP.Lacking, " ") != "temperature-low days" {
		t.Errorf("too cold and too short by any method: %+v", v.NOP)
	}
	if v := hygiene.JudgeProcess(hygiene.Heap{}); v.FDA.Meets != hygiene.MeetsAsk || len(v.FDA.Missing) == 0 || v.EU.Meets != hygiene.MeetsAsk {
		t.Errorf("nothing known: %+v", v)
	}
	if v := hygiene.JudgeProcess(hygiene.Heap{Method: "other"}); v.NOP.Meets != hygiene.MeetsNo || strings.Join(v.NOP.Lacking, "") != "method" {
		t.Errorf("another method: %+v", v.NOP)
	}
}

// TestPretestsMatchPublished: the compost tea recommendation of 2004.
func TestPretestsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "organic-pretest.csv") {
		findings, err := counting.ParseFindings("", strings.ReplaceAll(row.Text("batch_counts_CFU_per_100_mL"), " ", ","))
		if err != nil {
			t.Fatal(err)
		}
		got := hygiene.JudgePretest(findings, nil)
		if row.Text("indicator") == "enterococci" {
			got = hygiene.JudgePretest(nil, findings)
		}
		want := map[string]hygiene.PretestVerdict{"pass": "passed", "fail": "failed", "fail: fewer than two batches": "too-few"}[row.Text("expected")]
		if got.Verdict != want || got.Batches != len(findings) {
			t.Errorf("%s: %s of %d batches, published %q", row.Text("case"), got.Verdict, got.Batches, row.Text("expected"))
		}
	}
	above, _ := counting.ParseFindings("", "1,>100")
	if got := hygiene.JudgePretest(above, nil); got.Verdict != hygiene.PretestUndecided {
		t.Errorf("a lower bound under the limit: %s", got.Verdict)
	}
}

// TestRetentionMatchesPublished: 21 CFR 112.164 and 7 CFR 205.103.
func TestRetentionMatchesPublished(t *testing.T) {
	for _, row := range published.Where(published.Rows(t, "intervals.csv"), "quantity", "keep_record_until") {
		made, err := time.Parse(time.DateOnly, row.Text("date"))
		if err != nil {
			t.Fatal(err)
		}
		k := hygiene.KeepRecord(made, nil, nil)
		got := k.Produce
		if row.Float("days_or_years") == 5 {
			got = k.Organic
		}
		if got.Format(time.DateOnly) != row.Text("expected") {
			t.Errorf("%s: %s, published %s", row.Text("case"), got.Format(time.DateOnly), row.Text("expected"))
		}
	}
}

func TestLastUseMovesOnlyTheProduceDate(t *testing.T) {
	made, used, today := time.Date(2026, 6, 15, 0, 0, 0, 0, time.UTC), time.Date(2030, 1, 1, 0, 0, 0, 0, time.UTC), time.Date(2032, 1, 1, 0, 0, 0, 0, time.UTC)
	k := hygiene.KeepRecord(made, &used, &today)
	if day(&k.Produce) != "2032-01-01" || day(&k.Organic) != "2031-06-15" || day(&k.Until) != "2032-01-01" || *k.DaysLeft != 0 || *k.MayBeDiscarded {
		t.Errorf("%+v", k)
	}
	if early := made.AddDate(-1, 0, 0); !hygiene.KeepRecord(made, &early, nil).Produce.Equal(made.AddDate(2, 0, 0)) {
		t.Error("a last use before the record was made moved the date back")
	}
}

// TestDilutionsMatchPublished: C1 V1 = C2 V2.
func TestDilutionsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "sanitizer-dilution.csv") {
		stock := hygiene.Strength(quantity.Percent(row.Float("stock_percent_m_per_v")), quantity.GramsPerMillilitre(1))
		d, err := hygiene.Dilute(quantity.Litres(row.Float("final_volume_L")), quantity.MilligramsPerLitre(row.Float("target_mg_per_L")), stock)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(d.Stock.Millilitres(), "mL")
	}
	if _, err := hygiene.Dilute(quantity.Litres(1), 200, 200); err == nil {
		t.Error("a target as strong as the stock was taken")
	}
}

// TestPlansMatchPublished: Regulation (EU) 2019/1009, Annex I.
func TestPlansMatchPublished(t *testing.T) {
	plan := hygiene.Plan{Samples: 5, Allowed: 5, Lower: 0, Upper: 1000}
	for _, row := range published.Rows(t, "sampling-plan.csv") {
		findings, err := counting.ParseFindings("", strings.ReplaceAll(row.Text("E_coli_CFU_per_g"), " ", ","))
		if err != nil {
			t.Fatal(err)
		}
		var counts []float64
		for _, f := range findings {
			counts = append(counts, f.Value)
		}
		words := strings.Fields(row.Text("Salmonella_positive_samples"))
		s := hygiene.Salmonella{Positive: int(words[0][0] - '0'), Tested: int(words[2][0] - '0')}
		want, _, _ := strings.Cut(row.Text("expected"), ":")
		if got := plan.Judge(counts, &s); string(got.Verdict) != strings.ReplaceAll(want, " ", "-") {
			t.Errorf("%s: %s (%s), published %q", row.Text("case"), got.Verdict, got.Why, row.Text("expected"))
		}
	}
}

// TestClassAMatchesPublished: 40 CFR 503.32(a)(3)(ii).
func TestClassAMatchesPublished(t *testing.T) {
	thin := quantity.Percent(5)
	for _, row := range published.Rows(t, "class-a-time.csv") {
		temperature := quantity.Celsius(row.Float("temperature_C"))
		got, floored := 0.0, false
		switch name := row.Text("case"); {
		case strings.HasPrefix(name, "under7"):
			got = hygiene.ClassATime(temperature, &thin, false).For.Days()
		case strings.HasPrefix(name, "regimeA"):
			got = hygiene.ClassATime(temperature, nil, false).For.Days()
		case strings.HasPrefix(name, "eq2"):
			h := hygiene.ClassATime(temperature, nil, true) // the lowest floor, 15 s
			got, floored = h.For.Days(), h.FloorApplied
		default: // equation 3 alone, where it is long enough to stand
			h := hygiene.ClassATime(temperature, &thin, false)
			if h.Equation != 3 || h.FloorApplied {
				floored = true
			}
			got = h.For.Days()
		}
		if !floored {
			row.Check(got, "d")
		}
	}
	if h := hygiene.ClassATime(quantity.Celsius(99), nil, false); !h.FloorApplied || math.Abs(h.For.Minutes()-20) > 1e-9 {
		t.Errorf("at 99 °C: %+v", h)
	}
}
