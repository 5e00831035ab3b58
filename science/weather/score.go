package weather

import (
	"time"

	"aerosteep/quantity"
)

// Method is how tea is put on, as far as the weather minds.
type Method string

// The methods.
const (
	Foliar Method = "foliar"
	Drench Method = "drench"
)

// Mark is what a factor says of an hour: Suits, Care or Stop. A nil mark is
// not known.
type Mark = int

// The marks. The lowest of an hour is its score: no weights, nothing hidden.
const (
	Stop  Mark = 0
	Care  Mark = 1
	Suits Mark = 2
)

// Factor names what is looked at in an hour.
type Factor string

// The factors, in the order in which they are looked at.
const (
	Rain        Factor = "rain"
	Frost       Factor = "frost"
	Wind        Factor = "wind"
	Gust        Factor = "gust"
	Inversion   Factor = "inversion"
	Depression  Factor = "depression"
	Temperature Factor = "temperature"
	UV          Factor = "uv"
	// CoarseForecast limits an hour that was drawn between two distant ones.
	CoarseForecast Factor = "coarse-forecast"
)

// Factors lists them in that order.
var Factors = []Factor{Rain, Frost, Wind, Gust, Inversion, Depression, Temperature, UV}

// minded are the factors that a method minds.
var minded = map[Method]map[Factor]bool{
	Foliar: {Rain: true, Frost: true, Wind: true, Gust: true, Inversion: true, Depression: true, Temperature: true, UV: true},
	Drench: {Rain: true, Frost: true, Wind: true, Temperature: true},
}

// Minds tells whether a method minds a factor.
func (m Method) Minds(f Factor) bool { return minded[m][f] }

// Finding is what one factor says.
type Finding struct {
	Mark  *Mark    // nil where it is not known, or not minded
	Value *float64 // in the factor's unit; nil where there is none
	Word  string   // of inversion
}

// InversionSign is how likely cold air lies still under warmer air.
type InversionSign string

// The signs.
const (
	Unlikely InversionSign = "unlikely"
	Possible InversionSign = "possible"
	Likely   InversionSign = "likely"
)

// Verdict is an hour's score in a word.
type Verdict string

// The verdicts.
const (
	VerdictSuits   Verdict = "suits"
	VerdictCare    Verdict = "care"
	VerdictStop    Verdict = "stop"
	VerdictUnknown Verdict = "unknown"
)

// Scored is an hour with what was found of it.
type Scored struct {
	Hour
	Findings     map[Factor]Finding
	Score        *Mark
	Verdict      Verdict
	Limiting     Factor // "" where it suits
	Depression   *quantity.TemperatureStep
	UV           *float64
	SunElevation *float64
	Inversion    InversionSign // "" without a place
	Conflict     bool          // low sun and still air, for foliar
	Surface      []SurfaceSign // of leaves and soil, by the hours before
}

// Question is what the hours are judged for.
type Question struct {
	Method   Method
	Place    *Place // nil: sun, ultraviolet and inversion stay unknown
	Altitude quantity.Length
	Intake   quantity.DepthRate // of the soil, for a drench
}

// Score judges every hour of a forecast. The limits are common practice, with
// their sources in the table of each factor.
func Score(f *Forecast, q Question) []Scored {
	scored := make([]Scored, len(f.Hours))
	for i := range f.Hours {
		scored[i] = scoreHour(f.Hours, i, q)
	}
	return scored
}

func scoreHour(hours []Hour, i int, q Question) Scored {
	s := Scored{Hour: hours[i], Findings: make(map[Factor]Finding, len(Factors))}
	s.lookUp(q)
	s.Surface = surfaceSigns(hours, i, q.Method)
	s.Findings[Rain] = rain(hours, i, q)
	s.Findings[Frost] = frost(hours, i)
	s.Findings[Wind] = wind(s.Hour, q.Method)
	s.Findings[Gust] = gust(s.Hour)
	s.Findings[Inversion] = s.inversionFinding()
	s.Findings[Depression] = s.depressionFinding()
	s.Findings[Temperature] = temperature(s.Hour, q.Method)
	s.Findings[UV] = s.uvFinding()
	for _, factor := range Factors {
		if !minded[q.Method][factor] {
			found := s.Findings[factor]
			found.Mark = nil
			s.Findings[factor] = found
		}
	}
	s.judge(q.Method)
	return s
}

// lookUp works out the sun, the air and the inversion sign at the middle of
// the hour.
func (s *Scored) lookUp(q Question) {
	if air, ok := s.Air(q.Altitude); ok {
		s.Depression = new(air.Depression())
	}
	if q.Place == nil {
		return
	}
	middle := s.At.Add(30 * time.Minute)
	s.SunElevation = new(elevation(middle, *q.Place))
	s.UV = s.Hour.UV
	if s.UV == nil {
		s.UV = new(ClearSkyUV(*s.SunElevation, standardOzone))
	}
	s.Inversion = inversionSign(s.Hour, middle, *q.Place)
}

// standardOzone is the ozone column taken where nobody measured it, in Dobson
// units.
const standardOzone = 300

// judge takes the lowest mark: 0 beats unknown, unknown beats the rest. A gust
// that nobody forecast does not count.
func (s *Scored) judge(m Method) {
	var lowest *Mark
	var limits, unknown Factor
	for _, factor := range Factors {
		found := s.Findings[factor]
		switch {
		case !minded[m][factor] || factor == Gust && found.Mark == nil:
		case found.Mark == nil && unknown == "":
			unknown = factor
		case found.Mark != nil && (lowest == nil || *found.Mark < *lowest):
			lowest, limits = found.Mark, factor
		}
	}
	switch {
	case lowest != nil && *lowest == Stop:
	case unknown != "":
		lowest, limits = nil, unknown
	case s.Coarse && *lowest == Suits:
		lowest, limits = new(Care), CoarseForecast
	}
	s.Score, s.Limiting, s.Verdict = lowest, limits, verdict(lowest)
	if s.Verdict == VerdictSuits {
		s.Limiting = ""
	}
	uv, inversion := s.Findings[UV].Mark, s.Findings[Inversion].Mark
	s.Conflict = m == Foliar && uv != nil && *uv == Suits && inversion != nil && *inversion < Suits
}

func verdict(score *Mark) Verdict {
	switch {
	case score == nil:
		return VerdictUnknown
	case *score == Stop:
		return VerdictStop
	case *score == Care:
		return VerdictCare
	}
	return VerdictSuits
}
