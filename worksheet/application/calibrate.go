package application

import (
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// calibrate puts the three classical ways side by side, each of which may be
// left out.
var calibrate = worksheet.Sheet{
	Name: "calibrate", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "caught", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "test-area", Kind: worksheet.Area, Low: "0 m2", Over: true},
		{Flag: "test-length", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "test-width", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "nozzle-flow", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
		{Flag: "course", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "course-time", Kind: worksheet.Span, Low: "0 s", Over: true},
		{Flag: "spacing", Kind: worksheet.SmallLength, Low: narrowest, High: widest},
		{Flag: "course-caught", Kind: worksheet.Volume, Low: "0 L", Over: true},
	},
	Example: `--caught "20 fl oz" --test-area "340 sq ft" --nozzle-flow "0.4 gal/min" --course "88 ft" --course-time "10 s" --spacing "20 in" --course-caught "20 fl oz"`,
	Sources: []source.Source{source.OhioAEX520, source.MissouriG1270A, source.CommonPractice},
	Shape:   calibrateAnswer{},
	Run:     runCalibrate,
}

type calibrateAnswer struct {
	MixRate
	Ways   []wayRow `json:"ways"`
	Spread *float64 `json:"spread_percent"`
	Agree  *bool    `json:"ways_agree"`
	Odd    *string  `json:"way_to_repeat"`
	Course *float64 `json:"distance_m"`
	Basis  string   `json:"basis"`
}

type wayRow struct {
	Name string  `json:"name"`
	Rate float64 `json:"mix_rate_l_per_ha"`
}

func runCalibrate(f *worksheet.Form) (*worksheet.Result, error) {
	ways, err := readWays(f)
	if err != nil {
		return nil, refused(f, err)
	}
	if len(ways) == 0 {
		return nil, f.Refuse("caught", "application.no-way")
	}
	c, err := spray.Compare(ways)
	if err != nil {
		return nil, refused(f, err)
	}
	r := &worksheet.Result{Sources: f.Sheet.Sources, Data: calibrateFigures(f, ways, c)}
	places := wording.Places{"rate": c.Rate, "percent": c.Spread * 100, "most": spray.WaysAgree * 100}
	switch {
	case len(ways) == 1:
		r.Answer = wording.Say("sheet.calibrate.one", places)
		r.Caution("application.one-way")
	case c.Agree:
		r.Answer = wording.Say("sheet.calibrate.agree", places)
	case c.Odd != "":
		places["way"] = wording.Say("value.name." + string(c.Odd))
		r.Answer = wording.Say("sheet.calibrate.odd", places)
	default:
		r.Answer = wording.Say("sheet.calibrate.apart", places)
	}
	return r, nil
}

// readWays reads as many of the three ways as were given in full.
func readWays(f *worksheet.Form) ([]spray.Found, error) {
	var ways []spray.Found
	for _, read := range []func(*worksheet.Form) (*spray.Found, error){wayByPlot, wayByNozzle, wayByOunces} {
		found, err := read(f)
		if err != nil {
			return nil, err
		}
		if found != nil {
			ways = append(ways, *found)
		}
	}
	return ways, nil
}

func wayByPlot(f *worksheet.Form) (*spray.Found, error) {
	var setting spray.Setting
	if _, err := readCatch(f, &setting); err != nil || setting.Caught == nil {
		return nil, err
	}
	return &spray.Found{Way: spray.ByPlot, Rate: *setting.Caught}, nil
}

func wayByNozzle(f *worksheet.Form) (*spray.Found, error) {
	if err := f.Together("course", "course-time"); err != nil {
		return nil, err
	}
	if err := f.Together("nozzle-flow", "course"); err != nil || !f.Has("nozzle-flow") {
		return nil, err
	}
	if !f.Has("spacing") {
		return nil, needs(f, "spacing", "nozzle-flow")
	}
	speed, err := spray.SpeedOver(f.Length("course"), f.Span("course-time"))
	if err != nil {
		return nil, err
	}
	if err := inside(f, "course", &speed, slowest, fastest, quantity.ParseSpeed); err != nil {
		return nil, err
	}
	rate, err := spray.Rate(f.Flow("nozzle-flow"), speed, f.Length("spacing"))
	return &spray.Found{Way: spray.ByNozzle, Rate: rate}, err
}

// wayByOunces is of what one nozzle gave while the course of 1/128 acre was
// walked: fluid ounces read as gallons an acre.
func wayByOunces(f *worksheet.Form) (*spray.Found, error) {
	if !f.Has("course-caught") {
		return nil, nil
	}
	if !f.Has("spacing") {
		return nil, needs(f, "spacing", "course-caught")
	}
	rate, err := spray.Caught(f.Volume("course-caught"), spray.OuncePlot)
	return &spray.Found{Way: spray.ByOunces, Rate: rate}, err
}

func needs(f *worksheet.Form, missing, with string) error {
	return f.Refuse(missing, "worksheet.together", wording.Places{"missing": "--" + missing, "given": "--" + with})
}

func calibrateFigures(f *worksheet.Form, ways []spray.Found, c spray.Compared) calibrateAnswer {
	answer := calibrateAnswer{MixRate: mixRate(&c.Rate), Basis: "habit"}
	for _, w := range ways {
		answer.Ways = append(answer.Ways, wayRow{string(w.Way), w.Rate.LitresPerHectare()})
	}
	if len(ways) > 1 {
		answer.Spread, answer.Agree = worksheet.Some(c.Spread*100), &c.Agree
	}
	if c.Odd != "" {
		odd := string(c.Odd)
		answer.Odd = &odd
	}
	if f.Has("spacing") {
		if course, err := spray.CourseOver(spray.OuncePlot, f.Length("spacing")); err == nil {
			answer.Course = in(&course, quantity.Length.Metres)
		}
	}
	return answer
}
