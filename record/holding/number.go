package holding

import "strconv"

// tidy takes the last bits out of a converted amount: 8 cm read as 0.08 m is
// 8 and not 8.000000000000002. Twelve digits are more than any instrument has.
func tidy(v float64) float64 {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return short
}
