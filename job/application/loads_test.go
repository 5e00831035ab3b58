package application_test

import (
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/job/application"
	"aerosteep/quantity"
)

func TestLoadsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "loads.csv") {
		t.Run(row.Name(), func(t *testing.T) {
			share := must(application.Ratio{Tea: 1, Water: row.Float("ratio_parts_water")}.Share(application.Parts))(t)
			tea := quantity.LitresPerHectare(row.Float("tea_rate_l_per_ha"))
			strength := must(application.Settle(&tea, nil, &share, "tea-rate", "mix-rate"))(t)
			loads := must(application.Outing{
				Covers: row.Float("area_m2"), Per: quantity.Litres(strength.Mix.LitresPerSquareMetre()), Share: share,
				Tank: application.Tank{Holds: quantity.Litres(row.Float("tank_l")), Dead: quantity.Litres(row.Float("dead_volume_l"))},
			}.Loads())(t)
			row.Check(loads.Prepared.Tea.Litres(), "L tea in all")
			row.Near(loads.Prepared.Water.Litres(), row.Float("water_total_l"), 1e-4)
			row.Near(loads.Sprayed.Litres(), row.Float("mix_sprayed_l"), 1e-4)
			row.Near(loads.Prepared.Total.Litres(), row.Float("mix_prepared_l"), 1e-4)
			row.Near(float64(loads.Full), row.Float("full_loads"), 0)
			row.Near(loads.Last.Litres(), row.Float("last_load_mix_l"), 1e-4)
			row.Near(loads.Each[0].Covers, row.Float("first_load_covers_m2"), 0.01)
			if loads.Full > 1 {
				row.Near(loads.Each[1].Covers, row.Float("later_full_load_covers_m2"), 0.01)
			}
		})
	}
}

func outing() application.Outing {
	return application.Outing{
		Covers: 250, Per: quantity.Litres(0.2057), Share: 1. / 11,
		Tank: application.Tank{Holds: 15, Dead: 0.5},
	}
}

// However a job is split, the same ground is covered with the same tea, and
// every load has the same share of it.
func TestSplitsCoverTheSame(t *testing.T) {
	for _, split := range []application.Split{application.FullLoads, application.EqualLoads} {
		o := outing()
		o.Split = split
		loads := must(o.Loads())(t)
		var covers, tea float64
		for _, l := range loads.Each {
			covers += l.Covers
			tea += l.Tea.Litres()
			near(t, "share", (l.Tea / l.Total).Litres(), o.Share.Fraction(), 1e-12)
		}
		near(t, "covered", covers, 250, 1e-9)
		near(t, "tea", tea, loads.Prepared.Tea.Litres(), 1e-9)
		if len(loads.Each) != 4 {
			t.Errorf("%s: %d loads, want 4", split, len(loads.Each))
		}
	}
}

// A rest that is only rounding is no load of its own, and a load within that
// of a full tank is full.
func TestDustIsNoLoad(t *testing.T) {
	for _, litres := range []float64{30.001, 29.9991, 30} {
		o := application.Outing{Covers: litres, Per: 1, Share: 1, Tank: application.Tank{Holds: 15}}
		loads := must(o.Loads())(t)
		if len(loads.Each) != 2 || loads.Full != 2 || loads.Last != 0 {
			t.Errorf("%v L: %d loads, %d full, last %v", litres, len(loads.Each), loads.Full, loads.Last)
		}
	}
	tiny := application.Outing{Covers: 0.001, Per: 1, Share: 1, Tank: application.Tank{Holds: 15}}
	if loads := must(tiny.Loads())(t); len(loads.Each) != 1 || !loads.Each[0].Part {
		t.Errorf("a job under the dust of a tank still takes one load: %+v", loads)
	}
}

func TestHowFarDoesItGo(t *testing.T) {
	o := must(application.OutingFor(quantity.Litres(4.72045454545), quantity.Litres(0.2057), 1./11, application.Tank{Holds: 15, Dead: 0.5}, application.FullLoads))(t)
	near(t, "area", o.Covers, 250, 1e-6)
}

func TestLoadsRefuse(t *testing.T) {
	noTank, dead, many := outing(), outing(), outing()
	noTank.Tank.Holds = 0
	dead.Tank.Dead = 15
	many.Tank = application.Tank{Holds: 0.001}
	for field, o := range map[string]application.Outing{"tank": noTank, "dead-volume": dead} {
		if _, err := o.Loads(); len(fault.Of(err)) != 1 || fault.Of(err)[0].Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	if _, err := many.Loads(); len(fault.Of(err)) != 1 {
		t.Errorf("51 425 loads were taken: %v", err)
	}
	if _, err := application.OutingFor(0.01, 0.2, 0.1, application.Tank{Holds: 15, Dead: 0.5}, ""); fault.Of(err) == nil {
		t.Error("tea that only fills the lines was taken")
	}
	tea, mix, share := quantity.USGallonsPerAcre(20), quantity.USGallonsPerAcre(10), quantity.Percent(50)
	if _, err := application.Settle(&tea, &mix, nil, "tea-rate", "mix-rate"); fault.Of(err) == nil {
		t.Error("a mix rate under the tea rate was taken")
	}
	if _, err := application.Settle(&mix, &tea, &share, "tea-rate", "mix-rate"); err != nil {
		t.Errorf("10 of tea in 20 of mix is half: %v", err)
	}
}

// 87 US gal/acre is 2 US gal to 1000 sq ft, the top of the lawn range, rounded
// (common practice); the reference table prints it as 815 L/ha.
func TestHighestTeaRate(t *testing.T) {
	near(t, "L/ha", application.HighestTeaRate.LitresPerHectare(), 815, 2)
}

// Acres an hour = mph x swath in ft / 8.25 (extension calibration sheets).
func TestFieldTime(t *testing.T) {
	span := application.FieldTime(quantity.Acres(4*20/8.25), quantity.MilesPerHour(4), quantity.Feet(20), 1)
	near(t, "hours", span.Hours(), 1, 1e-9)
}
