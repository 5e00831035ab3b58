package wording

var waterWords = Table{
	"water.no-reading":            {"no chlorine reading was given", "no se dio ninguna lectura de cloro"},
	"water.reading.allowed":       {"free, total or combined chlorine, 0 to 10 mg/L as Cl2", "cloro libre, total o combinado, de 0 a 10 mg/L como Cl2"},
	"water.no-reading.advice":     {"test the water with a kit that reads free and total chlorine", "analice el agua con un kit que lea cloro libre y total"},
	"water.contradiction":         {"{given} does not fit {other} in the same water", "{given} no concuerda con {other} en la misma agua"},
	"water.contradiction.allowed": {"free and combined chlorine together are the total, within 0.1 mg/L", "el cloro libre más el combinado son el total, con 0,1 mg/L de margen"},
	"water.contradiction.advice":  {"test the same water again, free and total one after the other", "analice otra vez la misma agua, libre y total uno tras otro"},
	"water.hot-not-hotter":        {"the hot water is not hotter than the cold", "el agua caliente no está más caliente que la fría"},
	"water.hot.allowed":           {"over {cold}", "más de {cold}"},
	"water.unreachable":           {"these waters cannot reach {target}", "con estas aguas no se llega a {target}"},
	"water.unreachable.allowed":   {"between {low} and {high}", "entre {low} y {high}"},
	"water.unreachable.advice":    {"choose a target between them, or bring warmer or colder water", "elija una meta entre ellas, o traiga agua más caliente o más fría"},
}
