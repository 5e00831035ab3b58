package wording

// growthWords are the sentences of the worksheets of the living brew.
var growthWords = Table{
	"sheet.food-limit.purpose": {"How much food can this air carry?", "¿Cuánto alimento aguanta este aire?"},
	"sheet.food-limit.range": {
		"0.5 to 50 000 L, water 0 to 40 °C held as it is, 18 to 72 h; the food goes in at the start; a model with wide priors, no measurement",
		"de 0,5 a 50 000 L, agua de 0 a 40 °C mantenida, de 18 a 72 h; el alimento entra al principio; un modelo con supuestos amplios, no una medición",
	},
	"sheet.food-limit.answer.food": {
		"At most {mass} of {food} ({percent} % w/v): then the chance of going under {limit} is {chance} in 100.",
		"Como mucho {mass} de {food} ({percent} % p/v): así la probabilidad de bajar de {limit} es {chance} de 100.",
	},
	"sheet.food-limit.answer.limit-above-saturation": {
		"None: this water cannot hold {limit}; in balance with air it holds {held}. Take a lower limit or cooler water.",
		"Nada: esta agua no puede retener {limit}; en equilibrio con el aire retiene {held}. Tome un límite menor o agua más fría.",
	},
	"sheet.food-limit.answer.compost-alone": {
		"None: the compost alone goes under {limit} in {chance} of 100. More air, less compost or cooler water first.",
		"Nada: solo el compost baja de {limit} en {chance} de 100. Antes, más aire, menos compost o agua más fría.",
	},
	"sheet.food-limit.answer.never": {
		"Oxygen sets no limit: even {mass} of {food} (20 % w/v) keeps the chance at {chance} in 100. That is no longer a brew.",
		"El oxígeno no pone límite: incluso {mass} de {food} (20 % p/v) deja la probabilidad en {chance} de 100. Eso ya no es una infusión.",
	},
	"sheet.food-limit.household":      {"{measure}", "{measure}"},
	"sheet.food-limit.too-little":     {"less than a spoon: weigh it", "menos de una cucharada: péselo"},
	"sheet.food-limit.foods":          {"a food of the library, for example molasses, kelp meal, fish hydrolysate", "un alimento de la biblioteca, por ejemplo molasses, kelp meal, fish hydrolysate"},
	"sheet.food-limit.compost":        {"{name} is a compost, not a food", "{name} es un compost, no un alimento"},
	"sheet.food-limit.compost.advice": {"give the compost with --compost", "indique el compost con --compost"},
	"sheet.food-limit.range-order":    {"the range must run from kla20-low over kla20 to kla20-high", "el rango debe ir de kla20-low por kla20 a kla20-high"},

	"sheet.food-limit.caution.model": {
		"A model with priors, not your brew: start with less and let the readings speak. Measured oxygen overrules it.",
		"Un modelo con supuestos, no su infusión: empiece con menos y deje hablar a las lecturas. El oxígeno medido manda.",
	},
	"sheet.food-limit.caution.regrowth": {
		"The oxygen allows it; that is not the same as tested safe: at this dose trials have not shown that pathogens stay down. See the worksheet food and the hygiene rules.",
		"El oxígeno lo permite; eso no es lo mismo que probado seguro: a esta dosis los ensayos no mostraron que los patógenos no crezcan. Vea la hoja food y las reglas de higiene.",
	},
	"sheet.food-limit.caution.range": {
		"kLa is taken to ±30 %; a test on this vessel (worksheet reaeration) narrows the answer most.",
		"kLa se toma con ±30 %; una prueba en este recipiente (hoja reaeration) es lo que más afina la respuesta.",
	},
	"sheet.food-limit.caution.warm": {
		"Over 30 °C uptake still rises while water holds less: cool it.",
		"Por encima de 30 °C el consumo sigue subiendo y el agua retiene menos: enfríela.",
	},
	"sheet.food-limit.plot":        {"At {percent} % w/v the chance reaches {accepted} in 100", "Con {percent} % p/v la probabilidad llega a {accepted} de 100"},
	"sheet.food-limit.plot.dose":   {"food", "alimento"},
	"sheet.food-limit.plot.chance": {"chance of going under the limit", "probabilidad de bajar del límite"},
	"sheet.food-limit.plot.most":   {"most", "máximo"},

	"input.food-limit.volume":     {"Brew in the vessel", "Infusión en el recipiente"},
	"input.food-limit.kla20":      {"kLa at 20 °C, in clean water", "kLa a 20 °C, en agua limpia"},
	"input.food-limit.kla20-low":  {"its low end (95 %)", "su extremo bajo (95 %)"},
	"input.food-limit.kla20-high": {"its high end (95 %)", "su extremo alto (95 %)"},
	"input.food-limit.temp":       {"Water temperature, held", "Temperatura del agua, mantenida"},
	"input.food-limit.food":       {"Food, by its name in the library", "Alimento, por su nombre en la biblioteca"},
	"input.food-limit.limit":      {"Oxygen that must stay (6 mg/L, or 70 % of saturation if lower)", "Oxígeno que debe quedar (6 mg/L, o el 70 % de saturación si es menor)"},
	"input.food-limit.chance":     {"Accepted chance of going under it, in 100", "Probabilidad aceptada de bajar de él, de 100"},
	"input.food-limit.hours":      {"Hours of brewing", "Horas de infusión"},
	"input.food-limit.compost":    {"Compost in each litre", "Compost por litro"},

	"key.max_food_g":          {"most food", "alimento máximo"},
	"key.max_food_ml":         {"as a volume", "en volumen"},
	"key.chance_at_max":       {"chance at the most, in 100", "probabilidad con el máximo, de 100"},
	"key.peak_our_mg_per_l_h": {"highest uptake", "consumo máximo"},
	"key.min_do_mg_per_l":     {"lowest oxygen", "oxígeno mínimo"},
	"key.hour_of_minimum":     {"hour of the lowest", "hora del mínimo"},
	"key.curve":               {"dose and chance", "dosis y probabilidad"},
	"key.chance_below_limit":  {"chance under the limit, in 100", "probabilidad bajo el límite, de 100"},
	"key.limit_mg_per_l":      {"limit", "límite"},
	"key.ready":               {"ready", "lista"},
	"key.binding":             {"what sets it", "qué lo fija"},
}
