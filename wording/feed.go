package wording

// feedWords are about a forecast that is fetched.
var feedWords = Table{
	"feed.address":         {"that is no address of a forecast", "esa no es la dirección de un pronóstico"},
	"feed.address.allowed": {"an address that begins with https:// or http://, without a name or password in it", "una dirección que empieza con https:// o http://, sin usuario ni contraseña"},
	"feed.offline":         {"The forecast could not be fetched ({why}); the one kept {age} ago is used", "No se pudo obtener el pronóstico ({why}); se usa el guardado hace {age}"},
	"feed.nothing":         {"The forecast could not be fetched and none is kept: {why}", "No se pudo obtener el pronóstico y no hay ninguno guardado: {why}"},
}
