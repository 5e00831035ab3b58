package application

import (
	"math"
	"slices"

	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// The same ends in the units of each flag; a bare number has no unit to carry
// them.
const (
	slowest, fastest   = "0.1 km/h", "60 km/h"
	narrowest, widest  = "1 cm", "50 m"
	harshPressure      = quantity.Pressure(400) // kPa, common practice for living product
	methodsApart       = 3.0                    // percent
	furthestFromRating = 2.0                    // times the rated pressure
)

var sprayer = worksheet.Sheet{
	Name: "sprayer", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "mix-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
		{Flag: "gpa", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "l-per-ha", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "speed", Kind: worksheet.Speed, Low: slowest, High: fastest},
		{Flag: "mph", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "km-per-h", Kind: worksheet.Bare, Low: "0.1", High: "60"},
		{Flag: "course", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "course-time", Kind: worksheet.Span, Low: "0 s", Over: true},
		{Flag: "spacing", Kind: worksheet.SmallLength, Low: narrowest, High: widest},
		{Flag: "spacing-in", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "spacing-cm", Kind: worksheet.Bare, Low: "1", High: "5000"},
		{Flag: "nozzle-flow", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
		{Flag: "rated-flow", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
		{Flag: "rated-pressure", Kind: worksheet.Pressure, Low: "0 kPa", Over: true},
		{Flag: "pressure", Kind: worksheet.Pressure, Low: "0 kPa", Over: true},
		{Flag: "caught", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "test-area", Kind: worksheet.Area, Low: "0 m2", Over: true},
		{Flag: "test-length", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "test-width", Kind: worksheet.Length, Low: "0 m", Over: true},
	}, dilutionInputs()),
	Example: `--gpa 20 --mph 4 --spacing-in 20 --rated-flow "0.2 gal/min" --rated-pressure "40 psi"`,
	Sources: []source.Source{source.MissouriG1270A, source.CornellBoom, source.OrificeLaw, source.OhioAEX520, source.CommonPractice},
	Shape:   sprayerAnswer{},
	Run:     runSprayer,
}

type sprayerAnswer struct {
	MixRate
	SpeedKmh  *float64     `json:"speed_km_per_h"`
	SpeedMph  *float64     `json:"speed_mph"`
	SpacingCm *float64     `json:"spacing_cm"`
	SpacingIn *float64     `json:"spacing_in"`
	NozzleL   *float64     `json:"nozzle_l_per_min"`
	NozzleGal *float64     `json:"nozzle_gpm"`
	Pressure  *float64     `json:"pressure_kpa"`
	TestArea  *float64     `json:"test_area_m2"`
	Methods   *[]methodRow `json:"methods"`
	Differ    *float64     `json:"methods_differ_percent"`
	TeaRate
	Words
}

type methodRow struct {
	Name string  `json:"name"`
	Rate float64 `json:"mix_rate_l_per_ha"`
}

func runSprayer(f *worksheet.Form) (*worksheet.Result, error) {
	d, err := readDilution(f)
	if err != nil {
		return nil, err
	}
	setting, plot, err := readSetting(f)
	if err != nil {
		return nil, err
	}
	solved, err := setting.Solve()
	if err != nil {
		return nil, refused(f, err)
	}
	if solved.Found == "" && !f.Has("course") && !(d.share != nil && solved.Rate != nil) && len(solved.Missing()) > 0 {
		return nil, nothingFollows(f, solved.Missing())
	}
	r := &worksheet.Result{Answer: sprayerSentence(solved), Data: sprayerFigures(solved, plot, d), Sources: f.Sheet.Sources}
	d.askTurned(r)
	cautionSprayer(r, setting, solved)
	return r, nil
}

func nothingFollows(f *worksheet.Form, missing []string) error {
	names := make([]string, len(missing))
	for i, flag := range missing {
		names[i] = "--" + flag
	}
	return f.Advise(missing[0], "application.nothing-follows", "application.nothing-follows.advice", wording.Places{"missing": names})
}

// readSetting reads every way in which a sprayer's four quantities and a
// catch can be stated.
func readSetting(f *worksheet.Form) (s spray.Setting, plot *quantity.Area, err error) {
	if s.Rate, err = once(f, application.FiguresAgree, way(f, "mix-rate", kept[quantity.Dose]),
		way(f, "gpa", quantity.USGallonsPerAcre), way(f, "l-per-ha", quantity.LitresPerHectare)); err != nil {
		return s, nil, err
	}
	if s.Speed, err = readSpeed(f); err != nil {
		return s, nil, err
	}
	if s.Width, err = once(f, application.FiguresAgree, way(f, "spacing", kept[quantity.Length]),
		way(f, "spacing-in", quantity.Inches), way(f, "spacing-cm", centimetres)); err != nil {
		return s, nil, err
	}
	if err = inside(f, "spacing-in", s.Width, narrowest, widest, quantity.ParseLength); err != nil {
		return s, nil, err
	}
	if err = f.Together("rated-flow", "rated-pressure"); err != nil {
		return s, nil, err
	}
	s.Flow, s.Pressure = given[quantity.Flow](f, "nozzle-flow"), given[quantity.Pressure](f, "pressure")
	if f.Has("rated-flow") {
		s.Rating = &spray.Rating{Flow: f.Flow("rated-flow"), Pressure: f.Pressure("rated-pressure")}
	}
	plot, err = readCatch(f, &s)
	return s, plot, err
}

func centimetres(v float64) quantity.Length { return quantity.Metres(v / 100) }

func readSpeed(f *worksheet.Form) (*quantity.Speed, error) {
	if err := f.Together("course", "course-time"); err != nil {
		return nil, err
	}
	var timed *stated[quantity.Speed]
	if f.Has("course") {
		speed, err := spray.SpeedOver(f.Length("course"), f.Span("course-time"))
		if err != nil {
			return nil, err
		}
		timed = &stated[quantity.Speed]{"course", speed}
	}
	speed, err := once(f, application.MeasuredAgree, way(f, "speed", kept[quantity.Speed]),
		way(f, "mph", quantity.MilesPerHour), way(f, "km-per-h", quantity.KilometresPerHour), timed)
	if err != nil {
		return nil, err
	}
	for _, flag := range []string{"mph", "course"} {
		if err := inside(f, flag, speed, slowest, fastest, quantity.ParseSpeed); err != nil {
			return nil, err
		}
	}
	return speed, nil
}

// inside holds a quantity that came from a bare number, or from two flags, to
// ends that are stated in a unit.
func inside[Q quantity.Amount](f *worksheet.Form, flag string, q *Q, low, high string, parse func(string) (Q, error)) error {
	if q == nil || !f.Has(flag) {
		return nil
	}
	least, _ := parse(low)
	most, _ := parse(high)
	if *q >= least*(1-1e-9) && *q <= most*(1+1e-9) {
		return nil
	}
	wrong := f.Refuse(flag, "application.outside", wording.Places{"value": *q})
	wrong.Allowed = wording.Say("application.outside.allowed", wording.Places{"low": low, "high": high})
	return wrong
}

// readCatch reads what was caught over which ground.
func readCatch(f *worksheet.Form, s *spray.Setting) (*quantity.Area, error) {
	plot, err := readPlot(f, "test-area", "test-length", "test-width", false)
	if err != nil {
		return nil, err
	}
	if !f.Has("caught") {
		if plot != nil {
			return nil, f.Refuse("caught", "worksheet.together", wording.Places{"missing": "--caught", "given": "--test-area"})
		}
		return nil, nil
	}
	if plot == nil {
		return nil, f.Refuse("test-area", "worksheet.together", wording.Places{"missing": "--test-area", "given": "--caught"})
	}
	caught, err := spray.Caught(f.Volume("caught"), *plot)
	s.Caught = &caught
	return plot, err
}

func sprayerFigures(s spray.Solved, plot *quantity.Area, d dilution) sprayerAnswer {
	answer := sprayerAnswer{
		MixRate:  mixRate(s.Rate),
		SpeedKmh: in(s.Speed, quantity.Speed.KilometresPerHour), SpeedMph: in(s.Speed, quantity.Speed.MilesPerHour),
		SpacingCm: in(s.Width, func(l quantity.Length) float64 { return l.Metres() * 100 }),
		SpacingIn: in(s.Width, func(l quantity.Length) float64 { return float64(l / quantity.Inches(1)) }),
		NozzleL:   in(s.Flow, quantity.Flow.LitresPerMinute), NozzleGal: in(s.Flow, quantity.Flow.USGallonsPerMinute),
		Pressure: in(s.Pressure, quantity.Pressure.Kilopascals), TestArea: in(plot, quantity.Area.SquareMetres),
		Words: words(d.share),
	}
	if percent, both := s.Differ(); both {
		answer.Differ = &percent
		answer.Methods = &[]methodRow{{"caught", s.ByCatch.LitresPerHectare()}, {"flow-speed-width", s.ByFlow.LitresPerHectare()}}
	}
	if d.share != nil && s.Rate != nil {
		tea := *s.Rate * quantity.Dose(*d.share)
		answer.TeaRate = teaRate(&tea)
	}
	return answer
}

// cautionSprayer warns of pressures that are hard on living things or on the
// spray, and of methods that do not agree.
func cautionSprayer(r *worksheet.Result, s spray.Setting, out spray.Solved) {
	if p := out.Pressure; p != nil && *p > harshPressure*(1+1e-9) {
		r.Caution("application.harsh-pressure", wording.Places{"pressure": *p, "most": harshPressure})
	}
	if p := out.Pressure; p != nil && s.Rating != nil {
		times := math.Max(float64(*p/s.Rating.Pressure), float64(s.Rating.Pressure / *p))
		if times > furthestFromRating*(1+1e-9) {
			r.Caution("application.other-nozzle", wording.Places{"pressure": *p, "rated": s.Rating.Pressure})
		}
	}
	if percent, both := out.Differ(); both && percent > methodsApart*(1+1e-9) {
		r.Caution("application.methods-apart", wording.Places{"percent": percent})
	}
}

func sprayerSentence(s spray.Solved) wording.Text {
	places := wording.Places{}
	if s.Rate != nil {
		places["rate"] = *s.Rate
	}
	switch {
	case s.Found == "nozzle-flow" && s.Rate != nil && s.Pressure != nil:
		places["flow"], places["pressure"] = *s.Flow, *s.Pressure
		return wording.Say("sheet.sprayer.flow-pressure", places)
	case s.Found == "nozzle-flow":
		places["flow"] = *s.Flow
		return wording.Say("sheet.sprayer.flow", places)
	case s.Found == "speed":
		places["speed"] = *s.Speed
		return wording.Say("sheet.sprayer.speed", places)
	case s.Found == "spacing":
		places["width"] = *s.Width
		return wording.Say("sheet.sprayer.width", places)
	case s.Rate != nil:
		return wording.Say("sheet.sprayer.answer", places)
	case s.Found == "pressure":
		places["pressure"] = *s.Pressure
		return wording.Say("sheet.sprayer.pressure", places)
	}
	places["speed"] = *s.Speed
	return wording.Say("sheet.sprayer.course", places)
}
