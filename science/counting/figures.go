package counting

import (
	"math"
	"strconv"
	"strings"
)

// TwoFigures rounds a laboratory result to two significant figures; a
// following 5 that stands exactly goes to the even digit: 15 500 -> 16 000,
// 14 500 -> 14 000.
//
// Source: FDA BAM chapter 3 (Maturin and Peeler 2001), rounding.
func TwoFigures(v float64) float64 {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return v
	}
	digits, exponent := decimalDigits(v)
	two, _ := strconv.Atoi(digits[:2])
	if rest := digits[2:]; rest > half || rest == half && two%2 == 1 {
		two++
	}
	rounded, _ := strconv.ParseFloat(strconv.Itoa(two)+"e"+strconv.Itoa(exponent-1), 64)
	return math.Copysign(rounded, v)
}

// half is what stands behind the second figure when it is exactly a 5.
const half = "5000000000"

// decimalDigits writes a number with twelve figures, so that what a sum in
// binary missed by a hair still counts as the 5 it is.
func decimalDigits(v float64) (digits string, exponent int) {
	mantissa, power, _ := strings.Cut(strconv.FormatFloat(math.Abs(v), 'e', 11, 64), "e")
	exponent, _ = strconv.Atoi(power)
	return strings.Replace(mantissa, ".", "", 1), exponent
}

// TwoFiguresText is TwoFigures as a laboratory writes it: "3.0", "43", "1100".
func TwoFiguresText(v float64) string {
	rounded := TwoFigures(v)
	if rounded == 0 {
		return "0"
	}
	decimals := max(0, 1-int(math.Floor(math.Log10(rounded)+1e-9)))
	return strconv.FormatFloat(rounded, 'f', decimals, 64)
}
