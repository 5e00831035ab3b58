package cost_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/job/cost"
	"aerosteep/quantity"
)

func row(t *testing.T, find string) published.Row {
	return published.Where(published.Rows(t, "costs.csv"), "find", find)[0]
}

// Iowa State University Extension, Ag Decision Maker A3-29: its worked
// machine, and the same method on other figures.
func TestEquipmentMatchesPublished(t *testing.T) {
	machine := cost.Equipment{Price: 93500, Salvage: 0.23 * 110000, Years: 15}
	row(t, "salvage value").Check(machine.Salvage, "USD")
	row(t, "total depreciation").Check(machine.Price-machine.Salvage, "USD")
	row(t, "straight-line annual depreciation").Check(perYear(t, machine), "USD/year")

	row(t, "capital recovery factor").Check(cost.CapitalRecovery(0.05, 15), "1/year")
	machine.Interest = 0.05
	row(t, "capital recovery").Check(perYear(t, machine), "USD/year")

	share := perYear(t, cost.Equipment{Price: 1200, Salvage: 200, Years: 8}) / 40
	row(t, "equipment share per batch").Check(share, "currency/batch")
}

func TestPerLitreMatchesPublished(t *testing.T) {
	row(t, "labour per 1000 L").Check(cost.PerLitre(1.5*24, quantity.Litres(200), 0)*1000, "currency/1000 L")
	row(t, "cost per ha").Check(cost.PerLitre(46, quantity.Litres(200), 0)*150, "currency/ha")
	if lost := cost.PerLitre(46, 200, 0.5); lost != 2*cost.PerLitre(46, 200, 0) {
		t.Errorf("half poured away costs %v a litre", lost)
	}
}

// As interest goes to nothing, the method becomes a straight line.
func TestSmallInterestIsAlmostStraight(t *testing.T) {
	straight := perYear(t, cost.Equipment{Price: 1000, Salvage: 100, Years: 10})
	tiny := perYear(t, cost.Equipment{Price: 1000, Salvage: 100, Years: 10, Interest: 1e-12})
	if math.Abs(tiny-straight) > 1e-6 {
		t.Errorf("%v against %v", tiny, straight)
	}
}

// 60 W for 36 h is 2.16 kWh; 15 L of drum for an hour and a half at 24.
func TestBatch(t *testing.T) {
	price, wage, kwh := 10.0, 24.0, 0.30
	batch := cost.Batch{
		Items: []cost.Item{{Name: "compost", Cost: &price}}, Energy: cost.Electricity(quantity.Watts(60), quantity.Hours(36)), EnergyPrice: &kwh,
		Work: quantity.Hours(1.5), Wage: &wage, Yields: quantity.Litres(200),
	}
	parts := batch.Add()
	if got := *parts.PerLitre; math.Abs(got-0.23324) > 1e-12 {
		t.Errorf("%v a litre, want 0.23324", got)
	}
	batch.Items = append(batch.Items, cost.Item{Name: "kelp"})
	batch.Wage = nil
	parts = batch.Add()
	if parts.Ingredients != nil || parts.Labour != nil || parts.PerLitre != nil || parts.Power == nil {
		t.Errorf("a missing price makes its part and the litre unknown: %+v", parts)
	}
}

func TestRefuses(t *testing.T) {
	if _, err := (cost.Equipment{Price: 1, Salvage: 2, Years: 1}).PerYear(); fault.Of(err) == nil {
		t.Error("a salvage over the price was taken")
	}
	if _, err := (cost.Equipment{Price: 1}).PerYear(); fault.Of(err) == nil {
		t.Error("no years were taken")
	}
	for _, text := range []string{"compost", ": 3", "compost: x", "compost: -1", "compost:", "compost: 1,200"} {
		if _, err := cost.ParseItem(text); fault.Of(err) == nil {
			t.Errorf("%q was taken", text)
		}
	}
	item, err := cost.ParseItem("feed: fish: 12,5")
	if err != nil || item.Name != "feed: fish" || *item.Cost != 12.5 {
		t.Errorf("%+v, %v", item, err)
	}
}

func FuzzParseItem(f *testing.F) {
	f.Add("compost: 12.50")
	f.Add("a:b:1/2")
	f.Fuzz(func(t *testing.T, text string) {
		if item, err := cost.ParseItem(text); err == nil && (item.Name == "" || !(*item.Cost >= 0)) {
			t.Errorf("%q read as %+v", text, item)
		}
	})
}

func perYear(t *testing.T, e cost.Equipment) float64 {
	t.Helper()
	v, err := e.PerYear()
	if err != nil {
		t.Fatal(err)
	}
	return v
}
