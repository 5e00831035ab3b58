package wording

// countingWords are the sentences about counts.
var countingWords = Table{
	"counting.tubes.none":      {"there are no tubes to judge", "no hay tubos que juzgar"},
	"counting.tubes.more":      {"more tubes are positive than there are", "hay más tubos positivos que tubos"},
	"counting.tubes.more-than": {"{positive} positive of {total} cannot be", "{positive} positivos de {total} no puede ser"},
	"counting.tubes.amount":    {"every tube needs an amount of sample over 0", "cada tubo necesita una cantidad de muestra mayor que 0"},
	"counting.tubes.form":      {"“{item}” is not positive/total", "«{item}» no es positivos/total"},
	"counting.tubes.total":     {"{total} tubes in a level are outside what is allowed", "{total} tubos en un nivel están fuera de lo permitido"},
	"counting.tubes.levels":    {"{levels} levels are too many", "{levels} niveles son demasiados"},
	"counting.tubes.allowed":   {"positive/total for 1 to 20 levels of 1 to 1000 tubes, for example 3/3, 1/3, 0/3", "positivos/total para 1 a 20 niveles de 1 a 1000 tubos, por ejemplo 3/3, 1/3, 0/3"},
}
