package worksheet

import (
	"strings"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// Input is one thing a sheet asks for.
type Input struct {
	Flag     string // without dashes; a form field has the same name
	Kind     *Kind
	Required bool
	Repeat   bool     // may be given several times
	List     bool     // several values in one, parted by commas or semicolons
	Argument bool     // stands without a flag on the command line
	Default  string   // what is taken when nothing is given
	Low      string   // smallest allowed, typed as a user would
	High     string   // largest allowed
	Over     bool     // Low itself is not allowed
	Under    bool     // High itself is not allowed
	Choices  []string // of a Choice
	Reason   string   // key of the sentence that says why the range ends where it does
	Unknown  bool     // may be "unknown", which is the same as leaving it out
}

// Label is the name of the input on a form: the sheet's own if it has one.
func (in *Input) Label(sheet string) wording.Text {
	if key := "input." + sheet + "." + in.Flag; wording.Known(key) {
		return wording.Say(key)
	}
	return wording.Say("input." + in.Flag)
}

// Allowed says what is taken, for hints and refusals.
func (in *Input) Allowed() wording.Text {
	if in.Unknown {
		known := *in
		known.Unknown = false
		return wording.Say("worksheet.allowed.or-unknown", wording.Places{"known": known.Allowed()})
	}
	kind := in.Kind.allowed()
	switch {
	case in.Kind == Choice:
		return wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(in.Choices, ", ")})
	case in.Low != "" && in.High != "":
		return wording.Say("worksheet.allowed.between", wording.Places{"kind": kind, "low": in.end(in.Low, in.Over), "high": in.end(in.High, in.Under)})
	case in.Low != "" && in.Over:
		return wording.Say("worksheet.allowed.over", wording.Places{"kind": kind, "low": in.Low})
	case in.Low != "":
		return wording.Say("worksheet.allowed.from", wording.Places{"kind": kind, "low": in.Low})
	case in.High != "":
		return wording.Say("worksheet.allowed.to", wording.Places{"kind": kind, "high": in.High})
	}
	return kind
}

func (in *Input) end(limit string, open bool) wording.Text {
	if open {
		return wording.Say("worksheet.allowed.not-itself", wording.Places{"limit": limit})
	}
	return wording.Verbatim(limit)
}

// Kind is what an input holds: how it is read into the number that the
// quantity's type keeps, and which unit a form's box shows.
type Kind struct {
	Name       string // word for schemas: "temperature"
	US, Metric string // the unit in the box; a bare number on a form takes it
	parse      func(string) (float64, error)
	key        string // of the sentence that says what is taken
	example    string
}

// Numeric tells whether values of the kind are numbers that have a range.
func (k *Kind) Numeric() bool { return k.parse != nil }

func (k *Kind) allowed() wording.Text {
	return wording.Say(k.key, wording.Places{"example": k.example})
}

func amount[T ~float64](name, us, metric, example string, parse func(string) (T, error)) *Kind {
	return &Kind{Name: name, US: us, Metric: metric, key: "worksheet.kind." + name, example: example,
		parse: func(s string) (float64, error) { v, err := parse(s); return float64(v), err }}
}

// The kinds that amounts can have.
var (
	Temperature     = amount("temperature", "°F", "°C", "19.4 °C", quantity.ParseTemperature)
	TemperatureStep = amount("temperature-step", "°F", "°C", "5 °C", quantity.ParseTemperatureStep)
	Length          = amount("length", "ft", "m", "2 m", quantity.ParseLength)
	Altitude        = amount("length", "ft", "m", "640 m", quantity.ParseAltitude)
	SmallLength     = amount("length", "in", "mm", "12 mm", quantity.ParseLength)
	TinyLength      = amount("length", "um", "um", "400 um", quantity.ParseLength)
	SlideLength     = amount("length", "mm", "mm", "0.45 mm", quantity.ParseLength)
	SlideArea       = amount("area", "mm2", "mm2", "0.04 mm2", quantity.ParseArea)
	CellVolume      = amount("volume", "um3", "um3", "0.2 um3", quantity.ParseVolume)
	Area            = amount("area", "sq ft", "m2", "1200 sq ft", quantity.ParseArea)
	Volume          = amount("volume", "gal", "L", "5 gal", quantity.ParseVolume)
	SmallVolume     = amount("volume", "mL", "mL", "20 mL", quantity.ParseVolume)
	Mass            = amount("mass", "lb", "kg", "200 g", quantity.ParseMass)
	SmallMass       = amount("mass", "g", "g", "20 g", quantity.ParseMass)
	Pressure        = amount("pressure", "psi", "kPa", "12 kPa", quantity.ParsePressure)
	AirPressure     = amount("pressure", "inHg", "kPa", "29.3 inHg", quantity.ParsePressure)
	Speed           = amount("speed", "mph", "km/h", "4 mph", quantity.ParseSpeed)
	Flow            = amount("flow", "gal/min", "L/min", "2 gal/min", quantity.ParseFlow)
	Airflow         = amount("flow", "cfm", "L/min", "60 L/min", quantity.ParseFlow)
	Span            = amount("time", "min", "min", "30 min", quantity.ParseSpan)
	LongSpan        = amount("time", "h", "h", "24 h", quantity.ParseSpan)
	Energy          = amount("energy", "kWh", "kWh", "2 kWh", quantity.ParseEnergy)
	Power           = amount("power", "W", "W", "45 W", quantity.ParsePower)
	Concentration   = amount("concentration", "mg/L", "mg/L", "6 mg/L", quantity.ParseConcentration)
	Oxygen          = amount("concentration", "mg/L", "mg/L", "6 mg/L", quantity.ParseOxygen)
	Density         = amount("density", "g/mL", "g/mL", "0.5 kg/L", quantity.ParseDensity)
	Conductivity    = amount("conductivity", "uS/cm", "uS/cm", "900 uS/cm", quantity.ParseConductivity)
	Dose            = amount("volume-per-area", "gal/ac", "L/ha", "20 gal/ac", quantity.ParseDose)
	WaterDepth      = amount("water-depth", "in", "mm", "10 mm", quantity.ParseWaterDepth)
	PerTime         = amount("per-time", "/h", "/h", "14 /h", quantity.ParsePerTime)
	Uptake          = amount("uptake", "mg/L/h", "mg/L/h", "20 mg/L/h", quantity.ParseUptake)
	DepthRate       = amount("depth-rate", "in/h", "mm/h", "10 mm/h", quantity.ParseDepthRate)
	HeatLoss        = amount("heat-loss", "W/K", "W/K", "5 W/K", quantity.ParseHeatLoss)
	WaterHolding    = amount("water-holding", "mm/m", "mm/m", "150 mm/m", quantity.ParseWaterHolding)
	Share           = amount("share", "%", "%", "5 %", quantity.ParseShare)
	Fill            = amount("canopy-fill", "gal/1000 cu ft", "L/m3", "0.1 L/m3", quantity.ParseFill)
	Fraction        = amount("fraction", "%", "%", "0.3", quantity.ParseFraction)
	Bare            = amount("bare", "", "", "5", quantity.Bare)
	Whole           = amount("whole", "", "", "5", parseWhole)
)

// The kinds that are not numbers.
var (
	Choice = &Kind{Name: "choice", key: "worksheet.kind.choice"}
	Switch = &Kind{Name: "switch", key: "worksheet.kind.switch"}
	Text   = &Kind{Name: "text", key: "worksheet.kind.text"}
	Date   = &Kind{Name: "date", key: "worksheet.kind.date"}
	// File is a file's text: the command line reads it, the HTTP interface is
	// handed the text itself.
	File = &Kind{Name: "file", key: "worksheet.kind.file"}
	// FileOrName is a file where the word ends in .toml or such a file exists,
	// else a name; IsFile tells which.
	FileOrName = &Kind{Name: "file-or-name", key: "worksheet.kind.file-or-name"}
	// OutFile is a file to be written, which only the command line does.
	OutFile = &Kind{Name: "out-file", key: "worksheet.kind.out-file"}
)

// Untouched tells whether a text in a form's field is what stood there before
// anybody touched it: a list always sends what it shows, which is not to be
// taken as said.
func (in *Input) Untouched(text string) bool {
	return in.Kind == Choice && !in.List && text == in.Default
}
