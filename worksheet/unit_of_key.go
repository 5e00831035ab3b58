package worksheet

import (
	"strings"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// suffix ties the unit at the end of a JSON key to the quantity it is, so that
// a number can be said in the reader's own units. Longer suffixes come first.
type suffix struct {
	end   string
	speak func(float64) wording.Speaker
}

func as[T wording.Speaker](build func(float64) T) func(float64) wording.Speaker {
	return func(v float64) wording.Speaker { return build(v) }
}

// inUnit says a number in the unit that its key names, in either system.
func inUnit(unit string) func(float64) wording.Speaker {
	return func(v float64) wording.Speaker { return plainNumber{v, unit} }
}

// inDegrees says a coordinate to about ten metres.
func inDegrees(v float64) wording.Speaker { return coordinate(v) }

type coordinate float64

// Speak prints four decimals.
func (c coordinate) Speak(r wording.Reader) string {
	return wording.Fixed(float64(c), 4, r) + "°"
}

type plainNumber struct {
	value float64
	unit  string
}

// Speak prints four digits and the unit.
func (n plainNumber) Speak(r wording.Reader) string {
	s := wording.Number(n.value, 4, r)
	if n.unit == "" {
		return s
	}
	return s + "\u00a0" + n.unit
}

var suffixes = []suffix{
	// Under a microscope everybody reads mm and mL.
	{"total_length_mm", inUnit("mm")},
	{"field_diameter_mm", inUnit("mm")},
	{"film_depth_mm", inUnit("mm")},
	{"field_volume_ml", inUnit("mL")},
	{"volume_examined_ml", inUnit("mL")},
	{"_kg_per_kg", inUnit("kg/kg")},
	{"_gal_per_1000_sq_ft", inUnit("gal/1000\u00a0sq\u00a0ft")},
	{"_cu_ft_per_ac", inUnit("cu\u00a0ft/ac")},
	{"_m3_per_ha", inUnit("m³/ha")},
	{"_mg_cod_per_l", inUnit("mg COD/L")},
	{"_mg_per_l_h", as(quantity.MilligramsPerLitreHour)},
	{"_mm_per_h", as(quantity.MillimetresPerHour)},
	{"_mm_per_m", as(quantity.MillimetresPerMetre)},
	{"_mm_per_s", inUnit("mm/s")},
	{"_m_per_ml", inUnit("m/mL")},
	{"_l_per_min", as(quantity.LitresPerMinute)},
	{"_l_per_h", inUnit("L/h")},
	{"_l_per_ha", as(quantity.LitresPerHectare)},
	{"_kg_per_ha", inUnit("kg/ha")},
	{"_km_per_h", as(quantity.KilometresPerHour)},
	{"_us_per_cm", as(quantity.MicrosiemensPerCentimetre)},
	{"_w_per_k", as(quantity.WattsPerKelvin)},
	{"_ug_per_ml", inUnit("µg/mL")},
	{"_g_per_cm3", inUnit("g/cm³")},
	{"_mg_per_l", as(quantity.MilligramsPerLitre)},
	{"_g_per_ml", as(quantity.GramsPerMillilitre)},
	{"_g_per_l", inUnit("g/L")},
	{"_g_per_h", inUnit("g/h")},
	{"_g_per_g", inUnit("g/g")},
	{"_per_100_ml", inUnit("per 100\u00a0mL")},
	{"per_ml", inUnit("per mL")},
	{"_per_min", inUnit("/min")},
	{"_per_h", as(quantity.PerHour)},
	{"_per_g", inUnit("per g")},
	{"_sq_ft", inUnit("sq\u00a0ft")},
	{"percent_tea", inUnit("%")},
	{"_percent", inUnit("%")},
	{"_percent_w_v", inUnit("% w/v")},
	{"_percent_v_v", inUnit("% v/v")},
	{"minutes", inUnit("min")},
	{"latitude", inDegrees},
	{"longitude", inDegrees},
	{"_hours", inUnit("h")},
	{"_days", inUnit("d")},
	{"_deg", inUnit("°")},
	{"_mph", inUnit("mph")},
	{"_gpa", inUnit("gal/ac")},
	{"_gpm", inUnit("gal/min")},
	{"_kwh", inUnit("kWh")},
	{"_kpa", as(quantity.Kilopascals)},
	{"_um3", inUnit("µm³")},
	{"_mm2", inUnit("mm²")},
	{"_psu", inUnit("PSU")},
	{"_m2", as(quantity.SquareMetres)},
	{"_ml", as(quantity.Millilitres)},
	{"_kg", func(v float64) wording.Speaker { return quantity.Grams(v * 1000) }},
	{"_lb", inUnit("lb")},
	{"_mg", func(v float64) wording.Speaker { return quantity.Grams(v / 1000) }},
	{"_mm", func(v float64) wording.Speaker { return quantity.Metres(v / 1000) }},
	{"_cm", func(v float64) wording.Speaker { return quantity.Metres(v / 100) }},
	{"_um", inUnit("µm")},
	{"_ft", inUnit("ft")},
	{"_in", inUnit("in")},
	{"_h", inUnit("h")},
	{"_w", as(quantity.Watts)},
	{"_l", as(quantity.Litres)},
	{"_g", as(quantity.Grams)},
	{"_m", as(quantity.Metres)},
	{"_c", as(quantity.Celsius)},
	{"_d", inUnit("d")},
}

// Speak says the number behind a JSON key with its unit. Depressions and
// other differences of temperature are steps, not points.
func Speak(key string, v float64) wording.Speaker {
	if key == "depression_c" {
		return quantity.CelsiusStep(v)
	}
	if strings.Contains(key, "airflow") && strings.HasSuffix(key, "_l_per_min") {
		return quantity.Airflow(v)
	}
	if key == "one_in" || strings.HasPrefix(key, "cost_per_") {
		return plainNumber{v, ""}
	}
	for _, s := range suffixes {
		if strings.HasSuffix(key, s.end) {
			return s.speak(v)
		}
	}
	if strings.HasPrefix(key, "minutes_") {
		return plainNumber{v, "min"}
	}
	if strings.HasPrefix(key, "percent_") {
		return plainNumber{v, "%"}
	}
	return plainNumber{v, ""}
}
