package wording

// oxygenWords are the sentences of oxygen and air that calculations say; the
// worksheets' own are in oxygen_sheets.go.
var oxygenWords = Table{
	"air.outlet-not-above":        {"the outlet's {outlet} is not above the inlet's {inlet}", "los {outlet} de la salida no superan los {inlet} de la entrada"},
	"air.outlet-not-above.advice": {"both are absolute; a gauge pressure belongs in --pressure-rise", "las dos son absolutas; una presión manométrica va en --pressure-rise"},
	"air.ratio-too-high":          {"{outlet} is over three times the inlet's {inlet}, more than one stage does", "{outlet} es más del triple de los {inlet} de la entrada, más de lo que hace una etapa"},
	"air.ratio-too-high.advice":   {"check the unit; --outlet-pressure is absolute, --pressure-rise is gauge", "revise la unidad; --outlet-pressure es absoluta, --pressure-rise es manométrica"},
	"air.outlet.allowed":          {"above {inlet}, up to {highest}", "más de {inlet}, hasta {highest}"},

	"air.curve.allowed":            {"2 to 50 points FLOW@PRESSURE, flow falling as pressure rises, for example 60 L/min@0 kPa, 0 L/min@28 kPa", "de 2 a 50 puntos CAUDAL@PRESIÓN, con el caudal bajando al subir la presión, por ejemplo 60 L/min@0 kPa, 0 L/min@28 kPa"},
	"air.curve-points":             {"the pump has {n} {n|point|points}, and 2 to 50 make a curve", "la bomba tiene {n} {n|punto|puntos}, y una curva lleva de 2 a 50"},
	"air.curve-points.advice":      {"copy two or more points from the pump's chart", "copie dos o más puntos de la gráfica de la bomba"},
	"air.curve-outside":            {"the point {flow} at {pressure} is more than a pump gives", "el punto {flow} a {pressure} es más de lo que da una bomba"},
	"air.curve-outside.advice":     {"check its units", "revise sus unidades"},
	"air.curve-not-falling":        {"from {flow1} at {pressure1} to {flow2} at {pressure2} the pressure does not fall as the flow rises", "de {flow1} a {pressure1} a {flow2} a {pressure2} la presión no baja al subir el caudal"},
	"air.curve-not-falling.advice": {"check these two points; no pump gives more air against more pressure", "revise estos dos puntos; ninguna bomba da más aire contra más presión"},
	"air.curve-too-low":            {"the curve ends at {highest}, and its least air needs {needed}", "la curva termina en {highest}, y su menor caudal necesita {needed}"},
	"air.curve-too-low.advice":     {"add a point at a higher pressure, best the shut-off pressure at 0 L/min", "añada un punto a mayor presión, mejor la presión a caudal 0 L/min"},
	"air.curve-too-high":           {"the curve ends at {lowest}, and its most air needs only {needed}", "la curva termina en {lowest}, y su mayor caudal solo necesita {needed}"},
	"air.curve-too-high.advice":    {"add a point at a lower pressure, best the free flow at 0 kPa", "añada un punto a menor presión, mejor el caudal libre a 0 kPa"},

	"oxygen.rise.allowed":        {"at least 6 readings of a rise that comes near its end", "al menos 6 lecturas de una subida que se acerque a su final"},
	"oxygen.rise.few":            {"{n} {n|reading|readings} of the rise can be used, and {fewest} are needed", "se {n|puede|pueden} usar {n} {n|lectura|lecturas} de la subida, y hacen falta {fewest}"},
	"oxygen.rise.few.advice":     {"log faster, or leave less out", "anote más a menudo, o deje menos fuera"},
	"oxygen.rise.none":           {"dissolved oxygen does not rise", "el oxígeno disuelto no sube"},
	"oxygen.rise.none.advice":    {"start with water low in oxygen, air on, and log until it stops rising", "empiece con agua pobre en oxígeno y el aire encendido, y anote hasta que deje de subir"},
	"oxygen.rise.no-best":        {"no kLa fits best: the rise never bends, or is over before the second reading", "ningún kLa ajusta mejor: la subida no se curva, o termina antes de la segunda lectura"},
	"oxygen.rise.no-best.advice": {"log until dissolved oxygen stops rising, or log faster", "anote hasta que el oxígeno disuelto deje de subir, o más a menudo"},
	"oxygen.rise.wide":           {"the readings scatter too much: kLa would be {kla} give or take {half}", "las lecturas se dispersan demasiado: kLa sería {kla}, más o menos {half}"},
	"oxygen.rise.wide.advice":    {"log until dissolved oxygen stops rising, or log faster, with a meter that holds still", "anote hasta que el oxígeno disuelto deje de subir, o más a menudo, con un medidor estable"},
	"oxygen.rise.short":          {"the test ran only {reached} % of the way, and {least} % is the least", "la prueba solo recorrió el {reached} % del camino, y lo mínimo es {least} %"},
	"oxygen.rise.short.advice":   {"log longer, until dissolved oxygen stops rising", "anote más tiempo, hasta que el oxígeno disuelto deje de subir"},
	"oxygen.rise.lag":            {"the probe is too slow for this air: kLa {kla} times its {lag} is {share}", "la sonda es demasiado lenta para este aire: kLa {kla} por sus {lag} da {share}"},
	"oxygen.rise.lag.allowed":    {"kLa times the probe's time up to {limit}", "kLa por el tiempo de la sonda hasta {limit}"},
	"oxygen.rise.lag.advice":     {"use a faster probe or gentler air; --fit-lag carries a known lag up to 0.5", "use una sonda más rápida o menos aire; --fit-lag admite un retardo conocido hasta 0,5"},

	"oxygen.fall.allowed":           {"one stretch with the air off, with at least 3 readings above 2 mg/L", "un tramo con el aire apagado, con al menos 3 lecturas por encima de 2 mg/L"},
	"oxygen.fall.few":               {"{n} {n|reading|readings} of the fall can be used, and {fewest} are needed", "se {n|puede|pueden} usar {n} {n|lectura|lecturas} de la bajada, y hacen falta {fewest}"},
	"oxygen.fall.few.advice":        {"take a smaller --skip, or more readings above 2 mg/L", "use un --skip menor, o más lecturas por encima de 2 mg/L"},
	"oxygen.fall.no-stretch":        {"no reading has the air off", "ninguna lectura tiene el aire apagado"},
	"oxygen.fall.no-stretch.advice": {"write 0 or off in the column air while the air is off", "escriba 0 u off en la columna air mientras el aire está apagado"},
	"oxygen.fall.second":            {"line {line}: the air goes off a second time", "línea {line}: el aire se apaga por segunda vez"},
	"oxygen.fall.second.advice":     {"one test a file: put the second in a file of its own", "una prueba por archivo: ponga la segunda en otro"},
}
