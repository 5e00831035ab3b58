package weather

import (
	"encoding/json"

	"aerosteep/quantity"
)

// Typed writes what a person typed by hand, one row every six hours, as a
// locationforecast document, so that the same reader draws the lines between
// the rows and marks them coarse. The rain of a row falls until the next; the
// last row only ends the line.
//
// Source: MET Norway, Locationforecast 2.0 data model.
func Typed(place *Place, altitude quantity.Length, rows []Hour) ([]byte, error) {
	var file metFile
	if place != nil {
		file.Geometry.Coordinates = []float64{place.Longitude, place.Latitude, altitude.Metres()}
	}
	file.Properties.Meta.Units = metUnits
	for i, row := range rows {
		var e metEntry
		e.Time = row.At.UTC()
		e.Data.Instant.Details = row.metDetails()
		if i+1 < len(rows) {
			e.Data.Next6 = &metBlock{Details: map[string]*float64{}}
			if row.Rain != nil {
				e.Data.Next6.Details["precipitation_amount"] = new(row.Rain.Millimetres())
			}
		}
		file.Properties.Timeseries = append(file.Properties.Timeseries, e)
	}
	return json.MarshalIndent(file, "", " ")
}

// metDetails are the values of an instant; what is not known is left out.
func (h Hour) metDetails() map[string]*float64 {
	details := map[string]*float64{}
	if h.Temperature != nil {
		details["air_temperature"] = new(h.Temperature.Celsius())
	}
	if h.Humidity != nil {
		details["relative_humidity"] = new(*h.Humidity)
	}
	if h.Wind != nil {
		details["wind_speed"] = new(h.Wind.MetresPerSecond())
	}
	if h.Cloud != nil {
		details["cloud_area_fraction"] = new(*h.Cloud)
	}
	return details
}
