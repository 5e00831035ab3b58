package plan_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// made plans a job file. Every plan of these tests is held to the contract's
// exact rules, whatever else is asked of it.
func made(t *testing.T, text, now string) *plan.Plan {
	t.Helper()
	return madeUnder(t, text, now, nil)
}

func madeUnder(t *testing.T, text, now string, sky *weather.Forecast) *plan.Plan {
	t.Helper()
	file, problems := jobfile.Read([]byte(text), "job.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	at, err := time.Parse(time.RFC3339, now)
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Make(plan.Input{File: file, Now: at, Weather: sky, Reader: file.Holding.Reader})
	obeys(t, file, p)
	return p
}

// pail is a place as many start: a pail and a pump, nothing measured. Two
// quarts of compost and a cup of food for 4 gallons is common practice; the
// food here is molasses and kelp, a tablespoon of each.
const pail = `
[holding]
zone = "America/Denver"
[[site]]
name = "Yard"
latitude = 39.7
longitude = -105
altitude = "%s"
work_hours = "06:00-21:00"
[[bed]]
name = "Beds"
area = "400 sq ft"
crop = "kale"
stage = "vegetative"
[[pump]]
name = "Pump"
label_flow = "12 L/min"
bubbles = "medium"
[[vessel]]
name = "Pail"
full = "5 gal"
brew = "4.5 gal"
depth = "12 in"
pump = "Pump"
indoors = true
[[applicator]]
name = "Can"
kind = "can"
tank = "2 gal"
minutes_per_load = 5
[water]
source = "municipal"
temperature = "%s"
[[recipe]]
name = "Usual"
for_volume = "4 gal"
hours = 24
items = [
  { ingredient = "compost", amount = "%s" },
  { ingredient = "molasses", amount = "%s" },
]
[[want]]
bed = "Beds"
method = "drench"
at = 2026-05-16T07:00:00
tea = "4 gal"
dilution = "1:4"
recipe = "Usual"
`

func pailAt(altitude, water, compost, molasses string) string {
	return fmt.Sprintf(pail, altitude, water, compost, molasses)
}

// Four gallons from a pail by 7:00 on Saturday.
func TestPailBySaturday(t *testing.T) {
	p := made(t, pailAt("1600 m", "14 C", "2 qt", "1 tbsp"), "2026-05-12T18:00:00-06:00")
	if len(p.Batches) != 1 || len(p.Unmet) != 0 {
		t.Fatalf("%d batches, unmet %+v", len(p.Batches), p.Unmet)
	}
	b := p.Batches[0]
	if b.Water.Agent == nil || b.Water.Chloramine != "unknown" {
		t.Errorf("untested mains water is not treated as if it held chloramine: %+v", b.Water)
	}
	if !p.Runs[0].At.Equal(time.Date(2026, 5, 16, 13, 0, 0, 0, time.UTC)) {
		t.Errorf("the run starts at %s", p.Runs[0].At)
	}
	if len(p.Missing) == 0 || p.Missing[0].Key != "vessel.kla20" {
		t.Errorf("the missing number is not named: %+v", p.Missing)
	}
}

// More molasses, more height and warmer water lower the minimum of oxygen;
// more air raises it.
func TestPhysicsShows(t *testing.T) {
	lowest := func(text string) float64 {
		return made(t, text, "2026-05-12T06:00:00-06:00").Batches[0].Forecast.MinDO.Median
	}
	base := pailAt("0 m", "16 C", "1 cup", "1 tsp")
	at := lowest(base)
	for change, less := range map[string]string{
		"more molasses": pailAt("0 m", "16 C", "1 cup", "2 tbsp"),
		"higher up":     pailAt("2000 m", "16 C", "1 cup", "1 tsp"),
		"less air":      strings.Replace(base, "12 L/min", "3 L/min", 1),
	} {
		if got := lowest(less); got >= at {
			t.Errorf("%s: %.2f mg/L, want less than %.2f", change, got, at)
		}
	}
}

// Advice, followed and planned again, does what it said.
func TestAdviceCures(t *testing.T) {
	text := pailAt("640 m", "16 C", "1 cup", "3 tbsp")
	file, _ := jobfile.Read([]byte(text), "job.toml", jobfile.Whole)
	p := made(t, text, "2026-05-12T06:00:00-06:00")
	if !p.Batches[0].OverChance || len(p.Advice) == 0 {
		t.Fatalf("chance %g, %d advices", p.Batches[0].Forecast.Chance, len(p.Advice))
	}
	cured := false
	for _, a := range p.Advice {
		changed, problems := file.With(a.Change)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		again := plan.Make(plan.Input{File: changed, Now: p.Now, Reader: file.Holding.Reader})
		after := again.Batches[0].Forecast.Chance
		if math.Abs(after-a.Effect.After) > 3 || a.Effect.Before != p.Batches[0].Forecast.Chance {
			t.Errorf("%s: %g after, said %+v", a.Text, after, a.Effect)
		}
		cured = cured || after <= file.Limits.Chance
	}
	if !cured {
		t.Errorf("no advice brings the chance to %g: %+v", file.Limits.Chance, p.Advice)
	}
}

// A built-in recipe is cured by adding it to the file under its own name.
func TestAdviceOnBuiltInRecipe(t *testing.T) {
	text := strings.Replace(pailAt("640 m", "16 C", "1 cup", "1 tsp"), `recipe = "Usual"`, `recipe = "bacterial"`, 1)
	p := made(t, text, "2026-05-12T06:00:00-06:00")
	for _, a := range p.Advice {
		if c := a.Change[0]; strings.HasPrefix(c.Path, "/recipe") && (c.Op != "add" || c.Path != "/recipe/-") {
			t.Errorf("%+v", c)
		}
	}
	if len(p.Advice) == 0 {
		t.Error("no advice")
	}
}

// A 4 L jar with neither meter nor curve: a wide range, the one number named,
// and no step that asks for a meter.
func TestJarWithoutMeterOrCurve(t *testing.T) {
	p := made(t, `
[holding]
zone = "Europe/Madrid"
language = "es"
units = "metric"
oxygen_meter = false
[[bed]]
name = "Macetas"
[[pump]]
name = "Bomba"
[[vessel]]
name = "Frasco"
full = "4 L"
pump = "Bomba"
[[want]]
bed = "Macetas"
method = "drench"
at = 2026-05-16T08:00:00
tea = "2.5 L"
recipe = "castings"
`, "2026-05-13T08:00:00+02:00")
	if len(p.Batches) != 1 || len(p.Missing) == 0 || p.Missing[0].Key != "pump.curve" {
		t.Fatalf("%+v %+v", p.Unmet, p.Missing)
	}
	k := p.Batches[0].Air.KLa20
	if k.High95/k.Low95 < 20 {
		t.Errorf("kLa20 %+v is not a wide range", k)
	}
	for _, s := range p.Batches[0].Steps {
		if strings.Contains(s.Text, "Mida oxígeno") {
			t.Errorf("a step asks for a meter: %s", s.Text)
		}
	}
}

const extract = `
[holding]
zone = "America/Denver"
[limits]
strain_minutes = 5
[[bed]]
name = "Bed"
[[vessel]]
name = "Pail"
full = "20 L"
[[recipe]]
name = "Wash"
for_volume = "10 L"
hours = %s
items = [{ ingredient = "compost", amount = "1 kg" }%s]
[[want]]
bed = "Bed"
method = "drench"
at = 2026-05-16T07:00:00
tea = "12 L"
recipe = "Wash"
`

// A pail that is stirred makes an extract within the hour, and nothing else.
func TestStirredPail(t *testing.T) {
	p := made(t, fmt.Sprintf(extract, "0.5", ""), "2026-05-15T18:00:00-06:00")
	if len(p.Batches) != 1 {
		t.Fatalf("unmet %+v", p.Unmet)
	}
	b := p.Batches[0]
	if used := p.Runs[0].EndsAt.Sub(b.StartAt); used > time.Hour || b.ReadyAt.Sub(b.StartAt) != 30*time.Minute {
		t.Errorf("wetted to applied takes %s, brews %s", used, b.ReadyAt.Sub(b.StartAt))
	}
	for _, wrong := range []string{fmt.Sprintf(extract, "24", ""), fmt.Sprintf(extract, "0.5", `, { ingredient = "molasses", amount = "1 tsp" }`)} {
		if p := made(t, wrong, "2026-05-15T18:00:00-06:00"); len(p.Unmet) != 1 || len(p.Batches) != 0 {
			t.Errorf("planned all the same: %+v", p.Unmet)
		}
	}
}

// What cannot be met is named with the nearest that can.
func TestImpossibleWishes(t *testing.T) {
	base := pailAt("640 m", "16 C", "2 cup", "1 tsp")
	for name, c := range map[string]struct {
		text string
		kind plan.Kind
	}{
		"too soon":          {strings.Replace(base, "2026-05-16T07:00:00", "2026-05-12T12:00:00", 1), plan.ByTime},
		"window past":       {strings.Replace(base, "at = 2026-05-16T07:00:00", "from = 2026-05-10T07:00:00\nuntil = 2026-05-11T07:00:00", 1), plan.ByTime},
		"too much":          {strings.Replace(base, `tea = "4 gal"`, `tea = "400 gal"`, 1), plan.ByVolume},
		"a can on leaves":   {strings.Replace(base, `"drench"`, `"foliar"`, 1), plan.ByApplicator},
		"an empty shed":     {base + "[[ingredient]]\nname = \"compost\"\nstock = \"10 g\"\n", plan.ByStock},
		"raw manure":        {base + "[hygiene]\nmaterial = \"raw-manure\"\nhuman_waste = \"yes\"\ncrop_use = \"food\"\nmarket = \"sold\"\ncovered = \"yes\"\n", plan.ByHygiene},
		"without vessels":   {base[:strings.Index(base, "[[vessel]]")] + base[strings.Index(base, "[[applicator]]"):], plan.ByVolume},
		"loads without end": {strings.Replace(base, `tank = "2 gal"`, `tank = "1 mL"`, 1), plan.ByApplicator},
	} {
		p := made(t, c.text, "2026-05-12T06:00:00-06:00")
		if len(p.Unmet) != 1 || p.Unmet[0].Kind != c.kind || p.Unmet[0].Reason == "" || p.Unmet[0].Nearest == "" {
			t.Errorf("%s: %+v", name, p.Unmet)
		}
	}
}

// A brew over a clock change is as many hours long as planned. US clocks go
// forward on 8 March 2026.
func TestClockChangeInsideTheBrew(t *testing.T) {
	p := made(t, strings.Replace(pailAt("640 m", "20 C", "2 cup", "1 tsp"), "2026-05-16T07:00:00", "2026-03-08T12:00:00", 1), "2026-03-05T06:00:00-07:00")
	b := p.Batches[0]
	if _, before := b.StartAt.Zone(); before != -7*3600 {
		t.Errorf("start %s", b.StartAt)
	}
	if _, after := b.ReadyAt.Zone(); after != -6*3600 {
		t.Errorf("ready %s", b.ReadyAt)
	}
	hours := b.ReadyAt.Sub(b.StartAt).Hours()
	if hours < 18 || hours > 72 || hours != math.Trunc(hours*4)/4 {
		t.Errorf("brews %g h", hours)
	}
}

func ternHollow(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "examples", "ternhollow", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Tern Hollow's week, with its weather: the runs go into hours that suit, and
// the plan is the same byte for byte.
func TestTernHollowsWeek(t *testing.T) {
	text := ternHollow(t, "week.toml")
	zone, _ := time.LoadLocation("America/Los_Angeles")
	sky, err := weather.Read("weather.csv", []byte(ternHollow(t, "weather.csv")), weather.CSVReading{Zone: zone, OnlyAir: true})
	if err != nil {
		t.Fatal(err)
	}
	const now = "2026-05-11T08:00:00-07:00"
	first, _ := json.Marshal(madeUnder(t, text, now, sky.Forecast))
	p := madeUnder(t, text, now, sky.Forecast)
	second, _ := json.Marshal(p)
	if string(first) != string(second) {
		t.Error("planned twice, two plans")
	}
	if len(p.Unmet) != 0 || len(p.Batches) < 3 {
		t.Errorf("%d batches, unmet %+v", len(p.Batches), p.Unmet)
	}
	weighsTheSky(t, p)
}

// weighsTheSky: every outing that the forecast reaches has its chance, every
// brew what a day of waiting costs, and waiting never makes a batch safer.
func weighsTheSky(t *testing.T, p *plan.Plan) {
	t.Helper()
	for _, r := range p.Runs {
		if r.Sky == nil || r.Sky.Chance < 0 || r.Sky.Chance > 100 || r.Sky.Covered <= 0 || r.Sky.Covered > 100 || !r.Sky.From.Before(r.Sky.Until) {
			t.Errorf("run %s: %+v", r.At, r.Sky)
		}
	}
	for _, b := range p.Batches {
		if b.Waiting == nil || b.Waiting.Chance < b.Forecast.Chance {
			t.Errorf("batch %s: %+v against %g", b.ID, b.Waiting, b.Forecast.Chance)
		}
	}
}

// Sites elsewhere: the drive stands between load and apply.
func TestClientRound(t *testing.T) {
	p := made(t, ternHollow(t, "round.toml"), "2026-05-15T08:00:00-07:00")
	for _, b := range p.Batches {
		var load, apply time.Time
		for _, s := range b.Steps {
			switch s.What {
			case "load":
				load = s.At
			case "apply":
				apply = s.At
			}
		}
		if drive := apply.Sub(load); drive != 25*time.Minute && drive != 40*time.Minute {
			t.Errorf("%s: %s from load to apply", b.ID, drive)
		}
	}
	if len(p.Unmet) != 0 {
		t.Errorf("%+v", p.Unmet)
	}
}

// Three vessels, nine beds, one week; some share an hour, some a window.
func TestNineBedsThreeVessels(t *testing.T) {
	text := ternHollow(t, "week.toml")
	text = text[:strings.Index(text, "[[want]]")]
	var b strings.Builder
	b.WriteString(text)
	for i := range 9 {
		fmt.Fprintf(&b, "[[bed]]\nname = \"Row %d\"\narea = \"%d m2\"\ncrop = \"beans\"\nstage = \"vegetative\"\n", i, 40+10*i)
	}
	days := []int{14, 15, 17}
	for i := range 9 {
		when := fmt.Sprintf("at = 2026-05-%02dT07:00:00-07:00", days[i/3])
		if i%3 == 2 {
			when = fmt.Sprintf("from = 2026-05-%02dT06:00:00-07:00\nuntil = 2026-05-%02dT18:00:00-07:00", days[i/3], days[i/3]+2)
		}
		fmt.Fprintf(&b, "[[want]]\nbed = \"Row %d\"\nmethod = \"drench\"\n%s\ntea_rate = \"0.2 L/m2\"\ndilution = \"1:2\"\napplicator = \"Tow-behind boom\"\n", i, when)
	}
	p := made(t, b.String(), "2026-05-11T08:00:00-07:00")
	if len(p.Unmet) > 0 {
		t.Errorf("%+v", p.Unmet)
	}
}

// A need larger than one vessel is split over vessels.
func TestSplitOverVessels(t *testing.T) {
	text := ternHollow(t, "week.toml")
	text = text[:strings.Index(text, "[[want]]")] + "[[want]]\nbed = \"Kale, east\"\nmethod = \"drench\"\nat = 2026-05-15T07:00:00-07:00\ntea = \"850 L\"\n"
	p := made(t, text, "2026-05-11T08:00:00-07:00")
	if len(p.Batches) != 2 {
		t.Errorf("%d batches, %+v", len(p.Batches), p.Unmet)
	}
}

// A need larger than all vessels is split over the days of its window.
func TestSplitOverDays(t *testing.T) {
	text := ternHollow(t, "week.toml")
	text = text[:strings.Index(text, "[[want]]")] + "[[want]]\nbed = \"Kale, east\"\nmethod = \"drench\"\nfrom = 2026-05-14T06:00:00-07:00\nuntil = 2026-05-20T18:00:00-07:00\ntea = \"1500 L\"\ndilution = \"1:1\"\n"
	p := made(t, text, "2026-05-11T08:00:00-07:00")
	if len(p.Batches) < 2 || len(p.Unmet) > 0 {
		t.Errorf("%d batches, %+v", len(p.Batches), p.Unmet)
	}
	if p := made(t, strings.Replace(text, "1500 L", "150 m3", 1), "2026-05-11T08:00:00-07:00"); len(p.Unmet) != 1 || len(p.Batches) != 0 {
		t.Errorf("%d batches, %+v", len(p.Batches), p.Unmet)
	}
}

// Every sentence of a plan exists in both languages.
func TestPlanSpeaksSpanish(t *testing.T) {
	file, problems := jobfile.Read([]byte(pailAt("640 m", "16 C", "1 cup", "3 tbsp")), "job.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := plan.Make(plan.Input{File: file, Now: time.Date(2026, 5, 12, 12, 0, 0, 0, time.UTC), Reader: wording.Reader{Language: wording.Spanish, Units: wording.Metric}})
	text, _ := json.Marshal(p)
	if strings.Contains(string(text), "Put in") || !strings.Contains(string(text), "Añada") {
		t.Errorf("%s", text)
	}
}
