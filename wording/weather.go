package wording

var weatherWords = Table{
	"weather.no-hours":                  {"the file has no hour that can be used", "el archivo no tiene ninguna hora que se pueda usar"},
	"weather.no-hours.advice":           {"give a file with one row an hour", "dé un archivo con una fila por hora"},
	"weather.not-an-hour-later":         {"is not at least an hour after the row above", "no está al menos una hora después de la fila anterior"},
	"weather.not-an-hour-later.allowed": {"one row an hour, earliest first; an hour may be missing", "una fila por hora, la más temprana primero; puede faltar una hora"},
	"weather.dew-over-air":              {"is a dew point above the air temperature", "es un punto de rocío por encima de la temperatura del aire"},
	"weather.dew-over-air.allowed":      {"at most the air temperature", "como mucho la temperatura del aire"},
}
