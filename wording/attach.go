package wording

// attachWords are about papers of others that are kept with the records.
var attachWords = Table{
	"cli.paper":            {"a record as somebody wants to see it: an inspector, a client, the wall of the shed", "un registro como alguien lo quiere ver: un inspector, un cliente, la pared de la bodega"},
	"cli.paper.advice":     {"for example: paper brew D-114, paper season 2026, paper folder season:2026 --pdf folder.pdf", "por ejemplo: paper brew D-114, paper season 2026, paper folder season:2026 --pdf carpeta.pdf"},
	"cli.log.attach":       {"keep a paper of somebody else: a supplier's record, a laboratory's report, a photo of a label", "guardar un papel ajeno: registro de un proveedor, informe de laboratorio, foto de una etiqueta"},
	"api.no-paper":         {"no such paper is kept", "no se guarda tal papel"},
	"holding.attach.about": {"it says not what the paper is about", "no dice de qué trata el papel"},

	"input.log-attach.what":       {"What it is", "Qué es"},
	"input.log-attach.lot":        {"About lot", "Sobre el lote"},
	"input.log-attach.batch":      {"About batch", "Sobre la tanda"},
	"input.log-attach.bed":        {"About bed", "Sobre el bancal"},
	"input.log-attach.site":       {"About site", "Sobre el lugar"},
	"input.log-attach.vessel":     {"About vessel", "Sobre el recipiente"},
	"input.log-attach.ingredient": {"About ingredient", "Sobre el ingrediente"},
	"input.log-attach.text":       {"In words", "En palabras"},

	"value.what.supplier":   {"supplier's record", "registro del proveedor"},
	"value.what.laboratory": {"laboratory report", "informe de laboratorio"},
	"value.what.water":      {"water report", "informe de agua"},
	"value.what.heating":    {"compost heating record", "registro de calentamiento"},
	"value.what.label":      {"photo of a label", "foto de una etiqueta"},
	"value.what.other":      {"other paper", "otro papel"},

	"web.attach.title":   {"Keep a paper of somebody else", "Guardar un papel ajeno"},
	"web.attach.more":    {"A supplier's record, a laboratory's report, a photo of a label. It is kept whole, goes into every backup and export, and is checked like every entry.", "Registro de un proveedor, informe de laboratorio, foto de una etiqueta. Se guarda entero, va en cada copia y exportación, y se comprueba como toda entrada."},
	"web.attach.file":    {"The paper: PDF or photo, at most 5 MiB", "El papel: PDF o foto, como máximo 5 MiB"},
	"web.attach.act":     {"Keep it", "Guardarlo"},
	"web.attach.kept":    {"Kept.", "Guardado."},
	"web.attach.list":    {"Papers of others", "Papeles ajenos"},
	"web.attach.none":    {"None kept yet.", "Aún no hay ninguno."},
	"web.attach.no-file": {"Choose a file first.", "Elija primero un archivo."},

	"key.sha256": {"SHA-256", "SHA-256"},
	"key.file":   {"file", "archivo"},
	"key.bytes":  {"bytes", "bytes"},
	"key.what":   {"what", "qué"},

	"paper.table.attached":       {"Papers of others", "Papeles ajenos"},
	"paper.key.file":             {"file", "archivo"},
	"paper.key.sha256":           {"SHA-256", "SHA-256"},
	"paper.key.about":            {"about", "sobre"},
	"paper.word.what.supplier":   {"supplier's record", "registro del proveedor"},
	"paper.word.what.laboratory": {"laboratory report", "informe de laboratorio"},
	"paper.word.what.water":      {"water report", "informe de agua"},
	"paper.word.what.heating":    {"compost heating record", "registro de calentamiento"},
	"paper.word.what.label":      {"photo of a label", "foto de una etiqueta"},
	"paper.word.what.other":      {"other paper", "otro papel"},
}
