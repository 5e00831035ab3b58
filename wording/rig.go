package wording

// rigWords are about vessels, pumps and applicators.
var rigWords = Table{
	"rig.curve.points":      {"a curve has 2 to 50 points", "una curva tiene de 2 a 50 puntos"},
	"rig.curve.not-falling": {"the flow has to fall as the pressure rises, each pressure once", "el caudal tiene que bajar al subir la presión, cada presión una vez"},
	"rig.curve.no-at":       {"a point is written flow@pressure", "un punto se escribe caudal@presión"},
	"rig.curve.too-large":   {"a point goes up to 50 000 L/min and 400 kPa", "un punto llega hasta 50 000 L/min y 400 kPa"},
	"rig.curve.allowed":     {"flow of free air at pressure, such as 60 L/min@0 kPa, 45 L/min@10 kPa", "caudal de aire libre a presión, como 60 L/min@0 kPa, 45 L/min@10 kPa"},
}
