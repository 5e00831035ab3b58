package wording

// rigWords are about vessels, pumps and applicators.
var rigWords = Table{
	"rig.curve.no-at":     {"a point is written flow@pressure", "un punto se escribe caudal@presión"},
	"rig.curve.too-large": {"a point goes up to 50 000 L/min and 400 kPa", "un punto llega hasta 50 000 L/min y 400 kPa"},
	"rig.curve.allowed":   {"flow of free air at pressure, such as 60 L/min@0 kPa, 45 L/min@10 kPa", "caudal de aire libre a presión, como 60 L/min@0 kPa, 45 L/min@10 kPa"},
}
