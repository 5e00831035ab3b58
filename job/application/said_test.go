package application_test

import (
	"testing"

	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/quantity"
)

// A 10 L can over 5 m² is 2 L/m², 2 mm of water (calibration of a watering
// can: volume over area).
func TestDoseAsPeopleSayIt(t *testing.T) {
	each, all, dose, err := application.SaidDose{Measures: 2, Measure: quantity.Litres(10), Things: 3, Ground: quantity.SquareMetres(30)}.Answer()
	if err != nil || each != 20 || all != 60 {
		t.Fatalf("each %v, all %v, %v", each, all, err)
	}
	near(t, "L/m2", dose.LitresPerSquareMetre(), 2, 1e-12)
	if _, _, unknown, _ := (application.SaidDose{Measures: 1, Measure: 1, Things: 1}).Answer(); unknown != nil {
		t.Error("a dose per area without ground")
	}
	if _, _, _, err := (application.SaidDose{Measures: 1, Measure: 1}).Answer(); fault.Of(err) == nil {
		t.Error("no plants were taken")
	}
}

// Whichever way back is chosen, the rest of the ground gets the planned tea.
func TestRestKeepsTheDose(t *testing.T) {
	planned := application.Strength[quantity.Dose]{Tea: 1, Mix: 4, Share: 0.25}
	first := application.FirstLoad{Ground: 100, Done: 20, Gone: 101, Dead: 1, Planned: planned}
	for _, way := range []application.WayBack{application.BySpeed, application.ByPressure, application.ByMix} {
		rest := must(first.Rest(way, 100, application.FullLoads))(t)
		near(t, string(way), rest.Prepared.Tea.Litres(), 80, 1e-9)
	}
	first.Done = 100
	if _, err := first.Rest(application.BySpeed, 100, application.FullLoads); fault.Of(err) == nil {
		t.Error("there is no rest")
	}
	thin := application.FirstLoad{Ground: 100, Done: 50, Gone: 40, Planned: application.Strength[quantity.Dose]{Tea: 1, Mix: 1, Share: 1}}
	if _, err := thin.Rest(application.ByMix, 100, application.FullLoads); fault.Of(err) == nil {
		t.Error("more than all tea was taken")
	}
}
