package weather

import (
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Reasons says in a sentence each what keeps the hour from suiting, in the
// order of the factors.
func (s *Scored) Reasons(m Method) []wording.Text {
	reasons := []wording.Text{}
	for _, factor := range Factors {
		found := s.Findings[factor]
		switch {
		case !minded[m][factor] || factor == Gust && found.Mark == nil:
		case found.Mark == nil:
			reasons = append(reasons, wording.Say("weather.reason.unknown", wording.Places{"factor": wording.Say("weather.factor." + string(factor))}))
		case *found.Mark < Suits:
			reasons = append(reasons, s.reason(factor, found, m))
		}
	}
	if s.Coarse {
		reasons = append(reasons, wording.Say("weather.reason.coarse"))
	}
	return reasons
}

func (s *Scored) reason(factor Factor, found Finding, m Method) wording.Text {
	key := "weather.reason." + string(factor) + markWords[*found.Mark]
	if factor == Rain && m == Drench {
		key = "weather.reason.rain.drench"
	}
	if factor == Depression {
		key = "weather.reason.depression." + string(Rate(*s.Depression))
	}
	return wording.Say(key, wording.Places{"value": found.speaker(factor)})
}

var markWords = map[Mark]string{Stop: ".stop", Care: ".care"}

// speaker says a finding's value with its unit.
func (f Finding) speaker(factor Factor) any {
	if f.Value == nil {
		return f.Word
	}
	switch v := *f.Value; factor {
	case Rain:
		return quantity.Metres(v / 1000)
	case Frost, Temperature:
		return quantity.Celsius(v)
	case Wind, Gust:
		return quantity.KilometresPerHour(v)
	case Depression:
		return quantity.CelsiusStep(v)
	default:
		return v
	}
}

// LimitText names what limits an hour.
func (s *Scored) LimitText() wording.Text {
	if s.Limiting == "" {
		return wording.Text{}
	}
	return wording.Say("weather.factor." + string(s.Limiting))
}
