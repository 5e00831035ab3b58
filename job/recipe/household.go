package recipe

import (
	"math"
	"strconv"
	"strings"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// Measure is the nearest amount a person can measure with what is in the shed.
type Measure struct {
	Text         string   // "1 qt 2/3 cup"; "" below half of the smallest measure
	ErrorPercent *float64 // (measure - exact)/exact x 100; nil with no text
	Coarse       bool     // over 5 %, or nothing small enough: weigh it
}

// coarseAbove is the rounding error from which weighing is the better way.
const coarseAbove = 5

// Household rounds a volume to household measures of the reader's system.
func Household(v quantity.Volume, units wording.Units) Measure {
	if units == wording.Metric {
		return metricMeasure(v)
	}
	return usMeasure(v)
}

func measure(text string, measured, exact float64) Measure {
	off := (measured - exact) / exact * 100
	return Measure{Text: text, ErrorPercent: &off, Coarse: math.Abs(off) > coarseAbove}
}

// metricMeasure rounds to what jugs and syringes are marked with: 0.5 mL below
// 10 mL, 1 mL below 100, 10 mL below 1 L, 50 mL above.
func metricMeasure(v quantity.Volume) Measure {
	exact := v.Millilitres()
	step := 50.0
	switch {
	case exact < 10:
		step = 0.5
	case exact < 100:
		step = 1
	case exact < 1000:
		step = 10
	}
	if exact < 0.25 {
		return Measure{Coarse: true}
	}
	rounded := math.Round(exact/step) * step
	if rounded >= 1000 {
		return measure(plainNumber(rounded/1000)+" L", rounded, exact)
	}
	return measure(plainNumber(rounded)+" mL", rounded, exact)
}

func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// US measures are counted in 1/24 teaspoon, the largest unit that all of them
// are whole multiples of, so that sums are exact.
const (
	grainsPerTsp  = 24
	grainsPerTbsp = 3 * grainsPerTsp
	grainsPerCup  = 48 * grainsPerTsp
	grainsPerQt   = 4 * grainsPerCup
	grainsPerGal  = 4 * grainsPerQt
	smallestGrain = grainsPerTsp / 8
)

// spoonful is one way of filling one kind of measure; 0 grains is leaving it.
type spoonful struct {
	grains int
	text   string
}

// The ways of filling each kind, smallest first.
var (
	quarts      = fill("qt", grainsPerQt, []int{1, 2, 3}, []string{""}, []int{0})
	cups        = fill("cup", grainsPerCup, []int{0, 1, 2, 3}, []string{"", "1/4", "1/3", "1/2", "2/3", "3/4"}, []int{0, 12 * grainsPerTsp, 16 * grainsPerTsp, 24 * grainsPerTsp, 32 * grainsPerTsp, 36 * grainsPerTsp})
	tablespoons = fill("tbsp", grainsPerTbsp, []int{1, 2, 3}, []string{""}, []int{0})
	teaspoons   = fill("tsp", grainsPerTsp, []int{0, 1, 2}, []string{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"}, []int{0, 3, 6, 9, 12, 15, 18, 21})
)

func fill(unit string, grains int, wholes []int, fractions []string, parts []int) []spoonful {
	ways := []spoonful{{}}
	for _, whole := range wholes {
		for i, fraction := range fractions {
			if whole == 0 && fraction == "" {
				continue
			}
			words := []string{}
			if whole > 0 {
				words = append(words, strconv.Itoa(whole))
			}
			if fraction != "" {
				words = append(words, fraction)
			}
			ways = append(ways, spoonful{whole*grains + parts[i], strings.Join(append(words, unit), " ")})
		}
	}
	return ways
}

// mostMeasures keeps a measure something a person can remember on the way to
// the tank, and fineEnough is the error at which fewer measures win.
const (
	mostMeasures = 3
	fineEnough   = 0.025
)

// choice is one combination of measures.
type choice struct {
	gallons                   float64
	quart, cup, tablespoon, t spoonful
}

func (c choice) grains() float64 {
	return c.gallons*grainsPerGal + float64(c.quart.grains+c.cup.grains+c.tablespoon.grains+c.t.grains)
}

func (c choice) texts() []string {
	var texts []string
	if c.gallons > 0 {
		texts = append(texts, plainNumber(c.gallons)+" gal")
	}
	for _, s := range []spoonful{c.quart, c.cup, c.tablespoon, c.t} {
		if s.text != "" {
			texts = append(texts, s.text)
		}
	}
	return texts
}

func (c choice) measures() int {
	count := 0
	if c.gallons > 0 {
		count++
	}
	for _, s := range [...]spoonful{c.quart, c.cup, c.tablespoon, c.t} {
		if s.grains > 0 {
			count++
		}
	}
	return count
}

// usMeasure takes the fewest measures whose error is at most 2.5 %, else the
// nearest there is with three.
func usMeasure(v quantity.Volume) Measure {
	exact := v.USGallons() * grainsPerGal
	if exact < smallestGrain/2. {
		return Measure{Coarse: true}
	}
	best := nearestChoices(exact)
	chosen, nearest := choice{}, math.Inf(1)
	for count := 1; count <= mostMeasures; count++ {
		off := math.Abs(best[count].grains() - exact)
		if best[count].grains() > 0 && off < nearest {
			chosen, nearest = best[count], off
		}
		if nearest <= fineEnough*exact {
			break
		}
	}
	return measure(strings.Join(chosen.texts(), " "), chosen.grains(), exact)
}

// nearestChoices finds the nearest combination of exactly 1, 2 and 3 measures;
// of equals the one with the larger first measure.
func nearestChoices(exact float64) [mostMeasures + 1]choice {
	var best [mostMeasures + 1]choice
	for q := len(quarts) - 1; q >= 0; q-- {
		for c := len(cups) - 1; c >= 0; c-- {
			for b := len(tablespoons) - 1; b >= 0; b-- {
				for t := len(teaspoons) - 1; t >= 0; t-- {
					try := choice{0, quarts[q], cups[c], tablespoons[b], teaspoons[t]}
					try.gallons = math.Max(0, math.Round((exact-try.grains())/grainsPerGal))
					n := try.measures()
					if n < 1 || n > mostMeasures {
						continue
					}
					if best[n].grains() == 0 || math.Abs(try.grains()-exact) < math.Abs(best[n].grains()-exact) {
						best[n] = try
					}
				}
			}
		}
	}
	return best
}
