package wording

// sprayWords are the sentences about nozzles, sieves, canopies and lines.
var sprayWords = Table{
	"spray.no-way":                {"there is nothing to compare", "no hay nada que comparar"},
	"spray.no-way.allowed":        {"at least one way of calibrating", "al menos una forma de calibrar"},
	"spray.over-zero":             {"{value} is not possible here", "{value} no es posible aquí"},
	"spray.over-zero.allowed":     {"more than 0", "más de 0"},
	"spray.discharge":             {"a discharge coefficient of {value} is not one of a nozzle", "un coeficiente de descarga de {value} no es de una boquilla"},
	"spray.discharge.allowed":     {"0.5 to 1", "de 0,5 a 1"},
	"spray.discharge.advice":      {"leave it out for 0.9, or measure the opening and give --orifice", "déjelo fuera para usar 0,9, o mida la abertura y dé --orifice"},
	"spray.flow-negative":         {"a flow of {value} is not possible", "un caudal de {value} no es posible"},
	"spray.flow.allowed":          {"1 to 200 flows, 0 or more, with a unit on each or at the end for all", "de 1 a 200 caudales, de 0 o más, con unidad en cada uno o al final para todos"},
	"spray.all-dry":               {"every nozzle gives 0", "todas las boquillas dan 0"},
	"spray.many-dry":              {"{dry} of {all} nozzles give 0", "{dry} de {all} boquillas dan 0"},
	"spray.dry.advice":            {"if a decimal comma was meant (0,41), part the flows with semicolons", "si quiso escribir coma decimal (0,41), separe los caudales con punto y coma"},
	"spray.shape":                 {"a shape of {value} is not possible", "una forma de {value} no es posible"},
	"spray.shape.allowed":         {"0.1 to 1, the share of the box that is leaf", "de 0,1 a 1, la parte de la caja que es hoja"},
	"spray.emitters":              {"emitters {spacing} apart do not fit on a line of {length}", "goteros cada {spacing} no caben en una línea de {length}"},
	"spray.emitters.allowed":      {"less than {length}", "menos de {length}"},
	"spray.pressure-alone":        {"a pressure says nothing without --rated-flow and --rated-pressure", "una presión no dice nada sin --rated-flow y --rated-pressure"},
	"spray.pressure-alone.advice": {"add what the nozzle's chart gives: --rated-flow and --rated-pressure", "agregue lo que da la tabla de la boquilla: --rated-flow y --rated-pressure"},
}
