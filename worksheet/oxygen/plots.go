package oxygen

import (
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var (
	minutesAxis  = worksheet.Axis{Label: wording.Say("plot.time"), Unit: "min"}
	oxygenAxis   = worksheet.Axis{Label: wording.Say("plot.oxygen"), Unit: "mg/L"}
	airflowAxis  = worksheet.Axis{Label: wording.Say("plot.airflow"), Unit: "L/min"}
	pressureAxis = worksheet.Axis{Label: wording.Say("plot.pressure"), Unit: "kPa"}
)

// risePlot draws the readings, the fitted curve and how far each reading is
// from it: residuals that bend show a wrong model faster than any number.
func risePlot(rise oxygen.Rise, title wording.Text) *worksheet.Plot {
	read := worksheet.Series{Label: wording.Say("plot.readings"), Kind: "points"}
	fit := worksheet.Series{Label: wording.Say("plot.fit"), Kind: "line"}
	off := worksheet.Series{Label: wording.Say("plot.residuals"), Kind: "points"}
	for i, r := range rise.Readings {
		at := (r.At - rise.Readings[0].At).Minutes()
		read.X, read.Y = append(read.X, at), append(read.Y, float64(r.Oxygen))
		fit.X, fit.Y = append(fit.X, at), append(fit.Y, float64(rise.Fitted[i]))
		off.X, off.Y = append(off.X, at), append(off.Y, float64(r.Oxygen-rise.Fitted[i]))
	}
	return &worksheet.Plot{Title: title, X: minutesAxis, Y: oxygenAxis, Series: []worksheet.Series{read, fit, off}}
}

// fallPlot draws an air-off stretch and its line.
func fallPlot(fall oxygen.Fall, title wording.Text) *worksheet.Plot {
	read := worksheet.Series{Label: wording.Say("plot.readings"), Kind: "points"}
	meanAt, meanOxygen, n := 0.0, 0.0, float64(len(fall.Readings))
	for _, r := range fall.Readings {
		at := (r.At - fall.Readings[0].At).Minutes()
		read.X, read.Y = append(read.X, at), append(read.Y, float64(r.Oxygen))
		meanAt, meanOxygen = meanAt+at/n, meanOxygen+float64(r.Oxygen)/n
	}
	last := read.X[len(read.X)-1]
	line := worksheet.Series{Label: wording.Say("plot.fit"), Kind: "line", X: []float64{0, last}}
	for _, at := range line.X {
		line.Y = append(line.Y, meanOxygen-float64(fall.Uptake.Value)/60*(at-meanAt))
	}
	return &worksheet.Plot{Title: title, X: minutesAxis, Y: oxygenAxis, Series: []worksheet.Series{read, line}}
}

// standingPlot draws how oxygen falls to the limit once the air has stopped.
func standingPlot(s oxygen.Standing, limit quantity.Concentration, until quantity.Span, title wording.Text) *worksheet.Plot {
	const steps = 40
	line := worksheet.Series{Label: wording.Say("plot.oxygen"), Kind: "line"}
	for i := range steps + 1 {
		left := s.Start - (s.Start-limit)*quantity.Concentration(i)/steps
		if at, reaches, err := s.TimeTo(left); err == nil && reaches {
			line.X, line.Y = append(line.X, at.Minutes()), append(line.Y, float64(left))
		}
	}
	return &worksheet.Plot{Title: title, X: minutesAxis, Y: oxygenAxis, Series: []worksheet.Series{line},
		Marks: []worksheet.Mark{{X: until.Minutes(), Y: float64(limit), Label: wording.Say("plot.limit")}}}
}

// meetingPlot draws the pump's curve against the system's.
func meetingPlot(pump air.Curve, s air.System, m air.Meeting, title wording.Text) *worksheet.Plot {
	const steps = 40
	curve := worksheet.Series{Label: wording.Say("plot.pump"), Kind: "line"}
	for _, p := range pump {
		curve.X, curve.Y = append(curve.X, float64(p.Airflow)), append(curve.Y, float64(p.Pressure))
	}
	system := worksheet.Series{Label: wording.Say("plot.system"), Kind: "line"}
	for i := range steps + 1 {
		free := pump.Open().Airflow * quantity.Flow(i) / steps
		system.X, system.Y = append(system.X, float64(free)), append(system.Y, float64(s.At(free)))
	}
	return &worksheet.Plot{Title: title, X: airflowAxis, Y: pressureAxis, Series: []worksheet.Series{curve, system},
		Marks: []worksheet.Mark{{X: float64(m.Airflow), Y: float64(m.Pressure), Label: wording.Say("plot.meeting")}}}
}
