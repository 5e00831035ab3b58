package wording

// webCardWords are about the cards of what goes wrong.
var webCardWords = Table{
	"web.cards.title":     {"What goes wrong", "Lo que sale mal"},
	"web.cards.link":      {"Something is wrong", "Algo va mal"},
	"web.cards.search":    {"What do you see or smell?", "¿Qué ve o huele?"},
	"web.cards.now":       {"In the next ten minutes", "En los próximos diez minutos"},
	"web.cards.after":     {"Once it is over", "Cuando haya pasado"},
	"web.cards.write":     {"Write it down", "Anotarlo"},
	"web.cards.all":       {"All cards", "Todas las fichas"},
	"web.cards.call":      {"Call: {numbers}", "Llame: {numbers}"},
	"web.cards.call.none": {"Somebody hurt: call the emergency number of your country first. Put your own numbers into the set-up.", "Alguien herido: llame primero al número de emergencia de su país. Ponga sus números en la configuración."},
	"web.cards.basis":     {"Common practice. Labels, local codes, poison centres and doctors come first.", "Práctica común. Primero van las etiquetas, las normas locales, toxicología y los médicos."},
}
