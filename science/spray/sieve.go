package spray

import (
	"sort"

	"aerosteep/quantity"
)

// Sieve is one of the numbered sieves of ASTM E11. Its mesh number alone does
// not fix the opening (25.4 mm / mesh less the wire), the standard does.
type Sieve struct {
	Number  int
	Opening quantity.Length // nominal
}

// sieveOpenings are the nominal openings in µm by sieve number, ASTM E11
// Table 1: the R 40/3 series (each about the fourth root of 2 under the one
// before, 4750 to 38 µm), then 32, 25 and 20.
var sieveOpenings = []struct{ number, micrometres int }{
	{4, 4750}, {5, 4000}, {6, 3350}, {7, 2800}, {8, 2360}, {10, 2000}, {12, 1700}, {14, 1400},
	{16, 1180}, {18, 1000}, {20, 850}, {25, 710}, {30, 600}, {35, 500}, {40, 425}, {45, 355},
	{50, 300}, {60, 250}, {70, 212}, {80, 180}, {100, 150}, {120, 125}, {140, 106}, {170, 90},
	{200, 75}, {230, 63}, {270, 53}, {325, 45}, {400, 38}, {450, 32}, {500, 25}, {635, 20},
}

// Sieves lists all, coarsest first.
func Sieves() []Sieve {
	all := make([]Sieve, len(sieveOpenings))
	for i, s := range sieveOpenings {
		all[i] = Sieve{s.number, quantity.Metres(float64(s.micrometres) / 1e6)}
	}
	return all
}

// FindSieve gives the sieve of a number, or false where ASTM E11 has none.
func FindSieve(number int) (Sieve, bool) {
	i := nextSieve(float64(number))
	if i == len(sieveOpenings) || sieveOpenings[i].number != number {
		return Sieve{}, false
	}
	return Sieves()[i], true
}

// NearestSieves are the two numbers closest to one that the standard lacks.
func NearestSieves(number float64) (lower, higher int) {
	i := min(max(nextSieve(number), 1), len(sieveOpenings)-1)
	return sieveOpenings[i-1].number, sieveOpenings[i].number
}

func nextSieve(number float64) int {
	return sort.Search(len(sieveOpenings), func(i int) bool { return float64(sieveOpenings[i].number) >= number })
}
