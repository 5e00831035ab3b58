package holding

import (
	"encoding/json"
	"slices"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/record/journal"
	"aerosteep/science/oxygen"
	"aerosteep/wording"
)

// RigTest is one test of a vessel's air, of a pump or of a meter. What was not
// measured is nil.
type RigTest struct {
	At time.Time
	In string // of the transfer: "brew" or "water"

	KLa20      *float64 // 1/h
	KLa20Low   *float64 // 95 %
	KLa20High  *float64
	Uptake     *float64 // mg/L/h
	Low, High  *float64 // of the uptake, 95 %
	Temp       *float64 // °C of the water
	Volume     *float64 // L in the vessel
	Airflow    *float64 // L/min of free air
	Flow       *float64 // L/min of mix out of an applicator
	MixRate    *float64 // L/m² of mix that it puts on
	PercentTea *float64 // of what leaves a jar or injector
	Depth      *float64 // m
	Shows      *float64 // mg/L, what the meter showed in water full of air
	Holds      *float64 // mg/L, what that water can hold
	Drop       *float64 // mg/L, one drop of a kit that counts drops
	Text       string
}

// testBody is a test as the journal has it.
type testBody struct {
	Vessel     string   `json:"vessel"`
	KLa20      *float64 `json:"kla20_per_h"`
	KLa20Low   *float64 `json:"kla20_low95_per_h"`
	KLa20High  *float64 `json:"kla20_high95_per_h"`
	In         string   `json:"kla20_in"`
	Uptake     *float64 `json:"our_mg_per_l_h"`
	Low        *float64 `json:"our_low95_mg_per_l_h"`
	High       *float64 `json:"our_high95_mg_per_l_h"`
	Temp       *float64 `json:"temp_c"`
	Volume     *float64 `json:"volume_l"`
	Airflow    *float64 `json:"airflow_l_per_min"`
	Flow       *float64 `json:"flow_l_per_min"`
	MixRate    *float64 `json:"mix_rate_l_per_m2"`
	PercentTea *float64 `json:"percent_tea"`
	Depth      *float64 `json:"depth_m"`
	Shows      *float64 `json:"shows_mg_per_l"`
	Holds      *float64 `json:"holds_mg_per_l"`
	Drop       *float64 `json:"drop_mg_per_l"`
	Text       string   `json:"text"`
}

// ServesFor is how long a test of the air is taken at its word: diffusers foul
// meanwhile, by how much nobody knows without a new one. Judged; no source
// gives a span for tea.
const ServesFor = 60 * 24 * time.Hour

// MeterServesFor is how long a check of a meter serves. Judged: makers of the
// class ask for a check before each day of use; a bias older than a week says
// little.
const MeterServesFor = 7 * 24 * time.Hour

// Aged tells whether a test of the air is too old to be taken at its word.
func (t RigTest) Aged(now time.Time) bool { return now.Sub(t.At) > ServesFor }

// Bias is what the meter shows over what the water holds, mg/L; false where
// the test was not of a meter.
func (t RigTest) Bias() (float64, bool) {
	if t.Shows == nil || t.Holds == nil {
		return 0, false
	}
	return *t.Shows - *t.Holds, true
}

// Doubted tells whether the meter showed more than any water can hold: kept,
// but nothing that a reading could be corrected by.
func (t RigTest) Doubted() bool {
	if t.Shows == nil || t.Holds == nil {
		return false
	}
	ceiling := oxygen.CeilingOf(quantity.Concentration(*t.Holds), true)
	return ceiling.Judge(quantity.Concentration(*t.Shows)) == oxygen.NotCredible
}

// LastCheck is the latest check of any meter, with the meter's name; false
// where none was kept.
func (h *Holding) LastCheck() (RigTest, string, bool) {
	var last RigTest
	var of string
	for _, name := range h.Tested("meter") {
		for _, t := range h.TestsOf("meter", name) {
			if _, checked := t.Bias(); checked && (of == "" || t.At.After(last.At)) {
				last, of = t, name
			}
		}
	}
	return last, of, of != ""
}

// TestsOf are the tests of a vessel, pump or meter ("vessel", "Drum"), the
// latest first. A test of a batch counts for the vessel it brews in.
func (h *Holding) TestsOf(what, name string) []RigTest {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.state.tests(what, name)
}

// Tested are the names of a kind ("meter") that tests were kept of.
func (h *Holding) Tested(what string) []string {
	h.mu.Lock()
	defer h.mu.Unlock()
	var names []string
	for _, subject := range h.state.subjects(what) {
		if len(h.state.standing(subject, journal.Test)) > 0 {
			names = append(names, subject[len(what)+1:])
		}
	}
	return names
}

func (s *state) tests(what, name string) []RigTest {
	tests := ofVessel(s.standing(what+":"+name, journal.Test), name, name)
	if what == "vessel" {
		for _, subject := range s.subjects("batch") {
			if b, stands := s.batch(subject); stands {
				tests = append(tests, ofVessel(s.standing(subject, journal.Test), b.Vessel, name)...)
			}
		}
	}
	slices.Reverse(tests) // of two at one moment the later entry counts
	slices.SortStableFunc(tests, func(a, b RigTest) int { return b.At.Compare(a.At) })
	return tests
}

// ofVessel reads tests whose vessel is the one asked for; one that names none
// was of the usual one.
func ofVessel(entries []told, usual, asked string) []RigTest {
	var tests []RigTest
	for _, e := range entries {
		var b testBody
		if json.Unmarshal(e.Body, &b) != nil {
			continue // of another type: it says nothing
		}
		if b.Vessel == "" {
			b.Vessel = usual
		}
		if b.Vessel == asked {
			tests = append(tests, RigTest{
				At: e.At, In: b.In, KLa20: b.KLa20, KLa20Low: b.KLa20Low, KLa20High: b.KLa20High, Uptake: b.Uptake, Low: b.Low, High: b.High,
				Temp: b.Temp, Volume: b.Volume, Airflow: b.Airflow, Flow: b.Flow, MixRate: b.MixRate, PercentTea: b.PercentTea, Depth: b.Depth, Shows: b.Shows, Holds: b.Holds, Drop: b.Drop, Text: b.Text,
			})
		}
	}
	return tests
}

// Transfer is the measured transfer that a test gives a vessel; nil where it
// gives none that a job file would take.
func (t RigTest) Transfer() *rig.MeasuredKLa {
	if t.KLa20 == nil || !(*t.KLa20 >= 0.01 && *t.KLa20 <= 1000) {
		return nil
	}
	k := &rig.MeasuredKLa{Estimate: quantity.PerHour(*t.KLa20), InBrew: t.In == "brew"}
	if t.KLa20Low != nil && t.KLa20High != nil && *t.KLa20Low > 0 && *t.KLa20Low <= *t.KLa20 && *t.KLa20 <= *t.KLa20High {
		low, high := quantity.PerHour(*t.KLa20Low), quantity.PerHour(*t.KLa20High)
		k.Low95, k.High95 = &low, &high
	}
	return k
}

// withTests gives each vessel of a file its latest measured transfer, and each
// pump the air that was last caught of it: a test counts over what the file
// says, since it is of the equipment as it is now.
func (h *Holding) withTests(file *jobfile.File) {
	for i := range file.Vessels {
		v := &file.Vessels[i]
		for _, t := range h.TestsOf("vessel", v.Name) {
			if k := t.Transfer(); k != nil {
				v.KLa20 = k
				break
			}
		}
	}
	for i := range file.Pumps {
		file.Pumps[i].Caught = h.caught(file.Pumps[i].Name)
	}
	h.withWater(file)
	h.withLots(file)
}

// caught is the air of the latest jug test of a pump; nil where there is none
// that a job file would take.
func (h *Holding) caught(pump string) *quantity.Flow {
	for _, t := range h.TestsOf("pump", pump) {
		if t.Airflow != nil && *t.Airflow >= 0.01 && *t.Airflow <= 50000 {
			flow := quantity.LitresPerMinute(*t.Airflow)
			return &flow
		}
	}
	return nil
}

// checkTest refuses a range that does not hold its estimate.
func checkTest(body map[string]any) error {
	low, hasLow := body["kla20_low95_per_h"].(float64)
	high, hasHigh := body["kla20_high95_per_h"].(float64)
	k, has := body["kla20_per_h"].(float64)
	switch {
	case !hasLow && !hasHigh:
		return nil
	case !has:
		return fault.New("kla20", "", wording.Say("holding.test.range-alone"), wording.Text{}, wording.Text{})
	case hasLow && low > k:
		return outside("kla20-low95", low, k)
	case hasHigh && high < k:
		return outside("kla20-high95", high, k)
	}
	return nil
}

func outside(flag string, end, k float64) error {
	places := wording.Places{"end": quantity.PerHour(end), "kla": quantity.PerHour(k)}
	return fault.New(flag, wording.Say("quantity.given", wording.Places{"given": quantity.PerHour(end)}).String(), wording.Say("holding.test.range", places), wording.Say("holding.test.range.allowed", places), wording.Text{})
}
