package recipe

import (
	"regexp"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Amount is how much of an ingredient a line asks for: a mass or a volume,
// either outright or for each litre of brew water. Exactly one of Mass and
// Volume is over zero.
type Amount struct {
	Mass     quantity.Mass
	Volume   quantity.Volume
	PerLitre bool
	Typed    string // as the grower wrote it
}

// The dimensions an amount may have.
var (
	massOnly      = quantity.Dimension{Mass: 1}
	volumeOnly    = quantity.Dimension{Length: 3}
	massPerVolume = quantity.Dimension{Mass: 1, Length: -3}
	noDimension   = quantity.Dimension{}
)

var percentOf = regexp.MustCompile(`(?i)^(.*)%\s*([wvm])\s*/\s*([wvm])\s*$`)

// ParseAmount reads "1 lb", "1/2 cup", "30 g/L", "1 tbsp/gal", "0.2 % w/v" and
// "0.1 % v/v". An ounce alone and a percent alone are refused with both
// readings named.
func ParseAmount(text string) (Amount, error) {
	if m := percentOf.FindStringSubmatch(text); m != nil {
		return percentAmount(text, m[1], strings.ToLower(m[2]+"/"+m[3]))
	}
	reading, err := quantity.Read(text)
	if err != nil {
		f := err.(*fault.Fault)
		f.Field, f.Allowed = "amount", wording.Say("recipe.amount.allowed")
		return Amount{}, f
	}
	a := Amount{Typed: strings.TrimSpace(text)}
	switch {
	case reading.Unit.Dim == massOnly:
		a.Mass = quantity.Grams(reading.SI * 1000)
	case reading.Unit.Dim == volumeOnly:
		a.Volume = quantity.Litres(reading.SI * 1000)
	case reading.Unit.Dim == massPerVolume:
		a.Mass, a.PerLitre = quantity.Grams(reading.SI), true
	case reading.Unit.Dim == noDimension && measuresVolume(reading.Unit.Name):
		a.Volume, a.PerLitre = quantity.Litres(reading.SI), true
	case reading.Unit.Name == "%":
		return Amount{}, amountFault(text, "recipe.amount.percent", "recipe.amount.percent.advice")
	default:
		return Amount{}, amountFault(text, "recipe.amount.kind", "")
	}
	return a, a.positive(text)
}

// percentAmount is g or mL in 100 mL of brew water.
func percentAmount(text, number, of string) (Amount, error) {
	share, err := quantity.Bare(number)
	if err != nil {
		f := err.(*fault.Fault)
		f.Field, f.Given, f.Allowed = "amount", text, wording.Say("recipe.amount.allowed")
		return Amount{}, f
	}
	a := Amount{PerLitre: true, Typed: strings.TrimSpace(text)}
	switch of {
	case "w/v", "m/v":
		a.Mass = quantity.Grams(share * 10)
	case "v/v":
		a.Volume = quantity.Millilitres(share * 10)
	default:
		return Amount{}, amountFault(text, "recipe.amount.percent", "recipe.amount.percent.advice")
	}
	return a, a.positive(text)
}

func (a Amount) positive(text string) error {
	if a.Mass > 0 || a.Volume > 0 {
		return nil
	}
	return amountFault(text, "recipe.amount.zero", "")
}

// measuresVolume tells 1 tbsp/gal from 1 g/kg, which has no dimension either.
func measuresVolume(unit string) bool {
	above, _, both := strings.Cut(unit, "/")
	if !both {
		return false
	}
	u, err := quantity.ParseUnit(above)
	return err == nil && u.Dim == volumeOnly
}

func amountFault(given, what, advice string) *fault.Fault {
	f := fault.New("amount", given, wording.Say(what), wording.Say("recipe.amount.allowed"), wording.Text{})
	if advice != "" {
		f.Advice = wording.Say(advice)
	}
	return f
}

// When is the moment an ingredient goes in. The zero value is the start.
type When struct {
	Finish bool
	Hours  float64 // from the start
}

// String is the moment as a file writes it: start, finish or "6 h".
func (w When) String() string {
	switch {
	case w.Finish:
		return "finish"
	case w.Hours > 0:
		return strconv.FormatFloat(w.Hours, 'g', -1, 64) + " h"
	}
	return "start"
}

// ParseWhen reads start, finish or hours from the start.
func ParseWhen(text string) (When, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "start", "":
		return When{}, nil
	case "finish":
		return When{Finish: true}, nil
	}
	span, err := quantity.ParseSpan(text)
	if err != nil || span.Hours() > longestBrew {
		return When{}, fault.New("when", text, wording.Say("recipe.when"), wording.Say("recipe.when.allowed"), wording.Text{})
	}
	return When{Hours: span.Hours()}, nil
}

// longestBrew is the number of hours that any brew may be planned for.
const longestBrew = 168
