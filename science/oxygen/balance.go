package oxygen

import (
	"math"

	"aerosteep/numeric"
	"aerosteep/quantity"
)

// Aeration is what the air does for one brew at one temperature and place.
type Aeration struct {
	KLa20      quantity.Estimate[quantity.PerTime] // clean water, 20 °C
	Alpha      float64                             // tea over clean water, 0.2 to 1.2
	Beta       float64                             // saturation of tea over that of water, 0.8 to 1
	Fouling    float64                             // used diffuser over new, 0.3 to 1
	Water      quantity.Temperature
	Saturation quantity.Concentration // C*(T, P, S), before beta
}

// KLa is the coefficient in the brew: alpha · fouling · 1.024^(T-20) · kLa20.
func (a Aeration) KLa() quantity.Estimate[quantity.PerTime] {
	return a.KLa20.Scaled(a.perKLa20())
}

func (a Aeration) perKLa20() float64 { return a.Alpha * a.Fouling * TemperatureFactor(a.Water) }

// Ceiling is the most oxygen that any air can hold in this brew: beta · C*.
func (a Aeration) Ceiling() quantity.Concentration {
	return quantity.Concentration(a.Beta) * a.Saturation
}

// OutOfReach tells whether no air at all can hold a limit.
func (a Aeration) OutOfReach(limit quantity.Concentration) bool { return limit >= a.Ceiling() }

// MostUptake returns the largest uptake that leaves the limit standing; 0
// where the limit is out of reach.
//
// Formula: K (β C* - limit). Source: the oxygen balance (source.MassBalance).
func (a Aeration) MostUptake(limit quantity.Concentration) quantity.Estimate[quantity.Uptake] {
	drive := max(0, float64(a.Ceiling()-limit))
	return quantity.Map(a.KLa(), func(k quantity.PerTime) quantity.Uptake { return quantity.Uptake(float64(k) * drive) })
}

// SteadyOxygen returns where dissolved oxygen comes to rest under an uptake; a
// demand beyond the air ends at 0.
//
// Formula: β C* - OUR/K. Source: as MostUptake.
func (a Aeration) SteadyOxygen(uptake quantity.Uptake) quantity.Estimate[quantity.Concentration] {
	return quantity.Map(a.KLa(), func(k quantity.PerTime) quantity.Concentration {
		if uptake == 0 {
			return a.Ceiling()
		}
		return max(0, a.Ceiling()-quantity.Concentration(float64(uptake)/float64(k)))
	})
}

// KLa20Needed returns the clean-water coefficient at 20 °C that would hold the
// limit under an uptake, and false where none would.
//
// Formula: OUR/[alpha · fouling · 1.024^(T-20) · (β C* - limit)].
func (a Aeration) KLa20Needed(uptake quantity.Uptake, limit quantity.Concentration) (quantity.PerTime, bool) {
	if a.OutOfReach(limit) {
		return 0, false
	}
	return quantity.PerTime(float64(uptake) / (a.perKLa20() * float64(a.Ceiling()-limit))), true
}

// AirNeeded returns the free air that would hold the limit under an uptake,
// where so much air gives this aeration; false where none would. It takes kLa
// to grow as the air does; truly it grows as Q^0.7 to 0.8.
func (a Aeration) AirNeeded(free quantity.Flow, uptake quantity.Uptake, limit quantity.Concentration) (quantity.Estimate[quantity.Airflow], bool) {
	if a.OutOfReach(limit) {
		return quantity.Estimate[quantity.Airflow]{}, false
	}
	return quantity.Map(a.MostUptake(limit), func(most quantity.Uptake) quantity.Airflow {
		return quantity.Airflow(float64(free) * float64(uptake) / float64(most))
	}), true
}

// Holding is whether an aeration keeps a limit under an uptake.
type Holding string

// The verdicts.
const (
	Holds      Holding = "holds"        // even at the low end of kLa
	Uncertain  Holding = "uncertain"    // the limit lies in the range
	FallsShort Holding = "falls-short"  // even at the high end
	NoAirCan   Holding = "out-of-reach" // the limit is at or above saturation
)

// Verdict says whether the air holds the limit under an uptake.
func (a Aeration) Verdict(uptake quantity.Uptake, limit quantity.Concentration) Holding {
	steady := a.SteadyOxygen(uptake)
	low, high := steady.Low95, steady.High95
	if !steady.Bounded {
		low, high = steady.Value, steady.Value
	}
	switch {
	case a.OutOfReach(limit):
		return NoAirCan
	case low >= limit:
		return Holds
	case high < limit:
		return FallsShort
	default:
		return Uncertain
	}
}

// SurfaceKLa returns the transfer of an open, unbubbled surface at the water's
// own temperature.
//
// Formula: k/H with k = k600 (Sc/600)^-0.5, k600 = 2.07 + 0.215 U10^1.7 cm/h,
// Sc = 1800.6 - 120.10 T + 3.7818 T² - 0.047608 T³.
//
// Inputs: water 0 to 40 °C (Sc is fitted to 30 and drawn on to 40 at a smaller
// loss than the other errors here); wind at 10 m, 0 to 20 m/s; depth of water
// 0.01 to 10 m. Errors: of temp, wind and depth. Sources: Cole & Caraco 1998,
// Wanninkhof 1992.
func SurfaceKLa(water quantity.Temperature, wind quantity.Speed, depth quantity.Length) (quantity.PerTime, error) {
	for _, err := range []error{
		quantity.Within("temp", water, Coldest, Warmest),
		quantity.Within("wind", wind, 0, 20),
		quantity.Within("depth", depth, 0.01, deepest),
	} {
		if err != nil {
			return 0, err
		}
	}
	k600 := 2.07 + 0.215*numeric.Pow(wind.MetresPerSecond(), 1.7)
	k := k600 / math.Sqrt(Schmidt(water)/600)
	return quantity.PerTime(k / 100 / depth.Metres()), nil
}

// Schmidt returns the Schmidt number of oxygen in fresh water; see SurfaceKLa.
func Schmidt(water quantity.Temperature) float64 {
	t := water.Celsius()
	return 1800.6 + t*(-120.10+t*(3.7818-t*0.047608))
}
