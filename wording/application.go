package wording

// applicationWords are the sentences about mixes, loads and doses.
var applicationWords = Table{
	"application.mix":           {"1 part tea + {parts} parts water ({percent} % tea)", "1 parte de té + {parts} partes de agua ({percent} % de té)"},
	"application.mix.one":       {"1 part tea + 1 part water ({percent} % tea)", "1 parte de té + 1 parte de agua ({percent} % de té)"},
	"application.mix.undiluted": {"undiluted tea (100 % tea)", "té sin diluir (100 % de té)"},

	"application.missing":          {"{flag} is missing", "falta {flag}"},
	"application.missing.advice":   {"add {flag}", "agregue {flag}"},
	"application.disagree":         {"{first} says {a} and {second} says {b}", "{first} dice {a} y {second} dice {b}"},
	"application.disagree.allowed": {"two statements within {percent} % of each other", "dos datos que no difieran más de {percent} %"},
	"application.disagree.advice":  {"leave one of them out, or correct it", "quite uno de los dos, o corríjalo"},

	"application.ratio.numbers":       {"it is not two numbers with a colon between them", "no son dos números con dos puntos en medio"},
	"application.ratio.slash":         {"{above}/{below} could be 1 in {below} or 1 to {below}", "{above}/{below} puede ser 1 en {below} o 1 por {below}"},
	"application.ratio.percent":       {"a percentage is not a ratio", "un porcentaje no es una proporción"},
	"application.ratio.no-tea":        {"the first number is the tea and must be over 0", "el primer número es el té y debe ser mayor que 0"},
	"application.ratio.negative":      {"the second number is the water and cannot be negative", "el segundo número es el agua y no puede ser negativo"},
	"application.ratio.thin":          {"it is thinner than 1:10000", "está más diluido que 1:10000"},
	"application.ratio.allowed":       {"two bare numbers, tea first, at most 1:10000, for example 1:8", "dos números sin unidad, el té primero, hasta 1:10000, por ejemplo 1:8"},
	"application.ratio.advice":        {"write 1:8 for 1 part of tea and 8 of water; for 1 made up to 8 add --convention total; for a percentage use --percent-tea", "escriba 1:8 para 1 parte de té y 8 de agua; para 1 completado hasta 8 agregue --convention total; para un porcentaje use --percent-tea"},
	"application.ratio.total":         {"{tea} of tea cannot be made up to {total}", "{tea} de té no se puede completar hasta {total}"},
	"application.ratio.total.allowed": {"a second number not smaller than the first with --convention total", "un segundo número no menor que el primero con --convention total"},
	"application.ratio.total.advice":  {"turn the numbers round, or use --convention parts", "invierta los números, o use --convention parts"},
	"application.share":               {"this share of tea is not possible", "esta parte de té no es posible"},
	"application.share.allowed":       {"over 0 and up to 100 %", "más de 0 y hasta 100 %"},

	"application.tea-over-tank":            {"{tea} of tea (--tea) does not fit into {tank} of mix (--tank)", "{tea} de té (--tea) no caben en {tank} de mezcla (--tank)"},
	"application.tea-over-tank.allowed":    {"at most {tank}", "como máximo {tank}"},
	"application.tea-over-tank.advice":     {"take a larger tank, or less tea", "use un tanque mayor, o menos té"},
	"application.water-undiluted":          {"{water} of water says nothing about tea that is not diluted", "{water} de agua no dicen nada de un té que no se diluye"},
	"application.water-undiluted.allowed":  {"--tea or --tank with an undiluted ratio", "--tea o --tank con una proporción sin diluir"},
	"application.water-undiluted.advice":   {"give --tea or --tank instead", "dé --tea o --tank en su lugar"},
	"application.water-fills-tank":         {"{water} of water (--water) leaves no room for tea in {tank} (--tank)", "{water} de agua (--water) no dejan lugar para el té en {tank} (--tank)"},
	"application.water-fills-tank.allowed": {"less than {tank}", "menos de {tank}"},
	"application.mix-under-tea":            {"the mix ({mixflag} {mix}) is less than the tea in it ({teaflag} {tea})", "la mezcla ({mixflag} {mix}) es menor que el té que lleva ({teaflag} {tea})"},
	"application.mix-under-tea.allowed":    {"at least {tea}", "al menos {tea}"},
	"application.mix-under-tea.advice":     {"mix is tea plus water: check which of the two you know", "la mezcla es té más agua: revise cuál de las dos conoce"},

	"application.dead-volume":            {"a dead volume of {dead} leaves nothing to spray from a tank of {tank}", "un volumen muerto de {dead} no deja nada que aplicar de un tanque de {tank}"},
	"application.dead-volume.allowed":    {"0 to less than {tank}", "de 0 a menos de {tank}"},
	"application.dead-volume.advice":     {"measure what stays in pump, filter, hose and boom when the tank has run dry", "mida lo que queda en bomba, filtro, manguera y barra cuando el tanque se ha vaciado"},
	"application.tea-in-lines":           {"{mix} of mix only fills the dead volume ({dead})", "{mix} de mezcla solo llenan el volumen muerto ({dead})"},
	"application.tea-in-lines.allowed":   {"more than {tea} of tea", "más de {tea} de té"},
	"application.too-many-loads":         {"a tank of {tank} would be filled {loads} times", "un tanque de {tank} se llenaría {loads} veces"},
	"application.too-many-loads.allowed": {"at most 10000 loads", "como máximo 10000 cargas"},
	"application.too-many-loads.advice":  {"check the units of the area, the rate and the tank", "revise las unidades de la superficie, la dosis y el tanque"},
}
