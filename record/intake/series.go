package intake

import (
	"math"
	"strconv"
	"time"
)

// longestSeries is how many rows an entry takes: as many as the journal lets it.
const longestSeries = 10_000

// Bodies are the readings as bodies of series entries.
func Bodies(readings []Reading) [][]byte {
	var bodies [][]byte
	for len(readings) > 0 {
		n := min(len(readings), longestSeries)
		bodies = append(bodies, body(readings[:n]))
		readings = readings[n:]
	}
	return bodies
}

func body(readings []Reading) []byte {
	out := make([]byte, 0, 80*len(readings)+16)
	out = append(out, `{"rows":[`...)
	for i := range readings {
		if i > 0 {
			out = append(out, ',')
		}
		out = append(out, `{"at":"`...)
		out = readings[i].At.UTC().AppendFormat(out, time.RFC3339Nano)
		out = append(out, '"')
		out = number(out, "do_mg_per_l", readings[i].DO)
		out = number(out, "ec_us_per_cm", readings[i].EC)
		out = number(out, "percent_saturation", readings[i].Percent)
		out = number(out, "ph", readings[i].PH)
		out = number(out, "temp_c", readings[i].Temp)
		out = append(out, '}')
	}
	return append(out, `]}`...)
}

// number adds a value that was measured, without the tail that a change of unit
// leaves: 67 °F is 19.44 °C here.
func number(out []byte, key string, v float64) []byte {
	if math.IsNaN(v) {
		return out
	}
	out = append(append(append(out, `,"`...), key...), `":`...)
	return strconv.AppendFloat(out, math.Round(v*1e4)/1e4, 'f', -1, 64)
}
