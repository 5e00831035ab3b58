package oxygen_test

import (
	"bytes"
	"fmt"
	"math"
	"os/exec"
	"strings"
	"testing"

	"aerosteep/quantity"
)

// gswScript answers saturation in mg/L by TEOS-10: Garcia & Gordon's 1992 fit
// to the data of Benson & Krause, in µmol/kg, times the density of the water.
const gswScript = `
import sys, gsw
for line in sys.stdin:
    t, s = map(float, line.split())
    sr = gsw.SR_from_SP(s)
    rho = gsw.rho(sr, gsw.CT_from_pt(sr, t), 0)
    print(gsw.O2sol_SP_pt(s, t) * rho * 31.9988e-6)
`

// TestSaturationMatchesGSW asks an independent library, Debian's python3-gsw
// (TEOS-10 Gibbs SeaWater toolbox). The two fits to the same data part by at
// most 0.03 %. A missing library fails the test: install python3-gsw.
func TestSaturationMatchesGSW(t *testing.T) {
	const apart = 5e-4
	var points [][2]float64
	var asked strings.Builder
	for celsius := 0.0; celsius <= 40; celsius += 2.5 {
		for salt := 0.0; salt <= 35; salt += 5 {
			points = append(points, [2]float64{celsius, salt})
			fmt.Fprintln(&asked, celsius, salt)
		}
	}
	answers := bytes.NewBuffer(python(t, gswScript, asked.String()))
	for _, p := range points {
		var want float64
		if _, err := fmt.Fscan(answers, &want); err != nil {
			t.Fatalf("the library's answer ends early: %v", err)
		}
		if got := saturation(t, p[0], quantity.StandardAtmosphere, p[1]); math.Abs(got/want-1) > apart {
			t.Errorf("%g °C, salinity %g: %.4f mg/L, GSW %.4f", p[0], p[1], got, want)
		}
	}
}

func python(t *testing.T, script, input string) []byte {
	t.Helper()
	cmd := exec.Command("/usr/bin/python3", "-c", script)
	cmd.Stdin = strings.NewReader(input)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("Debian's python3-gsw is needed (apt-get install python3-gsw): %v\n%s", err, complaint.String())
	}
	return out
}
