package recipe_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// rows reads a file of published values; each row names its own source.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[lines[0][i]] = cell
		}
		all = append(all, row)
	}
	return all
}

func num(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// near fails where got is further from want than a relative tolerance.
func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Max(math.Abs(want), 1e-300)) {
		t.Errorf("%s: got %.10g, want %.10g (within %g of it)", what, got, want, relative)
	}
}

// inputs reads "a=1; b=2".
func inputs(t *testing.T, text string) map[string]float64 {
	t.Helper()
	in := map[string]float64{}
	for _, part := range strings.Split(text, ";") {
		name, value, _ := strings.Cut(strings.TrimSpace(part), "=")
		in[name] = num(t, value)
	}
	return in
}
