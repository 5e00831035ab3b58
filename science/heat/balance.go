// Package heat is about a vessel of water that stands in air: what warms and
// cools it, how warm it is after some hours, where it settles and how much of
// it goes off as vapour. Pure arithmetic: no clock, no files.
package heat

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/weather"
)

// heatCapacity is that of water, J for a litre and a kelvin, at 20 °C.
const heatCapacity = 4186

// metabolic is the heat of life, J for a gram of oxygen taken up: 450 to 460
// kJ per mol (oxycaloric equivalent, from memory).
const metabolic = 14200

// Vessel is well-mixed water and what acts on it. Everything stays as it is
// but the water's own temperature. Zero leaves a term out.
type Vessel struct {
	Volume   quantity.Volume
	Air      weather.MoistAir  // round it; its vapour matters to bubbles and surface
	Walls    quantity.HeatLoss // of walls, lid and surface together
	Bubbles  quantity.Flow     // free air, which leaves saturated at the water's temperature
	Surface  quantity.Area     // open to the air, for evaporation
	Wind     quantity.Speed    // over it
	Pump     quantity.Power    // that ends in the water
	Heater   quantity.Power
	Activity quantity.Uptake // oxygen taken up by what lives in it
}

// TypicalWalls is the heat loss of a bare vessel as tall as it is wide.
//
//	5 W/(m² K) x 5.536 V^(2/3), V in m³
//
// 5.536 V^(2/3) is the surface of such a cylinder. Common practice for the 5.
func TypicalWalls(v quantity.Volume) quantity.HeatLoss {
	return quantity.WattsPerKelvin(5 * 5.536 * math.Pow(v.CubicMetres(), 2./3))
}

// MeasuredWalls is the heat loss by two temperatures of still water without
// air or heater: Newton's law of cooling turned round.
//
//	UA = m c ln((start - air)/(later - air)) / time
//
// Later lies between start and air; the caller checks that.
func MeasuredWalls(v quantity.Volume, start, later, air quantity.Temperature, after quantity.Span) quantity.HeatLoss {
	return quantity.HeatLoss(v.Litres() * heatCapacity * math.Log(float64((start-air)/(later-air))) / after.Seconds())
}

// LatentHeat is the heat of evaporation of water.
//
//	2501 - 2.361 T, kJ/kg
//
// Range: 0 to 60 °C, within 2.5 kJ/kg of IAPWS-IF97 to 40 °C.
func LatentHeat(t quantity.Temperature) float64 { return 2501 - 2.361*t.Celsius() }

// Terms are the heat flows into the water, W; losses are negative.
type Terms struct {
	Walls, Bubbles, Surface, Pump, Heater, Life float64
}

// Net is their sum.
func (t Terms) Net() float64 { return t.Walls + t.Bubbles + t.Surface + t.Pump + t.Heater + t.Life }

// Terms are the heat flows at a water temperature.
//
//	walls    UA (T_air - T)
//	bubbles  -1000 m_da ((w_sat(T) - w_in) L - (1.005 + 1.86 w_in) (T_air - T))
//	surface  -1000 A (e_w - e_a) (0.089 + 0.0782 v)
//	life     14.2 kJ/g x uptake x V
//
// m_da is kg/s of dry air, w its humidity ratio, L the latent heat, e vapour
// pressure in kPa, v m/s. No radiation, no heat of compression.
// Source: terms of the aeration tank models of Talati 1988 and Sedory 1992;
// surface: ASHRAE Handbook, HVAC Applications (Carrier).
func (v Vessel) Terms(water quantity.Temperature) Terms {
	return Terms{
		Walls:   v.Walls.WattsPerKelvin() * float64(v.Air.Temperature-water),
		Bubbles: v.bubbleHeat(water),
		Surface: v.surfaceHeat(water),
		Pump:    v.Pump.Watts(),
		Heater:  v.Heater.Watts(),
		Life:    metabolic * v.Activity.MilligramsPerLitreHour() / 1000 / 3600 * v.Volume.Litres(),
	}
}

// gasConstantDryAir is R of dry air, kJ/(kg K) (ASHRAE 2017, chapter 1).
const gasConstantDryAir = 0.287042

// dryAir is the kg/s of dry air in the bubbles, at the air's own temperature
// and pressure.
func (v Vessel) dryAir() float64 {
	dry := (v.Air.Pressure - v.Air.Vapour).Kilopascals()
	return dry / (gasConstantDryAir * v.Air.Temperature.Kelvin()) * v.Bubbles.CubicMetresPerSecond()
}

// saturatedRatio is the humidity ratio of bubbles that leave the water. Near
// boiling it has no bound; there it is held at where vapour is all but a
// thousandth of the air.
func (v Vessel) saturatedRatio(water quantity.Temperature) float64 {
	vapour := min(weather.SaturationVapour(water), 0.999*v.Air.Pressure)
	return weather.HumidityRatio(vapour, v.Air.Pressure)
}

func (v Vessel) bubbleHeat(water quantity.Temperature) float64 {
	if v.Bubbles == 0 {
		return 0
	}
	in := v.Air.HumidityRatio()
	latent := (v.saturatedRatio(water) - in) * LatentHeat(water)
	sensible := (1.005 + 1.86*in) * float64(v.Air.Temperature-water)
	return -1000 * v.dryAir() * (latent - sensible)
}

func (v Vessel) surfaceHeat(water quantity.Temperature) float64 {
	if v.Surface == 0 {
		return 0
	}
	drive := (weather.SaturationVapour(water) - v.Air.Vapour).Kilopascals()
	return -1000 * v.Surface.SquareMetres() * drive * (0.089 + 0.0782*v.Wind.MetresPerSecond())
}

// Evaporation is the water that leaves as vapour at a water temperature, kg/h;
// under zero it condenses.
func (v Vessel) Evaporation(water quantity.Temperature) float64 {
	perSecond := 0.0
	if v.Bubbles != 0 {
		perSecond += v.dryAir() * (v.saturatedRatio(water) - v.Air.HumidityRatio())
	}
	if v.Surface != 0 {
		perSecond -= v.surfaceHeat(water) / 1000 / LatentHeat(water)
	}
	return 3600 * perSecond
}

// warming is how fast the water warms, K/h.
func (v Vessel) warming(t float64) float64 {
	return v.Terms(quantity.Celsius(t)).Net() * 3600 / (v.Volume.Litres() * heatCapacity)
}

// TimeConstant is m c / UA: how long the walls take for 63 % of the way. ok is
// false for walls that lose nothing.
func (v Vessel) TimeConstant() (t quantity.Span, ok bool) {
	if v.Walls <= 0 {
		return 0, false
	}
	return quantity.Seconds(v.Volume.Litres() * heatCapacity / v.Walls.WattsPerKelvin()), true
}
