package application

import (
	"testing"
	"time"

	"aerosteep/quantity"
)

// 8 mg/L at 8:00 and 7 at 9:00 are 2 at 14:00 (a straight line, arithmetic).
func TestTankClock(t *testing.T) {
	at := func(hour int) time.Time { return time.Date(2026, 5, 12, hour, 0, 0, 0, time.UTC) }
	mg := quantity.MilligramsPerLitre
	falling := []InTank{{at(8), mg(8)}, {at(9), mg(7)}}
	if end, ok := TankClock(falling, mg(2)); !ok || !end.Equal(at(14)) {
		t.Errorf("%s %v", end, ok)
	}
	if end, ok := TankClock([]InTank{{at(8), mg(3)}, {at(9), mg(1)}}, mg(2)); !ok || !end.Equal(at(9)) {
		t.Errorf("under the limit already: %s %v", end, ok)
	}
	for name, readings := range map[string][]InTank{"none": nil, "one": falling[:1], "steady": {{at(8), mg(8)}, {at(9), mg(8)}}, "out of order": {{at(9), mg(8)}, {at(8), mg(7)}}} {
		if _, ok := TankClock(readings, mg(2)); ok {
			t.Errorf("%s: an hour is told", name)
		}
	}
}
