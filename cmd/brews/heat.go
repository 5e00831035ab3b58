package main

import "math"

// weatherCourse is the outdoor air, as it is and as it was forecast, hourly
// from the full hour before the start.
type weatherCourse struct {
	first          float64 // of the first hour, in hours since the start; 0 or below
	true, forecast []float64
	wind, rain     []float64
	cloud          float64
}

// newWeather draws days and nights, the slow drift of a season, a front in some,
// and the errors of a forecast. Amplitudes and errors are a judgement.
func newWeather(c chance, clock, water, planned float64) weatherCourse {
	first := -(clock - math.Floor(clock))
	hours := int(planned) + 3
	w := weatherCourse{first: first, cloud: math.Round(c.between(10, 98))}
	mean := math.Min(29, math.Max(6, c.normal(water, 3.5)))
	swing := c.between(2, 8) * (1.2 - w.cloud/200)
	drift, wrong := c.wander(hours, 1, 1.5, 18), c.wander(hours, 1, c.between(1, 1.5), 10)
	front, size := math.Inf(1), 0.0
	if c.happens(0.3) {
		front, size = c.between(4, planned), c.between(-6, 3)
	}
	gust, wet := c.wide(0.3, 2), math.Inf(1)
	if c.happens(0.3) {
		wet = float64(c.IntN(hours))
	}
	for i := range hours {
		hour := math.Floor(clock) + float64(i)
		day := math.Cos(2 * math.Pi * (hour - 15) / 24)
		t := mean + swing*day + drift[i] + size/(1+math.Exp(-(first+float64(i)-front)))
		w.true = append(w.true, t)
		w.forecast = append(w.forecast, t+wrong[i])
		w.wind = append(w.wind, math.Max(0.1, gust*(1+0.5*day)))
		w.rain = append(w.rain, 0)
		if float64(i) >= wet && float64(i) < wet+3 {
			w.rain[i] = c.between(0.2, 3)
		}
	}
	return w
}

// at is the true air at an hour since the start.
func (w weatherCourse) at(hour float64) float64 {
	x := math.Max(0, hour-w.first)
	i := min(len(w.true)-2, int(x))
	return w.true[i] + math.Min(1, x-float64(i))*(w.true[i+1]-w.true[i])
}

// heat is a vessel that follows its surroundings with a lag.
type heat struct {
	lag     float64 // h
	cooling float64 // of evaporation, °C under the surroundings
	indoors bool
	room    float64 // °C
	wall    float64 // share of the outdoor swing that reaches the room
	mean    float64
}

// newHeat draws a vessel's walls: the lag goes with the side of the vessel, the
// cube root of its volume; 1.5 to 3.5 h for each is a bare to a wrapped plastic
// wall (U 4 to 10 W/(m² K)).
func newHeat(c chance, volume, start float64, w weatherCourse) heat {
	h := heat{
		lag: c.between(1.5, 3.5) * math.Cbrt(volume), cooling: c.between(0.4, 2), indoors: c.happens(0.5),
		room: math.Min(28, math.Max(13, c.normal(start, 2))), wall: c.between(0.05, 0.3),
	}
	for _, t := range w.true {
		h.mean += t / float64(len(w.true))
	}
	return h
}

// burning is the heat of respiration: 14.2 J/mg O2 over 4186 J/(L K).
const burning = 14.2 / 4186

// step is the water after some hours, °C.
func (h heat) step(water, outdoors, uptake, hours float64) float64 {
	around := outdoors
	if h.indoors {
		around = h.room + h.wall*(outdoors-h.mean)
	}
	target := around - h.cooling + uptake*burning*h.lag
	return math.Max(1, target+(water-target)*math.Exp(-hours/h.lag))
}
