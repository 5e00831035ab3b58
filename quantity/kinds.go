package quantity

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// kind reads one type of amount: which dimension it has and how its kept unit
// relates to SI.
type kind struct {
	name     string // wording key of the kind, for messages
	dim      Dimension
	perSI    float64 // kept units in one SI unit
	example  string
	negative bool // may be under zero
}

func (k kind) parse(text string) (float64, error) {
	reading, err := Read(text)
	if err != nil {
		f := err.(*fault.Fault)
		if f.Allowed.IsZero() {
			f.Allowed = k.allowed()
		}
		return 0, f
	}
	if reading.Unit.Dim != k.dim || k.depth(reading.Unit) {
		return 0, fault.New("", text,
			wording.Say("quantity.wrong-kind", wording.Places{"unit": reading.Unit.Name, "is": wording.Say("quantity.kind." + reading.Unit.Kind()), "wanted": wording.Say(k.name)}),
			k.allowed(), wording.Text{})
	}
	if reading.SI < 0 && !k.negative {
		return 0, fault.New("", text, wording.Say("quantity.negative"), k.allowed(), wording.Text{})
	}
	return reading.SI * k.perSI, nil
}

// depth tells whether a depth (20 mm) stands where a volume per area (20 L/m2)
// is needed, or the other way round: one dimension, two meanings.
func (k kind) depth(u Unit) bool {
	return k.dim == length && k.name != waterDepth && u.Kind() != strings.TrimPrefix(k.name, "quantity.kind.")
}

func (k kind) allowed() wording.Text {
	return wording.Say("quantity.allowed", wording.Places{"kind": wording.Say(k.name), "example": k.example})
}

// waterDepth names the one kind that is said either way: 10 mm or 10 L/m2.
const waterDepth = "quantity.kind.water-depth"

// The kinds that have a type.
var (
	lengthKind       = kind{"quantity.kind.length", length, 1, "2 m", false}
	altitudeKind     = kind{"quantity.kind.length", length, 1, "640 m", true}
	areaKind         = kind{"quantity.kind.area", area, 1, "1200 sq ft", false}
	volumeKind       = kind{"quantity.kind.volume", volume, 1000, "5 gal", false}
	massKind         = kind{"quantity.kind.mass", mass, 1000, "200 g", false}
	pressureKind     = kind{"quantity.kind.pressure", pressure, 1e-3, "12 kPa", false}
	speedKind        = kind{"quantity.kind.speed", speed, 1, "4 mph", false}
	flowKind         = kind{"quantity.kind.flow", flow, 60000, "60 L/min", false}
	spanKind         = kind{"quantity.kind.time", span, 1, "30 min", false}
	energyKind       = kind{"quantity.kind.energy", energy, 1, "2 kWh", false}
	powerKind        = kind{"quantity.kind.power", power, 1, "45 W", false}
	concKind         = kind{"quantity.kind.concentration", massPerVolume, 1000, "6 mg/L", false}
	densityKind      = kind{"quantity.kind.density", massPerVolume, 1e-3, "0.5 kg/L", false}
	conductivityKind = kind{"quantity.kind.conductivity", conductivity, 1e4, "900 uS/cm", false}
	doseKind         = kind{"quantity.kind.volume-per-area", length, 1000, "20 gal/ac", false}
	waterDepthKind   = kind{waterDepth, length, 1000, "10 mm", false}
	massDoseKind     = kind{"quantity.kind.mass-per-area", massPerArea, 1000, "50 g/m2", false}
	perTimeKind      = kind{"quantity.kind.per-time", perTime, 3600, "14 /h", false}
	uptakeKind       = kind{"quantity.kind.uptake", uptake, 3.6e6, "20 mg/L/h", false}
	depthRateKind    = kind{"quantity.kind.depth-rate", speed, 3.6e6, "10 mm/h", false}
	heatLossKind     = kind{"quantity.kind.heat-loss", heatLoss, 1, "5 W/K", false}
	holdingKind      = kind{"quantity.kind.water-holding", none, 1000, "150 mm/m", false}
	shareKind        = kind{"quantity.kind.share", none, 1, "5 %", true}
	fillKind         = kind{"quantity.kind.canopy-fill", none, 1000, "0.1 L/m3", false}
)

// ParseLength and its fellows read what people type into a typed amount. The
// error is a *fault.Fault without a field.
func ParseLength(s string) (Length, error)               { return as[Length](lengthKind, s) }
func ParseAltitude(s string) (Length, error)             { return as[Length](altitudeKind, s) }
func ParseArea(s string) (Area, error)                   { return as[Area](areaKind, s) }
func ParseVolume(s string) (Volume, error)               { return as[Volume](volumeKind, s) }
func ParseMass(s string) (Mass, error)                   { return as[Mass](massKind, s) }
func ParsePressure(s string) (Pressure, error)           { return as[Pressure](pressureKind, s) }
func ParseSpeed(s string) (Speed, error)                 { return as[Speed](speedKind, s) }
func ParseFlow(s string) (Flow, error)                   { return as[Flow](flowKind, s) }
func ParseSpan(s string) (Span, error)                   { return as[Span](spanKind, s) }
func ParseEnergy(s string) (Energy, error)               { return as[Energy](energyKind, s) }
func ParsePower(s string) (Power, error)                 { return as[Power](powerKind, s) }
func ParseConcentration(s string) (Concentration, error) { return as[Concentration](concKind, s) }
func ParseDensity(s string) (Density, error)             { return as[Density](densityKind, s) }
func ParseConductivity(s string) (Conductivity, error)   { return as[Conductivity](conductivityKind, s) }
func ParseDose(s string) (Dose, error)                   { return as[Dose](doseKind, s) }
func ParseWaterDepth(s string) (Dose, error)             { return as[Dose](waterDepthKind, s) }
func ParseMassDose(s string) (MassDose, error)           { return as[MassDose](massDoseKind, s) }
func ParsePerTime(s string) (PerTime, error)             { return as[PerTime](perTimeKind, s) }
func ParseUptake(s string) (Uptake, error)               { return as[Uptake](uptakeKind, s) }
func ParseDepthRate(s string) (DepthRate, error)         { return as[DepthRate](depthRateKind, s) }
func ParseHeatLoss(s string) (HeatLoss, error)           { return as[HeatLoss](heatLossKind, s) }
func ParseWaterHolding(s string) (WaterHolding, error)   { return as[WaterHolding](holdingKind, s) }
func ParseShare(s string) (Share, error)                 { return as[Share](shareKind, s) }
func ParseFill(s string) (Fill, error)                   { return as[Fill](fillKind, s) }

func as[T ~float64](k kind, text string) (T, error) {
	kept, err := k.parse(text)
	return T(kept), err
}

// ParseTemperature reads a point on the scale: "67 °F", "-3C", "290 K".
func ParseTemperature(text string) (Temperature, error) {
	reading, err := readTemperature(text)
	if err != nil {
		return 0, err
	}
	if reading.SI < 0 {
		return 0, fault.New("", text, wording.Say("quantity.below-absolute-zero"), wording.Text{}, wording.Text{})
	}
	return Celsius(point(reading.Number, reading.Unit, Unit{Name: "°C"})), nil
}

// ParseTemperatureStep reads a difference: "9 F" is 5 °C.
func ParseTemperatureStep(text string) (TemperatureStep, error) {
	reading, err := readTemperature(text)
	if err != nil {
		return 0, err
	}
	return TemperatureStep(reading.Number * reading.Unit.Factor), nil
}

func readTemperature(text string) (Reading, error) {
	reading, err := Read(text)
	allowed := wording.Say("quantity.allowed", wording.Places{"kind": wording.Say("quantity.kind.temperature"), "example": "19.4 °C"})
	if err != nil {
		f := err.(*fault.Fault)
		f.Allowed = allowed
		return reading, f
	}
	if reading.Unit.Dim != temperature {
		return reading, fault.New("", text,
			wording.Say("quantity.wrong-kind", wording.Places{"unit": reading.Unit.Name, "is": wording.Say("quantity.kind." + reading.Unit.Kind()), "wanted": wording.Say("quantity.kind.temperature")}),
			allowed, wording.Text{})
	}
	return reading, nil
}
