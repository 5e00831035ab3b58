package oxygen_test

import (
	"fmt"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
)

func ExampleSaturation() {
	held, _ := oxygen.Saturation(quantity.Fahrenheit(68), quantity.StandardAtmosphere, 0)
	fmt.Printf("%.2f mg/L\n", held.MilligramsPerLitre())

	_, err := oxygen.Saturation(quantity.Celsius(68), quantity.StandardAtmosphere, 0)
	fmt.Println("refused:", fault.Of(err)[0].Field)
	// Output:
	// 9.09 mg/L
	// refused: temp
}

// Will 60 L/min through ordinary stones, 60 cm down, hold 6 mg/L in 100 L of
// a brew that takes up 20 mg/L/h?
func ExampleAeration() {
	sotr, _ := oxygen.SOTR(60, oxygen.Medium.SOTEPerMetre(), 0.6)
	kla20, _ := oxygen.KLa20FromSOTR(sotr, quantity.Litres(100))
	held, _ := oxygen.Saturation(22, 93.869, 0)
	air := oxygen.Aeration{KLa20: kla20, Alpha: oxygen.Medium.Alpha(), Beta: 0.98, Fouling: 1, Water: 22, Saturation: held}
	steady := air.SteadyOxygen(20)
	fmt.Printf("%.1f mg/L (%.1f to %.1f): %s\n", steady.Value.MilligramsPerLitre(), float64(steady.Low95), float64(steady.High95), air.Verdict(20, 6))
	// Output: 6.4 mg/L (5.8 to 6.8): uncertain
}

func ExampleFallBetween() {
	fall, _ := oxygen.FallBetween(8.0, 7.4, quantity.Minutes(2), 0.1)
	left, _ := fall.TimeTo(6)
	fmt.Printf("%.0f mg/L/h, %.1f min to 6 mg/L\n", fall.Uptake.Value.MilligramsPerLitreHour(), left.Time.Minutes())
	// Output: 18 mg/L/h, 6.7 min to 6 mg/L
}
