package wording

// costWords are the sentences about what things cost.
var costWords = Table{
	"cost.none":            {"there is no cost to add up", "no hay ningún costo que sumar"},
	"cost.none.advice":     {"give at least one --item, or power, labour or equipment", "dé al menos un --item, o energía, trabajo o equipo"},
	"cost.item.colon":      {"there is no colon between name and price", "faltan los dos puntos entre nombre y precio"},
	"cost.item.name":       {"the item has no name", "la partida no tiene nombre"},
	"cost.item.price":      {"the price is not a bare number", "el precio no es un número sin unidad"},
	"cost.item.negative":   {"a price cannot be negative", "un precio no puede ser negativo"},
	"cost.item.allowed":    {"a name, a colon and a bare price of 0 or more, for example \"compost: 12.50\"", "un nombre, dos puntos y un precio sin unidad de 0 o más, por ejemplo \"compost: 12.50\""},
	"cost.salvage":         {"a salvage value of {salvage} is over the price of {price}", "un valor residual de {salvage} pasa del precio de {price}"},
	"cost.salvage.allowed": {"0 to {price}", "de 0 a {price}"},
	"cost.years":           {"equipment that lasts no time costs without end", "un equipo que no dura nada cuesta sin fin"},
	"cost.years.allowed":   {"over 0 years", "más de 0 años"},

	"sheet.cost.purpose": {"What does it cost a litre, an acre, a visit?", "¿Cuánto cuesta por litro, por acre, por visita?"},
	"sheet.cost.range":   {"bare money in one currency; shares lost and margins under 100 %", "dinero sin unidad en una sola moneda; partes perdidas y márgenes de menos de 100 %"},
	"sheet.cost.answer":  {"A batch costs {batch}: {litre} a litre, {gallon} a US gallon.", "Una tanda cuesta {batch}: {litre} por litro, {gallon} por galón de EE. UU."},
	"sheet.cost.ground":  {"A batch costs {batch}: {litre} a litre, {hectare} a hectare, {acre} an acre.", "Una tanda cuesta {batch}: {litre} por litro, {hectare} por hectárea, {acre} por acre."},
	"sheet.cost.visit":   {"A visit costs {visit} and is sold at {price}; a batch costs {batch}, {litre} a litre.", "Una visita cuesta {visit} y se vende a {price}; una tanda cuesta {batch}, {litre} por litro."},
}
