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
}
