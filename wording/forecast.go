package wording

// forecastWords are the sentences of the forecast.
var forecastWords = Table{
	"forecast.sentence": {
		"Oxygen is at {do} now; lowest {low} around {at}; {chance} in 100 that it goes under {limit}.",
		"El oxígeno está ahora en {do}; lo más bajo, {low} hacia las {at}; {chance} de 100 de que baje de {limit}.",
	},
	"forecast.sentence.past-end": {
		"Oxygen is at {do} now; the brew is past its end.",
		"El oxígeno está ahora en {do}; la infusión ha pasado de su fin.",
	},

	"forecast.why.past-end": {
		"The brew is past the end of its recipe: stop the air and use it, or discard it. Nothing is forecast beyond the end.",
		"La infusión ha pasado del fin de su receta: pare el aire y úsela, o deséchela. No se pronostica nada después del fin.",
	},
	"forecast.why.calm": {
		"Nothing takes much of the oxygen: food {food}, compost {compost}, warmth {warmth}.",
		"Nada quita mucho oxígeno: el alimento, {food}; el compost, {compost}; el calor, {warmth}.",
	},
	"forecast.why.food": {
		"Life on the food you put in takes {food} of the oxygen around {at}, compost {compost}, warmth {warmth}.",
		"La vida sobre el alimento añadido quita {food} de oxígeno hacia las {at}; el compost, {compost}; el calor, {warmth}.",
	},
	"forecast.why.compost": {
		"The compost itself takes {compost} of the oxygen around {at}, food {food}, warmth {warmth}.",
		"El propio compost quita {compost} de oxígeno hacia las {at}; el alimento, {food}; el calor, {warmth}.",
	},
	"forecast.why.temperature": {
		"Warmer water holds {warmth} less oxygen around {at} than at the start; food takes {food}, compost {compost}.",
		"El agua más caliente retiene {warmth} menos de oxígeno hacia las {at} que al principio; el alimento quita {food} y el compost {compost}.",
	},
	"forecast.why.air": {
		"Less air gets through than the pump should give: that is worth {air} of oxygen around {at}. Look at stone, tube and foam.",
		"Llega menos aire del que la bomba debería dar: eso vale {air} de oxígeno hacia las {at}. Revise piedra, manguera y espuma.",
	},
	"forecast.why.air-failing": {
		"The readings look as if the air has stopped or is throttled ({chance} in 100). Look at the pump now, with dry hands: electricity and water stand close together.",
		"Las lecturas parecen indicar que el aire se paró o está estrangulado ({chance} de 100). Revise la bomba ahora, con las manos secas: hay electricidad cerca del agua.",
	},
	"forecast.why.air-look": {
		"Either life takes up more than before, or the air has stopped or is throttled unseen ({chance} in 100): look at the pump and its bubbles first, with dry hands. Lowest {low} around {at}.",
		"O la vida consume más que antes, o el aire se paró o está estrangulado sin que nadie lo viera ({chance} de 100): revise primero la bomba y sus burbujas, con las manos secas. Lo más bajo, {low} hacia las {at}.",
	},
	"forecast.why.air-off": {
		"The air is off, as you wrote down: oxygen falls until it is on again.",
		"El aire está apagado, según usted anotó: el oxígeno baja hasta que vuelva.",
	},
	"forecast.why.meter": {
		"The meter seems to read {bias} too high: what looks like room above the limit may not be there. Check it in air.",
		"El medidor parece marcar {bias} de más: el margen que se ve sobre el límite puede no existir. Compruébelo al aire.",
	},
	"forecast.why.meter-low": {
		"The meter seems to read {bias} too low: the brew is better off than it shows. Check it in air.",
		"El medidor parece marcar {bias} de menos: la infusión está mejor de lo que indica. Compruébelo al aire.",
	},

	"forecast.action.air-back": {
		"Get the air going again: then {chance} in 100, lowest {low}.",
		"Haga que vuelva el aire: entonces {chance} de 100, lo más bajo {low}.",
	},
	"forecast.action.second-pump": {
		"Set the second pump beside the first: then {chance} in 100, lowest {low}.",
		"Ponga la segunda bomba junto a la primera: entonces {chance} de 100, lo más bajo {low}.",
	},
	"forecast.action.less-food": {
		"Put in half of the food that is still to come: then {chance} in 100, lowest {low}.",
		"Añada la mitad del alimento que falta: entonces {chance} de 100, lo más bajo {low}.",
	},
	"forecast.action.cool": {
		"Cool the water by {step} with about {ice} of ice in closed, washed bottles and keep it so: then {chance} in 100, lowest {low}.",
		"Enfríe el agua {step} con unos {ice} de hielo en botellas cerradas y lavadas, y manténgala así: entonces {chance} de 100, lo más bajo {low}.",
	},
	"forecast.action.finish-earlier": {
		"End the brew {hours} {hours|hour|hours} earlier: then {chance} in 100, lowest {low}.",
		"Termine la infusión {hours} {hours|hora|horas} antes: entonces {chance} de 100, lo más bajo {low}.",
	},

	"forecast.next.decide":              {"A reading at {at} parts best what goes wrong from what does not.", "Una lectura a las {at} es la que mejor distingue lo que irá mal de lo que no."},
	"forecast.next.watch":               {"Nothing presses; by {at} the forecast has grown vague and a reading sharpens it.", "No hay prisa; hacia las {at} el pronóstico es más vago y una lectura lo afina."},
	"forecast.next.confirm":             {"Something does not fit: read again at {at}, probe deep and moving.", "Algo no encaja: vuelva a medir a las {at}, con la sonda honda y en movimiento."},
	"forecast.next.follow":              {"Act first, then read again at {at}: that shows whether it helped.", "Primero actúe y vuelva a medir a las {at}: así se ve si sirvió."},
	"forecast.next.past-end":            {"The brew is past its end: no reading decides anything any more.", "La infusión ha pasado de su fin: ninguna lectura decide ya nada."},
	"forecast.event.found-off":          {"when the air was last seen on is not clear", "no está claro cuándo se vio el aire en marcha por última vez"},
	"forecast.found-off":                {"The air stopped some time between {from} and {until}: {hours} h under {limit} ({low} to {high} h).", "El aire se paró en algún momento entre {from} y {until}: {hours} h por debajo de {limit} (de {low} a {high} h)."},
	"forecast.found-off.carry-on":       {"Carry on with air: where it smells earthy and the oxygen comes back (common practice).", "Seguir con aire: si huele a tierra y el oxígeno vuelve (práctica común)."},
	"forecast.found-off.soil":           {"Only on soil of beds without food crops, none on leaves (common practice).", "Solo en suelo de bancales sin cultivos comestibles, nada en hojas (práctica común)."},
	"forecast.found-off.heap":           {"Onto the compost heap, far from drains and water (common practice).", "Al montón de compost, lejos de desagües y agua (práctica común)."},
	"forecast.overflow":                 {"Foam reaches the rim around {at} ({low} to {high}), if it rises on. It says nothing of readiness.", "La espuma llega al borde hacia las {at} ({low} a {high}), si sigue subiendo. No dice nada de si está listo."},
	"forecast.overflow.before":          {"Foam reaches the rim around {at} ({low} to {high}), before the next visit: skim it, draw some off, or stay. It says nothing of readiness.", "La espuma llega al borde hacia las {at} ({low} a {high}), antes de la próxima visita: quítela, saque líquido o quédese. No dice nada de si está listo."},
	"forecast.overflow.may-stop":        {"Foam reaches the rim around {at} at its present rise, at the earliest {low}; it may also stop.", "La espuma llega al borde hacia las {at} a su ritmo actual, como pronto {low}; también puede parar."},
	"forecast.overflow.may-stop.before": {"Foam reaches the rim around {at} at its present rise, at the earliest {low}, before the next visit; it may also stop. Skim it, or draw some off.", "La espuma llega al borde hacia las {at} a su ritmo actual, como pronto {low}, antes de la próxima visita; también puede parar. Quítela o saque líquido."},
	"forecast.next.no-meter":            {"No meter here: by {at} look at the bubbles and the foam, and smell it.", "Aquí no hay medidor: hacia las {at} mire las burbujas y la espuma, y huélala."},

	"forecast.meter.none":   {"No meter here: by model and nose.", "Aquí no hay medidor: por modelo y olfato."},
	"forecast.meter.unread": {"The meter has not been used in this brew.", "El medidor no se ha usado en esta infusión."},
	"forecast.meter.high":   {"The meter seems to read {bias} too high. Check it in water-saturated air.", "El medidor parece marcar {bias} de más. Compruébelo en aire saturado de agua."},
	"forecast.meter.low":    {"The meter seems to read {bias} too low. Check it in water-saturated air.", "El medidor parece marcar {bias} de menos. Compruébelo en aire saturado de agua."},
	"forecast.meter.fine":   {"Nothing in the readings speaks against the meter.", "Nada en las lecturas habla en contra del medidor."},

	"forecast.doubt.percent-as-mg":   {"no water holds that much; it looks like a percentage typed as mg/L and was taken as one", "ningún agua retiene tanto; parece un porcentaje escrito como mg/L y se tomó como tal"},
	"forecast.doubt.probe-in-air":    {"this is what a probe shows that hangs in air", "es lo que marca una sonda colgada al aire"},
	"forecast.doubt.out-of-line":     {"it fits neither what came before nor what came after; it may have been taken in air", "no encaja ni con lo anterior ni con lo posterior; quizá se tomó al aire"},
	"forecast.doubt.impossible":      {"no water holds that much oxygen", "ningún agua retiene tanto oxígeno"},
	"forecast.doubt.temperature-off": {"the water cannot have changed that much since the reading before", "el agua no puede haber cambiado tanto desde la lectura anterior"},

	"forecast.what-if.unknown":      {"this change is not understood", "no se entiende este cambio"},
	"forecast.what-if.allowed":      {"air ±N %, food ±N % (-100 to 400), finish ±N h (to 72), temp ±N C (to 20), parted by commas", "air ±N %, food ±N % (-100 a 400), finish ±N h (hasta 72), temp ±N C (hasta 20), separados por comas"},
	"forecast.what-if.advice":       {"for example \"air +30 %, food -25 %\"", "por ejemplo \"air +30 %, food -25 %\""},
	"forecast.what-if.no-food":      {"No food is still to be put in, so that less or more of it changes nothing.", "No queda alimento por añadir: más o menos no cambia nada."},
	"forecast.what-if.same-members": {"The same members in a changed future.", "Los mismos miembros en un futuro distinto."},

	"forecast.event.empty":    {"nothing was done", "no se hizo nada"},
	"forecast.event.too-much": {"this event stands alone", "este evento va solo"},
	"forecast.event.air":      {"the airflow is not understood", "no se entiende el caudal de aire"},
	"forecast.event.water":    {"the amount of water is not understood", "no se entiende la cantidad de agua"},
	"forecast.event.food":     {"the food is not understood: name, then amount", "no se entiende el alimento: nombre y después cantidad"},
	"forecast.event.unknown":  {"this event is not known", "este evento no se conoce"},
	"forecast.event.allowed": {
		"air-off, air-on, found-off, found-off 4 h, air 40 L/min, food NAME AMOUNT, water AMOUNT, stirred, probe-cleaned, calibrated",
		"air-off, air-on, found-off, found-off 4 h, air 40 L/min, food NOMBRE CANTIDAD, water CANTIDAD, stirred, probe-cleaned, calibrated",
	},
	"forecast.smell":         {"this smell is not known", "este olor no se conoce"},
	"forecast.smell.allowed": {"earthy, none, sweet, sour or rotten", "earthy, none, sweet, sour o rotten"},

	"forecast.lacks":           {"batch {batch} has no {key}", "la tanda {batch} no tiene {key}"},
	"forecast.lacks.allowed":   {"a batch with vessel, recipe, volume and started_at", "una tanda con vessel, recipe, volume y started_at"},
	"forecast.lacks.advice":    {"add {key} to its [[batch]]", "añada {key} a su [[batch]]"},
	"forecast.batch.unknown":   {"there is no batch {batch}", "no hay ninguna tanda {batch}"},
	"forecast.batch.allowed":   {"one of the file's batches: {names}", "una de las tandas del archivo: {names}"},
	"forecast.batch.near":      {"did you mean {nearest}?", "¿quiso decir {nearest}?"},
	"forecast.now.outside":     {"the hour asked about is too far from the start of the batch", "la hora por la que se pregunta está demasiado lejos del inicio del lote"},
	"forecast.now.allowed":     {"0 to {most} h after the batch was started", "de 0 a {most} h después del inicio del lote"},
	"forecast.now.advice":      {"give an hour of its brew, for example --now 2026-05-14T07:00:00-07:00, or correct started_at of the batch", "dé una hora de su preparación, por ejemplo --now 2026-05-14T07:00:00-07:00, o corrija started_at del lote"},
	"forecast.ask.outside":     {"it is outside what a forecast can be asked for", "está fuera de lo que se puede pedir a un pronóstico"},
	"forecast.ask.allowed":     {"{low} to {high}", "{low} a {high}"},
	"forecast.columns-ignored": {"Not used: {columns}", "No se usan: {columns}"},
	"forecast.rows-before":     {"{n} {n|row|rows} from before the start {n|was|were} not looked at", "{n} {n|fila|filas} de antes del inicio no se {n|miró|miraron}"},
	"forecast.rows-skipped":    {"{n} bad {n|row|rows} left out", "{n} {n|fila mala|filas malas} sin tomar en cuenta"},

	"cli.forecast":            {"What the oxygen of a batch will do, from all that is known and every reading.", "Qué hará el oxígeno de una tanda, según todo lo que se sabe y cada lectura."},
	"forecast.no-batch":       {"no batch is named", "no se nombra ninguna tanda"},
	"forecast.no-job":         {"the holding is empty", "la explotación está vacía"},
	"forecast.no-job.allowed": {"a job file, or a holding that has been loaded", "un archivo de trabajo, o una explotación cargada"},
	"forecast.no-job.advice":  {"aerosteep load FILE", "aerosteep load FILE"},

	"forecast.caution.measured": {
		"A forecast is no measurement: a reading overrules it.",
		"Un pronóstico no es una medición: manda la lectura.",
	},
	"forecast.caution.no-weather": {
		"No weather was given: the air is taken as the water at the start ± 5 °C (common practice).",
		"No se dio el tiempo: el aire se toma como el agua del inicio ± 5 °C (práctica común).",
	},
	"forecast.caution.air-guessed": {
		"How much air arrives was never measured here; a two-minute test with the pump off would narrow the forecast most.",
		"Nunca se midió aquí cuánto aire llega; una prueba de dos minutos con la bomba apagada es lo que más afinaría el pronóstico.",
	},
	"forecast.caution.limit": {
		"The limit is {limit}: 6 mg/L, or 70 % of saturation where that is lower (common practice, a margin for dead corners).",
		"El límite es {limit}: 6 mg/L, o el 70 % de la saturación si es menor (práctica común, un margen para rincones muertos).",
	},
	"forecast.caution.smell": {
		"It smells sour or rotten: not on leaves or food. On soil of non-food beds or on the compost heap only (common practice).",
		"Huele agrio o podrido: ni en hojas ni en alimentos. Solo en suelo de camas sin comida o en la pila de compost (práctica común).",
	},

	"forecast.row.now":     {"Oxygen now", "Oxígeno ahora"},
	"forecast.row.lowest":  {"Lowest", "Lo más bajo"},
	"forecast.row.at":      {"at", "a las"},
	"forecast.row.chance":  {"Under the limit", "Bajo el límite"},
	"forecast.row.ready":   {"Past its peak", "Pasado su pico"},
	"forecast.row.use-by":  {"If air stops now", "Si el aire para ahora"},
	"forecast.row.next":    {"Next reading", "Próxima lectura"},
	"forecast.row.water":   {"Water", "Agua"},
	"forecast.row.uptake":  {"Uptake", "Consumo"},
	"forecast.in-hundred":  {"{chance} in 100", "{chance} de 100"},
	"forecast.range":       {"{median} ({low} to {high}, 80 in 100)", "{median} ({low} a {high}, 80 de 100)"},
	"forecast.minutes":     {"{minutes} min ({low} at worst)", "{minutes} min ({low} en el peor caso)"},
	"forecast.done.title":  {"What could be done", "Qué se puede hacer"},
	"forecast.doubt.title": {"Readings that are doubted", "Lecturas en duda"},
	"forecast.plot.title":  {"Oxygen, mg/L: median (•), 80 in 100 (─), limit (·)", "Oxígeno, mg/L: mediana (•), 80 de 100 (─), límite (·)"},
	"forecast.what-if":     {"What if", "Qué pasaría"},
	"forecast.same-places": {"chance {chance} in 100 ({change}), lowest {low}", "probabilidad {chance} de 100 ({change}), lo más bajo {low}"},
}
