package plan_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
)

// Advice does what it said when the whole file is planned again, though less
// food or colder water ripen later and the wanted hour is near.
func TestAdviceIsReadyInTime(t *testing.T) {
	text := pailAt("640 m", "16 C", "1 cup", "3 tbsp")
	wanted := made(t, text, "2026-05-12T06:00:00-06:00").Batches[0]
	late := wanted.StartAt.Add(-4 * time.Hour).Format(time.RFC3339)
	p, file := made(t, text, late), read(t, text)
	followed(t, file, p)
	shortened := false
	for _, a := range p.Advice {
		for _, c := range a.Change {
			shortened = shortened || strings.HasSuffix(c.Path, "/hours")
		}
	}
	if len(p.Advice) == 0 || !shortened {
		t.Errorf("nothing is brewed shorter four hours before the start: %+v", p.Advice)
	}
}

// A cold, slow brew in a barrel of which only the pump's curve is known can be
// ended sooner, or filled less: both hold when the file is planned again.
func TestAdviceOfAnEarlierEndAndASmallerFill(t *testing.T) {
	text := pailAt("1600 m", "9 C", "1 kg", "80 mL")
	for old, with := range map[string]string{
		`full = "5 gal"`: `full = "80 L"`, `brew = "4.5 gal"`: "", `depth = "12 in"`: "", "indoors = true": "", "hours = 24": "hours = 48",
		`for_volume = "4 gal"`: `for_volume = "100 L"`, `tea = "4 gal"`: `tea = "60 L"`, `tank = "2 gal"`: `tank = "60 L"`,
		`label_flow = "12 L/min"`: `curve = "40 L/min@0 kPa, 20 L/min@10 kPa, 0 L/min@20 kPa"`,
	} {
		if !strings.Contains(text, old) {
			t.Fatalf("the pail has no %s", old)
		}
		text = strings.Replace(text, old, with, 1)
	}
	p := made(t, text, "2026-05-12T06:00:00-06:00")
	followed(t, read(t, text), p)
	sooner, smaller := false, false
	for _, a := range p.Advice {
		last := a.Change[len(a.Change)-1]
		sooner = sooner || last.Path == "/recipe/0/hours" && len(a.Change) == 1
		smaller = smaller || last.Path == "/want/0/tea"
	}
	if !sooner || !smaller {
		t.Errorf("ended sooner %v, filled less %v: %+v", sooner, smaller, p.Advice)
	}
}

// Beds that share three vessels: a change that moves a batch to another hour or
// vessel is answered for as it will be.
func TestAdviceAmongOtherBatches(t *testing.T) {
	var b strings.Builder
	text := pailAt("640 m", "16 C", "1 cup", "3 tbsp")
	b.WriteString(text[:strings.Index(text, "[[want]]")])
	for i := range 2 {
		fmt.Fprintf(&b, "[[vessel]]\nname = \"Barrel %d\"\nfull = \"%d L\"\nleast = \"10 L\"\ndepth = \"50 cm\"\npump = \"Pump\"\n", i, 60+60*i)
	}
	for i := range 6 {
		fmt.Fprintf(&b, "[[want]]\nbed = \"Beds\"\nmethod = \"drench\"\nat = 2026-05-%d\ntea = \"%d L\"\nrecipe = \"Usual\"\n", 14+i%3, 8+4*i)
	}
	jobText := strings.NewReplacer("at = 2026-05-14", "at = 2026-05-14T08:00:00", "at = 2026-05-15", "at = 2026-05-15T08:00:00", "at = 2026-05-16", "at = 2026-05-16T09:00:00").Replace(b.String())
	p := made(t, jobText, "2026-05-12T08:00:00-06:00")
	if len(p.Advice) < 3 {
		t.Fatalf("%d advices", len(p.Advice))
	}
	followed(t, read(t, jobText), p)
}

func read(t *testing.T, text string) *jobfile.File {
	t.Helper()
	file, problems := jobfile.Read([]byte(text), "job.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return file
}

// followed plans every advice again: the batch that serves the same wants has
// the chance that was said, within 3 in 100.
func followed(t *testing.T, file *jobfile.File, p *plan.Plan) {
	t.Helper()
	for _, a := range p.Advice {
		changed, problems := file.With(a.Change)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		nearest := math.Inf(1)
		for _, b := range plan.Make(plan.Input{File: changed, Now: p.Now, Reader: file.Holding.Reader}).Batches {
			if wantsOf(b) == wantsOf(batchNamed(p, a.Batch)) {
				nearest = math.Min(nearest, math.Abs(b.Forecast.Chance-a.Effect.After))
			}
		}
		if nearest > 3 {
			t.Errorf("%s: %s: off by %g in 100", a.Batch, a.Text, nearest)
		}
	}
}

func wantsOf(b plan.Batch) string {
	var wants []int
	for _, s := range b.Serves {
		wants = append(wants, s.Want)
	}
	return fmt.Sprint(wants)
}

func batchNamed(p *plan.Plan, id string) plan.Batch {
	for _, b := range p.Batches {
		if b.ID == id {
			return b
		}
	}
	return plan.Batch{}
}
