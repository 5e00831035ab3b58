package wording

// cliWords are the sentences of the terminal.
var cliWords = Table{
	"cli.root":              {"Plan, watch and record batches of aerated compost tea.", "Planifique, vigile y registre tandas de té de compost aireado."},
	"cli.calc":              {"One calculation from a worksheet; alone it lists them all.", "Un cálculo de una hoja; solo, las enumera todas."},
	"cli.version":           {"Print the version.", "Muestra la versión."},
	"cli.unknown.verb":      {"“{given}” is not a verb of this program", "«{given}» no es un verbo de este programa"},
	"cli.unknown.worksheet": {"there is no worksheet “{given}”", "no hay ninguna hoja «{given}»"},
	"cli.unknown.flag":      {"{given} is not a flag here", "{given} no es una opción aquí"},
	"cli.unknown.units":     {"“{given}” is not a system of units", "«{given}» no es un sistema de unidades"},
	"cli.unknown.lang":      {"“{given}” is not a language of this program", "«{given}» no es un idioma de este programa"},
	"cli.given":             {"“{given}”: {what}", "«{given}»: {what}"},
	"cli.allowed":           {"; allowed: {allowed}", "; se admite: {allowed}"},
	"cli.no-value":          {"{flag} needs a value", "{flag} necesita un valor"},
	"cli.no-file":           {"the file {file} cannot be read", "no se puede leer el archivo {file}"},
	"cli.extra":             {"“{given}” stands alone and belongs to no flag", "«{given}» está suelto y no pertenece a ninguna opción"},
	"cli.extra.advice":      {"put a value with blanks into quotes, and a flag before it", "ponga entre comillas un valor con espacios, y una opción delante"},
	"cli.caution":           {"Caution: {text}", "Precaución: {text}"},
	"cli.default":           {"; default {default}", "; por omisión {default}"},
	"cli.required":          {" (needed)", " (necesario)"},
}
