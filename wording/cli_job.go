package wording

// cliJobWords are what the terminal says about job files and plans.
var cliJobWords = Table{
	"cli.check-file":      {"List all problems of a job file at once", "Muestra a la vez todos los problemas de un archivo de trabajo"},
	"cli.schema":          {"Print the JSON Schema of the job file", "Muestra el JSON Schema del archivo de trabajo"},
	"cli.plan":            {"Plan every want of a job file: how much, in what, with what, when", "Planifica cada deseo de un archivo: cuánto, en qué, con qué, cuándo"},
	"cli.one-file":        {"this verb takes one file name", "este verbo lleva un nombre de archivo"},
	"cli.one-file.advice": {"write aerosteep {use}", "escriba aerosteep {use}"},

	"cli.plan.now":            {"take this for now: RFC 3339, or YYYY-MM-DD HH:MM in the site's zone", "tome esto como ahora: RFC 3339, o AAAA-MM-DD HH:MM en la zona del lugar"},
	"cli.plan.weather":        {"weather file: hourly CSV, or open forecast JSON", "archivo del tiempo: CSV por horas, o JSON abierto de pronóstico"},
	"cli.plan.ics":            {"also write the steps as a calendar to this file", "escriba también los pasos como calendario en este archivo"},
	"cli.plan.strict":         {"exit with 3 where a want cannot be met", "termine con 3 si un deseo no se puede cumplir"},
	"cli.ignored-columns":     {"columns not used: {columns}", "columnas sin usar: {columns}"},
	"cli.plan.nothing":        {"Nothing can be planned; what would work stands beneath.", "No se puede planificar nada; abajo está lo que sí se podría."},
	"cli.plan.answer":         {"Begin {begin} at {vessel}: {batches} {batches|batch|batches} for {wants} of {all} {all|want|wants}.", "Empiece {begin} con {vessel}: {batches} {batches|lote|lotes} para {wants} de {all} {all|deseo|deseos}."},
	"cli.plan.unmet":          {"Not met: want {n}, {bed}: {reason}. Nearest: {nearest}.", "No se cumple: deseo {n}, {bed}: {reason}. Lo más cercano: {nearest}."},
	"cli.plan.batch":          {"{id}: {volume} of {recipe} in {vessel}, for {beds}", "{id}: {volume} de {recipe} en {vessel}, para {beds}"},
	"cli.plan.outside":        {"(outside the hours of work)", "(fuera de las horas de trabajo)"},
	"cli.plan.outlook":        {"Chance of going below {limit}: {chance} in 100. Lowest oxygen {lowest} (80 %: {low} to {high}), near hour {hour}.", "Probabilidad de bajar de {limit}: {chance} en 100. Oxígeno más bajo {lowest} (80 %: de {low} a {high}), cerca de la hora {hour}."},
	"cli.plan.air":            {"Air: kLa20 {kla} ({low} to {high}), {basis}.", "Aire: kLa20 {kla} (de {low} a {high}), {basis}."},
	"cli.plan.basis.measured": {"measured", "medido"},
	"cli.plan.basis.physics":  {"from pump, tube and diffuser", "por bomba, tubo y difusor"},
	"cli.plan.basis.habit":    {"by common practice", "por práctica común"},
	"cli.plan.clock":          {"Ready {ready} (highest uptake {from} to {until}, 80 %); use by {use_by}.", "Listo {ready} (mayor consumo de {from} a {until}, 80 %); use antes de {use_by}."},
	"cli.plan.cost":           {"Cost: {total} {currency}.", "Costo: {total} {currency}."},
	"cli.plan.advice":         {"What would help: {text}.", "Lo que ayudaría: {text}."},
	"cli.plan.run":            {"{at}, {with}: {beds}; done {ends}", "{at}, {with}: {beds}; termina {ends}"},
	"cli.plan.no-applicator":  {"no applicator", "sin aplicador"},
	"cli.plan.prime":          {"fill the lines: {tea} of tea, {water} of water", "llene las mangueras: {tea} de té, {water} de agua"},
	"cli.plan.load":           {"load {n}: {tea} of tea, {water} of water; {bed}", "carga {n}: {tea} de té, {water} de agua; {bed}"},
	"cli.plan.load.covers":    {"load {n}: {tea} of tea, {water} of water; {bed}, {covers}", "carga {n}: {tea} de té, {water} de agua; {bed}, {covers}"},
}
