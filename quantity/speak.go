package quantity

import (
	"math"
	"strconv"

	"aerosteep/wording"
)

// say writes a number with its unit; a no-break space keeps them together.
func say(number, unit string) string { return number + "\u00a0" + unit }

// shown is a unit for print: how many of it there are in one kept unit.
type shown struct {
	unit  string
	perIt float64
	from  float64 // smallest kept value that it is used for
}

// pick takes the largest unit whose threshold the value reaches.
func pick(v float64, units []shown) shown {
	for _, u := range units {
		if math.Abs(v) >= u.from*(1-1e-9) {
			return u
		}
	}
	return units[len(units)-1]
}

func speakIn(v float64, digits int, units []shown, r wording.Reader) string {
	u := pick(v, units)
	return say(wording.Number(v*u.perIt, digits, r), u.unit)
}

func choose(r wording.Reader, us, metric []shown) []shown {
	if r.Units == wording.US {
		return us
	}
	return metric
}

// Speak prints a temperature to 0.1 degree.
func (t Temperature) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Fixed(t.Fahrenheit(), 1, r), "°F")
	}
	return say(wording.Fixed(t.Celsius(), 1, r), "°C")
}

// Speak prints a difference to 0.1 degree.
func (t TemperatureStep) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Fixed(t.Fahrenheit(), 1, r), "°F")
	}
	return say(wording.Fixed(t.Celsius(), 1, r), "°C")
}

// Speak prints a pressure to 3 digits.
func (p Pressure) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(float64(p)/6.894757293168, 3, r), "psi")
	}
	return say(wording.Number(float64(p), 3, r), "kPa")
}

var (
	usLengths     = []shown{{"mi", 1 / metresPerMile, metresPerMile}, {"ft", 1 / metresPerFoot, metresPerFoot}, {"in", 1 / metresPerInch, 0.001}, {"µm", 1e6, 0}}
	metricLengths = []shown{{"km", 1e-3, 1e4}, {"m", 1, 1}, {"cm", 100, 0.05}, {"mm", 1000, 0.001}, {"µm", 1e6, 0}}
	usAreas       = []shown{{"acre", 1 / squareMetresPerAcre, squareMetresPerAcre}, {"sq\u00a0ft", 1 / (metresPerFoot * metresPerFoot), 0.01}, {"sq\u00a0in", 1 / (metresPerInch * metresPerInch), 1e-4}, {"mm²", 1e6, 0}}
	metricAreas   = []shown{{"ha", 1e-4, 1e4}, {"m²", 1, 0.1}, {"cm²", 1e4, 1e-4}, {"mm²", 1e6, 0}}
	usVolumes     = []shown{{"gal", 1 / litresPerUSGallon, litresPerUSGallon / 2}, {"cup", 16 / litresPerUSGallon, litresPerUSGallon / 16}, {"fl\u00a0oz", 128 / litresPerUSGallon, 0.015}, {"tsp", 768 / litresPerUSGallon, 0.0005}, {"mL", 1000, 0}}
	metricVolumes = []shown{{"m³", 1e-3, 1e5}, {"L", 1, 1}, {"mL", 1000, 0}}
	usMasses      = []shown{{"lb", 1 / gramsPerPound, gramsPerPound}, {"oz\u00a0wt", 16 / gramsPerPound, 5}, {"g", 1, 0.01}, {"mg", 1000, 0}}
	metricMasses  = []shown{{"t", 1e-6, 1e7}, {"kg", 1e-3, 1000}, {"g", 1, 0.1}, {"mg", 1000, 0}}
)

// Speak prints a length in the unit a person would measure it in.
func (l Length) Speak(r wording.Reader) string {
	if l == 0 {
		return say("0", choose(r, usLengths[2:], metricLengths[3:])[0].unit)
	}
	return speakIn(float64(l), 3, choose(r, usLengths, metricLengths), r)
}

// Speak prints an area in the unit a person would measure it in.
func (a Area) Speak(r wording.Reader) string {
	return speakIn(float64(a), 3, choose(r, usAreas, metricAreas), r)
}

// Speak prints a volume in the unit a person would measure it in.
func (v Volume) Speak(r wording.Reader) string {
	return speakIn(float64(v), 3, choose(r, usVolumes, metricVolumes), r)
}

// Speak prints a mass in the unit a person would weigh it in.
func (m Mass) Speak(r wording.Reader) string {
	return speakIn(float64(m), 3, choose(r, usMasses, metricMasses), r)
}

// Speak prints a speed to 2 digits.
func (s Speed) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(s.MilesPerHour(), 2, r), "mph")
	}
	return say(wording.Number(s.KilometresPerHour(), 2, r), "km/h")
}

// Speak prints a flow: US gallons or litres a minute.
func (f Flow) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(f.USGallonsPerMinute(), 3, r), "gal/min")
	}
	return say(wording.Number(f.LitresPerMinute(), 3, r), "L/min")
}

// Airflow is a flow of free air, which US readers know in cfm.
type Airflow Flow

// Speak prints cfm or litres a minute.
func (f Airflow) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(float64(f)/(cubicFoot*1000), 3, r), "cfm")
	}
	return say(wording.Number(float64(f), 3, r), "L/min")
}

// Speak prints a span of time in the unit it is thought of in: seconds,
// minutes, hours or days.
func (s Span) Speak(r wording.Reader) string {
	units := []shown{{"d", 1. / 86400, 72 * 3600}, {"h", 1. / 3600, 2 * 3600}, {"min", 1. / 60, 90}, {"s", 1, 0}}
	return speakIn(float64(s), 3, units, r)
}

// Speak prints an energy in kWh.
func (e Energy) Speak(r wording.Reader) string {
	return say(wording.Number(e.KilowattHours(), 3, r), "kWh")
}

// Speak prints a power in W.
func (p Power) Speak(r wording.Reader) string { return say(wording.Number(float64(p), 3, r), "W") }

// Speak prints mg/L in both systems: oxygen stays mg/L. One decimal where the
// measurement bears no more, two under a worksheet's eye.
func (c Concentration) Speak(r wording.Reader) string {
	v := float64(c)
	if math.Abs(v) >= 20 {
		return say(wording.Number(v, 3, r), "mg/L")
	}
	return say(wording.Fixed(v, 2, r), "mg/L")
}

// DissolvedOxygen is a concentration of oxygen as a meter or a forecast gives
// it: one decimal and no more.
type DissolvedOxygen Concentration

// Speak prints one decimal.
func (c DissolvedOxygen) Speak(r wording.Reader) string {
	return say(wording.Fixed(float64(c), 1, r), "mg/L")
}

// Speak prints a density in g/mL.
func (d Density) Speak(r wording.Reader) string {
	return say(wording.Number(float64(d), 3, r), "g/mL")
}

// Speak prints a conductivity in µS/cm.
func (c Conductivity) Speak(r wording.Reader) string {
	return say(wording.Number(float64(c), 3, r), "µS/cm")
}

// Speak prints a salinity in PSU.
func (s Salinity) Speak(r wording.Reader) string {
	return say(wording.Number(float64(s), 3, r), "PSU")
}

// Speak prints a dose per acre or hectare, and per square where it is large.
func (d Dose) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(d.USGallonsPerAcre(), 3, r), "gal/ac")
	}
	return say(wording.Number(d.LitresPerHectare(), 3, r), "L/ha")
}

// Speak prints a mass per area.
func (d MassDose) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(float64(d)*squareMetresPerAcre/gramsPerPound, 3, r), "lb/ac")
	}
	return say(wording.Number(d.KilogramsPerHectare(), 3, r), "kg/ha")
}

// Speak prints a rate constant per hour.
func (p PerTime) Speak(r wording.Reader) string {
	return say(wording.Number(float64(p), 3, r), "/h")
}

// Speak prints an uptake in mg/L/h.
func (u Uptake) Speak(r wording.Reader) string {
	return say(wording.Number(float64(u), 3, r), "mg/L/h")
}

// Speak prints a depth rate in in/h or mm/h.
func (d DepthRate) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(float64(d)/25.4, 3, r), "in/h")
	}
	return say(wording.Number(float64(d), 3, r), "mm/h")
}

// Speak prints a heat loss in W/K.
func (h HeatLoss) Speak(r wording.Reader) string {
	return say(wording.Number(float64(h), 3, r), "W/K")
}

// Speak prints water held by soil.
func (w WaterHolding) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(float64(w)*0.012, 3, r), "in/ft")
	}
	return say(wording.Number(float64(w), 3, r), "mm/m")
}

// Speak prints a share in percent.
func (s Share) Speak(r wording.Reader) string {
	return say(wording.Number(s.Percent(), 3, r), "%")
}

// Speak prints liquid per space.
func (f Fill) Speak(r wording.Reader) string {
	if r.Units == wording.US {
		return say(wording.Number(float64(f)*cubicFoot*1000/litresPerUSGallon, 3, r), "gal/1000\u00a0cu\u00a0ft")
	}
	return say(wording.Number(float64(f), 3, r), "L/m³")
}

// shortest writes a number as it was typed: no more digits than it needs.
func shortest(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
