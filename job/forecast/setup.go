package forecast

import (
	"aerosteep/fault"
	"aerosteep/quantity"
)

// Setup is what is known about a batch before anything is measured.
type Setup struct {
	Volume       quantity.Volume
	Depth        quantity.Length   // of water over the diffuser; 0 where not known
	Pressure     quantity.Pressure // absolute, at the site
	Conductivity quantity.Conductivity
	Transfer     Transfer
	Start        quantity.Temperature // of the water at hour 0
	Outdoors     AirCourse            // of the air outdoors; empty where there is no weather
	Indoors      *bool                // nil where not known
	Held         *quantity.Temperature
	Compost      []Compost
	Additions    []Addition
	Planned      quantity.Span          // the recipe's hours
	Limit        quantity.Concentration // 0 takes DefaultLimit
	Learned      *Learned               // from finished batches; nil: what is usual
}

// Transfer is kLa at 20 °C as believed, with its 95 % range where one was
// measured (both 0 where not).
type Transfer struct {
	Estimate, Low95, High95 quantity.PerTime
	InBrew                  bool // measured in the brew, so that alpha is in it
}

// AirCourse is the outdoor air by hours since the start, in order.
type AirCourse []AirAt

// AirAt is the outdoor air at one hour.
type AirAt struct {
	Hour        float64
	Temperature quantity.Temperature
}

// At is the temperature at an hour, linear between the points and constant
// beyond them.
func (a AirCourse) At(hour float64) quantity.Temperature {
	if len(a) == 0 {
		return 0
	}
	after := len(a)
	for i := range a {
		if a[i].Hour >= hour {
			after = i
			break
		}
	}
	switch {
	case after == 0:
		return a[0].Temperature
	case after == len(a):
		return a[len(a)-1].Temperature
	}
	p, q := a[after-1], a[after]
	if q.Hour <= p.Hour {
		return q.Temperature
	}
	share := (hour - p.Hour) / (q.Hour - p.Hour)
	return p.Temperature + quantity.Temperature(share)*(q.Temperature-p.Temperature)
}

// Mean is the mean of the course over a span of hours.
func (a AirCourse) Mean(from, to float64) quantity.Temperature {
	const points = 24
	sum := quantity.Temperature(0)
	for i := range points {
		sum += a.At(from + (to-from)*(float64(i)+0.5)/points)
	}
	return sum / points
}

// Compost is one kind of compost in the brew.
type Compost struct {
	Kind          string // compost, vermicompost, leaf mould …
	GramsPerLitre float64
}

// Addition is food put in: what it brings to each litre of brew.
type Addition struct {
	Name     string
	Hour     float64
	Ready    quantity.Concentration // oxygen demand of what is eaten at once, as mg O2/L
	Slow     quantity.Concentration // of what must be taken apart first
	Nitrogen quantity.Concentration
	Finish   bool // put in when the brew is done, for the plants
}

// GramsOfCompost is the compost of all kinds in a litre of brew.
func (s *Setup) GramsOfCompost() float64 {
	sum := 0.0
	for _, c := range s.Compost {
		sum += c.GramsPerLitre
	}
	return sum
}

// check refuses what no brew is. Errors: of volume, temp, kla20 and hours,
// joined.
func (s *Setup) check() error {
	return fault.Join(
		quantity.Within("volume", s.Volume, 0.1, 50000),
		quantity.Within("temp", s.Start, 0, 45),
		quantity.Within("pressure", s.Pressure, 50, 112),
		quantity.Within("kla20", s.Transfer.Estimate, 0.01, 500),
		quantity.Within("hours", s.Planned, quantity.Hours(1), quantity.Hours(longestRun)),
		quantity.BareWithin("compost", s.GramsOfCompost(), 0, 500),
	)
}
