package wording

// holdingWords are the sentences about what is logged and loaded.
var holdingWords = Table{
	"holding.log.reading.nothing": {"nothing was read: give at least one value", "no se leyó nada: dé al menos un valor"},
	"holding.log.count.nothing":   {"nothing was counted: give at least one value", "no se contó nada: dé al menos un valor"},
	"holding.log.lot.nothing":     {"nothing was said of the lot: give at least one fact", "no se dijo nada del lote: dé al menos un dato"},
	"holding.log.test.nothing":    {"the test has no result: give at least one value", "la prueba no tiene resultado: dé al menos un valor"},
	"holding.log.cleaned.nothing": {"nothing was cleaned: name a vessel or an applicator", "no se limpió nada: nombre un recipiente o un aplicador"},
	"holding.log.stock.nothing":   {"nothing moved: name an ingredient or a batch and an amount", "nada se movió: nombre un ingrediente o una tanda y una cantidad"},

	"holding.unknown.batch":      {"the holding knows no batch “{name}”", "la finca no conoce ninguna tanda «{name}»"},
	"holding.unknown.bed":        {"the holding knows no bed “{name}”", "la finca no conoce ningún bancal «{name}»"},
	"holding.unknown.vessel":     {"the holding knows no vessel “{name}”", "la finca no conoce ningún recipiente «{name}»"},
	"holding.unknown.pump":       {"the holding knows no pump “{name}”", "la finca no conoce ninguna bomba «{name}»"},
	"holding.unknown.applicator": {"the holding knows no applicator “{name}”", "la finca no conoce ningún aplicador «{name}»"},
	"holding.unknown.ingredient": {"the holding knows no ingredient “{name}”", "la finca no conoce ningún ingrediente «{name}»"},
	"holding.unknown.recipe":     {"the holding knows no recipe “{name}”", "la finca no conoce ninguna receta «{name}»"},
	"holding.unknown.advice":     {"start a batch with aerosteep log start, or set things up with aerosteep load FILE", "empiece una tanda con aerosteep log start, o configure con aerosteep load ARCHIVO"},

	"holding.started-already":        {"batch {name} was started already at {at}", "la tanda {name} ya empezó a las {at}"},
	"holding.started-already.advice": {"give the new batch another name, or correct the first start with aerosteep log correct", "dé otro nombre a la tanda nueva, o corrija el primer comienzo con aerosteep log correct"},
	"holding.ended-already":          {"batch {name} ended already at {at}", "la tanda {name} ya terminó a las {at}"},
	"holding.ended-already.advice":   {"correct the first end with aerosteep log correct", "corrija el primer final con aerosteep log correct"},

	"holding.correct.kind":            {"an entry of the kind {kind} is not corrected by hand", "una entrada de la clase {kind} no se corrige a mano"},
	"holding.correct.kind.advice":     {"load a mended job file, or import a mended series", "cargue un archivo de trabajo corregido, o importe una serie corregida"},
	"holding.correct.replaced":        {"it was corrected already by {by}", "ya la corrigió {by}"},
	"holding.correct.replaced.advice": {"correct that one: aerosteep log correct {by} …", "corrija esa: aerosteep log correct {by} …"},
	"holding.correct.unknown":         {"no entry has this id", "ninguna entrada tiene este id"},
	"holding.correct.unknown.advice":  {"aerosteep log list shows the ids", "aerosteep log list muestra los id"},
	"holding.empty":                   {"nothing is set up here yet", "aquí aún no hay nada configurado"},
	"holding.empty.advice":            {"aerosteep load FILE", "aerosteep load ARCHIVO"},

	"holding.test.range-alone":   {"a range needs the measured kLa it belongs to", "un margen necesita el kLa medido al que pertenece"},
	"holding.test.range":         {"{end} does not enclose the measured {kla}", "{end} no abarca lo medido, {kla}"},
	"holding.test.range.allowed": {"kla20-low95 at most {kla}, kla20-high95 at least {kla}", "kla20-low95 como mucho {kla}, kla20-high95 al menos {kla}"},

	"input.batch":              {"Batch", "Tanda"},
	"input.log-reading.do":     {"Oxygen", "Oxígeno"},
	"input.percent-saturation": {"Per cent of saturation", "Porcentaje de saturación"},
	"input.log-reading.temp":   {"Water temperature", "Temperatura del agua"},
	"input.log-reading.ph":     {"pH", "pH"},
	"input.log-reading.ec":     {"Conductivity", "Conductividad"},
	"input.smell":              {"Smell", "Olor"},
	"input.to-rim":             {"From foam to rim", "De la espuma al borde"},
	"input.note":               {"Note", "Nota"},
	"input.outcome":            {"Outcome", "Resultado"},
	"input.cause":              {"Cause", "Causa"},
	"input.place":              {"Place", "Lugar"},
	"input.event":              {"What happened", "Qué pasó"},
	"input.text":               {"Text", "Texto"},
	"input.log-start.vessel":   {"Vessel", "Recipiente"},
	"input.log-start.recipe":   {"Recipe", "Receta"},
	"input.log-start.volume":   {"Volume", "Volumen"},

	"holding.effect.chance":      {"The chance of going below {limit} was {before} in 100 and is now {after} in 100.", "La probabilidad de bajar de {limit} era de {before} en 100 y ahora es de {after} en 100."},
	"holding.effect.chance-next": {"The chance of going below {limit} was {before} in 100 and is now {after} in 100. Next reading at {next}.", "La probabilidad de bajar de {limit} era de {before} en 100 y ahora es de {after} en 100. Próxima lectura a las {next}."},
	"holding.early.wait":         {"Too early for {bed}: tea was put on {applied}, picked {picked}, first allowed day {until} ({rule}). Keep this pick apart, do not sell or eat it raw, write down where it went, pick no more before {until}, and ask your certifier or extension office.", "Demasiado pronto para {bed}: té aplicado el {applied}, cosechado el {picked}, primer día permitido {until} ({rule}). Aparte esta cosecha, no la venda ni la coma cruda, anote adónde fue, no coseche más antes del {until} y pregunte a su certificador o a la oficina de extensión."},
	"holding.early.no":           {"The tea put on {bed} on {applied} was not allowed there ({rule}), and it was picked {picked}. Keep this pick apart, do not sell or eat it raw, write down where it went, pick no more, and ask your certifier or extension office.", "El té aplicado en {bed} el {applied} no se permitía allí ({rule}), y se cosechó el {picked}. Aparte esta cosecha, no la venda ni la coma cruda, anote adónde fue, no coseche más y pregunte a su certificador o a la oficina de extensión."},
	"holding.early.ask":          {"Not settled for {bed}: tea was put on {applied}, picked {picked}, and whether that was too early hangs on {facts}. Keep this pick apart until it is answered; it does not count as yes.", "Sin decidir para {bed}: té aplicado el {applied}, cosechado el {picked}, y si fue demasiado pronto depende de {facts}. Aparte esta cosecha hasta responder; no cuenta como un sí."},
	"holding.uncleaned":          {"Who cleaned {vessel} and its lines before {batch}, when, with what? Nothing is written down: sanitized stays unknown. aerosteep log cleaned --vessel NAME --agent WHAT --at WHEN --by WHO", "¿Quién limpió {vessel} y sus mangueras antes de {batch}, cuándo y con qué? No hay nada anotado: la desinfección queda sin saberse. aerosteep log cleaned --vessel NOMBRE --agent QUÉ --at CUÁNDO --by QUIÉN"},

	"holding.answer.nowhere":         {"“{given}” carries no facts", "«{given}» no lleva datos"},
	"holding.answer.nowhere.allowed": {"hygiene, batch:NAME or bed:NAME", "hygiene, batch:NOMBRE o bed:NOMBRE"},

	"holding.effect.past": {"The recipe's end has passed: the reading is kept, and nothing ahead changes.", "El fin de la receta ya pasó: la lectura se guarda, y nada por delante cambia."},
}
