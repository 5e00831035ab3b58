package forecast

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Scenario is a future in which something is done otherwise from now on. The
// zero value changes nothing.
type Scenario struct {
	Air    float64                  // in 100, of airflow
	Food   float64                  // in 100, of what is still to be put in
	Finish quantity.Span            // by which the end moves
	Water  quantity.TemperatureStep // by which the water is warmed now and held off its course
}

var whatIfPart = regexp.MustCompile(`^(air|food|finish|temp)\s*([+\-−]?)\s*(\d+(?:[.,]\d+)?)\s*(%|h|°?\s*[CcFf]|K)$`)

// The widest futures that make sense to ask for.
const (
	mostPercent = 400.0
	mostHours   = 72.0
	mostDegrees = 20.0
)

// ParseScenario reads "air +30 %, food -25 %, finish -4 h, temp -2 C".
//
// Errors: *fault.Fault of what-if.
func ParseScenario(text string) (Scenario, error) {
	s := Scenario{}
	seen := map[string]bool{}
	for _, part := range strings.Split(text, ",") {
		m := whatIfPart.FindStringSubmatch(strings.TrimSpace(part))
		if m == nil || seen[m[1]] {
			return s, whatIfFault(strings.TrimSpace(part))
		}
		seen[m[1]] = true
		value, err := strconv.ParseFloat(m[3], 64)
		if err != nil {
			return s, whatIfFault(part)
		}
		if m[2] == "-" || m[2] == "−" {
			value = -value
		}
		if !s.set(m[1], value, strings.TrimLeft(m[4], "° ")) {
			return s, whatIfFault(strings.TrimSpace(part))
		}
	}
	return s, nil
}

func (s *Scenario) set(what string, value float64, unit string) bool {
	switch {
	case what == "air" && unit == "%" && value >= -100 && value <= mostPercent:
		s.Air = value
	case what == "food" && unit == "%" && value >= -100 && value <= mostPercent:
		s.Food = value
	case what == "finish" && unit == "h" && math.Abs(value) <= mostHours:
		s.Finish = quantity.Hours(value)
	case what == "temp" && strings.ContainsAny(unit, "CcKFf"):
		if strings.ContainsAny(unit, "Ff") {
			value /= 1.8
		}
		s.Water = quantity.CelsiusStep(value)
		return math.Abs(value) <= mostDegrees
	default:
		return false
	}
	return true
}

func whatIfFault(part string) *fault.Fault {
	return fault.New("what-if", part, wording.Say("forecast.what-if.unknown"), wording.Say("forecast.what-if.allowed"), wording.Say("forecast.what-if.advice"))
}

// IsZero tells whether nothing is done otherwise.
func (s Scenario) IsZero() bool { return s == Scenario{} }

// If makes the forecast of the same members in a changed future. What is past
// stays as it is.
func (f *Forecast) If(s Scenario) *Forecast { return f.with(s, 1) }

// with does so for every n-th member.
func (f *Forecast) with(s Scenario, every int) *Forecast {
	q := *f.question
	changes := s.changed(f.changes, q.Now, q.Setup.Planned.Hours())
	q.Setup.Planned = max(q.Setup.Planned+s.Finish, quantity.Hours(math.Max(q.Now, 0.25)))
	other := &Forecast{
		State: f.State, Used: f.Used, Doubted: f.Doubted, Limit: f.Limit,
		question: &q, changes: changes, started: f.started, now: f.started.thinned(every),
	}
	other.Course = slices.Clone(f.Course[:f.past])
	other.past = f.past
	for i := range other.now.members {
		m := &other.now.members[i]
		m.water += s.Water.Celsius()
		m.held += s.Water.Celsius()
	}
	if s.Water != 0 {
		other.State.Water = other.now.band(func(m *member) float64 { return m.water })
		other.State.Saturation = other.now.climate.row(other.State.Water.Median).saturation
	}
	other.ahead()
	return other
}

// changed applies a scenario to what happens from now on.
func (s Scenario) changed(changes []change, now, planned float64) []change {
	out := slices.Clone(changes)
	for i := range out {
		c := &out[i]
		if !c.pending(now) {
			continue
		}
		share := math.Max(0, 1+s.Food/100)
		c.ready, c.slow, c.nitrogen = c.ready*share, c.slow*share, c.nitrogen*share
		if c.finish {
			c.hour = math.Max(now, planned+s.Finish.Hours())
		}
	}
	if s.Air != 0 {
		air := airAt(changes, now) * numeric.Pow(math.Max(0, 1+s.Air/100), airExponent)
		out = append(out, change{hour: now, air: &air})
	}
	slices.SortStableFunc(out, byHour)
	return out
}

// pending tells whether food is still to be put in: after now or, before the
// start, from the start on.
func (c *change) pending(now float64) bool {
	return c.ready+c.slow+c.nitrogen > 0 && (c.hour > now+sameMoment || now <= 0)
}

// Pending tells whether any food is still to be put in.
func (f *Forecast) Pending() bool {
	return slices.ContainsFunc(f.changes, func(c change) bool { return !c.finish && c.pending(f.question.Now) })
}

// thinned is a copy of the ensemble with every n-th member.
func (e *ensemble) thinned(every int) *ensemble {
	other := &ensemble{setup: e.setup, climate: e.climate, limit: e.limit, boldness: 1, seen: e.seen}
	for i := 0; i < len(e.members); i += every {
		other.members = append(other.members, e.members[i])
		other.weights = append(other.weights, 1)
	}
	return other
}
