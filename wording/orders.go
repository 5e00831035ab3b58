package wording

// ordersWords are the sentences about brewing for orders that are not in yet.
var ordersWords = Table{
	"sheet.orders.purpose": {"How much do I brew for orders that are not in yet?", "¿Cuánto preparo para pedidos que aún no llegan?"},
	"sheet.orders.range":   {"orders of past days like it, or their mean and spread; the price over the cost, the cost over what is left is worth", "pedidos de días parecidos, o su media y dispersión; el precio sobre el costo, el costo sobre lo que vale el sobrante"},
	"sheet.orders.answer":  {"Brew {volume}. On {chance} such days that is enough for all orders; on average {left} is poured away and {off} turned away.", "Prepare {volume}. En {chance} días así alcanza para todos los pedidos; en promedio se tiran {left} y faltan {off}."},

	"key.brew_l":             {"brew", "preparar"},
	"key.critical_percent":   {"share of days that pays", "parte de días que conviene"},
	"key.all_served_percent": {"days on which it is enough", "días en que alcanza"},
	"key.poured_away_l":      {"poured away on average", "se tira en promedio"},
	"key.turned_away_l":      {"turned away on average", "falta en promedio"},
	"key.days":               {"days looked at", "días mirados"},

	"input.orders":           {"Orders of past days like tomorrow", "Pedidos de días parecidos a mañana"},
	"input.mean":             {"Orders on an average day", "Pedidos de un día medio"},
	"input.spread":           {"Standard deviation of a day's orders", "Desviación típica de los pedidos de un día"},
	"input.orders.price":     {"What a measure of tea brings", "Lo que se cobra por una medida de té"},
	"input.orders.cost":      {"What it costs to brew", "Lo que cuesta prepararla"},
	"input.leftover-worth":   {"What a measure left over is worth", "Lo que vale una medida que sobra"},
	"input.turned-away-cost": {"What a measure turned away costs beside the sale", "Lo que cuesta una medida que falta, además de la venta"},

	"application.orders-or-mean":         {"either past orders or their mean and spread", "o pedidos pasados o su media y dispersión"},
	"application.orders-or-mean.allowed": {"--orders, or --mean with --spread", "--orders, o --mean con --spread"},
	"application.few-orders":             {"{n} {n|day says|days say} little: ten or more of the same weekday make it worth a look", "{n} {n|día dice|días dicen} poco: con diez o más del mismo día de la semana vale la pena"},
	"application.sell-rules":             {"before you sell tea, ask your state about its rules for fertilizers and soil amendments", "antes de vender té, pregunte en su estado por las reglas de fertilizantes y enmiendas de suelo"},

	"cost.price-under-cost":          {"the price is not over the cost: nothing is earned by brewing", "el precio no supera el costo: no se gana nada al preparar"},
	"cost.price-under-cost.allowed":  {"a price over the cost", "un precio mayor que el costo"},
	"cost.salvage-over-cost":         {"what is left over would be worth what it cost: then there is no reason to stop", "lo que sobra valdría lo que costó: entonces no hay por qué parar"},
	"cost.salvage-over-cost.allowed": {"less than the cost", "menos que el costo"},
	"cost.goodwill":                  {"a cost of turning away cannot be negative", "el costo de rechazar no puede ser negativo"},
	"cost.goodwill.allowed":          {"0 or more", "0 o más"},
	"cost.orders":                    {"there is no day to learn from", "no hay día del que aprender"},
	"cost.orders.allowed":            {"at least one day, no order under 0", "al menos un día, ningún pedido menor que 0"},
	"cost.mean.allowed":              {"a mean and a spread over 0", "una media y una dispersión mayores que 0"},
}
