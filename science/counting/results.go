package counting

import (
	"math"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Finding is one laboratory result: a value, or only a limit of it.
type Finding struct {
	Value float64
	Is    Relation // Equal, LessThan or MoreThan
}

// ParseFindings reads "12, 28, <1, >2400". A fault carries the flag's name.
func ParseFindings(flag, text string) ([]Finding, error) {
	var findings []Finding
	for _, item := range strings.Split(text, ",") {
		f, err := parseFinding(strings.TrimSpace(item))
		if err != nil {
			return nil, fault.New(flag, text, wording.Say("counting.finding", wording.Places{"item": strings.TrimSpace(item)}), wording.Say("counting.finding.allowed"), wording.Text{})
		}
		findings = append(findings, f)
	}
	return findings, nil
}

func parseFinding(item string) (Finding, error) {
	f := Finding{Is: Equal}
	if rest, below := strings.CutPrefix(item, "<"); below {
		f.Is, item = LessThan, rest
	} else if rest, above := strings.CutPrefix(item, ">"); above {
		f.Is, item = MoreThan, rest
	}
	v, err := quantity.Bare(item)
	if err == nil && (v < 0 || f.Is == LessThan && v == 0) {
		err = strconv.ErrRange
	}
	f.Value = v
	return f, err
}

// MeanIs says what a geometric mean is where some results are only limits.
type MeanIs string

// The kinds of mean.
const (
	ExactMean   MeanIs = "exact"
	AtMost      MeanIs = "at-most"
	AtLeast     MeanIs = "at-least"
	Substituted MeanIs = "substituted"
)

// GeometricMean describes a set of findings on the log scale. Pointers are nil
// where there is no such number.
type GeometricMean struct {
	N, BelowDetection, AboveRange int
	Mean                          float64
	Is                            MeanIs
	Log10SD                       *float64
	Percentile90, Percentile95    *float64
}

// The standard normal quantiles as the regulations print them.
const (
	z90 = 1.282
	z95 = 1.65
)

// GeometricMeanOf is 10^(mean of log10), with the log-normal 90th percentile
// antilog(mean + 1.282 s) and the 95th with 1.65.
//
// Inputs: at least one finding, values over 0; what stands in for "<x" is x
// times belowAs (1 or 0.5); population: s over n, else over n - 1.
//
// Source: The Bathing Water Regulations 2013 (UK), schedule 5 paragraph 2; EPA
// 2012, 820-F-12-058 (statistical threshold value).
func GeometricMeanOf(findings []Finding, belowAs float64, population bool) GeometricMean {
	g := GeometricMean{N: len(findings)}
	logs := make([]float64, len(findings))
	for i, f := range findings {
		v := f.Value
		switch f.Is {
		case LessThan:
			g.BelowDetection++
			v *= belowAs
		case MoreThan:
			g.AboveRange++
		}
		logs[i] = math.Log10(v)
	}
	mean := average(logs)
	g.Mean, g.Is = math.Pow(10, mean), g.kind(belowAs)
	if g.N > 1 {
		g.spread(logs, mean, population)
	}
	return g
}

func (g *GeometricMean) kind(belowAs float64) MeanIs {
	switch {
	case g.BelowDetection > 0 && (g.AboveRange > 0 || belowAs != 1):
		return Substituted
	case g.BelowDetection > 0:
		return AtMost
	case g.AboveRange > 0:
		return AtLeast
	}
	return ExactMean
}

func (g *GeometricMean) spread(logs []float64, mean float64, population bool) {
	sum := 0.0
	for _, l := range logs {
		sum += (l - mean) * (l - mean)
	}
	over := float64(g.N - 1)
	if population {
		over = float64(g.N)
	}
	sd := math.Sqrt(sum / over)
	g.Log10SD = &sd
	if g.AboveRange > 0 {
		return // a result without an upper end has no upper percentile
	}
	p90, p95 := math.Pow(10, mean+z90*sd), math.Pow(10, mean+z95*sd)
	g.Percentile90, g.Percentile95 = &p90, &p95
}

func average(values []float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum / float64(len(values))
}

// ShareOver is the share of findings over a limit; one above its range counts
// where the end of that range is at or over the limit.
func ShareOver(findings []Finding, limit float64) float64 {
	over := 0
	for _, f := range findings {
		if f.Is == Equal && f.Value > limit || f.Is == MoreThan && f.Value >= limit {
			over++
		}
	}
	return float64(over) / float64(len(findings))
}

// MeetsMean compares the mean with a limit; nil where results without an upper
// end leave it open.
func (g GeometricMean) MeetsMean(limit float64) *bool {
	meets := g.Mean <= limit
	if meets && g.AboveRange > 0 {
		return nil
	}
	return &meets
}

// MeetsPercentile compares the 90th percentile with a limit.
func (g GeometricMean) MeetsPercentile(limit float64) *bool {
	if g.Percentile90 == nil {
		return nil
	}
	meets := *g.Percentile90 <= limit
	return &meets
}
