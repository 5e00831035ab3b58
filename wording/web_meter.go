package wording

// webMeterWords are the sentences of the page that checks a meter.
var webMeterWords = Table{
	"web.meter.title": {"Check a meter", "Revisar un medidor"},
	"web.meter.rig":   {"In water full of air; percent against mg/L; a borrowed meter", "En agua saturada de aire; porcentaje y mg/L; un medidor prestado"},
	"web.meter.lede":  {"Water that has had air for long holds a known amount. What a meter shows over or under that is its bias.", "El agua que ha recibido aire mucho tiempo contiene una cantidad conocida. Lo que un medidor marca de más o de menos es su sesgo."},

	"web.meter.step-fill": {"Fill a pail with plain water of the room's warmth, no tea and no food, and bubble it for half an hour.", "Llene un cubo con agua sola a la temperatura del cuarto, sin té ni alimento, y burbujéela media hora."},
	"web.meter.step-dip":  {"Let the probe warm to the water. Stir gently, keep bubbles off the tip, and wait until the number stands.", "Deje que la sonda tome la temperatura del agua. Muévala despacio, sin burbujas en la punta, y espere a que el número se pare."},
	"web.meter.step-type": {"Type what it shows: mg/L, or only percent. With a kit that counts drops, also what one drop stands for.", "Escriba lo que marca: mg/L, o solo porcentaje. Con un juego de gotas, también lo que vale una gota."},

	"web.meter.name":         {"Name of the meter", "Nombre del medidor"},
	"web.meter.name.hint":    {"As it is called here, for example the label on its back. Needed only for keeping.", "Como lo llaman aquí, por ejemplo la etiqueta de detrás. Solo hace falta para guardar."},
	"web.meter.name.missing": {"a check is kept under the name of its meter: give it one", "una revisión se guarda con el nombre de su medidor: déle uno"},
	"web.meter.keep":         {"Keep for this meter", "Guardar para este medidor"},
	"web.meter.both":         {"give mg/L or percent, not both", "dé mg/L o porcentaje, no los dos"},
	"web.meter.nothing":      {"there is nothing to keep yet: type what the meter shows", "todavía no hay nada que guardar: escriba lo que marca el medidor"},
	"web.meter.percent.hint": {"For a meter that shows only percent. It means percent of what water holds at your air pressure, if it was set in damp air there.", "Para un medidor que solo da porcentaje. Es el porcentaje de lo que el agua contiene con su presión del aire, si se ajustó allí en aire húmedo."},
	"web.meter.drop.hint":    {"For a kit that counts drops; else empty. Nothing finer than one drop can be told by it.", "Para un juego de gotas; si no, vacío. Nada más fino que una gota se distingue con él."},

	"web.meter.exact":      {"It shows what the water holds.", "Marca lo que el agua contiene."},
	"web.meter.over":       {"It shows {x} too much. Take that from each of its readings, or set it anew.", "Marca {x} de más. Réstelo de cada lectura, o ajústelo de nuevo."},
	"web.meter.under":      {"It shows {x} too little. Add that to each of its readings, or set it anew.", "Marca {x} de menos. Súmelo a cada lectura, o ajústelo de nuevo."},
	"web.meter.within":     {"It is {x} off, within the one drop ({drop}) that the kit can tell: that is no bias.", "Se desvía {x}, dentro de la gota ({drop}) que distingue el juego: eso no es sesgo."},
	"web.meter.doubted":    {"This water cannot hold that much. The check is kept if you wish, but in doubt; correct no reading by it.", "Esta agua no puede contener tanto. La revisión se guarda si quiere, pero en duda; no corrija lecturas con ella."},
	"web.meter.serves":     {"A check serves for {n} days (judged).", "Una revisión sirve {n} días (estimado)."},
	"web.meter.percents":   {"Percent in mg/L, in this water", "Porcentaje en mg/L, en esta agua"},
	"web.meter.percent":    {"The meter shows", "El medidor marca"},
	"web.meter.milligrams": {"That is", "Eso es"},

	"web.meter.afternoon":            {"A meter for one afternoon", "Un medidor por una tarde"},
	"web.meter.afternoon.lede":       {"Check the borrowed meter here first; then two tests are worth the afternoon.", "Revise primero aquí el medidor prestado; luego dos pruebas valen la tarde."},
	"web.meter.afternoon.pump-off":   {"Pump-off test in {vessel}, where {batch} lives", "Prueba sin bomba en {vessel}, donde vive {batch}"},
	"web.meter.afternoon.off-serves": {"What it says of the air serves for {n} days; how fast the brew breathes, for this batch only.", "Lo que dice del aire sirve {n} días; con qué rapidez respira el té, solo para este lote."},
	"web.meter.afternoon.water":      {"Reaeration test in plain water, in the vessel you use most", "Prueba de reaireación en agua sola, en el recipiente que más usa"},
	"web.meter.afternoon.serves":     {"It serves for {n} days; after that diffusers have fouled (judged).", "Sirve {n} días; después los difusores se han ensuciado (estimado)."},
	"web.meter.afternoon.own":        {"Your own meter, in the same pail of water beside the borrowed one", "Su propio medidor, en el mismo cubo de agua junto al prestado"},
	"web.meter.afternoon.own-serves": {"Its bias serves for {n} days (judged).", "Su sesgo sirve {n} días (estimado)."},

	"web.meter.batch":          {"Meter {name}, checked {when}: {bias}.", "Medidor {name}, revisado {when}: {bias}."},
	"web.meter.batch-none":     {"No check of a meter is on record.", "No consta ninguna revisión de un medidor."},
	"web.log.doubted":          {"{do} mg/L of {clock} is kept, but in doubt.", "{do} mg/L de {clock} queda guardado, pero en duda."},
	"web.rig.caught":           {"{pump}, {flow} of free air measured by jug", "{pump}, {flow} de aire libre medidos con la jarra"},
	"web.rigtest.jug-aged":     {"The air of this vessel's pump was measured by jug {n} days ago. Diffusers foul meanwhile; test again before you trust the forecast.", "El aire de la bomba de este recipiente se midió con la jarra hace {n} días. Los difusores se ensucian mientras tanto; repita la prueba antes de fiarse del pronóstico."},
	"web.rigtest.drop":         {"one drop is {x}", "una gota son {x}"},
	"web.rigtest.bias-doubted": {"in doubt: that water cannot hold so much", "en duda: esa agua no puede contener tanto"},

	"input.drop":        {"One drop of the kit", "Una gota del juego"},
	"key.drop_mg_per_l": {"One drop of the kit", "Una gota del juego"},
}
