package forecast

import "aerosteep/numeric"

// Band is what the members say about one number: its median and the ranges
// that hold 50, 80 and 95 in 100 of them.
type Band struct {
	Median float64 `json:"median"`
	Low50  float64 `json:"low50"`
	High50 float64 `json:"high50"`
	Low80  float64 `json:"low80"`
	High80 float64 `json:"high80"`
	Low95  float64 `json:"low95"`
	High95 float64 `json:"high95"`
}

// bandOf sorts the values in place.
func bandOf(values []float64) Band {
	q := numeric.Quantiles(values, 0.025, 0.10, 0.25, 0.50, 0.75, 0.90, 0.975)
	return Band{Low95: q[0], Low80: q[1], Low50: q[2], Median: q[3], High50: q[4], High80: q[5], High95: q[6]}
}

// Range is a median with the range that holds 80 in 100.
type Range struct {
	Median float64 `json:"median"`
	Low80  float64 `json:"low80"`
	High80 float64 `json:"high80"`
}

func rangeOf(values []float64) Range {
	q := numeric.Quantiles(values, 0.10, 0.50, 0.90)
	return Range{Low80: q[0], Median: q[1], High80: q[2]}
}
