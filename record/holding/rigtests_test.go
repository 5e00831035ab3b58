package holding

import (
	"context"
	"testing"
	"time"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// twoVessels is a holding with a pail and a drum whose air was measured once.
const twoVessels = `form = 1
[holding]
name = "Tern Hollow"
zone = "UTC"
[[pump]]
name = "Shed blower"
label_flow = "60 L/min"
[[vessel]]
name = "Pail"
full = "19 L"
brew = "15 L"
pump = "Shed blower"
[[vessel]]
name = "Drum"
full = "200 L"
brew = "160 L"
pump = "Shed blower"
kla20 = "16 /h"
[[batch]]
name = "D-1"
vessel = "Drum"
recipe = "balanced"
volume = "150 L"
`

func tested(t *testing.T) *Holding {
	t.Helper()
	h := open(t, t.TempDir(), 7)
	file, problems := jobfile.Read([]byte(twoVessels), "two.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		t.Fatal(err)
	}
	if _, err := h.Load(context.Background(), file, Made{At: noon}); err != nil {
		t.Fatal(err)
	}
	return h
}

func keepTest(t *testing.T, h *Holding, at time.Time, given worksheet.Values) {
	t.Helper()
	form, _ := FormOf("test")
	e, err := h.Compose(form, given, Made{At: at, By: "M.R."})
	if err != nil {
		t.Fatal(err)
	}
	results, err := h.Store(context.Background(), e)
	if err != nil || results[0].Outcome == journal.Refused {
		t.Fatal(err, results)
	}
}

// The latest test of a vessel is what its plan and forecast rest on, whether
// it was written under the vessel or under the batch in it, and in whatever
// order the tests arrived.
func TestTheLatestTestOfAVesselCounts(t *testing.T) {
	h := tested(t)
	keepTest(t, h, noon.Add(2*time.Hour), worksheet.Values{"batch": {"D-1"}, "kla20": {"12 /h"}, "kla20-low95": {"11 /h"}, "kla20-high95": {"13.5 /h"}, "kla20-in": {"brew"}, "our": {"16 mg/L/h"}, "temp": {"20 C"}, "volume": {"150 L"}})
	keepTest(t, h, noon.Add(time.Hour), worksheet.Values{"vessel": {"Drum"}, "kla20": {"9 /h"}})
	keepTest(t, h, noon.Add(3*time.Hour), worksheet.Values{"vessel": {"Drum"}, "our": {"20 mg/L/h"}}) // says nothing of the air
	file, err := h.File(jobfile.Whole)
	if err != nil {
		t.Fatal(err)
	}
	drum, _ := file.Vessel("Drum")
	k := drum.KLa20
	if k == nil || k.Estimate != 12 || !k.InBrew || k.Low95 == nil || *k.Low95 != 11 || *k.High95 != 13.5 {
		t.Errorf("the drum rests on %+v", k)
	}
	if pail, _ := file.Vessel("Pail"); pail.KLa20 != nil {
		t.Errorf("the pail rests on a test of the drum: %+v", pail.KLa20)
	}
	tests := h.TestsOf("vessel", "Drum")
	if len(tests) != 3 || *tests[0].Uptake != 20 || *tests[1].Temp != 20 || *tests[1].Volume != 150 {
		t.Errorf("tests of the drum: %+v", tests)
	}
	if tests[1].Aged(noon.Add(50*24*time.Hour)) || !tests[1].Aged(noon.Add(63*24*time.Hour)) {
		t.Error("a test serves for 60 days")
	}
}

// A body that another program wrote may hold a range that is none: the
// estimate counts without it, and no plan breaks.
func TestARangeThatIsNoneIsLeftOut(t *testing.T) {
	low, k, high, beyond := 14.0, 12.0, 13.0, 4000.0
	if m := (RigTest{KLa20: &k, KLa20Low: &low, KLa20High: &high}).Transfer(); m == nil || m.Low95 != nil {
		t.Errorf("range 14 to 13 about 12 gives %+v", m)
	}
	if m := (RigTest{KLa20: &beyond}).Transfer(); m != nil {
		t.Errorf("4000 1/h gives %+v", m)
	}
}

func TestATestIsCheckedBeforeItIsKept(t *testing.T) {
	h := tested(t)
	form, _ := FormOf("test")
	for field, given := range map[string]worksheet.Values{
		"kla20-low95":  {"vessel": {"Drum"}, "kla20": {"12 /h"}, "kla20-low95": {"13 /h"}},
		"kla20-high95": {"vessel": {"Drum"}, "kla20": {"12 /h"}, "kla20-high95": {"11 /h"}},
		"kla20":        {"vessel": {"Drum"}, "kla20-high95": {"11 /h"}},
		"pump":         {"pump": {"Shed blowr"}, "airflow": {"60 L/min"}},
	} {
		_, err := h.Compose(form, given, Made{At: noon})
		if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != field {
			t.Errorf("%v: %v, want a fault of %s", given, err, field)
		}
	}
}

// A meter's bias is what it shows over what the water holds.
func TestABiasIsKeptForTheMeter(t *testing.T) {
	h := tested(t)
	keepTest(t, h, noon, worksheet.Values{"meter": {"Blue"}, "shows": {"9.4 mg/L"}, "holds": {"9.1 mg/L"}})
	if names := h.Tested("meter"); len(names) != 1 || names[0] != "Blue" {
		t.Fatalf("meters %q", names)
	}
	if bias, known := h.TestsOf("meter", "Blue")[0].Bias(); !known || bias < 0.29 || bias > 0.31 {
		t.Errorf("bias %v", bias)
	}
	if _, known := (RigTest{}).Bias(); known {
		t.Error("a test without a check of the meter has a bias")
	}
}

// What a jug caught of a pump counts over its label, in the forecast of every
// vessel on it whose own transfer nobody measured.
func TestTheAirThatAJugCaughtCountsForItsVessels(t *testing.T) {
	h := tested(t)
	keepTest(t, h, noon.Add(2*time.Hour), worksheet.Values{"pump": {"Shed blower"}, "airflow": {"20 L/min"}, "depth": {"0.4 m"}})
	keepTest(t, h, noon.Add(time.Hour), worksheet.Values{"pump": {"Shed blower"}, "airflow": {"30 L/min"}})
	file, err := h.File(jobfile.Whole)
	if err != nil {
		t.Fatal(err)
	}
	pump, _ := file.Pump("Shed blower")
	if pump.Caught == nil || *pump.Caught != 20 {
		t.Fatalf("the pump rests on %v, want the later 20 L/min", pump.Caught)
	}
	pail, _ := file.Vessel("Pail")
	believed, err := forecast.BelieveAir(pail, &pump, 15, quantity.StandardAtmosphere, 20)
	if err != nil || believed.Basis != forecast.Caught || believed.Airflow != 20 {
		t.Errorf("the pail's air is believed to be %+v, %v", believed, err)
	}
	drum, _ := file.Vessel("Drum")
	if believed, _ = forecast.BelieveAir(drum, &pump, 150, quantity.StandardAtmosphere, 20); believed.Basis != forecast.Measured {
		t.Errorf("the drum's own measured transfer gives way to %s", believed.Basis)
	}
}
