package air_test

import (
	"fmt"

	"aerosteep/quantity"
	"aerosteep/science/air"
)

// A pump of 60 L/min on its label, a stone 60 cm down and four metres of tube:
// what comes out.
func ExampleOperatingPoint() {
	pump, err := air.NewCurve([]air.CurvePoint{
		{Airflow: 60, Pressure: 0}, {Airflow: 45, Pressure: 10}, {Airflow: 25, Pressure: 20}, {Airflow: 0, Pressure: 28},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	site, err := air.PressureAt(quantity.Metres(640))
	if err != nil {
		fmt.Println(err)
		return
	}
	meeting, err := air.OperatingPoint(pump, air.System{
		Depth: 0.6, Lines: 1, DiffuserLoss: 2.4, Water: 22, Air: 20, Site: site,
		Tube: air.Tube{Bore: 0.0095, Length: 4, Fittings: 2, ExtraK: 1},
	})
	fmt.Printf("%.1f L/min against %.2f kPa, %v\n", meeting.Airflow.LitresPerMinute(), meeting.Pressure.Kilopascals(), err)
	// Output: 45.9 L/min against 9.42 kPa, <nil>
}
