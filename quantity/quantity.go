// Package quantity holds the amounts a grower measures, each as its own type,
// so that the compiler refuses a pressure where a temperature belongs.
//
// Every type states the one unit it is kept in. Build a value with the
// function named after your unit and read it back the same way:
//
//	t := quantity.Fahrenheit(68)
//	t.Celsius() // 20
//
// What people type ("2 qt", "67 °F", "7,4 mg/L") is read by the Parse
// functions; Speak prints a value in the reader's own units.
package quantity

import "aerosteep/wording"

// Amount is any type of this package that keeps a number in a fixed unit.
type Amount interface {
	~float64
	wording.Speaker
}

// Temperature is a point on the temperature scale, kept in °C. The step
// between two points is a TemperatureStep: a point has an offset between
// scales and a step has none, so the two never share a type.
type Temperature float64

// Celsius, Fahrenheit and Kelvin build a temperature.
func Celsius(c float64) Temperature    { return Temperature(c) }
func Fahrenheit(f float64) Temperature { return Temperature((f - 32) / 1.8) }
func Kelvin(k float64) Temperature     { return Temperature(k - kelvinAtZeroCelsius) }

// kelvinAtZeroCelsius is exact (BIPM, SI Brochure).
const kelvinAtZeroCelsius = 273.15

func (t Temperature) Celsius() float64    { return float64(t) }
func (t Temperature) Fahrenheit() float64 { return float64(t)*1.8 + 32 }
func (t Temperature) Kelvin() float64     { return float64(t) + kelvinAtZeroCelsius }

// TemperatureStep is a difference of two temperatures, kept in °C (= K).
type TemperatureStep float64

func CelsiusStep(c float64) TemperatureStep              { return TemperatureStep(c) }
func (t TemperatureStep) Celsius() float64               { return float64(t) }
func (t TemperatureStep) Fahrenheit() float64            { return float64(t) * 1.8 }
func (t Temperature) Plus(s TemperatureStep) Temperature { return t + Temperature(s) }

// Pressure is kept in kPa; whether absolute or gauge is said where it is used.
type Pressure float64

// StandardAtmosphere is 1 atm (exact; BIPM, SI Brochure).
const StandardAtmosphere Pressure = 101.325

func Kilopascals(p float64) Pressure    { return Pressure(p) }
func (p Pressure) Kilopascals() float64 { return float64(p) }
func (p Pressure) Pascals() float64     { return float64(p) * 1000 }
func (p Pressure) Atmospheres() float64 { return float64(p / StandardAtmosphere) }

// Length is kept in m.
type Length float64

func Metres(m float64) Length         { return Length(m) }
func (l Length) Metres() float64      { return float64(l) }
func (l Length) Millimetres() float64 { return float64(l) * 1000 }
func (l Length) Micrometres() float64 { return float64(l) * 1e6 }
func (l Length) Feet() float64        { return float64(l) / metresPerFoot }

// Area is kept in m².
type Area float64

func SquareMetres(a float64) Area         { return Area(a) }
func (a Area) SquareMetres() float64      { return float64(a) }
func (a Area) Hectares() float64          { return float64(a) / 1e4 }
func (a Area) Acres() float64             { return float64(a) / squareMetresPerAcre }
func (a Area) SquareFeet() float64        { return float64(a) / (metresPerFoot * metresPerFoot) }
func (a Area) SquareMillimetres() float64 { return float64(a) * 1e6 }

// Volume is kept in L.
type Volume float64

func Litres(v float64) Volume         { return Volume(v) }
func Millilitres(v float64) Volume    { return Volume(v / 1000) }
func USGallons(v float64) Volume      { return Volume(v * litresPerUSGallon) }
func (v Volume) Litres() float64      { return float64(v) }
func (v Volume) Millilitres() float64 { return float64(v) * 1000 }
func (v Volume) CubicMetres() float64 { return float64(v) / 1000 }
func (v Volume) USGallons() float64   { return float64(v) / litresPerUSGallon }

// Mass is kept in g.
type Mass float64

func Grams(m float64) Mass         { return Mass(m) }
func (m Mass) Grams() float64      { return float64(m) }
func (m Mass) Kilograms() float64  { return float64(m) / 1000 }
func (m Mass) Milligrams() float64 { return float64(m) * 1000 }
func (m Mass) Pounds() float64     { return float64(m) / gramsPerPound }

// Speed is kept in m/s.
type Speed float64

func MetresPerSecond(s float64) Speed      { return Speed(s) }
func KilometresPerHour(s float64) Speed    { return Speed(s / 3.6) }
func (s Speed) MetresPerSecond() float64   { return float64(s) }
func (s Speed) KilometresPerHour() float64 { return float64(s) * 3.6 }
func (s Speed) MilesPerHour() float64      { return float64(s) * 3600 / metresPerMile }

// Flow is a volume per time, kept in L/min. Of air: free air at the inlet,
// unless said otherwise.
type Flow float64

func LitresPerMinute(f float64) Flow         { return Flow(f) }
func (f Flow) LitresPerMinute() float64      { return float64(f) }
func (f Flow) CubicMetresPerSecond() float64 { return float64(f) / 60000 }
func (f Flow) USGallonsPerMinute() float64   { return float64(f) / litresPerUSGallon }

// Span is a length of time, kept in s.
type Span float64

func Seconds(s float64) Span    { return Span(s) }
func Minutes(m float64) Span    { return Span(m * 60) }
func Hours(h float64) Span      { return Span(h * 3600) }
func Days(d float64) Span       { return Span(d * 86400) }
func (s Span) Seconds() float64 { return float64(s) }
func (s Span) Minutes() float64 { return float64(s) / 60 }
func (s Span) Hours() float64   { return float64(s) / 3600 }
func (s Span) Days() float64    { return float64(s) / 86400 }

// Energy is kept in J, Power in W.
type Energy float64

func Joules(e float64) Energy           { return Energy(e) }
func (e Energy) Joules() float64        { return float64(e) }
func (e Energy) KilowattHours() float64 { return float64(e) / 3.6e6 }

// Power is kept in W.
type Power float64

func Watts(p float64) Power    { return Power(p) }
func (p Power) Watts() float64 { return float64(p) }

// Concentration is a mass of something per volume of liquid, kept in mg/L.
type Concentration float64

func MilligramsPerLitre(c float64) Concentration    { return Concentration(c) }
func (c Concentration) MilligramsPerLitre() float64 { return float64(c) }
func (c Concentration) GramsPerLitre() float64      { return float64(c) / 1000 }

// Density is a mass of a material per volume of itself, kept in g/mL (= kg/L).
// The bulk density of a solid counts the air between its grains.
type Density float64

func GramsPerMillilitre(d float64) Density    { return Density(d) }
func (d Density) GramsPerMillilitre() float64 { return float64(d) }
func (d Density) MassOf(v Volume) Mass        { return Mass(float64(d) * v.Millilitres()) }
func (d Density) VolumeOf(m Mass) Volume      { return Millilitres(m.Grams() / float64(d)) }

// Conductivity is electrical conductivity at 25 °C, kept in µS/cm.
type Conductivity float64

func MicrosiemensPerCentimetre(c float64) Conductivity    { return Conductivity(c) }
func (c Conductivity) MicrosiemensPerCentimetre() float64 { return float64(c) }

// Salinity is salt in water on the practical scale, close to g/kg.
type Salinity float64

func (s Salinity) PSU() float64 { return float64(s) }

// Dose is a volume of liquid per area of ground, kept in L/m² (= mm of water).
// Of tea and of spray mix alike: the name of the variable says of which.
type Dose float64

func LitresPerSquareMetre(d float64) Dose    { return Dose(d) }
func LitresPerHectare(d float64) Dose        { return Dose(d / 1e4) }
func (d Dose) LitresPerSquareMetre() float64 { return float64(d) }
func (d Dose) LitresPerHectare() float64     { return float64(d) * 1e4 }
func (d Dose) USGallonsPerAcre() float64     { return float64(d) * squareMetresPerAcre / litresPerUSGallon }

// MassDose is a mass per area of ground, kept in g/m².
type MassDose float64

func GramsPerSquareMetre(d float64) MassDose    { return MassDose(d) }
func (d MassDose) GramsPerSquareMetre() float64 { return float64(d) }
func (d MassDose) KilogramsPerHectare() float64 { return float64(d) * 10 }

// PerTime is a rate constant such as kLa, kept in 1/h.
type PerTime float64

func PerHour(r float64) PerTime      { return PerTime(r) }
func (r PerTime) PerHour() float64   { return float64(r) }
func (r PerTime) PerSecond() float64 { return float64(r) / 3600 }

// Uptake is oxygen (or another substance) used per volume and time, kept in
// mg/L/h.
type Uptake float64

func MilligramsPerLitreHour(u float64) Uptake    { return Uptake(u) }
func (u Uptake) MilligramsPerLitreHour() float64 { return float64(u) }

// DepthRate is water depth per time, such as the intake of a soil, kept in
// mm/h.
type DepthRate float64

func MillimetresPerHour(d float64) DepthRate    { return DepthRate(d) }
func (d DepthRate) MillimetresPerHour() float64 { return float64(d) }

// HeatLoss is heat lost per degree of difference, kept in W/K.
type HeatLoss float64

func WattsPerKelvin(h float64) HeatLoss    { return HeatLoss(h) }
func (h HeatLoss) WattsPerKelvin() float64 { return float64(h) }

// WaterHolding is depth of water held per depth of soil, kept in mm/m.
type WaterHolding float64

func MillimetresPerMetre(w float64) WaterHolding    { return WaterHolding(w) }
func (w WaterHolding) MillimetresPerMetre() float64 { return float64(w) }

// Share is a part of a whole, kept as a fraction: 0.5 is 50 %.
type Share float64

func Percent(p float64) Share     { return Share(p / 100) }
func (s Share) Fraction() float64 { return float64(s) }
func (s Share) Percent() float64  { return float64(s) * 100 }

// Fill is a volume of liquid per volume of space (a canopy), kept in L/m³.
type Fill float64

func (f Fill) LitresPerCubicMetre() float64 { return float64(f) }
