//go:build js && wasm

package main

import (
	"encoding/json"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// waitingReading is a reading that waits on the phone, as it was typed.
type waitingReading struct {
	At      string `json:"at"`
	DO      string `json:"do"`
	Percent string `json:"percent-saturation"`
	Temp    string `json:"temp"`
	Smell   string `json:"smell"`
}

// foreseen is what a page shows of a forecast made on the phone.
type foreseen struct {
	Figures map[string]string `json:"figures,omitempty"` // by data-key, in words
	Chance  *float64          `json:"chance_below_limit,omitempty"`
	MinDO   *float64          `json:"min_do_mg_per_l,omitempty"`
	Fault   string            `json:"fault,omitempty"`
}

// foresee makes the forecast that was carried here anew, with the readings that
// wait. Bare temperatures are in the unit of the page.
func foresee(carried, readings, now, language, units string) string {
	reader := wording.Reader{Language: wording.Language(language), Units: wording.Units(units)}
	told, err := anew(carried, readings, now, reader)
	if err != nil {
		told = foreseen{Fault: err.Error()}
	}
	out, _ := json.Marshal(told) // nothing in it can fail
	return string(out)
}

func anew(carried, readings, now string, reader wording.Reader) (foreseen, error) {
	var c forecast.Carried
	var typed []waitingReading
	if err := json.Unmarshal([]byte(carried), &c); err != nil {
		return foreseen{}, err
	}
	if err := json.Unmarshal([]byte(readings), &typed); err != nil {
		return foreseen{}, err
	}
	at, err := time.Parse(time.RFC3339, now)
	if err != nil {
		return foreseen{}, err
	}
	var more []forecast.Reading
	for _, w := range typed {
		if r, ok := w.read(c.Start, reader); ok {
			more = append(more, r)
		}
	}
	a, err := c.Answer(at, more...)
	if err != nil {
		return foreseen{}, err
	}
	return spoken(a, reader), nil
}

// read is the reading; ok is false where nothing of it can be read, which the
// server will say when it comes.
func (w waitingReading) read(start time.Time, reader wording.Reader) (forecast.Reading, bool) {
	at, err := time.Parse(time.RFC3339, w.At)
	if err != nil {
		return forecast.Reading{}, false
	}
	r := forecast.Reading{Hour: at.Sub(start).Hours(), Smell: forecast.Smell(w.Smell)}
	if c, err := quantity.ParseConcentration(united(w.DO, "mg/L")); err == nil {
		r.DO = new(c.MilligramsPerLitre())
	}
	if p, err := quantity.ParseShare(united(w.Percent, "%")); err == nil {
		r.Percent = new(p.Percent())
	}
	unit := "°C"
	if reader.Units == wording.US {
		unit = "°F"
	}
	if t, err := quantity.ParseTemperature(united(w.Temp, unit)); err == nil {
		r.Water = new(t.Celsius())
	}
	return r, !r.Empty()
}

// united gives a bare number the unit that stands in its box.
func united(text, unit string) string {
	if _, err := quantity.Bare(text); err == nil {
		return text + " " + unit
	}
	return text
}

// spoken are the figures of the page of a batch, in its words.
func spoken(a *forecast.Answer, reader wording.Reader) foreseen {
	told := foreseen{Figures: map[string]string{}}
	if a.Chance != nil {
		told.Chance = a.Chance
		told.Figures["chance_below_limit"] = wording.Chance(*a.Chance).For(reader)
	}
	if a.MinDO != nil {
		told.MinDO = &a.MinDO.Median
		told.Figures["min_do_mg_per_l"] = wording.Fixed(a.MinDO.Median, 1, reader) + "\u00a0mg/L"
	}
	return told
}
