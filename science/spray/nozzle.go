package spray

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Verdict is what to do with a nozzle. The harsher one stands.
type Verdict string

const (
	Keep    Verdict = "keep"
	Recheck Verdict = "clean-and-recheck"
	Replace Verdict = "replace"
)

func (v Verdict) harshness() int {
	switch v {
	case Replace:
		return 2
	case Recheck:
		return 1
	}
	return 0
}

func harsher(a, b Verdict) Verdict {
	if b.harshness() > a.harshness() {
		return b
	}
	return a
}

// Limits of a nozzle test, in percent; "more than" is strict.
type Limits struct {
	Wear float64 // over the rated flow: worn; as far under it: plugged
	Even float64 // off the mean of all
}

// UsualLimits: 10 % over the rated flow is usual extension advice (from
// memory), 5 % off the boom's mean is Alberta Agdex 606-1.
var UsualLimits = Limits{Wear: 10, Even: 5}

// Nozzle is one nozzle's part of a test.
type Nozzle struct {
	Number    int
	Flow      quantity.Flow
	OverRated *float64 // percent; nil without a rated flow
	OffMean   float64  // percent
	Verdict   Verdict
}

// Evenness is the outcome of a nozzle test.
type Evenness struct {
	Nozzles []Nozzle
	Mean    quantity.Flow
	CV      *float64 // percent; nil for one nozzle
	Spread  float64  // percent of the mean
	Even    bool     // all within the even limit of the mean
}

// fewestForMean is the number of nozzles from which their mean says something
// about one of them.
const fewestForMean = 3

// Judge compares nozzles with the rated flow (nil: not known) and with each
// other.
//
//	CV     = s / mean x 100, s the sample standard deviation (n - 1)
//	spread = (max - min) / mean x 100
//
// Flows are 0 or more, at most a third of them 0, the rated flow over 0.
//
// Source: Alberta Agdex 606-1; extension advice on worn nozzles.
func Judge(flows []quantity.Flow, rated *quantity.Flow, limits Limits) (Evenness, error) {
	if err := checkFlows(flows, rated); err != nil {
		return Evenness{}, err
	}
	result := Evenness{Mean: mean(flows), Even: true}
	low, high := flows[0], flows[0]
	for i, flow := range flows {
		low, high = min(low, flow), max(high, flow)
		n := Nozzle{Number: i + 1, Flow: flow, OffMean: percentOver(flow, result.Mean), Verdict: Keep}
		if rated != nil {
			worn := percentOver(flow, *rated)
			n.OverRated, n.Verdict = &worn, verdict(worn, limits.Wear)
		}
		if len(flows) >= fewestForMean {
			n.Verdict = harsher(n.Verdict, verdict(n.OffMean, limits.Even))
		}
		result.Even = result.Even && !beyond(math.Abs(n.OffMean), limits.Even)
		result.Nozzles = append(result.Nozzles, n)
	}
	result.Spread = float64((high-low)/result.Mean) * 100
	result.CV = variation(flows, result.Mean)
	return result, nil
}

// Numbers lists the nozzles with a verdict.
func (e Evenness) Numbers(v Verdict) []int {
	numbers := []int{}
	for _, n := range e.Nozzles {
		if n.Verdict == v {
			numbers = append(numbers, n.Number)
		}
	}
	return numbers
}

// beyond is a strict comparison that lets 0.22 be exactly 10 % over 0.20.
func beyond(percent, limit float64) bool { return percent > limit*(1+1e-9) }

func verdict(percentOff, limit float64) Verdict {
	switch {
	case beyond(percentOff, limit):
		return Replace
	case beyond(-percentOff, limit):
		return Recheck
	}
	return Keep
}

func percentOver(flow, reference quantity.Flow) float64 {
	return float64((flow-reference)/reference) * 100
}

func mean(flows []quantity.Flow) quantity.Flow {
	var sum quantity.Flow
	for _, f := range flows {
		sum += f
	}
	return sum / quantity.Flow(len(flows))
}

func variation(flows []quantity.Flow, mean quantity.Flow) *float64 {
	if len(flows) < 2 {
		return nil
	}
	var squares float64
	for _, f := range flows {
		squares += float64((f - mean) * (f - mean))
	}
	cv := math.Sqrt(squares/float64(len(flows)-1)) / float64(mean) * 100
	return &cv
}

func checkFlows(flows []quantity.Flow, rated *quantity.Flow) error {
	dry := 0
	for _, f := range flows {
		if !(f >= 0) || math.IsInf(float64(f), 0) {
			return fault.New("flows", "", wording.Say("spray.flow-negative", wording.Places{"value": f}), wording.Say("spray.flow.allowed"), wording.Text{})
		}
		if f == 0 {
			dry++
		}
	}
	if dry == len(flows) {
		return fault.New("flows", "", wording.Say("spray.all-dry"), wording.Say("spray.flow.allowed"), wording.Say("spray.dry.advice"))
	}
	if 3*dry > len(flows) {
		return fault.New("flows", "", wording.Say("spray.many-dry", wording.Places{"dry": dry, "all": len(flows)}), wording.Say("spray.flow.allowed"), wording.Say("spray.dry.advice"))
	}
	if rated != nil {
		return overZero(amount("rated", *rated))
	}
	return nil
}
