package wording

var groundWords = Table{
	"ground.no-triangle":         {"a side of {long} and two of {rest} together make no triangle", "un lado de {long} y dos que suman {rest} no forman un triángulo"},
	"ground.no-triangle.allowed": {"three sides, none as long as the other two together", "tres lados, ninguno tan largo como los otros dos juntos"},
	"ground.no-triangle.advice":  {"measure the sides again", "mida los lados otra vez"},

	"ground.corner":             {"corner {number}: {what}", "esquina {number}: {what}"},
	"ground.corner.two-numbers": {"a corner is latitude, then longitude", "una esquina es la latitud y después la longitud"},
	"ground.corner.no-degrees":  {"“{part}” is not degrees with a decimal point", "«{part}» no son grados con punto decimal"},
	"ground.corner.latitude":    {"a latitude of {latitude} is beyond 90: is the order right, latitude before longitude?", "una latitud de {latitude} pasa de 90: ¿está bien el orden, latitud antes de longitud?"},
	"ground.corner.longitude":   {"a longitude of {longitude} is beyond 180", "una longitud de {longitude} pasa de 180"},
	"ground.corner.allowed":     {"“lat,lon; lat,lon; lat,lon”: at least 3 different corners, in degrees, in walking order", "«lat,lon; lat,lon; lat,lon»: al menos 3 esquinas distintas, en grados, en el orden en que se caminan"},
	"ground.corner.advice":      {"write for example 44.12,-123.05; 44.12,-123.0496; 44.1203,-123.0496", "escriba por ejemplo 44.12,-123.05; 44.12,-123.0496; 44.1203,-123.0496"},
	"ground.corner.order":       {"give the corners in the order in which you would walk them, or use a tape measure", "dé las esquinas en el orden en que las caminaría, o use una cinta métrica"},
	"ground.few-corners":        {"there {n|is|are} only {n} different {n|corner|corners}", "solo hay {n} {n|esquina distinta|esquinas distintas}"},
	"ground.crossing":           {"the side from corner {first} crosses or touches the side from corner {second}", "el lado que sale de la esquina {first} cruza o toca el que sale de la esquina {second}"},
	"ground.far-apart":          {"corners {first} and {second} are more than 500 km apart", "las esquinas {first} y {second} están a más de 500 km"},
	"ground.round-pole":         {"the corners go round a pole", "las esquinas rodean un polo"},
	"ground.hole-outside":       {"hole {hole} does not lie inside its outline", "el hueco {hole} no queda dentro de su contorno"},

	"ground.gpx.broken":          {"the file breaks off or is not XML", "el archivo se corta o no es XML"},
	"ground.gpx.empty":           {"the file has no points", "el archivo no tiene puntos"},
	"ground.gpx.allowed":         {"GPX with a track, a route or way points round the field", "GPX con un recorrido, una ruta o puntos alrededor del campo"},
	"ground.gpx.advice":          {"export the walk again, or type its corners", "exporte la caminata de nuevo o escriba sus esquinas"},
	"ground.geojson.broken":      {"it is not JSON that can be read", "no es JSON que se pueda leer"},
	"ground.geojson.empty":       {"it holds no area", "no contiene ninguna superficie"},
	"ground.geojson.coordinates": {"its coordinates cannot be read", "sus coordenadas no se pueden leer"},
	"ground.geojson.other":       {"{type} is not an area that can be read", "{type} no es una superficie que se pueda leer"},
	"ground.geojson.allowed":     {"GeoJSON (RFC 7946): Polygon, MultiPolygon, or a Feature or FeatureCollection of them, longitude before latitude", "GeoJSON (RFC 7946): Polygon, MultiPolygon, o un Feature o FeatureCollection de ellos, longitud antes de latitud"},
	"ground.geojson.advice":      {"export the field as a polygon", "exporte el campo como polígono"},
}
