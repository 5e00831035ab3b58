package jobfile

import (
	"testing"
	"time"
)

// A zone that travelled tells the same clock as the machine's table (IANA), hour
// by hour: with a change of an hour, of half an hour, and without any.
func TestAZoneTravels(t *testing.T) {
	around := time.Date(2026, 5, 12, 0, 0, 0, 0, time.UTC)
	for _, name := range []string{"America/Los_Angeles", "Europe/Madrid", "Australia/Lord_Howe", "Asia/Kolkata", "UTC"} {
		real, err := time.LoadLocation(name)
		if err != nil {
			t.Fatal(err)
		}
		there, err := time.LoadLocationFromTZData(name, ZoneData(real, around))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for at := around.AddDate(-1, -11, 0); at.Before(around.AddDate(1, 11, 0)); at = at.Add(time.Hour) {
			if a, b := at.In(real).Format(time.RFC1123), at.In(there).Format(time.RFC1123); a != b {
				t.Fatalf("%s: %s there, %s here", name, b, a)
			}
		}
	}
}

func TestAKnownZoneIsRead(t *testing.T) {
	made := time.FixedZone("Nowhere/Pond", 3600)
	if _, err := zoneNamed("Nowhere/Pond"); err == nil {
		t.Fatal("a zone that nobody knows is found")
	}
	KnowZone(made)
	if got, err := zoneNamed("Nowhere/Pond"); err != nil || got != made {
		t.Errorf("%v %v", got, err)
	}
	zones.Delete("Nowhere/Pond")
}
