//go:build js && wasm

package main

import (
	"aerosteep/job/ground"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// offBed says how far a position, with its accuracy in metres, lies from a bed.
func offBed(corners string, latitude, longitude, accuracy float64, language, units string) string {
	reader := wording.Reader{Language: wording.Language(language), Units: wording.Units(units)}
	bed, err := ground.ParseCorners(corners)
	if err != nil {
		return err.Error()
	}
	off := ground.OffBed(bed, ground.Corner{Latitude: latitude, Longitude: longitude})
	places := wording.Places{"off": off, "accuracy": quantity.Metres(accuracy)}
	switch {
	case off == 0:
		return wording.Say("web.stop.place.in", places).For(reader)
	case off.Metres() <= accuracy:
		return wording.Say("web.stop.place.near", places).For(reader)
	}
	return wording.Say("web.stop.place.off", places).For(reader)
}
