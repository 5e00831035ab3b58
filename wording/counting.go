package wording

// countingWords are the sentences about counts.
var countingWords = Table{
	"counting.tubes.none":              {"there are no tubes to judge", "no hay tubos que juzgar"},
	"counting.tubes.more":              {"more tubes are positive than there are", "hay más tubos positivos que tubos"},
	"counting.tubes.more-than":         {"{positive} positive of {total} cannot be", "{positive} positivos de {total} no puede ser"},
	"counting.tubes.amount":            {"every tube needs an amount of sample over 0", "cada tubo necesita una cantidad de muestra mayor que 0"},
	"counting.tubes.form":              {"“{item}” is not positive/total", "«{item}» no es positivos/total"},
	"counting.tubes.total":             {"{total} tubes in a level are outside what is allowed", "{total} tubos en un nivel están fuera de lo permitido"},
	"counting.tubes.levels":            {"{levels} levels are too many", "{levels} niveles son demasiados"},
	"counting.tubes.allowed":           {"positive/total for 1 to 20 levels of 1 to 1000 tubes, for example 3/3, 1/3, 0/3", "positivos/total para 1 a 20 niveles de 1 a 1000 tubos, por ejemplo 3/3, 1/3, 0/3"},
	"counting.not-clumped":             {"the counts vary no more than chance does, so there is no clumping k", "los recuentos no varían más que el azar; no hay k de agregación"},
	"counting.not-clumped.allowed":     {"counts whose variance is over their mean", "recuentos cuya varianza supere su media"},
	"counting.field-over-slip":         {"the field ({field}) is larger than the cover slip ({slip})", "el campo ({field}) es mayor que el cubreobjetos ({slip})"},
	"counting.field-over-slip.allowed": {"a field that fits on the cover slip", "un campo que quepa en el cubreobjetos"},
	"counting.field-over-slip.advice":  {"check the units of both: a field is a fraction of a millimetre wide at 40x", "revise las unidades: a 40x un campo mide una fracción de milímetro"},
}
