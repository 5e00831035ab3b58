package application

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Convention is how the second number of a ratio is read.
type Convention string

const (
	// Parts reads 1:8 as 1 of tea and 8 of water: 1/9 is tea. Tank mixes are
	// talked about this way.
	Parts Convention = "parts"
	// Total reads 1:8 as 1 of tea made up to 8: 1/8 is tea. Injectors are
	// rated this way.
	Total Convention = "total"
)

// Other is the convention that was not used.
func (c Convention) Other() Convention {
	if c == Total {
		return Parts
	}
	return Total
}

// thinnestRatio is the most water that a part of tea may be let down with.
const thinnestRatio = 10000

// Ratio is two numbers as people say them, tea first; Convention reads them.
type Ratio struct{ Tea, Water float64 }

// ParseRatio reads "1:8". Other ways to write it mean two things to two
// people, so they are refused and 1:8 is shown.
func ParseRatio(text string) (Ratio, error) {
	tea, water, two := strings.Cut(text, ":")
	if !two {
		return Ratio{}, badRatio(text, ratioDoubt(text))
	}
	var r Ratio
	var err error
	if r.Tea, err = quantity.Bare(tea); err != nil {
		return Ratio{}, badRatio(text, wording.Say("application.ratio.numbers"))
	}
	if r.Water, err = quantity.Bare(water); err != nil {
		return Ratio{}, badRatio(text, wording.Say("application.ratio.numbers"))
	}
	if r.Tea <= 0 {
		return Ratio{}, badRatio(text, wording.Say("application.ratio.no-tea"))
	}
	if r.Water < 0 {
		return Ratio{}, badRatio(text, wording.Say("application.ratio.negative"))
	}
	if over(r.Water, thinnestRatio*r.Tea) {
		return Ratio{}, badRatio(text, wording.Say("application.ratio.thin"))
	}
	return r, nil
}

// ratioDoubt names the two readings where a text without a colon has two.
func ratioDoubt(text string) wording.Text {
	if above, below, slash := strings.Cut(strings.TrimSpace(text), "/"); slash {
		return wording.Say("application.ratio.slash", wording.Places{"above": strings.TrimSpace(above), "below": strings.TrimSpace(below)})
	}
	if strings.Contains(text, "%") {
		return wording.Say("application.ratio.percent")
	}
	return wording.Say("application.ratio.numbers")
}

func badRatio(text string, what wording.Text) *fault.Fault {
	return fault.New("ratio", text, what, wording.Say("application.ratio.allowed"), wording.Say("application.ratio.advice"))
}

// Share is the share of tea in the mix:
//
//	parts: tea / (tea + water)
//	total: tea / water
//
// It refuses a total that is smaller than the tea in it.
func (r Ratio) Share(c Convention) (quantity.Share, error) {
	if c == Total {
		if over(r.Tea, r.Water) {
			return 0, fault.New("ratio", r.String(), wording.Say("application.ratio.total", wording.Places{"tea": r.Tea, "total": r.Water}),
				wording.Say("application.ratio.total.allowed"), wording.Say("application.ratio.total.advice"))
		}
		return quantity.Share(r.Tea / max(r.Water, r.Tea)), nil
	}
	return quantity.Share(r.Tea / (r.Tea + r.Water)), nil
}

// LooksTurned tells whether water first was probably meant: 4:1 for 1:4.
func (r Ratio) LooksTurned() bool { return r.Water >= 1 && r.Tea > r.Water }

// Turned is the ratio the other way round.
func (r Ratio) Turned() Ratio { return Ratio{Tea: r.Water, Water: r.Tea} }

// String writes the ratio as it is typed.
func (r Ratio) String() string { return digits3(r.Tea) + ":" + digits3(r.Water) }

// CheckShare refuses a share that no mix with tea in it can have.
func CheckShare(share quantity.Share) error {
	if share > 0 && !over(share.Fraction(), 1) {
		return nil
	}
	return fault.New("percent-tea", digits3(share.Percent())+" %", wording.Say("application.share"),
		wording.Say("application.share.allowed"), wording.Text{})
}

// Undiluted tells whether a share is all tea.
func Undiluted(share quantity.Share) bool { return share.Fraction() >= 1-slack }

// WaterPerTea is the parts of water to one part of tea.
func WaterPerTea(share quantity.Share) float64 {
	if Undiluted(share) {
		return 0
	}
	return (1 - share.Fraction()) / share.Fraction()
}

// OneIn is the parts of mix that hold one part of tea.
func OneIn(share quantity.Share) float64 { return 1 / share.Fraction() }
