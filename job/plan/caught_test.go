package plan

import (
	"testing"

	"aerosteep/job/rig"
	"aerosteep/quantity"
)

// Air that a jug caught is taken as it is: no share of a label, no doubt about
// what the pump moves; twice the air gives more transfer.
func TestCaughtAirIsTakenAsItIs(t *testing.T) {
	label := quantity.LitresPerMinute(60)
	depth := quantity.Metres(0.4)
	vessel := rig.Vessel{Name: "Pail", Full: 19, Brew: 15, Depth: &depth}
	blown := func(caught float64) aeration {
		flow := quantity.LitresPerMinute(caught)
		pump := rig.Pump{Name: "Shed blower", LabelFlow: &label, Caught: &flow, Bubbles: "fine"}
		p := planner{cited: map[string]bool{}}
		return p.blow(vessel, pump, depth, true, 15)
	}
	once, twice := blown(10), blown(20)
	if once.airflow == nil || *once.airflow != 10 {
		t.Errorf("airflow %v, want the 10 L/min that were caught", once.airflow)
	}
	if _, doubted := once.doubts["pump.curve"]; doubted {
		t.Error("what the pump moves is in doubt though it was measured")
	}
	if ratio := twice.kla20 / once.kla20; ratio < 1.99 || ratio > 2.01 {
		t.Errorf("twice the air gives %v times the transfer", ratio)
	}
}
