package wording

// placeWords are the sentences about where the work is: the pressure of its
// air.
var placeWords = Table{
	"input.altitude":           {"Height of the site above the sea", "Altura del lugar sobre el mar"},
	"input.pressure":           {"What a barometer at the site shows, uncorrected", "Lo que marca un barómetro en el lugar, sin corregir"},
	"input.sea-level-pressure": {"The figure of a weather report or airport (give the altitude too)", "La cifra de un parte meteorológico o aeropuerto (dé también la altura)"},

	"place.pressure":              {"Air pressure at the site", "Presión del aire en el lugar"},
	"place.twice":                 {"--pressure is what the site's own barometer shows and does not go with {other}", "--pressure es lo que marca el barómetro del lugar y no va con {other}"},
	"place.twice.advice":          {"give --pressure alone, or --altitude with or without --sea-level-pressure", "dé solo --pressure, o --altitude con --sea-level-pressure o sin ella"},
	"place.needs-altitude":        {"--sea-level-pressure needs --altitude to be brought to the site", "--sea-level-pressure necesita --altitude para llevarla al lugar"},
	"place.needs-altitude.advice": {"give --altitude as well, for example --altitude \"640 m\"", "dé también --altitude, por ejemplo --altitude \"640 m\""},
	"place.default":               {"No altitude or pressure was given: this is for sea level.", "No se dio altura ni presión: esto vale a nivel del mar."},
	"place.station":               {"--pressure must be what a barometer at the site shows: a weather report's “sea level” figure does not belong there (at 1500 m it makes the answer 20 % too high).", "--pressure debe ser lo que marca un barómetro en el lugar: la cifra «a nivel del mar» de un parte meteorológico no va ahí (a 1500 m da un resultado 20 % demasiado alto)."},

	"key.pressure_kpa":  {"pressure", "presión"},
	"key.pressure_from": {"Pressure taken from", "Presión tomada de"},

	"value.pressure_from.altitude":           {"altitude", "la altura"},
	"value.pressure_from.pressure":           {"the site's barometer", "el barómetro del lugar"},
	"value.pressure_from.sea-level-pressure": {"a weather report and the altitude", "un parte meteorológico y la altura"},
	"value.pressure_from.default":            {"nothing given: sea level", "nada dado: nivel del mar"},
}
