package spray

import (
	"math"
	"slices"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Way is one of the three classical ways to calibrate where a person walks or
// drives with a nozzle.
type Way string

const (
	ByPlot   Way = "plot"               // what went on a measured plot
	ByNozzle Way = "flow-speed-width"   // a timed catch, a timed course, a width
	ByOunces Way = "fluid-ounce-course" // a catch over the course of 1/128 acre
)

// WaysAgree is how far apart two ways may lie: 3 % of their mean (common
// practice: within that, measuring cups and stop watches explain it).
const WaysAgree = 0.03

// Found is the rate that one way gave.
type Found struct {
	Way  Way
	Rate quantity.Dose
}

// Compared are the ways side by side.
type Compared struct {
	Rate   quantity.Dose // what to go on with: the median; of two, their mean
	Spread float64       // (largest - smallest) / mean; 0 of one way
	Agree  bool          // Spread within WaysAgree, of two ways or more
	Odd    Way           // the one that is out while the others agree; "" where none is
}

// Compare puts the ways side by side. At least one, every rate over 0.
//
// Source: Ohio State University Extension AEX-520 for the ways; that the odd one
// of three is the one to repeat is common practice.
func Compare(ways []Found) (Compared, error) {
	var rates []quantity.Dose
	for _, w := range ways {
		if err := overZero(amount(string(w.Way), w.Rate)); err != nil {
			return Compared{}, err
		}
		rates = append(rates, w.Rate)
	}
	if len(rates) == 0 {
		return Compared{}, fault.New("caught", "", wording.Say("spray.no-way"), wording.Say("spray.no-way.allowed"), wording.Text{})
	}
	slices.Sort(rates)
	c := Compared{Rate: middle(rates), Spread: spread(rates)}
	c.Agree = len(rates) > 1 && c.Spread <= WaysAgree*(1+1e-9)
	if !c.Agree {
		c.Odd = oddOf(ways)
	}
	return c, nil
}

func middle(sorted []quantity.Dose) quantity.Dose {
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}

func spread(sorted []quantity.Dose) float64 {
	sum := quantity.Dose(0)
	for _, r := range sorted {
		sum += r
	}
	return float64((sorted[len(sorted)-1] - sorted[0]) * quantity.Dose(len(sorted)) / sum)
}

// oddOf is the one way that, left out, leaves others which agree; "" where there
// is none, or more than one.
func oddOf(ways []Found) Way {
	odd := Way("")
	for i, w := range ways {
		var rest []quantity.Dose
		for j, other := range ways {
			if j != i {
				rest = append(rest, other.Rate)
			}
		}
		if len(rest) < 2 || math.Abs(spread(slices.Sorted(slices.Values(rest)))) > WaysAgree*(1+1e-9) {
			continue
		}
		if odd != "" {
			return ""
		}
		odd = w.Way
	}
	return odd
}
